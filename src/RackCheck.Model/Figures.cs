using System.Text.Json.Serialization;

namespace RackCheck.Model;

/// <summary>Figures calculated by the check, by subject.</summary>
public sealed record Figures
{
    /// <summary>Rack space, U.</summary>
    public SpaceFigures? Space { get; init; }

    /// <summary>Depths, mm.</summary>
    public DepthFigures? Depth { get; init; }

    /// <summary>Masses and stability.</summary>
    public MassFigures? Mass { get; init; }

    /// <summary>Electrical power.</summary>
    public PowerFigures? Power { get; init; }

    /// <summary>Heat load and airflow.</summary>
    public CoolingFigures? Cooling { get; init; }

    /// <summary>Protective earthing.</summary>
    public EarthingFigures? Earthing { get; init; }

    /// <summary>Cables.</summary>
    public CablingFigures? Cabling { get; init; }

    /// <summary>Delivery of the rack.</summary>
    public DeliveryFigures? Delivery { get; init; }
}

/// <summary>
/// Rack space, U. Front and rear both count: a U position is free where neither face holds equipment. Positions closed by a blanking panel count as
/// free, because equipment can replace the panel.
/// </summary>
public sealed record SpaceFigures
{
    /// <summary>Total height of the mounting space, U.</summary>
    public required int UnitsTotal { get; init; }

    /// <summary>Height used by equipment, including the space above shelves that holds equipment, U.</summary>
    public required int UnitsUsed { get; init; }

    /// <summary>Free height, U.</summary>
    public required int UnitsFree { get; init; }

    /// <summary>Largest continuous free space, U.</summary>
    public required int LargestGapU { get; init; }
}

/// <summary>Depths, mm. Figures that depend on an unknown depth are absent; <c>notAssessed</c> names the missing data.</summary>
public sealed record DepthFigures
{
    /// <summary>Usable depth between the doors, mm.</summary>
    public required double UsableMm { get; init; }

    /// <summary>Depth of the deepest item including its front and rear projections, mm.</summary>
    public double? DeepestStackMm { get; init; }

    /// <summary>Minimum setback of the front uprights at which every item clears the front door, mm.</summary>
    public double? FrontSetbackMinMm { get; init; }

    /// <summary>Maximum setback of the front uprights at which every item clears the rear door, mm.</summary>
    public double? FrontSetbackMaxMm { get; init; }

    /// <summary>Minimum overall depth of a cabinet with these doors, mm.</summary>
    public double? MinimumCabinetDepthMm { get; init; }
}

/// <summary>Masses, stability and floor load.</summary>
public sealed record MassFigures
{
    /// <summary>Mass of the equipment, kg.</summary>
    public double? EquipmentKg { get; init; }

    /// <summary>Mass of equipment and cabinet, kg.</summary>
    public double? TotalKg { get; init; }

    /// <summary>Centre of gravity, mm.</summary>
    public CentreOfGravity? CentreOfGravityMm { get; init; }

    /// <summary>Smallest angle at which the rack tips over, degrees.</summary>
    public double? TipAngleDeg { get; init; }

    /// <summary>Distributed load over the footprint, kN/m2.</summary>
    public double? FloorKnM2 { get; init; }

    /// <summary>Maximum foot load, kN.</summary>
    public double? PointKn { get; init; }
}

/// <summary>Centre of gravity, mm.</summary>
public sealed record CentreOfGravity
{
    /// <summary>Distance behind the outer front face of the cabinet, mm.</summary>
    public required double X { get; init; }

    /// <summary>Height above the floor, mm.</summary>
    public required double Z { get; init; }
}

/// <summary>Electrical power.</summary>
public sealed record PowerFigures
{
    /// <summary>Rated power of all items, W.</summary>
    public double? RatedW { get; init; }

    /// <summary>Typical power of all items, W.</summary>
    public double? TypicalW { get; init; }

    /// <summary>Figures of each supply.</summary>
    public IReadOnlyList<SupplyFigures>? Supplies { get; init; }

    /// <summary>Figures of each PDU.</summary>
    public IReadOnlyList<PduFigures>? Pdus { get; init; }

    /// <summary>Assignment of cords to outlet groups.</summary>
    public IReadOnlyList<Connection>? Assignment { get; init; }
}

/// <summary>Line currents, A.</summary>
public sealed record LineCurrents
{
    /// <summary>Current in L1, A.</summary>
    [JsonPropertyName("L1")]
    public double? L1 { get; init; }

    /// <summary>Current in L2, A.</summary>
    [JsonPropertyName("L2")]
    public double? L2 { get; init; }

    /// <summary>Current in L3, A.</summary>
    [JsonPropertyName("L3")]
    public double? L3 { get; init; }

