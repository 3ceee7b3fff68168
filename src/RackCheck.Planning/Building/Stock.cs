using RackCheck.Model;

namespace RackCheck.Planning.Building;

/// <summary>One piece of the stock of a basket.</summary>
/// <param name="PartNumber">The part number.</param>
/// <param name="Ordinal">Index from 0 over all lines with the part number.</param>
internal readonly record struct Piece(string PartNumber, long Ordinal);

/// <summary>Order units of one product in a basket, and the pieces used.</summary>
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

    /// <summary>Counts as many pieces as used as another entry of the product.</summary>
    /// <param name="other">The other entry, of which no more are used than there are here.</param>
    public void UseLike(StockEntry other) => Used = other.Used;

    /// <summary>Uses one piece. At least one must be left.</summary>
    /// <returns>The piece.</returns>
    public Piece Take() => new(product.PartNumber, Used++);

    /// <summary>Uses up to a number of pieces.</summary>
    /// <returns>The number of pieces taken.</returns>
    public long Take(long pieces)
    {
        var taken = Math.Min(pieces, Left);
        Used += taken;
        return taken;
    }
}

/// <summary>
/// The pieces of a basket. Each plan has its own stock. Entries are in part number order and items of their own in the order of their ids, so that no
/// answer depends on the order of lines.
/// </summary>
internal sealed class Stock
{
    // In order of their keys.
    private readonly StockEntry[] entries;

    /// <summary>Adds products; a product that occurs more than once is summed.</summary>
    public Stock(IEnumerable<(Product Product, long OrderUnits)> content) => entries = Merged([], content);

    private Stock(StockEntry[] entries) => this.entries = entries;

    /// <summary>All entries, by part number.</summary>
    public IReadOnlyList<StockEntry> All => entries;

    /// <summary>Pieces per order unit, 1 or more.</summary>
    public static int PiecesOf(Product product) => product.Pieces ?? 1;

    /// <summary>Entries of a kind with pieces left, by part number.</summary>
    public IEnumerable<StockEntry> LeftOf(ProductKind kind) => entries.Where(e => e.Product.Kind == kind && e.Left > 0);

    /// <summary>Entry of a product; null if the basket has none.</summary>
    public StockEntry? Find(string partNumber)
    {
        var (from, to) = (0, entries.Length);
        while (from < to)
        {
            var middle = (from + to) / 2;
            switch (OwnEquipment.ByKey.Compare(entries[middle].Product.PartNumber, partNumber))
            {
                case 0:
                    return entries[middle];
                case < 0:
                    from = middle + 1;
                    break;
                default:
                    to = middle;
                    break;
            }
        }

        return null;
    }

    /// <summary>Counts the pieces as used that are used of another stock.</summary>
    /// <param name="other">The other stock; of what is used of it there is as much here.</param>
    public void UseLike(Stock other)
    {
        foreach (var entry in entries)
        {
            if (other.Find(entry.Product.PartNumber) is { } like)
            {
                entry.UseLike(like);
            }
        }
    }

    /// <summary>A copy with nothing used and without some products.</summary>
    public Stock Without(Func<Product, bool> left) => new(Merged(Array.FindAll(entries, e => !left(e.Product)), []));

    /// <summary>A copy with nothing used and with additional products.</summary>
    public Stock With(IEnumerable<(Product Product, long OrderUnits)> more) => new(Merged(entries, more));

    // Both in order, as entries are: a stock of few products more is made hundreds of times for a basket.
    private static StockEntry[] Merged(StockEntry[] entries, IEnumerable<(Product Product, long OrderUnits)> more)
    {
        (Product Product, long OrderUnits)[] added = [.. more.OrderBy(m => m.Product.PartNumber, OwnEquipment.ByKey)];
        var all = new List<StockEntry>(entries.Length + added.Length);
        var (from, next) = (0, 0);
        while (from < entries.Length || next < added.Length)
        {
            var isKnown = next == added.Length || (from < entries.Length && Order(entries[from].Product, added[next].Product) <= 0);
            var (product, units) = isKnown ? (entries[from].Product, entries[from++].OrderUnits) : added[next++];
            for (; next < added.Length && Order(added[next].Product, product) == 0; next++)
            {
                units += added[next].OrderUnits;
            }

            all.Add(new StockEntry(product, units));
        }

        return [.. all];
    }

    private static int Order(Product one, Product other) => OwnEquipment.ByKey.Compare(one.PartNumber, other.PartNumber);
}
