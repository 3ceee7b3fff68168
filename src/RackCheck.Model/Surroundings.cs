using System.ComponentModel.DataAnnotations;

namespace RackCheck.Model;

/// <summary>Fans, air intake, filters and air conditioner.</summary>
public sealed record Cooling
{
    /// <summary>Roof fans.</summary>
    [MaxLength(16)]
    [Kind(MemberKind.Part)]
    public IReadOnlyList<FanSet>? RoofFans { get; init; }

    /// <summary>Fan trays among the equipment.</summary>
    [MaxLength(16)]
    [Kind(MemberKind.Part)]
    public IReadOnlyList<FanSet>? FanTrays { get; init; }

    /// <summary>Free area of the air intake, cm2.</summary>
    [Range(0d, 100000d)]
    [Kind(MemberKind.Part)]
    public double? IntakeAreaCm2 { get; init; }

    /// <summary>Whether intakes and fans have filters.</summary>
    [Kind(MemberKind.Part)]
    public bool? Filters { get; init; }

    /// <summary>The filter mat of the air intake.</summary>
    [Kind(MemberKind.Part)]
    public AirFilter? Filter { get; init; }

    /// <summary>Air supplied from under a raised floor.</summary>
    [Kind(MemberKind.Part)]
    public Underfloor? Underfloor { get; init; }

    /// <summary>The air conditioner.</summary>
    [Kind(MemberKind.Part)]
    public AirConditioner? AirConditioner { get; init; }

    /// <summary>Permitted air temperature rise through the rack, K. Default 15 K for forced air; none for air through perforated doors.</summary>
    [Range(0.1d, 100d)]
    [Kind(MemberKind.Requirement)]
    public double? RiseK { get; init; }
}

/// <summary>A set of identical fans in parallel.</summary>
public sealed record FanSet
{
    /// <summary>Number of fans.</summary>
    [Range(0, 100)]
    public required int Count { get; init; }

    /// <summary>Free-air flow of one fan, m3/h.</summary>
    [Range(0d, 100000d)]
    public required double FreeFlowM3h { get; init; }

    /// <summary>Maximum static pressure of one fan at zero flow, Pa.</summary>
    [Range(0d, 10000d)]
    [Kind(MemberKind.Fact)]
    public double? MaxPressurePa { get; init; }

    /// <summary>Fan curve of one fan, as points.</summary>
    [MaxLength(50)]
    [Kind(MemberKind.Fact)]
    public IReadOnlyList<FanPoint>? Curve { get; init; }

    /// <summary>Electrical input of the set, W.</summary>
    [Range(0d, 10000d)]
    [Kind(MemberKind.Fact)]
    public double? InputW { get; init; }

    /// <summary>Id of the supply that feeds the fans. Absent: fed from outside the rack.</summary>
    [StringLength(64, MinimumLength = 1)]
    [Kind(MemberKind.Choice)]
    public string? Supply { get; init; }
}

/// <summary>A filter mat in the air intake.</summary>
public sealed record AirFilter
{
    /// <summary>Area of the mat, cm2. Default the area of the intake.</summary>
    [Range(1d, 100000d)]
    [Kind(MemberKind.Fact)]
    public double? AreaCm2 { get; init; }

    /// <summary>Pressure drop of the mat before it is changed, Pa, at <c>atM3h</c>.</summary>
    [Range(0d, 10000d)]
    [Kind(MemberKind.Fact)]
    public double? LossPa { get; init; }

    /// <summary>Airflow at which the pressure drop is specified, m3/h.</summary>
    [Range(1d, 100000d)]
    [Kind(MemberKind.Fact)]
    public double? AtM3h { get; init; }
}

/// <summary>A point of a fan curve.</summary>
public sealed record FanPoint
{
    /// <summary>Airflow, m3/h.</summary>
    [Range(0d, 100000d)]
    public required double M3h { get; init; }

    /// <summary>Static pressure, Pa.</summary>
    [Range(0d, 10000d)]
    public required double Pa { get; init; }
}

/// <summary>Air supplied from under a raised floor.</summary>
public sealed record Underfloor
{
    /// <summary>Airflow, m3/h.</summary>
    [Range(0d, 100000d)]
    [Kind(MemberKind.Fact)]
    public double? SupplyM3h { get; init; }

    /// <summary>Temperature of the supplied air, C.</summary>
    [Range(-20d, 60d)]
    [Kind(MemberKind.Fact)]
    public double? SupplyC { get; init; }
}

/// <summary>An air conditioner.</summary>
public sealed record AirConditioner
{
    /// <summary>Cooling capacity, W.</summary>
    [Range(0d, 100000d)]
    public required double CapacityW { get; init; }

    /// <summary>Mounting style.</summary>
    [Kind(MemberKind.Part)]
    public AirConditionerStyle? Style { get; init; }