    /// <summary>Current in the neutral, A.</summary>
    public double? Neutral { get; init; }
}

/// <summary>Figures of one supply.</summary>
public sealed record SupplyFigures
{
    /// <summary>Id from the description.</summary>
    public required string Id { get; init; }

    /// <summary>Line currents, A.</summary>
    public LineCurrents? CurrentA { get; init; }

    /// <summary>Loading of the most loaded line, percent of its rating.</summary>
    public double? LoadingPercent { get; init; }

    /// <summary>Loading of the most loaded line if the worst-case other supply fails, percent of its rating.</summary>
    public double? WorstCaseLoadingPercent { get; init; }

    /// <summary>Inrush current of all equipment that switches on at the same time, A.</summary>
    public double? InrushA { get; init; }

    /// <summary>Protective conductor current, mA.</summary>
    public double? LeakageMa { get; init; }

    /// <summary>Voltage drop in the supply cable, percent.</summary>
    public double? VoltageDropPercent { get; init; }
}

/// <summary>Figures of one PDU.</summary>
public sealed record PduFigures
{
    /// <summary>Id from the description.</summary>
    public required string Id { get; init; }

    /// <summary>Line currents, A.</summary>
    public LineCurrents? CurrentA { get; init; }

    /// <summary>Loading of the most loaded line, percent of its rating.</summary>
    public double? LoadingPercent { get; init; }

    /// <summary>Figures of each outlet group.</summary>
    public IReadOnlyList<OutletGroupFigures>? Groups { get; init; }
}

/// <summary>Figures of one outlet group.</summary>
public sealed record OutletGroupFigures
{
    /// <summary>Id from the description.</summary>
    public required string Id { get; init; }

    /// <summary>Current, A.</summary>
    public double? CurrentA { get; init; }

    /// <summary>Current as a percentage of the breaker rating.</summary>
    public double? LoadingPercent { get; init; }
}

/// <summary>Heat load and airflow.</summary>
public sealed record CoolingFigures
{
    /// <summary>Heat load of all items, W.</summary>
    public double? HeatW { get; init; }

    /// <summary>Heat load of all items, Btu/h.</summary>
    public double? HeatBtuH { get; init; }

    /// <summary>Air density at the site, kg/m3.</summary>
    public double? AirDensityKgM3 { get; init; }

    /// <summary>Airflow required for the heat load, m3/h.</summary>
    public double? AirflowNeededM3h { get; init; }

    /// <summary>Airflow available along the airflow path, m3/h.</summary>
    public double? AirflowAvailableM3h { get; init; }

    /// <summary>Pressure drop across the doors at the required airflow, Pa.</summary>
    public double? DoorPressureLossPa { get; init; }

    /// <summary>Effective surface that dissipates heat, m2.</summary>
    public double? SurfaceM2 { get; init; }

    /// <summary>Temperature rise above the room, K.</summary>
    public double? RiseK { get; init; }

    /// <summary>Highest inlet air temperature of any item, C.</summary>
    public double? HottestInletC { get; init; }

    /// <summary>Required capacity of the air conditioner, W.</summary>
    public double? CoolerNeededW { get; init; }

    /// <summary>Dew point of the room air, C.</summary>
    public double? DewPointC { get; init; }
}

/// <summary>Protective earthing.</summary>
public sealed record EarthingFigures
{
    /// <summary>Number of terminals required on the earth bar.</summary>
    public int? TerminalsNeeded { get; init; }

    /// <summary>Number of terminals fitted to the earth bar.</summary>
    public int? TerminalsFitted { get; init; }

    /// <summary>Protective conductor current of the rack, mA.</summary>
    public double? LeakageMa { get; init; }
}

/// <summary>Cables.</summary>
public sealed record CablingFigures
{
    /// <summary>Total cross-sectional area of the cables, mm2.</summary>
    public double? AreaMm2 { get; init; }

    /// <summary>Cross-sectional area of the side cable channels, mm2.</summary>
    public double? SideSpaceMm2 { get; init; }

    /// <summary>Cable fill of the side channels, percent.</summary>
    public double? FillPercent { get; init; }
}

/// <summary>Delivery of the rack.</summary>
public sealed record DeliveryFigures
{
    /// <summary>Gross mass on the delivery route, kg: cabinet, pallet and the equipment, unless it is delivered without it (`loaded` false).</summary>
    public double? GrossKg { get; init; }

    /// <summary>Height including the pallet, mm.</summary>
    public double? HeightOnPalletMm { get; init; }

    /// <summary>Width of the rack or the pallet, whichever is larger, mm.</summary>
    public double? WidthMm { get; init; }

    /// <summary>Depth of the rack or the pallet, whichever is larger, mm.</summary>
    public double? DepthMm { get; init; }
}
