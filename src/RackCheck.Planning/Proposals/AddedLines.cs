using RackCheck.Model;

namespace RackCheck.Planning.Proposals;

/// <summary>The parts of a rack that the request does not have.</summary>
internal static class AddedLines
{
    /// <summary>The lines of a rack, by part number.</summary>
    public static IReadOnlyList<AddedLine> Of(Trial trial) => Merge(
        trial.Completed.Added.Select(p => Line(p.Product.PartNumber, p.OrderUnits, p.Reason.Text))
            .Concat(trial.Offer.Index is null ? [Line(trial.Offer.Product.PartNumber, 1, "The cabinet of this rack.")] : []));

    /// <summary>One line for each part number.</summary>
    public static IReadOnlyList<AddedLine> Merge(IEnumerable<AddedLine> lines) =>
    [
        .. lines.GroupBy(l => l.PartNumber)
            .Select(g => g.First() with { Quantity = g.Sum(l => l.Quantity), Why = string.Join(' ', g.Select(l => l.Why).Distinct()) })
            .OrderBy(l => l.PartNumber, StringComparer.Ordinal),
    ];

    private static AddedLine Line(string partNumber, long units, string why) =>
        new() { PartNumber = partNumber, Quantity = (int)Math.Min(units, int.MaxValue), Why = why };
}
