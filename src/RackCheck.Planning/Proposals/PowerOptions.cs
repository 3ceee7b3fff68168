using RackCheck.Model;
using RackCheck.Planning.Building;
using RackCheck.Survey;
using RackCheck.Survey.Power;

namespace RackCheck.Planning.Proposals;

/// <summary>PDUs that a rack may need besides those for cords without an outlet.</summary>
internal static class PowerOptions
{
    private const int MostOptions = 3;
    private const int MostOfLowestCost = 8;

    /// <summary>A PDU for each UPS that feeds none: the one with the highest rating that goes into the outlets of the UPS.</summary>
    /// <param name="task">The request.</param>
    /// <param name="isSwitched">Whether one with remotely switched outlets comes first.</param>
    /// <param name="isVertical">Whether one that takes no U position comes first.</param>
    public static IReadOnlyList<Product> BehindUps(ProposalTask task, bool isSwitched = false, bool isVertical = false) =>
    [
        .. task.Items.Where(i => i.Ups is { Feeds: null, Outlets: not null })
            .Skip((int)Math.Min(task.Ordered.UnitsForUps, int.MaxValue))
            .Select(i => task.Context.Offered(ProductKind.Pdu)
            .Where(p => SupplyChoice.IsForUps(p) && p.Pdu!.Plug is { } plug && i.Ups!.Outlets!.Any(o => PlugFit.Fits(plug, o.Socket)))
            .OrderByDescending(p => isVertical && !PduSets.IsHorizontal(p))
            .ThenByDescending(p => isSwitched && p.Pdu!.RemoteSwitched == true)
            .ThenByDescending(p => p.Pdu!.RatedA)
            .ThenByDescending(p => SupplyChoice.CountOf(p.Pdu!))
            .ThenBy(p => p.PartNumber, StringComparer.Ordinal)
            .FirstOrDefault()).OfType<Product>(),
    ];

    /// <summary>Sets of parts that may take load off the PDUs of a rack: one more of each kind that it has, then others for the region.</summary>
    public static IEnumerable<IReadOnlyList<Product>> ForLoad(ProposalTask task, Trial trial, IReadOnlyList<Product> fixedParts)
    {
        // The mains PDUs of the rack stay: without them one more would take their place.
        var units = UnitsOf(task, trial);
        return task.Context.Offered(ProductKind.Pdu)
            .Where(p => p.Pdu?.Groups is not null && !SupplyChoice.IsForUps(p) && SupplyChoice.SuitsRegion(task.Request.Site?.Region, p.Pdu))
            .OrderByDescending(units.Contains)
            .ThenByDescending(p => p.Pdu!.RatedA)
            .ThenBy(p => p.PartNumber, StringComparer.Ordinal)
            .Take(MostOptions)
            .Select(p => (IReadOnlyList<Product>)[.. fixedParts, .. units, p]);
    }

    /// <summary>Sets of parts with other PDUs than those that were added to a rack, as many of each kind that is on offer for the region.</summary>
    public static IEnumerable<IReadOnlyList<Product>> Instead(ProposalTask task, Trial trial)
    {
        var units = UnitsOf(task, trial);
        ConnectorCode[] plugs = [.. trial.Resolved.Description.Items.SelectMany(i => i.Power?.Plugs ?? []).Distinct()];
        return units.Count == 0 ? [] : task.Context.Offered(ProductKind.Pdu)
            .Where(p => p.Pdu?.Groups is { } groups && !units.Contains(p) && !SupplyChoice.IsForUps(p)
                && SupplyChoice.SuitsRegion(task.Request.Site?.Region, p.Pdu)
                && groups.Any(g => g.Outlets.Any(o => Array.Exists(plugs, plug => PlugFit.Fits(plug, o.Socket)))))
            .Take(task.Context.SeeksLowestCost ? MostOfLowestCost : MostOptions)
            .Select(p => (IReadOnlyList<Product>)[.. BehindUpsOf(task, trial), .. Enumerable.Repeat(p, units.Count)]);
    }

