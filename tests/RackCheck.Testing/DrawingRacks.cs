using RackCheck.Model;

namespace RackCheck.Testing;

/// <summary>Racks that are hard to draw: crowded, empty, with shelves and rear items, with long and foreign names, very tall.</summary>
public static class DrawingRacks
{
    /// <summary>Names of the racks, one drawing each.</summary>
    public static IReadOnlyDictionary<string, IReadOnlyList<RackDescription>> All { get; } =
        new Dictionary<string, IReadOnlyList<RackDescription>>(StringComparer.Ordinal)
        {
            ["crowded"] = [Crowded],
            ["empty"] = [Empty],
            ["shelves"] = [Shelves],
            ["rear-items"] = [RearItems],
            ["long-names"] = [LongNames],
            ["scripts"] = [Scripts],
            ["tall"] = [Tall],
            ["three-cabinets"] = [Shelves, RearItems, Crowded],
        };

    /// <summary>A 47U rack with an item in nearly every U position, three feeds and findings of all kinds.</summary>
    public static RackDescription Crowded => Rack("QW-0447", 47, 600, 1000) with
    {
        Items =
        [
            Box("ups-1", 3, 1, ItemCategory.Ups, 38, 620) with { Power = Power(3000, ConnectorCode.C20), Description = "UPS for controller and gauges" },
            Box("ups-2", 3, 4, ItemCategory.Ups, 38, 620) with { Power = Power(3000, ConnectorCode.C20), Description = "UPS for wave makers" },
            .. Enumerable.Range(0, 14).Select(i => Server(i)),
            .. Enumerable.Range(0, 6).Select(i => Box($"gauge-{i + 1}", 1, 35 + i, ItemCategory.Instrument, 4.5, 300) with
            {
                Power = Power(60, ConnectorCode.C14), Description = "Wave gauge amplifier, eight channels",
            }),
            new Item { Id = "cable-1", HeightU = 1, Category = ItemCategory.CableManager, Position = At(41) },
            Box("switch-1", 1, 42, ItemCategory.Network, 5.2, 260) with { Power = Power(90, ConnectorCode.C14), Description = "Measuring network" },
            Box("switch-2", 1, 43, ItemCategory.Network, 5.2, 260) with { Power = Power(90, ConnectorCode.C14) },
            new Item { Id = "fans", HeightU = 1, Category = ItemCategory.FanTray, Position = At(44), MassKg = 3, Body = new Body { DepthMm = 250 } },
            new Item { Id = "blank-1", HeightU = 2, Category = ItemCategory.BlankingPanel, Position = At(45) },
        ],
        Supplies = [Feed("A"), Feed("B"), Feed("C")],
        Pdus = [Strip("pdu-a", "A", 1800, 24, 4), Strip("pdu-b", "B", 1800, 24, 4), Strip("pdu-c", "C", 1800, 24, 4)],
    };

    /// <summary>A cabinet without equipment.</summary>
    public static RackDescription Empty => Rack("QW-0042", 42, 800, 1000) with { Items = [] };

    /// <summary>A cabinet with shelves that carry items side by side, one item without a place and one on a shelf without one.</summary>
    public static RackDescription Shelves => Rack("QW-0124", 24, 600, 800) with
    {
        UnitNumbering = UnitNumbering.TopDown,
        Items =
        [
            new Item { Id = "shelf-1", HeightU = 1, Category = ItemCategory.Shelf, Position = At(22), Body = new Body { DepthMm = 400 }, MassKg = 4 },
            OnShelf("beach-pc", "shelf-1", 180, 380, 360, 8),
            OnShelf("beach-display-controller", "shelf-1", 120, 90, 200, 1.6),
            OnShelf("probe-supply", "shelf-1", 90, 60, 150, 0.9),
            new Item { Id = "shelf-2", HeightU = 1, Category = ItemCategory.Shelf, Position = At(9), Body = new Body { DepthMm = 450 }, MassKg = 5 },
            OnShelf("oscilloscope", "shelf-2", 380, 200, 260, 7),
            Box("drawer", 1, 12, ItemCategory.KeyboardDrawer, 11, 500) with { Support = Slides(true) },
            Box("daq", 4, 16, ItemCategory.Instrument, 15, 420) with { Description = "Data acquisition, 64 channels" },
            new Item { Id = "spare-psu", HeightU = 2, MassKg = 6 },
        ],
    };

