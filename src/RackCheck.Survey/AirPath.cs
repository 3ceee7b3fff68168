using RackCheck.Engineering;
using RackCheck.Model;

namespace RackCheck.Survey;

/// <summary>By what way a rack is rid of its heat.</summary>
public enum CoolingMode
{
    /// <summary>Not to be said without the style of a door.</summary>
    Unknown,

    /// <summary>An air conditioner of its own.</summary>
    AirConditioner,

    /// <summary>Fans in the roof, or fan trays where air can leave.</summary>
    Forced,

    /// <summary>Air from under the floor, without fans.</summary>
    Underfloor,

    /// <summary>The equipment's own fans, in through the front and out through rear or roof.</summary>
    Doors,

    /// <summary>Nothing goes through: what the surface sheds. A cabinet that is open at one end only counts as such.</summary>
    Closed,
}

/// <summary>A perforated door that the air goes through.</summary>
/// <param name="Name">What a sentence calls it.</param>
/// <param name="Pointer">Where it stands in the request.</param>
/// <param name="Door">The door.</param>
/// <param name="AreaM2">Area of its perforated face, m2.</param>
public sealed record AiredDoor(string Name, string Pointer, Door Door, double AreaM2)
{
    /// <summary>Whether its area is taken from the cabinet's size for want of one given.</summary>
    public bool AreaIsAssumed => Door.PerforatedAreaM2 is null;

    /// <summary>K of its loss, Pa/(m3/h)^2; null where its open share is not given.</summary>
    /// <param name="densityKgM3">Density of the air, kg/m3.</param>
    /// <returns>K.</returns>
    public double? LossK(double densityKgM3) => Door.OpenAreaPercent is { } open ? Openings.PlateK(open / 100, AreaM2, densityKgM3) : null;
}

/// <summary>
/// The way of the air through a rack, and what it loses there. Worked out of a description alone, so that cures can ask it of the rack as it would be.
/// </summary>
public sealed class AirPath
{
    // What frame and hinges take of a door's width. Common practice, no source.
    private const double DoorFrameMm = 100;

    private readonly Cabinet cabinet;
    private readonly Model.Cooling? cooling;
    private readonly double density;
    private readonly bool? frontOpen;
    private readonly bool? rearOpen;
    private List<string>? missing;

    /// <summary>Works the way out.</summary>
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
        FanFlowM3h = Mode == CoolingMode.Forced ? FindFanFlow() : null;
    }

    /// <summary>By what way.</summary>
    public CoolingMode Mode { get; }

    /// <summary>Whether side panels are left off, so that air goes in and out there.</summary>
    public bool AreSidesOpen => cabinet.SidePanels == false;

    /// <summary>Whether fans run in the roof.</summary>
    public bool HasRoofFans { get; }

    /// <summary>Whether fan trays run among the units.</summary>
    public bool HasTrays { get; }

    /// <summary>Whether air can come in without an opening in the floor; null where the front door is not described.</summary>
    public bool? HasEntry { get; }

    /// <summary>Whether air can leave without fans in the roof; null where the rear door is not described.</summary>
    public bool? HasExit { get; }

    /// <summary>Perforated front door, where the air comes in through it.</summary>
    public AiredDoor? Front { get; }

    /// <summary>Perforated rear door, where the air leaves through it.</summary>
    public AiredDoor? Rear { get; }

    /// <summary>What fans move at their working point, m3/h; null without fans, or where a loss is not known.</summary>
    public double? FanFlowM3h { get; }

    /// <summary>K of all losses on the way of forced air, Pa/(m3/h)^2; infinite where it is closed, null where not known.</summary>
    public double? LossK { get; private set; }

    /// <summary>Members whose absence keeps the fans' working point from being known.</summary>
    public IReadOnlyList<string> Missing => missing ?? (IReadOnlyList<string>)[];

    private bool HasVent => cabinet.Roof is { Style: RoofStyle.Vented, OpenAreaCm2: not 0 };

    private bool FrontIsInPath => !AreSidesOpen && Mode is CoolingMode.Doors or CoolingMode.Forced;

    private bool RearIsInPath => !AreSidesOpen && (Mode is CoolingMode.Doors or CoolingMode.Underfloor || (Mode == CoolingMode.Forced && !HasRoofFans));

    /// <summary>Whether a door lets air through: perforated with something open, or left off; null where it is not described.</summary>
    /// <param name="door">The door.</param>
    /// <returns>Whether it does.</returns>
    public static bool? LetsAirThrough(Door? door) => door is null ? null : door switch
    {
        { Style: DoorStyle.None } => true,
        { Style: DoorStyle.Perforated } => door is not ({ OpenAreaPercent: <= 0 } or { PerforatedAreaM2: <= 0 }),
        _ => false,
    };

    /// <summary>What is moved with other fans on this way, m3/h; null where a loss is not known.</summary>
    /// <param name="fans">The fans.</param>
    /// <returns>Flow at their working point, m3/h.</returns>
    public double? FlowOf(ReadOnlySpan<FanGroup> fans)
    {
        if (LossK is { } k)
        {
            return double.IsInfinity(k) ? 0 : Fans.WorkingPointOf(fans, k, density).FlowM3h;
        }

        // Fans whose curve is not known are taken to move the same on any way.
        foreach (var group in fans)
        {
            if (!group.Curve.IsFixed)
            {
                return null;
            }
        }

        return Fans.FlowM3h(fans, 0);
    }

    /// <summary>The fans of the description, roof before trays, set by set.</summary>
    /// <returns>One group a set.</returns>
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
    /// <param name="set">The set.</param>
    /// <returns>Its points, else the line from its greatest pressure, else its installed flow.</returns>
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

    // Trays that cannot blow anything out only stir the air of a closed cabinet.
    private CoolingMode FindMode() =>
        cooling?.AirConditioner is not null ? CoolingMode.AirConditioner
        : HasRoofFans || (HasTrays && HasExit != false) ? CoolingMode.Forced
        : cooling?.Underfloor is not null ? CoolingMode.Underfloor
        : HasEntry == false || HasExit == false ? CoolingMode.Closed
        : HasEntry is null || HasExit is null ? CoolingMode.Unknown
        : CoolingMode.Doors;

    private AiredDoor? Aired(string name, string pointer, Door door) => door.Style != DoorStyle.Perforated ? null
        : new AiredDoor(name, pointer, door, door.PerforatedAreaM2 ?? PerforatedAreaM2(cabinet));

    /// <summary>Area of a perforated door that is not given: <c>(width - 100) x 44.45 U</c>.</summary>
    /// <param name="cabinet">The cabinet.</param>
    /// <returns>Area, m2.</returns>
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
            true => Parallel(DoorK(Front), intake),
            _ when intake is not null => intake,
            null => AddMissing(Pointers.FrontDoor + "/style"),
            _ when cooling.IntakeAreaCm2 is null => AddMissing(Pointers.IntakeArea),
            _ => double.PositiveInfinity,
        };
    }

    private double? ExitK()
    {
        if (AreSidesOpen || HasRoofFans)
        {
            return 0;
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

    // Two openings side by side: their flows add at the same loss. One whose size is not known is not counted.
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
