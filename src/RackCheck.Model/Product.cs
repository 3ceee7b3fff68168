using System.ComponentModel.DataAnnotations;
using System.Text.Json.Serialization;
using RackCheck.Model.Converters;

namespace RackCheck.Model;

/// <summary>One product of the catalogue: a part number and what it stands for. Which of the members is there hangs on the kind.</summary>
public sealed record Product
{
    /// <summary>Its part number, unique in the catalogue.</summary>
    [StringLength(64, MinimumLength = 1)]
    public required string PartNumber { get; init; }

    /// <summary>What it is, in the words of a price list.</summary>
    [StringLength(200, MinimumLength = 1)]
    public required string Name { get; init; }

    /// <summary>What kind of product it is.</summary>
    public required ProductKind Kind { get; init; }

    /// <summary>Pieces that come with one order unit; 1 unless told. A pair of rails is one piece.</summary>
    [Range(1, 10000)]
    public int? Pieces { get; init; }

    /// <summary>Of a cabinet: what it is, without part number and placement.</summary>
    public Cabinet? Cabinet { get; init; }

    /// <summary>Of equipment, a shelf, a fan tray or a blanking panel: what it is.</summary>
    public ProductItem? Item { get; init; }

    /// <summary>Of a PDU: what it is.</summary>
    public ProductPdu? Pdu { get; init; }

    /// <summary>Of slides or runners: what they carry and where they fit.</summary>
    public Support? Support { get; init; }

    /// <summary>Of a door: what it is and what cabinets it fits.</summary>
    public ProductDoor? Door { get; init; }

    /// <summary>Of fans in the roof, or of a fan tray beside its item: what they move.</summary>
    public FanSet? Fans { get; init; }

    /// <summary>Of a cooler: what it takes away.</summary>
    public AirConditioner? AirConditioner { get; init; }

    /// <summary>Of an earth bar: what it is.</summary>
    public EarthBar? EarthBar { get; init; }

    /// <summary>Of an earth lead: its size.</summary>
    public EarthLead? EarthLead { get; init; }

    /// <summary>Of a mains cord: its ends.</summary>
    public ProductCord? Cord { get; init; }

    /// <summary>Of a pack of fixings: what fixing it is. The pieces are sets of nut and screw.</summary>
    public Fixing? Fixing { get; init; }
}

/// <summary>A door as a product.</summary>
public sealed record ProductDoor
{
    /// <summary>The door.</summary>
    public required Door Door { get; init; }

    /// <summary>Front or rear.</summary>
    public required Face Face { get; init; }

    /// <summary>Width of the cabinets that it fits, mm.</summary>
    [Range(200d, 3000d)]
    public required double WidthMm { get; init; }

    /// <summary>Height of the cabinets that it fits, units.</summary>
    [Range(1, 60)]
    public required int HeightU { get; init; }
}

/// <summary>A mains cord as a product: from an outlet of a PDU to the inlet of an item.</summary>
public sealed record ProductCord
{
    /// <summary>The end that goes into the outlet.</summary>
    public required ConnectorCode Plug { get; init; }

    /// <summary>The end that goes into the item.</summary>
    public required ConnectorCode Connector { get; init; }

    /// <summary>Length, m.</summary>
    [Range(0.1d, 100d)]
    public required double LengthM { get; init; }
}

/// <summary>Products, as the catalogue file and the product service give them.</summary>
public sealed record ProductList
{
    /// <summary>The products, each part number once.</summary>
    [MaxLength(10000)]
    public required IReadOnlyList<Product> Products { get; init; }
}

/// <summary>The part numbers that the product service is asked for.</summary>
public sealed record ProductLookUp
{
    /// <summary>The part numbers, each once. Those that are not known are left out of the answer.</summary>
    [Length(1, 1000)]
    public required IReadOnlyList<string> PartNumbers { get; init; }
}

/// <summary>Kinds of products.</summary>
[JsonConverter(typeof(NamedEnumConverter<ProductKind>))]
public enum ProductKind
{
    /// <summary>A cabinet with its doors and panels.</summary>
    Cabinet,

    /// <summary>Equipment that is mounted or stands on a shelf.</summary>
    Equipment,

    /// <summary>A shelf.</summary>
    Shelf,

    /// <summary>A blanking panel.</summary>
    BlankingPanel,

    /// <summary>A PDU.</summary>
    Pdu,

    /// <summary>A pair of slides or runners.</summary>
    Support,

    /// <summary>A door.</summary>
    Door,

    /// <summary>Fans in the roof.</summary>
    RoofFans,

    /// <summary>A tray of fans.</summary>
    FanTray,

    /// <summary>A cooler.</summary>
    AirConditioner,

    /// <summary>An earth bar.</summary>
    EarthBar,

    /// <summary>Earth leads.</summary>
    EarthLead,

    /// <summary>Mains cords.</summary>
    Cord,

    /// <summary>A pack of cage nuts, clip nuts or screws.</summary>
    Fixings,
}