    /// <summary>A cabinet with equipment on the rear uprights, a horizontal PDU, and rails.</summary>
    public static RackDescription RearItems => Rack("QW-0230", 30, 800, 1000) with
    {
        Items =
        [
            Server(0) with { Id = "srv-a", Position = At(2) },
            Server(1) with { Id = "srv-b", Position = At(4) },
            Box("drive", 6, 7, ItemCategory.Instrument, 30, 350) with { Power = Power(1200, ConnectorCode.C20), Support = Runners },
            Box("patch-1", 1, 7, ItemCategory.Network, 2, 90) with { Position = new Position { U = 7, Face = Face.Rear } },
            Box("patch-2", 1, 14, ItemCategory.Network, 2, 90) with { Position = new Position { U = 14, Face = Face.Rear } },
            Box("kvm", 1, 16, ItemCategory.KvmSwitch, 3, 180) with
            {
                Position = new Position { U = 16, Face = Face.Rear }, Power = Power(40, ConnectorCode.C14),
            },
            Box("logger", 3, 14, ItemCategory.Instrument, 9, 250) with { Power = Power(120, ConnectorCode.C14) },
            new Item { Id = "beyond", HeightU = 2, Position = At(30), MassKg = 5 },
        ],
        Supplies = [Feed("mains-1"), Feed("mains-2")],
        Pdus =
        [
            Strip("pdu-1", "mains-1", 900, 12, 4), Strip("pdu-2", "mains-2", 900, 12, 4),
            Strip("pdu-3", "mains-2", null, 6, 2) with { Mounting = PduMounting.Horizontal, Position = new Position { U = 20, Face = Face.Rear } },
        ],
    };

    /// <summary>Names as long as the contract allows, markup, formulae and control characters in names.</summary>
    public static RackDescription LongNames => Rack("QW-0318 " + new string('W', 56), 18, 600, 900) with
    {
        Items =
        [
            Box("wave-maker-controller-of-the-deep-water-basin-with-position-loops", 2, 1, ItemCategory.Computer, 12, 450) with
            {
                Description = "Controller of the sixteen paddles at the north end of the deep water basin, with position loops, force limits and a stop",
            },
            Box(new string('M', 64), 1, 4, ItemCategory.Server, 12345.67, 700),
            Box("<script>alert(1)</script>", 1, 6, ItemCategory.Network, 4, 200) with { Description = "<b>&amp;\"'</b> ]]>" },
            Box("=HYPERLINK(\"http://192.0.2.1\")", 1, 8, ItemCategory.Instrument, 4, 200),
            Box("tab\tline\nbell\u0007", 1, 10, ItemCategory.Instrument, 4, 200) with { Description = "\u202Eturned\u202C \uD800 half" },
            Box("a", 1, 12, ItemCategory.Instrument, 4, 200),
            Box("clash-one", 3, 14, ItemCategory.Instrument, 4, 200),
            Box("clash-two-with-a-longer-name", 2, 15, ItemCategory.Instrument, 4, 200),
            Box("clash-three", 1, 15, ItemCategory.Instrument, 4, 200),
        ],
    };

    /// <summary>Names from right to left, in Chinese, Japanese and Korean, in Greek, Cyrillic and with an emoji.</summary>
    public static RackDescription Scripts => Rack("QW-0418", 18, 600, 900) with
    {
        Items =
        [
            Box("\u05DE\u05D7\u05E9\u05D1-\u05D2\u05DC\u05D9\u05DD 12", 2, 1, ItemCategory.Computer, 12, 450) with
            {
                Description = "\u05D1\u05E7\u05E8 \u05D4\u05D2\u05DC\u05D9\u05DD (QWL-7)",
            },
            Box("\u062E\u0627\u062F\u0645 \u0627\u0644\u0645\u0648\u062C", 2, 3, ItemCategory.Server, 18, 600) with
            {
                Description = "\u062E\u0627\u062F\u0645 \u0642\u064A\u0627\u0633 \u0627\u0644\u0623\u0645\u0648\u0627\u062C 3",
            },
            Box("\u9020\u6CE2\u6A5F\u63A7\u5236\u5668", 2, 5, ItemCategory.Computer, 12, 450) with
            {
                Description = "\u6C34\u69FD\u5317\u7AEF\u9020\u6CE2\u677F\u63A7\u5236\u5668\u5305\u62EC\u4F4D\u7F6E\u56DE\u8DEF\u3001\u529B\u9650\u5236",
            },
            Box("\u6CE2\u9AD8\u8A08\u30A2\u30F3\u30D7", 1, 7, ItemCategory.Instrument, 4, 300),
            Box("\uD30C\uB3C4 \uCE21\uC815", 1, 8, ItemCategory.Instrument, 4, 300),
            Box("\u03BA\u03CD\u03BC\u03B1-\u03B5\u03BB\u03B5\u03B3\u03BA\u03C4\u03AE\u03C2", 1, 9, ItemCategory.Computer, 4, 300),
            Box("\u0432\u043E\u043B\u043D\u043E\u043C\u0435\u0440", 1, 10, ItemCategory.Instrument, 4, 300),
            Box("wave \U0001F30A", 1, 11, ItemCategory.Instrument, 4, 300),
            Box("e\u0301cluse-n\u0303", 1, 12, ItemCategory.Instrument, 4, 300),
        ],
    };

