using RackCheck.Engineering;
using RackCheck.Model;
using static RackCheck.Documents.Sheets.SheetContext;
using static System.FormattableString;

namespace RackCheck.Documents.Sheets;

/// <summary>Figures of space, mass, floor, cooling, earthing, cables and delivery, with their arithmetic.</summary>
internal static class FigureBlocks
{
    // Terms of a sum that are written out.
    private const int MostTerms = 12;

    /// <summary>Adds the sections.</summary>
    public static void Add(SheetContext context)
    {
        var figures = context.Report.Figures;
        context.Section("Space, mass and stability", Space(figures), Mass(context));
        context.Section("Cooling", Cooling(context));
        context.Section(CoolerBlocks.Title, CoolerBlocks.Data(context));
        context.Section("Earthing", Earthing(context));
        context.Section("Cables and delivery", CablesAndDelivery(context));
    }

    /// <summary>The sum of masses in kg: equal ones grouped, the heaviest first.</summary>
    public static string SumOf(IEnumerable<double> masses)
    {
        var terms = masses.Select(Quantities.Round).Where(m => m > 0).GroupBy(m => m).OrderByDescending(g => g.Key)
            .Select(g => g.Count() == 1 ? Number(g.Key) : Invariant($"{g.Count()} x {Number(g.Key)}")).ToList();
        return terms.Count > MostTerms ? "" : string.Join(" + ", terms);
    }

    private static Pairs? Space(Figures figures) => figures.Space is not { } space ? null
        : new Pairs(
        [
            ("Mounting space", Invariant($"{space.UnitsTotal}U")), ("Used", Invariant($"{space.UnitsUsed}U")),
            ("Free", Invariant($"{space.UnitsTotal} - {space.UnitsUsed} = {space.UnitsFree}U")), ("Largest gap", Invariant($"{space.LargestGapU}U")),
        ]);

    private static Pairs? Mass(SheetContext context)
    {
        if (context.Report.Figures.Mass is not { } mass)
        {
            return null;
        }

        var (cabinet, source) = (context.Cabinet, context.Cabinet.Source);
        var sum = SumOf(context.Survey.Items.Select(i => i.Item!.MassKg ?? 0));
        var isSum = mass.EquipmentKg is > 0 && (sum.Contains('+', StringComparison.Ordinal) || sum.Contains('x', StringComparison.Ordinal));
        var total = mass is { TotalKg: not null, EquipmentKg: not null } ? Invariant($"{Number(source.MassKg)} + {Number(mass.EquipmentKg)} = ") : "";
        var area = mass.FloorKnM2 is null ? ""
            : Invariant($"{Number(mass.TotalKg)} x {Gravity.MPerS2:0.#####} / ({cabinet.WidthMm:0.###} x {cabinet.Depth.DepthMm:0.###}) x 1000 = ");
        return new Pairs(
        [
            ("Equipment", (isSum ? sum + " = " : "") + Number(mass.EquipmentKg, "kg")), ("Cabinet and equipment", total + Number(mass.TotalKg, "kg")),
            ("Rated load of the cabinet", Number(source.RatedLoadKg, "kg")),
            ("Centre of gravity, behind the front", Number(mass.CentreOfGravityMm?.X, "mm")),
            ("Centre of gravity, above the floor", Number(mass.CentreOfGravityMm?.Z, "mm")),
            ("Tipping angle", Number(mass.TipAngleDeg, "degrees")), ("Floor load", area + Number(mass.FloorKnM2, "kN/m2")),
            ("Greatest load of a foot", Number(mass.PointKn, "kN")),
        ]);
    }

