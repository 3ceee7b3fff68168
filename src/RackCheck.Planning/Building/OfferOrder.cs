using RackCheck.Model;

namespace RackCheck.Planning.Building;

/// <summary>Order in which products that suit alike are chosen: those that the supplier prefers, the cheapest, then by part number.</summary>
public sealed class OfferOrder : IComparer<Product>
{
    /// <summary>The order.</summary>
    public static OfferOrder Instance { get; } = new();

    /// <inheritdoc/>
    public int Compare(Product? x, Product? y)
    {
        var order = (y!.Preferred == true).CompareTo(x!.Preferred == true);

        // Prices in different currencies say nothing.
        order = order != 0 || x.Currency != y.Currency ? order : (x.Price ?? double.PositiveInfinity).CompareTo(y.Price ?? double.PositiveInfinity);
        return order != 0 ? order : string.CompareOrdinal(x.PartNumber, y.PartNumber);
    }
}
