using CsCheck;
using RackCheck.Model;
using RackCheck.Rules;
using RackCheck.Survey;

namespace RackCheck.Testing;

/// <summary>
/// Random racks, whole ones: tidy and overfull, both faces, every kind of support, things on shelves and beside them, panels, PDUs
/// , either numbering, doors of all styles. Measures come from short lists that lie close about the limits, since a
/// number drawn from a wide range never hits one.
/// </summary>
public static class RackGenerator
{
    // Ids order otherwise than indices do, and some hold what pointers, messages and JSON have to escape.
    private static readonly string[] Names =
    [
        "wave-pc", "gauge-amp", "flume-daq", "paddle-drive", "a/b", "m~n", "{item}", "{other}", "zeta \"7\"", "\u00e9cluse", "\U0001F30A", "B", "a", "10", "2",
        "x1", "x2", "x10", "tank-ups", "probe", "mixer", "beach", "tide", "current", "ebb",
    ];

    private static readonly Gen<DoorStyle> DoorStyles =
        OneOf(DoorStyle.None, DoorStyle.Solid, DoorStyle.Glazed, DoorStyle.Perforated, DoorStyle.Perforated);

    private static readonly Gen<Door?> Doors = Maybe(
        from style in DoorStyles
        from depth in Maybe(OneOf(0.0, 25, 40, 110))
        select new Door { Style = style, DepthMm = style == DoorStyle.None ? null : depth });

    private static readonly Gen<Uprights?> AllUprights = Maybe(
        from setback in Maybe(OneOf(0.0, 24.7, 50, 64, 65, 66, 75, 100, 130, 180, 251, 400))
        from spacing in Maybe(OneOf(100.0, 300, 450, 499.5, 500, 600, 600.1, 700, 800))
        from pitch in Maybe(OneOf(1.0, 12.5, 15.875, 25, 50, 100, 400))
        from opening in Maybe(OneOf(440.0, 450, 465, 500))
        from hole in Maybe(OneOf(UprightHole.Square, UprightHole.Round, UprightHole.Threaded))
        select new Uprights { FrontSetbackMm = setback, SpacingMm = spacing, PitchMm = pitch, OpeningMm = opening, Hole = hole });

    private static readonly Gen<Cabinet> Cabinets =
        from heightU in OneOf(6, 9, 12, 12, 20, 42, 60)
        from width in OneOf(600.0, 700, 800)
        from depth in OneOf(600.0, 610, 700, 800, 900, 1000, 1200, 1300)
        from front in Doors
        from rear in Doors
        from uprights in AllUprights
        from tall in Gen.Bool
        select new Cabinet
        {
            HeightU = heightU, WidthMm = width, DepthMm = depth, FrontDoor = front, RearDoor = rear, Uprights = uprights,
            HeightMm = tall ? (44.45 * heightU) + 150 : null,
        };

    private static readonly Gen<Support?> Supports =
        from style in Maybe(OneOf(SupportStyle.Panel, SupportStyle.Slides, SupportStyle.Runners, SupportStyle.Runners, SupportStyle.Shelf))
        from thickness in Maybe(OneOf(0.0, 2, 3, 9.5, 12))
        from least in Maybe(OneOf(0.0, 450, 500, 600, 700, 1100), few: true)
        from more in Maybe(OneOf(0.0, 50, 200), few: true)
        from extended in Gen.Bool
        from arm in Maybe(Gen.Bool)
        select style is null && thickness is null ? null : new Support
        {
            Style = style, ThicknessMm = thickness, MinSpacingMm = least, MaxSpacingMm = more is null ? null : (least ?? 450) + more,
            UsedExtended = extended && style == SupportStyle.Slides ? true : null, CableArm = arm,
        };

    private static readonly Gen<Body?> Bodies = Maybe(
        from width in Maybe(OneOf(0.0, 180, 260, 430, 431, 431.0005, 431.002, 432, 440, 445, 450, 451))
        from depth in Maybe(OneOf(0.0, 100, 101, 300, 400, 450, 525, 600, 700, 990))
        from height in Maybe(OneOf(0.0, 42.45, 43.65, 43.6505, 43.652, 44, 86.9, 88.1, 88.2, 130, 175.8, 176, 177, 177.1, 400))
        select new Body { WidthMm = width, DepthMm = depth, HeightMm = height });

