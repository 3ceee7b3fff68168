using RackCheck.Model;
using RackCheck.Rules;
using RackCheck.Survey;
using static RackCheck.Documents.Sheets.SheetContext;
using static System.FormattableString;

namespace RackCheck.Documents.Sheets;

/// <summary>Packing list and delivery note: pieces, masses, pallet, route, and what the receiver has ready.</summary>
internal static class PackingSheet
{
    private const string InRack = "mounted in the cabinet";
    private const string Apart = "packed apart";

    /// <summary>Adds the content.</summary>
    public static void Fill(SheetContext context)
    {
        context.Section("Masses and size", Masses(context));
        context.Section("Pieces", Pieces(context), Loose(context), Spares(context));
        context.Section("Delivery route", RouteBlocks.Of(context));
        context.Section("What the receiver has ready", new Bullets([.. Ready(context)], BulletMark.Box));
        context.Section(
            "On receipt",
            new Bullets(
                [
                    "Packing, tilt and shock indicators are intact; damage is photographed and written here before signing.",
                    "The pieces above are complete.",
                    "The cabinet stands upright, its doors closed and locked, nothing inside has come loose.",
                    "Equipment acclimatises in its packing before it is opened, so that no condensation forms on it.",
                ],
                BulletMark.Box));
        context.Blocks.AddRange(CommonBlocks.CautionsOf(context.Report, Cautions.Transport.Text, Cautions.Handling.Text));
        context.Blocks.Add(new Signatures(["Packed", "Dispatched", "Received, complete and without visible damage"]));
    }

    private static Pairs Masses(SheetContext context)
    {
        var (survey, figures, cabinet) = (context.Survey, context.Report.Figures, context.Cabinet);
        var route = survey.Route;
        var least = survey.Mass.IsTotalKnown ? "" : "at least ";
        var height = cabinet.Source.HeightMm is null ? (double?)null : cabinet.Heights.OverallMm;
        var gross = route is null ? null
            : Invariant($"{(route.MassIsKnown ? "" : "at least ")}{Number(route.RackKg)} + {Number(route.PalletKg)} = {Number(route.KnownKg)} kg");
        return new Pairs(
        [
            ("Cabinet", Number(cabinet.Source.MassKg, "kg")),
            ("Equipment", figures.Mass?.EquipmentKg is { } known ? Number(known, "kg") : Invariant($"at least {Number(survey.Mass.KnownEquipmentKg)} kg")),
            .. context.Cooler is null ? [] : new[] { (CoolerBlocks.Title, "not described: add it to the masses below") },
            ("Cabinet and equipment", least + Number(survey.Mass.KnownTotalKg, "kg")),
            ("Pallet", route is null ? "not given" : Number(route.PalletKg, "kg")),
            ("Gross mass", gross ?? "no delivery data"),
            ("Cabinet, width x depth x height", Invariant($"{cabinet.WidthMm:0.###} x {cabinet.Depth.DepthMm:0.###} x {Number(height)} mm")),
            ("On the pallet, width x depth", SizeOnPallet(figures.Delivery)),
            ("On the pallet, height", HeightOnPallet(route, figures.Delivery)),
        ]);
    }

    private static string SizeOnPallet(DeliveryFigures? figures) =>
        figures is null ? "no delivery data" : Invariant($"{Number(figures.WidthMm)} x {Number(figures.DepthMm)} mm");

    private static string HeightOnPallet(RouteSurvey? route, DeliveryFigures? figures) => route is null ? "no delivery data"
        : figures?.HeightOnPalletMm is { } high ? Invariant($"{Number(high - route.PalletHeightMm)} + {Number(route.PalletHeightMm)} = {Number(high)} mm")
        : Unknown;

    private static Grid? Pieces(SheetContext context)
    {
        var isLoaded = context.Survey.Route?.Source.Loaded != false;
        List<IReadOnlyList<string>> rows = [];
        var cabinet = context.Cabinet.Source;
        Add("Cabinet", Invariant($"{context.Cabinet.HeightU}U{(cabinet.PartNumber is { } part ? ", " + Name(part) : "")}"), cabinet.MassKg, "");
        if (context.Cooler is { } cooler)
        {
            var number = context.CoolerPart is { } own ? ", " + Name(own) : "";
            Add(CoolerBlocks.Title, $"{Parts.CoolerParts.TextOf(cooler)}{number}; mass not described", null, isLoaded ? "mounted on the cabinet" : Apart);
        }

        foreach (var item in context.FromBottom.Where(i => i.Item is not null))
        {
            Add(Name(item.Id), WhatIs(item), item.Item!.MassKg, isLoaded && (item.Shelf ?? item).IsPlaced ? $"{InRack}, {context.PlaceOf(item)}" : Apart);
        }

        foreach (var unit in context.Survey.Power.Units)
        {
            Add(
                Name(unit.Id), "PDU" + (unit.Source.PartNumber is { } number ? ", " + Name(number) : ""), null,
                isLoaded ? $"{InRack}, {PowerBlocks.MountingOf(unit, context)}" : Apart);
        }

        return Table(
            "Main pieces; PDUs, rails and cords have no mass in the description",
            [new("No.", 5, true), new("Piece", 24), new("Description, part number", 34), new("Mass kg", 9, true), new("Packed", 24), new("", 4)], rows);

        void Add(string piece, string what, double? mass, string packed) =>
            rows.Add([Invariant($"{rows.Count + 1}"), piece, what, mass is { } known ? Number(known) : "", packed, Grid.Box]);
    }

