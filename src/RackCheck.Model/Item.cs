using System.ComponentModel.DataAnnotations;

namespace RackCheck.Model;

/// <summary>What is true of every piece of one product, wherever it is mounted: what a part number can tell of an item.</summary>
public abstract record ItemFacts
{
    /// <summary>What it is, in the caller's words.</summary>
    [StringLength(200)]
    public string? Description { get; init; }

    /// <summary>What kind of equipment it is.</summary>
    public ItemCategory? Category { get; init; }

    /// <summary>Height in rack units; 0 for a thing that stands on a shelf. May come from the part number.</summary>
    [Range(0, 60)]
    public int? HeightU { get; init; }

    /// <summary>Outer size of the body behind the mounting plane.</summary>
    public Body? Body { get; init; }

    /// <summary>How far handles, knobs and front cables stand out before the mounting plane, mm; 40 unless told.</summary>
    [Range(0d, 1000d)]
    public double? FrontProjectionMm { get; init; }

    /// <summary>Room that connectors and cable bends take behind the body, mm; 75 unless told, 25 for an item with neither plugs nor cables.</summary>
    [Range(0d, 1000d)]
    public double? RearProjectionMm { get; init; }

    /// <summary>Mass, kg.</summary>
    [Range(0d, 5000d)]
    public double? MassKg { get; init; }

    /// <summary>What carries it.</summary>
    public Support? Support { get; init; }

    /// <summary>How it is fastened to the uprights.</summary>
    public Fixing? Fixing { get; init; }

    /// <summary>What it draws.</summary>
    public ItemPower? Power { get; init; }

    /// <summary>Heat that it gives off, W.</summary>
    [Range(0d, 100000d)]
    public double? HeatW { get; init; }

    /// <summary>Air that its own fans move.</summary>
    public Airflow? Airflow { get; init; }

    /// <summary>Highest temperature of the air that it takes in, C.</summary>
    [Range(-50d, 100d)]
    public double? MaxInletC { get; init; }

    /// <summary>Whether it has a stud for a separate earth lead.</summary>
    public bool? EarthStud { get; init; }

    /// <summary>Cables that leave it, bundle by bundle.</summary>
    [MaxLength(50)]
    public IReadOnlyList<CableBundle>? Cables { get; init; }

    /// <summary>Whether it wants a port of a keyboard, video and mouse switch.</summary>
    public bool? Console { get; init; }

    /// <summary>How many such ports it offers.</summary>
    [Range(0, 1000)]
    public int? KvmPorts { get; init; }

    /// <summary>Whether it must be power cycled from afar.</summary>
    public bool? RemotePowerCycle { get; init; }

    /// <summary>What it can supply, for an uninterruptible power supply.</summary>
    public Ups? Ups { get; init; }
}

/// <summary>What the product catalogue tells of a piece of equipment.</summary>
public sealed record ProductItem : ItemFacts;

/// <summary>One piece of equipment.</summary>
public sealed record Item : ItemFacts
{
    /// <summary>The caller's id of it, unique in the description.</summary>
    [StringLength(64, MinimumLength = 1)]
    public required string Id { get; init; }

    /// <summary>Part number in the product catalogue.</summary>
    [StringLength(64, MinimumLength = 1)]
    public string? PartNumber { get; init; }

    /// <summary>How many; baskets only.</summary>
    [Range(1, 10000)]
    public int? Quantity { get; init; }

    /// <summary>Where it is mounted. Absent: not placed yet.</summary>
    public Position? Position { get; init; }

    /// <summary>Id of the shelf that it stands on.</summary>
    [StringLength(64, MinimumLength = 1)]
    public string? OnShelf { get; init; }

    /// <summary>Its earth lead.</summary>
    public EarthLead? EarthLead { get; init; }

    /// <summary>Whether it is a stand-by unit that can be brought up.</summary>
    public bool? Spare { get; init; }
}

/// <summary>Where an item is mounted.</summary>
public sealed record Position
{
    /// <summary>The lowest unit that it takes, by place, counted as <c>unitNumbering</c> says: with top-down numbering it is the largest number of those taken.</summary>
    [Range(-200, 200)]
    public required int U { get; init; }

    /// <summary>Front or rear uprights; front unless told.</summary>
    public Face? Face { get; init; }
}

/// <summary>Outer size of a body.</summary>
public sealed record Body
{
    /// <summary>Width, mm.</summary>
    [Range(0d, 2000d)]
    public double? WidthMm { get; init; }

    /// <summary>Height, mm.</summary>
    [Range(0d, 3000d)]
    public double? HeightMm { get; init; }

    /// <summary>Depth behind the mounting plane, mm.</summary>
    [Range(0d, 3000d)]
    public double? DepthMm { get; init; }
}

/// <summary>What carries an item.</summary>
public sealed record Support
{
    /// <summary>Panel, slides, runners or a shelf of its own.</summary>
    public SupportStyle? Style { get; init; }

    /// <summary>Mass that the pair is rated for, kg.</summary>
    [Range(0.1d, 5000d)]
    public double? RatedKg { get; init; }

    /// <summary>Thickness, mm: of one slide (9.5 unless told), or of the angle under the item (2 unless told).</summary>
    [Range(0d, 100d)]
    public double? ThicknessMm { get; init; }

    /// <summary>Least distance between front and rear uprights that it fits, mm.</summary>
    [Range(0d, 3000d)]
    public double? MinSpacingMm { get; init; }

    /// <summary>Greatest distance between front and rear uprights that it fits, mm.</summary>
    [Range(0d, 3000d)]
    public double? MaxSpacingMm { get; init; }

    /// <summary>How far slides pull out, mm.</summary>
    [Range(0d, 3000d)]
    public double? ExtensionMm { get; init; }

    /// <summary>Whether the item is pulled forward while it works.</summary>
    public bool? UsedExtended { get; init; }

    /// <summary>Whether a cable-management arm is fitted.</summary>
    public bool? CableArm { get; init; }
}

/// <summary>Air that an item's own fans move.</summary>
public sealed record Airflow
{
    /// <summary>From where to where.</summary>
    public AirflowDirection? Direction { get; init; }

    /// <summary>How much, m3/h.</summary>
    [Range(0d, 100000d)]
    public double? FlowM3h { get; init; }
}

/// <summary>An earth lead.</summary>
public sealed record EarthLead
{
    /// <summary>Section, mm2.</summary>
    [Range(0.1d, 1000d)]
    public double? CrossSectionMm2 { get; init; }

    /// <summary>Length, m.</summary>
    [Range(0.01d, 100d)]
    public double? LengthM { get; init; }
}

/// <summary>Cables of one kind.</summary>
public sealed record CableBundle
{
    /// <summary>Outer diameter of one cable, mm.</summary>
    [Range(0.1d, 200d)]
    public required double DiameterMm { get; init; }

    /// <summary>How many.</summary>
    [Range(0, 10000)]
    public required int Count { get; init; }
}
