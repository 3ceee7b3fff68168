using RackCheck.Model;

namespace RackCheck.Planning.Building;

/// <summary>Assigns nuts and screws to everything that is fastened to the uprights, in whole packs.</summary>
internal static class FixingSets
{
    /// <summary>Assigns the fixings of the basket and reports missing fixings. The rack is complete.</summary>
    public static void Fasten(BasketContext context, RackBuild build)
    {
        var fixing = context.Request.Options?.Fixing ?? FixingNeeds.For(build.Cabinet.Uprights?.Hole);
        var needed = (long)FixingNeeds.Sets(hasRails: false) * build.Units.Count(u => u.Unit.Mounting == PduMounting.Horizontal);
        var toAdd = needed - Take(build, fixing, needed);
        foreach (var item in build.Items.Where(i => i.HeightU > 0).OrderBy(i => i.Id, Words.ById))
        {
            var sets = FixingNeeds.Sets(item.Rails is not null);
            var missing = sets - Take(build, fixing, sets);
            (needed, toAdd) = (needed + sets, toAdd + missing);
            if (missing == 0 && item.Item.Fixing is null)
            {
                item.Item = item.Item with { Fixing = fixing };
            }
        }

        if (toAdd > 0)
        {
            Propose(context, build, fixing, needed, toAdd);
        }
    }

    private static long Take(RackBuild build, Fixing fixing, long sets)
    {
        var taken = 0L;
        foreach (var entry in build.Stock.LeftOf(ProductKind.Fixings).Where(e => e.Product.Fixing == fixing))
        {
            taken += entry.Take(sets - taken);
        }

        return taken;
    }

    private static void Propose(BasketContext context, RackBuild build, Fixing fixing, long needed, long missing)
    {
        Product[] offered = [.. context.Offered(ProductKind.Fixings).Where(p => p.Fixing == fixing)];
        var set = fixing switch
        {
            Fixing.CageNut => "cage",
            Fixing.ClipNut => "clip",
            _ => null,
        };
        if (offered.Length == 0)
        {
            build.Unmet.Add(new OpenNeed(new(LineWordings.FixingsNeed.With(set), ("missing", (double)missing)), LineWordings.NoFixings));
            return;
        }

        foreach (var (product, units) in Packs.Choose(offered, missing))
        {
            build.MissingPieces.Add(new MissingPiece(
                Stage.Fixings,
                product,
                units,
                new WordedText(LineWordings.Fixings.With(set, missing == 1 ? "one" : null), ("needed", (double)needed), ("missing", (double)missing))));
        }
    }
}
