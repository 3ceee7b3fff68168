using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey.Limits;
using RackCheck.Survey;
using static System.FormattableString;

namespace RackCheck.Rules.Delivery;

/// <summary>Finds doors and hatches on the delivery route that the rack does not pass on its pallet, or does not pass at all.</summary>
public sealed class Opening : Rule
{
    /// <summary>Minimum clearance in the width and height of an opening.</summary>
    public static RuleLimit ClearanceMm { get; } = new(
        "clearanceMm", "minimum clearance in the width and height of an opening", DeliveryRoute.ClearanceMm, "mm", 0, 300, Stricter.Higher);

    /// <summary>Maximum tilt of a rack that may be tilted.</summary>
    public static RuleLimit TiltDeg { get; } = new(
        "tiltDeg", "maximum tilt of a rack that may be tilted", DeliveryRoute.GreatestTiltDeg, "deg", 0, 90, Stricter.Lower);

    private static readonly WordingChoice OffPallet = new(
        "delivery.opening.off-pallet",
        "The rack on its pallet needs {neededMm} mm in [width:width|height]; [unnamed:the opening of {widthMm} mm x {heightMm} mm|{opening}] "
            + "has {openingMm} mm. Without the pallet, the rack passes.");

    private static readonly WordingChoice Tilted = new(
        "delivery.opening.tilted",
        "The upright rack needs {neededMm} mm in [width:width|height]; [unnamed:the opening of {widthMm} mm x {heightMm} mm|{opening}] has "
            + "{openingMm} mm. Without the pallet and tilted by {tiltDeg} degrees, the rack passes.");

    private static readonly WordingChoice Blocked = new(
        "delivery.opening.blocked",
        "The rack without its pallet needs {neededMm} mm in [width:width|height]; [unnamed:the opening of {widthMm} mm x {heightMm} "
            + "mm|{opening}] has {openingMm} mm.[may-tilt: Tilted by {tiltDeg} degrees, the rack would pass, but tilting is not specified as "
            + "allowed.]");

    private static readonly MissingData MissingCabinetHeight = new(
        "delivery.opening.missing-cabinet-height",
        "Without the height of the cabinet, the openings of the delivery route cannot be checked.");

    private static readonly MissingData MissingDeliveryOpenings = new(
        "delivery.opening.missing-delivery-openings",
        "Without the openings of the delivery route, their size cannot be checked. An empty list means that there are none.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "delivery.opening",
        Title = "Opening on the delivery route too small",
        Severity = Severity.Error,
        MilderSeverity = Severity.Warning,
        Concern = Concern.Site,
        What = "Finds openings on the delivery route that the rack on its pallet does not pass with a clearance of 20 mm. If the rack passes "
            + "without the pallet, or tilted where tilting is allowed, the finding is a warning; otherwise it is an error.",
        Why = "The rack cannot be delivered to its place.",
        Formula = "shorter side + clearanceMm > opening width, or height + clearanceMm > opening height; minimum tilt under h is atan(D/H) + "
            + "acos(h/sqrt(H2 + D2))",
        Sources = [Sources.DeliveryPractice, Sources.En13698, Sources.Geometry],
        Limits = [ClearanceMm, TiltDeg],
        Needs =
        [
            "/cabinet/heightMm", "/cabinet/widthMm", "/cabinet/depthMm", "/site/delivery/openings", "/site/delivery/palletHeightMm",
            "/site/delivery/palletWidthMm", "/site/delivery/palletDepthMm", "/site/delivery/mayTilt",
        ],
        Remedies = ["Deliver it without the pallet.", "Use a lower, narrower or shallower cabinet.", "Choose another delivery route."],
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
            context.ReportMissing(SitePointers.Delivery + "/openings", MissingDeliveryOpenings);
            return;
        }

