using System.ComponentModel.DataAnnotations;
using System.Text.Json.Serialization;
using RackCheck.Model.Converters;

namespace RackCheck.Model;

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

    /// <summary>Everything that keeps the order from release: reasons of the racks, rack by rack, and lines.</summary>
    public required IReadOnlyList<BasketReason> VerdictReasons { get; init; }

    /// <summary>Verdict of the completed basket.</summary>
    public required Verdict CompletedVerdict { get; init; }

    /// <summary>The decision on product and site of the completed basket.</summary>
    public required Verdicts CompletedVerdicts { get; init; }

    /// <summary>The racks assembled from the basket as ordered. A missing cabinet is included. Empty for an order without equipment.</summary>
    public required IReadOnlyList<CheckedRack> Racks { get; init; }

    /// <summary>
    /// The first rack, with positions; with connections where a UPS feeds equipment. Other cords find their outlets in the check, which lists them under
    /// <c>figures.power.assignment</c>. Absent for an order without equipment.
    /// </summary>
    public RackDescription? Rack { get; init; }

    /// <summary>Check report of the first rack. Its pointers refer to <c>rack</c>.</summary>
    public CheckReport? Report { get; init; }

    /// <summary>Basket lines behind each finding of all racks, one rack after the other in the order of their findings, and what clears it.</summary>
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
    /// The request with the missing lines added, lines exchanged and excess left out. Posted again it lacks nothing and has nothing in excess, unless a
    /// caution says that the search was cut short. A line with an unknown part number stays in it, and holds it.
    /// </summary>
    public required BasketRequest CompletedBasket { get; init; }

    /// <summary>The first rack of the completed basket, for a drawing; absent for an order without equipment.</summary>
    public RackDescription? CompletedRack { get; init; }

    /// <summary>Check report of that rack. Its pointers refer to <c>completedRack</c>.</summary>
    public CheckReport? CompletedReport { get; init; }

    /// <summary>
    /// Values assumed because the request does not give them. Pointers refer to <c>rack</c>. Values assumed by the check are listed in its report.
    /// </summary>
    public required IReadOnlyList<Assumption> Assumptions { get; init; }

    /// <summary>What a reader of the answer should know, as that the search ended at its limit of work.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }

    /// <summary>Key and values of each caution, in the same order, for translation.</summary>
    public required IReadOnlyList<TextKey> CautionKeys { get; init; }
}

/// <summary>One thing that keeps an order from release.</summary>
public sealed record BasketReason
{
    /// <summary>The verdict concerned.</summary>
    public required Concern Concern { get; init; }

    /// <summary>
    /// Where it stands in this answer, RFC 6901 pointer: a reason of a rack under <c>/racks/*/report/verdictReasons</c>, or an entry of <c>unknownLines</c>,
    /// <c>missingLines</c>, <c>replaceLines</c>, <c>excessLines</c> or <c>unmet</c>.
    /// </summary>
    public required string Pointer { get; init; }

    /// <summary>The verdict that it makes by itself.</summary>
    public required Verdict Makes { get; init; }
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
    /// Lines of this answer that clear it, RFC 6901 pointers under <c>/missingLines</c>, <c>/replaceLines</c> or <c>/excessLines</c>; absent if it stays. Show
    /// these to a customer: remedies, and <c>noRemedy</c>, of the finding are about the rack as described, without the catalogue.
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

    /// <summary>Price of one order unit, if the catalogue has one.</summary>
    public double? Price { get; init; }

    /// <summary>Currency of the price.</summary>
    public string? Currency { get; init; }

    /// <summary>Lines of the request whose equipment needs it, RFC 6901 pointers. Empty where it is for the rack as a whole.</summary>
    public required IReadOnlyList<string> ForLines { get; init; }

    /// <summary>Reason, in plain words.</summary>
    public required string Reason { get; init; }

    /// <summary>
    /// Key of the wording of the reason, stable. Of a line that is needed for two reasons both keys, joined by a plus sign; the names of the second reason's
    /// values end in 2.
    /// </summary>
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

    /// <summary>Price of one order unit, if the catalogue has one.</summary>
    public double? Price { get; init; }

    /// <summary>Currency of the price.</summary>
    public string? Currency { get; init; }

    /// <summary>Reason, in plain words.</summary>
    public required string Reason { get; init; }

    /// <summary>Key of the wording of the reason, stable. Keys of several sentences are joined by plus signs.</summary>
    public required string MessageKey { get; init; }

    /// <summary>The values in the reason, by name. Several ids are a list.</summary>
    public required IReadOnlyDictionary<string, Scalar> MessageData { get; init; }
}

/// <summary>A need that the completed basket does not meet.</summary>
public sealed record UnmetNeed
{
    /// <summary>What is needed.</summary>
    public required string What { get; init; }

    /// <summary>Key of the wording of what is needed.</summary>
    public required string WhatKey { get; init; }

    /// <summary>The values in what is needed, by name.</summary>
    public required IReadOnlyDictionary<string, Scalar> WhatData { get; init; }

    /// <summary>Why it is needed, and the property that no product has.</summary>
    public required string Reason { get; init; }

    /// <summary>Key of the wording of the reason, stable. Keys of several sentences are joined by plus signs.</summary>
    public required string MessageKey { get; init; }

    /// <summary>The values in the reason, by name. Several ids are a list.</summary>
    public required IReadOnlyDictionary<string, Scalar> MessageData { get; init; }

    /// <summary>Whether it is proven that nothing on offer meets it; false if no solution was found.</summary>
    public bool Proven { get; init; }
}

/// <summary>A line of the basket with more than is needed.</summary>
public sealed record ExcessLine
{
    /// <summary>Pointer to the line, RFC 6901.</summary>
    public required string Line { get; init; }

    /// <summary>Part number of the line.</summary>
    public required string PartNumber { get; init; }

    /// <summary>Quantity in excess. A pack in partial use is not in excess.</summary>
    public required int Quantity { get; init; }

    /// <summary>Reason, in plain words.</summary>
    public required string Reason { get; init; }

    /// <summary>Key of the wording of the reason, stable. Keys of several sentences are joined by plus signs.</summary>
    public required string MessageKey { get; init; }

    /// <summary>The values in the reason, by name. Several ids are a list.</summary>
    public required IReadOnlyDictionary<string, Scalar> MessageData { get; init; }
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

    /// <summary>The status in a sentence; absent where the line is in order, unless it has more parts than the order needs.</summary>
    public string? Message { get; init; }

    /// <summary>Key of the wording of the message; absent where there is none. Keys of several sentences are joined by plus signs.</summary>
    public string? MessageKey { get; init; }

    /// <summary>The values in the message, by name; absent where there is none.</summary>
    public IReadOnlyDictionary<string, Scalar>? MessageData { get; init; }

    /// <summary>For an unknown part number: a similar one of the catalogue, if there is one.</summary>
    public string? DidYouMean { get; init; }

    /// <summary>
    /// Number of findings, open after completion, of which this line is the main cause. The message is that of the first. Absent where there is none.
    /// </summary>
    public int? FindingCount { get; init; }
}

/// <summary>Status of a basket line, the most serious that applies.</summary>
[JsonConverter(typeof(NamedEnumConverter<LineState>))]
public enum LineState
{
    /// <summary>It stays as it is, and no finding that is open after completion names it. Parts that belong to it can be among the missing lines.</summary>
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
