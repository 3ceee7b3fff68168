using RackCheck.Model;
using RackCheck.Rules;
using RackCheck.Rules.Catalogue;
using RackCheck.Rules.Survey;

namespace RackCheck.Planning.Baskets;

/// <summary>Chooses the cabinet: the basket's own, else the smallest on offer that takes everything with the fewest errors.</summary>
internal static class CabinetChoice
{
    // Checking a completed rack is what costs: of the cabinets that fit alike only the smallest are tried.
    private const int MostMade = 64;
    private const int MostChecked = 4;

    /// <summary>The basket's own cabinet: the first by part number; further ones are too many.</summary>
    /// <param name="stock">The basket.</param>
    /// <returns>The cabinet; null where there is none.</returns>
    public static Product? Own(Stock stock) => stock.LeftOf(ProductKind.Cabinet).Select(e => e.Product).FirstOrDefault(IsWhole);

    /// <summary>The cabinet to propose; null where none is on offer.</summary>
    /// <param name="context">What the basket's plans go by.</param>
    /// <param name="stock">The basket, without a cabinet.</param>
    /// <param name="checker">Checks the completed racks.</param>
    /// <param name="cancellation">Stops between two rounds or rules.</param>
    /// <returns>The cabinet.</returns>
    public static Product? Best(BasketContext context, Stock stock, RackChecker checker, CancellationToken cancellation)
    {
        var fits = context.Offered(ProductKind.Cabinet).Where(IsWhole)
            .OrderBy(p => p.Cabinet!.HeightU).ThenBy(p => p.Cabinet!.WidthMm).ThenBy(p => p.Cabinet!.DepthMm).ThenBy(p => p.PartNumber, StringComparer.Ordinal)
            .Take(MostMade)
            .Select(p => (Product: p, Misfits: Misfits(Completion.Mount(context, stock.With([(p, 1)]), p, cancellation))))
            .ToArray();
        if (fits.Length == 0)
        {
            return null;
        }

        var least = fits.Min(f => f.Misfits);
        Product? best = null;
        var fewest = (Unmet: int.MaxValue, Errors: int.MaxValue);
        foreach (var (product, _) in fits.Where(f => f.Misfits == least).Take(MostChecked))
        {
            var bay = Completion.Run(context, stock.With([(product, 1)]), product, cancellation).Bay;
            var faults = (bay.Unmet.Count, checker.Recheck(ResolvedRack.Plain(bay.Describe()), cancellation).Findings.Count(f => f is { Severity: Severity.Error, Accepted: null }));
            if (faults.CompareTo(fewest) < 0)
            {
                (best, fewest) = (product, faults);
            }

            if (faults == (0, 0))
            {
                break;
            }
        }

        return best;
    }

    private static bool IsWhole(Product product) => product.Cabinet is { HeightU: not null, WidthMm: not null, DepthMm: not null };

    // What finds no room, is too deep, cannot be hung or is too heavy for the cabinet.
    private static int Misfits(Bay bay)
    {
        var survey = new RackSurvey(bay.Describe() with { DistributionUnits = null });
        var deep = survey.Items.Count(i => survey.Cabinet.SetbackMm is { } setback ? !survey.Depth.Interval(i).Holds(setback) : survey.Depth.FitsNowhere(i));
        var heavy = survey.Mass.KnownEquipmentKg > (bay.Cabinet.RatedLoadKg ?? double.PositiveInfinity) ? 1 : 0;
        return bay.NotPlaced.Count() + deep + heavy + bay.Unmet.Count;
    }
}
