using RackCheck.Model;
using RackCheck.Planning.Building;
using RackCheck.Survey.Catalogue;
using static System.FormattableString;

namespace RackCheck.Planning.Proposals;

/// <summary>A cabinet that a proposal may choose.</summary>
/// <param name="Product">The cabinet with the data of its part number, as a product.</param>
/// <param name="Index">Its index among the cabinets of the request; null for one of the catalogue.</param>
internal sealed record CabinetOffer(Product Product, int? Index)
{
    /// <summary>Height, U.</summary>
    public int HeightU => Product.Cabinet!.HeightU!.Value;

    /// <summary>Width, mm.</summary>
    public double WidthMm => Product.Cabinet!.WidthMm!.Value;

    /// <summary>Depth, mm.</summary>
    public double DepthMm => Product.Cabinet!.DepthMm!.Value;

    /// <summary>The product to order; null for a cabinet of the request without a part number of the catalogue, which is the customer's own.</summary>
    public Product? Order { get; init; } = Index is null ? Product : null;

    /// <summary>Pointer to what allows it.</summary>
    public string Pointer => Index is { } index ? Invariant($"/cabinets/{index}") : "";

    /// <summary>The cabinets to choose from, the preferred ones first.</summary>
    public static CabinetOffer[] Of(ProposalRequest request, IReadOnlyDictionary<string, Product> products, IReadOnlyList<Product> offered)
    {
        IEnumerable<CabinetOffer> all = request.Cabinets is { } given
            ? given.Select((cabinet, index) => new CabinetOffer(ProductOf(request, cabinet, index, products), index)
            {
                Order = products.GetValueOrDefault(cabinet.PartNumber ?? ""),
            })
            : offered.Where(p => p.Kind == ProductKind.Cabinet && p.Cabinet is not null).Select(p => new CabinetOffer(p, null));
        return Sorted(request, all);
    }

    /// <summary>Cabinets with all their sizes, the preferred ones first.</summary>
    public static CabinetOffer[] Sorted(ProposalRequest request, IEnumerable<CabinetOffer> all)
    {
        var whole = all.Where(c => c.Product.Cabinet is { HeightU: not null, WidthMm: not null, DepthMm: not null });
        var sorted = request.Prefer == CabinetPreference.SmallestFootprint
            ? whole.OrderBy(c => c.WidthMm * c.DepthMm).ThenBy(c => c.HeightU)
            : whole.OrderBy(c => request.Prefer == CabinetPreference.LowestCost ? c.Product.Price ?? (c.Order is null ? 0 : double.PositiveInfinity) : 0)
                .ThenBy(c => c.HeightU).ThenBy(c => c.DepthMm).ThenBy(c => c.WidthMm);
        return [.. sorted.ThenBy(c => c.Index).ThenBy(c => c.Product.PartNumber, StringComparer.Ordinal)];
    }

    private static Product ProductOf(ProposalRequest request, Cabinet cabinet, int index, IReadOnlyDictionary<string, Product> products) => new()
    {
        PartNumber = OwnEquipment.KeyOf(Invariant($"\ncabinet {index}")),
        Name = cabinet.PartNumber ?? "",
        Kind = ProductKind.Cabinet,
        Price = products.GetValueOrDefault(cabinet.PartNumber ?? "")?.Price,
        Currency = products.GetValueOrDefault(cabinet.PartNumber ?? "")?.Currency,
        Cabinet = ResolvedRack.Of(request.In(cabinet) with { Items = [] }, products).Description.Cabinet,
    };
}
