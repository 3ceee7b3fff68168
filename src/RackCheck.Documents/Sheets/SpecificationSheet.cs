using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Model.Converters;
using RackCheck.Survey.Layout;
using static RackCheck.Documents.Sheets.SheetContext;
using static System.FormattableString;

namespace RackCheck.Documents.Sheets;

/// <summary>The specification: what is built, its figures with their arithmetic, and what is open.</summary>
internal static class SpecificationSheet
{
    /// <summary>The support of an item of which the description says nothing.</summary>
    public const string NotStated = "not stated";

    private const string FrontPanel = "front panel";

    /// <summary>Adds the content.</summary>
    public static void Fill(SheetContext context)
    {
        context.Blocks.Add(CommonBlocks.Elevation(context.Rack)!);
        context.Section("Cabinet", CabinetOf(context));
        context.Section("Equipment", Equipment(context));
        PowerBlocks.Add(context);
        FigureBlocks.Add(context);
        context.Section("Parts", PartsOf(context.Parts), Notes(context.Parts));
        FindingBlocks.Add(context.Report, context.Rack.Posted, context.Blocks);
        context.Blocks.AddRange(CommonBlocks.CautionsOf(context.Report));
        context.Blocks.Add(new Signatures(["Prepared", "Checked", "Released"]));
    }

    /// <summary>The lines of a parts list but labels, which are data for a printer.</summary>
    public static Grid? PartsOf(PartsList parts) => Table(
        "Small parts; spares are recommended",
        [
            new("Quantity", 9, true), new("Part", 34), new("Part number, order quantity", 24), new("For", 33),
        ],
        parts.Lines.Where(l => l.Kind != PartKind.Label && l.Quantity > 0).Select(l => (IReadOnlyList<string>)
        [
            Quantity(l), PartName(l), OrderOf(l), For(l),
        ]));

    /// <summary>Quantity of a line with its unit.</summary>
    public static string Quantity(PartLine line) => line.Unit == PartUnit.Piece ? Invariant($"{line.Quantity}") : Count(line.Quantity, UnitOf(line));

    /// <summary>A part with the values that tell it from others.</summary>
    public static string PartName(PartLine line)
    {
        var data = line.Data;
        string?[] more =
        [
            data.Thread, data.HeightU is { } units ? Invariant($"{units} U") : null,
            data.LengthM is { } length ? Invariant($"{length:0.###} m") : null,
            data.RatedKg is { } kilograms ? Invariant($"{kilograms:0.###} kg") : null,
            data.DepthMm is { } depth ? Invariant($"{depth:0.###} mm deep") : null,
            data.FreeFlowM3h is { } flow ? Invariant($"{flow:0.###} m3/h") : null,
            data.AreaCm2 is { } area ? Invariant($"{area:0.###} cm2") : null,
            data.CapacityAh is { } capacity ? Invariant($"{capacity:0.###} Ah") : null,
        ];
        return string.Join(", ", more.OfType<string>().Where(m => !line.Description.Contains(m, StringComparison.Ordinal)).Prepend(line.Description));
    }

    private static string UnitOf(PartLine line) => NamedEnumConverter<PartUnit>.Name(line.Unit);

    /// <summary>Part number of a line with its order quantity.</summary>
    public static string OrderOf(PartLine line) => line.Included ? "included"
        : line.PartNumber is not { } number ? ""
        : line.OrderQuantity is { } order ? Invariant($"{Name(number)}, {order}") : Name(number);

    private static string For(PartLine line)
    {
        string[] ids = [.. (line.Items ?? []).Concat(line.Pdus ?? []).Select(Name)];
        return ids.Length > 0 ? Lists.Short(ids) : FirstClause(line.Why);
    }

    private static string FirstClause(string why) => why.IndexOfAny([':', ';', '.']) is > 0 and var end ? why[..end] : why;

    private static Bullets? Notes(PartsList parts) => parts.Notes.Count > 0 ? new Bullets([.. parts.Notes]) : null;

