using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Survey;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Cooling;

/// <summary>Finds batteries in cabinets without the openings that carry their hydrogen away.</summary>
public sealed class BatteryVentilation : Rule
{
    // A perforated door without a stated open share is at least this open, percent. Common practice, no source.
    private const double LeastOpenPercent = 30;

    // Openings that are enough for the batteries of any rack, cm2: 240 vented cells of 100 Ah on boost charge need 672.
    private const double AlwaysEnoughCm2 = 1000;

    private static readonly MessageWording Defect = new(
        "cooling.battery-ventilation",
        "Batteries need {neededM3h} m3/h of air through openings of {areaCm2} cm2 in and out; the cabinet has {hasCm2} cm2.");

    private static readonly MissingData Missing = new(
        "cooling.battery-ventilation.missing",
        "Data of batteries or of the openings of the cabinet are missing, so the ventilation of the batteries cannot be checked.");

    private static readonly RuleDescriptor Facts = new()
    {
        Id = "cooling.battery-ventilation",
        Title = "Batteries without ventilation",
        Severity = Severity.Error,
        Safety = true,
        What =
            "Finds lead-acid batteries in cabinets whose inlet or outlet openings are smaller than the free area that natural ventilation needs. Lithium "
            + "batteries, and a UPS that gives no battery data, are ventilated as their manufacturers state.",
        Why = "Lead-acid batteries give off hydrogen while they are charged. In a closed cabinet it collects at the top and explodes at 4 % in air.",
        Formula =
            "Q = 0.05 n I C/1000 m3/h, summed over the items; I in mA/Ah: valve-regulated 1, boost 8; vented 5, boost 20; inlet and outlet each >= 28 Q cm2",
        Sources = [Sources.Iec62485],
        Needs =
        [
            "/items/*/battery", "/cabinet/frontDoor/style", "/cabinet/rearDoor/style", "/cabinet/sidePanels", "/cabinet/roof", "/cooling/intakeAreaCm2",
            "/cooling/roofFans", "/cooling/underfloor",
        ],
        Notes =
        [
            "Two perforated doors, open sides, or one perforated door with twice the free area, upper and lower half, ventilate the cabinet. Roof fans serve "
                + "as the outlet, underfloor supply as the inlet. An air conditioner does not ventilate.",
            "A perforated door without a stated open share counts as 30 % open.",
        ],
        Remedies = ["Fit an intake and a vented roof.", "Fit perforated doors.", "Move the batteries to another rack or a battery room."],
        Cautions = [Cautions.Electricity, Cautions.Handling],
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor => Facts;

    /// <inheritdoc/>
    public override void Check(RuleContext context)
    {
        MountedItem[] batteries = [.. context.Survey.Items.Where(i => i.Item!.Battery is { Type: not BatteryType.Lithium })];
        var (inlet, outlet, unknown) = Openings(context.Survey);
        if (batteries.Length == 0 || (Math.Min(inlet, outlet) >= AlwaysEnoughCm2 && !Array.TrueForAll(batteries, IsKnown)))
        {
            return;
        }

        var needed = 0.0;
        var terms = new List<string>();
        foreach (var item in batteries)
        {
            var battery = item.Item!.Battery!;
            if (IsKnown(item) && Gassing(battery) is { } gassing && battery is { Cells: { } cells, CapacityAh: { } capacity })
            {
                needed += Engineering.BatteryVentilation.NeededM3h(cells, capacity, gassing);
                terms.Add(Invariant($"0.05 x {cells} x {gassing:0} x {capacity:0.###} / 1000"));
            }
            else
            {
                ReportMissing(context, item, battery, Missing);
            }
        }

        var area = Quantities.Round(Engineering.BatteryVentilation.OpeningCm2(needed));
        var least = Math.Min(inlet, outlet);
        if (!Comparison.IsOver(area, least))
        {
            return;
        }

        least = Quantities.Round(least);
        if (unknown.Count > 0)
        {
            foreach (var pointer in unknown)
            {
                context.ReportMissing(pointer, Missing);
            }

            return;
        }

        context.Report(new FindingDraft
        {
            Message = Defect,
            Data = [("neededM3h", Quantities.Round(needed)), ("areaCm2", area), ("hasCm2", least)],
            Subject = Subjects.Batteries,
            Identity = ["ventilation"],
            Pointers = [.. batteries.Select(i => i.Pointer), "/cabinet"],
            Actual = Quantities.Of(least, "cm2"),
            Limit = Quantities.Of(area, "cm2"),
            UtilisationPercent = least > 0 ? 100 * area / least : null,
            Calculation =
                Invariant($"{string.Join(" + ", terms)} = {needed:0.######}; ")
                + Invariant($"{Engineering.BatteryVentilation.Cm2PerM3h:0} x {needed:0.######} = {area:0.###} > {least:0.###}"),
            Candidates = AirPathRemedies.Ventilate(context.Survey, area, batteries),
        });
    }

    private static bool IsKnown(MountedItem item) => item.Item!.Battery is { Type: not null, Cells: not null, CapacityAh: not null };

    private static double? Gassing(Battery battery) => (battery.Type, battery.Boost == true) switch
    {
        (BatteryType.Vrla, false) => Engineering.BatteryVentilation.RegulatedFloat,
        (BatteryType.Vrla, true) => Engineering.BatteryVentilation.RegulatedBoost,
        (BatteryType.Vented, false) => Engineering.BatteryVentilation.VentedFloat,
        (BatteryType.Vented, true) => Engineering.BatteryVentilation.VentedBoost,
        _ => null,
    };

    private static void ReportMissing(RuleContext context, MountedItem item, Battery battery, MissingData message)
    {
        var data = new[] { (battery.Type is null, "type"), (battery.Cells is null, "cells"), (battery.CapacityAh is null, "capacityAh") };
        foreach (var (isMissing, name) in data)
        {
            if (isMissing)
            {
                context.ReportMissing($"{item.Pointer}/battery/{name}", message);
            }
        }
    }

    // Free areas of inlet and outlet, cm2, and what is not known of them.
    private static (double InletCm2, double OutletCm2, List<string> Unknown) Openings(RackSurvey survey)
    {
        var (cabinet, cooling, path) = (survey.Cabinet.Source, survey.Description.Cooling, survey.Heat.AirPath);
        var unknown = new List<string>();
        if (cooling?.AirConditioner is not null && cabinet.SidePanels != false)
        {
            return (0, 0, unknown);
        }

        if (cabinet.SidePanels == false)
        {
            return (double.PositiveInfinity, double.PositiveInfinity, unknown);
        }

        var (front, rear) = (DoorCm2(cabinet, cabinet.FrontDoor, Pointers.FrontDoor, unknown), DoorCm2(cabinet, cabinet.RearDoor, Pointers.RearDoor, unknown));
        var inlet = (cooling?.IntakeAreaCm2 ?? 0) + (cooling?.Underfloor is null ? 0 : double.PositiveInfinity);
        var outlet = path.HasRoofFans ? double.PositiveInfinity : 0;
        if (path is { HasVent: true, HasRoofFans: false })
        {
            outlet += cabinet.Roof!.OpenAreaCm2 ?? 0;
            if (cabinet.Roof.OpenAreaCm2 is null)
            {
                unknown.Add(Pointers.RoofOpenArea);
            }
        }

        // The lower half of a door is an inlet, the upper half an outlet.
        var doors = front + rear;
        return (inlet + (doors / 2), outlet + (doors / 2), unknown);
    }

    private static double DoorCm2(Cabinet cabinet, Door? door, string pointer, List<string> unknown)
    {
        if (AirPath.LetsAirThrough(door) is not { } isOpen)
        {
            unknown.Add(pointer + "/style");
            return 0;
        }

        return !isOpen ? 0
            : door!.Style == DoorStyle.None ? double.PositiveInfinity
            : 1e4 * (door.PerforatedAreaM2 ?? AirPath.PerforatedAreaM2(cabinet)) * (door.OpenAreaPercent ?? LeastOpenPercent) / 100;
    }
}
