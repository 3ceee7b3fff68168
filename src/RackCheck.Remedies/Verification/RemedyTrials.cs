using RackCheck.Model;
using RackCheck.Remedies.Patches;
using RackCheck.Survey;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Remedies.Verification;

/// <summary>Tries the cures of a report's findings, each by a check of the rack as it would be, and makes remedies of those that hold.</summary>
public sealed class RemedyTrials
{
    /// <summary>Most remedies that a finding offers.</summary>
    public const int MostRemedies = 3;

    /// <summary>Most cures that are tried for a request of the usual size. What is past it is not offered, since nobody saw it hold.</summary>
    public const int MostTrials = 400;

    /// <summary>Items and cords of a request of the usual size: a trial of twice as many costs four times as much, and so counts for four.</summary>
    private const int UsualSize = 100;

    /// <summary>
    /// Findings of a request of the usual size. A trial finds nearly all of them anew: equipment heaped on one place has a finding for every pair.
    /// </summary>
    private const double UsualFindings = 200;

    private const string NothingKnown = "No change of the order is known that would mend it.";

    private readonly List<(Finding Finding, IEnumerable<RemedyCandidate> Candidates)> pending = [];
    private readonly TrialBudget budget;
    private readonly bool isForNext;

    /// <summary>The remedy that was looked for where one only was asked for; null where none held.</summary>
    public RemedyStep? Next { get; private set; }

    /// <summary>All remedies of every finding.</summary>
    public RemedyTrials() => budget = new TrialBudget(MostTrials);

    /// <summary>One remedy only: that of the first open error, in the order of the report, for which one holds.</summary>
    /// <param name="budget">What trials are left; other checks may share it.</param>
    public RemedyTrials(TrialBudget budget) => (this.budget, isForNext) = (budget, true);

    /// <summary>Notes the cures of a finding.</summary>
    /// <param name="finding">The finding.</param>
    /// <param name="candidates">Its cures, best first; read when they are tried.</param>
    public void Add(Finding finding, IEnumerable<RemedyCandidate> candidates) => pending.Add((finding, candidates));

    /// <summary>Forgets the cures of findings that do not stand.</summary>
    /// <param name="gone">Whether a finding does not.</param>
    public void Drop(Predicate<Finding> gone) => pending.RemoveAll(p => gone(p.Finding));

    /// <summary>Tries what was noted, and puts the remedies into the findings.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="all">All findings of it; those with remedies are replaced.</param>
    /// <param name="check">The findings of another rack.</param>
    /// <param name="isAccepted">Whether a finding is accepted as it is.</param>
    public void Resolve(ResolvedRack rack, FindingList all, Func<ResolvedRack, FindingList> check, Predicate<Finding> isAccepted)
    {
        var findings = all.Written;
        if (findings.Count == 0)
        {
            return;
        }

        var description = rack.Description;
        var before = all.ErrorRoots();
        var cost = CostOf(description, all.Count);
        var places = new Dictionary<Finding, int>(findings.Count, ReferenceEqualityComparer.Instance);
        for (var i = 0; i < findings.Count; i++)
        {
            places[findings[i]] = i;
        }

        if (isForNext)
        {
            ResolveNext(rack, findings, before, cost, check, isAccepted, places);
            return;
        }

        // The gravest first: where the trials run out, it is warnings that go without; and which of the errors do does not hang on the order of items.
        foreach (var (finding, candidates) in pending.OrderBy(p => p.Finding.Severity).ThenBy(p => p.Finding.Fingerprint, StringComparer.Ordinal))
        {
            List<Remedy> remedies = [.. finding.Remedies];
            var why = Try(rack, finding, candidates, before, MostRemedies, cost, check, remedies);
            findings[places[finding]] = finding with { Remedies = remedies, NoRemedy = remedies.Count == 0 ? why : null };
        }

        for (var i = 0; i < findings.Count; i++)
        {
            if (findings[i] is { Remedies.Count: 0, NoRemedy: null })
            {
                findings[i] = findings[i] with { NoRemedy = NothingKnown };
            }
        }
    }

