using RackCheck.Model;
using RackCheck.Remedies;

namespace RackCheck.Rules;

/// <summary>One defect as a rule reports it; the pipeline turns it into a <see cref="Finding"/>.</summary>
public sealed class FindingDraft
{
    /// <summary>Wording of the message.</summary>
    public required MessageWording Message { get; init; }

    /// <summary>The values of the message by name, so that a client can write its own message from them.</summary>
    public required IReadOnlyList<(string Name, Scalar Value)> Data { get; init; }

    /// <summary>The item or location concerned.</summary>
    public required WordedText Subject { get; init; }

    /// <summary>Ids concerned, in an order that does not depend on the order of items. The fingerprint is made from the rule and these ids.</summary>
    public required IReadOnlyList<string> Identity { get; init; }

    /// <summary>Places in the request; the first is the cause.</summary>
    public required IReadOnlyList<string> Pointers { get; init; }

    /// <summary>Severity, where the rule has two; default the descriptor's.</summary>
    public Severity? Severity { get; init; }

    /// <summary>Actual value.</summary>
    public Quantity? Actual { get; init; }

    /// <summary>Permitted maximum or required minimum.</summary>
    public Quantity? Limit { get; init; }

    /// <summary>Actual value as a share of the limit, percent.</summary>
    public double? UtilisationPercent { get; init; }

    /// <summary>The calculation with its values.</summary>
    public string? Calculation { get; init; }

    /// <summary>Remedies, best first, that need no verification: for rules about the report, which run after all trials.</summary>
    public IReadOnlyList<Remedy> Remedies { get; init; } = [];

    /// <summary>
    /// Remedy candidates, best first. After all rules the pipeline verifies each candidate and offers the verified remedies. Not read during a trial.
    /// </summary>
    public IEnumerable<RemedyCandidate>? Candidates { get; init; }
}
