using RackCheck.Model;
using RackCheck.Model.Canonical;
using RackCheck.Remedies.Verification;
using RackCheck.Survey;
using RackCheck.Survey.Bounds;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Rules;

/// <summary>The pipeline of one check: survey, rules, policy, report. It has no state and can serve any number of threads.</summary>
/// <param name="rules">The rules.</param>
/// <param name="onRuleFault">Called with a rule that threw. The report lists the rule under <c>notAssessed</c>, and the check continues.</param>
public sealed class RackChecker(RuleSet rules, Action<RuleDescriptor, Exception> onRuleFault)
{
    private static readonly RulesetInfo Ruleset = new() { Version = RuleSet.CurrentVersion };

    private readonly WordedText? notJudged = Cautions.NotJudged(rules);

    /// <summary>
    /// Whether rules that read missing facts are asked again with these at the ends of their plausible ranges. Without it the report has no questions and
    /// rules answer for what is given, with its defaults: for one rule by itself.
    /// </summary>
    public bool AssessesRanges { get; init; } = true;

    /// <summary>
    /// Whether every rule judges every remedy. Otherwise only those do that read what the remedy changes, which gives the same answers: for the test that
    /// shows it.
    /// </summary>
    public bool JudgesWholeRacks { get; init; }

    /// <summary>Checks a rack.</summary>
    /// <param name="description">A valid description with a cabinet and all heights.</param>
    /// <param name="cancellation">Stops the check between two rules.</param>
    /// <returns>The report: the same for the same description, whatever the machine, thread or culture.</returns>
    /// <exception cref="ArgumentException">The cabinet, its height, width or depth, or the height of an item is absent.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    /// <remarks>Part numbers are not looked up and have no effect.</remarks>
    public CheckReport Check(RackDescription description, CancellationToken cancellation = default) => Check(ResolvedRack.Plain(description), cancellation);

    /// <summary>Checks a rack with its part numbers.</summary>
    /// <param name="rack">
    /// The rack. Where neither description nor catalogue gives the essential data, only the part number rules are applied, and the report
    /// lists all other rules as not assessed.
    /// </param>
    /// <param name="cancellation">Stops the check between two rules.</param>
    /// <returns>The report: the same for the same description and products, whatever the machine, thread or culture.</returns>
    /// <exception cref="ArgumentException">Part numbers were not looked up, and the cabinet, its height, width or depth, or the height of an item is
    /// absent.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public CheckReport Check(ResolvedRack rack, CancellationToken cancellation = default) => Check(rack, new RemedyTrials(), cancellation);

