using RackCheck.Model;

namespace RackCheck.Planning.Proposals;

/// <summary>A part of a rack that the request does not have.</summary>
/// <param name="Product">The product.</param>
/// <param name="Quantity">Order units.</param>
/// <param name="Why">What it is needed for.</param>
internal sealed record AddedPart(Product Product, int Quantity, WordedText Why)
{
    /// <summary>Part number.</summary>
    public string PartNumber => Product.PartNumber;
}

/// <summary>The parts of a rack that the request does not have.</summary>
internal static class AddedParts
{
    /// <summary>The parts of a rack, by part number.</summary>
    public static IReadOnlyList<AddedPart> Of(Trial trial) => Merge(
        trial.Completed.Added.Select(p => new AddedPart(p.Product, (int)Math.Min(p.OrderUnits, int.MaxValue), p.Reason))
            .Concat(trial.IsCabinetThere ? [] : [new AddedPart(trial.Offer.Order!, 1, ProposalWordings.Cabinet)]));

    /// <summary>Each part number once, with every reason.</summary>
    public static IReadOnlyList<AddedPart> Merge(IEnumerable<AddedPart> parts) =>
    [
        .. parts.GroupBy(p => p.PartNumber)
            .Select(g => new AddedPart(g.First().Product, g.Sum(p => p.Quantity), g.Select(p => p.Why).Aggregate((all, next) => all.With(next))))
            .OrderBy(p => p.PartNumber, StringComparer.Ordinal),
    ];

    /// <summary>What the parts cost; null where a price is missing or they are in several currencies.</summary>
    public static double? CostOf(IReadOnlyList<AddedPart> parts) =>
        parts.Count > 0 && parts.All(p => p.Product.Price is not null && p.Product.Currency == parts[0].Product.Currency)
            ? Quantities.Round(parts.Sum(p => p.Quantity * p.Product.Price!.Value))
            : null;

    /// <summary>The lines of the answer.</summary>
    public static IReadOnlyList<AddedLine> Written(IEnumerable<AddedPart> parts) =>
    [
        .. parts.Select(p => new AddedLine
        {
            PartNumber = p.PartNumber, Name = p.Product.Name, Quantity = p.Quantity, Price = p.Product.Price, Currency = p.Product.Currency, Why = p.Why.Text,
            WhyKey = p.Why.Key, WhyData = p.Why.Values,
        }),
    ];
}
