using RackCheck.Model;
using RackCheck.Remedies.Patches;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Remedies.Verification;

/// <summary>Tests the remedy candidates of a report by a check of each changed rack. Candidates that work become remedies.</summary>
public sealed class RemedyTrials
{
    /// <summary>Maximum number of remedies for a finding.</summary>
    public const int MostRemedies = 3;

    /// <summary>
    /// Work that the trials of a request may take, in checks of a rack of the usual size. Candidates beyond it are not verified and therefore not offered.
    /// It is a count, so that the same request has the same remedies on every machine.
    /// </summary>
    public const double MostWork = 1500;

    // A check of this many items, findings or steps of the search for outlets costs about as much as one of a rack of the usual size, which takes 70 us.
    private const double UsualItems = 40;
    private const double UsualFindings = 10;
    private const int UsualPdus = 4;
    private const double UsualSteps = 7000;

    // One survey more, and the rules that wait for missing facts; more surveys only where such a rule finds something.
    private const double RangesCost = 1;

    /// <summary>Why a finding has no remedy that holds or would return for every plausible value of the missing data.</summary>
    public static readonly WordedText MissingDecides = new(
        "no-remedy.missing-data", "The missing data decides which change to the order would clear it.");

    private static readonly WordedText NotTried = new(
        "no-remedy.not-tried", "There are too many findings: the remedies for this one were not tried.");

    private static readonly WordedText NothingKnown = new("no-remedy.nothing-known", "No change to the rack is known that would clear it.");

    private static readonly WordingChoice WouldCause = new(
        "no-remedy.causes", "\"{title}\" would clear it, but causes [rules:{rules:all}|other errors].");

    /// <summary>Wordings of the reasons why no remedy is offered.</summary>
    public static IReadOnlyList<MessageWording> Wordings { get; } = [.. MessageWording.DeclaredIn(typeof(RemedyTrials))];

    private readonly List<(Finding Finding, IEnumerable<RemedyCandidate> Candidates)> pending = [];
    private readonly TrialBudget budget;
    private readonly bool isForNext;

    /// <summary>Which changed descriptions, as they would be posted, are tried at all; null for all of them.</summary>
    public Predicate<RackDescription>? Takes { get; init; }

    /// <summary>The first remedy, if only one was requested; null if none works.</summary>
    public RemedyStep? Next { get; private set; }

    /// <summary>All remedies of every finding.</summary>
    public RemedyTrials()
        : this(new TrialBudget(MostWork), isForNext: false)
    {
    }

    /// <summary>All remedies of every finding, or one only: the first that works, for the first open error in the order of the report.</summary>
    /// <param name="budget">The remaining work, which other checks can share.</param>
    /// <param name="isForNext">Whether one remedy is enough.</param>
    public RemedyTrials(TrialBudget budget, bool isForNext) => (this.budget, this.isForNext) = (budget, isForNext);

    /// <summary>Adds the candidates of a finding.</summary>
    /// <param name="candidates">Its candidates, best first; read when they are tested.</param>
    public void Add(Finding finding, IEnumerable<RemedyCandidate> candidates) => pending.Add((finding, candidates));

    /// <summary>Removes the candidates of findings that were dropped.</summary>
    /// <param name="gone">Whether a finding was dropped.</param>
    public void Drop(Predicate<Finding> gone) => pending.RemoveAll(p => gone(p.Finding));

    /// <summary>Tests the candidates and adds the remedies to the findings.</summary>
    /// <param name="all">All its findings; those with remedies are replaced.</param>
    /// <param name="searchSteps">Steps of its search for outlets.</param>
    /// <param name="check">The findings of another rack.</param>
    /// <param name="isAccepted">Whether a finding is accepted.</param>
    public void Resolve(ResolvedRack rack, FindingList all, long searchSteps, Func<ResolvedRack, RackTrial> check, Predicate<Finding> isAccepted)
    {
        var findings = all.Written;
        if (findings.Count == 0)
        {
            return;
        }

        var before = all.Errors();
        var cost = CostOf(rack.Description, all.Count, searchSteps);
        var places = new Dictionary<Finding, int>(findings.Count, ReferenceEqualityComparer.Instance);
        for (var i = 0; i < findings.Count; i++)
        {
            places[findings[i]] = i;
        }

        if (isForNext)
        {
            // The check itself counts: a run is one check for each step.
            budget.Spend(cost);
            ResolveNext(rack, findings, before, cost, check, isAccepted, places);
            return;
        }

        // Highest severity first: if trials run out, warnings have no remedies. The choice among errors does not depend on the order of items.
        foreach (var (finding, candidates) in pending.OrderBy(p => p.Finding.Severity).ThenBy(p => p.Finding.Fingerprint, StringComparer.Ordinal))
        {
            List<Remedy> remedies = [.. finding.Remedies];
            var why = Try(rack, findings, finding, candidates, before, MostRemedies, cost, check, remedies);
            findings[places[finding]] = remedies.Count == 0 ? Unremedied(finding with { Remedies = [] }, why) : finding with { Remedies = remedies };
        }

        for (var i = 0; i < findings.Count; i++)
        {
            if (findings[i] is { Remedies.Count: 0, NoRemedy: null })
            {
                findings[i] = Unremedied(findings[i], NothingKnown);
            }
        }
    }

