using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Survey;

/// <summary>The heat of a rack, its airflow path, and the airflow and surface available for cooling.</summary>
public sealed class HeatSurvey
{
    /// <summary>Default maximum room temperature, C.</summary>
    public const double UsualAmbientC = 25;

    /// <summary>Default temperature rise of the air through a rack, K.</summary>
    public const double UsualRiseK = 10;

    private readonly RackDescription description;
    private readonly List<MountedItem> unknown = [];

    internal HeatSurvey(RackDescription description, MountedItem[] items, List<Assumption> assumptions)
    {
        this.description = description;
        var site = description.Site;
        AmbientC = site?.AmbientMaxC ?? UsualAmbientC;
        AltitudeM = site?.AltitudeM ?? 0;
        AllowedRiseK = description.Cooling?.RiseK ?? UsualRiseK;
        SetpointC = description.Cooling?.AirConditioner?.SetpointC ?? AirConditioners.UsualSetpointC;
        RatedAmbientC = description.Cooling?.AirConditioner?.RatedAmbientC ?? AirConditioners.UsualSetpointC;
        IsDescribed = description.Cooling is not null;
        Take(items);
        KnownW = Quantities.Round(KnownW);
        OwnFlowM3h = Quantities.Round(OwnFlowM3h);
        AssumeProtection(assumptions);
        AssumeCooler(assumptions);
        if (!IsDescribed && LeastInletItem is null)
        {
            AirPath = new AirPath(description, Fans.CurveDensityKgM3);
            return;
        }

        var humidity = site?.HumidityMaxPercent is { } percent && Air.IsWithinMagnus(AmbientC) ? percent : (double?)null;
        DewPointC = humidity is { } damp ? Air.DewPointC(AmbientC, damp) : null;

        // Rounded to four digits, so that a manual calculation gives the same result.
        DensityKgM3 = Math.Round(Air.DensityKgM3(AmbientC, AltitudeM, humidity), 4, MidpointRounding.AwayFromZero);
        AirPath = new AirPath(description, DensityKgM3);
        NeededM3h = Quantities.Round(Air.FlowM3h(KnownW, AllowedRiseK, DensityKgM3));
        AvailableM3h = FindAvailable() is { } available ? Quantities.Round(available) : null;
        SurfaceM2 = Quantities.Round(SurfaceOf(description.Cabinet!));
        if (IsJudged)
        {
            AssumeOfPath(assumptions);
        }

        AssumeOfTheRoom(assumptions);
        Figures = IsDescribed && MakeFigures() is var figures && figures != new CoolingFigures() ? figures : null;
    }

    /// <summary>Whether the request has cooling data, or an item with heat, power or a kind that implies heat.</summary>
    public bool IsDescribed { get; private set; }

    /// <summary>Heat of all items with known heat, W: a minimum.</summary>
    public double KnownW { get; private set; }

    /// <summary>Items that draw or probably draw power but do not specify how much, in the order of the request.</summary>
    public IReadOnlyList<MountedItem> Unknown => unknown;

    /// <summary>Whether the heat of every item is known.</summary>
    public bool IsHeatKnown => unknown.Count == 0;

    /// <summary>Whether there is heat and its airflow path is known.</summary>
    public bool IsJudged => IsDescribed && KnownW > 0 && AirPath.Mode != CoolingMode.Unknown;

    /// <summary>Whether there is, or can be, heat to dissipate.</summary>
    public bool HasHeat => IsDescribed && (KnownW > 0 || unknown.Count > 0);

    /// <summary>The airflow path.</summary>
    public AirPath AirPath { get; }

    /// <summary>Maximum room temperature, C.</summary>
    public double AmbientC { get; }

    /// <summary>Altitude, m.</summary>
    public double AltitudeM { get; }

    /// <summary>Permitted temperature rise of the air, K.</summary>
    public double AllowedRiseK { get; }

    /// <summary>Air density at the site, kg/m3, rounded to four digits.</summary>
    public double DensityKgM3 { get; } = Fans.CurveDensityKgM3;

    /// <summary>Airflow that the known heat needs at the permitted rise, m3/h.</summary>
    public double NeededM3h { get; }

    /// <summary>Airflow of the path, m3/h; null if there is none or it is unknown.</summary>
    public double? AvailableM3h { get; }

    /// <summary>Airflow of the equipment's own fans, as far as specified, m3/h.</summary>
    public double OwnFlowM3h { get; private set; }

