using System.ComponentModel.DataAnnotations;

namespace RackCheck.Model;

/// <summary>The cabinet. Height in U, width and depth may come from the part number instead.</summary>
public sealed record Cabinet
{
    /// <summary>Part number in the product catalogue.</summary>
    [StringLength(64, MinimumLength = 1)]
    [Kind(MemberKind.Part)]
    public string? PartNumber { get; init; }

    /// <summary>Height of the mounting space, U (1 U is 44.45 mm). Required unless a part number has it.</summary>
    [Range(1, 60)]
    [Kind(MemberKind.Fact)]
    public int? HeightU { get; init; }

    /// <summary>Overall width including side panels, mm. Required unless a part number has it.</summary>
    [Range(200d, 3000d)]
    [Kind(MemberKind.Fact)]
    public double? WidthMm { get; init; }

    /// <summary>Overall depth including doors, mm. Required unless a part number has it.</summary>
    [Range(100d, 3000d)]
    [Kind(MemberKind.Fact)]
    public double? DepthMm { get; init; }

    /// <summary>Overall height including the base, mm.</summary>
    [Range(100d, 5000d)]
    [Kind(MemberKind.Fact)]
    public double? HeightMm { get; init; }

    /// <summary>Mass of the empty cabinet, kg.</summary>
    [Range(0d, 5000d)]
    [Kind(MemberKind.Fact)]
    public double? MassKg { get; init; }

    /// <summary>The front door.</summary>
    [Kind(MemberKind.Part)]
    public Door? FrontDoor { get; init; }

    /// <summary>The rear door.</summary>
    [Kind(MemberKind.Part)]
    public Door? RearDoor { get; init; }

    /// <summary>Whether side panels are fitted. Default true.</summary>
    [Kind(MemberKind.Part)]
    public bool? SidePanels { get; init; }

    /// <summary>The roof.</summary>
    [Kind(MemberKind.Part)]
    public Roof? Roof { get; init; }

    /// <summary>The base: castors, feet, plinth, floor bolts or wall brackets.</summary>
    [Kind(MemberKind.Part)]
    public CabinetBase? Base { get; init; }

    /// <summary>The mounting uprights.</summary>
    [Kind(MemberKind.Part)]
    public Uprights? Uprights { get; init; }

    /// <summary>Maximum equipment mass with the cabinet stationary (static load rating), kg.</summary>
    [Range(1d, 10000d)]
    [Kind(MemberKind.Fact)]
    public double? RatedLoadKg { get; init; }

    /// <summary>Maximum equipment mass while the cabinet is moved on its castors (dynamic load rating), kg.</summary>
    [Range(1d, 10000d)]
    [Kind(MemberKind.Fact)]
    public double? RollingLoadKg { get; init; }

    /// <summary>Maximum equipment mass while the loaded cabinet is transported (transport rating), kg.</summary>
    [Range(1d, 10000d)]
    [Kind(MemberKind.Fact)]
    public double? TransportLoadKg { get; init; }

    /// <summary>Maximum mass of the loaded cabinet on the wall, cabinet included (wall-hung cabinets), kg.</summary>
    [Range(1d, 10000d)]
    [Kind(MemberKind.Fact)]
    public double? WallLoadKg { get; init; }

    /// <summary>Whether an interlock lets only one item be drawn out at a time. Default false.</summary>
    [Kind(MemberKind.Part)]
    public bool? Interlock { get; init; }

    /// <summary>Whether doors and panels can be locked.</summary>
    [Kind(MemberKind.Fact)]
    public bool? Lockable { get; init; }

    /// <summary>Degree of protection to IEC 60529, for example "IP20".</summary>
    [RegularExpression("^IP[0-6X][0-9X]$")]
    [Kind(MemberKind.Fact)]
    public string? IpCode { get; init; }

    /// <summary>The earth bar.</summary>
    [Kind(MemberKind.Part)]
    public EarthBar? EarthBar { get; init; }

    /// <summary>Placement of the cabinet relative to walls and adjacent cabinets. Default free.</summary>
    [Kind(MemberKind.Choice)]
    public Placement? Placement { get; init; }
}

/// <summary>A door of the cabinet.</summary>
public sealed record Door
{
    /// <summary>Part number in the product catalogue, where this is not the cabinet's standard door.</summary>
    [StringLength(64, MinimumLength = 1)]
    [Kind(MemberKind.Part)]
    public string? PartNumber { get; init; }

    /// <summary>Construction of the door. May come from the part number instead.</summary>
    [Kind(MemberKind.Part)]
    public DoorStyle? Style { get; init; }

