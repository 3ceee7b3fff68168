using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Delivery;

/// <summary>Finds doors and hatches on the way that the rack does not pass on its pallet, or not at all.</summary>
public sealed class Opening : Rule
{
    private static readonly RuleLimit ClearanceMm = new(
        "clearanceMm", "what an opening must have over what passes, in width and in height", WaysIn.ClearanceMm, "mm", 0, 300, Stricter.Higher);

    private static readonly RuleLimit TiltDeg = new(
        "tiltDeg", "greatest tilt of a rack that may be tilted", WaysIn.GreatestTiltDeg, "deg", 0, 90, Stricter.Lower);

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "delivery.opening",
        Title = "Opening too small",
        Severity = Severity.Error,
        MilderSeverity = Severity.Warning,
        What = "Finds openings on the way that the rack on its pallet does not pass with 20 mm to spare. Where it does off the pallet, or tilted if it may be, that is a warning that says so; where no way does, an error.",
        Why = "The rack stands before the door, and the lorry has gone.",
        Formula = "shorter side + clearanceMm > opening width, or height + clearanceMm > opening height; least tilt under h is atan(D/H) + acos(h/sqrt(H2 + D2))",
        Sources = [Sources.DeliveryPractice, Sources.En13698, Sources.Geometry],
        Limits = [ClearanceMm, TiltDeg],
        Needs = ["/cabinet/heightMm", "/cabinet/widthMm", "/cabinet/depthMm", "/site/delivery/openings", "/site/delivery/palletHeightMm", "/site/delivery/palletWidthMm", "/site/delivery/palletDepthMm", "/site/delivery/mayTilt"],
        Remedies = ["Deliver it off the pallet.", "Take a lower, narrower or shallower cabinet.", "Choose another way in."],
        Cautions = [Cautions.Transport],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        if (context.Survey.Route is not { } route)
        {
            return;
        }

        if (route.Source.Openings is not { } openings)
        {
            context.Lacks(SitePointers.Delivery + "/openings", "Doors on the way in are not given: it cannot be said whether the rack gets through them. An empty list says that there are none.");
            return;
        }

