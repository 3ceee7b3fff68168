using RackCheck.Model;
using RackCheck.Rules;
using RackCheck.Survey;

namespace RackCheck.Planning.Baskets;

/// <summary>A chosen cabinet.</summary>
/// <param name="Product">The cabinet.</param>
/// <param name="TakesAll">Whether it takes everything.</param>
internal sealed record ChosenCabinet(Product Product, bool TakesAll);

/// <summary>Chooses the cabinet from the basket, otherwise from the offered products: the smallest that takes everything with the fewest errors.</summary>
internal static class CabinetChoice
{
    // Checking a completed rack takes time, so only the smallest of equally suitable cabinets are tried.
    private const int MostMade = 64;
    private const int MostChecked = 4;

    // Rules that depend on the size, doors, load rating and IP code of the cabinet. Power, earth and panels depend on other lines.
    private static readonly RackChecker Suits = RuleChecks.OfThemes("cabling", "cooling", "delivery", "depth", "load", "service");

    /// <summary>The best cabinet of the basket; further ones are excess.</summary>
    /// <returns>The cabinet; null if there is none.</returns>
    public static ChosenCabinet? Own(BasketContext context, Stock stock, RackChecker checker, CancellationToken cancellation)
    {
        Product[] own = [.. stock.LeftOf(ProductKind.Cabinet).Select(e => e.Product).Where(IsWhole)];
        return own is [var only] ? new ChosenCabinet(only, true) : Best(context, own, _ => stock, checker, cancellation);
    }

    /// <summary>The best offered cabinet for a basket without one.</summary>
    /// <returns>The cabinet; null if none is on offer.</returns>
    public static ChosenCabinet? Offered(BasketContext context, Stock stock, RackChecker checker, CancellationToken cancellation) =>
        Best(context, context.Offered(ProductKind.Cabinet).Where(IsWhole), p => stock.With([(p, 1)]), checker, cancellation);

    private static ChosenCabinet? Best(
        BasketContext context, IEnumerable<Product> cabinets, Func<Product, Stock> stockWith, RackChecker checker, CancellationToken cancellation)
    {
        Product[] sorted =
        [
            .. cabinets
                .OrderBy(p => p.Cabinet!.HeightU)
                .ThenBy(p => p.Cabinet!.WidthMm)
                .ThenBy(p => p.Cabinet!.DepthMm)
                .ThenBy(p => p.PartNumber, StringComparer.Ordinal)
                .Take(MostMade),
        ];
        if (sorted.Length == 0)
        {
            return null;
        }

        (Product Product, (int Misfits, int Errors, int Warnings) Rank)[] Ranked(IEnumerable<Product> products) =>
            [.. products.Select(p => (p, RankOf(BasketCompletion.Mount(context, stockWith(p).With([]), p, cancellation), cancellation)))];

        // A cabinet with less height than the equipment cannot take everything. Such cabinets are tried only if no other takes everything.
        var neededU = stockWith(sorted[0]).All
            .Where(e => e.Product.Kind is ProductKind.Equipment or ProductKind.Shelf or ProductKind.FanTray)
            .Sum(e => e.Left * (e.Product.Item!.HeightU ?? 0));
        var ranked = Ranked(sorted.Where(p => p.Cabinet!.HeightU >= neededU));
        if (!Array.Exists(ranked, r => r.Rank.Misfits == 0))
        {
            ranked = [.. Ranked(sorted.Where(p => p.Cabinet!.HeightU < neededU)), .. ranked];
        }

        var least = ranked.Min(r => r.Rank);
        ChosenCabinet? best = null;
        var fewest = (Unmet: int.MaxValue, Errors: int.MaxValue);
        foreach (var (product, rank) in ranked.Where(r => r.Rank == least).Take(MostChecked))
        {
            var build = BasketCompletion.Run(context, stockWith(product).With([]), product, cancellation).RackBuild;
            var faults = (build.Unmet.Count, RuleChecks.FaultsOf(checker, build.Describe(), cancellation).Errors);
            if (faults.CompareTo(fewest) < 0)
            {
                (best, fewest) = (new ChosenCabinet(product, rank.Misfits == 0), faults);
            }

            if (faults == (0, 0))
            {
                break;
            }
        }

        return best;
    }

    private static bool IsWhole(Product product) => product.Cabinet is { HeightU: not null, WidthMm: not null, DepthMm: not null };

    // First the items without a position, too deep, without support or too heavy for the cabinet; then errors and warnings of the rack.
    private static (int Misfits, int Errors, int Warnings) RankOf(RackBuild build, CancellationToken cancellation)
    {
        var rack = build.Describe() with { Pdus = null };
        var survey = new RackSurvey(rack);
        var deep = survey.Items.Count(i => survey.Cabinet.SetbackMm is { } setback ? !survey.Depth.Interval(i).Holds(setback) : survey.Depth.FitsNowhere(i));
        var heavy = survey.Mass.KnownEquipmentKg > (build.Cabinet.RatedLoadKg ?? double.PositiveInfinity) ? 1 : 0;
        var (errors, warnings) = RuleChecks.FaultsOf(Suits, rack, cancellation);
        return (build.NotPlaced.Count() + deep + heavy + build.Unmet.Count, errors, warnings);
    }
}
