using RackCheck.Engineering;
using RackCheck.Model;
using static System.FormattableString;

namespace RackCheck.Planning.Baskets;

/// <summary>Gives each item that needs slides or runners a pair that carries it and reaches from upright to upright.</summary>
internal static class Rails
{
    /// <summary>Gives out the rails that there are, and notes what lacks.</summary>
    /// <param name="context">What the basket's plans go by.</param>
    /// <param name="bay">The rack, nothing placed yet.</param>
    public static void Hang(BasketContext context, Bay bay)
    {
        // Those with a sort of their own choose first, the heavy before the light.
        BayItem[] needing =
        [
            .. bay.Items.Where(i => i.NeedsRails).OrderBy(i => i.RailStyle is null).ThenByDescending(i => i.Item.MassKg ?? 0).ThenBy(i => i.Id, Words.ById),
        ];
        List<(BayItem Item, Product Rails)> lacking = [];
        foreach (var item in needing)
        {
            var wanted = WantedRange(bay, item);
            if (Best(bay, item, wanted, bay.Stock.LeftOf(ProductKind.Support).Select(e => e.Product)) is { } own)
            {
                item.Rails = bay.Stock.Find(own.PartNumber)!.Take();
                item.Item = item.Item with { Support = Joined(wanted, own.Support!) };
            }
            else if (Best(bay, item, wanted, context.Offered(ProductKind.Support)) is { } offered)
            {
                lacking.Add((item, offered));
            }
            else
            {
                bay.Unmet.Add(new UnmetNeed
                {
                    What = $"{NameOf(item.RailStyle)} for {item.Id}",
                    Reason = Invariant($"Its front panel cannot carry it, and none on offer carry {item.Item.MassKg:0.###} kg between uprights {bay.SpacingMm:0.###} mm apart."),
                });
            }
        }

        foreach (var alike in lacking.GroupBy(l => l.Rails.PartNumber).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            var product = alike.First().Rails;
            foreach (var (pack, units) in Packs.Choose([product], alike.Count()))
            {
                bay.Lacks.Add(new Lack(
                    Stage.Rails,
                    pack,
                    units,
                    $"{Words.List(alike.Select(a => a.Item.Id))} {Words.Verb(alike.Count(), "is", "are")} too heavy, high or deep for the front panel alone and {Words.Verb(alike.Count(), "hangs", "hang")} on {NameOf(product.Support!.Style).ToLowerInvariant()}."));
            }
        }
    }

    /// <summary>Whether the range of a support holds a distance of the uprights; where the distance is not known, it does.</summary>
    /// <param name="support">The support.</param>
    /// <param name="spacingMm">The distance, mm.</param>
    /// <returns>Whether it does.</returns>
    public static bool Reaches(Support? support, double? spacingMm) =>
        spacingMm is not { } spacing || new SetbackInterval(support?.MinSpacingMm ?? 0, support?.MaxSpacingMm ?? double.PositiveInfinity).Holds(spacing);

    // The equipment's own word on where rails can hold it, if it has one.
    private static Support? WantedRange(Bay bay, BayItem item) => bay.Stock.Find(item.Piece.PartNumber)!.Product.Item!.Support;

    private static Product? Best(Bay bay, BayItem item, Support? wanted, IEnumerable<Product> rails) => rails
        .Where(p => p.Support is { } support && Fits(bay, item, wanted, support))
        .OrderBy(p => p.Support!.RatedKg ?? double.PositiveInfinity)
        .ThenBy(p => p.Support!.Style == SupportStyle.Slides)
        .ThenBy(p => p.PartNumber, StringComparer.Ordinal)
        .FirstOrDefault();

    private static bool Fits(Bay bay, BayItem item, Support? wanted, Support support)
    {
        if (support.Style is not (SupportStyle.Slides or SupportStyle.Runners) || (item.RailStyle is { } style && style != support.Style))
        {
            return false;
        }

        var room = support.Style == SupportStyle.Slides ? bay.OpeningMm - (2 * (support.ThicknessMm ?? Allowances.SlideThicknessMm)) : bay.OpeningMm;
        return !(item.Item.MassKg > support.RatedKg)
            && !(item.Item.Body?.WidthMm > room + SetbackInterval.ToleranceMm)
            && Reaches(support, bay.SpacingMm) && Reaches(wanted, bay.SpacingMm);
    }

    private static Support Joined(Support? wanted, Support rails) => rails with
    {
        MinSpacingMm = Greater(wanted?.MinSpacingMm, rails.MinSpacingMm),
        MaxSpacingMm = -Greater(-wanted?.MaxSpacingMm, -rails.MaxSpacingMm),
        UsedExtended = wanted?.UsedExtended,
        CableArm = rails.CableArm ?? wanted?.CableArm,
    };

    private static double? Greater(double? one, double? other) => one is null || other > one ? other : one;

    private static string NameOf(SupportStyle? style) => style switch
    {
        SupportStyle.Slides => "Slides",
        SupportStyle.Runners => "Runners",
        _ => "Slides or runners",
    };
}
