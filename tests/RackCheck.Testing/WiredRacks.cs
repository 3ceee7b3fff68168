using CsCheck;
using RackCheck.Model;
using RackCheck.Survey.Power;
using static RackCheck.Testing.RackGenerator;

namespace RackCheck.Testing;

/// <summary>
/// Random racks with supplies, PDUs, cords, uninterruptible supplies and earth: overloaded, short of outlets, of mixed
/// voltages and plugs, half described. Ratings come from short lists that lie close about what the loads come to.
/// </summary>
public static class WiredRacks
{
    private static readonly Gen<Supply> Supplies =
        from voltage in OneOf(230.0, 230, 230, 120, 208)
        from phases in Maybe(OneOf(1, 3, 3))
        from rated in OneOf(10.0, 16, 16, 32)
        from curve in Maybe(OneOf(BreakerCurve.B, BreakerCurve.C, BreakerCurve.D))
        from breaker in Maybe(OneOf(10.0, 16, 16, 32))
        from socket in Maybe(
            OneOf(
                ConnectorCode.Iec60309A16P1, ConnectorCode.Iec60309A32P1, ConnectorCode.Iec60309A16P3, ConnectorCode.Bs1363, ConnectorCode.NemaL620,
                ConnectorCode.Hardwired))
        from length in Maybe(OneOf(5.0, 20, 60, 200))
        from section in Maybe(OneOf(1.5, 2.5, 2.5, 4, 6, 8, 25))
        from rcd in Maybe(OneOf(30.0, 100), few: true)
        from fault in Maybe(OneOf(500.0, 1500, 3000, 6000), few: true)
        from time in Maybe(OneOf(0.02, 0.1, 0.4), few: true)
        select new Supply
        {
            Id = "", VoltageV = voltage, Phases = phases, RatedA = rated, Socket = socket, RcdMa = rcd, FaultCurrentA = fault, DisconnectionTimeS = time,
            Breaker = curve is null && breaker is null ? null : new Breaker { Curve = curve, RatedA = breaker },
            Cable = length is null && section is null ? null : new SupplyCable { LengthM = length, CrossSectionMm2 = section },
        };

    private static readonly Gen<OutletSet> Outlets =
        from socket in OneOf(
            ConnectorCode.C13, ConnectorCode.C13, ConnectorCode.C13, ConnectorCode.C15, ConnectorCode.C19, ConnectorCode.Bs1363, ConnectorCode.Cee73,
            ConnectorCode.Iec60309A16P3)
        from count in Gen.Int[1, 6]
        from switched in Maybe(Gen.Bool, few: true)
        select new OutletSet { Socket = socket, Count = count, Switched = switched };

    private static readonly Gen<OutletGroup> Groups =
        from phase in Maybe(OneOf(Phase.L1, Phase.L2, Phase.L3))
        from breaker in Maybe(OneOf(6.0, 10, 16, 16))
        from outlets in Outlets.Array[1, 2]
        select new OutletGroup { Id = "", Phase = phase, BreakerA = breaker, Outlets = outlets };

    private static readonly Gen<Pdu> Units =
        from supply in Gen.Int[0, 5]
        from rated in OneOf(10.0, 16, 16, 32)
        from plug in Maybe(
            OneOf(
                ConnectorCode.Iec60309A16P1, ConnectorCode.Iec60309A32P1, ConnectorCode.Iec60309A16P3, ConnectorCode.Bs1363, ConnectorCode.C20,
                ConnectorCode.Hardwired))
        from groups in Groups.Array[1, 3]
        from remote in Maybe(Gen.Bool, few: true)
        select new Pdu
        {
            Id = "", Supply = FormattableString.Invariant($"{supply}"), RatedA = rated, Plug = plug, Mounting = PduMounting.Vertical, RemoteSwitched = remote,
            Groups = [.. groups.Select((g, i) => g with { Id = FormattableString.Invariant($"g{i}") })],
        };

