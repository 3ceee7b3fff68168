using RackCheck.Model;

namespace RackCheck.Benchmarks;

/// <summary>Racks to measure with. Invented data.</summary>
public static class Racks
{
    /// <summary>A sound rack of 42 units with 30 items, described in full: slides, panels, blanking panels, cables, power, mass.</summary>
    public static RackDescription Sound30 { get; } = Make();

    private static RackDescription Make()
    {
        var door = new Door { Style = DoorStyle.Perforated, DepthMm = 25, OpenAreaPercent = 64, Bonded = true, Leaves = 1, MassKg = 15 };
        return new RackDescription
        {
            Reference = "Quillmere Wave Laboratory, bay 7",
            Cabinet = new Cabinet
            {
                HeightU = 42,
                WidthMm = 800,
                DepthMm = 1000,
                HeightMm = 2000,
                MassKg = 120,
                RatedLoadKg = 600,
                FrontDoor = door,
                RearDoor = door,
                SidePanels = true,
                Base = new CabinetBase { Style = BaseStyle.Feet, HeightMm = 30, InsetMm = 40 },
                Uprights = new Uprights { Hole = UprightHole.Square, FrontSetbackMm = 100, SpacingMm = 700, PitchMm = 25, OpeningMm = 450 },
            },
            Items = [.. Enumerable.Range(0, 8).Select(Computer), .. Enumerable.Range(0, 6).Select(Switch), .. Enumerable.Range(0, 16).Select(Rest)],
            Supplies = [Supply("A"), Supply("B")],
            Pdus = [Strip("strip-a", "A"), Strip("strip-b", "B")],
            Earthing = new Earthing { MainConductorMm2 = 16, Bonded = [BondedPart.Frame, BondedPart.FrontDoor, BondedPart.RearDoor, BondedPart.SidePanels] },
            Site = new Site
            {
                Region = Region.Eu, AmbientMaxC = 27, AmbientMinC = 15, HumidityMaxPercent = 60, AltitudeM = 100, AisleFrontMm = 1200, AisleRearMm = 1000,
                Floor = new Floor { DistributedKnM2 = 20, PointKn = 9 }, Handling = new Handling { Persons = 2 },
                Delivery = new Delivery
                {
                    PalletHeightMm = 144, PalletWidthMm = 800, PalletDepthMm = 1200, PalletKg = 25, Loaded = false, LiftingKg = 1500, ReceiverArranged = true,
                    Openings = [new Opening { Name = "goods-in", WidthMm = 1800, HeightMm = 2600 }], Corridors = [], Ramps = [],
                },
            },
        };
    }

    /// <summary>
    /// The same as data sheets and the order give it: projections, slide data, power factors, leakage, cables, heights and the delivery route are missing.
    /// </summary>
    public static RackDescription Sheet30 { get; } = Sound30 with
    {
        Cabinet = Sound30.Cabinet! with
        {
            FrontDoor = new Door { Style = DoorStyle.Perforated, OpenAreaPercent = 64 },
            RearDoor = new Door { Style = DoorStyle.Perforated, OpenAreaPercent = 64 },
            Base = new CabinetBase { Style = BaseStyle.Feet },
        },
        Items =
        [
            .. Sound30.Items.Select(i => i with
            {
                FrontProjectionMm = null, RearProjectionMm = null, Cables = null,
                Support = i.Support is { } s ? s with { ThicknessMm = null, ExtensionMm = null } : null,
                Power = i.Power is { } p ? new ItemPower { RatedW = p.RatedW, Plugs = p.Plugs } : null,
                Airflow = i.Airflow is { } a ? a with { FlowM3h = null } : null,
            }),
        ],
        Earthing = null,
        Site = new Site { Region = Region.Eu, AmbientMaxC = 27 },
    };

    /// <summary>
    /// The usual rack for the assignment of cords: 30 of them, redundant pairs among them, and plenty of outlets on two units of three groups each.
    /// </summary>
    public static RackDescription Cords30 { get; } = Sound30 with
    {
        Items =
        [
            .. Enumerable.Range(0, 10).Select(i => Cord($"pc-{i}", 350, ConnectorCode.C14, ConnectorCode.C14)),
            .. Enumerable.Range(0, 10).Select(i => Cord($"amp-{i}", 60 + (10 * i), ConnectorCode.C14)),
        ],
        Pdus = [Strip("strip-a", "A", 3), Strip("strip-b", "B", 3)],
        Supplies =
        [
            Supply("A") with { Phases = 3, Socket = ConnectorCode.Iec60309A16P3 }, Supply("B") with { Phases = 3, Socket = ConnectorCode.Iec60309A16P3 },
        ],
    };

    /// <summary>The worst: 40 cords of three types that fill six breakers of 10 A to 97 to 100 %.</summary>
    public static RackDescription Cords40Tight { get; } = Tight();