    /// <summary>Setpoint of the temperature inside the cabinet, C. Default 35 C.</summary>
    [Range(-20d, 80d)]
    [Kind(MemberKind.Choice)]
    public double? SetpointC { get; init; }

    /// <summary>Ambient temperature at which the capacity is rated, C.</summary>
    [Range(-20d, 80d)]
    [Kind(MemberKind.Fact)]
    public double? RatedAmbientC { get; init; }

    /// <summary>Electrical input, W.</summary>
    [Range(0d, 100000d)]
    [Kind(MemberKind.Fact)]
    public double? InputW { get; init; }

    /// <summary>Id of the supply that feeds the air conditioner. Absent: fed from outside the rack.</summary>
    [StringLength(64, MinimumLength = 1)]
    [Kind(MemberKind.Choice)]
    public string? Supply { get; init; }
}

/// <summary>Protective earthing in addition to the mains cords.</summary>
public sealed record Earthing
{
    /// <summary>Whether a secondary earth is required in addition to the protective conductors of the cords.</summary>
    [Kind(MemberKind.Requirement)]
    public bool? SecondaryEarth { get; init; }

    /// <summary>Cross-sectional area of the main protective conductor, mm2.</summary>
    [Range(0.1d, 1000d)]
    [Kind(MemberKind.Fact)]
    public double? MainConductorMm2 { get; init; }

    /// <summary>Parts bonded to protective earth.</summary>
    [MaxLength(6)]
    [Kind(MemberKind.Fact)]
    public IReadOnlyList<BondedPart>? Bonded { get; init; }
}

/// <summary>Installation site and delivery route.</summary>
public sealed record Site
{
    /// <summary>Region whose wiring practice applies.</summary>
    [Kind(MemberKind.Fact)]
    public Region? Region { get; init; }

    /// <summary>Maximum room temperature, C. Default 35 C.</summary>
    [Range(-50d, 80d)]
    [Kind(MemberKind.Fact)]
    public double? AmbientMaxC { get; init; }

    /// <summary>Minimum room temperature, C.</summary>
    [Range(-60d, 60d)]
    [Kind(MemberKind.Fact)]
    public double? AmbientMinC { get; init; }

    /// <summary>Maximum relative humidity of the room, percent.</summary>
    [Range(0d, 100d)]
    [Kind(MemberKind.Fact)]
    public double? HumidityMaxPercent { get; init; }

    /// <summary>Altitude above sea level, m. Default 0 m.</summary>
    [Range(-500d, 6000d)]
    [Kind(MemberKind.Fact)]
    public double? AltitudeM { get; init; }

    /// <summary>Required degree of protection to IEC 60529, for example "IP20".</summary>
    [RegularExpression("^IP[0-6X][0-9X]$")]
    [Kind(MemberKind.Requirement)]
    public string? RequiredIp { get; init; }

    /// <summary>Required run time of the UPS, minutes.</summary>
    [Range(0d, 10000d)]
    [Kind(MemberKind.Requirement)]
    public double? UpsMinutes { get; init; }

    /// <summary>Whether the site is unattended.</summary>
    [Kind(MemberKind.Requirement)]
    public bool? Remote { get; init; }

    /// <summary>Whether the public has access to the rack.</summary>
    [Kind(MemberKind.Requirement)]
    public bool? PublicAccess { get; init; }

    /// <summary>Whether an outside wall is available for the pipes of a split air conditioner.</summary>
    [Kind(MemberKind.Fact)]
    public bool? OutsideWall { get; init; }

    /// <summary>Clear aisle width in front of the rack, mm.</summary>
    [Range(0d, 100000d)]
    [Kind(MemberKind.Fact)]
    public double? AisleFrontMm { get; init; }

    /// <summary>Clear aisle width behind the rack, mm.</summary>
    [Range(0d, 100000d)]
    [Kind(MemberKind.Fact)]
    public double? AisleRearMm { get; init; }

    /// <summary>People and aids for lifting equipment into the rack.</summary>
    [Kind(MemberKind.Choice)]
    public Handling? Handling { get; init; }

    /// <summary>Whether the site is in a seismic zone. Default false.</summary>
    [Kind(MemberKind.Requirement)]
    public bool? Seismic { get; init; }

    /// <summary>Load capacity of the floor.</summary>
    [Kind(MemberKind.Part)]
    public Floor? Floor { get; init; }

    /// <summary>Delivery route from the lorry to the installation site.</summary>
    [Kind(MemberKind.Part)]
    public Delivery? Delivery { get; init; }
}

/// <summary>People and aids for lifting equipment into the rack.</summary>
public sealed record Handling
{
    /// <summary>Number of people who lift together. Default 2.</summary>
    [Range(1, 10)]
    [Kind(MemberKind.Choice)]
    public int? Persons { get; init; }

    /// <summary>Whether a lifting aid is used. Default false.</summary>
    [Kind(MemberKind.Choice)]
    public bool? LiftAid { get; init; }
}

