using System.ComponentModel.DataAnnotations;

namespace RackCheck.Model;

/// <summary>What a customer is about to order for one rack: part numbers and quantities, and what is known of the place it goes to.</summary>
public sealed record BasketRequest
{
    /// <summary>The caller's own reference, echoed in the answer.</summary>
    [StringLength(64)]
    public string? Reference { get; init; }

    /// <summary>The lines of the basket. A part number may stand on several.</summary>
    [Length(1, 1000)]
    public required IReadOnlyList<BasketLine> Lines { get; init; }

    /// <summary>The electrical supplies that reach the rack. Absent or empty: one is assumed for each PDU, by its plug and the region.</summary>
    [MaxLength(16)]
    public IReadOnlyList<Supply>? Supplies { get; init; }

    /// <summary>Protective earth beyond the cords.</summary>
    public Earthing? Earthing { get; init; }

    /// <summary>Where the rack goes and how it gets there.</summary>
    public Site? Site { get; init; }

    /// <summary>The caller's own limits and severities.</summary>
    public Policy? Policy { get; init; }

    /// <summary>Findings that somebody has accepted, with a reason. Pointers are those of the rack in the answer.</summary>
    [MaxLength(200)]
    public IReadOnlyList<Acceptance>? Acceptances { get; init; }

    /// <summary>What the customer wants of the rack beyond its parts.</summary>
    public BasketOptions? Options { get; init; }
}

/// <summary>One line of a basket.</summary>
public sealed record BasketLine
{
    /// <summary>Part number in the product catalogue.</summary>
    [StringLength(64, MinimumLength = 1)]
    public required string PartNumber { get; init; }

    /// <summary>Order units of it. A pack is one, whatever number of pieces is in it.</summary>
    [Range(1, 10000)]
    public required int Quantity { get; init; }
}

/// <summary>What the customer wants of the rack beyond its parts.</summary>
public sealed record BasketOptions
{
    /// <summary>How things are to be fastened to the uprights. Absent: as the holes of the uprights ask for.</summary>
    public Fixing? Fixing { get; init; }

    /// <summary>How the cabinet will stand among walls and neighbours; free unless told.</summary>
    public Placement? Placement { get; init; }
}

/// <summary>The answer to a basket: the rack that it makes, the check of it, and what is missing or too much.</summary>
public sealed record BasketReport
{
    /// <summary>The caller's reference, echoed.</summary>
    public string? Reference { get; init; }

    /// <summary>
    /// What may be done with the order: hold where the check of the rack says so, where a part number is unknown, or where cabinet or something that no
    /// product on offer fits is missing; review at least where lines are missing.
    /// </summary>
    public required Verdict Verdict { get; init; }

    /// <summary>What the verdict will be once the missing lines are in the basket.</summary>
    public required Verdict CompletedVerdict { get; init; }

    /// <summary>The rack that the basket makes as it is, mounted and wired; a cabinet that is missing is in it.</summary>
    public required RackDescription Rack { get; init; }

    /// <summary>The check of that rack. Its pointers are into <c>rack</c>.</summary>
    public required CheckReport Report { get; init; }

    /// <summary>Which lines each finding comes from, in the order of the findings.</summary>
    public required IReadOnlyList<FindingLines> FindingLines { get; init; }

    /// <summary>What is to be added: with these lines in the basket nothing is missing any more, unless it stands under <c>unmet</c>. By part number.</summary>
    public required IReadOnlyList<MissingLine> MissingLines { get; init; }

    /// <summary>What is needed and no product on offer fits.</summary>
    public required IReadOnlyList<UnmetNeed> Unmet { get; init; }

    /// <summary>What the rack has no use for, also once it is completed. By line.</summary>
    public required IReadOnlyList<ExcessLine> ExcessLines { get; init; }

    /// <summary>What each line became, in the order of the request.</summary>
    public required IReadOnlyList<LineItems> LineItems { get; init; }

    /// <summary>Lines whose part number the catalogue does not know, RFC 6901. They are not in the rack, and hold the order.</summary>
    public required IReadOnlyList<string> UnknownLines { get; init; }

    /// <summary>What was taken to be so because the request does not say. Its pointers are into <c>rack</c>; what the check assumed stands in its report.</summary>
    public required IReadOnlyList<Assumption> Assumptions { get; init; }
}

/// <summary>The lines that a finding comes from.</summary>
public sealed record FindingLines
{
    /// <summary>Id of the rule.</summary>
    public required string Rule { get; init; }

    /// <summary>Fingerprint of the finding.</summary>
    public required string Fingerprint { get; init; }

    /// <summary>Lines of the request, RFC 6901, that of the culprit first; empty where the finding is of nothing that was ordered.</summary>
    public required IReadOnlyList<string> Lines { get; init; }
}

/// <summary>Something that is to be added to the basket.</summary>
public sealed record MissingLine
{
    /// <summary>Part number of a product on offer.</summary>
    public required string PartNumber { get; init; }

    /// <summary>Its name.</summary>
    public required string Name { get; init; }

    /// <summary>Order units to add; a pack counts as one.</summary>
    public required int Quantity { get; init; }

    /// <summary>Why, in the customer's words.</summary>
    public required string Reason { get; init; }

    /// <summary>Ids of the rules whose findings, or notes of what could not be assessed, are fewer once all missing lines are in; empty where no rule asks for it.</summary>
    public required IReadOnlyList<string> Rules { get; init; }
}

/// <summary>Something that is needed and that no product on offer fits.</summary>
public sealed record UnmetNeed
{
    /// <summary>What is needed.</summary>
    public required string What { get; init; }

    /// <summary>Why, and what no product has.</summary>
    public required string Reason { get; init; }
}

/// <summary>Something in the basket that the rack has no use for.</summary>
public sealed record ExcessLine
{
    /// <summary>The line, RFC 6901.</summary>
    public required string Line { get; init; }

    /// <summary>Its part number.</summary>
    public required string PartNumber { get; init; }

    /// <summary>Order units of it that are too many. A pack of which some is used is not.</summary>
    public required int Quantity { get; init; }

    /// <summary>Why, in the customer's words.</summary>
    public required string Reason { get; init; }
}

/// <summary>What became of a line.</summary>
public sealed record LineItems
{
    /// <summary>The line, RFC 6901.</summary>
    public required string Line { get; init; }

    /// <summary>Ids of the items of the rack that it gave; empty for parts of the cabinet, and for what goes onto items.</summary>
    public required IReadOnlyList<string> Items { get; init; }

    /// <summary>Ids of the PDUs that it gave.</summary>
    public required IReadOnlyList<string> Pdus { get; init; }
}