    /// <summary>Checks a rack and looks for remedies with a share of the work.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="budget">Remaining work; each trial reduces it.</param>
    /// <param name="takes">Which changed descriptions, as they would be posted, are tried as remedies; null for all of them.</param>
    /// <param name="cancellation">Stops the check between two rules.</param>
    /// <returns>The report.</returns>
    /// <exception cref="ArgumentException">Part numbers were not looked up, and the cabinet, its height, width or depth, or the height of an item is
    /// absent.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public CheckReport CheckWithin(
        ResolvedRack rack, TrialBudget budget, Predicate<RackDescription>? takes = null, CancellationToken cancellation = default) =>
        Check(rack, new RemedyTrials(budget, isForNext: false) { Takes = takes }, cancellation);

    /// <summary>Checks a rack without looking for remedies, for the verification of a remedy. It costs a small part of a whole check.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="cancellation">Stops the check between two rules.</param>
    /// <returns>The report; its findings have neither remedies nor a reason for having none.</returns>
    /// <exception cref="ArgumentException">Part numbers were not looked up, and the cabinet, its height, width or depth, or the height of an item is
    /// absent.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public CheckReport Recheck(ResolvedRack rack, CancellationToken cancellation = default) => Check(rack, (RemedyTrials?)null, cancellation);

    /// <summary>
    /// The findings of a rack, without remedies, verdict, questions, assumptions and digests: what a search over many racks compares them by. They are the
    /// same as those of <see cref="Recheck"/>.
    /// </summary>
    /// <param name="rack">The rack.</param>
    /// <param name="cancellation">Stops the check between two rules.</param>
    /// <returns>The findings in report order, with acceptances and sign-offs marked.</returns>
    /// <exception cref="ArgumentException">Part numbers were not looked up, and the cabinet, its height, width or depth, or the height of an item is
    /// absent.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public RackFindings Find(ResolvedRack rack, CancellationToken cancellation = default)
    {
        var findings = new FindingList();
        var survey = IsComplete(rack) ? RackSurvey.Lazily(rack) : null;
        var (context, notAssessed) = Apply(rack, survey, findings, null, cancellation);
        if (survey is not null && AssessesRanges && notAssessed.Exists(n => n.Missing.Count > 0))
        {
            new RangeAssessment(rules, rack, new MissingFacts(rack, survey), onRuleFault).AddFindings(findings, notAssessed, cancellation);
        }

        Mark(context, findings.Written, notAssessed);
        findings.Written.Sort(FindingOrder.Compare);
        return new RackFindings(findings.Written, notAssessed.Count, survey?.Power.Figures?.Assignment);
    }

    /// <summary>Checks a rack and looks for one remedy only: a verified remedy for the first open error, in report order, that has one.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="budget">Remaining trials; each trial reduces it.</param>
    /// <param name="cancellation">Stops the check between two rules.</param>
    /// <returns>The report and the remedy, which clears its finding and adds no error; null without a verified remedy.</returns>
    /// <exception cref="ArgumentException">Part numbers were not looked up, and the cabinet, its height, width or depth, or the height of an item is
    /// absent.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public (CheckReport Report, RemedyStep? Next) CheckForNext(ResolvedRack rack, TrialBudget budget, CancellationToken cancellation = default)
    {
        var trials = new RemedyTrials(budget, isForNext: true);
        return (Check(rack, trials, cancellation), trials.Next);
    }

    private CheckReport Check(ResolvedRack rack, RemedyTrials? trials, CancellationToken cancellation)
    {
        var description = rack.Description;
        var all = new FindingList();
        var findings = all.Written;
        var survey = IsComplete(rack) ? new RackSurvey(rack) : null;
        var (context, notAssessed) = Apply(rack, survey, all, trials, cancellation);
        var judged = trials is null || survey is null || JudgesWholeRacks ? null : JudgedRack.Of(rules, rack, survey, all);
        IReadOnlyList<OpenRule> open = [];
        IEnumerable<Assumption> ranges = [];
        if (survey is null)
        {
            var missing = rack.Missing();
            AddNotAssessed(context, missing, notAssessed);
            open = [.. rules.RackRules.Select(r => new OpenRule(r.Descriptor, r.Descriptor.Severity, missing, [], []))];
        }
        else if (AssessesRanges)
        {
            var assessment = new RangeAssessment(rules, rack, new MissingFacts(rack, survey), onRuleFault);
            assessment.Run(all, notAssessed, cancellation);
            (open, ranges) = (assessment.Open, assessment.Ranges());
            trials?.Drop(assessment.Replaced.Contains);
            judged?.OverRanges(all, assessment);
        }

        trials?.Resolve(
            rack, all, survey?.Power.SearchSteps ?? 0, other => Trial(other, judged, cancellation),
            finding => AcceptanceMarks.IsAccepted(finding, description));
        Mark(context, findings, notAssessed);
        var judgement = new Judgement(rules, all, notAssessed, Questions.Of(description, Unsigned(open, notAssessed)));
        findings.Sort(FindingOrder.Compare);
        notAssessed.Sort(static (x, y) => string.CompareOrdinal(x.Rule, y.Rule));
        var cautions = CautionsFor(findings, survey);
        return new CheckReport
        {
            Reference = description.Reference,
            Verdict = judgement.Verdicts.Gravest,
            Verdicts = judgement.Verdicts,
            VerdictReasons = judgement.Reasons,
            Questions = judgement.Questions,
            Ruleset = Ruleset,
            DescriptionDigest = DescriptionDigest.Of(rack.Posted),
            RackDigest = DescriptionDigest.OfRack(rack.Posted),
            ResolvedDigest = ReferenceEquals(rack.Posted, description) ? null : DescriptionDigest.Of(description),
            Findings = findings,
            FindingsOmitted = all.Omitted(),
            NotAssessed = notAssessed,
            Assumptions = AssumptionList.Merge(survey?.Assumptions ?? rack.Filled, ranges),
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
            Cautions = [.. cautions.Select(c => c.Text)],
            CautionKeys = [.. cautions.Select(c => c.Keyed)],
        };
    }

    // What a qualified person judged outside the service needs no answer.
    private static IReadOnlyList<OpenRule> Unsigned(IReadOnlyList<OpenRule> open, List<NotAssessed> notAssessed) =>
        notAssessed.Exists(n => n.SignedOff is not null)
            ? [.. open.Where(o => !notAssessed.Exists(n => n.Rule == o.Rule.Id && n.SignedOff is not null))]
            : open;

    // Findings in a rack after a remedy, without further remedies: trials would not end otherwise.
    private RackTrial Trial(ResolvedRack rack, JudgedRack? judged, CancellationToken cancellation)
    {
        var findings = new FindingList { IsOutline = true };
        var changed = judged?.ChangedIn(rack) ?? Sections.All;
        var isComplete = IsComplete(rack);
        var isWhole = judged is null || !isComplete || (changed & JudgedRack.Whole) != 0;
        var survey = !isComplete ? null : isWhole ? RackSurvey.Lazily(rack) : judged!.Survey.Changed(rack, changed);
        var notAssessed = new List<NotAssessed>();
        var context = new RuleContext(rack, survey, findings, notAssessed, null);
        ApplyAll(context, survey is not null, findings.Written, cancellation, isWhole ? Sections.All : changed);
        if (!isWhole)
        {
            judged!.AddOthers(findings, changed);
        }

        var waits = notAssessed.Exists(n => n.Missing.Count > 0);
        return new RackTrial(findings, survey is null || !AssessesRanges || (!waits && (isWhole || !judged!.TurnsOverRanges)) ? null : OverRanges);

        FindingList OverRanges()
        {
            if (waits)
            {
                var facts = (isWhole ? null : judged!.FactsOf(rack, changed)) ?? new MissingFacts(rack, survey);
                new RangeAssessment(rules, rack, facts, onRuleFault).AddFindings(findings, notAssessed, cancellation);
            }

            if (!isWhole)
            {
                judged!.AddOthersOverRanges(findings, changed);
            }

            return findings;
        }
    }

    // All rules, as far as the essential data goes; without it there is no survey.
    private (RuleContext Context, List<NotAssessed> NotAssessed) Apply(
        ResolvedRack rack, RackSurvey? survey, FindingList findings, RemedyTrials? trials, CancellationToken cancellation)
    {
        var notAssessed = new List<NotAssessed>();
        var context = new RuleContext(rack, survey, findings, notAssessed, trials);
        ApplyAll(context, survey is not null, findings.Written, cancellation);
        return (context, notAssessed);
    }

    private static bool IsComplete(ResolvedRack rack) => !rack.IsLookedUp || rack.Missing().Count == 0;

    // What the description accepts and signs off, and the rules about that.
    private void Mark(RuleContext context, List<Finding> findings, List<NotAssessed> notAssessed)
    {
        var description = context.Rack.Description;
        AcceptanceMarks.Mark(findings, notAssessed, description);
        foreach (var rule in context.HasSurvey ? rules.ReportRules : [])
        {
            Apply(rule, context, description.Policy?.Rules, findings, (r, c, f) => ((ReportRule)r).Check(c, f, notAssessed));
        }
    }

    // Every rule that was not applied: those about the rack, and those about the report where the description has acceptances.
    private void AddNotAssessed(RuleContext context, IReadOnlyList<string> missing, List<NotAssessed> notAssessed)
    {
        var posted = context.Rack.Posted;
        var aboutReport = posted.Acceptances is { Count: > 0 } || posted.SignOffs is { Count: > 0 } ? rules.ReportRules : [];
        foreach (var rule in rules.RackRules.Concat<RuleBase>(aboutReport))
        {
            if (posted.Policy?.Rules?.GetValueOrDefault(rule.Descriptor.Id)?.Severity == PolicySeverity.Off)
            {
                context.SwitchedOff(rule.Descriptor);
            }
            else
            {
                notAssessed.Add(RuleContext.NotAssessedOf(rule.Descriptor, NotAssessedReason.Missing, missing, CommonWordings.Essential, []));
            }
        }
    }

    // The rules that read one of the sections.
    private void ApplyAll(RuleContext context, bool isWhole, List<Finding> findings, CancellationToken cancellation, Sections changed = Sections.All)
    {
        var policy = context.Rack.Posted.Policy?.Rules;
        foreach (var rule in context.Rack.IsLookedUp ? rules.PartRules : [])
        {
            Apply(rule, context, policy, findings, static (r, c, _) => ((PartRule)r).Check(c));
        }

        for (var i = 0; isWhole && i < rules.RackRules.Length; i++)
        {
            if ((rules.SectionsRead[i] & changed) != 0)
            {
                cancellation.ThrowIfCancellationRequested();
                Apply(rules.RackRules[i], context, policy, findings, static (r, c, _) => ((Rule)r).Check(c));
            }
        }
    }

#pragma warning disable CA1031 // A rule that throws must not fail the request: the other findings still count.
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
            // The report is filed as a record, so it lists the rules that the policy switched off.
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

    private List<WordedText> CautionsFor(List<Finding> findings, RackSurvey? survey)
    {
        var cautions = new List<WordedText>(2) { Cautions.General };
        if (notJudged is not null)
        {
            cautions.Add(notJudged);
        }

        if (survey?.Power.IsSearchCutShort == true)
        {
            cautions.Add(Cautions.SearchCutShort);
        }

        if (survey is { Mass: { Stand.CanTip: true, Balance.CanPullOutMore: true } })
        {
            cautions.Add(Cautions.PullOut);
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
