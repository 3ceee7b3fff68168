using RackCheck.Model;
using RackCheck.Rules.Catalogue;
using RackCheck.Rules.Tests.Harness;

namespace RackCheck.Rules.Tests.Catalogue;

/// <summary>Products for tests, and racks that name them.</summary>
internal static class Parts
{
    public static readonly Product Computer = new()
    {
        PartNumber = "TFL-T-PC", Name = "Computer", Kind = ProductKind.Equipment,
        Item = new ProductItem
        {
            Category = ItemCategory.Computer, HeightU = 4, Body = new Body { WidthMm = 430, DepthMm = 450 }, MassKg = 15,
            Power = new ItemPower { RatedW = 300, PowerFactor = 0.95, Plugs = [ConnectorCode.C14] }, Airflow = new Airflow { Direction = AirflowDirection.FrontToRear, FlowM3h = 90 }, Support = new Support { Style = SupportStyle.Slides },
        },
    };

    public static readonly Product Strip = new()
    {
        PartNumber = "TFL-T-DU", Name = "Strip", Kind = ProductKind.DistributionUnit,
        DistributionUnit = new ProductDistributionUnit { RatedA = 16, Plug = ConnectorCode.Iec60309A16P1, Mounting = UnitMounting.Vertical, Groups = [new OutletGroup { Id = "g", Outlets = [new OutletSet { Socket = ConnectorCode.C13, Count = 8 }] }] },
    };

    public static readonly Product Housing = new()
    {
        PartNumber = "TFL-T-CAB", Name = "Cabinet", Kind = ProductKind.Cabinet,
        Cabinet = new Cabinet { HeightU = 42, WidthMm = 600, DepthMm = 800, MassKg = 80, FrontDoor = new Door { Style = DoorStyle.Perforated, DepthMm = 25 }, RatedLoadKg = 400 },
    };

    private static readonly Dictionary<string, Product> Known = new(StringComparer.Ordinal) { [Computer.PartNumber] = Computer, [Strip.PartNumber] = Strip, [Housing.PartNumber] = Housing };

    public static ResolvedRack Rack(Cabinet cabinet, Item[] items, params DistributionUnit[] units) => ResolvedRack.Of(
        new RackDescription
        {
            Cabinet = cabinet, Items = items, DistributionUnits = units.Length == 0 ? null : units,
            Supplies = units.Length == 0 ? null : [new Supply { Id = "A", VoltageV = 230, RatedA = 16, Phases = 1 }],
        },
        Known);

    public static ResolvedRack Rack(params Item[] items) => Rack(new Cabinet { HeightU = 42, WidthMm = 600, DepthMm = 800 }, items);

    public static Item Pc(string id, int unit = 1) => new() { Id = id, PartNumber = Computer.PartNumber, Position = new Position { Unit = unit } };

    /// <summary>Findings of one rule in a report by all of them.</summary>
    public static Finding[] Of<TRule>(this ResolvedRack rack)
        where TRule : RuleBase, new() => [.. Judge.Checker.Check(rack).Findings.Where(f => f.Rule == new TRule().Descriptor.Id)];
}