    /// <summary>A finding without a remedy.</summary>
    /// <param name="finding">The finding.</param>
    /// <param name="why">Why none is offered.</param>
    public static Finding Unremedied(Finding finding, WordedText why) =>
        finding with { NoRemedy = why.Text, NoRemedyKey = why.Key, NoRemedyData = why.Values };

    /// <summary>The cost of a check, in checks of a rack of the usual size.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="findings">Its number of findings, those that are only counted included.</param>
    /// <param name="searchSteps">Steps of its search for outlets.</param>
    /// <returns>1 or more.</returns>
    public static double CostOf(RackDescription rack, int findings, long searchSteps) =>
        Math.Max(1, (rack.Items.Count / UsualItems) + (findings / UsualFindings) + (searchSteps / UsualSteps) + FurtherPdus(rack));

    /// <summary>PDUs beyond those of a rack of the usual size, each of which takes about as long as such a rack.</summary>
    /// <param name="rack">The rack.</param>
    public static int FurtherPdus(RackDescription rack) => Math.Max(0, (rack.Pdus?.Count ?? 0) - UsualPdus);

    private void ResolveNext(
        ResolvedRack rack, List<Finding> findings, ErrorList before, double cost, Func<ResolvedRack, RackTrial> check, Predicate<Finding> isAccepted,
        Dictionary<Finding, int> places)
    {
        var errors = pending.Where(p => p.Finding.Severity == Severity.Error && !isAccepted(p.Finding)).ToList();
        errors.Sort(static (x, y) => FindingOrder.Compare(x.Finding, y.Finding));
        foreach (var (finding, candidates) in errors)
        {
            List<Remedy> remedies = [];
            Try(rack, findings, finding, candidates, before, 1, cost, check, remedies);
            if (remedies.Count > 0)
            {
                findings[places[finding]] = finding with { Remedies = remedies };
                Next = new RemedyStep
                {
                    Rule = finding.Rule, Fingerprint = finding.Fingerprint, Subject = finding.Subject, SubjectKey = finding.SubjectKey,
                    SubjectData = finding.SubjectData, Remedy = remedies[0],
                };
                return;
            }
        }
    }

    // Fills the list with working remedies, up to the requested number; returns the reason if it stays empty.
    private WordedText Try(
        ResolvedRack rack, List<Finding> findings, Finding finding, IEnumerable<RemedyCandidate> candidates, ErrorList before, int most, double cost,
        Func<ResolvedRack, RackTrial> check, List<Remedy> remedies)
    {
        var kinds = new List<string>();
        WordedText? why = null;
        if (budget.IsExhausted)
        {
            return NotTried;
        }

        foreach (var candidate in candidates)
        {
            if ((candidate.Kind is not null && kinds.Contains(candidate.Kind)) || (candidate.IsLastResort && remedies.Count > 0))
            {
                continue;
            }

            // Equipment leaves the order by a decision of the customer, never by itself.
            var removed = Removed(rack.Description, candidate.After);
            if (isForNext && removed.Length > 0)
            {
                continue;
            }

            // As the caller would post it: the patch applies to that description, and values from part numbers stay with their products.
            var posted = rack.ToPost(candidate.After);
            if (Takes?.Invoke(posted) == false)
            {
                continue;
            }

            if (!budget.Spend(cost))
            {
                return why ?? NotTried;
            }

            var trial = check(rack.With(posted));
            var after = trial.Findings;
            if (after.IsIncomplete)
            {
                // A failed rule cannot confirm that the change is free of its defect.
                continue;
            }

            var helps = Helps(finding, findings, before, after.Written, after.Errors());
            if (helps && trial.OverRanges is { } overRanges)
            {
                if (!budget.Spend(RangesCost * cost))
                {
                    return why ?? NotTried;
                }

                // What the change brings whatever is missing is a defect too.
                after = overRanges();
                helps = Helps(finding, findings, before, after.Written, after.Errors());
                why = Clears(finding, after.Written) ? why : why ?? MissingDecides;
            }

            if (helps)
            {
                var patch = DescriptionDiff.Patch(rack.Posted, posted);
                if (remedies.Exists(r => IsSame(r.Patch, patch)))
                {
                    continue;
                }

                var remedy = new Remedy
                {
                    Title = candidate.Title.Text, TitleKey = candidate.Title.Key, TitleData = candidate.Title.Values, Patch = patch, RemovesItems = removed,
                };
                remedies.Insert(removed.Length > 0 ? remedies.Count : remedies.TakeWhile(r => r.RemovesItems.Count == 0).Count(), remedy);
                kinds.Add(candidate.Kind ?? "");
                if (remedies.Count >= most)
                {
                    break;
                }
            }
            else if (why is null && Clears(finding, after.Written))
            {
                var rules = Brought(finding, findings, before, after.Written);
                why = rules.Length == 0
                    ? candidate.Title.QuotedIn(WouldCause.With())
                    : candidate.Title.QuotedIn(WouldCause.With("rules"), ("rules", Scalar.Ids(rules)));
            }
        }

        return why ?? NothingKnown;
    }