        var (clearance, tilt) = (context.Limit(ClearanceMm), context.Limit(TiltDeg));
        for (var i = 0; i < openings.Count; i++)
        {
            // The same opening twice on the route is reported once.
            if (IsRepeated(openings, i))
            {
                continue;
            }

            var clear = new ClearOpening(openings[i].WidthMm, openings[i].HeightMm);
            if (!route.HeightIsKnown)
            {
                if (Comparison.IsOver(route.Bare.ShortMm + clearance, clear.WidthMm))
                {
                    Report(context, i, default, clear, clearance, tilt);
                }
                else
                {
                    context.ReportMissing(Pointers.CabinetHeight, MissingCabinetHeight);
                }
            }
            else if (DeliveryRoute.Through(
                route.OnPallet, route.Bare, clear, clearance, route.Source.MayTilt == true ? tilt : 0) is { OnPallet: false } passage)
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
        var byWidth = Comparison.IsOver(size.ShortMm + clearance, clear.WidthMm);
        var (have, limit) = byWidth ? (size.ShortMm, clear.WidthMm) : (size.HeightMm, clear.HeightMm);
        var (message, tilt) = WordingOf(passage, route, openings[index], clearance, tiltDeg, byWidth);
        context.Report(new FindingDraft
        {
            Message = message,
            Data =
            [
                .. NameData(openings[index]), ("neededMm", have + clearance), ("openingMm", limit),
                .. tilt is { } deg ? [("tiltDeg", (Scalar)deg)] : ((string, Scalar)[])[],
            ],
            Subject = string.IsNullOrEmpty(openings[index].Name)
                ? Subjects.OpeningOf(openings[index].WidthMm, openings[index].HeightMm)
                : Subjects.Id(openings[index].Name!),
            Identity = Identity(openings[index]),
            Pointers = [Invariant($"{SitePointers.Delivery}/openings/{index}"), byWidth ? CabinetSides.Short(survey.Cabinet) : Pointers.CabinetHeight],
            Severity = passage.Blocked ? Severity.Error : Severity.Warning,
            Actual = Quantities.Millimetres(have + clearance),
            Limit = Quantities.Millimetres(limit),
            UtilisationPercent = 100 * (have + clearance) / limit,
            Calculation = Calculation(route, passage, byWidth, clear, clearance, tilt),
            Candidates = Candidates(survey, index, clear, clearance),
        });
    }

    private static (MessageWording Message, double? TiltDeg) WordingOf(
        OpeningPassage passage, RouteSurvey route, Model.Opening opening, double clearance, double tiltDeg, bool byWidth)
    {
        var clear = new ClearOpening(opening.WidthMm, opening.HeightMm);
        var (side, named) = (byWidth ? "width" : "", string.IsNullOrEmpty(opening.Name) ? "unnamed" : "");
        if (passage.OffPallet)
        {
            return (OffPallet.With(side, named), null);
        }

        if (passage.Tilted)
        {
            return (Tilted.With(side, named), passage.TiltDeg);
        }

        return !byWidth && route.Source.MayTilt != true && DeliveryRoute.Through(route.OnPallet, route.Bare, clear, clearance, tiltDeg).TiltDeg is { } tilt
            ? (Blocked.With(side, named, "may-tilt"), tilt)
            : (Blocked.With(side, named), null);
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
            ? Invariant($"{bare.HeightMm:0.###} + {route.PalletHeightMm:0.###} + {clearance:0.###}")
                + Invariant($" = {bare.HeightMm + route.PalletHeightMm + clearance:0.###} > {clear.HeightMm:0.###}")
            : Invariant($"{bare.HeightMm:0.###} + {clearance:0.###} = {bare.HeightMm + clearance:0.###} > {clear.HeightMm:0.###}");
        return tilt is not { } deg ? upright
            : upright
                + Invariant($"; atan({bare.LongMm:0.###} / {bare.HeightMm:0.###})")
                + Invariant($" + acos({under:0.###} / {DeliveryRoute.DiagonalMm(bare.HeightMm, bare.LongMm):0.###}) = {deg:0.###} degrees");
    }

    private static IEnumerable<RemedyCandidate> Candidates(RackSurvey survey, int index, ClearOpening clear, double clearance)
    {
        var opening = survey.Route!.Source.Openings![index];
        return DeliveryRemedies.Smaller(
            survey,
            s => survey.Route.HeightIsKnown ? DeliveryRoute.Passes(s, clear, clearance) : !Comparison.IsOver(s.ShortMm + clearance, clear.WidthMm))
            .Then(() => DeliveryRemedies.OtherRoute(
                survey, new(RemedyTitles.Route.With(string.IsNullOrEmpty(opening.Name) ? "unnamed" : null), NameData(opening)), d => d with
            {
                Openings = [.. d.Openings!.Where(o => !Identity(o).SequenceEqual(Identity(opening)))],
            }));
    }

    private static (string Name, Scalar Value)[] NameData(Model.Opening opening) => string.IsNullOrEmpty(opening.Name)
        ? [("widthMm", opening.WidthMm), ("heightMm", opening.HeightMm)]
        : [("opening", opening.Name)];

    private static string Size(Model.Opening opening) => Invariant($"{opening.WidthMm:0.###} x {opening.HeightMm:0.###}");

    // Names need not be unique. The size is part of the identity, so that other openings do not change the fingerprint of this finding.
    private static string[] Identity(Model.Opening opening) => [opening.Name ?? "", Size(opening)];

    private static bool IsRepeated(IReadOnlyList<Model.Opening> openings, int index)
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
