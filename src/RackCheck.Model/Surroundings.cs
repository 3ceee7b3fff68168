using System.ComponentModel.DataAnnotations;

namespace RackCheck.Model;

/// <summary>Fans, intake, filters and air conditioner.</summary>
public sealed record Cooling
{
    /// <summary>Fans in the roof.</summary>
    [MaxLength(16)]
    public IReadOnlyList<FanSet>? RoofFans { get; init; }

    /// <summary>Fan trays among the units.</summary>
    [MaxLength(16)]
    public IReadOnlyList<FanSet>? FanTrays { get; init; }

    /// <summary>Free area of the air intake, cm2.</summary>
    [Range(0d, 100000d)]
    public double? IntakeAreaCm2 { get; init; }

    /// <summary>Whether intakes and fans have filters.</summary>
    public bool? Filters { get; init; }

    /// <summary>Air that comes from under the floor.</summary>
    public Underfloor? Underfloor { get; init; }

    /// <summary>The air conditioner.</summary>
    public AirConditioner? AirConditioner { get; init; }

    /// <summary>Rise of the air's temperature allowed through the rack, K; 10 unless told.</summary>
    [Range(0.1d, 100d)]
    public double? RiseK { get; init; }
}

/// <summary>Equal fans side by side.</summary>
public sealed record FanSet
{
    /// <summary>How many.</summary>
    [Range(0, 100)]
    public required int Count { get; init; }

    /// <summary>Flow of one with nothing in its way, m3/h.</summary>
    [Range(0d, 100000d)]
    public required double FreeFlowM3h { get; init; }

    /// <summary>Pressure of one at no flow, Pa.</summary>
    [Range(0d, 10000d)]
    public double? MaxPressurePa { get; init; }

    /// <summary>Curve of one, point by point.</summary>
    [MaxLength(50)]
    public IReadOnlyList<FanPoint>? Curve { get; init; }
}

/// <summary>A point of a fan's curve.</summary>
public sealed record FanPoint
{
    /// <summary>Flow, m3/h.</summary>
    [Range(0d, 100000d)]
    public required double M3h { get; init; }

    /// <summary>Pressure, Pa.</summary>
    [Range(0d, 10000d)]
    public required double Pa { get; init; }
}

/// <summary>Air that comes from under the floor.</summary>
public sealed record Underfloor
{
    /// <summary>Flow, m3/h.</summary>
    [Range(0d, 100000d)]
    public double? SupplyM3h { get; init; }

    /// <summary>Temperature, C.</summary>
    [Range(-20d, 60d)]
    public double? SupplyC { get; init; }
}

/// <summary>An air conditioner.</summary>
public sealed record AirConditioner
{
    /// <summary>Cooling capacity, W.</summary>
    [Range(0d, 100000d)]
    public required double CapacityW { get; init; }

    /// <summary>Where it sits.</summary>
    public AirConditionerStyle? Style { get; init; }

    /// <summary>Temperature that it holds inside, C; 35 unless told.</summary>
    [Range(-20d, 80d)]
    public double? SetpointC { get; init; }

    /// <summary>Outside temperature that the capacity is given for, C.</summary>
    [Range(-20d, 80d)]
    public double? RatedAmbientC { get; init; }
}

/// <summary>Protective earth beyond the cords.</summary>
public sealed record Earthing
{
    /// <summary>Whether a second earth, beside the cords', is asked for.</summary>
    public bool? SecondaryEarth { get; init; }

    /// <summary>Section of the main protective conductor, mm2.</summary>
    [Range(0.1d, 1000d)]
    public double? MainConductorMm2 { get; init; }

    /// <summary>Parts that are joined to protective earth.</summary>
    [MaxLength(6)]
    public IReadOnlyList<BondedPart>? Bonded { get; init; }
}

/// <summary>Where the rack goes and how it gets there.</summary>
public sealed record Site
{
    /// <summary>Which local wiring practice applies.</summary>
    public Region? Region { get; init; }

    /// <summary>Highest temperature of the room, C; 25 unless told.</summary>
    [Range(-50d, 80d)]
    public double? AmbientMaxC { get; init; }

    /// <summary>Highest relative humidity of the room, percent.</summary>
    [Range(0d, 100d)]
    public double? HumidityMaxPercent { get; init; }

    /// <summary>Height above the sea, m; 0 unless told.</summary>
    [Range(-500d, 6000d)]
    public double? AltitudeM { get; init; }

