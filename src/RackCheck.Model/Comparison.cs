using System.ComponentModel.DataAnnotations;
using System.Text.Json.Serialization;
using RackCheck.Model.Converters;

namespace RackCheck.Model;

/// <summary>Two racks to compare: before and after a change, or two options.</summary>
public sealed record ComparisonRequest
{
    /// <summary>Caller's reference, returned unchanged.</summary>
    [StringLength(64)]
    public string? Reference { get; init; }

    /// <summary>The first rack.</summary>
    public required ComparedSide Before { get; init; }

    /// <summary>The second rack.</summary>
    public required ComparedSide After { get; init; }
}

/// <summary>A rack to compare: a description, a basket, or a report with or without its description.</summary>
public sealed record ComparedSide
{
    /// <summary>The rack. It is checked, unless its report is given.</summary>
    public RackDescription? Description { get; init; }

    /// <summary>A basket, from which the rack is built and checked.</summary>
    public BasketRequest? Basket { get; init; }

    /// <summary>The report on the rack, from an earlier check. Alone it compares findings, figures and verdicts only.</summary>
    public CheckReport? Report { get; init; }
}

/// <summary>How a finding of both racks changed.</summary>
[JsonConverter(typeof(NamedEnumConverter<FindingChange>))]
public enum FindingChange
{
    /// <summary>As before.</summary>
    Same,

    /// <summary>A higher severity or utilisation.</summary>
    Worse,

    /// <summary>A lower severity or utilisation.</summary>
    Milder,
}

/// <summary>What changed from one rack to the other.</summary>
public sealed record ComparisonAnswer
{
    /// <summary>Caller's reference.</summary>
    public string? Reference { get; init; }

    /// <summary>The verdicts before and after.</summary>
    public required VerdictPair Verdicts { get; init; }

    /// <summary>Ids of items, PDUs and supplies that are new, gone or changed; absent if a side has no description.</summary>
    public ContentChanges? Content { get; init; }

    /// <summary>Items and PDUs with another position; absent if a side has no description.</summary>
    public IReadOnlyList<PositionChange>? Positions { get; init; }

    /// <summary>Parts that the second rack has and the first has not; absent if a side has no description or basket.</summary>
    public IReadOnlyList<PartCount>? PartsToAdd { get; init; }

    /// <summary>Parts that the first rack has and the second has not; absent if a side has no description or basket.</summary>
    public IReadOnlyList<PartCount>? PartsToReturn { get; init; }

    /// <summary>The figures of both racks side by side.</summary>
    public required IReadOnlyList<FigurePair> Figures { get; init; }

    /// <summary>Findings of the second rack only.</summary>
    public required IReadOnlyList<Finding> NewFindings { get; init; }

    /// <summary>Findings of the first rack only.</summary>
    public required IReadOnlyList<Finding> GoneFindings { get; init; }

    /// <summary>Findings of both racks.</summary>
    public required IReadOnlyList<SharedFinding> SharedFindings { get; init; }

    /// <summary>The first rack; absent if only its report is given.</summary>
    public RackDescription? Before { get; init; }

    /// <summary>The second rack; absent if only its report is given.</summary>
    public RackDescription? After { get; init; }
}

/// <summary>Verdicts of two racks.</summary>
public sealed record VerdictPair
{
    /// <summary>Verdicts on the first rack.</summary>
    public required Verdicts Before { get; init; }

    /// <summary>Verdicts on the second rack.</summary>
    public required Verdicts After { get; init; }
}

/// <summary>Ids of what is new, gone or changed.</summary>
public sealed record ContentChanges
{
    /// <summary>Only in the second rack.</summary>
    public required IReadOnlyList<string> Added { get; init; }

    /// <summary>Only in the first rack.</summary>
    public required IReadOnlyList<string> Removed { get; init; }

    /// <summary>In both racks, with other data. A position alone is no change here.</summary>
    public required IReadOnlyList<ChangedContent> Changed { get; init; }

    /// <summary>Names of other members of the description that changed, such as cabinet, cooling or site.</summary>
    public required IReadOnlyList<string> Members { get; init; }
}

/// <summary>An item, PDU or supply with other data.</summary>
public sealed record ChangedContent
{
    /// <summary>Its id.</summary>
    public required string Id { get; init; }

    /// <summary>Names of its members that changed.</summary>
    public required IReadOnlyList<string> Members { get; init; }
}

/// <summary>Another position of an item or PDU.</summary>
public sealed record PositionChange
{
    /// <summary>Its id.</summary>
    public required string Id { get; init; }

    /// <summary>Position in the first rack; absent without one.</summary>
    public Position? Before { get; init; }

    /// <summary>Position in the second rack; absent without one.</summary>
    public Position? After { get; init; }
}

/// <summary>Number of pieces with a part number.</summary>
public sealed record PartCount
{
    /// <summary>Part number.</summary>
    public required string PartNumber { get; init; }

    /// <summary>Pieces; order units of baskets.</summary>
    public required int Quantity { get; init; }
}

/// <summary>One figure of two racks.</summary>
public sealed record FigurePair
{
    /// <summary>Path in the figures. Elements of lists are named by their id, as in /power/supplies/A/loadingPercent.</summary>
    public required string Figure { get; init; }

    /// <summary>Value in the first rack; absent without one.</summary>
    public double? Before { get; init; }

    /// <summary>Value in the second rack; absent without one.</summary>
    public double? After { get; init; }

    /// <summary>Second less first value; absent if either is absent.</summary>
    public double? Difference { get; init; }
}

/// <summary>A finding of both racks.</summary>
public sealed record SharedFinding
{
    /// <summary>How it changed.</summary>
    public required FindingChange Change { get; init; }

    /// <summary>Severity in the first rack.</summary>
    public required Severity SeverityBefore { get; init; }

    /// <summary>Utilisation in the first rack, percent.</summary>
    public double? UtilisationBeforePercent { get; init; }

    /// <summary>The finding of the second rack.</summary>
    public required Finding Finding { get; init; }
}
