using System.Text.Json.Serialization;

namespace RackCheck.Model;

/// <summary>Report of a check.</summary>
public sealed record CheckReport
{
    /// <summary>The caller's reference, as sent.</summary>
    public string? Reference { get; init; }

    /// <summary>Release decision for the order: the more severe of the two verdicts.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>The decision on the product and on the site.</summary>
    public required Verdicts Verdicts { get; init; }

    /// <summary>Everything that keeps a verdict from release. Without it both verdicts are release.</summary>
    public required IReadOnlyList<VerdictReason> VerdictReasons { get; init; }

    /// <summary>Missing facts that can change a verdict, the most decisive first.</summary>
    public required IReadOnlyList<Question> Questions { get; init; }

    /// <summary>The ruleset that was applied.</summary>
    public required RulesetInfo Ruleset { get; init; }

    /// <summary>"sha-256:" and the digest of the canonical description (RFC 8785). It proves which description was checked.</summary>
    public required string DescriptionDigest { get; init; }

    /// <summary>
    /// Digest of the rack alone: without reference, policy, acceptances, sign-offs, date of the check and descriptions of items, and with items, supplies and
    /// PDUs in the order of their ids. The same rack has the same digest in every order.
    /// </summary>
    public required string RackDigest { get; init; }

    /// <summary>Digest of the canonical description with product data filled in. Absent where the description has no part numbers.</summary>
    public string? ResolvedDigest { get; init; }

    /// <summary>Findings: errors first, then by rule id, then by pointer.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>
    /// Number of findings omitted, by rule. Absent where none are omitted. A report lists at most 200 findings of one rule and is limited to 2 MB.
    /// Omitted findings count for the verdict and cannot be accepted.
    /// </summary>
    public IReadOnlyList<FindingsOmitted>? FindingsOmitted { get; init; }

    /// <summary>Rules that could not be applied to the whole rack, with the missing data.</summary>
    public required IReadOnlyList<NotAssessed> NotAssessed { get; init; }

    /// <summary>Values assumed because the description does not give them.</summary>
    public required IReadOnlyList<Assumption> Assumptions { get; init; }

    /// <summary>Calculated figures. A figure that could not be calculated is absent.</summary>
    public required Figures Figures { get; init; }

    /// <summary>Safety notes for whoever acts on this report.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }

    /// <summary>Key and values of each caution, in the same order, for translation. Absent only in reports of versions that had none.</summary>
    public IReadOnlyList<TextKey>? CautionKeys { get; init; }

    /// <summary>Remedies applied to the rack before this report, where the request asked for them.</summary>
    public AppliedRemedies? Applied { get; init; }
}

/// <summary>Key and values of a text in a list, for translation. GET /v1/reference/wordings has the template in English.</summary>
public sealed record TextKey
{
    /// <summary>Key of the wording, stable. Keys of several sentences are joined by plus signs.</summary>
    public required string MessageKey { get; init; }

    /// <summary>The values in the text, by name. Several ids are a list.</summary>
    public required IReadOnlyDictionary<string, Scalar> MessageData { get; init; }
}

/// <summary>The decision on each concern.</summary>
public sealed record Verdicts
{
    /// <summary>Whether what is ordered fits and works together.</summary>
    public required Verdict Product { get; init; }

    /// <summary>Whether the place is fit for it.</summary>
    public required Verdict Site { get; init; }

    /// <summary>The more severe of the two; not part of the response here.</summary>
    [JsonIgnore]
    public Verdict Gravest => Product > Site ? Product : Site;
}

/// <summary>Remedies that were applied in sequence.</summary>
public sealed record AppliedRemedies
{
    /// <summary>The rack with all remedies applied. The report describes this rack.</summary>
    public required RackDescription Rack { get; init; }

    /// <summary>The steps, in order.</summary>
    public required IReadOnlyList<RemedyStep> Steps { get; init; }
}

/// <summary>A remedy that was applied.</summary>
public sealed record RemedyStep
{
    /// <summary>Id of the rule whose finding the remedy corrected.</summary>
    public required string Rule { get; init; }

    /// <summary>Fingerprint of the finding.</summary>
    public required string Fingerprint { get; init; }

    /// <summary>The item or location concerned, as readable text.</summary>
    public required string Subject { get; init; }

    /// <summary>Key of the wording of the subject, for translation. GET /v1/reference/wordings has the template in English.</summary>
    public required string SubjectKey { get; init; }

    /// <summary>The values in the subject, by name.</summary>
    public required IReadOnlyDictionary<string, Scalar> SubjectData { get; init; }

    /// <summary>The remedy applied. Its pointers refer to the description before this step.</summary>
    public required Remedy Remedy { get; init; }
}