    /// <summary>Whether any item specifies its airflow.</summary>
    public bool HasOwnFlow { get; private set; }

    /// <summary>Heat-dissipating surface of the closed cabinet, m2.</summary>
    public double SurfaceM2 { get; }

    /// <summary>Whether the surface of the cabinet dissipates the heat, alone or beside an air conditioner.</summary>
    public bool NeedsSurface => IsJudged && AirPath.Mode is CoolingMode.Closed or CoolingMode.AirConditioner;

    /// <summary>Dew point of the room, C; null if the humidity is missing.</summary>
    public double? DewPointC { get; }

    /// <summary>Setpoint of the air conditioner, C.</summary>
    public double SetpointC { get; }

    /// <summary>Rated outside temperature of the air conditioner, C.</summary>
    public double RatedAmbientC { get; }

    /// <summary>The item with the lowest inlet limit, the lowest id first; null if no item has a limit.</summary>
    public MountedItem? LeastInletItem { get; private set; }

    /// <summary>Its limit at the altitude of the site, C.</summary>
    public double? LeastInletC => LeastInletItem?.Item!.MaxInletC is { } limit ? LimitAtSiteC(limit) : null;

    /// <summary>
    /// Inlet air temperature before the rack heats it, C: of the room, the floor supply or the air conditioner; null if that of the floor is missing.
    /// </summary>
    public double? SupplyC => AirPath.Mode switch
    {
        CoolingMode.AirConditioner => SetpointC,
        CoolingMode.Underfloor => description.Cooling!.Underfloor!.SupplyC,
        _ => AmbientC,
    };

    /// <summary>JSON Pointer of that temperature; null if there are no site data.</summary>
    public string? SupplyPointer => AirPath.Mode switch
    {
        CoolingMode.AirConditioner => Pointers.Setpoint,
        CoolingMode.Underfloor => Pointers.UnderfloorC,
        _ => description.Site is null ? null : Pointers.Ambient,
    };

    /// <summary>The cooling figures of the report; null without heat data.</summary>
    public CoolingFigures? Figures { get; }

    /// <summary>Whether an item probably needs airflow but names no direction: it moves air, dissipates heat or draws power.</summary>
    public static bool MayNeedAirflow(MountedItem mounted) =>
        mounted.Item is { } item && item.Airflow?.Direction is null
        && (item.Airflow is not null || item.HeatW > 0 || item.Power is not null
            || item.Category is ItemCategory.Computer or ItemCategory.Server or ItemCategory.Network or ItemCategory.Ups);

    /// <summary>
    /// Heat of an item: <c>heatW</c>, else <c>typicalW</c>, else <c>ratedW</c>; for a UPS only <c>heatW</c>, because it passes its input on to its load.
    /// </summary>
    /// <returns>Heat, W; null if the item draws power but does not specify how much.</returns>
    public static double? HeatOf(MountedItem mounted)
    {
        var item = mounted.Item!;
        if (item.HeatW is { } heat)
        {
            return heat;
        }

        // A rack-mounted air conditioner removes its own heat together with the heat of the others.
        return mounted.Category switch
        {
            ItemCategory.Ups => null,
            ItemCategory.AirConditioner => 0,
            _ when item.Ups is not null => null,
            _ when item.Power is { } power => power.TypicalW ?? power.RatedW ?? (power.Plugs is { Count: 0 } ? 0 : null),
            ItemCategory.Computer or ItemCategory.Server or ItemCategory.Instrument or ItemCategory.Display or ItemCategory.KvmSwitch => null,
            _ => item.Airflow is { FlowM3h: > 0 } or { Direction: not (null or AirflowDirection.None) } ? null : 0,
        };
    }

    /// <summary>An inlet limit at the altitude of the site, C.</summary>
    /// <param name="limitC">The limit, C.</param>
    /// <returns>The limit, less 1 K for each 300 m above 900 m.</returns>
    public double LimitAtSiteC(double limitC) => Quantities.Round(InletLimits.DeratedC(limitC, AltitudeM));

    /// <summary>Temperature rise in the closed cabinet for the known heat, K.</summary>
    /// <param name="transferWM2K">Heat transfer, W/(m2 K).</param>
    /// <returns>Rise, K, rounded to 0.01.</returns>
    public double ClosedRiseK(double transferWM2K) => Math.Round(Enclosures.RiseK(KnownW, SurfaceM2, transferWM2K), 2, MidpointRounding.AwayFromZero);

