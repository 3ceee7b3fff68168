using System.Text.Json.Serialization;

namespace RackCheck.Model;

/// <summary>The numbers that the check worked out, theme by theme.</summary>
public sealed record Figures
{
    /// <summary>Units of the rack.</summary>
    public SpaceFigures? Space { get; init; }

    /// <summary>Depths.</summary>
    public DepthFigures? Depth { get; init; }

    /// <summary>Masses.</summary>
    public MassFigures? Mass { get; init; }

    /// <summary>Power.</summary>
    public PowerFigures? Power { get; init; }

    /// <summary>Heat and air.</summary>
    public CoolingFigures? Cooling { get; init; }

    /// <summary>Protective earth.</summary>
    public EarthingFigures? Earthing { get; init; }

    /// <summary>Cables.</summary>
    public CablingFigures? Cabling { get; init; }

    /// <summary>The rack on its way.</summary>
    public DeliveryFigures? Delivery { get; init; }
}

/// <summary>Units of the rack. Both faces count: a unit is free where neither has equipment. A blanking panel leaves its units free, since it gives way to equipment.</summary>
public sealed record SpaceFigures
{
    /// <summary>Units in all.</summary>
    public required int UnitsTotal { get; init; }

    /// <summary>Units taken by equipment, with the room that things on shelves stand in.</summary>
    public required int UnitsUsed { get; init; }

    /// <summary>Units free.</summary>
    public required int UnitsFree { get; init; }

    /// <summary>Most free units in one run, U.</summary>
    public required int LargestGapU { get; init; }
}

/// <summary>Depths, mm. What hangs on a depth that is not known is absent; <c>notAssessed</c> names it.</summary>
public sealed record DepthFigures
{
    /// <summary>Between the doors.</summary>
    public required double UsableMm { get; init; }

    /// <summary>Deepest item with what stands out before and behind it.</summary>
    public double? DeepestStackMm { get; init; }

    /// <summary>Least setback of the front uprights that clears the front door for every item.</summary>
    public double? FrontSetbackMinMm { get; init; }

    /// <summary>Greatest setback of the front uprights that clears the rear door for every item.</summary>
    public double? FrontSetbackMaxMm { get; init; }

    /// <summary>Least depth of a cabinet with these doors that would do.</summary>
    public double? MinimumCabinetDepthMm { get; init; }
}

/// <summary>Masses, kg, and how the rack stands.</summary>
public sealed record MassFigures
{
    /// <summary>Equipment.</summary>
    public double? EquipmentKg { get; init; }

    /// <summary>Equipment and cabinet.</summary>
    public double? TotalKg { get; init; }

    /// <summary>Centre of gravity.</summary>
    public CentreOfGravity? CentreOfGravityMm { get; init; }

    /// <summary>Least angle at which it tips, degrees.</summary>
    public double? TipAngleDeg { get; init; }

    /// <summary>Load spread over the footprint, kN/m2.</summary>
    public double? FloorKnM2 { get; init; }

    /// <summary>Load of the most loaded foot, kN.</summary>
    public double? PointKn { get; init; }
}

/// <summary>Centre of gravity, mm.</summary>
public sealed record CentreOfGravity
{
    /// <summary>Behind the outer front face.</summary>
    public required double X { get; init; }

    /// <summary>Above the floor.</summary>
    public required double Z { get; init; }
}

/// <summary>Power.</summary>
public sealed record PowerFigures
{
    /// <summary>Rated power of all items, W.</summary>
    public double? RatedW { get; init; }

    /// <summary>Typical power of all items, W.</summary>
    public double? TypicalW { get; init; }

    /// <summary>Supply by supply.</summary>
    public IReadOnlyList<SupplyFigures>? Supplies { get; init; }

    /// <summary>PDU by PDU.</summary>
    public IReadOnlyList<PduFigures>? Pdus { get; init; }

    /// <summary>Which cord goes into which outlet group.</summary>
    public IReadOnlyList<Connection>? Assignment { get; init; }
}

/// <summary>Currents of the lines, A.</summary>
public sealed record LineCurrents
{
    /// <summary>First line.</summary>
    [JsonPropertyName("L1")]
    public double? L1 { get; init; }

    /// <summary>Second line.</summary>
    [JsonPropertyName("L2")]
    public double? L2 { get; init; }

    /// <summary>Third line.</summary>
    [JsonPropertyName("L3")]
    public double? L3 { get; init; }

