using RackCheck.Documents.Drawings.Elevations;
using RackCheck.Model;
using RackCheck.Model.Converters;
using RackCheck.Survey.Power;
using static RackCheck.Documents.Sheets.SheetContext;
using static System.FormattableString;

namespace RackCheck.Documents.Sheets;

/// <summary>Supplies, PDUs, groups and cords.</summary>
internal static class PowerBlocks
{
    private const int LeastInColumns = 12;
    private const int LongestInColumns = 70;

    /// <summary>Adds the section.</summary>
    public static void Add(SheetContext context) => context.Section(
        "Power", Totals(context), Supplies(context), Pdus(context), Groups(context), UpsUnits(context), Cords(context));

    /// <summary>The supplies with what they are expected to carry.</summary>
    public static Grid? Supplies(SheetContext context)
    {
        var figures = (context.Report.Figures.Power?.Supplies ?? []).ToDictionary(s => s.Id, StringComparer.Ordinal);
        return Table(
            "Supplies",
            [
                new("Supply", 14), new("Voltage, rating, breaker", 26), new("L1 A", 8, true), new("L2 A", 8, true), new("L3 A", 8, true),
                new("N A", 8, true), new("Loading %", 9, true), new("One supply lost %", 10, true), new Column("Inrush A", 9, true),
                new Column("Leakage mA", 9, true), new("Voltage drop %", 9, true),
            ],
            context.Survey.Power.Supplies.Select(s =>
            {
                var f = figures.GetValueOrDefault(s.Id);
                return (IReadOnlyList<string>)
                [
                    Name(s.Id), TextOf(s), Given(f?.CurrentA?.L1), Given(f?.CurrentA?.L2), Given(f?.CurrentA?.L3), Given(f?.CurrentA?.Neutral),
                    Given(f?.LoadingPercent), Given(f?.WorstCaseLoadingPercent), Given(f?.InrushA), Given(f?.LeakageMa), Given(f?.VoltageDropPercent),
                ];
            }));
    }

    /// <summary>Voltage, rating and breaker of a supply.</summary>
    public static string TextOf(SupplyNode supply)
    {
        var source = supply.Source;
        var breaker = source.Breaker is { } b ? Invariant($", breaker {b.Curve?.ToString().ToUpperInvariant()}{supply.BreakerA:0.###} A") : "";
        var socket = source.Socket is { } code ? ", " + PlugFit.Of(code).Code : "";
        var rcd = source.RcdMa is { } residual ? Invariant($", RCD {residual:0.###} mA") : "";
        return Invariant($"{SupplyWords.VoltageOf(supply)}, {source.RatedA:0.###} A{breaker}{rcd}{socket}");
    }

    /// <summary>Where a PDU is.</summary>
    public static string MountingOf(PduNode unit, SheetContext context)
    {
        var mounted = Array.Find(context.Survey.Units, u => u.Index == unit.Index);
        return mounted is not null ? $"horizontal, {context.PlaceOf(mounted)}, {Survey.Layout.CabinetFacts.FaceText(mounted.Face)}"
            : unit.Source.Mounting is { } mounting ? NamedEnumConverter<PduMounting>.Name(mounting)
            : "mounting not given";
    }

    /// <summary>What feeds a PDU.</summary>
    public static string FeedOf(PduNode unit) =>
        unit.FedBy is { } ups ? $"UPS {Name(ups.Item.Id)}" : $"supply {Name(unit.Supply.Id)}";

    private static string Given(double? value) => value is { } known ? Number(known) : "";

    private static Pairs? Totals(SheetContext context) => context.Report.Figures.Power is not { } power ? null
        : new Pairs(
        [
            ("Rated power", Number(power.RatedW, "W")), ("Typical power", Number(power.TypicalW, "W")),
        ]);

    private static Grid? Pdus(SheetContext context)
    {
        var figures = (context.Report.Figures.Power?.Pdus ?? []).ToDictionary(p => p.Id, StringComparer.Ordinal);
        return Table(
            "PDUs",
            [
                new("PDU", 18), new("Fed from", 18), new("Mounting", 18), new("Rating, plug", 18), new("L1 A", 8, true), new("L2 A", 8, true),
                new("L3 A", 8, true), new("N A", 8, true), new("Loading %", 9, true),
            ],
            context.Survey.Power.Units.Select(u =>
            {
                var f = figures.GetValueOrDefault(u.Id);
                var plug = u.Source.Plug is { } code ? ", " + PlugFit.Of(code).Code : "";
                return (IReadOnlyList<string>)
                [
                    Name(u.Id), FeedOf(u), MountingOf(u, context), Number(u.Source.RatedA, "A") + plug, Given(f?.CurrentA?.L1), Given(f?.CurrentA?.L2),
                    Given(f?.CurrentA?.L3), Given(f?.CurrentA?.Neutral), Given(f?.LoadingPercent),
                ];
            }));
    }

