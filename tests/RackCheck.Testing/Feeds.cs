using RackCheck.Model;

namespace RackCheck.Testing;

/// <summary>Short forms for racks that are fed: supplies, units with outlets, loads. Power factor 1, so that currents can be worked in the head.</summary>
public static class Feeds
{
    public static Supply Mains(
        string id = "A", double ratedA = 16, double? breakerA = null, BreakerCurve? curve = BreakerCurve.C, double? mm2 = 4, double? metres = 10,
        int phases = 1, double volts = 230) => new()
        {
            Id = id, VoltageV = volts, Phases = phases, RatedA = ratedA,
            Breaker = new Breaker { Curve = curve, RatedA = breakerA ?? ratedA },
            Cable = mm2 is null && metres is null ? null : new SupplyCable { LengthM = metres, CrossSectionMm2 = mm2 },
        };

    public static Pdu Board(string id, double ratedA = 16, string supply = "A", params OutletGroup[] groups) => new()
    {
        Id = id, Supply = supply, RatedA = ratedA, Mounting = PduMounting.Vertical, Groups = groups.Length == 0 ? [Outlets("g1")] : groups,
    };

    public static OutletGroup Outlets(string id, Phase phase = Phase.L1, double? breakerA = null, int count = 4, bool? switched = null) => new()
    {
        Id = id, Phase = phase, BreakerA = breakerA,
        Outlets =
        [
            new OutletSet { Socket = ConnectorCode.C13, Count = count, Switched = switched },
            new OutletSet { Socket = ConnectorCode.C19, Count = count, Switched = switched },
        ],
    };

    public static Item Load(
        string id, double? watts, int cords = 1, bool redundant = false, double? inrush = 20, double pf = 1, ConnectorCode plug = ConnectorCode.C20) => new()
    {
        Id = id, HeightU = 1,
        Power = new ItemPower
        {
            RatedW = watts, PowerFactor = pf, InrushA = inrush, LeakageMa = 1, Redundant = redundant ? true : null,
            Plugs = [.. Enumerable.Repeat(plug, cords)],
        },
    };

    public static Item Placed(this Item item, int unit) => item with { Position = new Position { U = unit } };

    public static RackDescription Fed(this RackDescription rack, Supply[] supplies, params Pdu[] units) =>
        rack with { Supplies = supplies, Pdus = units };

    public static RackDescription Fed(Supply supply, params Pdu[] units) => TestRacks.EmptyRack(widthMm: 800).Fed([supply], units);

    public static RackDescription Plugged(this RackDescription rack, string item, string unit, string group, int plug = 0) => rack with
    {
        Connections = [.. rack.Connections ?? [], new Connection { Item = item, Plug = plug, Pdu = unit, Group = group }],
    };

    public static RackDescription In(this RackDescription rack, Region region) => rack with { Site = (rack.Site ?? new Site()) with { Region = region } };
}
