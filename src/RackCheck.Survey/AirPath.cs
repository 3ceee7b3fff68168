using RackCheck.Engineering;
using RackCheck.Model;

namespace RackCheck.Survey;

/// <summary>How the heat leaves a rack.</summary>
public enum CoolingMode
{
    /// <summary>Unknown: the style of a door is missing.</summary>
    Unknown,

    /// <summary>Air conditioner of the cabinet.</summary>
    AirConditioner,

    /// <summary>Fans in the roof, or fan trays with an air outlet.</summary>
    Forced,

    /// <summary>Supply air through the floor, without fans.</summary>
    Underfloor,

    /// <summary>The fans of the equipment: in through the front, out through the rear, whether or not roof fans draw room air past it.</summary>
    Doors,

    /// <summary>Natural draught: in through the front or an intake, out through a vented roof without fans; the rear is closed.</summary>
    Draught,

    /// <summary>Closed: only the surface dissipates heat. A cabinet that is open at one end only counts as closed.</summary>
    Closed,
}

/// <summary>A perforated door in the airflow path.</summary>
/// <param name="Name">Name of the door in a sentence.</param>
/// <param name="Pointer">JSON Pointer of the door in the request.</param>
/// <param name="AreaM2">Perforated area, m2.</param>
public sealed record AiredDoor(string Name, string Pointer, Door Door, double AreaM2)
{
    /// <summary>Whether the area is calculated from the cabinet size because none is given.</summary>
    public bool AreaIsAssumed => Door.PerforatedAreaM2 is null;

    /// <summary>Loss coefficient K, Pa/(m3/h)^2; null if the open share is missing.</summary>
    /// <param name="densityKgM3">Density of the air, kg/m3.</param>
    public double? LossK(double densityKgM3) => Door.OpenAreaPercent is { } open ? Openings.PlateK(open / 100, AreaM2, densityKgM3) : null;
}

/// <summary>
/// The airflow path through a rack and its pressure losses. It is calculated from a description alone, so that remedies can test a changed rack.
/// </summary>
public sealed class AirPath
{
    // Width of the door frame and hinges. Common practice, no source.
    private const double DoorFrameMm = 100;

    private readonly Cabinet cabinet;
    private readonly Model.Cooling? cooling;
    private readonly double density;
    private readonly bool? frontOpen;
    private readonly bool? rearOpen;
    private List<string>? missing;

    /// <summary>Calculates the airflow path.</summary>
    /// <param name="description">A description with a cabinet.</param>
    /// <param name="densityKgM3">Density of the site's air, kg/m3.</param>
    public AirPath(RackDescription description, double densityKgM3)
    {
        (cabinet, cooling, density) = (description.Cabinet!, description.Cooling, densityKgM3);
        (frontOpen, rearOpen) = (LetsAirThrough(cabinet.FrontDoor), LetsAirThrough(cabinet.RearDoor));
        HasRoofFans = Counts(cooling?.RoofFans);
        HasTrays = Counts(cooling?.FanTrays);
        HasEntry = AreSidesOpen || frontOpen == true || cooling?.IntakeAreaCm2 > 0 ? true : frontOpen;
        HasExit = AreSidesOpen || rearOpen == true || HasVent ? true : rearOpen;
        Mode = FindMode();
        Front = FrontIsInPath && frontOpen == true ? Aired("front door", Pointers.FrontDoor, cabinet.FrontDoor!) : null;
        Rear = RearIsInPath && rearOpen == true ? Aired("rear door", Pointers.RearDoor, cabinet.RearDoor!) : null;
        Mat = Mode == CoolingMode.Forced ? FindMat() : null;
        FanFlowM3h = Mode == CoolingMode.Forced ? FindFanFlow() : null;
    }

    /// <summary>The kind of airflow path.</summary>
    public CoolingMode Mode { get; }

    /// <summary>Whether side panels are removed, so that air flows through the sides.</summary>
    public bool AreSidesOpen => cabinet.SidePanels == false;

    /// <summary>Whether the roof has fans.</summary>
    public bool HasRoofFans { get; }

    /// <summary>Whether fan trays are mounted in the rack.</summary>
    public bool HasTrays { get; }

    /// <summary>Whether air can enter without an opening in the floor; null if the front door is missing.</summary>
    public bool? HasEntry { get; }

    /// <summary>Whether air can leave without roof fans; null if the rear door is missing.</summary>
    public bool? HasExit { get; }