    /// <summary>What a trial of a rack costs, in trials of one of the usual size.</summary>
    /// <param name="description">The rack.</param>
    /// <param name="findings">How many findings it has.</param>
    /// <returns>1 or more.</returns>
    public static double CostOf(RackDescription description, int findings)
    {
        var size = (description.Items.Count + description.Items.Sum(i => i.Power?.Plugs?.Count ?? 0)) / (double)UsualSize;
        return Math.Max(1, Math.Max(size * size, findings / UsualFindings));
    }

    private void ResolveNext(
        ResolvedRack rack, List<Finding> findings, HashSet<string> before, double cost, Func<ResolvedRack, FindingList> check, Predicate<Finding> isAccepted,
        Dictionary<Finding, int> places)
    {
        var errors = pending.Where(p => p.Finding.Severity == Severity.Error && !isAccepted(p.Finding)).ToList();
        errors.Sort(static (x, y) => FindingOrder.Compare(x.Finding, y.Finding));
        foreach (var (finding, candidates) in errors)
        {
            List<Remedy> remedies = [];
            Try(rack, finding, candidates, before, 1, cost, check, remedies);
            if (remedies.Count > 0)
            {
                findings[places[finding]] = finding with { Remedies = remedies };
                Next = new RemedyStep { Rule = finding.Rule, Fingerprint = finding.Fingerprint, Subject = finding.Subject, Remedy = remedies[0] };
                return;
            }
        }
    }

    // Fills the list with what holds, as many as are wanted; says why, should it stay empty.
    private string Try(
        ResolvedRack rack, Finding finding, IEnumerable<RemedyCandidate> candidates, HashSet<string> before, int most, double cost,
        Func<ResolvedRack, FindingList> check, List<Remedy> remedies)
    {
        var kinds = new List<string>();
        string? why = null;
        foreach (var candidate in candidates)
        {
            if ((candidate.Kind is not null && kinds.Contains(candidate.Kind)) || (candidate.IsLastResort && remedies.Count > 0))
            {
                continue;
            }

            if (!budget.Spend(cost))
            {
                return why ?? "There are too many findings: what would mend this one was not tried.";
            }

            // As the caller would post it: the patch goes on that, and what the part numbers tell stays theirs.
            var posted = rack.ToPost(candidate.After);
            var after = check(rack.With(posted));
            if (after.IsIncomplete)
            {
                // A rule that failed there cannot say whether the change brings what it guards against.
                continue;
            }

            if (Helps(finding, before, after.Written, after.ErrorRoots()))
            {
                var patch = DescriptionDiff.Patch(rack.Posted, posted);
                if (remedies.Exists(r => IsSame(r.Patch, patch)))
                {
                    continue;
                }

                remedies.Add(new Remedy { Title = candidate.Title, Patch = patch });
                kinds.Add(candidate.Kind ?? "");
                if (remedies.Count >= most)
                {
                    break;
                }
            }
            else if (Clears(finding, after.Written))
            {
                var brought = after.Written.Where(f => f.Severity == Severity.Error && !before.Contains(f.Root!)).Select(f => f.Rule);
                why ??= $"\"{candidate.Title}\" would clear it, but brings {Names.And([.. brought.Distinct().Order(StringComparer.Ordinal)])}.";
            }
        }

        return why ?? NothingKnown;
    }

    /// <summary>Whether a change of the rack helps: the finding is gone, at any severity, and no error is there that was not before.</summary>
    /// <param name="finding">The finding.</param>
    /// <param name="errorsBefore">Errors of the rack as it is.</param>
    /// <param name="after">Findings of the rack as it would be.</param>
    /// <param name="errorsAfter">Errors of the rack as it would be.</param>
    /// <returns>Whether it does.</returns>
    /// <remarks>Errors that are accepted count too: a change must not bring one that only happens to be accepted.</remarks>
    public static bool Helps(Finding finding, IReadOnlySet<string> errorsBefore, IReadOnlyList<Finding> after, IReadOnlySet<string> errorsAfter) =>
        Clears(finding, after) && errorsAfter.IsSubsetOf(errorsBefore);

    // Two ways of thinking can come to one change: a plug for the socket, and plug and socket of one size, where the socket has that size. It is told once.
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

    private static bool Clears(Finding finding, IReadOnlyList<Finding> after) =>
        !after.Any(f => f.Root == finding.Root || (f.Fingerprint == finding.Fingerprint && f.Rule == finding.Rule));
}
