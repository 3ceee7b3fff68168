using System.ComponentModel.DataAnnotations;
using System.Text.Json.Serialization;
using RackCheck.Model.Converters;

namespace RackCheck.Model;

/// <summary>A customer's order for one rack: part numbers, quantities and known site data.</summary>
public sealed record BasketRequest
{
    /// <summary>The caller's own reference, returned in the report.</summary>
    [StringLength(64)]
    public string? Reference { get; init; }

    /// <summary>The lines of the basket. A part number may appear on more than one line.</summary>
    [Length(1, 1000)]
    public required IReadOnlyList<BasketLine> Lines { get; init; }

    /// <summary>The electrical supplies that reach the rack. Absent or empty: one supply per PDU is assumed from its plug and the region.</summary>
    [MaxLength(16)]
    public IReadOnlyList<Supply>? Supplies { get; init; }

    /// <summary>Protective earthing in addition to the mains cords.</summary>
    public Earthing? Earthing { get; init; }

    /// <summary>Installation site and delivery route.</summary>
    public Site? Site { get; init; }

    /// <summary>The caller's own limits and severities.</summary>
    public Policy? Policy { get; init; }

    /// <summary>Accepted findings, each with a reason. Pointers refer to the rack in the report.</summary>
    [MaxLength(200)]
    public IReadOnlyList<Acceptance>? Acceptances { get; init; }

    /// <summary>Statements of qualified persons on safety warnings and on safety rules that could not be assessed.</summary>
    [MaxLength(200)]
    public IReadOnlyList<SignOff>? SignOffs { get; init; }

    /// <summary>Date and time of the check, required where an acceptance has <c>expiresAt</c>: RFC 3339 with an offset.</summary>
    [DataType(DataType.DateTime)]
    [RegularExpression(Timestamps.Pattern)]
    public string? AsOf { get; init; }

    /// <summary>The customer's options for the rack.</summary>
    public BasketOptions? Options { get; init; }
}

/// <summary>One line of a basket: a product of the catalogue, or the customer's own equipment.</summary>
public sealed record BasketLine
{
    /// <summary>Part number in the product catalogue, spelt exactly as there. Required unless <c>item</c> is given.</summary>
    [StringLength(64, MinimumLength = 1)]
    public string? PartNumber { get; init; }

    /// <summary>
    /// The customer's own equipment with its data, instead of a part number: at least an id and <c>heightU</c>. Of a quantity, the second piece has the id with
    /// "-2", and so on; a number that another line has as its id is left out.
    /// </summary>
    public Item? Item { get; init; }

    /// <summary>Quantity to order. A pack counts as one, whatever number of pieces it contains.</summary>
    [Range(1, 10000)]
    public required int Quantity { get; init; }

    /// <summary>How the equipment of this line is used.</summary>
    public LineOptions? Options { get; init; }
}

/// <summary>How the equipment of a basket line is used. What is not said follows the product's data.</summary>
public sealed record LineOptions
{
    /// <summary>
    /// Whether it is fed from a UPS of the basket; which one cannot be chosen. What cannot be fed although it is true is listed under <c>unmet</c>. Default:
    /// as far as the UPS of the basket has power and outlets, servers, computers and network equipment first.
    /// </summary>
    public bool? OnUps { get; init; }

    /// <summary>Whether its power supplies are fed from two supplies. It needs two or more.</summary>
    public bool? DualFed { get; init; }

    /// <summary>Whether it is pulled out of the rack while in use.</summary>
    public bool? Extended { get; init; }

    /// <summary>Whether it has to be switched off and on remotely.</summary>
    public bool? RemotePower { get; init; }
}

/// <summary>The customer's options for the rack.</summary>
public sealed record BasketOptions
{
    /// <summary>How equipment is fastened to the uprights. Default: the fixing that suits the upright holes.</summary>
    public Fixing? Fixing { get; init; }

    /// <summary>Placement of the cabinet relative to walls and adjacent cabinets. Default free.</summary>
    public Placement? Placement { get; init; }

    /// <summary>
    /// The cabinet, if the basket is not to have one: <c>none</c> for an order without a rack, of which nothing is checked but that the part numbers are known,
    /// or the cabinet that is there. Default: a cabinet of the basket or the catalogue.
    /// </summary>
    public BasketCabinet? Cabinet { get; init; }
}

/// <summary>The cabinet of a basket that orders none: the text <c>none</c>, or an object with the existing cabinet.</summary>
[JsonConverter(typeof(BasketCabinetConverter))]
public sealed record BasketCabinet
{
    /// <summary>The text for an order without a rack.</summary>
    public const string NoCabinet = "none";

    /// <summary>The cabinet that the customer has; null for an order without a rack.</summary>
    public Cabinet? Existing { get; init; }
}

/// <summary>A cabinet that the customer has.</summary>
public sealed record ExistingCabinet
{
    /// <summary>The cabinet that the customer has.</summary>
    public required Cabinet Existing { get; init; }
}
