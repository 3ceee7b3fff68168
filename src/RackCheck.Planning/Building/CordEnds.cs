using RackCheck.Model;
using RackCheck.Survey.Power;

namespace RackCheck.Planning.Building;

/// <summary>
/// Chooses cords with another plug than that of their inlet: a mains plug for outlets in the style of the room, or the plug of a lower temperature class. An
/// inlet takes any cord with its connector.
/// </summary>
internal static class CordEnds
{
    /// <summary>Sets the plugs of the items whose cords get an outlet only by such a cord. The PDUs of the order are connected.</summary>
    public static void Choose(BasketContext context, RackBuild build)
    {
        Cord[] left = [.. build.Wired.Power.Cords.Where(c => c.Group is null && PlugFit.IsInlet(c.Code))];
        foreach (var alike in left.GroupBy(c => c.Code).OrderBy(g => g.Key))
        {
            var connector = PlugFit.SocketFor(alike.Key);
            Queue<Cord> cords = new(alike.OrderBy(c => c.Item.Id, IdOrder.Instance).ThenBy(c => c.Plug));

            // Cords of the order, as far as a PDU of the order has outlets for them.
            foreach (var entry in build.Stock.LeftOf(ProductKind.Cord).Where(e => IsOther(e.Product.Cord!)))
            {
                var plug = entry.Product.Cord!.Plug;
                for (var count = Math.Min(entry.Left, FreeOutlets(build, plug)); count > 0 && cords.TryDequeue(out var cord); count--)
                {
                    Set(build, cord, plug);
                }
            }

            // Where no PDU on offer has outlets for the usual cord.
            if (cords.Count > 0 && !IsOnOffer(context, build, alike.Key)
                && context.Offered(ProductKind.Cord).Select(p => p.Cord!).FirstOrDefault(
                    c => IsOther(c) && (IsOnOffer(context, build, c.Plug) || FreeOutlets(build, c.Plug) >= cords.Count)) is { } other)
            {
                while (cords.TryDequeue(out var cord))
                {
                    Set(build, cord, other.Plug);
                }
            }

            bool IsOther(ProductCord cord) => cord.Connector == connector && cord.Plug != alike.Key;
        }
    }

    private static void Set(RackBuild build, Cord cord, ConnectorCode plug)
    {
        var item = build.Items.Find(i => i.Id == cord.Item.Id)!;
        var power = item.Item.Power!;
        ConnectorCode[] plugs = [.. power.Plugs!];
        plugs[cord.Plug] = plug;
        item.Item = item.Item with { Power = power with { Plugs = plugs } };
        item.Inlets = new Dictionary<int, ConnectorCode>(item.Inlets ?? new Dictionary<int, ConnectorCode>()) { [cord.Plug] = cord.Code };
        build.Rewire();
    }

    // Outlets of the rack that a plug goes into and no cord has.
    private static int FreeOutlets(RackBuild build, ConnectorCode plug)
    {
        var cords = build.Wired.Power.Cords;
        return build.Units.SelectMany(u => u.Whole.Groups ?? []).SelectMany(g => g.Outlets).Where(o => PlugFit.Fits(plug, o.Socket)).Sum(o => o.Count)
            - cords.Count(c => c.Group is not null && c.Socket is { } socket && PlugFit.Fits(plug, socket))
            - cords.Count(c => c.Group is null && c.Code == plug);
    }

    private static bool IsOnOffer(BasketContext context, RackBuild build, ConnectorCode plug) => context.Offered(ProductKind.Pdu).Any(
        p => p.Pdu?.Groups is { } groups && !SupplyChoice.IsForUps(p) && groups.Any(g => g.Outlets.Any(o => PlugFit.Fits(plug, o.Socket)))
            && (build.HasGivenSupplies ? build.Supplies.Exists(s => SupplyChoice.Takes(s, p.Pdu)) : SupplyChoice.SuitsRegion(build.Region, p.Pdu)));
}