    private static Grid? Groups(SheetContext context)
    {
        var figures = (context.Report.Figures.Power?.Pdus ?? [])
            .SelectMany(p => (p.Groups ?? []).Select(g => (Key: (p.Id, g.Id), Group: g))).ToDictionary(g => g.Key, g => g.Group);
        return Table(
            "Outlet groups",
            [
                new("PDU, group", 24), new("Phase", 8), new("Breaker A", 9, true), new("Outlets", 30), new("Current A", 10, true), new("Loading %", 10, true),
            ],
            context.Survey.Power.Groups.Select(g =>
            {
                var f = figures.GetValueOrDefault((g.Unit.Id, g.Id));
                var outlets = g.Source.Outlets.Select(o => Invariant($"{o.Count} x {PlugFit.Of(o.Socket).Code}{(o.Switched == true ? " switched" : "")}"));
                return (IReadOnlyList<string>)
                [
                    $"{Name(g.Unit.Id)}, {Name(g.Id)}", PhaseOf(g), Given(g.BreakerA), string.Join(", ", outlets), Given(f?.CurrentA),
                    Given(f?.LoadingPercent),
                ];
            }));
    }

    /// <summary>Phase of a group.</summary>
    public static string PhaseOf(GroupNode group) => group.Source.Phase is { } phase ? NamedEnumConverter<Phase>.Name(phase) : "";

    private static Grid? UpsUnits(SheetContext context) => Table(
        "UPS",
        [new("UPS", 24), new("Rated W", 10, true), new("Rated VA", 10, true), new("Load W", 10, true), new("Load VA", 10, true), new("Feeds", 36)],
        context.Survey.Power.Ups.Select(u => (IReadOnlyList<string>)
        [
            Name(u.Item.Id), Given(u.Source.RatedW), Given(u.Source.RatedVa), u.IsKnown ? Number(Quantities.Round(u.LoadW)) : Unknown,
            u.IsKnown ? Number(Quantities.Round(u.LoadVa)) : Unknown,
            u.Units.Count > 0 ? Lists.All([.. u.Units.Select(p => Name(p.Id))]) : "its own outlets",
        ]));

    // Short entries of many cords stand in two columns, the second half beside the first.
    private static Grid? Cords(SheetContext context)
    {
        const string Caption = "Cords: from the item to PDU, group and number of the outlet";
        (string Item, string Outlets)[] cords =
        [
            .. context.CordsOf
                .Select(c => (Name(c.Key.Id), string.Join("; ", c.Select(cord => Ends(cord, context))))),
        ];
        if (cords.Length < LeastInColumns || Array.Exists(cords, c => c.Item.Length > LongestInColumns / 2 || c.Outlets.Length > LongestInColumns))
        {
            return Table(Caption, [new("Item", 28), new("Outlets", 72)], cords.Select(c => (IReadOnlyList<string>)[c.Item, c.Outlets]));
        }

        var half = (cords.Length + 1) / 2;
        return Table(
            Caption,
            [new("Item", 14), new("Outlets", 36), new("Item", 14), new("Outlets", 36)],
            Enumerable.Range(0, half).Select(i => (IReadOnlyList<string>)
            [
                cords[i].Item, cords[i].Outlets, half + i < cords.Length ? cords[half + i].Item : "", half + i < cords.Length ? cords[half + i].Outlets : "",
            ]));
    }

    private static string Ends(Cord cord, SheetContext context)
    {
        var end = TextOfEnd(cord, context);
        return cord.Siblings > 1 ? Invariant($"cord {cord.Plug + 1}: {end}") : end;
    }

    private static string TextOfEnd(Cord cord, SheetContext context) =>
        Name(context.Outlets.EndOf(cord)) + (cord.Group is null ? $" for {PlugFit.Of(cord.Code).Code}" : "");
}
