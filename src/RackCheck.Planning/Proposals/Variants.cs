using RackCheck.Model;
using RackCheck.Planning.Building;

namespace RackCheck.Planning.Proposals;

/// <summary>Racks in the cabinet of a proposed one with other PDUs or other cooling: alternatives where there are too few other cabinets.</summary>
/// <param name="task">The request.</param>
/// <param name="maker">Makes the racks.</param>
internal sealed class Variants(ProposalTask task, TrialMaker maker)
{
    // The PDUs that suited the first rack; null before it.
    private IEnumerable<IReadOnlyList<Product>>? suited;

    /// <summary>Adds racks that gain something over those that there are.</summary>
    /// <param name="first">The preferred rack.</param>
    /// <param name="alternatives">The racks without an open error.</param>
    public void Add(Trial first, Alternatives<Trial> alternatives)
    {
        foreach (var parts in PowerOptions.Instead(task, first).Concat(Cooling(first)))
        {
            if (alternatives.IsFull || !task.Budget.Allows())
            {
                return;
            }

            var trial = maker.MakeWith(first, parts);
            if (CabinetSearch.IsSound(task, trial) && !trial.HasIdleUnit && alternatives.All.All(f => IsOther(f, trial)))
            {
                alternatives.Add(trial);
            }
        }
    }

    /// <summary>The rack in the same cabinet with fewer PDUs to order that has no more warnings and, where prices are known, costs no more.</summary>
    /// <param name="trial">A rack without an open error. What suits the first one is tried for the others.</param>
    /// <returns>The rack; the same one if no other is found.</returns>
    public Trial WithFewerUnits(Trial trial)
    {
        var count = PowerOptions.UnitsOf(task, trial).Count;
        var options = suited ?? (count > 1 ? PowerOptions.Fewer(task, trial) : []);
        suited = [];
        foreach (var parts in options)
        {
            if (!task.Budget.Allows())
            {
                break;
            }

            var other = maker.MakeWith(trial, parts);
            if (CabinetSearch.IsSound(task, other) && !other.HasIdleUnit && other.ProductWarnings <= trial.ProductWarnings
                && PowerOptions.UnitsOf(task, other).Count < count && !(RackCost.Of(other).Amount > RackCost.Of(trial).Amount))
            {
                suited = [parts];
                return other;
            }
        }

        return trial;
    }

    /// <summary>The racks in the same cabinet that cost less with other PDUs.</summary>
    /// <param name="first">A rack without an open error.</param>
    public IEnumerable<Trial> Cheaper(Trial first)
    {
        foreach (var parts in PowerOptions.Instead(task, first))
        {
            if (!task.Budget.Allows())
            {
                yield break;
            }

            var trial = maker.MakeWith(first, parts);
            if (CabinetSearch.IsSound(task, trial) && !trial.HasIdleUnit && trial.ProductWarnings <= first.ProductWarnings
                && RackCost.Of(trial).Amount < RackCost.Of(first).Amount)
            {
                yield return trial;
            }
        }
    }

    // Where heat asks for it: a rack that stays cool on its own needs no choice of fans.
    private IEnumerable<IReadOnlyList<Product>> Cooling(Trial first) =>
        first.Has("cooling.") || first.Completed.Added.Any(p => p.Stage == Stage.Cooling)
            ? CoolingOptions.Of(task, first.Offer, [.. PowerOptions.BehindUps(task), .. PowerOptions.UnitsOf(task, first)])
            : [];

    private static bool IsOther(Trial one, Trial other) =>
        !PartsOf(one).SetEquals(PartsOf(other)) || one.Offer != other.Offer;

    private static HashSet<(string, int)> PartsOf(Trial trial) => [.. AddedParts.Of(trial).Select(p => (p.PartNumber, p.Quantity))];
}