    /// <summary>Air conditioner capacity that the known heat needs, W; 0 if the surface is sufficient.</summary>
    /// <param name="surfaceM2">Heat-dissipating surface, m2.</param>
    /// <param name="setpointC">Setpoint, C.</param>
    /// <param name="transferWM2K">Heat transfer, W/(m2 K).</param>
    /// <returns>Capacity, W.</returns>
    public double CoolerNeededW(double surfaceM2, double setpointC, double transferWM2K = Enclosures.StirredWM2K) =>
        Math.Max(0, Quantities.Round(AirConditioners.NeededW(KnownW, surfaceM2, setpointC, AmbientC, transferWM2K)));

    /// <summary>Heat-dissipating surface of a cabinet.</summary>
    /// <returns>Surface, m2.</returns>
    public static double SurfaceOf(Cabinet cabinet) => Enclosures.SurfaceM2(
        (CabinetStanding)(cabinet.Placement ?? Placement.Free), CabinetHeights.Of(cabinet).OverallMm, cabinet.WidthMm!.Value, cabinet.DepthMm!.Value);

    private void Take(MountedItem[] items)
    {
        foreach (var mounted in items)
        {
            var item = mounted.Item!;
            // A kind that needs power, or an item that moves air, dissipates heat even without heat data.
            IsDescribed |= item.HeatW is not null || item.Power is not null || HeatOf(mounted) is null;
            if (HeatOf(mounted) is { } heat)
            {
                KnownW += heat;
            }
            else
            {
                unknown.Add(mounted);
            }

            if (item.Airflow?.FlowM3h is { } flow)
            {
                (HasOwnFlow, OwnFlowM3h) = (true, OwnFlowM3h + flow);
            }

            if (item.MaxInletC is { } limit
                && (LeastInletItem?.Item!.MaxInletC is not { } least || limit < least
                    || (limit == least && string.CompareOrdinal(mounted.Id, LeastInletItem.Id) < 0)))
            {
                LeastInletItem = mounted;
            }
        }
    }

    private double? FindAvailable() => AirPath.Mode switch
    {
        CoolingMode.Forced => AirPath.FanFlowM3h,
        CoolingMode.Underfloor => description.Cooling!.Underfloor!.SupplyM3h,
        CoolingMode.Doors when HasOwnFlow => OwnFlowM3h,
        _ => null,
    };

    private double? DoorLossPa()
    {
        double? loss = null;
        foreach (var door in new[] { AirPath.Front, AirPath.Rear })
        {
            if (door is not null)
            {
                if (door.LossK(DensityKgM3) is not { } k)
                {
                    return null;
                }

                loss = (loss ?? 0) + Openings.LossPa(k, NeededM3h);
            }
        }

        return loss;
    }

    private CoolingFigures MakeFigures()
    {
        var isWhole = IsHeatKnown && IsJudged;
        var isClosed = IsJudged && AirPath.Mode is CoolingMode.Closed or CoolingMode.AirConditioner;
        double? rise = !isWhole ? null
            : AirPath.Mode == CoolingMode.Closed ? ClosedRiseK(Enclosures.StirredWM2K)
            : AvailableM3h is { } flow and > 0 ? Quantities.Round(Air.RiseK(KnownW, flow, DensityKgM3))
            : null;
        return new CoolingFigures
        {
            HeatW = IsHeatKnown ? KnownW : null,
            HeatBtuH = IsHeatKnown ? Quantities.Round(KnownW * Air.BtuHPerW) : null,
            AirDensityKgM3 = IsJudged ? DensityKgM3 : null,
            AirflowNeededM3h = isWhole ? NeededM3h : null,
            AirflowAvailableM3h = IsJudged ? AvailableM3h : null,
            DoorPressureLossPa = isWhole && DoorLossPa() is { } loss ? Quantities.Round(loss) : null,
            SurfaceM2 = isClosed ? SurfaceM2 : null,
            RiseK = rise,
            HottestInletC = !isWhole ? null : AirPath.Mode == CoolingMode.Closed ? Quantities.Round(AmbientC + rise!.Value) : SupplyC,
            CoolerNeededW = isWhole && AirPath.Mode == CoolingMode.AirConditioner ? CoolerNeededW(SurfaceM2, SetpointC) : null,
            DewPointC = DewPointC is { } dew ? Quantities.Round(dew) : null,
        };
    }

