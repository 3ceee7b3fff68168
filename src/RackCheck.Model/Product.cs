using System.ComponentModel.DataAnnotations;
using System.Text.Json.Serialization;
using RackCheck.Model.Converters;

namespace RackCheck.Model;

/// <summary>One product of the catalogue. The kind determines which members are present.</summary>
public sealed record Product
{
    /// <summary>Part number, unique in the catalogue.</summary>
    [StringLength(64, MinimumLength = 1)]
    public required string PartNumber { get; init; }

    /// <summary>Name as in a price list.</summary>
    [StringLength(200, MinimumLength = 1)]
    public required string Name { get; init; }

    /// <summary>Kind of product.</summary>
    public required ProductKind Kind { get; init; }

    /// <summary>Pieces in one package as ordered. Default 1. A pair of rails is one piece.</summary>
    [Range(1, 10000)]
    public int? Pieces { get; init; }

    /// <summary>Price of one order unit, in <c>currency</c>.</summary>
    [Range(0d, 10_000_000d)]
    public double? Price { get; init; }

    /// <summary>Currency of the price, ISO 4217 code. Prices in different currencies are not compared.</summary>
    [RegularExpression("^[A-Z]{3}$")]
    public string? Currency { get; init; }

    /// <summary>Whether it can be delivered from stock. Default true.</summary>
    public bool? InStock { get; init; }

    /// <summary>Whether the supplier prefers it where several products suit. Default false.</summary>
    public bool? Preferred { get; init; }

    /// <summary>For equipment: whether mains cords for its appliance inlets are in the box. Default false.</summary>
    public bool? CordIncluded { get; init; }

    /// <summary>For equipment: whether its slides or runners are in the box. Default false.</summary>
    public bool? RailsIncluded { get; init; }

    /// <summary>For a cabinet: its data, without part number and placement.</summary>
    public Cabinet? Cabinet { get; init; }

    /// <summary>For equipment (batteries and KVM switches included), a shelf, a fan tray or a blanking panel: its data.</summary>
    public ProductItem? Item { get; init; }

    /// <summary>For a PDU: its data.</summary>
    public ProductPdu? Pdu { get; init; }

    /// <summary>For slide rails or chassis runners: load rating and upright spacing.</summary>
    public Support? Support { get; init; }

    /// <summary>For a door: its data and the cabinets that it fits.</summary>
    public ProductDoor? Door { get; init; }

    /// <summary>For roof fans, or for a fan tray in addition to its item: fan data.</summary>
    public FanSet? Fans { get; init; }

    /// <summary>For an air conditioner: its data.</summary>
    public AirConditioner? AirConditioner { get; init; }

    /// <summary>For an earth bar: its data.</summary>
    public EarthBar? EarthBar { get; init; }

    /// <summary>For an earth lead: its dimensions.</summary>
    public EarthLead? EarthLead { get; init; }

    /// <summary>For a mains cord: its plug and connector.</summary>
    public ProductCord? Cord { get; init; }

    /// <summary>For a KVM lead: its length.</summary>
    public ProductKvmLead? KvmLead { get; init; }

    /// <summary>For a filter mat of the air intake: its data.</summary>
    public AirFilter? Filter { get; init; }

    /// <summary>For a pack of fixings: the type of fixing. One piece is a set of nut and screw.</summary>
    public Fixing? Fixing { get; init; }
}

/// <summary>A door as a product.</summary>
public sealed record ProductDoor
{
    /// <summary>Data of the door.</summary>
    public required Door Door { get; init; }

    /// <summary>Front or rear door.</summary>
    public required Face Face { get; init; }

    /// <summary>Width of the cabinets that the door fits, mm.</summary>
    [Range(200d, 3000d)]
    public required double WidthMm { get; init; }

    /// <summary>Height of the cabinets that the door fits, U.</summary>
    [Range(1, 60)]
    public required int HeightU { get; init; }
}

/// <summary>A mains cord as a product, from a PDU outlet to the inlet of an item.</summary>
public sealed record ProductCord
{
    /// <summary>Plug for the outlet.</summary>
    public required ConnectorCode Plug { get; init; }

    /// <summary>Connector for the item's inlet.</summary>
    public required ConnectorCode Connector { get; init; }

    /// <summary>Length, m.</summary>
    [Range(0.1d, 100d)]
    public required double LengthM { get; init; }
}

/// <summary>A lead between a host and a KVM switch as a product.</summary>
public sealed record ProductKvmLead
{
    /// <summary>Length, m.</summary>
    [Range(0.1d, 300d)]
    public required double LengthM { get; init; }
}

/// <summary>List of products, as in the catalogue file and from the product service.</summary>
public sealed record ProductList
{
    /// <summary>The products, each part number once.</summary>
    [MaxLength(10000)]
    public required IReadOnlyList<Product> Products { get; init; }
}

/// <summary>Request to the product service.</summary>
public sealed record ProductLookUp
{
    /// <summary>Part numbers to look up, each once. Unknown part numbers are left out of the response.</summary>
    [Length(1, 1000)]
    public required IReadOnlyList<string> PartNumbers { get; init; }
}

/// <summary>Kinds of products.</summary>
[JsonConverter(typeof(NamedEnumConverter<ProductKind>))]
public enum ProductKind
{
    /// <summary>A cabinet with its doors and panels.</summary>
    Cabinet,

    /// <summary>Equipment, rack-mounted or on a shelf.</summary>
    Equipment,

    /// <summary>A shelf.</summary>
    Shelf,

    /// <summary>A blanking panel.</summary>
    BlankingPanel,

    /// <summary>A PDU.</summary>
    Pdu,

    /// <summary>A pair of slide rails or chassis runners.</summary>
    Support,

    /// <summary>A door.</summary>
    Door,

    /// <summary>Roof fans.</summary>
    RoofFans,

    /// <summary>A fan tray.</summary>
    FanTray,

    /// <summary>An air conditioner.</summary>
    AirConditioner,

    /// <summary>An earth bar.</summary>
    EarthBar,

    /// <summary>Earth leads.</summary>
    EarthLead,

    /// <summary>Mains cords.</summary>
    Cord,

    /// <summary>A pack of cage nuts, clip nuts or screws.</summary>
    Fixings,

    /// <summary>A cable-management arm for an item that is pulled out in use.</summary>
    CableArm,

    /// <summary>A lead between a host and a KVM switch.</summary>
    KvmLead,

    /// <summary>A filter mat for the air intake.</summary>
    Filter,
}
