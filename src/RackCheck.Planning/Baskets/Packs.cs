using RackCheck.Model;

namespace RackCheck.Planning.Baskets;

/// <summary>Whole packs for a number of pieces.</summary>
internal static class Packs
{
    /// <summary>Order units of products that are alike but for the size of the pack: as few pieces too many as can be, and then as few units.</summary>
    /// <param name="alike">The products, one at least.</param>
    /// <param name="pieces">Pieces wanted, 1 or more.</param>
    /// <returns>Products and units of each.</returns>
    public static IReadOnlyList<(Product Product, long Units)> Choose(IEnumerable<Product> alike, long pieces)
    {
        Product[] sizes = [.. alike.OrderByDescending(Stock.PiecesOf).ThenBy(p => p.PartNumber, StringComparer.Ordinal)];
        List<(Product, long)>? best = null;
        var (bestPieces, bestUnits) = (long.MaxValue, long.MaxValue);

        // From the largest down; with each size the rest may be rounded up.
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
