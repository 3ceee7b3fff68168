using RackCheck.Model;

namespace RackCheck.Testing;

/// <summary>Short forms for supplies, PDUs and their loads. Use with <c>using static</c>.</summary>
public static class Wiring
{
    public static RackDescription Wired(params Supply[] supplies) => TestRacks.EmptyRack(24, widthMm: 800) with { Supplies = supplies, Pdus = [] };

    public static Supply Mains(string id = "A", double rated = 16, int phases = 1, double voltage = 230) =>
        new() { Id = id, VoltageV = voltage, Phases = phases, RatedA = rated, Breaker = new Breaker { Curve = BreakerCurve.C, RatedA = rated } };

    public static Pdu Pdu(string id, string supply, double rated, params OutletGroup[] groups) =>
        new() { Id = id, Supply = supply, RatedA = rated, Mounting = PduMounting.Vertical, Groups = groups };

    public static OutletGroup Outlets(string id, double? breaker, ConnectorCode socket = ConnectorCode.C13, int count = 12, Phase? phase = null) =>
        new() { Id = id, BreakerA = breaker, Phase = phase, Outlets = [new OutletSet { Socket = socket, Count = count }] };

    public static RackDescription Units(this RackDescription rack, params Pdu[] units) => rack with { Pdus = [.. rack.Pdus ?? [], .. units] };

    public static RackDescription Region(this RackDescription rack, Region region) => rack with { Site = new Site { Region = region } };

    public static RackDescription Connect(this RackDescription rack, string item, string unit, string group, int? plug = null) =>
        rack with { Connections = [.. rack.Connections ?? [], new Connection { Item = item, Plug = plug, Pdu = unit, Group = group }] };

    public static Item Load(
        string id, double? watts, double? factor = 1, int cords = 1, bool? redundant = null, ConnectorCode plug = ConnectorCode.C14) => new()
    {
        Id = id, HeightU = 1,
        Power = new ItemPower { RatedW = watts, PowerFactor = factor, Redundant = redundant, Plugs = [.. Enumerable.Repeat(plug, cords)] },
    };
}
