using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Planning.Building;
using RackCheck.Survey;

namespace RackCheck.Planning.Proposals;

/// <summary>The quantities of a proposal with their bounds.</summary>
internal static class Objectives
{
    private static readonly Stage[] Parts = [Stage.Shelves, Stage.Rails, Stage.Consoles, Stage.Cooling, Stage.Outlets];

    /// <summary>The objective of a rack.</summary>
    /// <param name="task">The request.</param>
    /// <param name="chosen">The rack.</param>
    /// <param name="open">The allowed cabinets that are not proven to be unsuitable or to have more open warnings.</param>
    public static IReadOnlyList<ObjectiveValue> Of(ProposalTask task, Trial chosen, IReadOnlyList<CabinetOffer> open) =>
    [
        Value(ObjectiveName.Cabinets, 1, 1),
        .. OfCost(task, chosen, open),
        .. OfCabinet(chosen.Offer, open, task.Request.Prefer ?? CabinetPreference.LowestHeight),
        .. OfParts(task, chosen),
    ];

    /// <summary>Sums of several racks. The number of cabinets comes first.</summary>
    /// <param name="racks">The objectives of the racks.</param>
    /// <param name="least">No fewer cabinets take the equipment.</param>
    public static IReadOnlyList<ObjectiveValue> Sum(IReadOnlyList<IReadOnlyList<ObjectiveValue>> racks, int least) =>
    [
        Value(ObjectiveName.Cabinets, racks.Count, least),
        .. racks.SelectMany(r => r)
            .Where(o => o.Name is ObjectiveName.AddedParts or ObjectiveName.FreeU
                || (o.Name == ObjectiveName.Cost && racks.All(r => r.Any(v => v.Name == ObjectiveName.Cost))))
            .GroupBy(o => o.Name).Select(g => new ObjectiveValue
        {
            Name = g.Key,
            Value = g.Sum(o => o.Value),
            Bound = g.Sum(o => o.Bound),
            Proven = g.All(o => o.Proven),
        }),
    ];

    // Small parts may all be spared, as far as is known.
    private static IEnumerable<ObjectiveValue> OfCost(ProposalTask task, Trial chosen, IReadOnlyList<CabinetOffer> open)
    {
        if (task.Context.SeeksLowestCost && RackCost.Of(chosen) is { IsKnown: true } cost)
        {
            var needed = chosen.Completed.Added.Where(p => Parts.Contains(p.Stage)).GroupBy(p => p.Stage)
                .Where(g => g.DistinctBy(p => p.Product.Kind).Count() == 1)
                .Select(g => (g.First().Product.Kind, LeastOf(task, chosen, g)));
            yield return Value(ObjectiveName.Cost, cost.Amount, Math.Min(cost.Amount, RackCost.Least(task, open, needed)));
        }
    }

    private static IEnumerable<ObjectiveValue> OfCabinet(CabinetOffer chosen, IReadOnlyList<CabinetOffer> open, CabinetPreference prefer)
    {
        if (prefer == CabinetPreference.SmallestFootprint)
        {
            // Depth and width count together, as their product.
            var least = open.MinBy(c => c.WidthMm * c.DepthMm)!;
            var isLeast = chosen.WidthMm * chosen.DepthMm <= least.WidthMm * least.DepthMm;
            var best = isLeast ? chosen : least;
            yield return Value(ObjectiveName.Depth, chosen.DepthMm, Math.Min(chosen.DepthMm, best.DepthMm)) with { Proven = isLeast };
            yield return Value(ObjectiveName.Width, chosen.WidthMm, Math.Min(chosen.WidthMm, best.WidthMm)) with { Proven = isLeast };
            var sameArea = open.Where(c => c.DepthMm == chosen.DepthMm && c.WidthMm == chosen.WidthMm);
            yield return Value(ObjectiveName.Height, chosen.HeightU, sameArea.Min(c => c.HeightU));
            yield break;
        }

        yield return Value(ObjectiveName.Height, chosen.HeightU, open.Min(c => c.HeightU));
        CabinetOffer[] alike = [.. open.Where(c => c.HeightU == chosen.HeightU)];
        yield return Value(ObjectiveName.Depth, chosen.DepthMm, alike.Min(c => c.DepthMm));
        yield return Value(ObjectiveName.Width, chosen.WidthMm, alike.Where(c => c.DepthMm == chosen.DepthMm).Min(c => c.WidthMm));
    }

    private static IEnumerable<ObjectiveValue> OfParts(ProposalTask task, Trial chosen)
    {
        var added = chosen.Completed.Added.Where(p => Parts.Contains(p.Stage)).ToArray();
        yield return Value(ObjectiveName.AddedParts, added.Sum(p => p.OrderUnits), added.GroupBy(p => p.Stage).Sum(g => LeastOf(task, chosen, g)));
        if (chosen is { Problem: { } problem, Layout: { } layout } && problem.Blocks.Sum(b => b.MassG) is > 0 and var mass)
        {
            var height = chosen.BottomsU;
            var moment = problem.MomentOf([.. problem.Blocks.Select(b => height[b.Id])]);
            yield return Value(ObjectiveName.CentreOfGravity, MillimetresOf(moment, mass), MillimetresOf(Math.Min(moment, layout.LeastMoment), mass));
        }

        yield return Value(ObjectiveName.FreeU, chosen.FreeU, Math.Max(chosen.FreeU, chosen.Offer.HeightU - task.ItemsU));
    }

    // Slides, runners and a KVM switch are needed one for one. Of shelves and PDUs no fewer can do than these.
    private static long LeastOf(ProposalTask task, Trial chosen, IGrouping<Stage, MissingPiece> stage)
    {
        if (stage.Key == Stage.Outlets)
        {
            var cords = RackSurvey.Lazily(chosen.Resolved.Description).Power.Cords;
            var most = task.Context.Offered(ProductKind.Pdu).Max(p => SupplyChoice.CountOf(p.Pdu!));
            var given = (task.Request.Pdus ?? []).Sum(SupplyChoice.CountOf);
            var needed = (Math.Max(0, cords.Length - given) + most - 1) / most;
            return task.Request.Pdus is null && cords.Any(c => c.IsRedundant && c.Siblings > 1) ? Math.Max(2, needed) : needed;
        }

        return stage.Key switch
        {
            Stage.Shelves => 1,
            Stage.Cooling => 0,
            _ => stage.Sum(p => p.OrderUnits),
        };
    }

    private static double MillimetresOf(long moment, long mass) => RackGeometry.UnitMm * moment / (2.0 * mass);

    private static ObjectiveValue Value(ObjectiveName name, double value, double bound) => new()
    {
        Name = name,
        Value = Math.Round(value, 3),
        Bound = Math.Round(bound, 3),
        Proven = Math.Round(value, 3) == Math.Round(bound, 3),
    };
}
