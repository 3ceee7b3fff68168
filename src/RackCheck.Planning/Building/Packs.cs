using RackCheck.Model;

namespace RackCheck.Planning.Building;

/// <summary>Rounds a number of pieces up to whole packs.</summary>
public static class Packs
{
    // With packs of 10, 20, 50 and 100 the best has at most one pack less of a size than fit, or two.
    private const int MostFewer = 3;
    private const int MostSizes = 5;

    /// <summary>
    /// Order units of products that differ in pack size only: the lowest price where all have one in the same currency, then the fewest excess pieces, then the
    /// fewest order units.
    /// </summary>
    /// <returns>Products and order units of each.</returns>
    public static IReadOnlyList<(Product Product, long Units)> Choose(IEnumerable<Product> alike, long pieces)
    {
        // The largest packs first, one of each size.
        Product[] sizes =
        [
            .. alike.OrderByDescending(Stock.PiecesOf).ThenBy(p => p.PartNumber, StringComparer.Ordinal).DistinctBy(Stock.PiecesOf),
        ];
        sizes = sizes.Length <= MostSizes ? sizes : [.. sizes.Take(MostSizes - 1), sizes[^1]];
        long[] units = new long[sizes.Length], best = [];
        var hasPrices = Array.TrueForAll(sizes, s => s.Price is not null && s.Currency == sizes[0].Currency);
        var least = (Price: double.PositiveInfinity, Pieces: long.MaxValue, Units: long.MaxValue);
        Fill(0, pieces, 0, 0);
        return [.. sizes.Zip(best).Where(s => s.Second > 0)];

        // Rounds up at this size, or takes fewer packs of it and goes on with smaller ones: of what a few more of a larger pack hold, these hold as much.
        void Fill(int at, long left, long packed, long count)
        {
            var size = Stock.PiecesOf(sizes[at]);
            var whole = (left + size - 1) / size;
            Array.Clear(units, at, units.Length - at);
            units[at] = whole;
            var price = hasPrices ? Math.Round(sizes.Zip(units).Sum(s => s.First.Price!.Value * s.Second), 4) : 0;
            if ((price, packed + (whole * size), count + whole) is var sum && sum.CompareTo(least) < 0)
            {
                (least, best) = (sum, [.. units]);
            }

            for (var fewer = 1; at + 1 < sizes.Length && fewer <= Math.Min(whole, MostFewer); fewer++)
            {
                units[at] = whole - fewer;
                Fill(at + 1, left - ((whole - fewer) * size), packed + ((whole - fewer) * size), count + whole - fewer);
            }
        }
    }
}
