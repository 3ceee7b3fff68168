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

    /// <summary>Date and time of the check for acceptances that expire: RFC 3339 with an offset.</summary>
    [DataType(DataType.DateTime)]
    [RegularExpression(Timestamps.Pattern)]
    public string? AsOf { get; init; }

    /// <summary>The customer's options for the rack.</summary>
    public BasketOptions? Options { get; init; }
}

/// <summary>One line of a basket: a product of the catalogue, or the customer's own equipment.</summary>
public sealed record BasketLine
{
    /// <summary>Part number in the product catalogue. Required unless <c>item</c> is given.</summary>
    [StringLength(64, MinimumLength = 1)]
    public string? PartNumber { get; init; }

    /// <summary>The customer's own equipment with its data, instead of a part number. Of a quantity, the second has the id with "-2", and so on.</summary>
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
    /// <summary>Whether it is fed from a UPS. Default: as far as the UPS of the basket has power and outlets.</summary>
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

    /// <summary>The cabinet, if the basket is not to have one: <c>none</c>, or one that is there. Default: a cabinet of the basket or the catalogue.</summary>
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

/// <summary>The object form of <see cref="BasketCabinet"/>.</summary>
public sealed record ExistingCabinet
{
    /// <summary>The cabinet that the customer has.</summary>
    public required Cabinet Existing { get; init; }
}

/// <summary>Report on a basket: the racks assembled from it, their checks, and lines to add, to exchange and to leave out.</summary>
public sealed record BasketReport
{
    /// <summary>The caller's reference, as sent.</summary>
    public string? Reference { get; init; }

    /// <summary>
    /// Release decision for the order, over all racks. Hold where the check of a rack holds it, where a part number is unknown or cannot be used, where the
    /// cabinet is missing or has to be exchanged, or where a need stays unmet. At least review where lines are missing or a cabinet, door or air conditioner
    /// is in excess.
    /// </summary>
    public required Verdict Verdict { get; init; }

    /// <summary>The decision on the product and on the site. Unknown, missing and unmet parts count for the product.</summary>
    public required Verdicts Verdicts { get; init; }

    /// <summary>Verdict of the completed basket.</summary>
    public required Verdict CompletedVerdict { get; init; }

    /// <summary>The decision on product and site of the completed basket.</summary>
    public required Verdicts CompletedVerdicts { get; init; }

    /// <summary>The racks assembled from the basket as ordered. A missing cabinet is included. Empty for an order without equipment.</summary>
    public required IReadOnlyList<CheckedRack> Racks { get; init; }

    /// <summary>The first rack, with positions and cord connections; absent for an order without equipment.</summary>
    public RackDescription? Rack { get; init; }

    /// <summary>Check report of the first rack. Its pointers refer to <c>rack</c>.</summary>
    public CheckReport? Report { get; init; }

    /// <summary>Basket lines behind each finding of the first rack, in the order of the findings, and what clears it.</summary>
    public required IReadOnlyList<FindingLines> FindingLines { get; init; }

    /// <summary>
    /// Lines to add, sorted by part number. With these and the exchanged lines the basket is complete, except for what is listed under <c>unmet</c>.
    /// </summary>
    public required IReadOnlyList<MissingLine> MissingLines { get; init; }

    /// <summary>Lines to exchange for another product, in the order of the request.</summary>
    public required IReadOnlyList<ReplaceLine> ReplaceLines { get; init; }

    /// <summary>Needs that stay open.</summary>
    public required IReadOnlyList<UnmetNeed> Unmet { get; init; }

    /// <summary>Parts that the completed racks do not need, sorted by line.</summary>
    public required IReadOnlyList<ExcessLine> ExcessLines { get; init; }

    /// <summary>Items and PDUs made from each line, in the order of the request.</summary>
    public required IReadOnlyList<LineItems> LineItems { get; init; }

    /// <summary>One entry for each line of the request, in its order: what a shop shows beside it.</summary>
    public required IReadOnlyList<LineStatus> LineStatus { get; init; }

    /// <summary>Lines whose part number is not in the catalogue, RFC 6901 pointers. They are left out of the rack and the order is held.</summary>
    public required IReadOnlyList<string> UnknownLines { get; init; }

    /// <summary>
    /// The request with the missing lines added, lines exchanged and excess left out. Posted again it lacks nothing and has nothing in excess.
    /// </summary>
    public required BasketRequest CompletedBasket { get; init; }

    /// <summary>Check report of the first rack of the completed basket; absent for an order without equipment.</summary>
    public CheckReport? CompletedReport { get; init; }

    /// <summary>
    /// Values assumed because the request does not give them. Pointers refer to <c>rack</c>. Values assumed by the check are listed in its report.
    /// </summary>
    public required IReadOnlyList<Assumption> Assumptions { get; init; }
}

/// <summary>Basket lines behind a finding.</summary>
public sealed record FindingLines
{
    /// <summary>Id of the rule.</summary>
    public required string Rule { get; init; }

    /// <summary>Fingerprint of the finding.</summary>
    public required string Fingerprint { get; init; }

    /// <summary>Lines of the request, RFC 6901 pointers; the line of the main cause first. Empty where no ordered part is involved.</summary>
    public required IReadOnlyList<string> Lines { get; init; }

