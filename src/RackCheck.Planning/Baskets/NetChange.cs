using RackCheck.Model;
using RackCheck.Planning.Building;

namespace RackCheck.Planning.Baskets;

/// <summary>The difference between a basket and its completed one. What one pass added and a later one took back is in neither list.</summary>
internal sealed class NetChange
{
    private readonly BasketLines lines;
    private readonly Dictionary<string, long> more = new(StringComparer.Ordinal);

    /// <summary>Works the difference out.</summary>
    /// <param name="lines">The basket.</param>
    /// <param name="completed">The completed basket.</param>
    /// <param name="changes">The changes from the one to the other, in order.</param>
    /// <param name="products">All products of both.</param>
    public NetChange(BasketLines lines, BasketRequest completed, IReadOnlyList<BasketChange> changes, IReadOnlyDictionary<string, Product> products)
    {
        this.lines = lines;
        Replaced = changes.Count > 0 ? [.. changes[0].Replaced.Select(r => Followed(r, changes.Skip(1)))] : [];
        Count(completed.Lines, 1);
        Count(lines.Request.Lines, -1);
        foreach (var exchange in Replaced)
        {
            Count(OwnOf(exchange), exchange.Quantity);
            Count(exchange.PartNumber, -exchange.Quantity);
        }

        Added =
        [
            .. changes.SelectMany(c => c.Added)
                .GroupBy(p => p.Product.PartNumber, StringComparer.Ordinal)
                .SelectMany(g => Trimmed(g, more.GetValueOrDefault(g.Key))),
        ];
        Cabinets =
        [
            .. more.Where(m => m.Value > 0 && products[m.Key].Kind == ProductKind.Cabinet)
                .OrderBy(m => m.Key, StringComparer.Ordinal)
                .SelectMany(m => Enumerable.Repeat(products[m.Key], (int)m.Value)),
        ];
        Excess = ExcessOf(changes);
    }

    /// <summary>Lines to exchange.</summary>
    public IReadOnlyList<Exchange> Replaced { get; }

    /// <summary>Parts to add.</summary>
    public IReadOnlyList<MissingPiece> Added { get; }

    /// <summary>Cabinets to add.</summary>
    public IReadOnlyList<Product> Cabinets { get; }

    /// <summary>Excess of lines, in request order.</summary>
    public IReadOnlyList<Surplus> Excess { get; }

    // What a later pass exchanges again.
    private static Exchange Followed(Exchange first, IEnumerable<BasketChange> later)
    {
        foreach (var change in later)
        {
            var again = change.Left.Zip(change.Replaced).FirstOrDefault(l => l.First == first.PartNumber && l.Second.Quantity >= first.Quantity).Second;
            first = again is null ? first : first with { PartNumber = again.PartNumber, Name = again.Name };
        }

        return first;
    }

    private static IEnumerable<MissingPiece> Trimmed(IEnumerable<MissingPiece> pieces, long units)
    {
        foreach (var piece in pieces)
        {
            if (Math.Min(units, piece.OrderUnits) is > 0 and var taken)
            {
                units -= taken;
                yield return piece with { OrderUnits = taken };
            }
        }
    }

    // The pieces of the first line of a part number are used first.
    private List<Surplus> ExcessOf(IReadOnlyList<BasketChange> changes)
    {
        var reasons = changes.SelectMany(c => c.Excess).ToLookup(e => e.PartNumber, e => e.Why, StringComparer.Ordinal);
        var exchanged = Replaced.ToDictionary(r => r.Line, r => r.Quantity, StringComparer.Ordinal);
        List<Surplus> excess = [];
        foreach (var (index, line) in lines.Request.Lines.Index().Reverse())
        {
            var pointer = BasketLines.PointerOf(index);
            if (line.PartNumber is { } number
                && Math.Min(-more.GetValueOrDefault(number), line.Quantity - exchanged.GetValueOrDefault(pointer)) is > 0 and var units)
            {
                more[number] += units;
                excess.Add(new Surplus(pointer, number, (int)units, reasons[number].FirstOrDefault() ?? ExcessWordings.NotNeeded));
            }
        }

        excess.Reverse();
        return excess;
    }

    private string OwnOf(Exchange exchange) => lines.Cabinets.First(c => BasketLines.PointerOf(c.Line) == exchange.Line).Product.PartNumber;

    private void Count(IEnumerable<BasketLine> all, int sign)
    {
        foreach (var line in all)
        {
            if (line.PartNumber is { } number)
            {
                Count(number, (long)sign * line.Quantity);
            }
        }
    }

    private void Count(string number, long units) => more[number] = more.GetValueOrDefault(number) + units;
}