    /// <summary>Neutral.</summary>
    public double? Neutral { get; init; }
}

/// <summary>One supply.</summary>
public sealed record SupplyFigures
{
    /// <summary>Its id.</summary>
    public required string Id { get; init; }

    /// <summary>Currents, A.</summary>
    public LineCurrents? CurrentA { get; init; }

    /// <summary>Most loaded line to rating, percent.</summary>
    public double? LoadingPercent { get; init; }

    /// <summary>The same with the worst other supply lost, percent.</summary>
    public double? WorstCaseLoadingPercent { get; init; }

    /// <summary>Inrush of all that switches on at once, A.</summary>
    public double? InrushA { get; init; }

    /// <summary>Protective conductor current, mA.</summary>
    public double? LeakageMa { get; init; }

    /// <summary>Drop in its cable, percent.</summary>
    public double? VoltageDropPercent { get; init; }
}

/// <summary>One PDU.</summary>
public sealed record PduFigures
{
    /// <summary>Its id.</summary>
    public required string Id { get; init; }

    /// <summary>Currents, A.</summary>
    public LineCurrents? CurrentA { get; init; }

    /// <summary>Most loaded line to rating, percent.</summary>
    public double? LoadingPercent { get; init; }

    /// <summary>Group by group.</summary>
    public IReadOnlyList<OutletGroupFigures>? Groups { get; init; }
}

/// <summary>One outlet group.</summary>
public sealed record OutletGroupFigures
{
    /// <summary>Its id.</summary>
    public required string Id { get; init; }

    /// <summary>Current, A.</summary>
    public double? CurrentA { get; init; }

    /// <summary>Current to breaker rating, percent.</summary>
    public double? LoadingPercent { get; init; }
}

/// <summary>Heat and air.</summary>
public sealed record CoolingFigures
{
    /// <summary>Heat of all items, W.</summary>
    public double? HeatW { get; init; }

    /// <summary>The same, Btu/h.</summary>
    public double? HeatBtuH { get; init; }

    /// <summary>Density of the site's air, kg/m3.</summary>
    public double? AirDensityKgM3 { get; init; }

    /// <summary>Air that the heat needs, m3/h.</summary>
    public double? AirflowNeededM3h { get; init; }

    /// <summary>Air that the path moves, m3/h.</summary>
    public double? AirflowAvailableM3h { get; init; }

    /// <summary>Pressure loss of the doors at the needed flow, Pa.</summary>
    public double? DoorPressureLossPa { get; init; }

    /// <summary>Surface that sheds heat, m2.</summary>
    public double? SurfaceM2 { get; init; }

    /// <summary>Rise over the room, K.</summary>
    public double? RiseK { get; init; }

    /// <summary>Hottest air that an item takes in, C.</summary>
    public double? HottestInletC { get; init; }

    /// <summary>Capacity that an air conditioner needs, W.</summary>
    public double? CoolerNeededW { get; init; }

    /// <summary>Dew point of the room, C.</summary>
    public double? DewPointC { get; init; }
}

/// <summary>Protective earth.</summary>
public sealed record EarthingFigures
{
    /// <summary>Terminals needed on the earth bar.</summary>
    public int? TerminalsNeeded { get; init; }

    /// <summary>Terminals that the bar has.</summary>
    public int? TerminalsFitted { get; init; }

    /// <summary>Protective conductor current of the rack, mA.</summary>
    public double? LeakageMa { get; init; }
}

/// <summary>Cables.</summary>
public sealed record CablingFigures
{
    /// <summary>Section of all cables, mm2.</summary>
    public double? AreaMm2 { get; init; }

    /// <summary>Section of the side channels, mm2.</summary>
    public double? SideSpaceMm2 { get; init; }

    /// <summary>The one to the other, percent.</summary>
    public double? FillPercent { get; init; }
}

/// <summary>The rack on its way.</summary>
public sealed record DeliveryFigures
{
    /// <summary>Mass with pallet, kg.</summary>
    public double? GrossKg { get; init; }

    /// <summary>Height on the pallet, mm.</summary>
    public double? HeightOnPalletMm { get; init; }

    /// <summary>Width of the larger of rack and pallet, mm.</summary>
    public double? WidthMm { get; init; }

    /// <summary>Depth of the larger of rack and pallet, mm.</summary>
    public double? DepthMm { get; init; }
}