    private static Pairs? Cooling(SheetContext context)
    {
        if (context.Report.Figures.Cooling is not { } cooling)
        {
            return null;
        }

        var heat = context.Survey.Heat;
        var needed = cooling is { AirflowNeededM3h: not null, AirDensityKgM3: { } density, HeatW: not null } && heat.AllowedRiseK is { } rise
            ? Invariant($"3600 x {Number(cooling.HeatW)} / ({Number(density)} x {Air.HeatCapacity:0.###} x {Number(rise)}) = ") : "";
        var btu = cooling is { HeatW: not null, HeatBtuH: not null } ? Invariant($"{Number(cooling.HeatW)} x {Air.BtuHPerW:0.######} = ") : "";
        return new Pairs(
        [
            ("Heat load", Number(cooling.HeatW, "W")), .. btu.Length == 0 ? [] : new[] { ("Heat load", btu + Number(cooling.HeatBtuH, "BTU/h")) },
            ("Airflow needed", needed + Number(cooling.AirflowNeededM3h, "m3/h")), ("Airflow available", Number(cooling.AirflowAvailableM3h, "m3/h")),
            ("Temperature rise", Number(cooling.RiseK, "K")), ("Hottest inlet", Number(cooling.HottestInletC, "C")),
            ("Pressure drop of the doors", Number(cooling.DoorPressureLossPa, "Pa")), ("Air density", Number(cooling.AirDensityKgM3, "kg/m3")),
            ("Surface that dissipates heat", Number(cooling.SurfaceM2, "m2")), ("Capacity needed of an air conditioner", Number(cooling.CoolerNeededW, "W")),
            ("Dew point of the room", Number(cooling.DewPointC, "C")),
        ]);
    }

    private static Block?[] Earthing(SheetContext context)
    {
        var earth = context.Survey.Earth;
        var figures = context.Report.Figures.Earthing;
        if (!earth.IsElectrical)
        {
            return [];
        }

        var parts = earth.Parts.Select(p => $"{p.Name}: {(p.IsBonded switch { true => "bonded", false => "not bonded", _ => "not stated" })}");
        return
        [
            new Pairs(
            [
                ("Terminals needed: studs, parts and main conductor", Invariant($"{earth.Studs.Count} + {earth.Parts.Count} + 1 = {earth.TerminalsNeeded}")),
                ("Terminals fitted", figures?.TerminalsFitted is { } fitted ? Invariant($"{fitted}") : Unknown),
                ("Protective conductor current of all items", Number(figures?.LeakageMa, "mA")), ("Main protective conductor", Number(earth.MainMm2, "mm2")),
                ("Parts of the cabinet", Lists.All([.. parts])),
            ]),
            Table(
                "Earth leads by their length",
                [new("Lead", 26), new("Quantity", 10, true), new("Length m", 10, true), new("Arithmetic of the longest route m", 34), new("Items", 30)],
                context.Parts.Lines.Where(l => l.Kind == PartKind.EarthLead).Select(l => (IReadOnlyList<string>)
                [
                    l.Description, Invariant($"{l.Quantity}"), l.Data.LengthM is { } length ? Number(length) : "", l.Calculation ?? "",
                    l.Items is { Count: > 0 } ids ? Lists.Short([.. ids.Select(Name)]) : "",
                ])),
        ];
    }

    private static Pairs? CablesAndDelivery(SheetContext context)
    {
        var (cabling, delivery) = (context.Report.Figures.Cabling, context.Report.Figures.Delivery);
        List<(string Name, string Value)> entries = [];
        if (cabling is not null)
        {
            var fill = cabling is { FillPercent: not null, AreaMm2: not null }
                ? Invariant($"100 x {Number(cabling.AreaMm2)} / {Number(cabling.SideSpaceMm2)} = ") : "";
            entries.AddRange(
            [
                ("Cross-sectional area of the cables", Number(cabling.AreaMm2, "mm2")), ("Channels beside the uprights", Number(cabling.SideSpaceMm2, "mm2")),
                ("Fill of the channels", fill + Number(cabling.FillPercent, "%")),
            ]);
        }

        if (delivery is not null)
        {
            entries.AddRange(
            [
                ("Gross mass with pallet", Number(delivery.GrossKg, "kg")), ("Height on the pallet", Number(delivery.HeightOnPalletMm, "mm")),
                ("Width x depth on the pallet", Invariant($"{Number(delivery.WidthMm)} x {Number(delivery.DepthMm)} mm")),
            ]);
        }

        return entries.Count > 0 ? new Pairs(entries) : null;
    }
}