    private static readonly Gen<ItemPower> Powers =
        from rated in Maybe(OneOf(0.0, 60, 350, 350, 800, 1500, 3500))
        from typical in Maybe(OneOf(0.0, 50, 400), few: true)
        from factor in Maybe(OneOf(0.6, 0.9, 1))
        from voltage in Maybe(OneOf(230.0, 120), few: true)
        from inrush in Maybe(OneOf(0.0, 20, 60))
        from leakage in Maybe(OneOf(0.0, 0.5, 1, 3.5, 12))
        from plug in OneOf(
            ConnectorCode.C14, ConnectorCode.C14, ConnectorCode.C14, ConnectorCode.C16, ConnectorCode.C20, ConnectorCode.Bs1363, ConnectorCode.Cee77,
            ConnectorCode.Iec60309A16P3)
        from count in OneOf(0, 1, 1, 1, 2, 2, 3)
        from none in Gen.Int[0, 9]
        from redundant in Maybe(Gen.Bool)
        select new ItemPower
        {
            RatedW = rated, TypicalW = typical, PowerFactor = factor, VoltageV = voltage, InrushA = inrush, LeakageMa = leakage, Redundant = redundant,
            Plugs = none == 0 ? null : [.. Enumerable.Repeat(plug, count)],
        };

    private static readonly Gen<Earth> Earths =
        from stud in Gen.Bool
        from section in Maybe(OneOf(1.5, 2.5, 4, 6))
        from length in Maybe(OneOf(0.3, 1, 2.5, 20))
        select new Earth(stud, section is null && length is null ? null : new EarthLead { CrossSectionMm2 = section, LengthM = length });

    private static readonly Gen<Ups> UpsKinds =
        from watts in Maybe(OneOf(500.0, 1500, 5000))
        from va in Maybe(OneOf(700.0, 1500, 6000))
        from minutes in Maybe(OneOf(5.0, 10))
        from load in Maybe(OneOf(500.0, 1500))
        from feeds in Gen.Int[0, 3]
        select new Ups
        {
            RatedW = watts, RatedVa = va, RunMinutes = minutes, RunLoadW = load, Feeds = feeds == 3 ? null : [FormattableString.Invariant($"{feeds}")],
        };

    private static readonly Gen<Cabinet> EarthBars =
        from terminals in Maybe(OneOf(0, 3, 6, 10, 24))
        from section in Maybe(OneOf(25.0, 75))
        from panels in Maybe(Gen.Bool, few: true)
        from fitted in Gen.Bool
        select new Cabinet { SidePanels = panels, EarthBar = fitted ? new EarthBar { Terminals = terminals, CrossSectionMm2 = section } : null };

    private static readonly Gen<Model.Earthing?> Earthings = Maybe(
        from second in Maybe(Gen.Bool)
        from conductor in Maybe(OneOf(1.5, 2.5, 4, 10, 16))
        from parts in OneOf(BondedPart.Frame, BondedPart.FrontDoor, BondedPart.RearDoor, BondedPart.SidePanels, BondedPart.Roof).Array[0, 5]
        from listed in Gen.Bool
        select new Model.Earthing { SecondaryEarth = second, MainConductorMm2 = conductor, Bonded = listed ? [.. parts.Distinct()] : null });

    private static readonly Gen<Site?> Sites = Maybe(
        from region in Maybe(OneOf(Region.Uk, Region.Eu, Region.Na))
        from minutes in Maybe(OneOf(5.0, 15), few: true)
        select new Site { Region = region, UpsMinutes = minutes });

    private static readonly Gen<bool> Bonded = Gen.Bool;

    /// <summary>Racks of the general generator, wired.</summary>
    public static Gen<RackDescription> All { get; } =
        from rack in Racks
        from supplies in Supplies.Array[1, 3]
        from units in Units.Array[0, 3]
        from powers in Maybe(Powers).Array[12]
        from earths in Maybe(Earths, few: true).Array[12]
        from ups in Maybe(UpsKinds, few: true).Array[2]
        from given in Gen.Int[0, 11].Array[12]
        from bar in EarthBars
        from earthing in Earthings
        from site in Sites
        from doorsBonded in Maybe(Bonded)
        from describesUnits in OneOf(true, true, true, true, true, false)
        select LineToLine(Wire(rack, supplies, units, powers, earths, ups, given, bar, earthing, site, doorsBonded, describesUnits));

