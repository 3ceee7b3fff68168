using RackCheck.Model;
using RackCheck.Remedies.Verification;
using RackCheck.Rules.Canonical;
using RackCheck.Survey;
using RackCheck.Survey.Catalogue;

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
    /// <remarks>Part numbers are not looked up and say nothing.</remarks>
    public CheckReport Check(RackDescription description, CancellationToken cancellation = default) => Check(ResolvedRack.Plain(description), cancellation);

    /// <summary>Checks a rack with its part numbers.</summary>
    /// <param name="rack">
    /// The rack. Where neither description nor catalogue gives what a check cannot do without, the part numbers are judged and all other
    /// rules say that they could not be applied.
    /// </param>
    /// <param name="cancellation">Stops the check between two rules.</param>
    /// <returns>The report: the same for the same description and products, whatever the machine, thread or culture.</returns>
    /// <exception cref="ArgumentException">Part numbers were not looked up, and the cabinet, its height, width or depth, or the height of an item is absent.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public CheckReport Check(ResolvedRack rack, CancellationToken cancellation = default) => Check(rack, new CureTrials(), cancellation);

    /// <summary>Checks a rack without looking for remedies: for those who only ask whether one holds. It costs a small part of a whole check where much is wrong.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="cancellation">Stops the check between two rules.</param>
    /// <returns>The report, its findings without remedies and without a reason for having none.</returns>
    /// <exception cref="ArgumentException">Part numbers were not looked up, and the cabinet, its height, width or depth, or the height of an item is absent.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public CheckReport Recheck(ResolvedRack rack, CancellationToken cancellation = default) => Check(rack, null, cancellation);

    /// <summary>Checks a rack and looks for one remedy only: that of the first open error, in the order of the report, for which one holds.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="budget">What trials are left; it goes down.</param>
    /// <param name="cancellation">Stops the check between two rules.</param>
    /// <returns>The report, and the remedy, which clears its finding and brings no error; null where none holds.</returns>
    /// <exception cref="ArgumentException">Part numbers were not looked up, and the cabinet, its height, width or depth, or the height of an item is absent.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public (CheckReport Report, RemedyStep? Next) CheckForNext(ResolvedRack rack, TrialBudget budget, CancellationToken cancellation = default)
    {
        var trials = new CureTrials(budget);
        return (Check(rack, trials, cancellation), trials.Next);
    }

    private CheckReport Check(ResolvedRack rack, CureTrials? trials, CancellationToken cancellation)
    {
        var description = rack.Description;
        var missing = rack.IsLookedUp ? rack.Missing() : [];
        var survey = missing.Count == 0 ? new RackSurvey(rack) : null;
        var notAssessed = new List<NotAssessed>();
        var all = new FindingList();
        var findings = all.Written;
        var context = new RuleContext(rack, survey, all, notAssessed, trials);
        ApplyAll(context, survey is not null, findings, cancellation);
        trials?.Resolve(rack, all, other => FindingsOf(other, cancellation), finding => AcceptanceMarks.Of(finding, description.Acceptances) is not null);
        if (survey is null)
        {
            SayUnassessed(context, missing, notAssessed);
        }

        AcceptanceMarks.Mark(findings, description.Acceptances);
        foreach (var rule in survey is null ? [] : rules.ReportRules)
        {
            Apply(rule, context, description.Policy?.Rules, findings, static (r, c, f) => ((ReportRule)r).Check(c, f));
        }

        findings.Sort(FindingOrder.Compare);
        notAssessed.Sort(static (x, y) => string.CompareOrdinal(x.Rule, y.Rule));
        return new CheckReport
        {
            Reference = description.Reference,
            Verdict = VerdictOf(all, notAssessed),
            Ruleset = Ruleset,
            DescriptionDigest = DescriptionDigest.Of(rack.Posted),
            ResolvedDigest = ReferenceEquals(rack.Posted, description) ? null : DescriptionDigest.Of(description),
            Findings = findings,
            FindingsOmitted = all.Omitted(),
            NotAssessed = notAssessed,
            Assumptions = survey?.Assumptions ?? rack.Filled,
            Figures = survey is null ? new Figures() : new Figures
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
    private FindingList FindingsOf(ResolvedRack rack, CancellationToken cancellation)
    {
        var findings = new FindingList();
        var survey = rack.IsLookedUp && rack.Missing().Count > 0 ? null : new RackSurvey(rack);
        ApplyAll(new RuleContext(rack, survey, findings, [], null), survey is not null, findings.Written, cancellation);
        return findings;
    }

    // Every rule that was not applied: those about the rack, and those about the report where it has what they judge.
    private void SayUnassessed(RuleContext context, IReadOnlyList<string> missing, List<NotAssessed> notAssessed)
    {
        var posted = context.Rack.Posted;
        foreach (var rule in rules.RackRules.Concat<RuleBase>(posted.Acceptances is { Count: > 0 } ? rules.ReportRules : []))
        {
            if (posted.Policy?.Rules?.GetValueOrDefault(rule.Descriptor.Id)?.Severity == PolicySeverity.Off)
            {
                context.SwitchedOff(rule.Descriptor);
            }
            else
            {
                notAssessed.Add(new NotAssessed
                {
                    Rule = rule.Descriptor.Id,
                    Safety = rule.Descriptor.Safety,
                    Reason = NotAssessedReason.Missing,
                    Missing = missing,
                    Message = "Without this the rack cannot be worked out, and the part numbers do not tell it.",
                });
            }
        }
    }

    private void ApplyAll(RuleContext context, bool isWhole, List<Finding> findings, CancellationToken cancellation)
    {
        var policy = context.Rack.Posted.Policy?.Rules;
        foreach (var rule in context.Rack.IsLookedUp ? rules.PartRules : [])
        {
            Apply(rule, context, policy, findings, static (r, c, _) => ((PartRule)r).Check(c));
        }

        foreach (var rule in isWhole ? rules.RackRules : [])
        {
            cancellation.ThrowIfCancellationRequested();
            Apply(rule, context, policy, findings, static (r, c, _) => ((Rule)r).Check(c));
        }
    }

#pragma warning disable CA1031 // A rule that throws must not fail the request: what else was found still counts.
    private void Apply(
        RuleBase rule,
        RuleContext context,
        IReadOnlyDictionary<string, RulePolicy>? policy,
        List<Finding> findings,
        Action<RuleBase, RuleContext, List<Finding>> check)
    {
        var rulePolicy = policy?.GetValueOrDefault(rule.Descriptor.Id);
        if (rulePolicy?.Severity == PolicySeverity.Off)
        {
            // The report is what gets filed, so it says what was not looked at, and by whose wish.
            context.SwitchedOff(rule.Descriptor);
            return;
        }

        context.Begin(rule.Descriptor, rulePolicy);
        try
        {
            check(rule, context, findings);
            context.End();
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            context.Fail();
            onRuleFault(rule.Descriptor, fault);
        }
    }
#pragma warning restore CA1031

    private Verdict VerdictOf(FindingList findings, List<NotAssessed> notAssessed)
    {
        var gravest = findings.GravestOmitted;
        foreach (var finding in findings.Written)
        {
            gravest = finding.Accepted is null && (gravest is null || finding.Severity < gravest) ? finding.Severity : gravest;
        }

        // A safety rule that says nothing of part of the rack is for a person to look at, and so is any rule that failed; one that could have
        // found an error holds the order.
        var verdict = gravest switch { Severity.Error => Verdict.Hold, Severity.Warning => Verdict.Review, _ => Verdict.Release };
        foreach (var entry in notAssessed)
        {
            var own = entry.Reason != NotAssessedReason.Failed ? (entry.Safety ? Verdict.Review : Verdict.Release)
                : rules.Find(entry.Rule)!.Severity == Severity.Error ? Verdict.Hold
                : Verdict.Review;
            verdict = own > verdict ? own : verdict;
        }

        return verdict;
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