    /// <summary>Degree of protection asked for, as "IP20".</summary>
    [RegularExpression("^IP[0-6X][0-9X]$")]
    public string? RequiredIp { get; init; }

    /// <summary>Run time asked of the uninterruptible power supply, minutes.</summary>
    [Range(0d, 10000d)]
    public double? UpsMinutes { get; init; }

    /// <summary>Whether nobody is near to press a button.</summary>
    public bool? Remote { get; init; }

    /// <summary>Whether the public can reach the rack.</summary>
    public bool? PublicAccess { get; init; }

    /// <summary>Whether there is an outside wall that a pipe can go through to a unit outside.</summary>
    public bool? OutsideWall { get; init; }

    /// <summary>Clear aisle before the front, mm.</summary>
    [Range(0d, 100000d)]
    public double? AisleFrontMm { get; init; }

    /// <summary>What the floor carries.</summary>
    public Floor? Floor { get; init; }

    /// <summary>The way from the lorry to the place.</summary>
    public Delivery? Delivery { get; init; }
}

/// <summary>What the floor carries.</summary>
public sealed record Floor
{
    /// <summary>Spread load, kN/m2.</summary>
    [Range(0.01d, 1000d)]
    public double? DistributedKnM2 { get; init; }

    /// <summary>Load on one point, kN.</summary>
    [Range(0.01d, 1000d)]
    public double? PointKn { get; init; }
}

/// <summary>The way from the lorry to the place.</summary>
public sealed record Delivery
{
    /// <summary>Height of the pallet, mm; 150 unless told.</summary>
    [Range(0d, 1000d)]
    public double? PalletHeightMm { get; init; }

    /// <summary>Width of the pallet, mm.</summary>
    [Range(0d, 5000d)]
    public double? PalletWidthMm { get; init; }

    /// <summary>Depth of the pallet, mm.</summary>
    [Range(0d, 5000d)]
    public double? PalletDepthMm { get; init; }

    /// <summary>Mass of the pallet, kg.</summary>
    [Range(0d, 1000d)]
    public double? PalletKg { get; init; }

    /// <summary>Doors and hatches on the way, clear sizes.</summary>
    [MaxLength(50)]
    public IReadOnlyList<Opening>? Openings { get; init; }

    /// <summary>Corners of corridors on the way.</summary>
    [MaxLength(50)]
    public IReadOnlyList<Corridor>? Corridors { get; init; }

    /// <summary>The lift.</summary>
    public Lift? Lift { get; init; }

    /// <summary>Mass that the lifting equipment is rated for, kg.</summary>
    [Range(1d, 100000d)]
    public double? LiftingKg { get; init; }

    /// <summary>Whether somebody is arranged to take receipt.</summary>
    public bool? ReceiverArranged { get; init; }

    /// <summary>Whether the rack may be tilted on the way.</summary>
    public bool? MayTilt { get; init; }
}

/// <summary>A door or hatch, clear size.</summary>
public sealed record Opening
{
    /// <summary>What it is called.</summary>
    [StringLength(64)]
    public string? Name { get; init; }

    /// <summary>Clear width, mm.</summary>
    [Range(1d, 100000d)]
    public required double WidthMm { get; init; }

    /// <summary>Clear height, mm.</summary>
    [Range(1d, 100000d)]
    public required double HeightMm { get; init; }
}

/// <summary>A corner from one corridor into another.</summary>
public sealed record Corridor
{
    /// <summary>Width of the corridor that the rack comes along, mm.</summary>
    [Range(1d, 100000d)]
    public required double WidthMm { get; init; }

    /// <summary>Width of the corridor that it turns into, mm.</summary>
    [Range(1d, 100000d)]
    public required double TurnIntoMm { get; init; }
}

/// <summary>A lift car.</summary>
public sealed record Lift
{
    /// <summary>Clear width, mm.</summary>
    [Range(1d, 100000d)]
    public double? WidthMm { get; init; }

    /// <summary>Clear depth, mm.</summary>
    [Range(1d, 100000d)]
    public double? DepthMm { get; init; }

    /// <summary>Clear height, mm.</summary>
    [Range(1d, 100000d)]
    public double? HeightMm { get; init; }

    /// <summary>Rated load, kg.</summary>
    [Range(1d, 100000d)]
    public double? RatedKg { get; init; }
}
