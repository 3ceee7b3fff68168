using RackCheck.Model;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Planning.Building;

/// <summary>Items with their own ids as pieces of a stock. Each is a product of its own, under a key that no catalogue has.</summary>
internal static class OwnEquipment
{
    // No part number begins with a line break.
    private const char Mark = '\n';

    /// <summary>Order of the keys of a stock: items by id, 2 before 10, so that like items take ascending positions; then products by part number.</summary>
    public static IComparer<string> ByKey { get; } = Comparer<string>.Create(static (one, other) =>
        one.StartsWith(Mark) && other.StartsWith(Mark) ? IdOrder.Instance.Compare(one, other) : string.CompareOrdinal(one, other));

    /// <summary>Key of an item in a stock.</summary>
    public static string KeyOf(string id) => Mark + id;

    /// <summary>Id of an item by its key; null for the part number of a catalogue product.</summary>
    public static string? IdOf(string key) => key.StartsWith(Mark) ? key[1..] : null;

    /// <summary>An item as a product.</summary>
    /// <param name="item">The item with the data of its part number.</param>
    /// <param name="product">The catalogue product of its part number, if any.</param>
    /// <returns>The product.</returns>
    public static Product ProductOf(Item item, Product? product) => new()
    {
        PartNumber = KeyOf(item.Id),
        Name = item.Id,
        Kind = product?.Kind == ProductKind.FanTray ? ProductKind.FanTray
            : item.Category == ItemCategory.Shelf ? ProductKind.Shelf
            : ProductKind.Equipment,
        Item = (ProductItem)PartPlan<ItemFacts>.Instance.Fill(new ProductItem(), item, null),
        Fans = product?.Fans,
        CordIncluded = product?.CordIncluded,
        RailsIncluded = product?.RailsIncluded,
    };
}
