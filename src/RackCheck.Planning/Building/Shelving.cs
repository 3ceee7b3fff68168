using RackCheck.Engineering;
using RackCheck.Model;

namespace RackCheck.Planning.Building;

/// <summary>Places items that are not rack-mountable on shelves.</summary>
internal static class Shelving
{
    /// <summary>Fills the shelves of the basket and reports missing shelves. No item has a position yet.</summary>
    public static void Fill(BasketContext context, RackBuild build)
    {
        // Deepest and heaviest first: a shelf that takes them takes the rest.
        BuildItem[] loose =
        [
            .. build.Items.Where(i => i.HeightU == 0)
                .OrderByDescending(i => i.Item.Body?.DepthMm ?? 0)
                .ThenByDescending(i => i.Item.MassKg ?? 0)
                .ThenBy(i => i.Id, IdOrder.Instance),
        ];
        Board[] boards = [.. build.Items.Where(i => i.IsShelf && Fits(build, i.Item)).Select(i => new Board(i.Item)).Order()];
        List<BuildItem> left = [];
        foreach (var item in loose)
        {
            if (Find(build, boards, item.Item) is { } board)
            {
                board.Bear(item.Item);
                item.Item = item.Item with { OnShelf = board.Shelf.Id };
            }
            else
            {
                left.Add(item);
            }
        }

        if (left.Count > 0)
        {
            Propose(context, build, left);
        }
    }

    private static void Propose(BasketContext context, RackBuild build, List<BuildItem> left)
    {
        Product[] offered = [.. context.Offered(ProductKind.Shelf).Where(p => p.Item is not null && Fits(build, ProductParts.ItemOf(p, p.PartNumber)))];
        List<(Board Board, Product Product, List<string> Names)> made = [];
        foreach (var item in left)
        {
            var at = made.FindIndex(m => m.Board.Takes(build, item.Item));
            if (at < 0)
            {
                var board = offered.Select(p => new Board(ProductParts.ItemOf(p, p.PartNumber))).Order().FirstOrDefault(b => b.Takes(build, item.Item));
                if (board is null)
                {
                    build.Unmet.Add(new OpenNeed(new(LineWordings.ShelfNeed, ("item", item.Id)), NoShelf(item.Item)));
                    continue;
                }

                at = made.Count;
                made.Add((board, offered.First(p => p.PartNumber == board.Shelf.PartNumber), []));
            }

            made[at].Board.Bear(item.Item);
            made[at].Names.Add(item.Id);
        }

        foreach (var alike in made.GroupBy(m => m.Product.PartNumber).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            var product = alike.First().Product;
            build.MissingPieces.Add(new MissingPiece(
                Stage.Shelves,
                product,
                Packs.Choose([product], alike.Count())[0].Units,
                LineWordings.Of(LineWordings.Shelf, alike.Sum(m => m.Names.Count) == 1, ("items", LineWordings.Ids(alike.SelectMany(m => m.Names))))));
        }
    }

    private static WordedText NoShelf(Item item)
    {
        (string, Scalar)[] size = item.Body is { WidthMm: { } width, DepthMm: { } depth } ? [("widthMm", width), ("depthMm", depth)] : [];
        (string, Scalar)[] mass = item.MassKg is { } kilograms ? [("massKg", kilograms)] : [];
        return new(LineWordings.NoShelf.With(size.Length > 0 ? "size" : null, mass.Length > 0 ? "mass" : null), [.. size, .. mass]);
    }

    // A four-post shelf needs an upright spacing within its range. No shelf may reach into the rear door.
    private static bool Fits(RackBuild build, Item shelf)
    {
        var cabinet = build.Cabinet;
        var door = cabinet.RearDoor?.Style == DoorStyle.None ? 0 : cabinet.RearDoor?.DepthMm ?? CabinetSizes.DoorDepthMm;
        var reach = (shelf.Body?.DepthMm ?? 0) + (shelf.RearProjectionMm ?? Allowances.RearProjectionBareMm);
        return Rails.Reaches(shelf.Support, build.SpacingMm)
            && (cabinet.Uprights?.FrontSetbackMm ?? 0) + reach <= cabinet.DepthMm - door;
    }

    private static Board? Find(RackBuild build, Board[] boards, Item item) =>
        Array.Find(boards, b => b.IsUsed && b.Takes(build, item)) ?? Array.Find(boards, b => !b.IsUsed && b.Takes(build, item));

    // A shelf and the items on it. The smallest suitable shelf sorts first.
    private sealed class Board(Item shelf) : IComparable<Board>
    {
        private double widthMm;
        private double loadKg;

        public Item Shelf => shelf;

        public bool IsUsed { get; private set; }

        private double RatedKg => shelf.Support?.RatedKg ?? double.PositiveInfinity;

        public bool Takes(RackBuild build, Item item) =>
            shelf.Body?.DepthMm is { } depth && !(item.Body?.DepthMm > depth)
            && widthMm + (item.Body?.WidthMm ?? 0) <= build.OpeningMm - Allowances.ShelfWidthLossMm
            && loadKg + (item.MassKg ?? 0) <= RatedKg;

        public void Bear(Item item)
        {
            IsUsed = true;
            widthMm += item.Body?.WidthMm ?? 0;
            loadKg += item.MassKg ?? 0;
        }

        public int CompareTo(Board? other)
        {
            var order = Comparer<double?>.Default.Compare(shelf.Body?.DepthMm, other!.Shelf.Body?.DepthMm);
            order = order != 0 ? order : Comparer<int?>.Default.Compare(shelf.HeightU, other.Shelf.HeightU);
            order = order != 0 ? order : RatedKg.CompareTo(other.RatedKg);
            return order != 0 ? order : string.CompareOrdinal(shelf.Id, other.Shelf.Id);
        }
    }
}
