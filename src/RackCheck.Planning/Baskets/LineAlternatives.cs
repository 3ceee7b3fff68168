using RackCheck.Model;
using RackCheck.Planning.Building;

namespace RackCheck.Planning.Baskets;

/// <summary>Products that do the same as a missing line: of the same kind and size, and in nothing less.</summary>
internal static class LineAlternatives
{
    private const int Most = 3;

    /// <summary>The alternatives of a product, the cheapest first where all prices are known and comparable.</summary>
    /// <param name="product">The product.</param>
    /// <param name="units">Order units of it.</param>
    /// <param name="offered">Products on offer.</param>
    public static IReadOnlyList<LineAlternative> Of(Product product, long units, IReadOnlyList<Product> offered)
    {
        var pieces = units * Stock.PiecesOf(product);
        LineAlternative[] all =
        [
            .. offered.Where(p => p.Kind == product.Kind && p.PartNumber != product.PartNumber && p.InStock != false && Serves(p, product))
                .OrderByDescending(p => p.Preferred == true).ThenBy(Size).ThenBy(p => p.PartNumber, StringComparer.Ordinal)
                .Select(p => Line(p, (pieces + Stock.PiecesOf(p) - 1) / Stock.PiecesOf(p))),
        ];
        var comparable = all.Length > 0 && Array.TrueForAll(all, a => a.Price is not null && a.Currency == all[0].Currency);
        return [.. (comparable ? all.OrderBy(a => a.Price * a.Quantity) : all.AsEnumerable()).Take(Most)];
    }

    /// <summary>A product as an alternative.</summary>
    public static LineAlternative Line(Product product, long units) => new()
    {
        PartNumber = product.PartNumber,
        Name = product.Name,
        Quantity = (int)Math.Min(units, int.MaxValue),
        Price = product.Price,
        Currency = product.Currency,
    };

    private static bool Serves(Product other, Product product) => product.Kind switch
    {
        ProductKind.Cabinet => Suits(other.Cabinet!, product.Cabinet!),
        ProductKind.Fixings => other.Fixing == product.Fixing,
        ProductKind.BlankingPanel => other.Item?.HeightU == product.Item?.HeightU,
        ProductKind.Cord => other.Cord!.Plug == product.Cord!.Plug && other.Cord.Connector == product.Cord.Connector
            && other.Cord.LengthM >= product.Cord.LengthM,
        ProductKind.EarthLead => AtLeast(other.EarthLead!.CrossSectionMm2, product.EarthLead!.CrossSectionMm2)
            && AtLeast(other.EarthLead.LengthM, product.EarthLead.LengthM),
        ProductKind.EarthBar => other.EarthBar!.Terminals >= product.EarthBar!.Terminals
            && AtLeast(other.EarthBar.CrossSectionMm2, product.EarthBar.CrossSectionMm2),
        ProductKind.KvmLead => other.KvmLead!.LengthM >= product.KvmLead!.LengthM,
        ProductKind.CableArm => true,
        ProductKind.Support => Suits(other.Support!, product.Support!),
        ProductKind.Pdu => Suits(other.Pdu!, product.Pdu!),
        ProductKind.Equipment => other.Item is { Category: ItemCategory.KvmSwitch } && other.Item.HeightU == product.Item!.HeightU
            && other.Item.KvmPorts >= product.Item.KvmPorts && !(other.Item.Body?.DepthMm > product.Item.Body?.DepthMm)
            && !(other.Item.MassKg > product.Item.MassKg),
        _ => false,
    };

    // The same uprights, doors and panels in a frame that is no smaller and no higher on the way in.
    private static bool Suits(Cabinet other, Cabinet product) =>
        other.HeightU == product.HeightU && AtLeast(other.WidthMm, product.WidthMm) && AtLeast(other.DepthMm, product.DepthMm)
        && AtLeast(other.RatedLoadKg, product.RatedLoadKg) && other.Uprights?.SpacingMm == product.Uprights?.SpacingMm
        && other.FrontDoor?.Style == product.FrontDoor?.Style && other.RearDoor?.Style == product.RearDoor?.Style && !(other.HeightMm > product.HeightMm);

    private static bool Suits(Support other, Support product) =>
        other.Style == product.Style && AtLeast(other.RatedKg, product.RatedKg) && !(other.ThicknessMm > product.ThicknessMm)
        && !(other.MinSpacingMm > product.MinSpacingMm) && AtLeast(other.MaxSpacingMm, product.MaxSpacingMm)
        && AtLeast(other.ExtensionMm, product.ExtensionMm);

    // The same plug and place, and for every socket as many outlets.
    private static bool Suits(ProductPdu other, ProductPdu product) =>
        other.Plug == product.Plug && other.Mounting == product.Mounting && AtLeast(other.RatedA, product.RatedA)
        && (product.RemoteSwitched != true || other.RemoteSwitched == true) && !(other.LengthMm > product.LengthMm)
        && (product.Groups ?? []).SelectMany(g => g.Outlets).GroupBy(o => o.Socket)
            .All(s => (other.Groups ?? []).SelectMany(g => g.Outlets).Where(o => o.Socket == s.Key).Sum(o => o.Count) >= s.Sum(o => o.Count));

    private static bool AtLeast(double? other, double? product) => product is null || other >= product;

    private static double Size(Product product) =>
        Stock.PiecesOf(product) + (product.Cord?.LengthM ?? product.KvmLead?.LengthM ?? product.EarthLead?.LengthM ?? product.Pdu?.RatedA
            ?? product.Support?.RatedKg ?? product.EarthBar?.Terminals ?? product.Item?.KvmPorts ?? 0);
}
