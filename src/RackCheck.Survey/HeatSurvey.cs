using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Survey;

/// <summary>The heat of a rack, the way that it takes, and the air and surface that there are for it.</summary>
public sealed class HeatSurvey
{
    /// <summary>Highest temperature of a room that is not told, C.</summary>
    public const double UsualAmbientC = 25;

    /// <summary>Rise of the air through a rack that is not told, K.</summary>
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

        // To four digits, so that whoever redoes a sum by hand comes to the same.
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

    /// <summary>Whether an item says anything of heat or power, or has them by its kind, or the description says anything of cooling.</summary>
    public bool IsDescribed { get; private set; }

    /// <summary>Heat of all items whose heat is known, W: the least that there is.</summary>
    public double KnownW { get; private set; }

    /// <summary>Items that take power, or look as if they did, but do not say how much; by the order of the request.</summary>
    public IReadOnlyList<MountedItem> Unknown => unknown;

    /// <summary>Whether the heat of every item is known.</summary>
    public bool IsHeatKnown => unknown.Count == 0;

    /// <summary>Whether there is heat, and it is known what way it takes.</summary>
    public bool IsJudged => IsDescribed && KnownW > 0 && AirPath.Mode != CoolingMode.Unknown;

    /// <summary>Whether there is, or may be, heat to be rid of.</summary>
    public bool HasHeat => IsDescribed && (KnownW > 0 || unknown.Count > 0);

    /// <summary>The way of the air.</summary>
    public AirPath AirPath { get; }

    /// <summary>Highest temperature of the room, C.</summary>
    public double AmbientC { get; }

    /// <summary>Height above the sea, m.</summary>
    public double AltitudeM { get; }

    /// <summary>Rise of the air that is allowed, K.</summary>
    public double AllowedRiseK { get; }

    /// <summary>Density of the site's air, kg/m3, to four digits.</summary>
    public double DensityKgM3 { get; } = Fans.CurveDensityKgM3;

    /// <summary>Air that the known heat needs at the rise allowed, m3/h.</summary>
    public double NeededM3h { get; }

    /// <summary>Air that the way moves, m3/h; null where there is none or it is not known.</summary>
    public double? AvailableM3h { get; }

    /// <summary>Air that the items' own fans move, as far as they say so, m3/h.</summary>
    public double OwnFlowM3h { get; private set; }

    /// <summary>Whether any item says what air it moves.</summary>
    public bool HasOwnFlow { get; private set; }

    /// <summary>Surface that sheds heat, m2, were the cabinet closed.</summary>
    public double SurfaceM2 { get; }

    /// <summary>Whether the surface of the cabinet dissipates the heat, alone or beside an air conditioner.</summary>
    public bool NeedsSurface => IsJudged && AirPath.Mode is CoolingMode.Closed or CoolingMode.AirConditioner;

    /// <summary>Dew point of the room, C; null without a humidity.</summary>
    public double? DewPointC { get; }

    /// <summary>Temperature that the air conditioner holds inside, C.</summary>
    public double SetpointC { get; }

    /// <summary>Outside temperature that the air conditioner is rated for, C.</summary>
    public double RatedAmbientC { get; }

    /// <summary>The item with the least inlet limit, the first by id of those; null where none gives any.</summary>
    public MountedItem? LeastInletItem { get; private set; }

    /// <summary>Its limit at the site's altitude, C.</summary>
    public double? LeastInletC => LeastInletItem?.Item!.MaxInletC is { } limit ? LimitAtSiteC(limit) : null;

    /// <summary>
    /// Air that items take in before the rack heats it, C: the room's, the floor's or the air conditioner's; null where the floor's is not given.
    /// </summary>
    public double? SupplyC => AirPath.Mode switch
    {
        CoolingMode.AirConditioner => SetpointC,
        CoolingMode.Underfloor => description.Cooling!.Underfloor!.SupplyC,
        _ => AmbientC,
    };

    /// <summary>Where that temperature stands in the request, or would; null where nothing is said of the site.</summary>
    public string? SupplyPointer => AirPath.Mode switch
    {
        CoolingMode.AirConditioner => Pointers.Setpoint,
        CoolingMode.Underfloor => Pointers.UnderfloorC,
        _ => description.Site is null ? null : Pointers.Ambient,
    };

    /// <summary>The cooling figures of the report; null where nothing is said of heat.</summary>
    public CoolingFigures? Figures { get; }

    /// <summary>Whether an item may breathe and does not say how: it moves air, gives off heat or takes power, and names no direction.</summary>
    /// <param name="mounted">The item.</param>
    /// <returns>Whether it may.</returns>
    public static bool MayNeedAirflow(MountedItem mounted) =>
        mounted.Item is { } item && item.Airflow?.Direction is null
        && (item.Airflow is not null || item.HeatW > 0 || item.Power is not null
            || item.Category is ItemCategory.Computer or ItemCategory.Server or ItemCategory.Network or ItemCategory.Ups);

