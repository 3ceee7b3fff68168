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
    /// <returns>The connections.</returns>
    public static IReadOnlyList<Connection> Choose(RackBuild build, IReadOnlyDictionary<string, bool> wanted)
    {
        Item[] items = [.. build.Items.Select(i => i.Item)];
        var units = build.Units.Select(u => u.Unit).ToDictionary(u => u.Id, StringComparer.Ordinal);
        Item[] sources = [.. items.Where(i => i.Ups?.Feeds is [var unit] && units.ContainsKey(unit)).OrderBy(i => i.Id, Words.ById)];
        var connections = new List<Connection>();
        var fed = new HashSet<(string Item, int Plug)>();
        foreach (var (side, ups) in sources.Index())
        {
            var unit = units[ups.Ups!.Feeds![0]];
            var outlets = new FreeOutlets(unit);
            var room = RatingOf(ups);
            foreach (var item in items
                .Where(i => i.Ups is null && i.Power is { RatedW: > 0, Plugs.Count: > 0 } && wanted.GetValueOrDefault(i.Id, true))
                .OrderBy(i => !wanted.ContainsKey(i.Id)).ThenBy(RankOf).ThenBy(i => i.Id, Words.ById))
            {
                var plug = item.Power!.Redundant == true ? side % item.Power.Plugs!.Count : 0;
                var va = ApparentVa(item);
                if (va <= room && !fed.Contains((item.Id, plug)) && outlets.Take(item.Power.Plugs![plug]) is { } group)
                {
                    connections.Add(new Connection { Item = item.Id, Plug = plug, Pdu = unit.Id, Group = group });
                    fed.Add((item.Id, plug));
                    room -= va;
                }
            }

            // Nothing else goes behind the UPS while the check assigns the other cords.
            if (outlets.Taken is { Count: > 0 } taken)
            {
                build.Units.Find(u => u.Unit.Id == unit.Id)!.Keep(taken);
            }
        }

        connections.AddRange(Divided(build, sources, [.. units.Values.Where(u => !Array.Exists(sources, s => s.Ups!.Feeds![0] == u.Id))]));
        return connections;
    }

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

    private static double RatingOf(Item ups) => Math.Min(ups.Ups!.RatedW ?? double.PositiveInfinity, ups.Ups.RatedVa ?? double.PositiveInfinity);

    private static double ApparentVa(Item item) => item.Power!.RatedW!.Value / (item.Power.PowerFactor ?? Currents.UsualPowerFactor);

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

        // The group with the fewest cords of those with an outlet that a plug goes into; null if none is free.
        public string? Take(ConnectorCode plug)
        {
            var at = -1;
            for (var i = 0; i < all.Count; i++)
            {
                if (all[i].Left > 0 && PlugFit.Fits(plug, all[i].Outlets.Socket) && (at < 0 || CordsOf(i) < CordsOf(at)))
                {
                    at = i;
                }
            }

            if (at < 0)
            {
                return null;
            }

            all[at] = all[at] with { Left = all[at].Left - 1 };
            cords[all[at].Group] = CordsOf(at) + 1;
            return all[at].Group;
        }

        private int CordsOf(int outlet) => cords.GetValueOrDefault(all[outlet].Group);
    }
}