    /// <summary>Perforated front door, if it is in the airflow path.</summary>
    public AiredDoor? Front { get; }

    /// <summary>Perforated rear door, if it is in the airflow path.</summary>
    public AiredDoor? Rear { get; }

    /// <summary>Airflow of the fans at their operating point, m3/h; null without fans or if a loss is unknown.</summary>
    public double? FanFlowM3h { get; }

    /// <summary>The most that the fans can deliver, on an open path, m3/h; null without fans.</summary>
    public double? MostFanFlowM3h => Mode == CoolingMode.Forced ? Fans.FlowM3h(FanGroups(), 0) : null;

    /// <summary>The filter mat in the forced airflow path; null without one.</summary>
    public FilterMat? Mat { get; }

    /// <summary>
    /// Total loss coefficient K of the forced airflow path, without the filter mat, Pa/(m3/h)^2; infinite if the path is closed, null if it is unknown.
    /// </summary>
    public double? LossK { get; private set; }

    /// <summary>Missing members that are needed for the operating point of the fans.</summary>
    public IReadOnlyList<string> Missing => missing ?? (IReadOnlyList<string>)[];

    /// <summary>Whether the roof is vented.</summary>
    public bool HasVent => cabinet.Roof is { Style: RoofStyle.Vented, OpenAreaCm2: null or > Comparison.Tolerance };

    private bool FrontIsInPath => !AreSidesOpen && Mode is CoolingMode.Doors or CoolingMode.Forced or CoolingMode.Draught;

    private bool RearIsInPath => !AreSidesOpen && (Mode is CoolingMode.Doors or CoolingMode.Underfloor || (Mode == CoolingMode.Forced && !HasRoofFans));

    /// <summary>Whether air flows through a door: it is perforated with an open area, or removed; null if the door is missing.</summary>
    public static bool? LetsAirThrough(Door? door) => door is null ? null : door switch
    {
        { Style: DoorStyle.None } => true,
        { Style: DoorStyle.Perforated } => door is not ({ OpenAreaPercent: <= 0 } or { PerforatedAreaM2: <= 0 }),
        _ => false,
    };

    /// <summary>Airflow of the fans while the filter mat is clean, m3/h; null without a mat or if a loss is unknown.</summary>
    public double? CleanFlowM3h => Mat?.CleanLinear is { } linear ? FlowOf(FanGroups(), linear) : null;

    /// <summary>Airflow with other fans on this path, before the filter mat is changed, m3/h; null if a loss is unknown.</summary>
    /// <returns>Airflow at the operating point, m3/h.</returns>
    public double? FlowOf(ReadOnlySpan<FanGroup> fans) => FlowOf(fans, Mat?.Linear ?? 0);

    private double? FlowOf(ReadOnlySpan<FanGroup> fans, double linear)
    {
        if (LossK is { } k)
        {
            return double.IsInfinity(k) ? 0 : Fans.WorkingPointOf(fans, k, density, linear).FlowM3h;
        }

        // A fan without a curve is assumed to have the same airflow on any path.
        foreach (var group in fans)
        {
            if (!group.Curve.IsFixed)
            {
                return null;
            }
        }

        return Fans.FlowM3h(fans, 0);
    }

    /// <summary>The fans of the description, set by set: roof first, then trays.</summary>
    /// <returns>One group for each set.</returns>
    public FanGroup[] FanGroups()
    {
        var roof = cooling?.RoofFans ?? [];
        var trays = cooling?.FanTrays ?? [];
        var groups = new FanGroup[roof.Count + trays.Count];
        for (var i = 0; i < groups.Length; i++)
        {
            var set = i < roof.Count ? roof[i] : trays[i - roof.Count];
            groups[i] = new FanGroup(CurveOf(set), set.Count);
        }

        return groups;
    }

    /// <summary>The curve of one fan of a set.</summary>
    /// <returns>The given points, else the line from the maximum pressure, else the installed airflow.</returns>
    public static FanCurve CurveOf(FanSet set) => set switch
    {
        { Curve: { Count: > 0 } points } => FanCurve.Of([.. points.Select(p => new CurvePoint(p.M3h, p.Pa))]),
        { MaxPressurePa: { } greatest } => FanCurve.Straight(set.FreeFlowM3h, greatest),
        _ => FanCurve.Installed(set.FreeFlowM3h),
    };

