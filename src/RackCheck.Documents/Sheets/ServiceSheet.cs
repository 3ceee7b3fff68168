using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Model.Converters;
using RackCheck.Rules;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using RackCheck.Survey.Power;
using static RackCheck.Documents.Sheets.SheetContext;
using static System.FormattableString;

namespace RackCheck.Documents.Sheets;

/// <summary>The service sheet: what pulls out where, what to switch off for it, fans, filters and batteries, spares.</summary>
internal static class ServiceSheet
{
    private const string ByMaker = "by the maker's instructions";

    /// <summary>Adds the content.</summary>
    public static void Fill(SheetContext context)
    {
        context.Blocks.AddRange(CommonBlocks.CautionsOf(context.Report, More(context)));
        context.Section("Access", Access(context));
        context.Section("What comes out where", Items(context));
        context.Section("What to switch off", Isolation(context), Breakers(context), UpsUnits(context), CoolerBlocks.Isolation(context));
        context.Section("Maintenance", Maintenance(context));
        context.Section("Spares", Spares(context));
        context.Blocks.Add(CommonBlocks.Elevation(context.Rack)!);
    }

    private static IEnumerable<string> More(SheetContext context)
    {
        yield return Cautions.Electricity.Text;
        yield return Cautions.Handling.Text;
        if (context.Cabinet.Source.Interlock != true && context.Survey.Items.Count(i => i.SupportStyle == SupportStyle.Slides) > 1)
        {
            yield return "Pull out one item at a time: the slides have no interlock.";
        }
    }

    private static Grid? Access(SheetContext context)
    {
        var (cabinet, site) = (context.Cabinet, context.Survey.Description.Site);
        return Table(
            "Doors and aisles",
            [
                new("Side", 8), new("Door", 16), new("Leaf mm", 10, true), new("Longest slide mm", 13, true),
                new("Deepest item to take out mm", 17, true), new Column("Aisle for door and slides mm", 17, true), new Column("Aisle mm", 16),
            ],
            [Row(Face.Front, cabinet.Source.FrontDoor, site?.AisleFrontMm), Row(Face.Rear, cabinet.Source.RearDoor, site?.AisleRearMm)]);

        IReadOnlyList<string> Row(Face face, Door? door, double? aisle)
        {
            var leaf = door?.Style == DoorStyle.None ? 0 : DoorLeaves.WidthMm(cabinet.WidthMm, door?.Leaves ?? 1);
            var pull = context.Survey.Items.Where(i => IsOnSlides(i) && i.Face == face).Max(Balance.ExtensionMm) ?? 0;
            var deepest = context.Survey.Items.Where(i => i.Face == face && i.Shelf is null).Max(i => i.BodyDepthMm);
            var style = door?.Style is { } known ? NamedEnumConverter<DoorStyle>.Name(known) : "not given";
            return
            [
                CabinetFacts.FaceText(face), style, leaf > 0 ? Number(leaf) : "", pull > 0 ? Number(pull) : "",
                deepest is { } deep ? Number(deep) : "", Number(Math.Max(leaf, pull)),
                aisle is { } room ? Number(room) + (Comparison.IsOver(Math.Max(leaf, pull), room) ? ", too narrow" : "") : "not given",
            ];
        }
    }

    private static bool IsOnSlides(MountedItem item) => item is { SupportStyle: SupportStyle.Slides, Shelf: null };

    private static Grid? Items(SheetContext context) => Table(
        "Items from the top down",
        [
            new("U", 9), new("Item", 18), new("Description, part number", 22), new("Comes out", 26), new("Mass kg", 9, true), new("Switch off", 36),
        ],
        context.FromBottom.Where(i => i.Item is not null).Reverse().Select(i => (IReadOnlyList<string>)
        [
            context.PlaceOf(i), Name(i.Id), WhatIs(i), WayOut(i), i.Item!.MassKg is { } mass ? Number(mass) : "", SwitchOff(i, context),
        ]));

    private static string WayOut(MountedItem item)
    {
        var side = CabinetFacts.FaceText(item.Face);
        if (item.Shelf is not null)
        {
            return $"from its shelf, at the {side}";
        }

        var body = item.BodyDepthMm is { } depth ? depth <= 0 ? "" : Invariant($"; to take it out, {Number(depth)} mm clear") : "; depth not known";
        return item.SupportStyle switch
        {
            SupportStyle.Slides => $"on slides to the {side}, {Number(Balance.ExtensionMm(item), "mm")}"
                + (item.Item!.Support!.CableArm == true ? ", cable arm" : ""),
            SupportStyle.Runners => $"over its runners to the {side}{body}",
            null when SpecificationSheet.SupportOf(item) == SpecificationSheet.NotStated => $"support not stated; to the {side}{body}",
            _ => $"unscrewed, to the {side}{body}",
        };
    }

