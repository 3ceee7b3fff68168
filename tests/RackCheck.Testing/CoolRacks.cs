using RackCheck.Model;

namespace RackCheck.Testing;

/// <summary>Short forms for racks with heat to dissipate: 600 x 1000 x 2000, default 20 C at sea level. Use with <c>using static</c>.</summary>
public static class CoolRacks
{
    public static readonly Door Closed = new() { Style = DoorStyle.Solid };

    public static readonly Door Open = new() { Style = DoorStyle.None };

    public static readonly Door Aired = new() { Style = DoorStyle.Perforated, OpenAreaPercent = 64 };

    public static RackDescription Cool(Door? front, Door? rear, double ambient = 20, double altitude = 0, double? humidity = null, string? ip = null) =>
        TestRacks.EmptyRack().Cabinet(c => c with
        {
            HeightMm = 2000, FrontDoor = front, RearDoor = rear, Roof = new Roof { Style = RoofStyle.Solid }, Placement = Placement.Free, SidePanels = true,
        }) with
        {
            Site = new Site { AmbientMaxC = ambient, AltitudeM = altitude, HumidityMaxPercent = humidity, RequiredIp = ip },
        };

    public static Item Warm(string id, int unit, double? heat, AirflowDirection? direction = null, double? flow = null, double? maxInlet = null) => new()
    {
        Id = id, HeightU = 4, Position = new Position { U = unit }, HeatW = heat, MaxInletC = maxInlet,
        Airflow = direction is null && flow is null ? null : new Airflow { Direction = direction, FlowM3h = flow },
    };

    public static RackDescription Cooled(this RackDescription rack, Func<Model.Cooling, Model.Cooling> change) =>
        rack with { Cooling = change(rack.Cooling ?? new Model.Cooling { RiseK = 10 }) };

    public static RackDescription RoofFans(this RackDescription rack, params FanSet[] fans) =>
        rack.Cabinet(c => c with { Roof = new Roof { Style = RoofStyle.Vented } }).Cooled(c => c with { RoofFans = fans });

    public static RackDescription Trays(this RackDescription rack, params FanSet[] fans) => rack.Cooled(c => c with { FanTrays = fans });

    public static RackDescription Cooler(
        this RackDescription rack, double capacity, double? setpoint = 35, AirConditionerStyle? style = AirConditionerStyle.Wall, double? rated = 35) =>
        rack.Cooled(c => c with { AirConditioner = new AirConditioner { CapacityW = capacity, SetpointC = setpoint, Style = style, RatedAmbientC = rated } });

    public static RackDescription Underfloor(this RackDescription rack, double? flow, double? supply) =>
        rack.Cooled(c => c with { Underfloor = new Underfloor { SupplyM3h = flow, SupplyC = supply } });

    public static RackDescription At(this RackDescription rack, Func<Site, Site> change) => rack with { Site = change(rack.Site!) };

    /// <summary>A fan with the points (0, 60) (100, 45) (200, 38) (300, 20) (360, 0).</summary>
    public static FanSet Curved(int count) => new()
    {
        Count = count, FreeFlowM3h = 360,
        Curve =
        [
            new() { M3h = 0, Pa = 60 }, new() { M3h = 100, Pa = 45 }, new() { M3h = 200, Pa = 38 }, new() { M3h = 300, Pa = 20 }, new() { M3h = 360, Pa = 0 },
        ],
    };
}
