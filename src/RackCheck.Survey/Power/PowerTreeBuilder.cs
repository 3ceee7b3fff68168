using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Assumed;
using RackCheck.Survey.Layout;
using RackCheck.Survey.Limits;
using static System.FormattableString;

namespace RackCheck.Survey.Power;

/// <summary>Builds the nodes of the power tree of a description, with defaults filled in and recorded.</summary>
internal static class PowerTreeBuilder
{
    /// <summary>Supplies, PDUs and groups.</summary>
    /// <param name="description">The description.</param>
    /// <param name="limits">The limits in force.</param>
    /// <param name="assumptions">Receives the defaults; null if nobody reads them.</param>
    public static (SupplyNode[] Supplies, PduNode[] Units, GroupNode[] Groups) Nodes(
        RackDescription description, LimitsInForce limits, List<AssumedValue>? assumptions)
    {
        if (description is { Pdus.Count: > 0, Site.Region: null } or { Pdus.Count: > 0, Site: null })
        {
            assumptions?.Add(new AssumedValue
            {
                Pointer = "/site/region", Value = "eu",
                Basis = Bases.ConnectorRatings,
            });
        }

        var supplies = new SupplyNode[description.Supplies?.Count ?? 0];
        for (var i = 0; i < supplies.Length; i++)
        {
            supplies[i] = SupplyOf(description, i, limits, assumptions);
        }

        var units = new PduNode[description.Pdus?.Count ?? 0];
        var groups = new List<GroupNode>(2 * units.Length);
        for (var i = 0; i < units.Length; i++)
        {
            units[i] = UnitOf(description.Pdus![i], i, supplies, groups, assumptions);
        }

        return (supplies, units, [.. groups]);
    }

    /// <summary>The UPSs by id, linked to the PDUs that they feed.</summary>
    public static UpsNode[] UpsNodes(MountedItem[] items, PduNode[] units)
    {
        List<UpsNode>? found = null;
        foreach (var item in items)
        {
            if (item.Item?.Ups is not { } source)
            {
                continue;
            }

            var ups = new UpsNode { Item = item, Source = source };
            (found ??= []).Add(ups);
            foreach (var id in source.Feeds ?? [])
            {
                if (Array.Find(units, u => u.Id == id) is { FedBy: null } unit)
                {
                    unit.FedBy = ups;
                    ups.UnitList.Add(unit);
                }
            }
        }

        found?.Sort((x, y) => string.CompareOrdinal(x.Item.Id, y.Item.Id));
        return found is null ? [] : [.. found];
    }

    /// <summary>The cords of all items, by item id and plug.</summary>
    /// <param name="supplies">Number of supplies.</param>
    /// <param name="upsNodes">The UPSs, which receive their cords.</param>
    /// <param name="assumptions">Receives the defaults; null if no result depends on them, or nobody reads them.</param>
    public static Cord[] Cords(MountedItem[] items, int supplies, UpsNode[] upsNodes, List<AssumedValue>? assumptions)
    {
        var count = 0;
        var total = 0.0;
        foreach (var item in items)
        {
            count += item.Item?.Power?.Plugs?.Count ?? 0;
            total += item.Item is { Ups: null } source ? PowerTree.WattsOf(source) : 0;
        }

        if (count == 0)
        {
            return [];
        }

        var byId = items.ToArray();
        Array.Sort(byId, static (x, y) => string.CompareOrdinal(x.Id, y.Id));
        var cords = new Cord[count];
        var at = 0;
        foreach (var item in byId)
        {
            if (item.Item?.Power is { Plugs: { Count: > 0 } plugs } power)
            {
                AddCords(item, power, plugs, supplies, total, cords, at, assumptions);
                at += plugs.Count;
            }
        }

        foreach (var ups in upsNodes)
        {
            ups.Cords = Array.FindAll(cords, c => ReferenceEquals(c.Item, ups.Item));
        }

        return cords;
    }

    private static void AddCords(
        MountedItem item, ItemPower power, IReadOnlyList<ConnectorCode> plugs, int supplies, double total, Cord[] cords, int at,
        List<AssumedValue>? assumptions)
    {
        // The input of a UPS depends on the placement of all other cords, so its maximum input is used to choose its outlet.
        var watts = item.Item!.Ups is not { } ups ? PowerTree.WattsOf(item.Item)
            : ups.Feeds is null ? power.RatedW ?? 0
            : Math.Min(total, ups.RatedW ?? double.PositiveInfinity) + (item.Item.HeatW ?? 0);
        if (power.PowerFactor is null)
        {
            assumptions?.Add(new AssumedValue
            {
                Pointer = Pointers.ItemPowerFactor[item.Index], Value = Currents.UsualPowerFactor,
                Basis = Bases.PowerFactor,
            });
        }

        if (item.Item is { Ups.Feeds: not null, HeatW: null })
        {
            assumptions?.Add(new AssumedValue
            {
                Pointer = Pointers.ItemHeat[item.Index], Value = 0, Unit = "W",
                Basis = Bases.UpsLosses,
            });
        }

        // With the worst supply lost, a redundant item keeps the half of its cords that is assigned to other supplies.
        var alive = power.Redundant == true && supplies > 1 ? Math.Max(1, plugs.Count / 2) : plugs.Count;
        for (var plug = 0; plug < plugs.Count; plug++)
        {
            cords[at + plug] = new Cord
            {
                Item = item,
                Plug = plug,
                Code = plugs[plug],
                Siblings = plugs.Count,
                PowerFactor = power.PowerFactor ?? Currents.UsualPowerFactor,
                Watts = watts / plugs.Count,
                WorstWatts = watts / alive,
                InrushA = power.InrushA / plugs.Count,
                LeakageMa = power.LeakageMa / plugs.Count,
                IsKnown = power.RatedW is not null,
            };
        }
    }

