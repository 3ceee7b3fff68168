using System.ComponentModel.DataAnnotations;

namespace RackCheck.Model;

/// <summary>The cabinet. Height in units, width and depth may come from the part number instead.</summary>
public sealed record Cabinet
{
    /// <summary>Part number in the product catalogue.</summary>
    [StringLength(64, MinimumLength = 1)]
    public string? PartNumber { get; init; }

    /// <summary>Height of the mounting space in rack units (44.45 mm each).</summary>
    [Range(1, 60)]
    public int? HeightU { get; init; }

    /// <summary>Overall width with side panels, mm.</summary>
    [Range(200d, 3000d)]
    public double? WidthMm { get; init; }

    /// <summary>Overall depth with doors, mm.</summary>
    [Range(100d, 3000d)]
    public double? DepthMm { get; init; }

    /// <summary>Overall height with the base, mm.</summary>
    [Range(100d, 5000d)]
    public double? HeightMm { get; init; }

    /// <summary>Mass of the empty cabinet, kg.</summary>
    [Range(0d, 5000d)]
    public double? MassKg { get; init; }

    /// <summary>The front door.</summary>
    public Door? FrontDoor { get; init; }

    /// <summary>The rear door.</summary>
    public Door? RearDoor { get; init; }

    /// <summary>Whether side panels are fitted; true unless told.</summary>
    public bool? SidePanels { get; init; }

    /// <summary>The roof.</summary>
    public Roof? Roof { get; init; }

    /// <summary>What the cabinet stands on.</summary>
    public CabinetBase? Base { get; init; }

    /// <summary>The mounting uprights.</summary>
    public Uprights? Uprights { get; init; }

    /// <summary>Mass of equipment that the cabinet may carry standing, kg.</summary>
    [Range(1d, 10000d)]
    public double? RatedLoadKg { get; init; }

    /// <summary>Mass of equipment that the cabinet may carry while it is moved on its castors, kg.</summary>
    [Range(1d, 10000d)]
    public double? RollingLoadKg { get; init; }

    /// <summary>Whether doors and panels can be locked.</summary>
    public bool? Lockable { get; init; }

    /// <summary>Degree of protection to IEC 60529, as "IP20".</summary>
    [RegularExpression("^IP[0-6X][0-9X]$")]
    public string? IpCode { get; init; }

    /// <summary>The earth bar.</summary>
    public EarthBar? EarthBar { get; init; }

    /// <summary>How the cabinet stands among walls and neighbours; free unless told.</summary>
    public Placement? Placement { get; init; }
}

/// <summary>A door of the cabinet.</summary>
public sealed record Door
{
    /// <summary>Part number in the product catalogue, where it is not the door that the cabinet comes with.</summary>
    [StringLength(64, MinimumLength = 1)]
    public string? PartNumber { get; init; }

    /// <summary>How it is made; may come from a part number instead.</summary>
    public DoorStyle? Style { get; init; }

    /// <summary>Depth that it takes from the cabinet's overall depth, mm; 25 unless told, 0 where there is no door.</summary>
    [Range(0d, 500d)]
    public double? DepthMm { get; init; }

    /// <summary>Open share of the perforated face, percent.</summary>
    [Range(1d, 100d)]
    public double? OpenAreaPercent { get; init; }

    /// <summary>Area of the perforated face, m2.</summary>
    [Range(0.001d, 10d)]
    public double? PerforatedAreaM2 { get; init; }

    /// <summary>Whether it is joined to protective earth.</summary>
    public bool? Bonded { get; init; }
}

/// <summary>The roof of the cabinet.</summary>
public sealed record Roof
{
    /// <summary>How it is made.</summary>
    public RoofStyle? Style { get; init; }

    /// <summary>Free area of its openings, cm2.</summary>
    [Range(0d, 20000d)]
    public double? OpenAreaCm2 { get; init; }
}

/// <summary>What the cabinet stands on.</summary>
public sealed record CabinetBase
{
    /// <summary>Castors, feet, plinth or bolts.</summary>
    public BaseStyle? Style { get; init; }

    /// <summary>Height of the base, inside the overall height, mm.</summary>
    [Range(0d, 1000d)]
    public double? HeightMm { get; init; }

    /// <summary>How far the support edge reaches beyond the front, mm.</summary>
    [Range(0d, 2000d)]
    public double? StabiliserMm { get; init; }
}

/// <summary>The mounting uprights.</summary>
public sealed record Uprights
{
    /// <summary>Shape of their holes.</summary>
    public UprightHole? Hole { get; init; }

    /// <summary>Outer front face of the cabinet to the front mounting plane, mm. Absent: the uprights are movable and not set yet.</summary>
    [Range(0d, 3000d)]
    public double? FrontSetbackMm { get; init; }

    /// <summary>Front mounting plane to rear mounting plane, mm.</summary>
    [Range(1d, 3000d)]
    public double? SpacingMm { get; init; }

    /// <summary>Pitch of the holes that the uprights are moved along in depth, mm; 25 unless told.</summary>
    [Range(1d, 500d)]
    public double? PitchMm { get; init; }

    /// <summary>Clear opening between the uprights, mm; 450 unless told.</summary>
    [Range(100d, 1000d)]
    public double? OpeningMm { get; init; }
}

/// <summary>The earth bar.</summary>
public sealed record EarthBar
{
    /// <summary>Part number in the product catalogue, where it is not the bar that the cabinet comes with.</summary>
    [StringLength(64, MinimumLength = 1)]
    public string? PartNumber { get; init; }

    /// <summary>Number of terminals.</summary>
    [Range(0, 500)]
    public int? Terminals { get; init; }

    /// <summary>Length, mm.</summary>
    [Range(0d, 5000d)]
    public double? LengthMm { get; init; }

    /// <summary>Section, mm2.</summary>
    [Range(0d, 2000d)]
    public double? CrossSectionMm2 { get; init; }
}
