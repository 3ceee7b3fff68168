using RackCheck.Model;

namespace RackCheck.Planning.Building;

/// <summary>Rounds a number of pieces up to whole packs.</summary>
public static class Packs
{
    /// <summary>Order units of products that differ in pack size only: the fewest excess pieces, then the fewest order units.</summary>
    /// <returns>Products and order units of each.</returns>
    public static IReadOnlyList<(Product Product, long Units)> Choose(IEnumerable<Product> alike, long pieces)
    {
        Product[] sizes = [.. alike.OrderByDescending(Stock.PiecesOf).ThenBy(p => p.PartNumber, StringComparer.Ordinal)];
        List<(Product, long)>? best = null;
        var (bestPieces, bestUnits) = (long.MaxValue, long.MaxValue);

        // From the largest pack down. The remainder may be rounded up at each size.
        var (taken, left) = (new List<(Product, long)>(), pieces);
        foreach (var product in sizes)
        {
            var size = Stock.PiecesOf(product);
            List<(Product Product, long Units)> whole = [.. taken, (product, (left + size - 1) / size)];
            whole.RemoveAll(w => w.Units == 0);
            var (sum, units) = (whole.Sum(w => w.Units * Stock.PiecesOf(w.Product)), whole.Sum(w => w.Units));
            if (sum < bestPieces || (sum == bestPieces && units < bestUnits))
            {
                (best, bestPieces, bestUnits) = (whole, sum, units);
            }

            taken.Add((product, left / size));
            left %= size;
        }

        return best!;
    }
}
