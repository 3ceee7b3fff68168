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

/// <summary>An accepted finding. It identifies the finding by fingerprint or by pointer.</summary>
public sealed record Acceptance
{
    /// <summary>Id of the rule.</summary>
    [StringLength(64, MinimumLength = 1)]
    public required string Rule { get; init; }

    /// <summary>Fingerprint of the finding.</summary>
    [StringLength(64, MinimumLength = 1)]
    public string? Fingerprint { get; init; }

    /// <summary>A pointer of the finding, RFC 6901, or a parent of it: /items/3 covers all findings of the rule on that item.</summary>
    [StringLength(300)]
    public string? Pointer { get; init; }

    /// <summary>Reason for accepting the finding.</summary>
    [StringLength(500, MinimumLength = 1)]
    public required string Reason { get; init; }

    /// <summary>Person who accepts the finding.</summary>
    [StringLength(100, MinimumLength = 1)]
    public required string AcceptedBy { get; init; }
}
