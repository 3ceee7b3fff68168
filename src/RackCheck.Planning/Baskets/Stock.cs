using RackCheck.Model;

namespace RackCheck.Planning.Baskets;

/// <summary>One piece out of the stock of a basket: the first, second, ... of its part number.</summary>
/// <param name="PartNumber">The part number.</param>
/// <param name="Ordinal">Counted from 0 over all lines with the part number.</param>
internal readonly record struct Piece(string PartNumber, long Ordinal);

/// <summary>What a basket has of one product, and how much of it is used.</summary>
internal sealed class StockEntry(Product product, long orderUnits)
{
    public Product Product => product;

    public long OrderUnits => orderUnits;

    public long Used { get; private set; }

    public long Left => (orderUnits * Stock.PiecesOf(product)) - Used;

    /// <summary>Order units of which no piece is used.</summary>
    public long SpareUnits => Left / Stock.PiecesOf(product);

    public Piece Take() => new(product.PartNumber, Used++);

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

    public Stock(IEnumerable<(Product Product, long OrderUnits)> content)
    {
        foreach (var (product, units) in content)
        {
            var before = entries.GetValueOrDefault(product.PartNumber)?.OrderUnits ?? 0;
            entries[product.PartNumber] = new StockEntry(product, before + units);
        }
    }

    public IEnumerable<StockEntry> All => entries.Values;

    public static int PiecesOf(Product product) => product.Pieces ?? 1;

    public IEnumerable<StockEntry> Of(ProductKind kind) => entries.Values.Where(e => e.Product.Kind == kind);

    public IEnumerable<StockEntry> LeftOf(ProductKind kind) => Of(kind).Where(e => e.Left > 0);

    public StockEntry? Find(string partNumber) => entries.GetValueOrDefault(partNumber);

    /// <summary>The same, nothing used yet, with more or less of some products.</summary>
    public Stock With(IEnumerable<(Product Product, long OrderUnits)> more) => new(entries.Values.Select(e => (e.Product, e.OrderUnits)).Concat(more));
}
