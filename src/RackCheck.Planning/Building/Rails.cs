using RackCheck.Engineering;
using RackCheck.Model;

namespace RackCheck.Planning.Building;

/// <summary>Gives each item that needs slides or runners a pair with sufficient load rating and length.</summary>
internal static class Rails
{
    /// <summary>Assigns the rails of the basket and reports missing rails. No item has a position yet.</summary>
    public static void Hang(BasketContext context, RackBuild build)
    {
        // Items that need a particular type come first, then the heaviest.
        BuildItem[] needing =
        [
            .. build.Items.Where(i => i.NeedsRails)
                .OrderBy(i => i.RailStyle is null)
                .ThenByDescending(i => i.Item.MassKg ?? 0)
                .ThenBy(i => i.Id, IdOrder.Instance),
        ];
        List<(BuildItem Item, Product Rails)> toAdd = [];
        foreach (var item in needing)
        {
            var wanted = WantedRange(build, item);
            if (Best(build, item, wanted, build.Stock.LeftOf(ProductKind.Support).Select(e => e.Product)) is { } own)
            {
                item.Rails = build.Stock.Find(own.PartNumber)!.Take();
                item.Item = item.Item with { Support = Joined(wanted, own.Support!) };
            }
            else if (Best(build, item, wanted, context.Offered(ProductKind.Support)) is { } offered)
            {
                toAdd.Add((item, offered));
            }
            else if (!context.BringsRails(build.Stock.Find(item.Piece.PartNumber)!.Product))
            {
                build.Unmet.Add(new OpenNeed(
                    new(LineWordings.RailsNeed.With(NameOf(item.RailStyle)), ("item", item.Id)),
                    NoRails(build.SpacingMm, item.Item.MassKg, wanted?.UsedExtended == true)));
            }
        }

        foreach (var alike in toAdd.GroupBy(l => l.Rails.PartNumber).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            var product = alike.First().Rails;
            var style = NameOf(product.Support!.Style)!;
            foreach (var (pack, units) in Packs.Choose([product], alike.Count()))
            {
                build.MissingPieces.Add(new MissingPiece(
                    Stage.Rails,
                    pack,
                    units,
                    LineWordings.Of(LineWordings.Rails, alike.Count() == 1, ("items", LineWordings.Ids(alike.Select(a => a.Item.Id))), ("style", style))));
            }
        }
    }

    /// <summary>Whether the range of a support includes an upright spacing. True if the spacing is unknown.</summary>
    public static bool Reaches(Support? support, double? spacingMm) =>
        spacingMm is not { } spacing || new SetbackInterval(support?.MinSpacingMm ?? 0, support?.MaxSpacingMm ?? double.PositiveInfinity).Holds(spacing);

    // Range of upright spacing in the equipment's data, if any.
    private static Support? WantedRange(RackBuild build, BuildItem item) => build.Stock.Find(item.Piece.PartNumber)!.Product.Item!.Support;

    private static Product? Best(RackBuild build, BuildItem item, Support? wanted, IEnumerable<Product> rails) => rails
        .Where(p => p.Support is { } support && Fits(build, item, wanted, support))
        .OrderBy(p => p.Support!.RatedKg ?? double.PositiveInfinity)
        .ThenBy(p => p.Support!.Style == SupportStyle.Slides)
        .FirstOrDefault();

    private static bool Fits(RackBuild build, BuildItem item, Support? wanted, Support support)
    {
        if (support.Style is not (SupportStyle.Slides or SupportStyle.Runners) || (item.RailStyle is { } style && style != support.Style))
        {
            return false;
        }

        var room = support.Style == SupportStyle.Slides ? build.OpeningMm - (2 * (support.ThicknessMm ?? Allowances.SlideThicknessMm)) : build.OpeningMm;
        return !(item.Item.MassKg > support.RatedKg)
            && !(item.Item.Body?.WidthMm is { } width && Comparison.IsOver(width, room))
            && Reaches(support, build.SpacingMm) && Reaches(wanted, build.SpacingMm);
    }

    private static Support Joined(Support? wanted, Support rails) => rails with
    {
        MinSpacingMm = Greater(wanted?.MinSpacingMm, rails.MinSpacingMm),
        MaxSpacingMm = -Greater(-wanted?.MaxSpacingMm, -rails.MaxSpacingMm),
        UsedExtended = wanted?.UsedExtended,
        CableArm = rails.CableArm ?? wanted?.CableArm,
    };

    private static WordedText NoRails(double? spacingMm, double? massKg, bool isExtended)
    {
        (string, Scalar)[] mass = massKg is { } kilograms ? [("massKg", kilograms)] : [];
        (string, Scalar)[] spacing = spacingMm is { } millimetres ? [("spacingMm", millimetres)] : [];
        return new(
            LineWordings.NoRails.With(
                (mass.Length > 0, spacing.Length > 0) switch
                {
                    (true, true) => "both",
                    (true, false) => "mass",
                    (false, true) => "spacing",
                    _ => null,
                },
                isExtended ? "extended" : null),
            [.. mass, .. spacing]);
    }

    private static double? Greater(double? one, double? other) => one is null || other > one ? other : one;

    private static string? NameOf(SupportStyle? style) => style switch
    {
        SupportStyle.Slides => "slides",
        SupportStyle.Runners => "runners",
        _ => null,
    };
}