    /// <summary>
    /// Heat of an item: <c>heatW</c>, else <c>typicalW</c>, else <c>ratedW</c>; of a UPS <c>heatW</c> alone, since it passes on what it draws.
    /// </summary>
    /// <param name="mounted">The item.</param>
    /// <returns>Heat, W; null where it takes power and does not say how much.</returns>
    public static double? HeatOf(MountedItem mounted)
    {
        var item = mounted.Item!;
        if (item.HeatW is { } heat)
        {
            return heat;
        }

        // The heat of an air conditioner in rack units leaves with what it takes from the others.
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

    /// <summary>An inlet limit at the site's altitude, C.</summary>
    /// <param name="limitC">The limit, C.</param>
    /// <returns>It, less 1 K for 300 m above 900 m.</returns>
    public double LimitAtSiteC(double limitC) => Quantities.Round(InletLimits.DeratedC(limitC, AltitudeM));

    /// <summary>Rise of the air in the cabinet while it is closed, K, by its known heat.</summary>
    /// <param name="transferWM2K">Heat transfer, W/(m2 K).</param>
    /// <returns>Rise, K, to a hundredth.</returns>
    public double ClosedRiseK(double transferWM2K) => Math.Round(Enclosures.RiseK(KnownW, SurfaceM2, transferWM2K), 2, MidpointRounding.AwayFromZero);

    /// <summary>Capacity that the known heat asks of an air conditioner, W; 0 where the surface does it alone.</summary>
    /// <param name="surfaceM2">Surface that sheds heat, m2.</param>
    /// <param name="setpointC">Setpoint, C.</param>
    /// <param name="transferWM2K">Heat transfer, W/(m2 K).</param>
    /// <returns>Capacity, W.</returns>
    public double CoolerNeededW(double surfaceM2, double setpointC, double transferWM2K = Enclosures.StirredWM2K) =>
        Math.Max(0, Quantities.Round(AirConditioners.NeededW(KnownW, surfaceM2, setpointC, AmbientC, transferWM2K)));

    /// <summary>Surface of a cabinet that sheds heat.</summary>
    /// <param name="cabinet">The cabinet.</param>
    /// <returns>Surface, m2.</returns>
    public static double SurfaceOf(Cabinet cabinet) => Enclosures.SurfaceM2(
        (CabinetStanding)(cabinet.Placement ?? Placement.Free), CabinetHeights.Of(cabinet).OverallMm, cabinet.WidthMm!.Value, cabinet.DepthMm!.Value);

    private void Take(MountedItem[] items)
    {
        foreach (var mounted in items)
        {
            var item = mounted.Item!;
            // What runs on power by its kind, or moves air, gives off heat, though nobody says a word of it.
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

    // What is taken for the room is said wherever a limit, the heat or a dew point is held to it.
    private void AssumeOfTheRoom(List<Assumption> assumptions)
    {
        var isUsed = IsJudged || LeastInletItem is not null || DewPointC is not null;
        if (isUsed && description.Site?.AmbientMaxC is null)
        {
            Assume(assumptions, Pointers.Ambient, AmbientC, "C", "an ordinary room; common practice, no source");
        }

        if (description.Site?.HumidityMaxPercent is null && IsJudged)
        {
            Assume(assumptions, Pointers.Humidity, 0, "%", "the density is that of dry air unless told");
        }

        if (description.Site?.AltitudeM is null && (IsJudged || LeastInletItem is not null))
        {
            Assume(assumptions, Pointers.Altitude, AltitudeM, "m", "at the height of the sea; common practice, no source");
        }
    }

    private void AssumeProtection(List<Assumption> assumptions)
    {
        if (description is { Site.RequiredIp: not null, Cabinet: { IpCode: null } cabinet }
            && (cabinet.FrontDoor?.Style == DoorStyle.Perforated || cabinet.RearDoor?.Style == DoorStyle.Perforated || cabinet.Roof?.Style == RoofStyle.Vented))
        {
            Assume(assumptions, Pointers.IpCode, "IP20", null, "a usual perforated door or open vent; common practice, no source");
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
                    "the width less 100 mm, over the height of the units; common practice, no source");
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
                    "the fans stand in the openings of the roof, whose loss is in their curves: they are no further loss on the way of the air");
            }
        }
    }

    private void AssumeOfTheSurface(Cabinet cabinet, List<Assumption> assumptions)
    {
        if (cabinet.Placement is null)
        {
            Assume(assumptions, Pointers.Placement, "free", null, "it stands free unless the description says otherwise");
        }

        if (cabinet.Roof?.Style is null && AirPath.Mode == CoolingMode.Closed)
        {
            Assume(assumptions, Pointers.RoofStyle, "solid", null, "a roof is closed unless the description says otherwise");
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
                    "capacities are mostly given for 35 C inside and outside; value from memory of EN 14511");
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
                    Invariant($"a fan without a curve moves {FanCurve.InstalledSharePercent:0} % of its free flow of {set.FreeFlowM3h:0.###} m3/h once it is ")
                        + "built in; common practice, no source");
            }
        }
    }

    // Other parts of the survey may take the same member for granted: it is said once.
    private static void Assume(List<Assumption> assumptions, string pointer, Scalar value, string? unit, string basis)
    {
        if (!assumptions.Exists(a => a.Pointer == pointer))
        {
            assumptions.Add(new Assumption { Pointer = pointer, Value = value, Unit = unit, Basis = basis });
        }
    }
}
