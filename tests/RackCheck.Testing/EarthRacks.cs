using RackCheck.Model;

namespace RackCheck.Testing;

/// <summary>Racks with earth in order, for a test to take something away.</summary>
public static class EarthRacks
{
    public static readonly BondedPart[] AllParts = [BondedPart.Frame, BondedPart.FrontDoor, BondedPart.RearDoor, BondedPart.SidePanels];

    public static RackDescription Earthed(int? terminals = 16, double? main = 16) =>
        TestRacks.EmptyRack(24, widthMm: 800).Cabinet(c => c with { EarthBar = new EarthBar { Terminals = terminals } }) with
    {
        Earthing = new Model.Earthing { MainConductorMm2 = main, Bonded = AllParts },
    };

    public static RackDescription WithoutBar(this RackDescription rack) => rack.Cabinet(c => c with { EarthBar = null });

    public static RackDescription Earth(this RackDescription rack, Func<Model.Earthing, Model.Earthing> change) =>
        rack with { Earthing = change(rack.Earthing!) };

    public static RackDescription Fed(this RackDescription rack, params Supply[] supplies) => rack with { Supplies = supplies };

    public static RackDescription Strips(this RackDescription rack, params Pdu[] units) => rack with { Pdus = units };

    public static Supply Mains(
        string id = "A", double? cable = 2.5, double? fault = null, double? seconds = null, ConnectorCode? socket = ConnectorCode.Iec60309A16P1,
        double? rcd = null, double rated = 16) => new()
        {
            Id = id, VoltageV = 230, Phases = 1, RatedA = rated, Socket = socket, Breaker = new Breaker { Curve = BreakerCurve.C, RatedA = rated },
            Cable = cable is { } section ? new SupplyCable { LengthM = 10, CrossSectionMm2 = section } : null,
            FaultCurrentA = fault, DisconnectionTimeS = seconds, RcdMa = rcd,
        };

    public static Pdu Strip(
        string id = "strip", string supply = "A", ConnectorCode? plug = ConnectorCode.Iec60309A16P1, int outlets = 12, double rated = 16) => new()
    {
        Id = id, Supply = supply, RatedA = rated, Plug = plug, Mounting = PduMounting.Vertical,
        Groups = [new OutletGroup { Id = "g1", Outlets = [new OutletSet { Socket = ConnectorCode.C13, Count = outlets }] }],
    };

    public static Item Studded(string id, int unit, double? section = 6, double? length = 2) => TestRacks.Unit(id, 2).At(unit) with
    {
        EarthStud = true, EarthLead = new EarthLead { CrossSectionMm2 = section, LengthM = length },
    };

    public static Item Leaking(string id, int unit, double? leakage, int cords = 1) => TestRacks.Unit(id, 1).At(unit) with
    {
        Power = new ItemPower
        {
            RatedW = 100, PowerFactor = 1, InrushA = 5, LeakageMa = leakage, Redundant = cords > 1 ? true : null,
            Plugs = [.. Enumerable.Repeat(ConnectorCode.C14, cords)],
        },
    };

    public static Item[] Leaking(params double[] leakages) => [.. leakages.Select((ma, at) => Leaking($"gauge-amp-{at}", at + 1, ma))];
}