    // In North America a three-phase supply above 150 V feeds its outlets from a pair of lines.
    private static RackDescription LineToLine(RackDescription rack)
    {
        if (rack.Site?.Region != Region.Na || rack.Pdus is not { } pdus || rack.Supplies is not { } supplies)
        {
            return rack;
        }

        bool IsThreePhase(Supply s) => s.VoltageV > 150
            && (s.Phases == 3 || (s.Phases is null && pdus.Any(u => u.Supply == s.Id && u.Groups!.Any(g => g.Phase > Phase.L1))));
        var named = supplies.Where(IsThreePhase).Select(s => s.Id).ToHashSet(StringComparer.Ordinal);
        return rack with
        {
            Pdus =
            [
                .. pdus.Select(u => !named.Contains(u.Supply) ? u : u with { Groups = [.. u.Groups!.Select(g => g with { Phase = g.Phase + 3 })] }),
            ],
        };
    }

    private static RackDescription Wire(
        RackDescription rack, Supply[] supplies, Pdu[] units, ItemPower?[] powers, Earth?[] earths, Ups?[] ups, int[] given, Cabinet bar,
        Model.Earthing? earthing, Site? site, bool? doorsBonded, bool describesUnits)
    {
        string[] supplyIds = ["mains", "B", "zeta \"7\""];
        string[] unitIds = ["strip", "a/b", "strip-2"];
        supplies = [.. supplies.Select((s, i) => s with { Id = supplyIds[i] })];
        units = [.. units.Select((u, i) => OnLines(u with { Id = unitIds[i], Supply = supplyIds[u.Supply[0] % supplies.Length] }, supplies))];
        var items = rack.Items.Select((item, i) => WithPower(item, powers[i], earths[i])).ToArray();
        var fed = new HashSet<string>();
        for (var i = 0; i < Math.Min(ups.Length, items.Length) && units.Length > 1; i++)
        {
            if (ups[i] is { } kind && items[i].Category is null)
            {
                string[]? feeds = kind.Feeds is null ? null : [.. kind.Feeds.Select(f => unitIds[f[0] % units.Length]).Where(fed.Add)];
                items[i] = items[i] with { Category = ItemCategory.Ups, Ups = kind with { Feeds = feeds } };
            }
        }

        return rack with
        {
            Cabinet = rack.Cabinet! with
            {
                EarthBar = bar.EarthBar, SidePanels = bar.SidePanels, FrontDoor = Bond(rack.Cabinet.FrontDoor, doorsBonded),
                RearDoor = Bond(rack.Cabinet.RearDoor, doorsBonded),
            },
            Items = items,
            Supplies = describesUnits ? supplies : null,
            Pdus = describesUnits ? units : null,
            Connections = describesUnits && units.Length > 0 ? Connect(items, units, supplies, given) : null,
            Earthing = earthing,
            Site = site,
        };
    }

    private static Door? Bond(Door? door, bool? bonded) => door is null ? null : door with { Bonded = bonded };

    private static Item WithPower(Item item, ItemPower? power, Earth? earth) => item.Category is ItemCategory.BlankingPanel or ItemCategory.Shelf
        ? item with { Power = null }
        : item with { Power = power, EarthStud = earth?.Stud, EarthLead = earth?.Lead };

    // A group is fed from a line of its supply.
    private static Pdu OnLines(Pdu unit, Supply[] supplies) =>
        supplies.Single(s => s.Id == unit.Supply).Phases == 1 ? unit with { Groups = [.. unit.Groups!.Select(g => g with { Phase = null })] } : unit;

    private static Connection[]? Connect(Item[] items, Pdu[] units, Supply[] supplies, int[] given)
    {
        var connections = new List<Connection>();
        for (var i = 0; i < items.Length; i++)
        {
            // A UPS is left to the service, so that no ring comes about; so is every other rack's worth of cords.
            if (items[i] is not { Ups: null, Power.Plugs: { Count: > 0 } plugs } || given[i] > 4)
            {
                continue;
            }

            var unit = units[given[i] % units.Length];
            var phases = supplies.Single(s => s.Id == unit.Supply).Phases;
            if (!PlugFit.IsThreePhase(plugs[0]) || phases == 3)
            {
                connections.Add(new Connection
                {
                    Item = items[i].Id, Plug = given[i] % 2 == 0 ? null : 0, Pdu = unit.Id, Group = unit.Groups![given[i] % unit.Groups!.Count].Id,
                });
            }
        }

        return connections.Count == 0 ? null : [.. connections];
    }

    private sealed record Earth(bool Stud, EarthLead? Lead);
}
