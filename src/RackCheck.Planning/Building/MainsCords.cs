using RackCheck.Model;
using RackCheck.Survey.Power;

namespace RackCheck.Planning.Building;

/// <summary>Gives each appliance inlet a mains cord that reaches its assigned outlet. Other plugs belong to leads that are fixed to the item.</summary>
internal static class MainsCords
{
    /// <summary>Assigns the cords of the basket and reports missing cords. The rack is mounted and wired.</summary>
    public static void Plug(BasketContext context, RackBuild build)
    {
        var survey = build.Wired;
        var inBox = build.Items.Where(i => build.Stock.Find(i.Piece.PartNumber)!.Product.CordIncluded == true)
            .Select(i => i.Id)
            .ToHashSet(StringComparer.Ordinal);
        var needs = CordNeeds.Of(survey, i => inBox.Contains(i.Id), build.InletOf);
        List<(Cord Cord, double LengthM, Product Product)> toAdd = [];

        // A cord that goes onto another inlet too is for its own first.
        var left = needs.Where(n => !TakeOwn(n, c => c.Connector == PlugFit.SocketFor(n.Inlet))).ToArray();
        foreach (var (cord, inlet, length) in left)
        {
            if (TakeOwn(new CordNeed(cord, inlet, length), _ => true))
            {
                continue;
            }

            if (CordNeeds.Best(inlet, cord.Code, length, context.Offered(ProductKind.Cord)) is { } offered)
            {
                toAdd.Add((cord, length, offered));
            }
            else
            {
                build.Unmet.Add(new OpenNeed(
                    new(
                        LineWordings.CordNeed, ("plug", PlugFit.Of(cord.Code).Code), ("socket", PlugFit.Of(PlugFit.SocketFor(inlet)).Code),
                        ("item", cord.Item.Id)),
                    new(LineWordings.NoCord, ("lengthM", Quantities.RoundTo(length, 2)))));
            }
        }

        foreach (var alike in toAdd.GroupBy(l => l.Product.Cord!).OrderBy(g => g.First().Product.PartNumber, StringComparer.Ordinal))
        {
            string[] names = [.. alike.Select(a => a.Cord.Item.Id).Distinct()];
            foreach (var (product, units) in Packs.Choose(context.Offered(ProductKind.Cord).Where(p => p.Cord == alike.Key), alike.Count()))
            {
                build.MissingPieces.Add(new MissingPiece(
                    Stage.Cords,
                    product,
                    units,
                    new WordedText(
                        LineWordings.Cords.With(names.Length == 1 ? "one" : null, alike.Max(a => a.LengthM) > 0 ? "route" : null),
                        ("items", LineWordings.Ids(names)), ("lengthM", alike.Max(a => a.LengthM)))));
            }
        }

        bool TakeOwn(CordNeed need, Func<ProductCord, bool> suits)
        {
            var own = build.Stock.LeftOf(ProductKind.Cord).Select(e => e.Product).Where(p => suits(p.Cord!));
            return CordNeeds.Best(need.Inlet, need.Cord.Code, need.LengthM, own) is { } product && build.Stock.Find(product.PartNumber)!.Take(1) == 1;
        }
    }

    /// <summary>Whether a cord connects an appliance outlet to an inlet of the same type.</summary>
    public static bool IsFromOutlet(ProductCord cord) =>
        PlugFit.IsInlet(cord.Plug) && cord.Connector == PlugFit.SocketFor(cord.Plug);
}
