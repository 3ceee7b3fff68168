using RackCheck.Model;
using RackCheck.Rules.Canonical;
using RackCheck.Rules.Remedies;
using RackCheck.Rules.Survey;

namespace RackCheck.Rules;

/// <summary>The pipeline of one check: survey, rules, policy, report. It has no state and can serve any number of threads.</summary>
/// <param name="rules">The rules.</param>
/// <param name="onRuleFault">Told of a rule that threw. The rule's entry under <c>notAssessed</c> tells the caller; the request goes on.</param>
public sealed class RackChecker(RuleSet rules, Action<RuleDescriptor, Exception> onRuleFault)
{
    private static readonly RulesetInfo Ruleset = new() { Version = RuleSet.CurrentVersion };

    private readonly string? notJudged = Cautions.NotJudged(rules);

    /// <summary>Checks a rack.</summary>
    /// <param name="description">A description that the request's validation found sound, with a cabinet and all heights.</param>
    /// <param name="cancellation">Stops the check between two rules.</param>
    /// <returns>The report: the same for the same description, whatever the machine, thread or culture.</returns>
    /// <exception cref="ArgumentException">The cabinet, its height, width or depth, or the height of an item is absent.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public CheckReport Check(RackDescription description, CancellationToken cancellation = default)
    {
        var survey = new RackSurvey(description);
        var notAssessed = new List<NotAssessed>();
        var trials = new CureTrials();
        var findings = new List<Finding>();
        var context = new RuleContext(survey, findings, notAssessed, trials);
        ApplyAll(context, findings, trials, cancellation);
        trials.Resolve(description, findings, other => FindingsOf(other, cancellation));

        AcceptanceMarks.Mark(findings, description.Acceptances);
        foreach (var rule in rules.ReportRules)
        {
            Apply(rule, context, description.Policy?.Rules, findings, trials, static (r, c, f) => ((ReportRule)r).Check(c, f));
        }

        findings.Sort(FindingOrder.Compare);
        notAssessed.Sort(static (x, y) => string.CompareOrdinal(x.Rule, y.Rule));
        return new CheckReport
        {
            Reference = description.Reference,
            Verdict = VerdictOf(findings, notAssessed),
            Ruleset = Ruleset,
            DescriptionDigest = DescriptionDigest.Of(description),
            Findings = findings,
            NotAssessed = notAssessed,
            Assumptions = survey.Assumptions,
            Figures = new Figures
            {
                Space = survey.Occupancy.Figures,
                Depth = survey.Depth.Figures,
                Mass = survey.Mass.Figures,
                Power = survey.Power.Figures,
                Cooling = survey.Heat.Figures,
                Earthing = survey.Earth.Figures,
                Cabling = survey.Cables.Figures,
                Delivery = survey.Route?.Figures,
            },
            Cautions = CautionsFor(findings),
        };
    }

    // What the rules find in a rack as a cure would make it: without cures of its own, or trying would have no end.
    private List<Finding> FindingsOf(RackDescription description, CancellationToken cancellation)
    {
        var findings = new List<Finding>();
        ApplyAll(new RuleContext(new RackSurvey(description), findings, [], null), findings, null, cancellation);
        return findings;
    }

    private void ApplyAll(RuleContext context, List<Finding> findings, CureTrials? trials, CancellationToken cancellation)
    {
        var policy = context.Survey.Description.Policy?.Rules;
        foreach (var rule in rules.RackRules)
        {
            cancellation.ThrowIfCancellationRequested();
            Apply(rule, context, policy, findings, trials, static (r, c, _) => ((Rule)r).Check(c));
        }
    }

#pragma warning disable CA1031 // A rule that throws must not fail the request: what else was found still counts.
    private void Apply(
        RuleBase rule,
        RuleContext context,
        IReadOnlyDictionary<string, RulePolicy>? policy,
        List<Finding> findings,
        CureTrials? trials,
        Action<RuleBase, RuleContext, List<Finding>> check)
    {
        var rulePolicy = policy?.GetValueOrDefault(rule.Descriptor.Id);
        if (rulePolicy?.Severity == PolicySeverity.Off)
        {
            // The report is what gets filed, so it says what was not looked at, and by whose wish.
            context.SwitchedOff(rule.Descriptor);
            return;
        }

        var before = findings.Count;
        context.Begin(rule.Descriptor, rulePolicy);
        try
        {
            check(rule, context, findings);
            context.End();
        }
        catch (Exception fault)
        {
            findings.RemoveRange(before, findings.Count - before);
            trials?.Drop(f => f.Rule == rule.Descriptor.Id);
            context.Fail();
            onRuleFault(rule.Descriptor, fault);
        }
    }
#pragma warning restore CA1031

    private Verdict VerdictOf(List<Finding> findings, List<NotAssessed> notAssessed)
    {
        var verdict = Verdict.Release;
        foreach (var finding in findings)
        {
            if (finding.Accepted is not null)
            {
                continue;
            }

            if (finding.Severity == Severity.Error)
            {
                return Verdict.Hold;
            }

            verdict = finding.Severity == Severity.Warning ? Verdict.Review : verdict;
        }

        // A safety rule that says nothing of part of the rack is for a person to look at, and so is any rule that failed.
        return verdict == Verdict.Release && notAssessed.Exists(n => n.Missing.Count == 0 || rules.Find(n.Rule)!.Safety)
            ? Verdict.Review
            : verdict;
    }

    private List<string> CautionsFor(List<Finding> findings)
    {
        var cautions = new List<string>(2) { Cautions.General };
        if (notJudged is not null)
        {
            cautions.Add(notJudged);
        }

        foreach (var finding in findings)
        {
            foreach (var caution in rules.Find(finding.Rule)!.Cautions)
            {
                if (!cautions.Contains(caution))
                {
                    cautions.Add(caution);
                }
            }
        }

        return cautions;
    }
}