    private static SupplyNode SupplyOf(RackDescription description, int index, LimitsInForce limits, List<AssumedValue>? assumptions)
    {
        var source = description.Supplies![index];
        var phases = source.Phases ?? (HasOtherLines(description, source.Id) ? 3 : 1);
        var isUsed = description.Pdus?.Any(u => u.Supply == source.Id) == true;
        if (source.Phases is null && isUsed)
        {
            assumptions?.Add(new AssumedValue
            {
                Pointer = Invariant($"/supplies/{index}/phases"),
                Value = phases,
                Basis = phases == 3 ? Bases.ThreePhases : Bases.OnePhase,
            });
        }

        if (source.Breaker?.RatedA is null && isUsed)
        {
            assumptions?.Add(new AssumedValue
            {
                Pointer = Invariant($"/supplies/{index}/breaker/ratedA"), Value = source.RatedA, Unit = "A",
                Basis = Bases.BreakerRating,
            });
        }

        if (source.RcdMa is null && isUsed)
        {
            assumptions?.Add(AssumedValue.Worded(Invariant($"/supplies/{index}/rcdMa"), AssumedTexts.None, Bases.NoRcd));
        }

        if (source.Cable is { CrossSectionMm2: not null, AmbientC: null } && isUsed && description.Site?.AmbientMaxC is null)
        {
            assumptions?.Add(new AssumedValue
            {
                Pointer = Invariant($"/supplies/{index}/cable/ambientC"), Value = Cables.ReferenceAmbientC, Unit = "C",
                Basis = Bases.CableTemperature,
            });
        }

        if (source is { FaultCurrentA: null, RcdMa: null } && isUsed && description.Site?.Region != Region.Na)
        {
            assumptions?.Add(new AssumedValue
            {
                Pointer = Invariant($"/supplies/{index}/faultCurrentA"), Value = Quantities.Round(source.VoltageV / FaultLoops.MostDeclaredOhm), Unit = "A",
                Basis = Bases.LoopImpedance,
            });
        }

        if (source.Socket is not (null or ConnectorCode.Hardwired) && PlugsInto(description, source.Id) is > 1 and var plugs)
        {
            assumptions?.Add(new AssumedValue
            {
                Pointer = Invariant($"/supplies/{index}/socket"), Value = plugs, Unit = "sockets",
                Basis = Bases.SocketPerPdu,
            });
        }

        return new SupplyNode
        {
            Index = index,
            Source = source,
            Phases = phases,
            BreakerA = source.Breaker?.RatedA ?? source.RatedA,
            Limits = limits,
            IsNorthAmerica = description.Site?.Region == Region.Na,
            CoolingW = CoolingOn(description, source.Id),
            IsLineToLine = phases == 3 && FeedsPairs(description, source),
            LineList = Points(phases),
        };
    }

    private static double CoolingOn(RackDescription description, string supply)
    {
        var watts = description.Cooling?.AirConditioner is { } cooler && cooler.Supply == supply ? cooler.InputW ?? 0 : 0;
        foreach (var fans in (description.Cooling?.RoofFans ?? []).Concat(description.Cooling?.FanTrays ?? []))
        {
            watts += fans.Supply == supply ? fans.InputW ?? 0 : 0;
        }

        return watts;
    }

    // A three-phase supply of North America above 150 V has no outlet from line to neutral.
    private static bool FeedsPairs(RackDescription description, Supply supply) =>
        (description.Site?.Region == Region.Na && supply.VoltageV > Currents.MostLineToNeutralV)
        || description.Pdus?.Any(u => u.Supply == supply.Id && u.Groups!.Any(g => g.Phase >= Phase.L1L2)) == true;

    // PDUs fed by a UPS are connected to the UPS.
    private static int PlugsInto(RackDescription description, string supply) =>
        description.Pdus?.Count(u => u.Supply == supply && u.Plug is not (null or ConnectorCode.Hardwired)
            && !description.Items.Any(i => i.Ups?.Feeds?.Contains(u.Id) == true)) ?? 0;

    private static bool HasOtherLines(RackDescription description, string supply) =>
        description.Pdus?.Any(u => u.Supply == supply && u.Groups!.Any(g => g.Phase > Phase.L1)) == true;

    private static PduNode UnitOf(Pdu source, int index, SupplyNode[] supplies, List<GroupNode> groups, List<AssumedValue>? assumptions)
    {
        var supply = Array.Find(supplies, s => s.Id == source.Supply) ?? throw new ArgumentException($"No supply has the id {source.Supply}.", nameof(source));
        var unit = new PduNode { Index = index, Source = source, Supply = supply, LineList = Points(supply.Phases) };
        supply.UnitList.Add(unit);
        for (var i = 0; i < source.Groups!.Count; i++)
        {
            var group = source.Groups[i];
            if (group.Phase is null && supply.Phases == 3)
            {
                assumptions?.Add(new AssumedValue
                {
                    Pointer = Invariant($"/pdus/{index}/groups/{i}/phase"), Value = supply.IsLineToLine ? "L1-L2" : "L1",
                    Basis = supply.IsLineToLine ? Bases.FirstPair : Bases.FirstLine,
                });
            }

            var line = supply.Phases == 3 ? (int)(group.Phase ?? Phase.L1) % 3 : 0;
            var node = new GroupNode { Index = i, Unit = unit, Source = group, Line = line, FlatIndex = groups.Count };
            unit.GroupList.Add(node);
            groups.Add(node);
        }

        return unit;
    }

    private static LoadPoint[] Points(int count)
    {
        var points = new LoadPoint[count];
        for (var i = 0; i < count; i++)
        {
            points[i] = new LoadPoint();
        }

        return points;
    }
}
