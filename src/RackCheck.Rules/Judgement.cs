using RackCheck.Model;
using RackCheck.Remedies.Verification;

namespace RackCheck.Rules;

/// <summary>The verdict on each concern, from open findings and rules that were not assessed.</summary>
internal readonly struct Judgement
{
    private readonly RuleSet rules;

    /// <summary>Judges a rack.</summary>
    /// <param name="rules">The rules.</param>
    /// <param name="findings">The findings, with their acceptances marked.</param>
    /// <param name="notAssessed">Rules that were not applied to the whole rack.</param>
    public Judgement(RuleSet rules, FindingList findings, IReadOnlyList<NotAssessed> notAssessed)
    {
        this.rules = rules;
        Verdicts = new Verdicts { Product = Verdict.Release, Site = Verdict.Release };
        foreach (var finding in findings.Written)
        {
            Verdicts = finding is { Accepted: null, SignedOff: null } ? With(finding.Rule, Of(finding.Severity)) : Verdicts;
        }

        foreach (var (rule, severity) in findings.HighestOmitted)
        {
            Verdicts = With(rule, Of(severity));
        }

        foreach (var entry in notAssessed.Where(n => n.SignedOff is null))
        {
            Verdicts = With(entry.Rule, Of(entry));
        }
    }

    /// <summary>The verdicts.</summary>
    public Verdicts Verdicts { get; }

    private static Verdict Of(Severity severity) => severity switch
    {
        Severity.Error => Verdict.Hold,
        Severity.Warning => Verdict.Review,
        _ => Verdict.Release,
    };

    // A safety rule with missing data needs a review by a person, and so does any rule that failed. A failed rule of severity error holds the order.
    private Verdict Of(NotAssessed entry) =>
        entry.Reason != NotAssessedReason.Failed ? (entry.Safety ? Verdict.Review : Verdict.Release)
        : rules.Find(entry.Rule)!.Severity == Severity.Error ? Verdict.Hold
        : Verdict.Review;

    private Verdicts With(string rule, Verdict verdict) => rules.Find(rule)!.Concern == Concern.Product
        ? verdict > Verdicts.Product ? Verdicts with { Product = verdict } : Verdicts
        : verdict > Verdicts.Site ? Verdicts with { Site = verdict } : Verdicts;
}