    /// <summary>Depth that the door takes from the cabinet's overall depth, mm. Default 25 mm, or 0 mm without a door.</summary>
    [Range(0d, 500d)]
    [Kind(MemberKind.Fact)]
    public double? DepthMm { get; init; }

    /// <summary>Open area of the perforated face, percent.</summary>
    [Range(1d, 100d)]
    [Kind(MemberKind.Fact)]
    public double? OpenAreaPercent { get; init; }

    /// <summary>Area of the perforated face, m2.</summary>
    [Range(0.001d, 10d)]
    [Kind(MemberKind.Fact)]
    public double? PerforatedAreaM2 { get; init; }

    /// <summary>Mass of the door, kg, included in the mass of the cabinet.</summary>
    [Range(0d, 500d)]
    [Kind(MemberKind.Fact)]
    public double? MassKg { get; init; }

    /// <summary>Number of leaves: 1 or 2.</summary>
    [AllowedValues(1, 2)]
    [Kind(MemberKind.Fact)]
    public int? Leaves { get; init; }

    /// <summary>Whether the door is bonded to protective earth.</summary>
    [Kind(MemberKind.Fact)]
    public bool? Bonded { get; init; }
}

/// <summary>The roof of the cabinet.</summary>
public sealed record Roof
{
    /// <summary>Construction of the roof.</summary>
    [Kind(MemberKind.Part)]
    public RoofStyle? Style { get; init; }

    /// <summary>Free area of the openings, cm2.</summary>
    [Range(0d, 20000d)]
    [Kind(MemberKind.Fact)]
    public double? OpenAreaCm2 { get; init; }
}

/// <summary>The base: castors, feet, plinth, floor bolts or wall brackets.</summary>
public sealed record CabinetBase
{
    /// <summary>Castors, feet, plinth, floor bolts or wall brackets.</summary>
    [Kind(MemberKind.Part)]
    public BaseStyle? Style { get; init; }

    /// <summary>Height of the base, included in the overall height, mm.</summary>
    [Range(0d, 1000d)]
    [Kind(MemberKind.Fact)]
    public double? HeightMm { get; init; }

    /// <summary>Distance from the face of the frame, behind the door, to the line of feet or castors, mm. Default 50 mm, or 0 mm for a plinth.</summary>
    [Range(0d, 500d)]
    [Kind(MemberKind.Fact)]
    public double? InsetMm { get; init; }

    /// <summary>Reach of the stabiliser beyond the cabinet front, mm.</summary>
    [Range(0d, 2000d)]
    [Kind(MemberKind.Part)]
    public double? StabiliserMm { get; init; }
}

/// <summary>The mounting uprights.</summary>
public sealed record Uprights
{
    /// <summary>Hole type of the uprights.</summary>
    [Kind(MemberKind.Fact)]
    public UprightHole? Hole { get; init; }

    /// <summary>
    /// Distance from the outer front face of the cabinet to the front mounting plane, mm. Absent: the uprights are adjustable and not yet set.
    /// </summary>
    [Range(0d, 3000d)]
    [Kind(MemberKind.Choice)]
    public double? FrontSetbackMm { get; init; }

    /// <summary>Distance from the front mounting plane to the rear mounting plane, mm.</summary>
    [Range(1d, 3000d)]
    [Kind(MemberKind.Choice)]
    public double? SpacingMm { get; init; }

    /// <summary>Pitch of the depth adjustment of the uprights, mm. Default 25 mm.</summary>
    [Range(1d, 500d)]
    [Kind(MemberKind.Fact)]
    public double? PitchMm { get; init; }

    /// <summary>Clear opening between the uprights, mm. Default 450 mm.</summary>
    [Range(100d, 1000d)]
    [Kind(MemberKind.Fact)]
    public double? OpeningMm { get; init; }
}

/// <summary>The earth bar.</summary>
public sealed record EarthBar
{
    /// <summary>Part number in the product catalogue, where this is not the cabinet's standard earth bar.</summary>
    [StringLength(64, MinimumLength = 1)]
    [Kind(MemberKind.Part)]
    public string? PartNumber { get; init; }

    /// <summary>Number of terminals.</summary>
    [Range(0, 500)]
    [Kind(MemberKind.Fact)]
    public int? Terminals { get; init; }

    /// <summary>Length of the bar, mm.</summary>
    [Range(0d, 5000d)]
    [Kind(MemberKind.Fact)]
    public double? LengthMm { get; init; }

    /// <summary>Cross-sectional area of the bar, mm2.</summary>
    [Range(0d, 2000d)]
    [Kind(MemberKind.Fact)]
    public double? CrossSectionMm2 { get; init; }
}
