using System.ComponentModel.DataAnnotations;

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

/// <summary>One line of a basket.</summary>
public sealed record BasketLine
{
    /// <summary>Part number in the product catalogue.</summary>
    [StringLength(64, MinimumLength = 1)]
    public required string PartNumber { get; init; }

    /// <summary>Quantity to order. A pack counts as one, whatever number of pieces it contains.</summary>
    [Range(1, 10000)]
    public required int Quantity { get; init; }
}

/// <summary>The customer's options for the rack.</summary>
public sealed record BasketOptions
{
    /// <summary>How equipment is fastened to the uprights. Default: the fixing that suits the upright holes.</summary>
    public Fixing? Fixing { get; init; }

    /// <summary>Placement of the cabinet relative to walls and adjacent cabinets. Default free.</summary>
    public Placement? Placement { get; init; }
}

/// <summary>Report on a basket: the rack assembled from it, the check of that rack, and missing and surplus parts.</summary>
public sealed record BasketReport
{
    /// <summary>The caller's reference, as sent.</summary>
    public string? Reference { get; init; }

    /// <summary>
    /// Release decision for the order. Hold where the check of the rack holds it, where a part number is unknown, where the cabinet is missing, or where
    /// a need is met by no product in the catalogue. At least review where lines are missing.
    /// </summary>
    public required Verdict Verdict { get; init; }

    /// <summary>The decision on the product and on the site. Unknown, missing and unmet parts count for the product.</summary>
    public required Verdicts Verdicts { get; init; }

    /// <summary>Verdict after the missing lines are added to the basket.</summary>
    public required Verdict CompletedVerdict { get; init; }

    /// <summary>The decision on product and site after the missing lines are added.</summary>
    public required Verdicts CompletedVerdicts { get; init; }

    /// <summary>The rack assembled from the basket as ordered, with positions and cord connections. A missing cabinet is included.</summary>
    public required RackDescription Rack { get; init; }

    /// <summary>Check report of that rack. Its pointers refer to <c>rack</c>.</summary>
    public required CheckReport Report { get; init; }

    /// <summary>Basket lines behind each finding, in the order of the findings.</summary>
    public required IReadOnlyList<FindingLines> FindingLines { get; init; }

    /// <summary>Lines to add, sorted by part number. With these lines the basket is complete, except for what is listed under <c>unmet</c>.</summary>
    public required IReadOnlyList<MissingLine> MissingLines { get; init; }

    /// <summary>Needs that no product in the catalogue meets.</summary>
    public required IReadOnlyList<UnmetNeed> Unmet { get; init; }

    /// <summary>Parts that the completed rack does not need, sorted by line.</summary>
    public required IReadOnlyList<ExcessLine> ExcessLines { get; init; }

    /// <summary>Items and PDUs made from each line, in the order of the request.</summary>
    public required IReadOnlyList<LineItems> LineItems { get; init; }

    /// <summary>Lines whose part number is not in the catalogue, RFC 6901 pointers. They are left out of the rack and the order is held.</summary>
    public required IReadOnlyList<string> UnknownLines { get; init; }

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
}

/// <summary>A line to add to the basket.</summary>
public sealed record MissingLine
{
    /// <summary>Part number in the product catalogue.</summary>
    public required string PartNumber { get; init; }

    /// <summary>Product name.</summary>
    public required string Name { get; init; }

    /// <summary>Quantity to add. A pack counts as one.</summary>
    public required int Quantity { get; init; }

    /// <summary>Reason, in plain words.</summary>
    public required string Reason { get; init; }

    /// <summary>
    /// Ids of the rules with fewer findings, or fewer unassessed cases, after all missing lines are added. Empty where no rule requires the line.
    /// </summary>
    public required IReadOnlyList<string> Rules { get; init; }
}

/// <summary>A need that no product in the catalogue meets.</summary>
public sealed record UnmetNeed
{
    /// <summary>What is needed.</summary>
    public required string What { get; init; }

    /// <summary>Why it is needed, and the property that no product has.</summary>
    public required string Reason { get; init; }
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
