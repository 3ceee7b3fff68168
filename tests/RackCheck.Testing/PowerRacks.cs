using System.Text.Json.Nodes;
using RackCheck.Model;
using RackCheck.Rules;

namespace RackCheck.Testing;

/// <summary>Racks with supplies, PDUs and cords, in short.</summary>
public static class PowerRacks
{
    public const ConnectorCode Blue16 = ConnectorCode.Iec60309A16P1;
    public const ConnectorCode Blue32 = ConnectorCode.Iec60309A32P1;
    public const ConnectorCode Red16 = ConnectorCode.Iec60309A16P3;

    /// <summary>An item of 2 units that draws power at power factor 1.</summary>
    public static Item Load(string id, double? watts, params ConnectorCode[] plugs) =>
        new() { Id = id, HeightU = 2, Power = new ItemPower { RatedW = watts, PowerFactor = 1, Plugs = plugs } };

    public static Item Load(string id, double watts, double volts, params ConnectorCode[] plugs) =>
        Load(id, watts, plugs) is var item ? item with { Power = item.Power! with { VoltageV = volts } } : item;

    public static Item Twin(string id, double watts, params ConnectorCode[] plugs) =>
        Load(id, watts, plugs) is var item ? item with { Power = item.Power! with { Redundant = true } } : item;

    public static Supply Feed(string id, double amperes = 16, double volts = 230, int phases = 1, ConnectorCode? socket = Blue16) =>
        new()
        {
            Id = id, VoltageV = volts, Phases = phases, RatedA = amperes, Breaker = new Breaker { Curve = BreakerCurve.C, RatedA = amperes }, Socket = socket,
        };

    /// <summary>A vertical unit with one group, g.</summary>
    public static Pdu Strip(
        string id, string supply, ConnectorCode socket = ConnectorCode.C13, int count = 4, double amperes = 16, ConnectorCode? plug = Blue16) => new()
    {
        Id = id, Supply = supply, RatedA = amperes, Plug = plug, Mounting = PduMounting.Vertical,
        Groups = [new OutletGroup { Id = "g", Outlets = [new OutletSet { Socket = socket, Count = count }] }],
    };

    public static Pdu With(this Pdu unit, string group, ConnectorCode socket, int count, Phase? phase = null) =>
        unit with { Groups = [.. unit.Groups!, new OutletGroup { Id = group, Phase = phase, Outlets = [new OutletSet { Socket = socket, Count = count }] }] };

    public static Connection To(string item, int plug, string unit, string group = "g") => new() { Item = item, Plug = plug, Pdu = unit, Group = group };

    /// <summary>A rack with items stacked from below.</summary>
    public static RackDescription Rack(Supply[]? supplies, Pdu[]? units, params Item[] items)
    {
        var placed = new List<Item>();
        foreach (var item in items)
        {
            placed.Add(item.At(1 + placed.Sum(i => i.HeightU!.Value)));
        }

        return TestRacks.EmptyRack() with { Items = placed, Supplies = supplies, Pdus = units };
    }

    /// <summary>What every finding owes its reader.</summary>
    public static void IsWhole(RuleDescriptor facts, RackDescription rack, Finding finding) =>
        FindingShape.Check(finding, facts, JsonNode.Parse(Wording.Of(rack))!);
}
