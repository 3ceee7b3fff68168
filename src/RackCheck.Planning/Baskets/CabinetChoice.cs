using RackCheck.Model;
using RackCheck.Rules;
using RackCheck.Survey;

namespace RackCheck.Planning.Baskets;

/// <summary>A cabinet that was chosen.</summary>
/// <param name="Product">It.</param>
/// <param name="TakesAll">Whether everything goes into it.</param>
internal sealed record ChosenCabinet(Product Product, bool TakesAll);

/// <summary>Chooses the cabinet: of those of the basket, else of those on offer, the smallest that takes everything and leaves the fewest faults.</summary>
internal static class CabinetChoice
{
    // Checking a completed rack is what costs: of the cabinets that suit alike only the smallest are tried.
    private const int MostMade = 64;
    private const int MostChecked = 4;

    // What a cabinet brings about by its size, doors, strength and protection. Power, earth and panels come with other lines.
    private static readonly RackChecker Suits = RuleChecks.OfThemes("cabling", "cooling", "delivery", "depth", "load", "service");

    /// <summary>The basket's own cabinet; further ones are too many.</summary>
    /// <param name="context">What the basket's plans go by.</param>
    /// <param name="stock">The basket.</param>
    /// <param name="checker">Checks the completed racks.</param>
    /// <param name="cancellation">Stops between two rounds or rules.</param>
    /// <returns>The cabinet; null where there is none.</returns>
    public static ChosenCabinet? Own(BasketContext context, Stock stock, RackChecker checker, CancellationToken cancellation)
    {
        Product[] own = [.. stock.LeftOf(ProductKind.Cabinet).Select(e => e.Product).Where(IsWhole)];
        return own is [var only] ? new ChosenCabinet(only, true) : Best(context, own, _ => stock, checker, cancellation);
    }

    /// <summary>The cabinet to propose.</summary>
    /// <param name="context">What the basket's plans go by.</param>
    /// <param name="stock">The basket, without a cabinet.</param>
    /// <param name="checker">Checks the completed racks.</param>
    /// <param name="cancellation">Stops between two rounds or rules.</param>
    /// <returns>The cabinet; null where none is on offer.</returns>
    public static ChosenCabinet? Offered(BasketContext context, Stock stock, RackChecker checker, CancellationToken cancellation) =>
        Best(context, context.Offered(ProductKind.Cabinet).Where(IsWhole), p => stock.With([(p, 1)]), checker, cancellation);

    private static ChosenCabinet? Best(BasketContext context, IEnumerable<Product> cabinets, Func<Product, Stock> stockWith, RackChecker checker, CancellationToken cancellation)
    {
        Product[] sorted =
        [
            .. cabinets
                .OrderBy(p => p.Cabinet!.HeightU).ThenBy(p => p.Cabinet!.WidthMm).ThenBy(p => p.Cabinet!.DepthMm).ThenBy(p => p.PartNumber, StringComparer.Ordinal)
                .Take(MostMade),
        ];
        if (sorted.Length == 0)
        {
            return null;
        }

        (Product Product, (int Misfits, int Errors, int Warnings) Rank)[] Ranked(IEnumerable<Product> products) =>
            [.. products.Select(p => (p, RankOf(Completion.Mount(context, stockWith(p).With([]), p, cancellation), cancellation)))];

        // Into one with fewer units than the equipment has not everything goes: those are made only where it does not go into the others either.
        var unitsNeeded = stockWith(sorted[0]).All.Where(e => e.Product.Kind is ProductKind.Equipment or ProductKind.Shelf or ProductKind.FanTray).Sum(e => e.Left * (e.Product.Item!.HeightU ?? 0));
        var ranked = Ranked(sorted.Where(p => p.Cabinet!.HeightU >= unitsNeeded));
        if (!Array.Exists(ranked, r => r.Rank.Misfits == 0))
        {
            ranked = [.. Ranked(sorted.Where(p => p.Cabinet!.HeightU < unitsNeeded)), .. ranked];
        }

        var least = ranked.Min(r => r.Rank);
        ChosenCabinet? best = null;
        var fewest = (Unmet: int.MaxValue, Errors: int.MaxValue);
        foreach (var (product, rank) in ranked.Where(r => r.Rank == least).Take(MostChecked))
        {
            var bay = Completion.Run(context, stockWith(product).With([]), product, cancellation).Bay;
            var faults = (bay.Unmet.Count, RuleChecks.FaultsOf(checker, bay.Describe(), cancellation).Errors);
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

    // First what finds no room, is too deep, cannot be hung or is too heavy for the cabinet; then what is wrong with the rack that it makes.
    private static (int Misfits, int Errors, int Warnings) RankOf(Bay bay, CancellationToken cancellation)
    {
        var rack = bay.Describe() with { Pdus = null };
        var survey = new RackSurvey(rack);
        var deep = survey.Items.Count(i => survey.Cabinet.SetbackMm is { } setback ? !survey.Depth.Interval(i).Holds(setback) : survey.Depth.FitsNowhere(i));
        var heavy = survey.Mass.KnownEquipmentKg > (bay.Cabinet.RatedLoadKg ?? double.PositiveInfinity) ? 1 : 0;
        var (errors, warnings) = RuleChecks.FaultsOf(Suits, rack, cancellation);
        return (bay.NotPlaced.Count() + deep + heavy + bay.Unmet.Count, errors, warnings);
    }
}
