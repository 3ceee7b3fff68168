using RackCheck.Engineering;
using RackCheck.Model;
using static System.FormattableString;

namespace RackCheck.Planning.Baskets;

/// <summary>Stands things that are no 19-inch units on shelves.</summary>
internal static class Shelving
{
    /// <summary>Fills the shelves that there are, and notes what lacks.</summary>
    /// <param name="context">What the basket's plans go by.</param>
    /// <param name="bay">The rack, nothing placed yet.</param>
    public static void Fill(BasketContext context, Bay bay)
    {
        // The deepest and heaviest first: what takes them takes the rest.
        BayItem[] things =
        [
            .. bay.Items.Where(i => i.HeightU == 0).OrderByDescending(i => i.Item.Body?.DepthMm ?? 0).ThenByDescending(i => i.Item.MassKg ?? 0).ThenBy(i => i.Id, Words.ById),
        ];
        Board[] boards = [.. bay.Items.Where(i => i.IsShelf && Fits(bay, i.Item)).Select(i => new Board(i.Item)).Order()];
        List<BayItem> left = [];
        foreach (var thing in things)
        {
            if (Find(bay, boards, thing.Item) is { } board)
            {
                board.Bear(thing.Item);
                thing.Item = thing.Item with { OnShelf = board.Shelf.Id };
            }
            else
            {
                left.Add(thing);
            }
        }

        if (left.Count > 0)
        {
            Propose(context, bay, left);
        }
    }

    private static void Propose(BasketContext context, Bay bay, List<BayItem> left)
    {
        Product[] offered = [.. context.Offered(ProductKind.Shelf).Where(p => p.Item is not null && Fits(bay, ProductParts.ItemOf(p, p.PartNumber)))];
        List<(Board Board, Product Product, List<string> Names)> made = [];
        foreach (var thing in left)
        {
            var at = made.FindIndex(m => m.Board.Takes(bay, thing.Item));
            if (at < 0)
            {
                var board = offered.Select(p => new Board(ProductParts.ItemOf(p, p.PartNumber))).Order().FirstOrDefault(b => b.Takes(bay, thing.Item));
                if (board is null)
                {
                    bay.Unmet.Add(new UnmetNeed
                    {
                        What = $"A shelf for {thing.Id}",
                        Reason = Invariant($"It is no 19-inch unit and has nothing to stand on; no shelf on offer for this cabinet takes its {Size(thing.Item)}."),
                    });
                    continue;
                }

                at = made.Count;
                made.Add((board, offered.First(p => p.PartNumber == board.Shelf.PartNumber), []));
            }

            made[at].Board.Bear(thing.Item);
            made[at].Names.Add(thing.Id);
        }

        foreach (var alike in made.GroupBy(m => m.Product.PartNumber).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            var product = alike.First().Product;
            bay.Lacks.Add(new Lack(
                Stage.Shelves,
                product,
                Packs.Choose([product], alike.Count())[0].Units,
                $"{Words.List(alike.SelectMany(m => m.Names))} {Words.Verb(alike.Sum(m => m.Names.Count), "is no 19-inch unit and needs", "are no 19-inch units and need")} a shelf to stand on."));
        }
    }

    private static string Size(Item thing) => Invariant($"{thing.Body?.WidthMm:0.###} x {thing.Body?.DepthMm:0.###} mm and {thing.MassKg:0.###} kg");

    // A shelf on four uprights needs them at its distance, and none may reach into the rear door.
    private static bool Fits(Bay bay, Item shelf)
    {
        var cabinet = bay.Cabinet;
        var reach = (shelf.Body?.DepthMm ?? 0) + (shelf.RearProjectionMm ?? Allowances.RearProjectionBareMm);
        return Rails.Reaches(shelf.Support, bay.SpacingMm)
            && (cabinet.Uprights?.FrontSetbackMm ?? 0) + reach <= cabinet.DepthMm - (cabinet.RearDoor?.Style == DoorStyle.None ? 0 : cabinet.RearDoor?.DepthMm ?? CabinetSizes.DoorDepthMm);
    }

    private static Board? Find(Bay bay, Board[] boards, Item thing) =>
        Array.Find(boards, b => b.IsUsed && b.Takes(bay, thing)) ?? Array.Find(boards, b => !b.IsUsed && b.Takes(bay, thing));

    // A shelf with what stands on it. The smallest that does comes first.
    private sealed class Board(Item shelf) : IComparable<Board>
    {
        private double widthMm;
        private double loadKg;

        public Item Shelf => shelf;

        public bool IsUsed { get; private set; }

        private double RatedKg => shelf.Support?.RatedKg ?? double.PositiveInfinity;

        public bool Takes(Bay bay, Item thing) =>
            shelf.Body?.DepthMm is { } depth && !(thing.Body?.DepthMm > depth)
            && widthMm + (thing.Body?.WidthMm ?? 0) <= bay.OpeningMm - Allowances.ShelfWidthLossMm
            && loadKg + (thing.MassKg ?? 0) <= RatedKg;

        public void Bear(Item thing)
        {
            IsUsed = true;
            widthMm += thing.Body?.WidthMm ?? 0;
            loadKg += thing.MassKg ?? 0;
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
