using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Assumed;
using RackCheck.Survey.Layout;

namespace RackCheck.Survey;

/// <summary>The heat of a rack, its airflow path, and the airflow and surface available for cooling.</summary>
public sealed class HeatSurvey
{
    /// <summary>Default maximum room temperature, C.</summary>
    public const double UsualAmbientC = 35;

    /// <summary>Default temperature rise of air that the rack's own fans or the floor move, K.</summary>
    public const double UsualRiseK = 15;

    /// <summary>Temperature rise of the air through an item above which its own fans are too weak, K.</summary>
    public const double UsualItemRiseK = 25;

    private readonly RackDescription description;
    private readonly MountedItem[] items;
    private readonly List<MountedItem> unknown = [];
    private readonly bool isFigured;

    internal HeatSurvey(RackDescription description, MountedItem[] items, List<AssumedValue>? assumptions)
    {
        (this.description, this.items) = (description, items);
        var site = description.Site;
        AmbientC = site?.AmbientMaxC ?? UsualAmbientC;
        AltitudeM = site?.AltitudeM ?? 0;
        SetpointC = description.Cooling?.AirConditioner?.SetpointC ?? AirConditioners.UsualSetpointC;
        RatedAmbientC = description.Cooling?.AirConditioner?.RatedAmbientC ?? AirConditioners.UsualSetpointC;
        IsDescribed = description.Cooling is not null;
        Take(items);
        HasStirringFans |= HasOwnFlow && OwnFlowM3h > Comparison.Tolerance;
        KnownW = Quantities.Round(KnownW);
        OwnFlowM3h = Quantities.Round(OwnFlowM3h);
        var assumed = assumptions is null ? null : new HeatAssumptions(this, description, assumptions);
        assumed?.Equipment();
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
        HotDensityKgM3 = Math.Round(
            DensityKgM3 * (AmbientC + Air.ZeroC) / (AmbientC + ForcedRiseK + Air.ZeroC), 4, MidpointRounding.AwayFromZero);
        ForcedNeedM3h = NeedAt(ForcedRiseK);
        RoofNeedM3h = Quantities.Round(Air.FlowM3h(KnownW, ForcedRiseK, HotDensityKgM3));
        AvailableM3h = FindAvailable() is { } available ? Quantities.Round(available) : null;
        SurfaceM2 = Quantities.Round(SurfaceOf(description.Cabinet!));
        if (IsJudged)
        {
            assumed?.Path(items);
            Exhaust = ExhaustAir.Of(this, items);
            if (Exhaust is not null)
            {
                assumed?.Pdus();
            }
        }

        isFigured = IsDescribed;
        assumed?.Room();
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

    /// <summary>
    /// Permitted temperature rise of the air, K: as given, else 15 K for forced air and natural draught; null through perforated doors, where the fans of
    /// the equipment set the rise.
    /// </summary>
    public double? AllowedRiseK => description.Cooling?.RiseK
        ?? (AirPath.Mode is CoolingMode.Forced or CoolingMode.Underfloor or CoolingMode.Draught ? UsualRiseK : null);

    /// <summary>Permitted temperature rise where the rack's own fans move the air, K.</summary>
    public double ForcedRiseK => description.Cooling?.RiseK ?? UsualRiseK;

    /// <summary>Air density at the site, kg/m3, rounded to four digits.</summary>
    public double DensityKgM3 { get; } = Fans.CurveDensityKgM3;

    /// <summary>Air density in the roof at the permitted rise, kg/m3, rounded to four digits.</summary>
    public double HotDensityKgM3 { get; } = Fans.CurveDensityKgM3;

    /// <summary>Airflow that the known heat needs at the permitted rise, m3/h; null where no rise is set.</summary>
    public double? NeededM3h => AllowedRiseK is { } rise ? NeedAt(rise) : null;

    /// <summary>Airflow that the known heat needs where the rack's own fans move cool air, m3/h.</summary>
    public double ForcedNeedM3h { get; }

    /// <summary>Airflow that the known heat needs of roof fans, which move hot air, m3/h.</summary>
    public double RoofNeedM3h { get; }

    /// <summary>Airflow that the known heat needs of the fans fitted, m3/h.</summary>
    public double FanNeedM3h => AirPath.HasRoofFans ? RoofNeedM3h : ForcedNeedM3h;

    /// <summary>Density at the fans fitted, kg/m3.</summary>
    public double FanDensityKgM3 => AirPath.HasRoofFans ? HotDensityKgM3 : DensityKgM3;

    /// <summary>Heat of the items with fans of their own whose airflow is not given, W. Their fans are assumed to suit it.</summary>
    public double FittedHeatW { get; private set; }

    /// <summary>
    /// Airflow through the doors, m3/h: the larger of the need at the permitted rise, if one is set, and the airflow of the items' own fans, 15 K where it is
    /// not given.
    /// </summary>
    public double DoorFlowM3h => Math.Max(NeededM3h ?? 0, DoorsFlowM3h(UsualRiseK));

    /// <summary>Airflow of the path, m3/h; null if there is none or it is unknown.</summary>
    public double? AvailableM3h { get; }

    /// <summary>Airflow of the equipment's own fans, as far as specified, m3/h.</summary>
    public double OwnFlowM3h { get; private set; }

    /// <summary>Whether any item specifies its airflow.</summary>
    public bool HasOwnFlow { get; private set; }

    /// <summary>Whether fans stir the air inside: roof fans, a fan tray, or an item with an airflow or an airflow direction of its own.</summary>
    public bool IsStirred => HasStirringFans || AirPath.HasRoofFans || AirPath.HasTrays;

    /// <summary>Heat-dissipating surface of the closed cabinet, m2.</summary>
    public double SurfaceM2 { get; }

    /// <summary>Whether the surface of the cabinet dissipates the heat, alone or beside an air conditioner.</summary>
    public bool NeedsSurface => IsJudged && AirPath.Mode is CoolingMode.Closed or CoolingMode.AirConditioner;

    /// <summary>The exhaust air behind the equipment; null if it is unknown.</summary>
    public ExhaustAir? Exhaust { get; }

    /// <summary>Whether the temperature in the closed cabinet can be compared with an inlet limit.</summary>
    public bool IsSealedRiseKnown => IsJudged && IsHeatKnown && AirPath.Mode == CoolingMode.Closed && LeastInletC is not null;

    /// <summary>Whether the known heat alone takes the air in the closed cabinet over an inlet limit, whatever the rest gives off.</summary>
    public bool IsSealedTooHot
    {
        get
        {
            if (!IsJudged || AirPath.Mode != CoolingMode.Closed || LeastInletC is null)
            {
                return false;
            }

            var rise = ClosedRiseK(UsualTransferWM2K);
            return Array.Exists(
                items, i => i.Item!.MaxInletC is { } limit && Comparison.IsOver(Quantities.Round(AmbientC + (RiseFactor(i) * rise)), LimitAtSiteC(limit)));
        }
    }

    /// <summary>Dew point of the room, C; null if the humidity is missing.</summary>
    public double? DewPointC { get; }

    /// <summary>Setpoint of the air conditioner, C.</summary>
    public double SetpointC { get; }

    /// <summary>Rated outside temperature of the air conditioner, C.</summary>
    public double RatedAmbientC { get; }

    /// <summary>The item with the lowest inlet limit, the lowest id first; null if no item has a limit.</summary>
    public MountedItem? LeastInletItem { get; private set; }

    /// <summary>Its limit at the altitude of the site, C; null above the altitude that the classes cover.</summary>
    public double? LeastInletC => IsAltitudeCovered && LeastInletItem?.Item!.MaxInletC is { } limit ? LimitAtSiteC(limit) : null;

    /// <summary>Whether the altitude is within the range of the inlet classes; above it no limit is claimed.</summary>
    public bool IsAltitudeCovered => InletLimits.IsWithinAltitude(AltitudeM);

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
    public CoolingFigures? Figures =>
        isFigured && new HeatFigures(this, items).Make() is var figures && figures != new CoolingFigures() ? figures : null;

    /// <summary>Whether an item probably needs airflow but names no direction: it moves air, dissipates heat or draws power.</summary>
    public static bool MayNeedAirflow(MountedItem mounted) =>
        mounted.Item is { } item && item.Airflow?.Direction is null && !PassiveEquipment.IsPassive(item)
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
            _ => item.Airflow is { FlowM3h: > Comparison.Tolerance } or { Direction: not (null or AirflowDirection.None) } ? null : 0,
        };
    }

    /// <summary>Whether an item gives off heat and does not state its airflow: its own fans are assumed to suit its heat.</summary>
    /// <param name="mounted">The item.</param>
    /// <returns>Whether it does; not for an item without fans.</returns>
    public static bool HasFittingFans(MountedItem mounted) =>
        mounted.Item is { Airflow: null or { FlowM3h: null, Direction: not AirflowDirection.None } } && HeatOf(mounted) > 0;

    /// <summary>An inlet limit at the altitude of the site, C.</summary>
    /// <param name="limitC">The limit, C.</param>
    /// <returns>The limit, less 1 K for each 300 m above 900 m; each 175 m from 40 C, each 125 m from 45 C.</returns>
    public double LimitAtSiteC(double limitC) => Quantities.Round(InletLimits.DeratedC(limitC, AltitudeM, InletLimits.MetresPerKOf(limitC)));

    /// <summary>Airflow that the known heat needs at a rise, m3/h.</summary>
    /// <param name="riseK">Rise, K.</param>
    /// <returns>Airflow at the density of the site, m3/h.</returns>
    public double NeedAt(double riseK) => Quantities.Round(Air.FlowM3h(KnownW, riseK, DensityKgM3));

    /// <summary>Airflow of the items' own fans through the doors, m3/h.</summary>
    /// <param name="riseK">Rise for which fans without a stated airflow are assumed to suit their heat, K.</param>
    /// <returns>Airflow, m3/h.</returns>
    public double DoorsFlowM3h(double riseK) => Quantities.Round(OwnFlowM3h + Air.FlowM3h(FittedHeatW, riseK, DensityKgM3));

    /// <summary>Temperature rise of an item's air by its own fans, K; null if it has none or its heat is unknown.</summary>
    public double? ItemRiseK(MountedItem item) => item.Item!.Airflow?.FlowM3h is { } flow and > Comparison.Tolerance && HeatOf(item) is { } heat
        ? Quantities.Round(Air.RiseK(heat, flow, DensityKgM3))
        : null;

    /// <summary>Heat transfer coefficient of the closed cabinet without a policy, W/(m2 K).</summary>
    public double UsualTransferWM2K => IsStirred ? Enclosures.StirredWM2K : Enclosures.StillWM2K;

    /// <summary>Ratio of the rise at an item to the rise of the closed cabinet: 1.44 in the upper half where nothing stirs the air.</summary>
    /// <param name="item">The item.</param>
    /// <returns>1 or 1.44.</returns>
    public double RiseFactor(MountedItem item) => !IsStirred && IsInUpperHalf(item) ? Enclosures.StillTopFactor : 1;

    /// <summary>Mean height of the heat above the floor, weighted by heat, mm; an item without a place counts at mid-height.</summary>
    /// <returns>Height, mm.</returns>
    public double HeatCentreMm()
    {
        var middle = MiddleMm;
        var sum = 0.0;
        foreach (var item in items)
        {
            sum += (HeatOf(item) ?? 0) * (CentreMm(item) ?? middle);
        }

        return KnownW > 0 ? sum / KnownW : middle;
    }

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

    private bool HasStirringFans { get; set; }

    // Air goes from face to face, or across, by fans only. Upward it can rise by itself.
    private static bool HasDirectedFans(Item item) =>
        item.Airflow?.Direction is AirflowDirection.FrontToRear or AirflowDirection.RearToFront or AirflowDirection.Side;

    private double MiddleMm => CabinetHeights.Of(description.Cabinet!).EdgeMm(1) + (RackGeometry.ApertureMm(description.Cabinet!.HeightU!.Value) / 2);

    private bool IsInUpperHalf(MountedItem item) => CentreMm(item) is { } centre && Comparison.IsOver(centre, MiddleMm);

    private double? CentreMm(MountedItem item) =>
        (item.Shelf ?? item).Bottom is { } bottom and >= 1 ? CabinetHeights.Of(description.Cabinet!).CentreMm(item, bottom) : null;

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
            else if (HasFittingFans(mounted))
            {
                FittedHeatW += HeatOf(mounted)!.Value;
            }

            HasStirringFans |= mounted.Category == ItemCategory.FanTray || HasDirectedFans(item);

            if (item.MaxInletC is { } limit
                && (LeastInletItem?.Item!.MaxInletC is not { } least || LimitAtSiteC(limit) < LimitAtSiteC(least)
                    || (LimitAtSiteC(limit) == LimitAtSiteC(least) && string.CompareOrdinal(mounted.Id, LeastInletItem.Id) < 0)))
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
}
