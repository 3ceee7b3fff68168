using RackCheck.Model;

namespace RackCheck.Planning.Baskets;

/// <summary>A basket with all that was missing added: planning it again finds nothing missing.</summary>
/// <param name="Bay">The rack of the completed basket.</param>
/// <param name="Added">What was added, by part number: product, order units, reason and stage.</param>
internal sealed record Completed(Bay Bay, IReadOnlyList<Lack> Added);

/// <summary>Completes a basket: make the rack, add what lacks, make it again, until nothing lacks.</summary>
internal static class Completion
{
    // A round a stage does in the usual case; outlets may take several.
    private const int MostRounds = 48;

    /// <summary>Completes a basket.</summary>
    /// <param name="context">What the basket's plans go by.</param>
    /// <param name="stock">The basket.</param>
    /// <param name="cabinet">The cabinet, of which the basket has one.</param>
    /// <param name="cancellation">Stops between two rounds.</param>
    /// <returns>The completed basket.</returns>
    public static Completed Run(BasketContext context, Stock stock, Product cabinet, CancellationToken cancellation) => Run(context, stock, cabinet, BayMaker.Make, cancellation);

    /// <summary>Completes a basket with what takes room or moves air only: shelves, rails, a console switch, fans. It is what tells whether a cabinet takes everything.</summary>
    /// <param name="context">What the basket's plans go by.</param>
    /// <param name="stock">The basket.</param>
    /// <param name="cabinet">The cabinet, of which the basket has one.</param>
    /// <param name="cancellation">Stops between two rounds.</param>
    /// <returns>The rack without power, earth, panels and fixings.</returns>
    public static Bay Mount(BasketContext context, Stock stock, Product cabinet, CancellationToken cancellation) =>
        Run(context, stock, cabinet, BayMaker.Mount, cancellation).Bay;

    // Outlets of a second round are there for other cords than those of the first; of all else the first reason tells the whole.
    private static string Both(Lack earlier, Lack later) =>
        later.Stage == Stage.Outlets && !earlier.Reason.Contains(later.Reason, StringComparison.Ordinal) ? $"{earlier.Reason} {later.Reason}" : earlier.Reason;

    private static Completed Run(BasketContext context, Stock stock, Product cabinet, Func<BasketContext, Stock, Product, Bay> maker, CancellationToken cancellation)
    {
        var added = new SortedDictionary<string, Lack>(StringComparer.Ordinal);
        context.OutletsGivenUp = false;
        var bay = Make([]);
        for (var round = 0; bay.Lacks.Count > 0 && round < MostRounds; round++)
        {
            cancellation.ThrowIfCancellationRequested();
            var stage = bay.Lacks.Min(l => l.Stage);
            var before = bay;
            var kept = new SortedDictionary<string, Lack>(added, StringComparer.Ordinal);
            foreach (var lack in bay.Lacks.Where(l => l.Stage == stage))
            {
                added[lack.Product.PartNumber] = added.TryGetValue(lack.Product.PartNumber, out var earlier)
                    ? earlier with { OrderUnits = earlier.OrderUnits + lack.OrderUnits, Reason = Both(earlier, lack) }
                    : lack;
            }

            bay = Make(added.Values);

            // Outlets that bring no cord further are no answer to it.
            if (stage == Stage.Outlets && bay.OutletsShort >= before.OutletsShort)
            {
                (added, context.OutletsGivenUp) = (kept, true);
                bay = Make(added.Values);
            }
        }

        TakeBack(added, ref bay);
        return new Completed(bay, [.. added.Values]);

        Bay Make(IEnumerable<Lack> more) => maker(context, stock.With(more.Select(l => (l.Product, l.OrderUnits))), cabinet);

        // What came in on the way and is not needed in the end goes out again, if nothing lacks without it.
        void TakeBack(SortedDictionary<string, Lack> all, ref Bay made)
        {
            foreach (var part in all.Keys.ToArray())
            {
                var spare = Math.Min(made.Stock.Find(part)!.SpareUnits, all[part].OrderUnits);
                if (spare == 0)
                {
                    continue;
                }

                var fewer = new SortedDictionary<string, Lack>(all, StringComparer.Ordinal);
                fewer[part] = all[part] with { OrderUnits = all[part].OrderUnits - spare };
                var without = Make(fewer.Values.Where(l => l.OrderUnits > 0));
                if (without.Lacks.Count == 0 && without.OutletsShort <= made.OutletsShort)
                {
                    all[part] = fewer[part];
                    made = without;
                    if (all[part].OrderUnits == 0)
                    {
                        all.Remove(part);
                    }
                }
            }
        }
    }
}