    private static RackDescription Tight()
    {
        double[][] amperes =
        [
            [3.1, 2.4, 1.9, 1.3, 0.9, 0.3], [2.9, 2.2, 1.7, 1.4, 1.1, 0.5, 0.1], [3.7, 2.6, 1.6, 1.2, 0.7, 0.1], [2.7, 2.5, 1.5, 1.3, 0.8, 0.7, 0.4],
            [4.1, 1.8, 1.7, 1.1, 0.6, 0.5, 0.2], [2.3, 2.1, 1.9, 1.6, 0.9, 0.6, 0.5],
        ];
        ConnectorCode[] plugs =
        [
            ConnectorCode.C14, ConnectorCode.C14, ConnectorCode.C16, ConnectorCode.C14, ConnectorCode.C20, ConnectorCode.C14, ConnectorCode.C16,
        ];
        OutletGroup Group(int g) => new()
        {
            Id = $"g{g}",
            BreakerA = 10,
            Outlets =
            [
                new() { Socket = ConnectorCode.C13, Count = 5 }, new() { Socket = ConnectorCode.C15, Count = 3 },
                new() { Socket = ConnectorCode.C19, Count = 2 },
            ],
        };
        return Sound30 with
        {
            Items = [.. amperes.SelectMany((group, g) => group.Select((a, i) => Cord($"i{7 * ((11 * ((7 * g) + i)) % 43)}-{g}-{i}", 230 * a, plugs[i])))],
            Supplies = [Supply("A") with { RatedA = 32, Breaker = null }, Supply("B") with { RatedA = 32, Breaker = null }],
            Pdus =
            [
                Strip("strip-a", "A") with { RatedA = 32, Groups = [.. Enumerable.Range(0, 3).Select(Group)] },
                Strip("strip-b", "B") with { RatedA = 32, Groups = [.. Enumerable.Range(3, 3).Select(Group)] },
            ],
        };
    }

    private static Item Cord(string id, double watts, params ConnectorCode[] plugs) => new()
    {
        Id = id,
        HeightU = 1,
        Category = ItemCategory.Instrument,
        Power = new ItemPower { RatedW = watts, PowerFactor = 1, InrushA = 5, LeakageMa = 0.1, Plugs = plugs, Redundant = plugs.Length > 1 ? true : null },
    };

    private static Supply Supply(string id) => new()
    {
        Id = id,
        VoltageV = 230,
        Phases = 1,
        RatedA = 16,
        Breaker = new Breaker { Curve = BreakerCurve.C, RatedA = 16 },
        Socket = ConnectorCode.Iec60309A16P1,
        Cable = new SupplyCable { LengthM = 10, CrossSectionMm2 = 2.5 },
    };

    private static Pdu Strip(string id, string supply, int lines = 1) => new()
    {
        Id = id,
        Supply = supply,
        RatedA = 16,
        Plug = lines == 3 ? ConnectorCode.Iec60309A16P3 : ConnectorCode.Iec60309A16P1,
        Mounting = PduMounting.Vertical,
        RemoteSwitched = true,
        Groups =
        [
            .. Enumerable.Range(0, lines).Select(line => new OutletGroup
            {
                Id = $"g{line + 1}", Phase = (Phase)line, BreakerA = 16,
                Outlets = [new OutletSet { Socket = ConnectorCode.C13, Count = 12 }, new OutletSet { Socket = ConnectorCode.C19, Count = 4 }],
            }),
        ],
    };

    private static Item Computer(int i) => new()
    {
        Id = $"pc-{i + 1}",
        PartNumber = "QWL-PC-410",
        Category = ItemCategory.Computer,
        HeightU = 2,
        Position = new Position { U = 1 + (2 * i), Face = Face.Front },
        Body = new Body { WidthMm = 430, HeightMm = 86, DepthMm = 450 },
        FrontProjectionMm = 40,
        RearProjectionMm = 75,
        MassKg = 14,
        Support = new Support { Style = SupportStyle.Slides, RatedKg = 45, ThicknessMm = 9.5, MinSpacingMm = 500, MaxSpacingMm = 800, ExtensionMm = 450 },
        Power = new ItemPower { RatedW = 350, TypicalW = 220, PowerFactor = 0.95, InrushA = 30, LeakageMa = 0.4, Plugs = [ConnectorCode.C14] },
        Airflow = new Airflow { Direction = AirflowDirection.FrontToRear, FlowM3h = 60 },
        MaxInletC = 40,
        Cables = [new CableBundle { DiameterMm = 6, Count = 6 }],
    };

    private static Item Switch(int i) => Panel($"switch-{i + 1}", ItemCategory.Network, 17 + i) with
    {
        Power = new ItemPower { RatedW = 60, TypicalW = 35, InrushA = 10, LeakageMa = 0.2, Plugs = [ConnectorCode.C14] },
        Airflow = new Airflow { Direction = AirflowDirection.Side, FlowM3h = 20 },
        MaxInletC = 45,
        Cables = [new CableBundle { DiameterMm = 6, Count = 24 }],
    };

    private static Item Rest(int i) => i < 6
        ? Panel($"patch-{i + 1}", ItemCategory.Other, 23 + i)
        : new Item
        {
            Id = $"blank-{i}",
            Category = ItemCategory.BlankingPanel,
            HeightU = 1,
            Position = new Position { U = 23 + i, Face = Face.Front },
            MassKg = 0.3,
        };

    private static Item Panel(string id, ItemCategory category, int unit) => new()
    {
        Id = id,
        Category = category,
        HeightU = 1,
        Position = new Position { U = unit, Face = Face.Front },
        Body = new Body { WidthMm = 440, HeightMm = 43, DepthMm = 250 },
        FrontProjectionMm = 40,
        RearProjectionMm = 75,
        MassKg = 4,
        Support = new Support { Style = SupportStyle.Panel },
    };
}