        var (clearance, tilt) = (context.Limit(ClearanceMm), context.Limit(TiltDeg));
        for (var i = 0; i < openings.Count; i++)
        {
            // The same door twice on the way is one door.
            if (IsSaid(openings, i))
            {
                continue;
            }

            var clear = new ClearOpening(openings[i].WidthMm, openings[i].HeightMm);
            if (!route.HeightIsKnown)
            {
                if (Exceeds(route.Bare.ShortMm + clearance, clear.WidthMm))
                {
                    Report(context, i, default, clear, clearance, tilt);
                }
                else
                {
                    context.Lacks(Pointers.CabinetHeight, "Without the height of the cabinet it cannot be said whether it passes the openings on its way.");
                }
            }
            else if (WaysIn.Through(route.OnPallet, route.Bare, clear, clearance, route.Source.MayTilt == true ? tilt : 0) is { OnPallet: false } passage)
            {
                Report(context, i, passage, clear, clearance, tilt);
            }
        }
    }

    private static void Report(RuleContext context, int index, OpeningPassage passage, ClearOpening clear, double clearance, double tiltDeg)
    {
        var survey = context.Survey;
        var route = survey.Route!;
        var openings = route.Source.Openings!;
        var size = passage.OffPallet ? route.OnPallet : route.Bare;
        var byWidth = Exceeds(size.ShortMm + clearance, clear.WidthMm);
        var (have, limit) = byWidth ? (size.ShortMm, clear.WidthMm) : (size.HeightMm, clear.HeightMm);
        var name = Name(openings[index]);
        var (message, tilt) = Wording(passage, route, clear, clearance, tiltDeg, byWidth);
        context.Report(new FindingDraft
        {
            Message = message,
            Data = [("opening", name), ("neededMm", have + clearance), ("openingMm", limit), .. tilt is { } deg ? [("tiltDeg", (Scalar)deg)] : ((string, Scalar)[])[]],
            Subject = name,
            Identity = Identity(openings[index]),
            Pointers = [Invariant($"{SitePointers.Delivery}/openings/{index}"), byWidth ? ShortSide(survey.Cabinet) : Pointers.CabinetHeight],
            Severity = passage.Blocked ? Severity.Error : Severity.Warning,
            Actual = Quantities.Millimetres(have + clearance),
            Limit = Quantities.Millimetres(limit),
            UtilisationPercent = 100 * (have + clearance) / limit,
            Calculation = Calculation(route, passage, byWidth, clear, clearance, tilt),
            Cures = Cures(survey, index, clear, clearance),
        });
    }

    private static (string Message, double? TiltDeg) Wording(OpeningPassage passage, RouteSurvey route, ClearOpening clear, double clearance, double tiltDeg, bool byWidth)
    {
        var side = byWidth ? "in width" : "in height";
        if (passage.OffPallet)
        {
            return ($"On its pallet the rack needs {{neededMm}} mm {side}, {{opening}} has {{openingMm}} mm: off the pallet it passes.", null);
        }

        if (passage.Tilted)
        {
            return ($"Upright the rack needs {{neededMm}} mm {side}, {{opening}} has {{openingMm}} mm: off its pallet and tilted by {{tiltDeg}} degrees it passes.", passage.TiltDeg);
        }

        var blocked = $"The rack needs {{neededMm}} mm {side} even off its pallet, {{opening}} has {{openingMm}} mm";
        return !byWidth && route.Source.MayTilt != true && WaysIn.Through(route.OnPallet, route.Bare, clear, clearance, tiltDeg).TiltDeg is { } tilt
            ? (blocked + "; tilted by {tiltDeg} degrees it would pass, but nothing says that it may be tilted.", tilt)
            : (blocked + ".", null);
    }

    private static string Calculation(RouteSurvey route, OpeningPassage passage, bool byWidth, ClearOpening clear, double clearance, double? tilt)
    {
        var bare = route.Bare;
        if (byWidth)
        {
            var across = passage.OffPallet ? route.OnPallet.ShortMm : bare.ShortMm;
            return Invariant($"{across:0.###} + {clearance:0.###} = {across + clearance:0.###} > {clear.WidthMm:0.###}");
        }

        var under = clear.HeightMm - clearance;
        var upright = passage.OffPallet
            ? Invariant($"{bare.HeightMm:0.###} + {route.PalletHeightMm:0.###} + {clearance:0.###} = {bare.HeightMm + route.PalletHeightMm + clearance:0.###} > {clear.HeightMm:0.###}")
            : Invariant($"{bare.HeightMm:0.###} + {clearance:0.###} = {bare.HeightMm + clearance:0.###} > {clear.HeightMm:0.###}");
        return tilt is not { } deg ? upright
            : upright + Invariant($"; atan({bare.LongMm:0.###} / {bare.HeightMm:0.###}) + acos({under:0.###} / {WaysIn.DiagonalMm(bare.HeightMm, bare.LongMm):0.###}) = {deg:0.###} degrees");
    }

    private static IEnumerable<Cure> Cures(RackSurvey survey, int index, ClearOpening clear, double clearance)
    {
        var opening = survey.Route!.Source.Openings![index];
        return DeliveryCures.Smaller(survey, s => survey.Route.HeightIsKnown ? WaysIn.Passes(s, clear, clearance) : !Exceeds(s.ShortMm + clearance, clear.WidthMm))
            .Append(DeliveryCures.OtherWay(survey, Name(opening), d => d with
            {
                Openings = [.. d.Openings!.Where(o => !Identity(o).SequenceEqual(Identity(opening)))],
            }));
    }

    private static bool Exceeds(double neededMm, double haveMm) => neededMm > haveMm + SetbackInterval.ToleranceMm;

    private static string ShortSide(CabinetFacts cabinet) => cabinet.WidthMm <= cabinet.Depth.DepthMm ? Pointers.CabinetWidth : Pointers.CabinetDepth;

    private static string Name(Model.Opening opening) => string.IsNullOrEmpty(opening.Name) ? "the opening of " + Size(opening) + " mm" : opening.Name;

    private static string Size(Model.Opening opening) => Invariant($"{opening.WidthMm:0.###} x {opening.HeightMm:0.###}");

    // Names need not be unique, and another opening that comes or goes must not make this one a new finding: the size always belongs to it.
    private static string[] Identity(Model.Opening opening) => [opening.Name ?? "", Size(opening)];

    private static bool IsSaid(IReadOnlyList<Model.Opening> openings, int index)
    {
        for (var i = 0; i < index; i++)
        {
            if (Identity(openings[i]).SequenceEqual(Identity(openings[index])))
            {
                return true;
            }
        }

        return false;
    }
}
