using RackCheck.Model;
using RackCheck.Rules;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Testing;

/// <summary>Products for tests, and racks that name them.</summary>
public static class Parts
{
    public static readonly Product Computer = new()
    {
        PartNumber = "QWL-T-PC", Name = "Computer", Kind = ProductKind.Equipment,
        Item = new ProductItem
        {
            Category = ItemCategory.Computer, HeightU = 4, Body = new Body { WidthMm = 430, DepthMm = 450 }, MassKg = 15,
            Power = new ItemPower { RatedW = 300, PowerFactor = 0.95, Plugs = [ConnectorCode.C14] },
            Airflow = new Airflow { Direction = AirflowDirection.FrontToRear, FlowM3h = 90 }, Support = new Support { Style = SupportStyle.Slides },
        },
    };

    public static readonly Product Strip = new()
    {
        PartNumber = "QWL-T-DU", Name = "Strip", Kind = ProductKind.Pdu,
        Pdu = new ProductPdu
        {
            RatedA = 16, Plug = ConnectorCode.Iec60309A16P1, Mounting = PduMounting.Vertical,
            Groups = [new OutletGroup { Id = "g", Outlets = [new OutletSet { Socket = ConnectorCode.C13, Count = 8 }] }],
        },
    };

    public static readonly Product Housing = new()
    {
        PartNumber = "QWL-T-CAB", Name = "Cabinet", Kind = ProductKind.Cabinet,
        Cabinet = new Cabinet
        {
            HeightU = 42, WidthMm = 600, DepthMm = 800, MassKg = 80, FrontDoor = new Door { Style = DoorStyle.Perforated, DepthMm = 25, OpenAreaPercent = 70 },
            Roof = new Roof { Style = RoofStyle.Solid }, EarthBar = new EarthBar { Terminals = 8 }, RatedLoadKg = 400,
        },
    };

    public static readonly Product FrontDoor = DoorOf("QWL-T-FD", Face.Front, new Door { Style = DoorStyle.Solid, DepthMm = 40, Bonded = true });

    public static readonly Product RearDoor = DoorOf("QWL-T-RD", Face.Rear, new Door { Style = DoorStyle.Glazed, DepthMm = 30, Bonded = true });

    public static readonly Product Bar = new()
    {
        PartNumber = "QWL-T-EB", Name = "Bar", Kind = ProductKind.EarthBar, EarthBar = new EarthBar { Terminals = 24, LengthMm = 540, CrossSectionMm2 = 75 },
    };

    private static readonly Dictionary<string, Product> Known =
        new[] { Computer, Strip, Housing, FrontDoor, RearDoor, Bar }.ToDictionary(p => p.PartNumber, StringComparer.Ordinal);

    public static ResolvedRack Rack(Cabinet cabinet, Item[] items, params Pdu[] units) => ResolvedRack.Of(
        new RackDescription
        {
            Cabinet = cabinet, Items = items, Pdus = units.Length == 0 ? null : units,
            Supplies = units.Length == 0 ? null : [new Supply { Id = "A", VoltageV = 230, RatedA = 16, Phases = 1 }],
        },
        Known);

    private static Product DoorOf(string partNumber, Face face, Door door) =>
        new()
        {
            PartNumber = partNumber, Name = "Door", Kind = ProductKind.Door, Door = new ProductDoor { Door = door, Face = face, WidthMm = 600, HeightU = 42 },
        };

    public static ResolvedRack Rack(params Item[] items) => Rack(new Cabinet { HeightU = 42, WidthMm = 600, DepthMm = 800 }, items);

    public static Item Pc(string id, int unit = 1) => new() { Id = id, PartNumber = Computer.PartNumber, Position = new Position { U = unit } };

    /// <summary>Findings of one rule in a report by all of them.</summary>
    public static Finding[] Of<TRule>(this ResolvedRack rack)
        where TRule : RuleBase, new() => [.. Judge.Checker.Check(rack).Findings.Where(f => f.Rule == new TRule().Descriptor.Id)];
}