    // The assumed room temperature is reported wherever a limit, the heat or a dew point is compared with it.
    private void AssumeOfTheRoom(List<Assumption> assumptions)
    {
        var isUsed = IsJudged || LeastInletItem is not null || DewPointC is not null;
        if (isUsed && description.Site?.AmbientMaxC is null)
        {
            Assume(assumptions, Pointers.Ambient, AmbientC, "C", "ordinary room; common practice, no source");
        }

        if (description.Site?.HumidityMaxPercent is null && IsJudged)
        {
            Assume(assumptions, Pointers.Humidity, 0, "%", "default: density of dry air");
        }

        if (description.Site?.AltitudeM is null && (IsJudged || LeastInletItem is not null))
        {
            Assume(assumptions, Pointers.Altitude, AltitudeM, "m", "default: sea level; common practice, no source");
        }
    }

    private void AssumeProtection(List<Assumption> assumptions)
    {
        if (description is { Site.RequiredIp: not null, Cabinet: { IpCode: null } cabinet }
            && (cabinet.FrontDoor?.Style == DoorStyle.Perforated || cabinet.RearDoor?.Style == DoorStyle.Perforated || cabinet.Roof?.Style == RoofStyle.Vented))
        {
            Assume(assumptions, Pointers.IpCode, "IP20", null, "usual for a perforated door or an open vent; common practice, no source");
        }
    }

    private void AssumeOfPath(List<Assumption> assumptions)
    {
        var cabinet = description.Cabinet!;
        if (NeedsSurface)
        {
            AssumeOfTheSurface(cabinet, assumptions);
        }
        else if (description.Cooling?.RiseK is null)
        {
            Assume(assumptions, Pointers.RiseK, AllowedRiseK, "K", "common practice, no source");
        }

        foreach (var door in new[] { AirPath.Front, AirPath.Rear })
        {
            if (door is { AreaIsAssumed: true, Door.OpenAreaPercent: not null })
            {
                Assume(
                    assumptions, door.Pointer + "/perforatedAreaM2", Quantities.Round(door.AreaM2), "m2",
                    "width less 100 mm, times the height of the mounting space; common practice, no source");
            }
        }

        if (AirPath.Mode == CoolingMode.Forced)
        {
            AssumeCurves(description.Cooling!.RoofFans, Pointers.RoofFans, assumptions);
            AssumeCurves(description.Cooling.FanTrays, Pointers.FanTrays, assumptions);
            if (AirPath.HasRoofFans && cabinet.Roof?.OpenAreaCm2 is not null)
            {
                Assume(
                    assumptions, Pointers.RoofOpenArea, 0, "Pa",
                    "the fans are mounted in the roof openings and their curves include that loss: no further pressure drop");
            }
        }
    }

    private void AssumeOfTheSurface(Cabinet cabinet, List<Assumption> assumptions)
    {
        if (cabinet.Placement is null)
        {
            Assume(assumptions, Pointers.Placement, "free", null, "default: free-standing");
        }

        if (cabinet.Roof?.Style is null && AirPath.Mode == CoolingMode.Closed)
        {
            Assume(assumptions, Pointers.RoofStyle, "solid", null, "default: closed roof");
        }
    }

    private void AssumeCooler(List<Assumption> assumptions)
    {
        if (description.Cooling?.AirConditioner is { } cooler)
        {
            if (cooler.SetpointC is null)
            {
                Assume(assumptions, Pointers.Setpoint, SetpointC, "C", "usual for cabinets; common practice, no source");
            }

            if (cooler.RatedAmbientC is null)
            {
                Assume(
                    assumptions, Pointers.RatedAmbient, RatedAmbientC, "C",
                    "capacities are usually rated at 35 C inside and outside; value from memory of EN 14511");
            }
        }
    }

    private static void AssumeCurves(IReadOnlyList<FanSet>? sets, string pointer, List<Assumption> assumptions)
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
    private static void Assume(List<Assumption> assumptions, string pointer, Scalar value, string? unit, string basis)
    {
        if (!assumptions.Exists(a => a.Pointer == pointer))
        {
            assumptions.Add(new Assumption { Pointer = pointer, Value = value, Unit = unit, Basis = basis });
        }
    }
}