    // What is worth keeping is no piece of this delivery: nobody ticks it off.
    private static Grid? Spares(SheetContext context) => Table(
        "Spares recommended; part of this delivery only if they were ordered",
        [new("Quantity", 10, true), new("Part", 34), new("Part number, order quantity", 24), new("Why", 32)],
        context.Parts.Lines.Where(l => l is { Kind: PartKind.Spare, Quantity: > 0 }).Select(l => (IReadOnlyList<string>)
        [
            SpecificationSheet.Quantity(l), SpecificationSheet.PartName(l), SpecificationSheet.OrderOf(l), l.Why,
        ]));

    private static Grid? Loose(SheetContext context) => Table(
        "Small parts: mounted where the installation sheet is done, else in a box",
        [new("Quantity", 10, true), new("Part", 50), new("Part number, order quantity", 36), new("", 4)],
        context.Parts.Lines.Where(IsLoose).Select(l => (IReadOnlyList<string>)
        [
            SpecificationSheet.Quantity(l), SpecificationSheet.PartName(l), SpecificationSheet.OrderOf(l), Grid.Box,
        ]));

    // Panels and shelves of the description are main pieces already.
    private static bool IsLoose(PartLine line) => line is { Included: false, Quantity: > 0, Kind: not (PartKind.Label or PartKind.Spare) }
        && !(line.Kind is PartKind.BlankingPanel or PartKind.Shelf && line.Items is { Count: > 0 });

    private static IEnumerable<string> Ready(SheetContext context)
    {
        var (survey, site) = (context.Survey, context.Survey.Description.Site);
        var route = survey.Route;
        var gross = route?.KnownKg ?? survey.Mass.KnownTotalKg;
        var least = context.Cooler is null && (route?.MassIsKnown ?? survey.Mass.IsTotalKnown) ? "" : " or more; not all masses are given";
        yield return route?.Source.ReceiverArranged == true ? "The person who is appointed to take receipt, with keys and drawings of the route."
            : "A person to take receipt, with keys and drawings of the route. Nobody is stated as appointed.";
        yield return Invariant($"Lifting equipment for {Number(gross)} kg{least}")
            + (route?.Source.LiftingKg is { } rated ? Invariant($"; that stated is rated for {Number(rated)} kg.") : "; none is stated.");
        yield return Invariant($"{Number(site?.Handling?.Persons ?? Rules.Loads.HeavyHigh.DefaultPersons)} people to move the rack")
            + (site?.Handling?.LiftAid == true ? ", and the lifting aid for single items." : ".");
        if (survey.Mass.Stand.StandsOnFloor)
        {
            var figures = context.Report.Figures.Mass;
            yield return Invariant($"A floor for {Number(figures?.FloorKnM2, "kN/m2")} under the footprint and {Number(figures?.PointKn, "kN")} under a foot, ")
                + "along the whole route.";
        }

        yield return site is { AisleFrontMm: { } front, AisleRearMm: { } rear }
            ? Invariant($"Free aisles of {Number(front)} mm in front and {Number(rear)} mm behind the cabinet, as described.")
            : "Free aisles in front and behind for doors and slides. Their widths are not all stated.";
        foreach (var supply in survey.Power.Supplies)
        {
            yield return $"Supply {Name(supply.Id)} up to the cabinet: {PowerBlocks.TextOf(supply)}; off and locked until the checks of "
                + "the installation sheet.";
        }

        foreach (var line in CoolerBlocks.Ready(context))
        {
            yield return line;
        }

        if (survey.Earth.IsElectrical)
        {
            var main = Parts.WiringParts.MainMm2(survey);
            yield return $"The building's protective earth at the cabinet for the main protective conductor ({Number(main, "mm2")}).";
        }
    }
}
