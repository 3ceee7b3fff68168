using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Assumed;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Survey;

/// <summary>Lists the values on heat and air that the description does not give.</summary>
internal sealed class HeatAssumptions(HeatSurvey heat, RackDescription description, List<AssumedValue> assumptions)
{
    private const string FilterPointer = "/cooling/filter";

    /// <summary>The degree of protection of openings, and the air conditioner.</summary>
    public void Equipment()
    {
        Protection();
        Cooler();
    }

    /// <summary>The room, wherever a limit, the heat or a dew point is compared with it.</summary>
    public void Room()
    {
        var isUsed = heat.IsJudged || heat.LeastInletItem is not null || heat.DewPointC is not null;
        if (isUsed && description.Site?.AmbientMaxC is null)
        {
            Assume(assumptions, Pointers.Ambient, heat.AmbientC, "C", "the warmest ordinary room; common practice, no source");
        }

        if (description.Site?.HumidityMaxPercent is null && heat.IsJudged)
        {
            Assume(assumptions, Pointers.Humidity, 0, "%", "default: density of dry air");
        }

        if (description.Site?.AltitudeM is null && (heat.IsJudged || heat.LeastInletItem is not null))
        {
            Assume(assumptions, Pointers.Altitude, heat.AltitudeM, "m", "default: sea level; common practice, no source");
        }
    }

    private void Protection()
    {
        if (description is { Site.RequiredIp: not null, Cabinet: { IpCode: null } cabinet }
            && (cabinet.FrontDoor?.Style == DoorStyle.Perforated || cabinet.RearDoor?.Style == DoorStyle.Perforated || cabinet.Roof?.Style == RoofStyle.Vented))
        {
            Assume(assumptions, Pointers.IpCode, "IP20", null, "usual for a perforated door or an open vent; common practice, no source");
        }
    }

    /// <summary>The temperature that PDUs in the exhaust air bear.</summary>
    public void Pdus()
    {
        for (var i = 0; i < description.Pdus?.Count; i++)
        {
            if (description.Pdus[i] is { MaxAmbientC: null } pdu && ExhaustAir.Reaches(pdu))
            {
                Assume(assumptions, Invariant($"{Pointers.Pdu[i]}/maxAmbientC"), ExhaustAir.UsualPduC, "C", "usual for rack PDUs; common practice, no source");
            }
        }
    }

    /// <summary>The airflow path, or the surface of a closed cabinet.</summary>
    /// <param name="items">The items.</param>
    public void Path(MountedItem[] items)
    {
        var (cabinet, path) = (description.Cabinet!, heat.AirPath);
        if (heat.NeedsSurface)
        {
            Surface(cabinet);
        }
        else if (description.Cooling?.RiseK is null && heat.AllowedRiseK is { } rise)
        {
            Assume(
                assumptions, Pointers.RiseK, rise, "K",
                "default for air that the rack's own fans, the floor or natural draught move; common practice, no source");
        }

        if (path.Mode == CoolingMode.Doors && Array.Exists(items, HeatSurvey.HasFittingFans))
        {
            Assume(
                assumptions, "/items", "not known", null,
                Invariant($"items without a stated airflow have fans that suit their heat, {HeatSurvey.UsualRiseK:0} K; common practice, no source"));
        }

        foreach (var door in new[] { path.Front, path.Rear })
        {
            if (door is { AreaIsAssumed: true, Door.OpenAreaPercent: not null })
            {
                Assume(
                    assumptions, door.Pointer + "/perforatedAreaM2", Quantities.Round(door.AreaM2), "m2",
                    "width less 100 mm, times the height of the mounting space; common practice, no source");
            }
        }

        if (path.Mode == CoolingMode.Forced)
        {
            Curves(description.Cooling!.RoofFans, Pointers.RoofFans);
            Curves(description.Cooling.FanTrays, Pointers.FanTrays);
            if (path.Mat is { } mat)
            {
                Mat(mat);
            }
        }
    }

    private void Mat(FilterMat mat)
    {
        if (mat.AssumedAreaM2 is { } area)
        {
            Assume(assumptions, FilterPointer + "/areaCm2", Quantities.Round(1e4 * area), "cm2", "the mat covers the opening; common practice, no source");
        }

        if (mat.CleanPa is { } clean)
        {
            Assume(
                assumptions, FilterPointer + "/lossPa", mat.LossPa, "Pa",
                Invariant($"at {FilterMats.FaceVelocityMS} m/s before the mat is changed, {clean:0} Pa when clean; common practice, no source"));
        }
    }

    private void Surface(Cabinet cabinet)
    {
        if (cabinet.Placement is null)
        {
            Assume(assumptions, Pointers.Placement, "free", null, "default: free-standing");
        }

        if (cabinet.Roof?.Style is null && heat.AirPath.Mode == CoolingMode.Closed)
        {
            Assume(assumptions, Pointers.RoofStyle, "solid", null, "default: closed roof");
        }
    }

    private void Cooler()
    {
        if (description.Cooling?.AirConditioner is { } cooler)
        {
            if (cooler.SetpointC is null)
            {
                Assume(assumptions, Pointers.Setpoint, heat.SetpointC, "C", "usual for cabinets; common practice, no source");
            }

            if (cooler.RatedAmbientC is null)
            {
                Assume(
                    assumptions, Pointers.RatedAmbient, heat.RatedAmbientC, "C",
                    "capacities are usually rated at 35 C inside and outside; value from memory of EN 14511");
            }
        }
    }

    private void Curves(IReadOnlyList<FanSet>? sets, string pointer)
    {
        for (var i = 0; i < sets?.Count; i++)
        {
            if (sets[i] is { Count: > 0, MaxPressurePa: null, Curve: null or { Count: 0 } } set)
            {
                Assume(
                    assumptions, Invariant($"{pointer}/{i}/maxPressurePa"), "not known", null,
                    Invariant($"a fan without a curve delivers {FanCurve.InstalledSharePercent:0} % of its free flow of {set.FreeFlowM3h:0.###} m3/h once ")
                        + "installed; common practice, no source");
            }
        }
    }

    // Other parts of the survey can assume the same member; it is recorded once.
    private static void Assume(List<AssumedValue> assumptions, string pointer, Scalar value, string? unit, string basis)
    {
        if (!assumptions.Exists(a => a.Pointer == pointer))
        {
            assumptions.Add(new AssumedValue { Pointer = pointer, Value = value, Unit = unit, Basis = basis });
        }
    }
}
