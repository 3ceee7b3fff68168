using RackCheck.Model;

namespace RackCheck.Planning.Building;

/// <summary>Assigns nuts and screws to everything that is fastened to the uprights, in whole packs.</summary>
internal static class FixingSets
{
    /// <summary>Assigns the fixings of the basket and reports missing fixings. The rack is complete.</summary>
    public static void Fasten(BasketContext context, RackBuild build)
    {
        var fixing = FixingOf(context.Request, build);
        var sets = SetsOfPdus(build);
        var toAdd = sets - Take(build, fixing, sets);
        foreach (var item in build.Items.Where(i => i.HeightU > 0).OrderBy(i => i.Id, IdOrder.Instance))
        {
            sets = SetsOf(build, item);
            var missing = sets - Take(build, fixing, sets);
            toAdd += missing;
            if (missing == 0 && item.Item.Fixing is null)
            {
                item.Item = item.Item with { Fixing = fixing };
            }
        }

        if (toAdd > 0)
        {
            Propose(context, build, fixing, toAdd);
        }
    }

    /// <summary>The fixing that everything in a rack is fastened with.</summary>
    /// <param name="request">The basket.</param>
    /// <param name="build">The rack.</param>
    public static Fixing FixingOf(BasketRequest request, RackBuild build) =>
        request.Options?.Fixing ?? FixingNeeds.For(build.Cabinet.Uprights?.Hole);

    /// <summary>Sets that fasten everything in a rack.</summary>
    /// <param name="build">The rack.</param>
    public static long NeededBy(RackBuild build) => SetsOfPdus(build) + build.Items.Where(i => i.HeightU > 0).Sum(i => SetsOf(build, i));

    /// <summary>Why fixings are missing.</summary>
    /// <param name="fixing">The fixing.</param>
    /// <param name="needed">Sets that everything needs.</param>
    /// <param name="missing">Sets that the order lacks.</param>
    public static WordedText ReasonOf(Fixing fixing, long needed, long missing) => new(
        LineWordings.Fixings.With(Name(fixing), missing == 1 ? "one" : null), ("needed", (double)needed), ("missing", (double)missing));

    /// <summary>Packs of missing sets.</summary>
    /// <param name="context">What building a rack needs. At least one pack is on offer.</param>
    /// <param name="build">The rack.</param>
    /// <param name="fixing">The fixing.</param>
    /// <param name="missing">Sets that the order lacks, 1 or more.</param>
    public static IEnumerable<MissingPiece> Packed(BasketContext context, RackBuild build, Fixing fixing, long missing) =>
        Packs.Choose(context.Offered(ProductKind.Fixings).Where(p => p.Fixing == fixing), missing)
            .Select(p => new MissingPiece(Stage.Fixings, p.Product, p.Units, ReasonOf(fixing, NeededBy(build), missing)));

    private static long SetsOfPdus(RackBuild build) =>
        (long)FixingNeeds.SetsAPanel * build.Units.Count(u => u.Unit.Mounting == PduMounting.Horizontal);

    private static long SetsOf(RackBuild build, BuildItem item) =>
        FixingNeeds.Sets(item.Item.Support?.Style, build.Stock.Find(item.Piece.PartNumber)!.Product);

    private static string? Name(Fixing fixing) => fixing switch
    {
        Fixing.CageNut => "cage",
        Fixing.ClipNut => "clip",
        _ => null,
    };

    private static long Take(RackBuild build, Fixing fixing, long sets)
    {
        var taken = 0L;
        foreach (var entry in build.Stock.LeftOf(ProductKind.Fixings).Where(e => e.Product.Fixing == fixing))
        {
            taken += entry.Take(sets - taken);
        }

        return taken;
    }

    private static void Propose(BasketContext context, RackBuild build, Fixing fixing, long missing)
    {
        if (!context.Offered(ProductKind.Fixings).Any(p => p.Fixing == fixing))
        {
            build.Unmet.Add(new OpenNeed(new(LineWordings.FixingsNeed.With(Name(fixing)), ("missing", (double)missing)), LineWordings.NoFixings));
            return;
        }

        build.MissingPieces.AddRange(Packed(context, build, fixing, missing));
    }
}
