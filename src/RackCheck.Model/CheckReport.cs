using System.Text.Json.Serialization;

namespace RackCheck.Model;

/// <summary>The answer to a check.</summary>
public sealed record CheckReport
{
    /// <summary>The caller's reference, echoed.</summary>
    public string? Reference { get; init; }

    /// <summary>What may be done with the order.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>Which rules were applied.</summary>
    public required RulesetInfo Ruleset { get; init; }

    /// <summary>"sha-256:" and the digest of the canonical description (RFC 8785), so that it can be proved what was checked.</summary>
    public required string DescriptionDigest { get; init; }

    /// <summary>The digest of the canonical description with its part numbers filled in; absent where it has none.</summary>
    public string? ResolvedDigest { get; init; }

    /// <summary>What was found: errors first, then by rule id, then by pointer.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>
    /// How many findings are not written out, by rule; absent where all are. A report has at most 200 findings of one rule, and no more than fit into
    /// an answer of 2 MB. What is left out counts for the verdict and cannot be accepted.
    /// </summary>
    public IReadOnlyList<FindingsOmitted>? FindingsOmitted { get; init; }

    /// <summary>Rules that could not be applied to all of the rack, and what they lacked.</summary>
    public required IReadOnlyList<NotAssessed> NotAssessed { get; init; }

    /// <summary>Values that the service took because the description does not give them.</summary>
    public required IReadOnlyList<Assumption> Assumptions { get; init; }

    /// <summary>The numbers worked out. One that could not be worked out is absent.</summary>
    public required Figures Figures { get; init; }

    /// <summary>What has to be minded by whoever acts on this report.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }

    /// <summary>What was done to the rack before this report, where remedies were asked to be applied.</summary>
    public AppliedRemedies? Applied { get; init; }
}

/// <summary>Remedies that were applied, one after the other.</summary>
public sealed record AppliedRemedies
{
    /// <summary>The rack with all of them applied; the report is on it.</summary>
    public required RackDescription Rack { get; init; }

    /// <summary>What was done, in order.</summary>
    public required IReadOnlyList<RemedyStep> Steps { get; init; }
}

/// <summary>A remedy that was applied.</summary>
public sealed record RemedyStep
{
    /// <summary>Id of the rule whose finding it cured.</summary>
    public required string Rule { get; init; }

    /// <summary>Fingerprint of the finding.</summary>
    public required string Fingerprint { get; init; }

    /// <summary>Which place of the rack, readable.</summary>
    public required string Subject { get; init; }

    /// <summary>What was done. Its pointers are those of the description before this step.</summary>
    public required Remedy Remedy { get; init; }
}

/// <summary>Which rules were applied.</summary>
public sealed record RulesetInfo
{
    /// <summary>Version of the set of rules.</summary>
    public required string Version { get; init; }
}

/// <summary>A defect of the rack.</summary>
public sealed record Finding
{
    /// <summary>Id of the rule.</summary>
    public required string Rule { get; init; }

    /// <summary>Made of the rule and the ids concerned, not of indices: it outlives a reordering.</summary>
    public required string Fingerprint { get; init; }

    /// <summary>
    /// What the defect is known by when two reports are compared; not part of the answer. The fingerprint, except where a rule names the
    /// worst of several: when that one goes and the next is named, the defect is the same.
    /// </summary>
    [JsonIgnore]
    public string? Root { get; init; }

    /// <summary>How grave it is.</summary>
    public required Severity Severity { get; init; }

    /// <summary>Whether people can be hurt.</summary>
    public required bool Safety { get; init; }

    /// <summary>Which place of the rack, readable.</summary>
    public required string Subject { get; init; }

    /// <summary>Actual to limit, percent, where that makes sense.</summary>
    public double? UtilisationPercent { get; init; }

    /// <summary>One sentence with the numbers and ids in it.</summary>
    public required string Message { get; init; }

    /// <summary>The values of the message by name, so that it can be worded in any language.</summary>
    public required IReadOnlyDictionary<string, Scalar> MessageData { get; init; }

    /// <summary>Places in the request, RFC 6901; the first is the culprit.</summary>
    public required IReadOnlyList<string> Pointers { get; init; }

    /// <summary>What the rack has.</summary>
    public Quantity? Actual { get; init; }

    /// <summary>What it may have at most, or needs at least.</summary>
    public Quantity? Limit { get; init; }

    /// <summary>The arithmetic with the numbers put in.</summary>
    public string? Calculation { get; init; }

    /// <summary>Keys of the sources; the rule's page says more of each.</summary>
    public required IReadOnlyList<string> Sources { get; init; }

    /// <summary>What cures it, best first.</summary>
    public required IReadOnlyList<Remedy> Remedies { get; init; }

    /// <summary>Why no remedy is offered; absent where one is.</summary>
    public string? NoRemedy { get; init; }

    /// <summary>Who accepted it and why; absent while it is open.</summary>
    public AcceptedMark? Accepted { get; init; }
}

/// <summary>How many findings of a rule are not written out.</summary>
public sealed record FindingsOmitted
{
    /// <summary>Id of the rule.</summary>
    public required string Rule { get; init; }

    /// <summary>How many.</summary>
    public required int Count { get; init; }
}

/// <summary>A number with its unit.</summary>
public sealed record Quantity
{
    /// <summary>The number.</summary>
    public required double Value { get; init; }

    /// <summary>Its unit.</summary>
    public required string Unit { get; init; }
}

/// <summary>A cure for a finding.</summary>
public sealed record Remedy
{
    /// <summary>What is done, in the customer's words.</summary>
    public required string Title { get; init; }

    /// <summary>The same as a JSON Patch (RFC 6902) on the request.</summary>
    public required IReadOnlyList<PatchOperation> Patch { get; init; }
}

/// <summary>One operation of a JSON Patch, RFC 6902.</summary>
public sealed record PatchOperation
{
    /// <summary>add, remove or replace.</summary>
    public required string Op { get; init; }

    /// <summary>Pointer to the place, RFC 6901.</summary>
    public required string Path { get; init; }

    /// <summary>The new value; absent for remove.</summary>
    public System.Text.Json.JsonElement? Value { get; init; }
}

/// <summary>Who accepted a finding and why.</summary>
public sealed record AcceptedMark
{
    /// <summary>Why.</summary>
    public required string Reason { get; init; }

    /// <summary>Who.</summary>
    public required string AcceptedBy { get; init; }
}

/// <summary>A rule that could not be applied to all of the rack.</summary>
public sealed record NotAssessed
{
    /// <summary>Id of the rule.</summary>
    public required string Rule { get; init; }

    /// <summary>Whether it guards against people being hurt.</summary>
    public required bool Safety { get; init; }

    /// <summary>Why it was not applied.</summary>
    public required NotAssessedReason Reason { get; init; }

    /// <summary>Members of the description that it lacked, RFC 6901.</summary>
    public required IReadOnlyList<string> Missing { get; init; }

    /// <summary>What that means.</summary>
    public required string Message { get; init; }
}

/// <summary>A value that the service took because the description does not give it.</summary>
public sealed record Assumption
{
    /// <summary>The member that it stands for, RFC 6901.</summary>
    public required string Pointer { get; init; }

    /// <summary>The value taken.</summary>
    public required Scalar Value { get; init; }

    /// <summary>Its unit; absent for a word or a truth value.</summary>
    public string? Unit { get; init; }

    /// <summary>Why this value.</summary>
    public required string Basis { get; init; }
}
