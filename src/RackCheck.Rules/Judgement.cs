using RackCheck.Model;
using RackCheck.Remedies.Verification;

namespace RackCheck.Rules;

/// <summary>The verdict on each concern and its reasons: open findings, questions, and rules that were not assessed.</summary>
internal sealed class Judgement
{
    private readonly RuleSet rules;
    private readonly List<VerdictReason> reasons = [];

    /// <summary>Judges a rack.</summary>
    /// <param name="rules">The rules.</param>
    /// <param name="findings">The findings, with their acceptances marked.</param>
    /// <param name="notAssessed">Rules that were not applied to the whole rack.</param>
    /// <param name="questions">The questions.</param>
    public Judgement(RuleSet rules, FindingList findings, IReadOnlyList<NotAssessed> notAssessed, IReadOnlyList<Questions.Draft> questions)
    {
        this.rules = rules;
        foreach (var finding in findings.Written)
        {
            if (finding is { Accepted: null, SignedOff: null })
            {
                Add(ConcernOf(finding.Rule), Of(finding.Severity), finding.Rule, finding.Fingerprint);
            }
        }

        foreach (var (rule, severity) in findings.HighestOmitted)
        {
            Add(ConcernOf(rule), Of(severity), rule);
        }

        var asked = questions.SelectMany(q => q.Question.Rules).ToHashSet(StringComparer.Ordinal);
        foreach (var entry in notAssessed.Where(n => n.SignedOff is null))
        {
            if (entry.Reason == NotAssessedReason.Failed || !asked.Contains(entry.Rule))
            {
                Add(ConcernOf(entry.Rule), Of(entry), entry.Rule);
            }
        }

        foreach (var (question, open) in questions)
        {
            foreach (var concern in open.Select(o => o.Rule.Concern).Distinct().Order())
            {
                Add(concern, Verdict.Review, question: question.Id);
            }
        }

        Verdicts = Of(_ => true);
        Questions =
        [
            .. questions.Select(q => q.Question with
            {
                IfAnsweredWell = Of(r =>
                    r.Question != q.Question.Id && !IsSettled(r, q, questions)
                    && !(r.Fingerprint is { } own && q.Open.Any(o => o.Clearable.Contains(own)))),
            }),
        ];
    }

    /// <summary>The verdicts.</summary>
    public Verdicts Verdicts { get; }

    /// <summary>Everything that keeps them from release, the gravest first.</summary>
    public IReadOnlyList<VerdictReason> Reasons => [.. reasons
        .OrderByDescending(r => r.Makes).ThenBy(r => r.Concern).ThenBy(r => r.Rule is null).ThenBy(r => r.Rule ?? r.Question, StringComparer.Ordinal)
        .ThenBy(r => r.Fingerprint, StringComparer.Ordinal)];

    /// <summary>The questions, with the verdicts that a favourable answer makes possible.</summary>
    public IReadOnlyList<Question> Questions { get; }

    // Another question is moot where the answer to this one settles all the rules that wait for it.
    private static bool IsSettled(VerdictReason reason, Questions.Draft by, IReadOnlyList<Questions.Draft> questions) =>
        reason.Question is { } other
        && questions.First(q => q.Question.Id == other).Open
            .Where(o => o.Rule.Concern == reason.Concern)
            .All(o => by.Question.Pointers.Any(o.SettledBy.Contains));

    private static Verdict Of(Severity severity) => severity switch
    {
        Severity.Error => Verdict.Hold,
        Severity.Warning => Verdict.Review,
        _ => Verdict.Release,
    };

    // A safety rule that was not assessed needs a review by a person, and so does any rule that failed. A failed rule of severity error holds the order.
    private Verdict Of(NotAssessed entry) =>
        entry.Reason != NotAssessedReason.Failed ? (entry.Safety ? Verdict.Review : Verdict.Release)
        : rules.Find(entry.Rule)!.Severity == Severity.Error ? Verdict.Hold
        : Verdict.Review;

    private Concern ConcernOf(string rule) => rules.Find(rule)!.Concern;

    private void Add(Concern concern, Verdict makes, string? rule = null, string? fingerprint = null, string? question = null)
    {
        if (makes != Verdict.Release)
        {
            reasons.Add(new VerdictReason { Concern = concern, Rule = rule, Fingerprint = fingerprint, Question = question, Makes = makes });
        }
    }

    private Verdicts Of(Predicate<VerdictReason> counts)
    {
        var (product, site) = (Verdict.Release, Verdict.Release);
        foreach (var reason in reasons)
        {
            if (counts(reason))
            {
                (product, site) = reason.Concern == Concern.Product
                    ? (reason.Makes > product ? reason.Makes : product, site)
                    : (product, reason.Makes > site ? reason.Makes : site);
            }
        }

        return new Verdicts { Product = product, Site = site };
    }
}
