using RackCheck.Model;

namespace RackCheck.Planning.Building;

/// <summary>A basket with all missing parts added. Planning it again finds nothing missing.</summary>
/// <param name="RackBuild">The rack of the completed basket.</param>
/// <param name="Added">Added parts by part number: product, order units, reason and stage.</param>
internal sealed record Completed(RackBuild RackBuild, IReadOnlyList<MissingPiece> Added);

/// <summary>Completes a basket: builds the rack, adds missing parts and builds it again until nothing is missing.</summary>
internal static class BasketCompletion
{
    // Usually one round per stage; outlets may take several.
    private const int MostRounds = 48;

    /// <summary>Completes a basket. The stock contains the cabinet.</summary>
    /// <returns>The completed basket.</returns>
    public static Completed Run(BasketContext context, Stock stock, Product cabinet, CancellationToken cancellation) =>
        Finish(context, stock, cabinet, Mount(context, stock, cabinet, cancellation), cancellation);

    /// <summary>
    /// Completes a basket with the parts that need space or move air only: shelves, rails, KVM switch and roof fans.
    /// </summary>
    /// <returns>The rack without power, earth, panels and fixings.</returns>
    public static Completed Mount(BasketContext context, Stock stock, Product cabinet, CancellationToken cancellation)
    {
        context.OutletsGivenUp = false;
        return Run(context, stock, new RackSeries(context, cabinet), [], Extent.Mounted, cancellation);
    }

    /// <summary>Completes a mounted basket, perhaps after its items got other positions. Parts that do not depend on positions stay.</summary>
    /// <param name="mounted">The basket with the parts that need space.</param>
    /// <returns>The completed basket.</returns>
    public static Completed Finish(BasketContext context, Stock stock, Product cabinet, Completed mounted, CancellationToken cancellation)
    {
        context.OutletsGivenUp = false;
        var series = new RackSeries(context, cabinet);
        var wired = Run(context, stock, series, mounted.Added.Where(p => p.Stage < Stage.Earth), Extent.Wired, cancellation);
        var dressed = series.Build(stock.With(wired.Added.Select(p => (p.Product, p.OrderUnits))), Extent.Dressed);
        return dressed.MissingPieces.Count == 0
            ? wired with { RackBuild = dressed }
            : Run(context, stock, series, Merged(wired.Added.Concat(dressed.MissingPieces)), Extent.Dressed, cancellation);
    }

    /// <summary>One piece for each part number, with its first reason.</summary>
    public static MissingPiece[] Merged(IEnumerable<MissingPiece> pieces) =>
        [.. pieces.GroupBy(p => p.Product.PartNumber).Select(g => g.First() with { OrderUnits = g.Sum(p => p.OrderUnits) })];

    private static bool HasFixings(IEnumerable<MissingPiece> pieces) => pieces.Any(p => p.Stage == Stage.Fixings);

    // Panels need fixings after all others: the packs that suit all of them together.
    private static void Repack(BasketContext context, Stock stock, SortedDictionary<string, MissingPiece> added, RackBuild build)
    {
        var fixing = FixingSets.FixingOf(context.Request, build);
        var there = stock.All.Where(e => e.Product.Kind == ProductKind.Fixings && e.Product.Fixing == fixing)
            .Sum(e => e.OrderUnits * Stock.PiecesOf(e.Product));
        foreach (var part in added.Where(a => a.Value.Stage == Stage.Fixings).Select(a => a.Key).ToArray())
        {
            added.Remove(part);
        }

        foreach (var piece in FixingSets.Packed(context, build, fixing, FixingSets.NeededBy(build) - there))
        {
            added[piece.Product.PartNumber] = piece;
        }
    }

    // Outlets of a second round serve other cords than those of the first. For all other stages the first reason is complete.
    private static WordedText Both(MissingPiece earlier, MissingPiece later) =>
        later.Stage == Stage.Outlets ? earlier.Reason.With(later.Reason) : earlier.Reason;

    private static Completed Run(
        BasketContext context,
        Stock stock,
        RackSeries series,
        IEnumerable<MissingPiece> from,
        Extent extent,
        CancellationToken cancellation)
    {
        var added = new SortedDictionary<string, MissingPiece>(from.ToDictionary(p => p.Product.PartNumber), StringComparer.Ordinal);
        var build = Make(added.Values);
        var isFastened = HasFixings(added.Values);
        var isRepacked = false;
        for (var round = 0; build.MissingPieces.Count > 0 && round < MostRounds; round++)
        {
            cancellation.ThrowIfCancellationRequested();
            var stage = build.MissingPieces.Min(l => l.Stage);
            var before = build;
            var kept = new SortedDictionary<string, MissingPiece>(added, StringComparer.Ordinal);

            // From earthing on, no part changes what another stage needs.
            foreach (var piece in build.MissingPieces.Where(l => l.Stage == stage || (stage >= Stage.Earth && l.Stage >= Stage.Earth)))
            {
                added[piece.Product.PartNumber] = added.TryGetValue(piece.Product.PartNumber, out var earlier)
                    ? earlier with { OrderUnits = earlier.OrderUnits + piece.OrderUnits, Reason = Both(earlier, piece) }
                    : piece;
            }

            build = Make(added.Values, isWhole: round == MostRounds - 1);

            isRepacked |= isFastened && HasFixings(before.MissingPieces);
            isFastened |= HasFixings(before.MissingPieces);

            // Outlets that serve no further cord are removed.
            if (stage == Stage.Outlets && build.OutletsShort >= before.OutletsShort)
            {
                (added, context.OutletsGivenUp) = (kept, true);
                build = Make(added.Values);
            }
        }

        if (isRepacked)
        {
            Repack(context, stock, added, build);
            build = Make(added.Values);
        }

        TakeBack(added, ref build);
        return new Completed(build, [.. added.Values]);

        RackBuild Make(IEnumerable<MissingPiece> more, bool isWhole = false) =>
            series.Build(stock.With(more.Select(l => (l.Product, l.OrderUnits))), extent, isWhole);

        // Removes added parts that the final rack does not use, if nothing is missing without them.
        void TakeBack(SortedDictionary<string, MissingPiece> all, ref RackBuild made)
        {
            foreach (var part in all.Keys.ToArray())
            {
                var spare = Math.Min(made.Stock.Find(part)!.SpareUnits, all[part].OrderUnits);
                if (spare == 0)
                {
                    continue;
                }

                var fewer = new SortedDictionary<string, MissingPiece>(all, StringComparer.Ordinal);
                fewer[part] = all[part] with { OrderUnits = all[part].OrderUnits - spare };
                var without = Make(fewer.Values.Where(l => l.OrderUnits > 0));
                if (without.MissingPieces.Count == 0 && without.OutletsShort <= made.OutletsShort)
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
