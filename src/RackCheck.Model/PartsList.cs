using System.Text.Json.Serialization;
using RackCheck.Model.Converters;

namespace RackCheck.Model;

/// <summary>The small parts of a rack: what is bought, cut and labelled to build it as described.</summary>
public sealed record PartsList
{
    /// <summary>The caller's reference, as sent.</summary>
    public string? Reference { get; init; }

    /// <summary>Release decision of the check of this rack. Parts of a rack on hold are those of the rack as described.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>The ruleset that was applied.</summary>
    public required RulesetInfo Ruleset { get; init; }

    /// <summary>"sha-256:" and the digest of the canonical description (RFC 8785).</summary>
    public required string DescriptionDigest { get; init; }

    /// <summary>The lines, by kind.</summary>
    public required IReadOnlyList<PartLine> Lines { get; init; }

    /// <summary>What the list leaves out, and why.</summary>
    public required IReadOnlyList<string> Notes { get; init; }
}

/// <summary>A line of a parts list.</summary>
public sealed record PartLine
{
    /// <summary>Kind of part.</summary>
    public required PartKind Kind { get; init; }

    /// <summary>The part in words.</summary>
    public required string Description { get; init; }

    /// <summary>Quantity in the unit of the line. 0 where equipment needs no part of this kind; the reason is given.</summary>
    public required int Quantity { get; init; }

    /// <summary>Unit of the quantity.</summary>
    public required PartUnit Unit { get; init; }

    /// <summary>The reason for the line.</summary>
    public required string Why { get; init; }

    /// <summary>Id of the rule that checks the same.</summary>
    public string? Rule { get; init; }

    /// <summary>The arithmetic behind quantity or dimensions, with its numbers.</summary>
    public string? Calculation { get; init; }

    /// <summary>Ids of the items that the part is for.</summary>
    public IReadOnlyList<string>? Items { get; init; }

    /// <summary>Ids of the PDUs that the part is for or leads to.</summary>
    public IReadOnlyList<string>? Pdus { get; init; }

    /// <summary>Part number, where the description gives it or a product on offer suits. Absent otherwise.</summary>
    public string? PartNumber { get; init; }

    /// <summary>Order units of the part number; a pack is one. Absent without a part number.</summary>
    public int? OrderQuantity { get; init; }

    /// <summary>Whether the rack as described has the part already or it comes with the equipment, so that nothing is ordered for it.</summary>
    public required bool Included { get; init; }

    /// <summary>Values for a program.</summary>
    public required PartData Data { get; init; }
}

/// <summary>Values of a line of a parts list. Only those that apply and are known are present.</summary>
public sealed record PartData
{
    /// <summary>Text for the label printer, exactly as printed.</summary>
    public string? Text { get; init; }

    /// <summary>Type of fixing.</summary>
    public Fixing? Fixing { get; init; }

    /// <summary>Thread of nut and screw, as "M6".</summary>
    public string? Thread { get; init; }

    /// <summary>Height, U.</summary>
    public int? HeightU { get; init; }

    /// <summary>Length, m: of the product on offer, else the required length rounded up to half metres, or as described.</summary>
    public double? LengthM { get; init; }

    /// <summary>Length of the longest route that the line serves, with slack, m.</summary>
    public double? RequiredLengthM { get; init; }

    /// <summary>Cross-sectional area of the conductor, mm2.</summary>
    public double? CrossSectionMm2 { get; init; }

    /// <summary>Plug at the end of the outlet.</summary>
    public ConnectorCode? Plug { get; init; }

    /// <summary>Connector at the end of the item.</summary>
    public ConnectorCode? Connector { get; init; }

    /// <summary>Load rating, kg.</summary>
    public double? RatedKg { get; init; }

    /// <summary>Minimum distance between front and rear uprights, mm.</summary>
    public double? MinSpacingMm { get; init; }

    /// <summary>Maximum distance between front and rear uprights, mm.</summary>
    public double? MaxSpacingMm { get; init; }

    /// <summary>Depth, mm.</summary>
    public double? DepthMm { get; init; }

    /// <summary>Free-air flow of one fan, m3/h.</summary>
    public double? FreeFlowM3h { get; init; }

    /// <summary>Area of the filter mat, cm2.</summary>
    public double? AreaCm2 { get; init; }

    /// <summary>Type of the cells of a battery.</summary>
    public BatteryType? BatteryType { get; init; }

    /// <summary>Number of cells in series.</summary>
    public int? Cells { get; init; }

    /// <summary>Capacity of a cell, Ah.</summary>
    public double? CapacityAh { get; init; }
}

/// <summary>Kinds of parts, in the order of the list.</summary>
[JsonConverter(typeof(NamedEnumConverter<PartKind>))]
public enum PartKind
{
    /// <summary>Nuts and screws for the uprights.</summary>
    Fixing,

    /// <summary>Blanking panels.</summary>
    BlankingPanel,

    /// <summary>Slide rails.</summary>
    Slides,

    /// <summary>Chassis runners.</summary>
    Runners,

    /// <summary>Shelves.</summary>
    Shelf,

    /// <summary>Cable-management arms.</summary>
    CableArm,

    /// <summary>Mains cords.</summary>
    Cord,

    /// <summary>Protective conductors.</summary>
    EarthLead,

    /// <summary>The earth bar.</summary>
    EarthBar,

    /// <summary>Leads between hosts and KVM switches.</summary>
    KvmLead,

    /// <summary>Fans.</summary>
    Fan,

    /// <summary>Filter mats.</summary>
    Filter,

    /// <summary>Batteries.</summary>
    Battery,

    /// <summary>Spares to hand over with the rack.</summary>
    Spare,

    /// <summary>Labels.</summary>
    Label,
}

/// <summary>Units of quantity.</summary>
[JsonConverter(typeof(NamedEnumConverter<PartUnit>))]
public enum PartUnit
{
    /// <summary>Single pieces.</summary>
    Piece,

    /// <summary>Sets of nut and screw; screws alone where the holes are threaded.</summary>
    Set,

    /// <summary>Pairs.</summary>
    Pair,
}