    private static bool Counts(IReadOnlyList<FanSet>? sets)
    {
        for (var i = 0; i < sets?.Count; i++)
        {
            if (sets[i].Count > 0)
            {
                return true;
            }
        }

        return false;
    }

    // Trays without an air outlet only stir the air in a closed cabinet. Roof fans above two open doors draw room air past the equipment: its own fans
    // still set its airflow.
    private CoolingMode FindMode() =>
        cooling?.AirConditioner is not null ? CoolingMode.AirConditioner
        : HasRoofFans && !HasTrays && frontOpen == true && rearOpen == true ? CoolingMode.Doors
        : HasRoofFans || (HasTrays && HasExit != false) ? CoolingMode.Forced
        : cooling?.Underfloor is not null ? CoolingMode.Underfloor
        : HasEntry == false || HasExit == false ? CoolingMode.Closed
        : HasEntry is null || HasExit is null ? CoolingMode.Unknown
        : !AreSidesOpen && rearOpen == false ? CoolingMode.Draught
        : CoolingMode.Doors;

    // A mat covers the intake, else the perforated front door. Air that enters through an open door beside the intake passes no mat.
    private FilterMat? FindMat()
    {
        var intakeM2 = cooling!.IntakeAreaCm2 is { } area and > 0 ? area / 1e4 : (double?)null;
        var passesNone = AreSidesOpen || cooling.Underfloor is not null || (frontOpen == true && (intakeM2 is not null || Front is null));
        return passesNone ? null : FilterMat.Of(cooling, frontOpen == true ? Front!.AreaM2 : intakeM2);
    }

    private AiredDoor? Aired(string name, string pointer, Door door) => door.Style != DoorStyle.Perforated ? null
        : new AiredDoor(name, pointer, door, door.PerforatedAreaM2 ?? PerforatedAreaM2(cabinet));

    /// <summary>Assumed area of a perforated door: <c>(width - 100) x 44.45 U</c>.</summary>
    public static double PerforatedAreaM2(Cabinet cabinet) => (cabinet.WidthMm!.Value - DoorFrameMm) * RackGeometry.ApertureMm(cabinet.HeightU!.Value) / 1e6;

    private double? FindFanFlow()
    {
        var (entry, exit) = (EntryK(), ExitK());
        LossK = entry + exit;
        var flow = FlowOf(FanGroups());
        missing = flow is null ? missing : null;
        return flow;
    }

    private double? EntryK()
    {
        if (AreSidesOpen || cooling!.Underfloor is not null)
        {
            return 0;
        }

        double? intake = cooling.IntakeAreaCm2 is { } area and > 0 ? Openings.OpeningK(area / 1e4, density) : null;
        return frontOpen switch
        {
            true => FilterMat.IsFitted(cooling) ? DoorK(Front) : Parallel(DoorK(Front), intake),
            _ when intake is not null => intake,
            null => AddMissing(Pointers.FrontDoor + "/style"),
            _ when cooling.IntakeAreaCm2 is null => AddMissing(Pointers.IntakeArea),
            _ => double.PositiveInfinity,
        };
    }

    private double? ExitK()
    {
        if (AreSidesOpen)
        {
            return 0;
        }

        if (HasRoofFans)
        {
            return cabinet.Roof?.OpenAreaCm2 is { } grille and > Comparison.Tolerance ? Openings.OpeningK(grille / 1e4, density) : 0;
        }

        double? vent = HasVent && cabinet.Roof!.OpenAreaCm2 is { } area ? Openings.OpeningK(area / 1e4, density) : null;
        return rearOpen switch
        {
            true => Parallel(DoorK(Rear), vent),
            _ when vent is not null => vent,
            _ when HasVent => AddMissing(Pointers.RoofOpenArea),
            null => AddMissing(Pointers.RearDoor + "/style"),
            _ => double.PositiveInfinity,
        };
    }

    private double? DoorK(AiredDoor? door) => door is null ? 0 : door.LossK(density) ?? AddMissing(door.Pointer + "/openAreaPercent");

    // Two parallel openings: at the same pressure drop the flows add up. An opening of unknown size is not counted.
    private static double? Parallel(double? one, double? other) =>
        one is not { } first || other is not { } second ? one
        : first == 0 || second == 0 ? 0
        : Math.Pow(1 / ((1 / Math.Sqrt(first)) + (1 / Math.Sqrt(second))), 2);

    private double? AddMissing(string pointer)
    {
        (missing ??= []).Add(pointer);
        return null;
    }
}