/// <summary>Load capacity of the floor.</summary>
public sealed record Floor
{
    /// <summary>Permitted distributed load, kN/m2.</summary>
    [Range(0.01d, 1000d)]
    [Kind(MemberKind.Fact)]
    public double? DistributedKnM2 { get; init; }

    /// <summary>Permitted point load, kN.</summary>
    [Range(0.01d, 1000d)]
    [Kind(MemberKind.Fact)]
    public double? PointKn { get; init; }
}

/// <summary>Delivery route from the lorry to the installation site.</summary>
public sealed record Delivery
{
    /// <summary>Height of the pallet, mm. Default 150 mm.</summary>
    [Range(0d, 1000d)]
    [Kind(MemberKind.Choice)]
    public double? PalletHeightMm { get; init; }

    /// <summary>Width of the pallet, mm.</summary>
    [Range(0d, 5000d)]
    [Kind(MemberKind.Choice)]
    public double? PalletWidthMm { get; init; }

    /// <summary>Depth of the pallet, mm.</summary>
    [Range(0d, 5000d)]
    [Kind(MemberKind.Choice)]
    public double? PalletDepthMm { get; init; }

    /// <summary>Mass of the pallet, kg.</summary>
    [Range(0d, 1000d)]
    [Kind(MemberKind.Fact)]
    public double? PalletKg { get; init; }

    /// <summary>Doors and hatches on the delivery route, clear dimensions. Absent: not known; empty: there are none.</summary>
    [MaxLength(50)]
    [Kind(MemberKind.Fact)]
    public IReadOnlyList<Opening>? Openings { get; init; }

    /// <summary>Corridor corners on the delivery route. Absent: not known; empty: there are none.</summary>
    [MaxLength(50)]
    [Kind(MemberKind.Fact)]
    public IReadOnlyList<Corridor>? Corridors { get; init; }

    /// <summary>Ramps on the delivery route. Absent: not known; empty: there are none.</summary>
    [MaxLength(50)]
    [Kind(MemberKind.Fact)]
    public IReadOnlyList<Ramp>? Ramps { get; init; }

    /// <summary>Whether the rack is delivered with its equipment mounted. Default true when it has equipment.</summary>
    [Kind(MemberKind.Choice)]
    public bool? Loaded { get; init; }

    /// <summary>The lift.</summary>
    [Kind(MemberKind.Part)]
    public Lift? Lift { get; init; }

    /// <summary>Rated capacity of the lifting equipment, kg.</summary>
    [Range(1d, 100000d)]
    [Kind(MemberKind.Part)]
    public double? LiftingKg { get; init; }

    /// <summary>Whether somebody is appointed to receive the delivery.</summary>
    [Kind(MemberKind.Fact)]
    public bool? ReceiverArranged { get; init; }

    /// <summary>Whether the rack may be tilted during delivery.</summary>
    [Kind(MemberKind.Fact)]
    public bool? MayTilt { get; init; }
}

/// <summary>A door or hatch, clear dimensions.</summary>
public sealed record Opening
{
    /// <summary>Name of the door or hatch.</summary>
    [StringLength(64)]
    [Kind(MemberKind.Part)]
    public string? Name { get; init; }

    /// <summary>Clear width, mm.</summary>
    [Range(1d, 100000d)]
    public required double WidthMm { get; init; }

    /// <summary>Clear height, mm.</summary>
    [Range(1d, 100000d)]
    public required double HeightMm { get; init; }
}

/// <summary>A corner between two corridors.</summary>
public sealed record Corridor
{
    /// <summary>Width of the corridor before the corner, mm.</summary>
    [Range(1d, 100000d)]
    public required double WidthMm { get; init; }

    /// <summary>Width of the corridor after the corner, mm.</summary>
    [Range(1d, 100000d)]
    public required double TurnIntoMm { get; init; }
}

/// <summary>A ramp on the delivery route.</summary>
public sealed record Ramp
{
    /// <summary>Slope, percent: rise over run.</summary>
    [Range(0d, 100d)]
    public required double SlopePercent { get; init; }
}

/// <summary>A lift car.</summary>
public sealed record Lift
{
    /// <summary>Clear width, mm.</summary>
    [Range(1d, 100000d)]
    [Kind(MemberKind.Fact)]
    public double? WidthMm { get; init; }

    /// <summary>Clear depth, mm.</summary>
    [Range(1d, 100000d)]
    [Kind(MemberKind.Fact)]
    public double? DepthMm { get; init; }

    /// <summary>Clear height, mm.</summary>
    [Range(1d, 100000d)]
    [Kind(MemberKind.Fact)]
    public double? HeightMm { get; init; }

    /// <summary>Rated load, kg.</summary>
    [Range(1d, 100000d)]
    [Kind(MemberKind.Fact)]
    public double? RatedKg { get; init; }
}
