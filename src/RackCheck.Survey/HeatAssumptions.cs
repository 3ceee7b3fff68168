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
            Assume(assumptions, Pointers.Ambient, heat.AmbientC, "C", Bases.WarmRoom);
        }

        if (description.Site?.HumidityMaxPercent is null && heat.IsJudged)
        {
            Assume(assumptions, Pointers.Humidity, 0, "%", Bases.DryAir);
        }

        if (description.Site?.AltitudeM is null && (heat.IsJudged || heat.LeastInletItem is not null))
        {
            Assume(assumptions, Pointers.Altitude, heat.AltitudeM, "m", Bases.SeaLevel);
        }
    }

    private void Protection()
    {
        if (description is { Site.RequiredIp: not null, Cabinet: { IpCode: null } cabinet }
            && (cabinet.FrontDoor?.Style == DoorStyle.Perforated || cabinet.RearDoor?.Style == DoorStyle.Perforated || cabinet.Roof?.Style == RoofStyle.Vented))
        {
            Assume(assumptions, Pointers.IpCode, "IP20", null, Bases.PerforatedIp);
        }
    }

    /// <summary>The temperature that PDUs in the exhaust air bear.</summary>
    public void Pdus()
    {
        for (var i = 0; i < description.Pdus?.Count; i++)
        {
            if (description.Pdus[i] is { MaxAmbientC: null } pdu && ExhaustAir.Reaches(pdu))
            {
                Assume(assumptions, Invariant($"{Pointers.Pdu[i]}/maxAmbientC"), ExhaustAir.UsualPduC, "C", Bases.PduTemperature);
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
                Bases.FanRise);
        }

        if (path.Mode == CoolingMode.Doors && Array.Exists(items, HeatSurvey.HasFittingFans))
        {
            Assume(assumptions, AssumedValue.Worded("/items", AssumedTexts.NotKnown, Bases.FittingFans(HeatSurvey.UsualRiseK)));
        }

        foreach (var door in new[] { path.Front, path.Rear })
        {
            if (door is { AreaIsAssumed: true, Door.OpenAreaPercent: not null })
            {
                Assume(
                    assumptions, door.Pointer + "/perforatedAreaM2", Quantities.Round(door.AreaM2), "m2",
                    Bases.DoorArea);
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
            Assume(assumptions, FilterPointer + "/areaCm2", Quantities.Round(1e4 * area), "cm2", Bases.MatArea);
        }

        if (mat.CleanPa is { } clean)
        {
            Assume(
                assumptions, FilterPointer + "/lossPa", mat.LossPa, "Pa",
                Bases.FilterLoss(FilterMats.FaceVelocityMS, clean));
        }
    }

    private void Surface(Cabinet cabinet)
    {
        if (cabinet.Placement is null)
        {
            Assume(assumptions, Pointers.Placement, "free", null, Bases.FreeStanding);
        }

        if (cabinet.Roof?.Style is null && heat.AirPath.Mode == CoolingMode.Closed)
        {
            Assume(assumptions, Pointers.RoofStyle, "solid", null, Bases.ClosedRoof);
        }
    }

    private void Cooler()
    {
        if (description.Cooling?.AirConditioner is { } cooler)
        {
            if (cooler.SetpointC is null)
            {
                Assume(assumptions, Pointers.Setpoint, heat.SetpointC, "C", Bases.CoolerSetpoint);
            }

            if (cooler.RatedAmbientC is null)
            {
                Assume(
                    assumptions, Pointers.RatedAmbient, heat.RatedAmbientC, "C",
                    Bases.CoolerRating);
            }
        }
    }

    private void Curves(IReadOnlyList<FanSet>? sets, string pointer)
    {
        for (var i = 0; i < sets?.Count; i++)
        {
            if (sets[i] is { Count: > 0, MaxPressurePa: null, Curve: null or { Count: 0 } } set)
            {
                Assume(assumptions, AssumedValue.Worded(
                    Invariant($"{pointer}/{i}/maxPressurePa"), AssumedTexts.NotKnown,
                    Bases.InstalledFlow(FanCurve.InstalledSharePercent, set.FreeFlowM3h)));
            }
        }
    }

    private static void Assume(List<AssumedValue> assumptions, string pointer, Scalar value, string? unit, WordedText basis) =>
        Assume(assumptions, new AssumedValue { Pointer = pointer, Value = value, Unit = unit, Basis = basis });

    // Other parts of the survey can assume the same member; it is recorded once.
    private static void Assume(List<AssumedValue> assumptions, AssumedValue assumed)
    {
        if (!assumptions.Exists(a => a.Pointer == assumed.Pointer))
        {
            assumptions.Add(assumed);
        }
    }
}