    private static readonly Gen<Item> Equipment =
        from heightU in Gen.Int[1, 5]
        from body in Bodies
        from front in Maybe(OneOf(0.0, 20, 40, 75, 76))
        from rear in Maybe(OneOf(0.0, 25, 75, 120))
        from mass in Maybe(OneOf(3.0, 12, 12.1, 30))
        from support in Supports
        from air in Maybe(OneOf(AirflowDirection.FrontToRear, AirflowDirection.FrontToRear, AirflowDirection.RearToFront, AirflowDirection.None))
        from cords in Gen.Int[0, 2]
        from fixing in Maybe(OneOf(Fixing.CageNut, Fixing.ClipNut, Fixing.Screw), few: true)
        select new Item
        {
            Id = "", HeightU = heightU, Body = body, FrontProjectionMm = front, RearProjectionMm = rear, MassKg = mass, Support = support, Fixing = fixing,
            Airflow = air is null ? null : new Airflow { Direction = air },
            Power = cords == 0 ? null : new ItemPower { RatedW = 200, Plugs = [.. Enumerable.Repeat(ConnectorCode.C14, cords)] },
        };

    // Sets whose height is about what their units leave, so that a few stacked ones creep and two may not.
    private static readonly Gen<Item> RunnerSets =
        from heightU in Gen.Int[1, 4]
        from slack in Maybe(OneOf(-30.0, -2.1, -2, -1.9, -1, -0.8))
        from thickness in Maybe(OneOf(1.0, 2, 3))
        from depth in Maybe(OneOf(300.0, 450))
        select new Item
        {
            Id = "", HeightU = heightU, Body = new Body { HeightMm = slack is null ? null : (heightU * 44.45) + slack, DepthMm = depth, WidthMm = 440 },
            Support = new Support { Style = SupportStyle.Runners, ThicknessMm = thickness },
        };

    private static readonly Gen<Item> Shelves =
        from heightU in OneOf(0, 1, 1, 1, 1, 2)
        from depth in Maybe(OneOf(100.0, 300, 400, 450))
        from support in Supports
        select new Item
        {
            Id = "", HeightU = heightU, Category = ItemCategory.Shelf, Body = new Body { DepthMm = depth }, FrontProjectionMm = 0, RearProjectionMm = 0,
            Support = support,
        };

    private static readonly Gen<Item> Plates =
        from heightU in Gen.Int[1, 4]
        select new Item { Id = "", HeightU = heightU, Category = ItemCategory.BlankingPanel };

    private static readonly Gen<Item> Things =
        from heightU in OneOf(0, 0, 0, 2)
        from body in Bodies
        from isShelf in OneOf(false, false, false, false, true)
        select new Item { Id = "", HeightU = heightU, Body = body, OnShelf = "", Category = isShelf ? ItemCategory.Shelf : null };

    private static readonly Gen<Slot> Slots =
        from item in Gen.Frequency((8, Equipment), (5, RunnerSets), (3, Shelves), (2, Plates), (4, Things))
        from gap in OneOf(0, 0, 0, 1, 2)
        from rear in OneOf(false, false, false, true)
        from unit in Gen.Int[-1, 63]
        from placed in OneOf(true, true, true, true, true, true, true, false)
        from shelf in Gen.Int[-1, 40]
        select new Slot(item, gap, rear ? Face.Rear : Face.Front, unit, placed, shelf);

    private static readonly Gen<Pdu[]> Units =
        (from mounting in Maybe(OneOf(PduMounting.Vertical, PduMounting.Horizontal, PduMounting.Horizontal))
         from unit in Maybe(Gen.Int[0, 13])
         from rear in Gen.Bool
         select new Pdu
         {
             Id = "", Supply = "A", RatedA = 16, Mounting = mounting,
             Position = unit is { } at ? new Position { U = at, Face = rear ? Face.Rear : Face.Front } : null,
             Groups = [new OutletGroup { Id = "g", Outlets = [new OutletSet { Socket = ConnectorCode.C13, Count = 8 }] }],
         }).Array[0, 2];

    private static readonly Gen<IReadOnlyDictionary<string, RulePolicy>> LimitPolicies =
        from reserve in OneOf(0.0, 10, 25, 60)
        from warning in OneOf(1.0, 2, 3, 5)
        from error in OneOf(1.0, 3, 4)
        from arm in OneOf(0.0, 100, 150)
        select (IReadOnlyDictionary<string, RulePolicy>)new Dictionary<string, RulePolicy>
        {
            ["layout.reserve"] = new() { Limits = new Dictionary<string, double> { ["reservePercent"] = reserve } },
            ["layout.runner-stack"] = new() { Limits = new Dictionary<string, double> { ["runWarning"] = warning, ["runError"] = error } },
            ["depth.cable-arm"] = new() { Limits = new Dictionary<string, double> { ["armDepthMm"] = arm } },
        };

