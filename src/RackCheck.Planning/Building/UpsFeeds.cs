using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Power;

namespace RackCheck.Planning.Building;

/// <summary>
/// Decides what a UPS feeds: servers, computers and network equipment first, as long as its rating and its PDU allow. Of a dual-corded item it takes one cord,
/// the next UPS the other. Several UPSs are divided over the supplies, so that each side of such an item can have one.
/// </summary>
internal static class UpsFeeds
{
    private static readonly ItemCategory[] Order =
        [ItemCategory.Server, ItemCategory.Computer, ItemCategory.Network, ItemCategory.KvmSwitch, ItemCategory.Display, ItemCategory.KeyboardDrawer];

    /// <summary>The connections of what the UPSs feed, and of the UPSs where there are several supplies. All other cords are left to the check.</summary>
    /// <param name="build">The rack with its PDUs.</param>
    /// <param name="wanted">Whether items are to be fed from a UPS, by id; the others are as far as it has power.</param>
    /// <param name="designShare">The share of the rating of a PDU up to which it is loaded by design.</param>
    /// <returns>The connections.</returns>
    public static IReadOnlyList<Connection> Choose(RackBuild build, IReadOnlyDictionary<string, bool> wanted, double designShare)
    {
        Item[] items = [.. build.Items.Select(i => i.Item)];
        var units = build.Units.Select(u => u.Unit).ToDictionary(u => u.Id, StringComparer.Ordinal);
        Item[] sources = [.. items.Where(i => i.Ups?.Feeds is [var unit] && units.ContainsKey(unit)).OrderBy(i => i.Id, IdOrder.Instance)];
        Feed[] feeds = [.. sources.Select(u => new Feed(u, units[u.Ups!.Feeds![0]], build.Site?.UpsMinutes, VoltAmperesOf))];
        foreach (var equals in items
            .Where(i => i.Ups is null && i.Power is { RatedW: > 0, Plugs.Count: > 0 } && wanted.GetValueOrDefault(i.Id, true))
            .OrderBy(i => !wanted.ContainsKey(i.Id)).ThenBy(RankOf).ThenBy(i => i.Id, IdOrder.Instance)
            .GroupBy(i => (wanted.ContainsKey(i.Id), RankOf(i) == Order.Length)))
        {
            // Each has one cord on a UPS before any has its second.
            Item[] all = [.. equals];
            foreach (var item in all)
            {
                TakeFirst(feeds, item);
            }

            foreach (var item in all.Where(i => i.Power!.Redundant == true))
            {
                TakeOthers(feeds, item);
            }
        }

        // What the order wants there may load the PDU fully.
        double VoltAmperesOf(Pdu unit, Item item) => (unit.RatedA ?? double.PositiveInfinity) * (wanted.GetValueOrDefault(item.Id) ? 1 : designShare)
            * (build.Supplies.Find(s => s.Id == unit.Supply)?.VoltageV ?? 0);

        List<Connection> connections = [.. feeds.SelectMany(f => f.Connections)];
        foreach (var feed in feeds)
        {
            // Nothing else goes behind the UPS while the check assigns the other cords.
            build.Units.Find(u => u.Unit.Id == feed.Unit.Id)!.Keep(feed.Outlets.Taken);
        }

        connections.AddRange(Divided(build, sources, [.. units.Values.Where(u => !Array.Exists(sources, s => s.Ups!.Feeds![0] == u.Id))]));
        return connections;
    }

    /// <summary>Whether an item is what a UPS is for first: a powered server, computer or network device.</summary>
    /// <param name="item">The item with the data of its part number.</param>
    public static bool IsFirst(Item item) =>
        item is { Ups: null, Power: { RatedW: > 0, Plugs.Count: > 0 }, Category: ItemCategory.Server or ItemCategory.Computer or ItemCategory.Network };

    /// <summary>Says what no UPS feeds.</summary>
    /// <param name="wording">The wording.</param>
    /// <param name="items">The ids of what is not fed.</param>
    /// <param name="site">The site with the run time that is asked for, if any.</param>
    public static WordedText NotFed(WordingChoice wording, string[] items, Site? site) => site?.UpsMinutes is > 0 and var minutes
        ? new(wording.With("time"), ("items", Scalar.Ids(items)), ("minutes", minutes))
        : new(wording.With(), ("items", Scalar.Ids(items)));

    /// <summary>What a UPS feeds if it is kept for servers, computers and network equipment, and what serves them: nothing else, by id.</summary>
    /// <param name="items">The items.</param>
    public static Dictionary<string, bool> OnlyFirst(IEnumerable<Item> items) =>
        items.Where(i => i.Ups is null && RankOf(i) == Order.Length).ToDictionary(i => i.Id, _ => false, StringComparer.Ordinal);

