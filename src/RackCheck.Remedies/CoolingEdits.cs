using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey;

namespace RackCheck.Remedies;

/// <summary>Changes to doors, fans and air conditioners, with the earthing that they need.</summary>
internal static class CoolingEdits
{
    /// <summary>Open share of usual perforated doors, percent; common practice, no source.</summary>
    public const double UsualOpenPercent = 64;

    /// <summary>Maximum open share of perforated doors on the market, percent; common practice, no source.</summary>
    public const double MostOpenPercent = 80;

    // A fan of a usual fan tray for cabinets: free flow and maximum pressure. Common practice, no source.
    internal const double FanFreeM3h = 500;
    private const double FanGreatestPa = 80;
    private const int MostFans = 100;
    private const int MostSets = 16;

    /// <summary>Number of fans of a tray that only stirs the air; common practice, no source.</summary>
    public const int StirringFans = 2;

    /// <summary>Free flow of such a fan, m3/h.</summary>
    public const double StirringM3h = 160;

    // Design pressure drops of an intake and of its filter mat before it is changed, Pa, and the step of its area, cm2. Common practice, no source.
    private const double IntakeLossPa = 10;
    private const double MatLossPa = 30;
    private const double IntakeStepCm2 = 100;

    private const double CapacityStepW = 100;
    private const double MostCapacityW = 100_000;

    /// <summary>Perforated front and rear doors; doors that are open enough stay.</summary>
    public static RackDescription WithOpenDoors(this RackDescription description) => description.EditCabinet(c => c with
    {
        FrontDoor = Perforated(c.FrontDoor, UsualOpenPercent),
        RearDoor = Perforated(c.RearDoor, UsualOpenPercent),
    });

    /// <summary>A perforated front door, and a rear door without openings.</summary>
    public static RackDescription WithFrontIntake(this RackDescription description) =>
        description.WithSolidRear().EditCabinet(c => c with { FrontDoor = Perforated(c.FrontDoor, UsualOpenPercent) });

    /// <summary>A rear door without openings.</summary>
    public static RackDescription WithSolidRear(this RackDescription description) => description.EditCabinet(c => c with { RearDoor = Solid(c.RearDoor) });

    /// <summary>A fan tray that stirs the air, in a rack without one.</summary>
    public static RackDescription WithStirringTray(this RackDescription description) => description.EditCooling(c => c with
    {
        FanTrays = [new FanSet { Count = StirringFans, FreeFlowM3h = StirringM3h }],
    });

    /// <summary>A door with at least this open share.</summary>
    public static Door? Perforated(Door? door, double openPercent) => door switch
    {
        { Style: DoorStyle.None } => door,
        { Style: DoorStyle.Perforated, OpenAreaPercent: { } open } when open >= openPercent && door.PerforatedAreaM2 is not <= 0 => door,
        _ => (door ?? new Door { Style = DoorStyle.Perforated }) with
        {
            Style = DoorStyle.Perforated,
            OpenAreaPercent = Math.Max(openPercent, door?.OpenAreaPercent ?? 0),
            PerforatedAreaM2 = door?.PerforatedAreaM2 is > 0 and { } area ? area : null,
        },
    };

    /// <summary>
    /// The cabinet closed on all sides, without airflow from the room, and rated for a degree of protection if one is required.
    /// </summary>
    public static RackDescription Closed(this RackDescription description)
    {
        var before = description.Cabinet!;
        var required = description.Site?.RequiredIp;
        var after = description.EditCabinet(c => c with
        {
            FrontDoor = Solid(c.FrontDoor),
            RearDoor = Solid(c.RearDoor),
            SidePanels = c.SidePanels == false ? true : c.SidePanels,
            Roof = c.Roof?.Style == RoofStyle.Vented || description.Cooling?.RoofFans is not null ? new Roof { Style = RoofStyle.Solid } : c.Roof,
            IpCode = required is null || (c.IpCode is { } code && IpCodes.Satisfies(code, required)) ? c.IpCode : required,
        });
        after = after with { Cooling = after.Cooling is { } cooling ? cooling with { RoofFans = null, IntakeAreaCm2 = null, Underfloor = null } : null };
        return before.SidePanels == false ? after.Joined(BondedPart.SidePanels) : after;
    }

    /// <summary>Roof fans that deliver a flow with one fan failed; null if no number is sufficient.</summary>
    /// <param name="description">The rack, with its openings after the change.</param>
    /// <param name="neededM3h">The flow, m3/h.</param>
    /// <param name="densityKgM3">Density of the air, kg/m3.</param>
    public static (int Count, double FlowM3h, RackDescription After)? WithRoofFans(this RackDescription description, double neededM3h, double densityKgM3)
    {
        var sets = description.Cooling?.RoofFans ?? [];
        if (sets.Count >= MostSets)
        {
            return null;
        }

        // New fans have openings of their own in the roof.
        var isNew = !sets.Any(f => f.Count > 0);
        var after = description.EditCabinet(c => c with
        {
            Roof = (c.Roof ?? new Roof()) with { Style = RoofStyle.Vented, OpenAreaCm2 = isNew ? null : c.Roof?.OpenAreaCm2 },
        });
        return Least(
            neededM3h, densityKgM3, count => (isNew ? after.Joined(BondedPart.Roof) : after).EditCooling(c => c with { RoofFans = [.. sets, Set(count)] }));
    }