    /// <summary>Racks with the severities that the rules have of themselves; some with limits of their own.</summary>
    public static Gen<RackDescription> Racks { get; } =
        from cabinet in Cabinets
        from slots in Slots.Array[0, 12]
        from tidy in Gen.Bool
        from topDown in Maybe(Gen.Bool)
        from units in Units
        from names in Gen.Shuffle(Names)
        from limits in Maybe(LimitPolicies, few: true)
        select Assemble(cabinet, slots, tidy, topDown, units, names, limits);

    /// <summary>Those and racks that are wired besides.</summary>
    public static Gen<RackDescription> AllRacks => Gen.OneOf(Racks, WiredRacks.All);

    /// <summary>Racks with acceptances, severities of the caller's own and rules switched off besides.</summary>
    public static Gen<RackDescription> RacksWithPolicy => WithPolicy.Value;

    // Made late: wired racks are made of this class's, and two classes that wait for each other while they are made see nulls.
    private static readonly Lazy<Gen<RackDescription>> WithPolicy = new(() =>
        from rack in AllRacks
        from rules in OneOf([.. RuleSet.Default.All.Select(r => r.Descriptor.Id)]).Array[0, 4]
        from severity in OneOf(PolicySeverity.Error, PolicySeverity.Warning, PolicySeverity.Advice, PolicySeverity.Off)
        from places in Gen.Int[0, 12].Array[0, 4]
        select rack with
        {
            Policy = new Policy { Rules = rules.Distinct().Where((_, i) => i % 2 == 0).ToDictionary(r => r, _ => new RulePolicy { Severity = severity }) },
            Acceptances =
            [
                .. rules.Zip(places, (rule, place) => new Acceptance
                {
                    Rule = rule, Pointer = FormattableString.Invariant($"/items/{place}") + (place % 2 == 0 ? "/position" : ""), Reason = "agreed",
                    AcceptedBy = "bay planner",
                }),
            ],
        });

    private static RackDescription Assemble(
        Cabinet cabinet,
        Slot[] slots,
        bool tidy,
        bool? topDown,
        Pdu[] units,
        string[] names,
        IReadOnlyDictionary<string, RulePolicy>? limits)
    {
        var heightU = cabinet.HeightU!.Value;
        var cursor = new Dictionary<Face, int> { [Face.Front] = 1, [Face.Rear] = 1 };
        var items = new List<Item>();
        for (var i = 0; i < slots.Length; i++)
        {
            var (item, gap, face, unit, placed, shelf) = slots[i];
            var bottom = tidy ? cursor[face] + gap : Math.Min(unit % (heightU + 3), heightU + 1);
            cursor[face] = bottom + (item.HeightU ?? 0);
            var number = topDown == true ? heightU + 1 - bottom : bottom;
            items.Add(item with
            {
                Id = names[i],
                OnShelf = item.OnShelf is null ? null : ShelfFor(slots, names, i, shelf),
                Position = placed ? new Position { U = number, Face = face } : null,
            });
        }

        return new RackDescription
        {
            UnitNumbering = topDown is { } down ? (down ? UnitNumbering.TopDown : UnitNumbering.BottomUp) : null,
            Cabinet = cabinet,
            Items = items,
            Supplies = units.Length == 0 ? null : [new Supply { Id = "A", VoltageV = 230, RatedA = 16, Phases = 1 }],
            Pdus = units.Length == 0 ? null : [.. units.Select((u, i) => u with { Id = names[i + 5] })],
            Connections = units.Length == 0
                ? null
                : [.. items.Where(i => i.Power is not null).Select(i => new Connection { Item = i.Id, Pdu = names[5], Group = "g" })],
            Policy = limits is null ? null : new Policy { Rules = limits },
        };
    }

    // Mostly a shelf; now and then another thing, itself not, or none.
    private static string? ShelfFor(Slot[] slots, string[] names, int self, int choice)
    {
        int[] shelves = [.. Enumerable.Range(0, slots.Length).Where(i => i != self && slots[i].Item.Category == ItemCategory.Shelf)];
        if (choice < 0 || slots.Length < 2)
        {
            return null;
        }

        var at = shelves.Length > 0 && choice % 8 != 0 ? shelves[choice % shelves.Length] : choice % slots.Length;
        return at == self ? null : names[at];
    }

    public static Gen<T> OneOf<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);

    public static Gen<T?> Maybe<T>(Gen<T> some, bool few = false)
        where T : struct =>
        Gen.Frequency((few ? 1 : 3, some.Select(x => (T?)x)), (few ? 3 : 1, Gen.Const((T?)null)));

    public static Gen<T?> Maybe<T>(Gen<T> some, bool few = false, T? none = null)
        where T : class =>
        Gen.Frequency((few ? 1 : 3, some.Select(x => (T?)x)), (few ? 3 : 1, Gen.Const(none)));

    private sealed record Slot(Item Item, int Gap, Face Face, int Unit, bool Placed, int Shelf);
}