    /// <summary>
    /// Number of items that no UPS feeds although one feeds an item that comes after them, and although its rating and an outlet of its PDU suit them.
    /// </summary>
    /// <param name="rack">The rack with the data of its part numbers.</param>
    /// <param name="cords">The outlets of its cords.</param>
    public static int PassedOver(RackDescription rack, IReadOnlyList<Connection> cords)
    {
        var units = (rack.Pdus ?? []).ToDictionary(u => u.Id, StringComparer.Ordinal);
        (Item Ups, Pdu[] Units)[] sources =
        [
            .. rack.Items.Where(i => i.Ups?.Feeds is { Count: > 0 })
                .Select(i => (i, i.Ups!.Feeds!.Where(units.ContainsKey).Select(id => units[id]).ToArray())),
        ];
        if (sources.Length == 0)
        {
            return 0;
        }

        var behind = sources.SelectMany(s => s.Units).Select(u => u.Id).ToHashSet(StringComparer.Ordinal);
        var fed = cords.Where(c => behind.Contains(c.Pdu)).Select(c => c.Item).ToHashSet(StringComparer.Ordinal);
        var last = rack.Items.Where(i => fed.Contains(i.Id)).Select(RankOf).DefaultIfEmpty().Max();
        return rack.Items.Count(i => i is { Ups: null, Power: { RatedW: > 0, Plugs: { Count: > 0 } plugs } } && !fed.Contains(i.Id) && RankOf(i) < last
            && Array.Exists(sources, s => ApparentVa(i) <= RatingOf(s.Ups)
                && s.Units.Any(u => (u.Groups ?? []).Any(g => g.Outlets.Any(o => plugs.Any(p => PlugFit.Fits(p, o.Socket)))))));
    }

    /// <summary>The load for which the battery of a UPS lasts, W; infinite where no time is asked for or its discharge figure is not given.</summary>
    /// <param name="ups">The UPS.</param>
    /// <param name="minutes">The run time that is asked for, min; null for none.</param>
    public static double LoadFor(Ups ups, double? minutes) => minutes is > 0 && ups is { RunMinutes: { } known, RunLoadW: { } atW }
        ? Batteries.LoadFor(known, atW, minutes.Value)
        : double.PositiveInfinity;

    private static double RatingOf(Item ups) => Math.Min(ups.Ups!.RatedW ?? double.PositiveInfinity, ups.Ups.RatedVa ?? double.PositiveInfinity);

    // From the UPS with the most power left, so that several share the load.
    private static void TakeFirst(Feed[] feeds, Item item)
    {
        var watts = item.Power!.RatedW!.Value;
        foreach (var (index, feed) in feeds.Index().OrderByDescending(f => f.Item.Left).Where(f => f.Item.CanTake(item, PlugFor(item, f.Index), watts)).Take(1))
        {
            feed.Bear(item, PlugFor(item, index), watts);
        }
    }

    // From a UPS for each other side. They bear the item together while the mains is out, by which it may have them where none bears it alone.
    private static void TakeOthers(Feed[] feeds, Item item)
    {
        var half = item.Power!.RatedW!.Value / 2;
        var sides = feeds.Index()
            .OrderBy(f => !f.Item.Has(item)).ThenByDescending(f => f.Item.Left)
            .Where(f => f.Item.Has(item) || f.Item.CanTake(item, PlugFor(item, f.Index), half))
            .DistinctBy(f => PlugFor(item, f.Index)).ToArray();
        foreach (var (index, feed) in sides.Where(_ => sides.Length > 1))
        {
            feed.Bear(item, PlugFor(item, index), item.Power.RatedW.Value / sides.Length);
        }
    }

    // The sides of a dual-corded item are for the UPSs in turn, as the supplies of these are.
    private static int PlugFor(Item item, int feed) => item.Power!.Redundant == true ? feed % item.Power.Plugs!.Count : 0;

    /// <summary>What an item draws from a UPS, VA; 0 where its power is not given.</summary>
    /// <param name="item">The item with the data of its part number.</param>
    public static double ApparentVa(Item item) => (item.Power?.RatedW ?? 0) / (item.Power?.PowerFactor ?? Currents.UsualPowerFactor);

