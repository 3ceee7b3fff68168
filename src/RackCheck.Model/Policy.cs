using System.ComponentModel.DataAnnotations;

namespace RackCheck.Model;

/// <summary>The caller's own limits and severities.</summary>
public sealed record Policy
{
    /// <summary>Changes by rule id. A safety rule can be made stricter, never weaker.</summary>
    [MaxLength(200)]
    public IReadOnlyDictionary<string, RulePolicy>? Rules { get; init; }
}

/// <summary>The caller's changes to one rule.</summary>
public sealed record RulePolicy
{
    /// <summary>Severity of all findings of the rule, or off.</summary>
    public PolicySeverity? Severity { get; init; }

    /// <summary>Limits by name. The rule's page lists them with unit and range.</summary>
    [MaxLength(50)]
    public IReadOnlyDictionary<string, double>? Limits { get; init; }
}

/// <summary>An accepted finding. It identifies the finding by fingerprint, by the id of an item or by pointer.</summary>
public sealed record Acceptance
{
    /// <summary>Id of the rule.</summary>
    [StringLength(64, MinimumLength = 1)]
    public required string Rule { get; init; }

    /// <summary>Fingerprint of the finding.</summary>
    [StringLength(64, MinimumLength = 1)]
    public string? Fingerprint { get; init; }

    /// <summary>Id of an item: covers all findings of the rule on that item.</summary>
    [StringLength(64, MinimumLength = 1)]
    public string? Item { get; init; }

    /// <summary>A pointer of the finding, RFC 6901, or a parent of it: /items/3 covers all findings of the rule on that item.</summary>
    [StringLength(300)]
    public string? Pointer { get; init; }

    /// <summary>Reason for accepting the finding.</summary>
    [StringLength(500, MinimumLength = 1)]
    public required string Reason { get; init; }

    /// <summary>Person who accepts the finding.</summary>
    [StringLength(100, MinimumLength = 1)]
    public required string AcceptedBy { get; init; }

    /// <summary>When it was accepted: RFC 3339 date and time with an offset.</summary>
    [DataType(DataType.DateTime)]
    [RegularExpression(Timestamps.Pattern)]
    public string? AcceptedAt { get; init; }

    /// <summary>End of the acceptance, compared with <c>asOf</c> of the request, which is required then: RFC 3339 date and time with an offset.</summary>
    [DataType(DataType.DateTime)]
    [RegularExpression(Timestamps.Pattern)]
    public string? ExpiresAt { get; init; }

    /// <summary>The actual value that was accepted. A worse one is open again. Absent: any value.</summary>
    public AcceptedValue? UpTo { get; init; }
}

/// <summary>The actual value that was accepted.</summary>
public sealed record AcceptedValue
{
    /// <summary>The value, as <c>actual</c> of the finding.</summary>
    [Range(-1e12d, 1e12d)]
    public required double Value { get; init; }

    /// <summary>Its unit of measure, as in <c>actual</c> of the finding.</summary>
    [StringLength(16, MinimumLength = 1)]
    public required string Unit { get; init; }
}

/// <summary>A statement of a qualified person that a safety warning, or a safety rule that could not be assessed, was judged outside this service.</summary>
public sealed record SignOff
{
    /// <summary>Id of the safety rule.</summary>
    [StringLength(64, MinimumLength = 1)]
    public required string Rule { get; init; }

    /// <summary>Fingerprint of the warning. Absent: the rule is signed off as not assessed.</summary>
    [StringLength(64, MinimumLength = 1)]
    public string? Fingerprint { get; init; }

    /// <summary>Name of the qualified person.</summary>
    [StringLength(100, MinimumLength = 1)]
    public required string By { get; init; }

    /// <summary>Role or qualification of the person.</summary>
    [StringLength(100, MinimumLength = 1)]
    public required string Role { get; init; }

    /// <summary>What was judged, and how.</summary>
    [StringLength(500, MinimumLength = 1)]
    public required string Reason { get; init; }

    /// <summary>When it was signed: RFC 3339 date and time with an offset.</summary>
    [DataType(DataType.DateTime)]
    [RegularExpression(Timestamps.Pattern)]
    public required string At { get; init; }
}