    /// <summary>
    /// Lines of this answer that clear it, RFC 6901 pointers under <c>/missingLines</c>, <c>/replaceLines</c> or <c>/excessLines</c>; absent if it stays.
    /// </summary>
    public IReadOnlyList<string>? ClearedBy { get; init; }

    /// <summary>True if the completed basket still has the finding; else absent.</summary>
    public bool? Stays { get; init; }
}

/// <summary>A line to add to the basket.</summary>
public sealed record MissingLine
{
    /// <summary>Part number in the product catalogue.</summary>
    [StringLength(64, MinimumLength = 1)]
    public required string PartNumber { get; init; }

    /// <summary>Product name.</summary>
    public required string Name { get; init; }

    /// <summary>Quantity to add. A pack counts as one.</summary>
    public required int Quantity { get; init; }

    /// <summary>Reason, in plain words.</summary>
    public required string Reason { get; init; }

    /// <summary>Key of the wording of the reason, stable.</summary>
    public required string MessageKey { get; init; }

    /// <summary>The values in the reason, by name. Several ids are a list.</summary>
    public required IReadOnlyDictionary<string, Scalar> MessageData { get; init; }

    /// <summary>
    /// Ids of the rules with fewer findings, or fewer unassessed cases, after all missing lines are added. Empty where no rule requires the line.
    /// </summary>
    public required IReadOnlyList<string> Rules { get; init; }

    /// <summary>Other products that do the same, up to three; the cheapest first where all have a price in one currency.</summary>
    public required IReadOnlyList<LineAlternative> Alternatives { get; init; }
}

/// <summary>A product that a shop may offer instead of a missing line.</summary>
public sealed record LineAlternative
{
    /// <summary>Part number in the product catalogue.</summary>
    [StringLength(64, MinimumLength = 1)]
    public required string PartNumber { get; init; }

    /// <summary>Product name.</summary>
    public required string Name { get; init; }

    /// <summary>Quantity instead of the line's.</summary>
    public required int Quantity { get; init; }

    /// <summary>Price of one order unit, if the catalogue has one.</summary>
    public double? Price { get; init; }

    /// <summary>Currency of the price.</summary>
    public string? Currency { get; init; }
}

/// <summary>A line to exchange for another product.</summary>
public sealed record ReplaceLine
{
    /// <summary>Pointer to the line of the request, RFC 6901.</summary>
    public required string Line { get; init; }

    /// <summary>Part number of the product to order instead.</summary>
    [StringLength(64, MinimumLength = 1)]
    public required string PartNumber { get; init; }

    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>Quantity to exchange.</summary>
    public required int Quantity { get; init; }

    /// <summary>Reason, in plain words.</summary>
    public required string Reason { get; init; }
}

/// <summary>A need that the completed basket does not meet.</summary>
public sealed record UnmetNeed
{
    /// <summary>What is needed.</summary>
    public required string What { get; init; }

    /// <summary>Why it is needed, and the property that no product has.</summary>
    public required string Reason { get; init; }

    /// <summary>Whether it is proven that nothing on offer meets it; false if no solution was found.</summary>
    public bool Proven { get; init; }
}

/// <summary>A surplus line of the basket.</summary>
public sealed record ExcessLine
{
    /// <summary>Pointer to the line, RFC 6901.</summary>
    public required string Line { get; init; }

    /// <summary>Part number of the line.</summary>
    public required string PartNumber { get; init; }

    /// <summary>Surplus quantity. A pack in partial use is not surplus.</summary>
    public required int Quantity { get; init; }

    /// <summary>Reason, in plain words.</summary>
    public required string Reason { get; init; }
}

/// <summary>Items and PDUs made from a basket line.</summary>
public sealed record LineItems
{
    /// <summary>Pointer to the line, RFC 6901.</summary>
    public required string Line { get; init; }

    /// <summary>Ids of the items made from the line. Empty for parts of the cabinet and for parts fitted to items.</summary>
    public required IReadOnlyList<string> Items { get; init; }

    /// <summary>Ids of the PDUs made from the line.</summary>
    public required IReadOnlyList<string> Pdus { get; init; }
}

/// <summary>What a shop shows beside a basket line.</summary>
public sealed record LineStatus
{
    /// <summary>Pointer to the line, RFC 6901.</summary>
    public required string Line { get; init; }

    /// <summary>The status.</summary>
    public required LineState Status { get; init; }

    /// <summary>The status in a sentence; absent where the line is in order.</summary>
    public string? Message { get; init; }

    /// <summary>For an unknown part number: a similar one of the catalogue, if there is one.</summary>
    public string? DidYouMean { get; init; }
}

/// <summary>Status of a basket line, the most serious that applies.</summary>
[JsonConverter(typeof(NamedEnumConverter<LineState>))]
public enum LineState
{
    /// <summary>Nothing is open.</summary>
    Ok,

    /// <summary>A finding that is open after completion names this line.</summary>
    Check,

    /// <summary>Some or all of the quantity is not needed.</summary>
    Excess,

    /// <summary>It has to be exchanged.</summary>
    Replace,

    /// <summary>The part number is not in the catalogue.</summary>
    Unknown,

    /// <summary>It is no part of a rack of this order, so nothing was checked.</summary>
    NotAssessed,
}
