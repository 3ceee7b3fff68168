using System.ComponentModel.DataAnnotations;

namespace RackCheck.Model;

/// <summary>Properties of an item that its part number can give, independent of where it is mounted.</summary>
public abstract record ItemFacts
{
    /// <summary>Free description by the caller.</summary>
    [StringLength(200)]
    [Kind(MemberKind.Part)]
    public string? Description { get; init; }

    /// <summary>Kind of equipment.</summary>
    [Kind(MemberKind.Part)]
    public ItemCategory? Category { get; init; }

    /// <summary>Height, U; 0 for an item that stands on a shelf. Required unless a part number has it.</summary>
    [Range(0, 60)]
    [Kind(MemberKind.Fact)]
    public int? HeightU { get; init; }

    /// <summary>Outer dimensions of the body behind the mounting plane.</summary>
    [Kind(MemberKind.Part)]
    public Body? Body { get; init; }

    /// <summary>Projection of handles, knobs and front cables in front of the mounting plane, mm. Default 40 mm, or 0 mm on a shelf.</summary>
    [Range(0d, 1000d)]
    [Kind(MemberKind.Fact)]
    public double? FrontProjectionMm { get; init; }

    /// <summary>Space for connectors and cable bends behind the body, mm. Default 75 mm, or 25 mm for an item with neither plugs nor cables.</summary>
    [Range(0d, 1000d)]
    [Kind(MemberKind.Fact)]
    public double? RearProjectionMm { get; init; }

    /// <summary>Mass, kg.</summary>
    [Range(0d, 5000d)]
    [Kind(MemberKind.Fact)]
    public double? MassKg { get; init; }

    /// <summary>How the item is supported.</summary>
    [Kind(MemberKind.Choice)]
    public Support? Support { get; init; }

    /// <summary>How the item is fastened to the uprights.</summary>
    [Kind(MemberKind.Choice)]
    public Fixing? Fixing { get; init; }

    /// <summary>Electrical input data.</summary>
    [Kind(MemberKind.Part)]
    public ItemPower? Power { get; init; }

    /// <summary>Heat dissipation, W.</summary>
    [Range(0d, 100000d)]
    [Kind(MemberKind.Fact)]
    public double? HeatW { get; init; }

    /// <summary>Airflow of the item's own fans.</summary>
    [Kind(MemberKind.Part)]
    public Airflow? Airflow { get; init; }

    /// <summary>Maximum inlet air temperature, C.</summary>
    [Range(-50d, 100d)]
    [Kind(MemberKind.Fact)]
    public double? MaxInletC { get; init; }

    /// <summary>Minimum inlet air temperature, C.</summary>
    [Range(-60d, 60d)]
    [Kind(MemberKind.Fact)]
    public double? MinInletC { get; init; }

    /// <summary>Whether the item has an earth stud for a separate earth lead.</summary>
    [Kind(MemberKind.Requirement)]
    public bool? EarthStud { get; init; }

    /// <summary>Cable bundles of the item.</summary>
    [MaxLength(50)]
    [Kind(MemberKind.Fact)]
    public IReadOnlyList<CableBundle>? Cables { get; init; }

    /// <summary>Whether the item needs a KVM port.</summary>
    [Kind(MemberKind.Requirement)]
    public bool? Console { get; init; }

    /// <summary>Number of KVM ports that the item provides.</summary>
    [Range(0, 1000)]
    [Kind(MemberKind.Part)]
    public int? KvmPorts { get; init; }

    /// <summary>Whether the item must be on a remotely switched outlet for power cycling.</summary>
    [Kind(MemberKind.Requirement)]
    public bool? RemotePowerCycle { get; init; }

    /// <summary>Whether a KVM switch can be used from another site.</summary>
    [Kind(MemberKind.Part)]
    public bool? RemoteAccess { get; init; }

    /// <summary>Batteries in the item.</summary>
    [Kind(MemberKind.Part)]
    public Battery? Battery { get; init; }

    /// <summary>Output data, for an uninterruptible power supply (UPS).</summary>
    [Kind(MemberKind.Part)]
    public Ups? Ups { get; init; }
}

/// <summary>Catalogue data of an item.</summary>
public sealed record ProductItem : ItemFacts;

/// <summary>An item of equipment.</summary>
public sealed record Item : ItemFacts
{
    /// <summary>Id given by the caller, unique in the description.</summary>
    [StringLength(64, MinimumLength = 1)]
    public required string Id { get; init; }

    /// <summary>Part number in the product catalogue.</summary>
    [StringLength(64, MinimumLength = 1)]
    [Kind(MemberKind.Part)]
    public string? PartNumber { get; init; }

    /// <summary>Quantity; baskets only.</summary>
    [Range(1, 10000)]
    [Kind(MemberKind.Part)]
    public int? Quantity { get; init; }

    /// <summary>Mounting position. Absent: not yet placed.</summary>
    [Kind(MemberKind.Choice)]
    public Position? Position { get; init; }

    /// <summary>Id of the shelf on which the item stands.</summary>
    [StringLength(64, MinimumLength = 1)]
    [Kind(MemberKind.Choice)]
    public string? OnShelf { get; init; }

