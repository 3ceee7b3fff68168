using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Catalogue;
using RackCheck.Survey.Power;

namespace RackCheck.Planning.Proposals;

/// <summary>
/// Decides what a UPS feeds: servers, computers and network equipment first, as long as its rating and its PDU allow. Of a dual-corded item it
/// takes the cord on the supply of the UPS.
/// </summary>
internal static class UpsLoads
{
    private static readonly ItemCategory[] Order =
        [ItemCategory.Server, ItemCategory.Computer, ItemCategory.Network, ItemCategory.KvmSwitch, ItemCategory.Display, ItemCategory.KeyboardDrawer];

    /// <summary>The connections of a rack with a PDU behind each UPS.</summary>
    /// <param name="before">The connections of the same rack without these PDUs.</param>
    /// <param name="rack">The rack.</param>
    /// <param name="wanted">Whether items are to be fed from a UPS, by id; the others are as far as it has power.</param>
    /// <returns>All connections.</returns>
    public static IReadOnlyList<Connection> Of(IReadOnlyList<Connection> before, ResolvedRack rack, IReadOnlyDictionary<string, bool> wanted)
    {
        var items = rack.Description.Items;
        var units = (rack.Description.Pdus ?? []).ToDictionary(u => u.Id, StringComparer.Ordinal);
        var connections = before.Where(c => units.ContainsKey(c.Pdu)).ToList();
        foreach (var ups in items.Where(i => i.Ups?.Feeds is [_]))
        {
            var unit = units[ups.Ups!.Feeds![0]];
            var supply = connections.Where(c => c.Item == ups.Id).Select(c => units[c.Pdu].Supply).FirstOrDefault();
            var outlets = (unit.Groups ?? []).SelectMany(g => g.Outlets.Select(o => (Group: g.Id, o.Socket, Left: o.Count))).ToList();
            var room = Math.Min(ups.Ups.RatedW ?? double.PositiveInfinity, ups.Ups.RatedVa ?? double.PositiveInfinity);
            foreach (var item in items
                .Where(i => i.Ups is null && i.Power is { RatedW: > 0, Plugs: not null } && wanted.GetValueOrDefault(i.Id, true))
                .OrderBy(i => !wanted.ContainsKey(i.Id)).ThenBy(RankOf).ThenBy(i => i.Id, StringComparer.Ordinal))
            {
                var index = connections.FindIndex(c =>
                    c.Item == item.Id && !IsBehindUps(c, items) && (item.Power!.Redundant != true || units[c.Pdu].Supply == supply));
                var va = item.Power!.RatedW!.Value / (item.Power.PowerFactor ?? Currents.UsualPowerFactor);
                if (index < 0 || va > room)
                {
                    continue;
                }

                var plug = item.Power.Plugs!.ElementAtOrDefault(connections[index].Plug ?? 0);
                if (outlets.FindIndex(o => o.Left > 0 && PlugFit.Fits(plug, o.Socket)) is >= 0 and var outlet)
                {
                    outlets[outlet] = outlets[outlet] with { Left = outlets[outlet].Left - 1 };
                    connections[index] = connections[index] with { Pdu = unit.Id, Group = outlets[outlet].Group };
                    room -= va;
                }
            }
        }

        return connections;
    }

    private static int RankOf(Item item) => Array.IndexOf(Order, item.Category ?? ItemCategory.Other) is >= 0 and var rank ? rank : Order.Length;

    private static bool IsBehindUps(Connection connection, IReadOnlyList<Item> items) => items.Any(i => i.Ups?.Feeds?.Contains(connection.Pdu) == true);
}
