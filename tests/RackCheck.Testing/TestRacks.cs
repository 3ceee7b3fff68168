using RackCheck.Model;

namespace RackCheck.Testing;

/// <summary>Short forms to write a rack down; what is not said is not given. Use with <c>using static</c>.</summary>
public static class TestRacks
{
    public static RackDescription EmptyRack(int heightU = 42, double depthMm = 1000, double widthMm = 600) => new()
    {
        Cabinet = new Cabinet { HeightU = heightU, WidthMm = widthMm, DepthMm = depthMm },
        Items = [],
    };

    public static Item Unit(string id, int heightU) => new() { Id = id, HeightU = heightU };

    public static Item ShelfItem(string id, string? shelf, double? width = null, double? depth = null, double? height = null) =>
        new Item { Id = id, HeightU = 0, OnShelf = shelf }.Body(width, depth, height);

    public static Item Shelf(string id, int unit, double? depth = 450, int heightU = 1) => new()
    {
        Id = id, HeightU = heightU, Category = ItemCategory.Shelf, Position = new Position { U = unit }, Body = new Body { DepthMm = depth },
    };

    public static Item Plate(string id, int heightU, int unit) => new()
    {
        Id = id, HeightU = heightU, Category = ItemCategory.BlankingPanel, Position = new Position { U = unit },
    };

    public static RackDescription With(this RackDescription rack, params Item[] items) => rack with { Items = [.. rack.Items, .. items] };

    public static RackDescription With(this RackDescription rack, params Pdu[] units) => rack with
    {
        Supplies = [new Supply { Id = "A", VoltageV = 230, RatedA = 16 }],
        Pdus = [.. rack.Pdus ?? [], .. units],
    };

    public static Pdu Strip(string id, PduMounting? mounting, int? unit = null, Face? face = null) => new()
    {
        Id = id, Supply = "A", RatedA = 16, Mounting = mounting, Position = unit is { } at ? new Position { U = at, Face = face } : null,
        Groups = [new OutletGroup { Id = "g1", Outlets = [new OutletSet { Socket = ConnectorCode.C13, Count = 8 }] }],
    };

    public static RackDescription TopDown(this RackDescription rack) => rack with { UnitNumbering = UnitNumbering.TopDown };

    public static RackDescription Cabinet(this RackDescription rack, Func<Cabinet, Cabinet> change) => rack with { Cabinet = change(rack.Cabinet!) };

    public static RackDescription Doors(this RackDescription rack, DoorStyle? front, DoorStyle? rear) => rack.Cabinet(c => c with
    {
        FrontDoor = front is { } f ? new Door { Style = f } : null,
        RearDoor = rear is { } r ? new Door { Style = r } : null,
    });

    public static RackDescription Uprights(
        this RackDescription rack, double? setback = null, double? spacing = null, double? pitch = null, double? opening = null, UprightHole? hole = null) =>
        rack.Cabinet(c => c with
        {
            Uprights = new Uprights { FrontSetbackMm = setback, SpacingMm = spacing, PitchMm = pitch, OpeningMm = opening, Hole = hole },
        });

    public static RackDescription Limit(this RackDescription rack, string rule, string name, double value) =>
        rack.WithRulePolicy(rule, w => w with { Limits = new Dictionary<string, double>(w.Limits ?? new Dictionary<string, double>()) { [name] = value } });

    public static RackDescription Severity(this RackDescription rack, string rule, PolicySeverity severity) =>
        rack.WithRulePolicy(rule, w => w with { Severity = severity });

    public static RackDescription Accept(this RackDescription rack, string rule, string? fingerprint = null, string? pointer = null) => rack with
    {
        Acceptances =
        [
            .. rack.Acceptances ?? [],
            new Acceptance { Rule = rule, Fingerprint = fingerprint, Pointer = pointer, Reason = "agreed at the review", AcceptedBy = "bay planner" },
        ],
    };

    public static Item At(this Item item, int unit, Face? face = null) => item with { Position = new Position { U = unit, Face = face } };

    public static Item Body(this Item item, double? width = null, double? depth = null, double? height = null) =>
        item with { Body = new Body { WidthMm = width, DepthMm = depth, HeightMm = height } };

    public static Item Room(this Item item, double? front = null, double? rear = null) => item with { FrontProjectionMm = front, RearProjectionMm = rear };

    public static Item Weighs(this Item item, double kilograms) => item with { MassKg = kilograms };

    public static Item On(this Item item, SupportStyle? style, double? thickness = null, double? min = null, double? max = null) =>
        item with { Support = new Support { Style = style, ThicknessMm = thickness, MinSpacingMm = min, MaxSpacingMm = max } };

    public static Item Airflow(this Item item, AirflowDirection direction) => item with { Airflow = new Airflow { Direction = direction } };

    public static Item Plugs(this Item item, int count) =>
        item with { Power = new ItemPower { RatedW = 200, Plugs = [.. Enumerable.Repeat(ConnectorCode.C14, count)] } };

    private static RackDescription WithRulePolicy(this RackDescription rack, string rule, Func<RulePolicy, RulePolicy> change)
    {
        var rules = new Dictionary<string, RulePolicy>(rack.Policy?.Rules ?? new Dictionary<string, RulePolicy>());
        rules[rule] = change(rules.GetValueOrDefault(rule) ?? new RulePolicy());
        return rack with { Policy = new Policy { Rules = rules } };
    }
}