    // Each UPS on a supply of its own, in turn. Its PDU names the same supply, by which the check keeps the cords of dual-corded items apart.
    private static IEnumerable<Connection> Divided(RackBuild build, Item[] sources, Pdu[] mains)
    {
        var outlets = mains.ToDictionary(u => u.Id, u => new FreeOutlets(u), StringComparer.Ordinal);
        string[] supplies = [.. mains.Select(u => u.Supply).Distinct()];
        foreach (var (index, ups) in sources.Index().Where(s => supplies.Length > 1 && s.Item.Power?.Plugs is [_]))
        {
            var inTurn = mains.OrderBy(u => (Array.IndexOf(supplies, u.Supply) + supplies.Length - (index % supplies.Length)) % supplies.Length);
            foreach (var unit in inTurn)
            {
                if (outlets[unit.Id].Take(ups.Power!.Plugs![0]) is { } group)
                {
                    var behind = build.Units.Find(u => u.Unit.Id == ups.Ups!.Feeds![0])!;
                    behind.Unit = behind.Unit with { Supply = unit.Supply };
                    yield return new Connection { Item = ups.Id, Plug = 0, Pdu = unit.Id, Group = group };
                    break;
                }
            }
        }
    }

    private static int RankOf(Item item) => Array.IndexOf(Order, item.Category ?? ItemCategory.Other) is >= 0 and var rank ? rank : Order.Length;

    // What a UPS feeds through its PDU, as far as its rating goes and, where a run time is asked for, as far as its battery lasts.
    private sealed class Feed(Item ups, Pdu unit, double? minutes, Func<Pdu, Item, double> unitVa)
    {
        private readonly double ratedVa = ups.Ups!.RatedVa ?? double.PositiveInfinity;
        private readonly double ratedW = ups.Ups.RatedW ?? double.PositiveInfinity;
        private readonly double lastsForW = LoadFor(ups.Ups, minutes);
        private readonly Dictionary<string, double> bornW = new(StringComparer.Ordinal);
        private double takenVa;
        private double takenW;

        public Pdu Unit => unit;

        public FreeOutlets Outlets { get; } = new(unit);

        public List<Connection> Connections { get; } = [];

        // The share of its power that is left.
        public double Left => 1 - Math.Max(takenVa / ratedVa, takenW / ratedW);

        public bool Has(Item item) => bornW.ContainsKey(item.Id);

        // All of the item is within its rating, as the other side can be lost, and while the mains is out the part that it bears lasts.
        public bool CanTake(Item item, int plug, double watts) =>
            takenVa + ApparentVa(item) <= Math.Min(ratedVa, unitVa(unit, item)) && takenW + item.Power!.RatedW!.Value <= ratedW
            && (double.IsInfinity(lastsForW) || bornW.Values.Sum() + watts <= lastsForW)
            && Outlets.Has(item.Power.Plugs![plug]);

        public void Bear(Item item, int plug, double watts)
        {
            if (!Has(item))
            {
                (takenVa, takenW) = (takenVa + ApparentVa(item), takenW + item.Power!.RatedW!.Value);
                Connections.Add(new Connection { Item = item.Id, Plug = plug, Pdu = unit.Id, Group = Outlets.Take(item.Power.Plugs![plug])! });
            }

            bornW[item.Id] = watts;
        }
    }

    private sealed class FreeOutlets(Pdu unit)
    {
        // A group may have two kinds of outlets with the same socket, switched and not.
        private readonly List<(string Group, OutletSet Outlets, int Left)> all =
            [.. (unit.Groups ?? []).SelectMany(g => g.Outlets.Select(o => (g.Id, o, o.Count)))];

        private readonly Dictionary<string, int> cords = new(StringComparer.Ordinal);

        // The outlets taken so far.
        public IReadOnlyList<OutletGroup> Taken =>
        [
            .. (unit.Groups ?? []).Select(g => g with
            {
                Outlets = [.. all.Where(a => a.Group == g.Id && a.Left < a.Outlets.Count).Select(a => a.Outlets with { Count = a.Outlets.Count - a.Left })],
            }).Where(g => g.Outlets.Count > 0),
        ];

        public bool Has(ConnectorCode plug) => For(plug) >= 0;

        // The group with the fewest cords of those with an outlet that a plug goes into; null if none is free.
        public string? Take(ConnectorCode plug)
        {
            if (For(plug) is not (>= 0 and var at))
            {
                return null;
            }

            all[at] = all[at] with { Left = all[at].Left - 1 };
            cords[all[at].Group] = CordsOf(at) + 1;
            return all[at].Group;
        }

        private int For(ConnectorCode plug)
        {
            var at = -1;
            for (var i = 0; i < all.Count; i++)
            {
                if (all[i].Left > 0 && PlugFit.Fits(plug, all[i].Outlets.Socket) && (at < 0 || CordsOf(i) < CordsOf(at)))
                {
                    at = i;
                }
            }

            return at;
        }

        private int CordsOf(int outlet) => cords.GetValueOrDefault(all[outlet].Group);
    }
}
