using RackCheck.Model;

namespace RackCheck.Planning.Proposals;

/// <summary>What a rack costs, as far as prices tell.</summary>
/// <param name="Amount">Sum of the prices of its added lines, in the currency; infinite where a price is missing.</param>
/// <param name="Currency">The currency, ISO 4217 code; null where it is not known.</param>
internal sealed record RackCost(double Amount, string? Currency)
{
    /// <summary>Whether all prices are known, in one currency.</summary>
    public bool IsKnown => double.IsFinite(Amount);

    /// <summary>The cost of a rack. Its cabinet counts where it is to be ordered; one that is there is no added line.</summary>
    public static RackCost Of(Trial trial) => Sum([.. AddedParts.Of(trial).Select(p => (p.Product, (long)p.Quantity))]);

    /// <summary>The cost of several racks.</summary>
    public static RackCost Of(IReadOnlyList<Trial> trials)
    {
        RackCost[] costs = [.. trials.Select(Of)];
        return costs.Select(c => c.Currency).Distinct().Count() == 1 ? new(costs.Sum(c => c.Amount), costs[0].Currency) : new(double.PositiveInfinity, null);
    }

    /// <summary>A cost that no rack is below: the cheapest cabinet, and the cheapest of each kind of which some are needed whatever is chosen.</summary>
    /// <param name="task">The request.</param>
    /// <param name="open">The cabinets that are not proven to be unsuitable.</param>
    /// <param name="needed">Kinds of products, each with the number of order units that no rack can do without.</param>
    public static double Least(ProposalTask task, IEnumerable<CabinetOffer> open, IEnumerable<(ProductKind Kind, long Count)> needed) =>
        open.Min(task.LeastCostOf) is var cabinet && double.IsFinite(cabinet)
            ? cabinet + needed.Sum(n => n.Count * task.Context.Offered(n.Kind).Min(p => p.Price ?? 0))
            : 0;

    private static RackCost Sum((Product Product, long Units)[] parts)
    {
        string?[] currencies = [.. parts.Select(p => p.Product.Currency).Distinct()];
        return currencies.Length > 1 || Array.Exists(parts, p => p.Product.Price is null)
            ? new(double.PositiveInfinity, null)
            : new(parts.Sum(p => p.Product.Price!.Value * p.Units), currencies is [var only] ? only : null);
    }
}