    /// <summary>
    /// Sets of parts with fewer PDUs than were added to a rack and no higher price, by number and price: all of one kind, or one in place of several of those
    /// that were added. Their outlet groups take the load of its cords.
    /// </summary>
    public static IEnumerable<IReadOnlyList<Product>> Fewer(ProposalTask task, Trial trial)
    {
        var units = UnitsOf(task, trial);
        var numbers = units.Select(p => p.PartNumber).ToHashSet(StringComparer.Ordinal);
        var ids = trial.Completed.RackBuild.Units.Where(u => numbers.Contains(u.Piece.PartNumber)).Select(u => u.Unit.Id).ToHashSet(StringComparer.Ordinal);
        Cord[] cords =
        [
            .. new RackSurvey(trial.Resolved.Description).Power.Cords.Where(c => c.Group is { } group && ids.Contains(group.Unit.Id))
                .OrderByDescending(c => c.VoltAmperes),
        ];
        Product[] offered =
        [
            .. task.Context.Offered(ProductKind.Pdu)
                .Where(p => p.Pdu?.Groups is not null && !SupplyChoice.IsForUps(p) && SupplyChoice.SuitsRegion(task.Request.Site?.Region, p.Pdu)),
        ];
        var least = cords.Any(c => c.IsRedundant && c.Siblings > 1) ? 2 : 1;
        var volts = (trial.Rack.Supplies ?? []).Select(s => s.VoltageV).DefaultIfEmpty().Max();
        return Enumerable.Range(least, Math.Max(0, units.Count - least))
            .SelectMany(count => offered
                .SelectMany(p => (Product[][])[[.. Enumerable.Repeat(p, count)], [.. units.Take(count - 1), p]])
                .DistinctBy(set => string.Join(' ', set.Select(p => p.PartNumber)), StringComparer.Ordinal)
                .Where(set => !(PriceOf(set) > PriceOf(units)) && Take(set, cords, task.Context.Limits.PduDesignShare * volts))
                .OrderBy(PriceOf).ThenBy(set => string.Join(' ', set.Select(p => p.PartNumber)), StringComparer.Ordinal))
            .Take(MostOptions)
            .Select(set => (IReadOnlyList<Product>)[.. BehindUpsOf(task, trial), .. set]);
    }

    private static double PriceOf(IEnumerable<Product> parts) => parts.Sum(p => p.Price ?? double.PositiveInfinity);

    // Each cord, that with the greatest load first, in the outlet group with the most left.
    private static bool Take(Product[] units, Cord[] cords, double voltsInUse)
    {
        var groups = units.SelectMany(u => u.Pdu!.Groups!.Select(g => (
            Sockets: g.Outlets.SelectMany(o => Enumerable.Repeat(o.Socket, o.Count)).ToList(),
            Left: new[] { voltsInUse * (g.BreakerA ?? u.Pdu.RatedA ?? double.PositiveInfinity) }))).ToArray();
        return Array.TrueForAll(cords, cord =>
        {
            var (sockets, left) = groups.Where(g => g.Left[0] >= cord.VoltAmperes && g.Sockets.Exists(s => PlugFit.Fits(cord.Code, s)))
                .OrderByDescending(g => g.Left[0]).FirstOrDefault();
            if (sockets is null)
            {
                return false;
            }

            left[0] -= cord.VoltAmperes;
            return sockets.Remove(sockets.First(s => PlugFit.Fits(cord.Code, s)));
        });
    }

    /// <summary>The mains PDUs that were added to a rack.</summary>
    public static IReadOnlyList<Product> UnitsOf(ProposalTask task, Trial trial) => [.. AddedTo(task, trial).Where(p => !SupplyChoice.IsForUps(p))];

    // The PDUs behind UPSs stay as they were chosen.
    private static IReadOnlyList<Product> BehindUpsOf(ProposalTask task, Trial trial) =>
        AddedTo(task, trial).Where(SupplyChoice.IsForUps).ToArray() is { Length: > 0 } own ? own : BehindUps(task);

    private static IEnumerable<Product> AddedTo(ProposalTask task, Trial trial) => trial.Completed.RackBuild.Units
        .Where(u => OwnEquipment.IdOf(u.Piece.PartNumber) is null && !IsOrdered(task, u.Piece))
        .Select(u => task.Products[u.Piece.PartNumber]);

    private static bool IsOrdered(ProposalTask task, Piece piece) =>
        task.Ordered.Parts.Any(p => p.Product.PartNumber == piece.PartNumber && piece.Ordinal < p.OrderUnits * Stock.PiecesOf(p.Product));
}
