using RackCheck.Model;
using static System.FormattableString;

namespace RackCheck.Planning.Baskets;

/// <summary>Sets of nut and screw for all that is fastened to the uprights, in whole packs.</summary>
internal static class FixingSets
{
    // Four a front panel, four more a pair of rails; common practice.
    private const int SetsAPanel = 4;
    private const int SetsAPair = 4;

    /// <summary>Fastens what there are sets for, and notes what lacks.</summary>
    /// <param name="context">What the basket's plans go by.</param>
    /// <param name="bay">The rack with everything on it.</param>
    public static void Fasten(BasketContext context, Bay bay)
    {
        var fixing = context.Request.Options?.Fixing ?? bay.Cabinet.Uprights?.Hole switch
        {
            UprightHole.Round => Fixing.ClipNut,
            UprightHole.Threaded => Fixing.Screw,
            _ => Fixing.CageNut,
        };
        var needed = (long)SetsAPanel * bay.Units.Count(u => u.Unit.Mounting == PduMounting.Horizontal);
        var lacking = needed - Take(bay, fixing, needed);
        foreach (var item in bay.Items.Where(i => i.HeightU > 0).OrderBy(i => i.Id, Words.ById))
        {
            var sets = SetsAPanel + (item.Rails is null ? 0 : SetsAPair);
            var missing = sets - Take(bay, fixing, sets);
            (needed, lacking) = (needed + sets, lacking + missing);
            if (missing == 0 && item.Item.Fixing is null)
            {
                item.Item = item.Item with { Fixing = fixing };
            }
        }

        if (lacking > 0)
        {
            Propose(context, bay, fixing, needed, lacking);
        }
    }

    private static long Take(Bay bay, Fixing fixing, long sets)
    {
        var taken = 0L;
        foreach (var entry in bay.Stock.LeftOf(ProductKind.Fixings).Where(e => e.Product.Fixing == fixing))
        {
            taken += entry.Take(sets - taken);
        }

        return taken;
    }

    private static void Propose(BasketContext context, Bay bay, Fixing fixing, long needed, long missing)
    {
        Product[] offered = [.. context.Offered(ProductKind.Fixings).Where(p => p.Fixing == fixing)];
        var (name, set) = fixing switch { Fixing.CageNut => ("cage nuts", "cage nuts with screws"), Fixing.ClipNut => ("clip nuts", "clip nuts with screws"), _ => ("screws", "screws") };
        if (offered.Length == 0)
        {
            bay.Unmet.Add(new UnmetNeed { What = Invariant($"{missing} {name}"), Reason = "Everything on the uprights is fastened with them; no pack of them is on offer." });
            return;
        }

        foreach (var (product, units) in Packs.Choose(offered, missing))
        {
            bay.Lacks.Add(new Lack(
                Stage.Fixings,
                product,
                units,
                Invariant($"{needed} {set} fasten what hangs on the uprights, four a front panel and four a pair of rails; {missing} of them {Words.Verb((int)missing, "is", "are")} missing.")));
        }
    }
}
