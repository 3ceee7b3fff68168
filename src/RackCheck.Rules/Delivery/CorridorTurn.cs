using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using static System.FormattableString;

namespace RackCheck.Rules.Delivery;

/// <summary>Finds corners of corridors that the rack on its pallet does not get round.</summary>
public sealed class CorridorTurn : Rule
{
    private static readonly RuleDescriptor Facts = new()
    {
        Id = "delivery.corridor-turn",
        Title = "Corner too tight",
        Severity = Severity.Error,
        What = "Finds corners on the way where the footprint of rack and pallet neither goes across, one side in each corridor, nor turns. Plain walls: no skirting, handle or hand is counted.",
        Why = "A rack that is stuck in a corner has to be taken apart there.",
        Formula = "across: L <= one corridor and w <= the other; turning: w <= min over t of a sin t + b cos t - L sin t cos t",
        Sources = [Sources.Geometry],
        Needs = ["/site/delivery/corridors", "/cabinet/widthMm", "/cabinet/depthMm", "/site/delivery/palletWidthMm", "/site/delivery/palletDepthMm"],
        Remedies = ["Deliver it off the pallet.", "Take a narrower or shallower cabinet.", "Choose another way in."],
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
            context.Lacks(SitePointers.Delivery + "/corridors", "Corners on the way in are not given: it cannot be said whether the rack gets round them. An empty list says that there are none.");
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
            Message = most > 0
                ? "The rack, {lengthMm} mm long and {widthMm} mm wide, does not get round the corner from a corridor of {fromMm} mm into one of {intoMm} mm: at that length it may be {mostMm} mm wide at most."
                : "The rack, {lengthMm} mm long and {widthMm} mm wide, does not get round the corner from a corridor of {fromMm} mm into one of {intoMm} mm: nothing of that length does.",
            Data = [("lengthMm", size.LongMm), ("widthMm", size.ShortMm), ("fromMm", from), ("intoMm", into), .. most > 0 ? [("mostMm", (Scalar)most)] : ((string, Scalar)[])[]],
            Subject = Invariant($"corner from {from:0.###} mm into {into:0.###} mm"),
            Identity = [Invariant($"{from:0.###}"), Invariant($"{into:0.###}")],
            Pointers = [Invariant($"{SitePointers.Delivery}/corridors/{index}"), Pointers.CabinetWidth, Pointers.CabinetDepth],
            Actual = Quantities.Millimetres(size.ShortMm),
            Limit = Quantities.Millimetres(most),
            UtilisationPercent = most > 0 ? 100 * size.ShortMm / most : null,
            Calculation = passage.Straight
                ? Invariant($"{size.LongMm:0.###} <= {Math.Max(from, into):0.###}, so it lies across; {size.ShortMm:0.###} > {most:0.###}")
                : Turning(from, into, size.LongMm, passage.GreatestWidthMm) + (most > 0 ? Invariant($" < {size.ShortMm:0.###}") : Invariant($" <= 0 < {size.ShortMm:0.###}")),
            Cures = DeliveryCures.Smaller(survey, s => CornerTurn.Round(from, into, s.LongMm, s.ShortMm).Passes).Append(DeliveryCures.OtherWay(
                survey, "that corner", d => d with { Corridors = [.. d.Corridors!.Where(c => !Same(c, corner))] })),
        });
    }

    // The width that is free at the angle where it is least.
    private static string Turning(double from, double into, double length, double width)
    {
        var angle = CornerTurn.TurningAngleDeg(from, into, length);
        return Invariant($"{from:0.###} x sin({angle:0.###}) + {into:0.###} x cos({angle:0.###}) - {length:0.###} x sin({angle:0.###}) x cos({angle:0.###}) = {width:0.###}");
    }

    private static bool Same(Corridor one, Corridor other) => one.WidthMm == other.WidthMm && one.TurnIntoMm == other.TurnIntoMm;
}
