using RackCheck.Model;

namespace RackCheck.Rules;

/// <summary>What a rule says of a rack: as given, or with its missing values at an end of their ranges.</summary>
/// <param name="Findings">Its findings.</param>
/// <param name="Missing">Pointers of the values that it still misses.</param>
/// <param name="IsFailed">Whether it failed inside the service.</param>
internal sealed record RuleAnswer(IReadOnlyList<Finding> Findings, IReadOnlyList<string> Missing, bool IsFailed)
{
    /// <summary>Nothing is wrong and nothing is missing: what most rules say.</summary>
    public static RuleAnswer Clean { get; } = new([], [], false);

    /// <summary>Whether two answers are the same: the same findings with the same severities.</summary>
    public bool IsSame(RuleAnswer other) => Findings.Count == other.Findings.Count && Findings.All(other.Has);

    /// <summary>Whether it has a finding, with the same severity.</summary>
    public bool Has(Finding finding)
    {
        foreach (var own in Findings)
        {
            if (own.Fingerprint == finding.Fingerprint && own.Severity == finding.Severity)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether it has a finding, as grave or graver.</summary>
    public bool Covers(Finding finding)
    {
        foreach (var own in Findings)
        {
            if (own.Fingerprint == finding.Fingerprint && own.Severity <= finding.Severity)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The answer with further findings; one takes the place of a milder one.</summary>
    public RuleAnswer With(IReadOnlyList<Finding> further) =>
        this with { Findings = [.. Findings.Where(f => !further.Any(o => o.Fingerprint == f.Fingerprint)), .. further] };

    /// <summary>The gravest severity in which answers differ; advice where they do not.</summary>
    public static Severity GravestDifference(IReadOnlyList<RuleAnswer> answers)
    {
        var gravest = Severity.Advice;
        foreach (var answer in answers)
        {
            foreach (var finding in answer.Findings)
            {
                if (finding.Severity < gravest && answers.Any(a => !a.Has(finding)))
                {
                    gravest = finding.Severity;
                }
            }
        }

        return gravest;
    }
}

/// <summary>A rule whose answer depends on missing facts.</summary>
/// <param name="Rule">The rule.</param>
/// <param name="Pointers">The missing members.</param>
/// <param name="Clearable">Fingerprints of its findings that a favourable answer clears.</param>
/// <param name="SettledBy">
/// Members of which a favourable answer to one alone leaves the rule without findings, whatever the others are. It is empty where there is one fact only.
/// </param>
internal sealed record OpenRule(
    RuleDescriptor Rule, Severity Gravest, IReadOnlyList<string> Pointers, IReadOnlyList<string> Clearable, IReadOnlyList<string> SettledBy);
