using RackCheck.Model;

namespace RackCheck.Planning.Baskets;

/// <summary>One piece out of the stock of a basket: the first, second, ... of its part number.</summary>
/// <param name="PartNumber">The part number.</param>
/// <param name="Ordinal">Counted from 0 over all lines with the part number.</param>
internal readonly record struct Piece(string PartNumber, long Ordinal);

/// <summary>What a basket has of one product, and how much of it is used.</summary>
internal sealed class StockEntry(Product product, long orderUnits)
{
    /// <summary>The product.</summary>
    public Product Product => product;

    /// <summary>Order units in the basket.</summary>
    public long OrderUnits => orderUnits;

    /// <summary>Pieces used.</summary>
    public long Used { get; private set; }

    /// <summary>Pieces left.</summary>
    public long Left => (orderUnits * Stock.PiecesOf(product)) - Used;

    /// <summary>Order units of which no piece is used.</summary>
    public long SpareUnits => Left / Stock.PiecesOf(product);

    /// <summary>Uses one piece, of which one must be left.</summary>
    /// <returns>Which.</returns>
    public Piece Take() => new(product.PartNumber, Used++);

    /// <summary>Uses pieces, as far as there are any.</summary>
    /// <param name="pieces">How many are wanted.</param>
    /// <returns>How many there were.</returns>
    public long Take(long pieces)
    {
        var taken = Math.Min(pieces, Left);
        Used += taken;
        return taken;
    }
}

/// <summary>The pieces of a basket. Each plan of it takes them from a stock of its own. Everything is in order of part numbers, so that no answer hangs on the order of lines.</summary>
internal sealed class Stock
{
    private readonly SortedDictionary<string, StockEntry> entries = new(StringComparer.Ordinal);

    /// <summary>Lays in products, each as often as it stands there.</summary>
    /// <param name="content">Products and order units.</param>
    public Stock(IEnumerable<(Product Product, long OrderUnits)> content)
    {
        foreach (var (product, units) in content)
        {
            var before = entries.GetValueOrDefault(product.PartNumber)?.OrderUnits ?? 0;
            entries[product.PartNumber] = new StockEntry(product, before + units);
        }
    }

    /// <summary>All of it, by part number.</summary>
    public IEnumerable<StockEntry> All => entries.Values;

    /// <summary>Pieces in an order unit.</summary>
    /// <param name="product">The product.</param>
    /// <returns>How many, 1 or more.</returns>
    public static int PiecesOf(Product product) => product.Pieces ?? 1;

    /// <summary>What is left of a kind, by part number.</summary>
    /// <param name="kind">The kind.</param>
    /// <returns>Products of which pieces are left.</returns>
    public IEnumerable<StockEntry> LeftOf(ProductKind kind) => entries.Values.Where(e => e.Product.Kind == kind && e.Left > 0);

    /// <summary>What there is of a product.</summary>
    /// <param name="partNumber">Its part number.</param>
    /// <returns>It; null where the basket has none.</returns>
    public StockEntry? Find(string partNumber) => entries.GetValueOrDefault(partNumber);

    /// <summary>The same, nothing used yet, with more of some products.</summary>
    /// <param name="more">Products and order units.</param>
    /// <returns>The stock.</returns>
    public Stock With(IEnumerable<(Product Product, long OrderUnits)> more) => new(entries.Values.Select(e => (e.Product, e.OrderUnits)).Concat(more));
}