    private static string SwitchOff(MountedItem item, SheetContext context)
    {
        Cord[] cords = [.. context.CordsOf[item]];
        if (cords.Length == 0)
        {
            return item.Item!.Power is null ? "nothing: no mains connection" : "not known: no cords are described";
        }

        var ends = string.Join(
            "; ", cords.Select(c => c.Group is null ? "a cord without an outlet: find its feed first" : Name(context.Outlets.EndOf(c))));
        string[] ups = [.. cords.Select(c => c.Group?.Unit.FedBy?.Item.Id).OfType<string>().Distinct(StringComparer.Ordinal).Select(Name)];
        var batteries = item.Item!.Ups is not null || item.Item.Battery is not null || item.Category is ItemCategory.Ups or ItemCategory.Battery
            ? "; its own battery stays live"
            : "";
        return ends + (cords.Length > 1 ? " (all of them)" : "") + (ups.Length > 0 ? $"; live from UPS {Lists.All(ups)}" : "") + batteries;
    }

    private static Grid? Isolation(SheetContext context) => Table(
        "Supplies",
        [new("Supply", 18), new("Voltage, rating, breaker", 34), new("PDUs", 48)],
        context.Survey.Power.Supplies.Select(s => (IReadOnlyList<string>)
        [
            Name(s.Id), PowerBlocks.TextOf(s),
            string.Join(", ", context.Survey.Power.Units.Where(u => u.FedBy is null && ReferenceEquals(u.Supply, s)).Select(u => Name(u.Id))),
        ]));

    private static Grid? Breakers(SheetContext context)
    {
        var fed = context.Survey.Power.Cords.Where(c => c.Group is not null).ToLookup(c => c.Group!);
        return Table(
            "What goes off with an outlet group",
            [new("PDU, group", 26), new("Breaker", 12), new("Fed from", 20), new("Items", 42)],
            context.Survey.Power.Groups.Select(g => (IReadOnlyList<string>)
            [
                $"{Name(g.Unit.Id)}, {Name(g.Id)}", g.BreakerA is { } breaker ? Number(breaker, "A") : "none", PowerBlocks.FeedOf(g.Unit),
                fed[g].Any() ? string.Join(", ", fed[g].Select(c => Name(c.Item.Id)).Distinct(StringComparer.Ordinal)) : "nothing",
            ]));
    }

    private static Grid? UpsUnits(SheetContext context) => Table(
        "UPS: what stays live from its battery",
        [new("UPS", 26), new("Feeds", 50), new("Run time", 24)],
        context.Survey.Power.Ups.Select(u => (IReadOnlyList<string>)
        [
            Name(u.Item.Id), u.Units.Count > 0 ? string.Join(", ", u.Units.Select(p => $"PDU {Name(p.Id)}")) : "its own outlets",
            u.Source is { RunMinutes: { } minutes, RunLoadW: { } watts } ? Invariant($"{Number(minutes)} min at {Number(watts)} W")
                : Number(u.Source.RunMinutes, "min"),
        ]));

    private static Grid? Maintenance(SheetContext context) => Table(
        context.Cooler is null ? "Fans, filter mats and batteries" : "Fans, filter mats, batteries and air conditioner",
        [new("Part", 40), new("Quantity", 10, true), new("For", 20), new("Interval", 30)],
        context.Parts.Lines.Where(l => l.Kind is PartKind.Fan or PartKind.Filter or PartKind.Battery).Select(l => (IReadOnlyList<string>)
        [
            SpecificationSheet.PartName(l), Invariant($"{l.Quantity}"),
            l.Items is { Count: > 0 } ids ? Lists.Short([.. ids.Select(Name)]) : "cabinet", Interval(l, context),
        ]).Concat(context.Survey.Items.Where(i => i.Item is { Ups: not null, Battery: null }).Select(i => (IReadOnlyList<string>)
            ["Battery of a UPS, type not given", "", Name(i.Id), ByMaker])).Concat(CoolerBlocks.Maintenance(context, ByMaker)));

    // The only interval in the data is the pressure drop at which a mat is changed.
    private static string Interval(PartLine line, SheetContext context) =>
        line.Kind == PartKind.Filter && context.Survey.Heat.AirPath.Mat is { } mat ? Invariant($"change at {Number(mat.LossPa)} Pa, else {ByMaker}") : ByMaker;

    private static Grid? Spares(SheetContext context) => Table(
        "Spares to keep",
        [new("Quantity", 10, true), new("Part", 36), new("Part number, order quantity", 24), new("Why", 30)],
        context.Parts.Lines.Where(l => l.Kind == PartKind.Spare).Select(l => (IReadOnlyList<string>)
            [SpecificationSheet.Quantity(l), SpecificationSheet.PartName(l), SpecificationSheet.OrderOf(l), l.Why])
        .Concat(context.Survey.Items.Where(i => i.Item!.Spare == true).Select(i => (IReadOnlyList<string>)
            ["1", Name(i.Id), i.Item!.PartNumber is { } number ? Name(number) : "", $"Stand-by unit in the rack, {context.PlaceOf(i)}."])));
}