/// <summary>The ruleset that was applied.</summary>
public sealed record RulesetInfo
{
    /// <summary>Version of the ruleset.</summary>
    public required string Version { get; init; }
}

/// <summary>A defect found in the rack.</summary>
public sealed record Finding
{
    /// <summary>Id of the rule.</summary>
    public required string Rule { get; init; }

    /// <summary>Stable key made from the rule and the ids concerned, not from list indices. Reordering a list does not change it.</summary>
    public required string Fingerprint { get; init; }

    /// <summary>Severity of the finding.</summary>
    public required Severity Severity { get; init; }

    /// <summary>Whether the defect can injure people.</summary>
    public required bool Safety { get; init; }

    /// <summary>The item or location concerned, as readable text.</summary>
    public required string Subject { get; init; }

    /// <summary>Key of the wording of the subject, for translation. GET /v1/reference/wordings has the template in English.</summary>
    public required string SubjectKey { get; init; }

    /// <summary>The values in the subject, by name.</summary>
    public required IReadOnlyDictionary<string, Scalar> SubjectData { get; init; }

    /// <summary>Ratio of actual value to limit, percent, where applicable.</summary>
    public double? UtilisationPercent { get; init; }

    /// <summary>One sentence with the ids and values.</summary>
    public required string Message { get; init; }

    /// <summary>Key of the wording, for translation into other languages. The rule's page has the template in English.</summary>
    public required string MessageKey { get; init; }

    /// <summary>The values in the message, by name. Several ids are a list.</summary>
    public required IReadOnlyDictionary<string, Scalar> MessageData { get; init; }

    /// <summary>Members of the request concerned, RFC 6901 pointers; the main cause first.</summary>
    public required IReadOnlyList<string> Pointers { get; init; }

    /// <summary>The actual value.</summary>
    public Quantity? Actual { get; init; }

    /// <summary>The maximum or minimum value.</summary>
    public Quantity? Limit { get; init; }

    /// <summary>The calculation with its numbers.</summary>
    public string? Calculation { get; init; }

    /// <summary>Keys of the sources. The rule's page gives the details.</summary>
    public required IReadOnlyList<string> Sources { get; init; }

    /// <summary>Remedies, best first; those that take items out of the rack come last.</summary>
    public required IReadOnlyList<Remedy> Remedies { get; init; }

    /// <summary>Why no remedy is offered. Absent where remedies are offered.</summary>
    public string? NoRemedy { get; init; }

    /// <summary>
    /// Key of the wording of <c>noRemedy</c>, for translation. GET /v1/reference/wordings has the template in English. Where that quotes the title of a
    /// remedy, a plus sign and the key of the title follow; the names of its values end in 2.
    /// </summary>
    public string? NoRemedyKey { get; init; }

    /// <summary>The values in <c>noRemedy</c>, by name.</summary>
    public IReadOnlyDictionary<string, Scalar>? NoRemedyData { get; init; }

    /// <summary>Who accepted the finding and why. Absent while the finding is open.</summary>
    public AcceptedMark? Accepted { get; init; }

    /// <summary>The acceptance that no longer covers the finding, which is open again.</summary>
    public LapsedAcceptance? LapsedAcceptance { get; init; }

    /// <summary>Who judged a safety warning outside this service. Absent while the warning is open.</summary>
    public SignOffMark? SignedOff { get; init; }
}

/// <summary>Number of findings of one rule that are omitted.</summary>
public sealed record FindingsOmitted
{
    /// <summary>Id of the rule.</summary>
    public required string Rule { get; init; }

    /// <summary>Number of omitted findings.</summary>
    public required int Count { get; init; }
}

/// <summary>A value with its unit of measure.</summary>
public sealed record Quantity
{
    /// <summary>The value.</summary>
    public required double Value { get; init; }

    /// <summary>Unit of measure.</summary>
    public required string Unit { get; init; }
}

/// <summary>A remedy for a finding.</summary>
public sealed record Remedy
{
    /// <summary>The change, in plain words.</summary>
    public required string Title { get; init; }

    /// <summary>
    /// Key of the wording of the title, for translation. GET /v1/reference/wordings has the template in English. Keys of several steps are joined by plus
    /// signs: each further step follows after ", and ". The names of the second step's values end in 2, of the third one's in 3.
    /// </summary>
    public required string TitleKey { get; init; }

    /// <summary>The values in the title, by name. Several ids are a list.</summary>
    public required IReadOnlyDictionary<string, Scalar> TitleData { get; init; }

    /// <summary>The same change as a JSON Patch (RFC 6902) to the request.</summary>
    public required IReadOnlyList<PatchOperation> Patch { get; init; }

    /// <summary>
    /// Ids of the items that the change takes out of this rack, in ordinal order: they need another rack, are mounted on site, or leave the order. Empty where
    /// all items stay. Blanking panels that give way to equipment are not among them.
    /// </summary>
    public required IReadOnlyList<string> RemovesItems { get; init; }
}