    /// <summary>Separate earth lead of the item.</summary>
    [Kind(MemberKind.Part)]
    public EarthLead? EarthLead { get; init; }

    /// <summary>Whether the item is a standby spare.</summary>
    [Kind(MemberKind.Requirement)]
    public bool? Spare { get; init; }
}

/// <summary>Mounting position of an item.</summary>
public sealed record Position
{
    /// <summary>
    /// Number of the lowest U position that the item occupies, counted as <c>unitNumbering</c> states. With top-down numbering this is the largest number.
    /// </summary>
    [Range(-200, 200)]
    public required int U { get; init; }

    /// <summary>Front or rear uprights. Default front.</summary>
    [Kind(MemberKind.Choice)]
    [AbsentMeansDefault]
    public Face? Face { get; init; }
}

/// <summary>Outer dimensions of a body.</summary>
public sealed record Body
{
    /// <summary>Width, mm.</summary>
    [Range(0d, 2000d)]
    [Kind(MemberKind.Fact)]
    public double? WidthMm { get; init; }

    /// <summary>Height, mm.</summary>
    [Range(0d, 3000d)]
    [Kind(MemberKind.Fact)]
    public double? HeightMm { get; init; }

    /// <summary>Depth behind the mounting plane, mm.</summary>
    [Range(0d, 3000d)]
    [Kind(MemberKind.Fact)]
    public double? DepthMm { get; init; }
}

/// <summary>Support of an item.</summary>
public sealed record Support
{
    /// <summary>Front panel, slide rails, chassis runners or a shelf of its own.</summary>
    [Kind(MemberKind.Choice)]
    public SupportStyle? Style { get; init; }

    /// <summary>Load rating of the pair, kg.</summary>
    [Range(0.1d, 5000d)]
    [Kind(MemberKind.Fact)]
    public double? RatedKg { get; init; }

    /// <summary>Thickness, mm: of one slide (default 9.5 mm), of the angle (default 2 mm) or of the shelf (default 3 mm) under the item.</summary>
    [Range(0d, 100d)]
    [Kind(MemberKind.Fact)]
    public double? ThicknessMm { get; init; }

    /// <summary>Minimum distance between front and rear uprights, mm.</summary>
    [Range(0d, 3000d)]
    [Kind(MemberKind.Fact)]
    public double? MinSpacingMm { get; init; }

    /// <summary>Maximum distance between front and rear uprights, mm.</summary>
    [Range(0d, 3000d)]
    [Kind(MemberKind.Fact)]
    public double? MaxSpacingMm { get; init; }

    /// <summary>Extension of the slides, mm.</summary>
    [Range(0d, 3000d)]
    [Kind(MemberKind.Fact)]
    public double? ExtensionMm { get; init; }

    /// <summary>Whether the item is used in the extended position.</summary>
    [Kind(MemberKind.Requirement)]
    public bool? UsedExtended { get; init; }

    /// <summary>Whether a cable-management arm is fitted.</summary>
    [Kind(MemberKind.Part)]
    public bool? CableArm { get; init; }
}

/// <summary>Airflow of an item's own fans.</summary>
public sealed record Airflow
{
    /// <summary>Airflow direction.</summary>
    [Kind(MemberKind.Fact)]
    public AirflowDirection? Direction { get; init; }

    /// <summary>Airflow, m3/h.</summary>
    [Range(0d, 100000d)]
    [Kind(MemberKind.Fact)]
    public double? FlowM3h { get; init; }
}

/// <summary>Batteries in an item.</summary>
public sealed record Battery
{
    /// <summary>Type of the cells.</summary>
    [Kind(MemberKind.Fact)]
    public BatteryType? Type { get; init; }

    /// <summary>Number of cells in series.</summary>
    [Range(1, 1000)]
    [Kind(MemberKind.Fact)]
    public int? Cells { get; init; }

    /// <summary>Capacity of a cell, Ah.</summary>
    [Range(0.1d, 10000d)]
    [Kind(MemberKind.Fact)]
    public double? CapacityAh { get; init; }

    /// <summary>Whether the batteries are boost-charged in the rack. Default false.</summary>
    [Kind(MemberKind.Choice)]
    public bool? Boost { get; init; }
}

/// <summary>A separate earth lead.</summary>
public sealed record EarthLead
{
    /// <summary>Cross-sectional area, mm2.</summary>
    [Range(0.1d, 1000d)]
    [Kind(MemberKind.Fact)]
    public double? CrossSectionMm2 { get; init; }

    /// <summary>Length, m.</summary>
    [Range(0.01d, 100d)]
    [Kind(MemberKind.Fact)]
    public double? LengthM { get; init; }
}

/// <summary>A bundle of cables of one type.</summary>
public sealed record CableBundle
{
    /// <summary>Outer diameter of one cable, mm.</summary>
    [Range(0.1d, 200d)]
    public required double DiameterMm { get; init; }

    /// <summary>Number of cables.</summary>
    [Range(0, 10000)]
    public required int Count { get; init; }
}