    /// <summary>
    /// Whether a change of the rack works: the finding is gone at any severity, its rule finds nothing as grave that was not there before, and no
    /// error is new or worse. A remedy for advice must not bring a warning either: the verdict would be worse than without it.
    /// </summary>
    /// <param name="finding">The finding to clear.</param>
    /// <param name="before">Findings of the present rack.</param>
    /// <param name="errorsBefore">Errors of the present rack.</param>
    /// <param name="after">Findings of the changed rack.</param>
    /// <param name="errorsAfter">Errors of the changed rack.</param>
    /// <returns>Whether it works.</returns>
    /// <remarks>Accepted errors count too: a change must not cause an error that is accepted by chance.</remarks>
    public static bool Helps(
        Finding finding, IReadOnlyList<Finding> before, ErrorList errorsBefore, IReadOnlyList<Finding> after, ErrorList errorsAfter) =>
        Clears(finding, after) && !errorsBefore.IsExceededBy(errorsAfter)
        && !after.Any(f => TakesItsPlace(f, finding, before, errorsBefore) || OutweighsAdvice(f, finding, before));

    // Blanking panels give way to what is put in.
    private static string[] Removed(RackDescription before, RackDescription after)
    {
        if (ReferenceEquals(after.Items, before.Items))
        {
            return [];
        }

        var equipment = before.Items.Where(i => i.Category != ItemCategory.BlankingPanel).Select(i => i.Id);
        return [.. equipment.Except(after.Items.Select(i => i.Id)).Order(StringComparer.Ordinal)];
    }

    // Two candidates can be the same change: a plug for the socket, and plug and socket of one size if the socket has it. It is offered once.
    private static bool IsSame(IReadOnlyList<PatchOperation> one, IReadOnlyList<PatchOperation> other)
    {
        if (one.Count != other.Count)
        {
            return false;
        }

        for (var i = 0; i < one.Count; i++)
        {
            var (x, y) = (one[i], other[i]);
            if (x.Op != y.Op || x.Path != y.Path || x.Value?.GetRawText() != y.Value?.GetRawText())
            {
                return false;
            }
        }

        return true;
    }

    // The fingerprint is made from the rule and the ids, so it tells findings of two rules apart.
    private static bool Clears(Finding finding, IReadOnlyList<Finding> after) => !after.Any(f => f.Fingerprint == finding.Fingerprint);

    // The rules whose findings make a change useless. Findings that are only counted are not known by rule.
    private static string[] Brought(Finding finding, List<Finding> before, ErrorList errorsBefore, List<Finding> after) =>
    [
        .. after.Where(f => (f.Severity == Severity.Error && errorsBefore.IsExceededBy(f)) || TakesItsPlace(f, finding, before, errorsBefore)
                || OutweighsAdvice(f, finding, before))
            .Select(f => f.Rule).Distinct().Order(StringComparer.Ordinal),
    ];

    private static bool OutweighsAdvice(Finding other, Finding finding, IReadOnlyList<Finding> before) =>
        finding.Severity == Severity.Advice && other.Severity < Severity.Advice
        && !before.Any(f => f.Fingerprint == other.Fingerprint && f.Severity <= other.Severity);

    // A rule that names the worst of several names the next one when the worst is corrected: the defect has only moved.
    private static bool TakesItsPlace(Finding other, Finding finding, IReadOnlyList<Finding> before, ErrorList errorsBefore) =>
        other.Rule == finding.Rule && other.Severity <= finding.Severity && !errorsBefore.Contains(other.Fingerprint)
        && !before.Any(f => f.Fingerprint == other.Fingerprint);
}
