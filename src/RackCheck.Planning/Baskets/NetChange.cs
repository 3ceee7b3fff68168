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
        Count(completed.Lines, 1);
        Count(lines.Request.Lines, -1);
        Replaced = [.. Exchanged(changes, completed, products)];
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

    // A UPS is exchanged first of all, on the line that it has in the order. Cabinets of the basket that it is left without, each against one that it has
    // more of. The first pass has the reason; a later one may exchange again.
    private IEnumerable<Exchange> Exchanged(IReadOnlyList<BasketChange> changes, BasketRequest completed, IReadOnlyDictionary<string, Product> products)
    {
        foreach (var other in changes.SelectMany(c => c.Replaced).Where(r => r.Product.Kind != ProductKind.Cabinet))
        {
            Count(lines.Request.Lines[BasketLines.IndexOf(other.Line)].PartNumber!, other.Quantity);
            Count(other.Product.PartNumber, -other.Quantity);
            yield return other;
        }

        Exchange[] reasons = [.. changes.SelectMany(c => c.Replaced).Where(r => r.Product.Kind == ProductKind.Cabinet)];
        var cabinets = completed.Lines.Select(l => l.PartNumber is { } number ? products.GetValueOrDefault(number) : null)
            .OfType<Product>()
            .Where(p => p.Kind == ProductKind.Cabinet)
            .DistinctBy(p => p.PartNumber)
            .ToArray();
        foreach (var (own, line, quantity) in reasons.Length > 0 ? lines.Cabinets : [])
        {
            var pointer = BasketLines.PointerOf(line);
            var left = Math.Min(-more.GetValueOrDefault(own.PartNumber), quantity);
            if (left > 0 && Array.Find(cabinets, c => more.GetValueOrDefault(c.PartNumber) > 0) is { } other)
            {
                var units = Math.Min(left, more[other.PartNumber]);
                Count(own.PartNumber, units);
                Count(other.PartNumber, -units);
                yield return (Array.Find(reasons, r => r.Line == pointer) ?? reasons[0]) with
                {
                    Line = pointer,
                    Product = other,
                    Quantity = (int)units,
                };
            }
        }
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
