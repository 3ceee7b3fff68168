using RackCheck.Model;

namespace RackCheck.Planning.Building;

/// <summary>Order in which products that suit alike are chosen: those in stock, those that the supplier prefers, the cheapest, then by part number.</summary>
public sealed class OfferOrder : IComparer<Product>
{
    private readonly bool heedsPreference;

    private OfferOrder(bool heedsPreference) => this.heedsPreference = heedsPreference;

    /// <summary>The usual order.</summary>
    public static OfferOrder Instance { get; } = new(heedsPreference: true);

    /// <summary>The same whatever is in stock or preferred: for the lowest cost.</summary>
    public static OfferOrder Cheapest { get; } = new(heedsPreference: false);

    /// <inheritdoc/>
    public int Compare(Product? x, Product? y)
    {
        var order = heedsPreference ? (x?.InStock == false).CompareTo(y?.InStock == false) : 0;
        order = order == 0 && heedsPreference ? (y?.Preferred == true).CompareTo(x?.Preferred == true) : order;

        // Prices in different currencies say nothing.
        order = order != 0 || x?.Currency != y?.Currency ? order : (x?.Price ?? double.PositiveInfinity).CompareTo(y?.Price ?? double.PositiveInfinity);
        return order != 0 ? order : string.CompareOrdinal(x?.PartNumber, y?.PartNumber);
    }
}