    private static Pairs CabinetOf(SheetContext context)
    {
        var (cabinet, facts) = (context.Cabinet.Source, context.Cabinet);
        var uprights = cabinet.Uprights;
        var depth = context.Report.Figures.Depth;
        return new Pairs(
        [
            ("Mounting space", Invariant($"{facts.HeightU}U, counted from the {(facts.TopDown ? "top" : "bottom")}")),
            ("Width x depth x height", Invariant($"{facts.WidthMm:0.###} x {facts.Depth.DepthMm:0.###} x {Number(cabinet.HeightMm)} mm")),
            ("Front door", DoorOf(cabinet.FrontDoor)),
            ("Rear door", DoorOf(cabinet.RearDoor)),
            ("Base", cabinet.Base?.Style is { } style ? NamedEnumConverter<BaseStyle>.Name(style) : "not given"),
            ("Uprights", uprights?.Hole is { } hole ? $"{NamedEnumConverter<UprightHole>.Name(hole)} holes" : "hole not given"),
            ("Front setback of the uprights", Number(uprights?.FrontSetbackMm, "mm")),
            ("Spacing of the uprights", Number(uprights?.SpacingMm, "mm")),
            ("Usable depth", Number(depth?.UsableMm, "mm")),
            ("Deepest stack", Number(depth?.DeepestStackMm, "mm")),
            ("Front setback that suits all items", SetbackRange(depth)),
            ("Minimum depth of the cabinet", Number(depth?.MinimumCabinetDepthMm, "mm")),
            ("Degree of protection", cabinet.IpCode ?? "not given"),
            ("Earth bar", cabinet.EarthBar is { } bar ? Invariant($"{(bar.Terminals is { } t ? Count(t, "terminal") : "fitted")}") : "none given"),
        ]);
    }

    // A range that is turned round holds no setback.
    private static string SetbackRange(DepthFigures? depth) => depth switch
    {
        { FrontSetbackMinMm: { } least, FrontSetbackMaxMm: { } most } when Comparison.IsOver(least, most) =>
            Invariant($"none: the front needs {Number(least)} mm or more, the rear permits {Number(most)} mm"),
        { FrontSetbackMinMm: null, FrontSetbackMaxMm: null } or null => Unknown,
        _ => Invariant($"{Number(depth.FrontSetbackMinMm)} to {Number(depth.FrontSetbackMaxMm)} mm"),
    };

    private static string DoorOf(Door? door) => door?.Style is not { } style ? "not given"
        : NamedEnumConverter<DoorStyle>.Name(style) + (door.Leaves == 2 ? ", two leaves" : "")
            + (style == DoorStyle.Perforated && door.OpenAreaPercent is { } open ? Invariant($", {open:0.###} % open") : "");

    private static Grid? Equipment(SheetContext context) => Table(
        "Items from the top down",
        [
            new("U", 9), new("Face", 7), new("Item", 22), new("Description, part number", 34), new("H U", 6, true), new("Depth mm", 9, true),
            new("Mass kg", 9, true), new("Support", 14), new("Rated W", 9, true),
        ],
        context.FromBottom.Reverse().Select(i => (IReadOnlyList<string>)
        [
            context.PlaceOf(i), CabinetFacts.FaceText(i.Face), Name(i.Id), WhatIs(i), Invariant($"{i.HeightU}"),
            i.BodyDepthMm is { } depth ? Number(depth) : "", i.Item?.MassKg is { } mass ? Number(mass) : "", SupportOf(i),
            i.Item?.Power?.RatedW is { } watts ? Number(watts) : "",
        ]));

    /// <summary>How an item is carried.</summary>
    public static string SupportOf(MountedItem item) => item.Shelf is not null ? "on a shelf"
        : (item.SupportStyle is not { } style ? (IsPanelOnly(item) ? FrontPanel : NotStated)
            : style == SupportStyle.Panel ? FrontPanel
            : NamedEnumConverter<SupportStyle>.Name(style))
        + (item.Item?.Support?.RatedKg is { } rated ? Invariant($", {rated:0.###} kg") : "");

    // What has no body to carry: its front panel holds it, and nobody states so.
    private static bool IsPanelOnly(MountedItem item) =>
        item.Item is null || item.Category is ItemCategory.BlankingPanel or ItemCategory.CableManager;
}