/// <summary>One operation of a JSON Patch, RFC 6902.</summary>
public sealed record PatchOperation
{
    /// <summary>The operation: add, remove or replace.</summary>
    public required string Op { get; init; }

    /// <summary>Pointer to the member to change, RFC 6901.</summary>
    public required string Path { get; init; }

    /// <summary>The new value. Absent for remove.</summary>
    public System.Text.Json.JsonElement? Value { get; init; }
}

/// <summary>Who accepted a finding and why.</summary>
public sealed record AcceptedMark
{
    /// <summary>Reason for accepting the finding.</summary>
    public required string Reason { get; init; }

    /// <summary>Person who accepted the finding.</summary>
    public required string AcceptedBy { get; init; }

    /// <summary>When it was accepted.</summary>
    public string? AcceptedAt { get; init; }

    /// <summary>End of the acceptance.</summary>
    public string? ExpiresAt { get; init; }

    /// <summary>The actual value that was accepted.</summary>
    public AcceptedValue? UpTo { get; init; }
}

/// <summary>An acceptance that no longer covers its finding.</summary>
public sealed record LapsedAcceptance
{
    /// <summary>Why it no longer covers the finding.</summary>
    public required LapseReason Reason { get; init; }

    /// <summary>The acceptance.</summary>
    public required AcceptedMark Acceptance { get; init; }

    /// <summary>One sentence with the values.</summary>
    public required string Message { get; init; }

    /// <summary>Key of the wording, for translation into other languages.</summary>
    public required string MessageKey { get; init; }

    /// <summary>The values in the message, by name.</summary>
    public required IReadOnlyDictionary<string, Scalar> MessageData { get; init; }
}

/// <summary>Who judged a safety warning, or a safety rule that was not assessed, outside this service.</summary>
public sealed record SignOffMark
{
    /// <summary>Name of the qualified person.</summary>
    public required string By { get; init; }

    /// <summary>Role or qualification of the person.</summary>
    public required string Role { get; init; }

    /// <summary>What was judged, and how.</summary>
    public required string Reason { get; init; }

    /// <summary>When it was signed.</summary>
    public required string At { get; init; }
}

/// <summary>A rule that could not be applied to the whole rack.</summary>
public sealed record NotAssessed
{
    /// <summary>Id of the rule.</summary>
    public required string Rule { get; init; }

    /// <summary>Whether the rule protects people from injury.</summary>
    public required bool Safety { get; init; }

    /// <summary>Why the rule was not applied.</summary>
    public required NotAssessedReason Reason { get; init; }

    /// <summary>Missing members of the description, RFC 6901 pointers.</summary>
    public required IReadOnlyList<string> Missing { get; init; }

    /// <summary>What is missing and what was not checked.</summary>
    public required string Message { get; init; }

    /// <summary>Key of the wording, for translation into other languages. The rule's page has the template in English.</summary>
    public required string MessageKey { get; init; }

    /// <summary>The values in the message, by name.</summary>
    public required IReadOnlyDictionary<string, Scalar> MessageData { get; init; }

    /// <summary>Who judged the safety rule outside this service. Absent where nobody did.</summary>
    public SignOffMark? SignedOff { get; init; }
}

/// <summary>A value, or a range of values, assumed because the description does not give it. Assumptions of one kind are one entry.</summary>
public sealed record Assumption
{
    /// <summary>Pointers to the members that the description does not give, RFC 6901.</summary>
    public required IReadOnlyList<string> Pointers { get; init; }

    /// <summary>The assumed value. Absent where a range is assumed.</summary>
    public Scalar? Value { get; init; }

    /// <summary>
    /// Key of the wording of the value, for translation. GET /v1/reference/wordings has the template in English. Present only where the value is a text in
    /// English, not a value that the member can have.
    /// </summary>
    public string? ValueKey { get; init; }

    /// <summary>The values in such a text, by name.</summary>
    public IReadOnlyDictionary<string, Scalar>? ValueData { get; init; }

    /// <summary>Lower end of an assumed range, over all members of the entry.</summary>
    public double? From { get; init; }

    /// <summary>Upper end of an assumed range, over all members of the entry.</summary>
    public double? To { get; init; }

    /// <summary>Unit of measure. Absent for text and for true or false.</summary>
    public string? Unit { get; init; }

    /// <summary>Basis of the assumed value.</summary>
    public required string Basis { get; init; }

    /// <summary>Key of the wording of the basis, for translation. GET /v1/reference/wordings has the template in English.</summary>
    public required string BasisKey { get; init; }

    /// <summary>The values in the basis, by name.</summary>
    public required IReadOnlyDictionary<string, Scalar> BasisData { get; init; }
}
