using RackCheck.Model;

namespace RackCheck.Planning.Proposals;

/// <summary>A part of a rack that the request does not have.</summary>
/// <param name="PartNumber">Part number.</param>
/// <param name="Quantity">Order units.</param>
/// <param name="Why">What it is needed for.</param>
internal sealed record AddedPart(string PartNumber, int Quantity, WordedText Why);

/// <summary>The parts of a rack that the request does not have.</summary>
internal static class AddedParts
{
    /// <summary>The parts of a rack, by part number.</summary>
    public static IReadOnlyList<AddedPart> Of(Trial trial) => Merge(
        trial.Completed.Added.Select(p => new AddedPart(p.Product.PartNumber, (int)Math.Min(p.OrderUnits, int.MaxValue), p.Reason))
            .Concat(trial.Offer.Index is null ? [new AddedPart(trial.Offer.Product.PartNumber, 1, ProposalWordings.Cabinet)] : []));

    /// <summary>Each part number once, with every reason.</summary>
    public static IReadOnlyList<AddedPart> Merge(IEnumerable<AddedPart> parts) =>
    [
        .. parts.GroupBy(p => p.PartNumber)
            .Select(g => new AddedPart(g.Key, g.Sum(p => p.Quantity), g.Select(p => p.Why).Aggregate((all, next) => all.With(next))))
            .OrderBy(p => p.PartNumber, StringComparer.Ordinal),
    ];

    /// <summary>The lines of the answer.</summary>
    public static IReadOnlyList<AddedLine> Written(IEnumerable<AddedPart> parts) =>
    [
        .. parts.Select(p => new AddedLine
        {
            PartNumber = p.PartNumber, Quantity = p.Quantity, Why = p.Why.Text, WhyKey = p.Why.Key, WhyData = p.Why.Values,
        }),
    ];
}