    /// <summary>A 60U rack with few items.</summary>
    public static RackDescription Tall => Rack("QW-0560", 60, 800, 1200) with
    {
        Items =
        [
            Box("ups", 4, 1, ItemCategory.Ups, 60, 700) with { Support = Runners },
            .. Enumerable.Range(0, 10).Select(i => Server(i) with { Position = At(8 + (4 * i)) }),
            new Item { Id = "top", HeightU = 1, Position = At(60) },
        ],
        Supplies = [Feed("A"), Feed("B")],
        Pdus = [Strip("pdu-a", "A", 1900, 24, 4), Strip("pdu-b", "B", 1900, 24, 4)],
    };

    private static Support Runners => new() { Style = SupportStyle.Runners, RatedKg = 60, MinSpacingMm = 450, MaxSpacingMm = 800 };

    private static RackDescription Rack(string reference, int heightU, double width, double depth) => new()
    {
        Reference = reference,
        Cabinet = new Cabinet
        {
            HeightU = heightU, WidthMm = width, DepthMm = depth, HeightMm = (44.45 * heightU) + 180, MassKg = 100,
            FrontDoor = new Door { Style = DoorStyle.Perforated, DepthMm = 40, OpenAreaPercent = 64 },
            RearDoor = new Door { Style = DoorStyle.Perforated, DepthMm = 30, OpenAreaPercent = 64, Leaves = 2 },
            Base = new CabinetBase { Style = BaseStyle.Castors, HeightMm = 80 },
            Uprights = new Uprights { Hole = UprightHole.Square, FrontSetbackMm = 100, SpacingMm = Math.Min(700, depth - 260) },
        },
        Items = [],
    };

    private static Position At(int unit) => new() { U = unit };

    private static Item Box(string id, int heightU, int unit, ItemCategory category, double mass, double depth) => new()
    {
        Id = id, HeightU = heightU, Position = At(unit), Category = category, MassKg = mass, Body = new Body { WidthMm = 440, DepthMm = depth },
    };

    private static Item Server(int index) => Box($"srv-{index + 1:00}", 2, 7 + (2 * index), ItemCategory.Server, 22.5, 680) with
    {
        Description = "Wave analysis server", Power = Power(600, ConnectorCode.C14, ConnectorCode.C14) with { Redundant = true },
        Airflow = new Airflow { Direction = AirflowDirection.FrontToRear, FlowM3h = 120 }, Support = Slides(false),
    };

    private static Support Slides(bool isUsedExtended) =>
        new() { Style = SupportStyle.Slides, RatedKg = 40, MinSpacingMm = 450, MaxSpacingMm = 800, UsedExtended = isUsedExtended };

    private static Item OnShelf(string id, string shelf, double width, double height, double depth, double mass) => new()
    {
        Id = id, HeightU = 0, OnShelf = shelf, Body = new Body { WidthMm = width, HeightMm = height, DepthMm = depth }, MassKg = mass,
    };

    private static ItemPower Power(double watts, params ConnectorCode[] plugs) => new() { RatedW = watts, PowerFactor = 0.95, Plugs = plugs };

    private static Supply Feed(string id) => new() { Id = id, VoltageV = 230, Phases = 3, RatedA = 32, Socket = ConnectorCode.Iec60309A32P3 };

    private static Pdu Strip(string id, string supply, double? length, int small, int large) => new()
    {
        Id = id, Supply = supply, RatedA = 32, Mounting = PduMounting.Vertical, LengthMm = length, Plug = ConnectorCode.Iec60309A32P3,
        Groups =
        [
            .. ((Phase[])[Phase.L1, Phase.L2, Phase.L3]).Select(p => new OutletGroup
            {
                Id = p.ToString(), Phase = p, BreakerA = 16,
                Outlets =
                [
                    new OutletSet { Socket = ConnectorCode.C13, Count = Math.Max(1, small / 3) },
                    new OutletSet { Socket = ConnectorCode.C19, Count = Math.Max(1, large / 2) },
                ],
            }),
        ],
    };
}
