using RackCheck.Model;
using static System.FormattableString;

namespace RackCheck.Planning.Baskets;

/// <summary>Assigns nuts and screws to everything that is fastened to the uprights, in whole packs.</summary>
internal static class FixingSets
{
    // Four per front panel and four per pair of rails; common practice.
    private const int SetsAPanel = 4;
    private const int SetsAPair = 4;

    /// <summary>Assigns the fixings of the basket and reports missing fixings. The rack is complete.</summary>
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
        var (name, set) = fixing switch
        {
            Fixing.CageNut => ("cage nuts", "cage nuts with screws"),
            Fixing.ClipNut => ("clip nuts", "clip nuts with screws"),
            _ => ("screws", "screws"),
        };
        if (offered.Length == 0)
        {
            bay.Unmet.Add(new UnmetNeed { What = Invariant($"{missing} {name}"), Reason = "They fasten the equipment to the uprights; no pack is on offer." });
            return;
        }

        foreach (var (product, units) in Packs.Choose(offered, missing))
        {
            bay.Lacks.Add(new Lack(
                Stage.Fixings,
                product,
                units,
                Invariant($"{needed} {set} are needed on the uprights, four per front panel and four per pair of rails; ")
                + Invariant($"{missing} of them {Words.Verb((int)missing, "is", "are")} missing.")));
        }
    }
}
