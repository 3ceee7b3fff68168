using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using static System.FormattableString;

namespace RackCheck.Rules.Delivery;

/// <summary>Finds corridor corners that the rack on its pallet cannot pass.</summary>
public sealed class CorridorTurn : Rule
{
    private static readonly MessageWording Wide = new(
        "delivery.corridor-turn.wide",
        "The rack, {lengthMm} mm long and {widthMm} mm wide, does not pass the corner from a corridor of {fromMm} mm into one of {intoMm} "
            + "mm. The maximum width at this length is {mostMm} mm.");

    private static readonly MessageWording TooLong = new(
        "delivery.corridor-turn.too-long",
        "The rack, {lengthMm} mm long and {widthMm} mm wide, does not pass the corner from a corridor of {fromMm} mm into one of {intoMm} "
            + "mm. No rack of this length passes.");

    private static readonly MissingData Missing = new(
        "delivery.corridor-turn.missing",
        "Without the corridors of the delivery route, its corners cannot be checked. An empty list means that there are none.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "delivery.corridor-turn",
        Title = "Corridor corner too tight",
        Severity = Severity.Error,
        Concern = Concern.Site,
        What = "Finds corners on the delivery route that the footprint of rack and pallet passes neither by a change of direction without "
            + "turning nor by turning. Walls count as plain: skirting boards, handles and hands need additional space.",
        Why = "A rack that does not pass a corner cannot be delivered to its place.",
        Formula = "without turning: L <= one corridor and w <= the other; turning: w <= min over t of a sin t + b cos t - L sin t cos t",
        Sources = [Sources.Geometry],
        Needs = ["/site/delivery/corridors", "/cabinet/widthMm", "/cabinet/depthMm", "/site/delivery/palletWidthMm", "/site/delivery/palletDepthMm"],
        Notes =
        [
            "A rack that fits across both corridors goes round the corner straight, whichever side lies in which corridor: on castors both are "
                + "possible. What is left to turn is longer than both corridors are wide; only there does the slope have exactly one zero.",
        ],
        Remedies = ["Deliver it without the pallet.", "Use a narrower or shallower cabinet.", "Choose another delivery route."],
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

        if (route.Source.Corridors is not { } corners)
        {
            context.ReportMissing(SitePointers.Delivery + "/corridors", Missing);
            return;
        }

        var size = route.OnPallet;
        for (var i = 0; i < corners.Count; i++)
        {
            var passage = CornerTurn.Round(corners[i].WidthMm, corners[i].TurnIntoMm, size.LongMm, size.ShortMm);
            if (!passage.Passes && !corners.Take(i).Any(c => Same(c, corners[i])))
            {
                Report(context, i, corners[i], passage);
            }
        }
    }

    private static void Report(RuleContext context, int index, Corridor corner, CornerPassage passage)
    {
        var survey = context.Survey;
        var size = survey.Route!.OnPallet;
        var (from, into) = (corner.WidthMm, corner.TurnIntoMm);
        var most = Math.Max(0, passage.GreatestWidthMm);
        context.Report(new FindingDraft
        {
            Message = most > 0 ? Wide : TooLong,
            Data =
            [
                ("lengthMm", size.LongMm), ("widthMm", size.ShortMm), ("fromMm", from), ("intoMm", into),
                .. most > 0 ? [("mostMm", (Scalar)most)] : ((string, Scalar)[])[],
            ],
            Subject = Subjects.Corner(from, into),
            Identity = [Invariant($"{from:0.###}"), Invariant($"{into:0.###}")],
            Pointers = [Invariant($"{SitePointers.Delivery}/corridors/{index}"), Pointers.CabinetWidth, Pointers.CabinetDepth],
            Actual = Quantities.Millimetres(size.ShortMm),
            Limit = Quantities.Millimetres(most),
            UtilisationPercent = most > 0 ? 100 * size.ShortMm / most : null,
            Calculation = passage.Straight
                ? Invariant($"{size.LongMm:0.###} <= {Math.Max(from, into):0.###}, so no turn is needed; {size.ShortMm:0.###} > {most:0.###}")
                : Turning(from, into, size.LongMm, passage.GreatestWidthMm)
                    + (most > 0 ? Invariant($" < {size.ShortMm:0.###}") : Invariant($" <= 0 < {size.ShortMm:0.###}")),
            Candidates = DeliveryRemedies.Smaller(survey, s => CornerTurn.Round(from, into, s.LongMm, s.ShortMm).Passes).Append(DeliveryRemedies.OtherRoute(
                survey, new(RemedyTitles.Route.With("corner")), d => d with { Corridors = [.. d.Corridors!.Where(c => !Same(c, corner))] })),
        });
    }

    // The available width at the angle where it is smallest.
    private static string Turning(double from, double into, double length, double width)
    {
        var angle = CornerTurn.TurningAngleDeg(from, into, length);
        return Invariant($"{from:0.###} x sin({angle:0.###})")
            + Invariant($" + {into:0.###} x cos({angle:0.###}) - {length:0.###} x sin({angle:0.###}) x cos({angle:0.###}) = {width:0.###}");
    }

    private static bool Same(Corridor one, Corridor other) => one.WidthMm == other.WidthMm && one.TurnIntoMm == other.TurnIntoMm;
}