    /// <summary>Additional fan trays; null if no number is sufficient.</summary>
    public static (int Count, double FlowM3h, RackDescription After)? WithTrays(this RackDescription description, double neededM3h, double densityKgM3)
    {
        var sets = description.Cooling?.FanTrays ?? [];
        return sets.Count >= MostSets
            ? null
            : Least(neededM3h, densityKgM3, count => description.EditCooling(c => c with { FanTrays = [.. sets, Set(count)] }));
    }

    /// <summary>A solid front door, and an intake with filters for a flow.</summary>
    public static RackDescription WithFilteredIntake(this RackDescription description, double neededM3h, double densityKgM3)
    {
        var openM2 = neededM3h / (3600 * Openings.DischargeCoefficient) * Math.Sqrt(densityKgM3 / (2 * IntakeLossPa));
        var matM2 = neededM3h / FilterMats.RatedM3h(1) * FilterMats.ChangePa / MatLossPa;
        var most = IntakeStepCm2 * Math.Floor(1e4 * AirPath.PerforatedAreaM2(description.Cabinet!) / IntakeStepCm2);
        var areaCm2 = Math.Clamp(IntakeStepCm2 * Math.Ceiling(1e4 * Math.Max(openM2, matM2) / IntakeStepCm2), IntakeStepCm2, Math.Max(most, IntakeStepCm2));
        return description.Closed().EditCooling(c => c with
        {
            IntakeAreaCm2 = Math.Max(areaCm2, description.Cooling?.IntakeAreaCm2 ?? 0),
            RoofFans = description.Cooling?.RoofFans,
            Filters = true,
            Filter = null,
        });
    }

    /// <summary>A closed cabinet with an air conditioner that is sufficient at the site; null if the largest is not.</summary>
    public static (AirConditioner Cooler, RackDescription After)? WithCooler(this RackDescription description, HeatSurvey heat, double setpointC)
    {
        var closed = description.Closed();
        var old = description.Cooling?.AirConditioner;
        var style = old?.Style is { } own && (own != AirConditionerStyle.Split || description.Site?.OutsideWall == true) ? own : AirConditionerStyle.Wall;
        return Capacity(heat.CoolerNeededW(HeatSurvey.SurfaceOf(closed.Cabinet!), setpointC), AirConditioners.UsualSetpointC, heat.AmbientC) is not { } capacity
            ? null
            : new AirConditioner { CapacityW = capacity, Style = style, SetpointC = setpointC, RatedAmbientC = AirConditioners.UsualSetpointC } is var cooler
                ? (cooler, closed.EditCooling(c => c with { AirConditioner = cooler }))
                : null;
    }

    /// <summary>The smallest capacity on the market that is sufficient after derating at the site; null if none is.</summary>
    public static double? Capacity(double neededW, double ratedAmbientC, double ambientC)
    {
        var share = AirConditioners.LeftW(1, ratedAmbientC, ambientC);
        var capacity = share > 0 ? CapacityStepW * Math.Max(1, Math.Ceiling(neededW / share / CapacityStepW)) : double.PositiveInfinity;
        return capacity <= MostCapacityW ? capacity : null;
    }

    /// <summary>Changes the cooling data; creates them if they are absent.</summary>
    public static RackDescription EditCooling(this RackDescription description, Func<Model.Cooling, Model.Cooling> change) =>
        description with { Cooling = change(description.Cooling ?? new Model.Cooling()) };

    private static FanSet Set(int count) => new() { Count = count, FreeFlowM3h = FanFreeM3h, MaxPressurePa = FanGreatestPa };

    private static (int, double, RackDescription)? Least(double neededM3h, double densityKgM3, Func<int, RackDescription> with)
    {
        // N+1: one more than needed. If two hundred fans are not sufficient, a few more are not either.
        for (var count = 1; count < MostFans; count++)
        {
            if (new AirPath(with(count), densityKgM3).FanFlowM3h is not { } flow)
            {
                return null;
            }

            if (flow >= neededM3h)
            {
                var after = with(count + 1);
                return (count + 1, Quantities.Round(new AirPath(after, densityKgM3).FanFlowM3h!.Value), after);
            }
        }

        return null;
    }

    private static Door Solid(Door? door) => door switch
    {
        { Style: DoorStyle.Solid or DoorStyle.Glazed } => door,
        { Style: DoorStyle.None } => new Door { Style = DoorStyle.Solid, Bonded = true },
        _ => (door ?? new Door { Style = DoorStyle.Solid }) with { Style = DoorStyle.Solid, OpenAreaPercent = null, PerforatedAreaM2 = null },
    };

    // A part that is added to the cabinet is bonded, if the list of bonded parts is given, and gets a terminal on the bar.
    private static RackDescription Joined(this RackDescription description, BondedPart part)
    {
        var after = description.Earthing?.Bonded is { } list && !list.Contains(part)
            ? description.EditEarthing(e => e with { Bonded = [.. list, part] })
            : description;
        return after.EditCabinet(c =>
            c.EarthBar?.Terminals is { } terminals and < 500 ? c with { EarthBar = c.EarthBar with { Terminals = terminals + 1 } } : c);
    }
}
