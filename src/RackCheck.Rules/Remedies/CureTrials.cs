using RackCheck.Model;

namespace RackCheck.Rules.Remedies;

/// <summary>Tries the cures of a report's findings, each by a check of the rack as it would be, and makes remedies of those that hold.</summary>
internal sealed class CureTrials
{
    /// <summary>Most remedies that a finding offers.</summary>
    public const int MostRemedies = 3;

    /// <summary>Most cures that are tried for a request. What is past it is not offered, since nobody saw it hold.</summary>
    public const int MostTrials = 400;

    private readonly List<(Finding Finding, IEnumerable<Cure> Cures)> pending = [];

    /// <summary>Notes the cures of a finding.</summary>
    public void Add(Finding finding, IEnumerable<Cure> cures) => pending.Add((finding, cures));

    /// <summary>Forgets the cures of findings that do not stand.</summary>
    public void Drop(Predicate<Finding> gone) => pending.RemoveAll(p => gone(p.Finding));

    /// <summary>Tries what was noted, and puts the remedies into the findings.</summary>
    /// <param name="description">The description.</param>
    /// <param name="findings">All findings of it; those with remedies are replaced.</param>
    /// <param name="check">The findings of another description.</param>
    public void Resolve(RackDescription description, List<Finding> findings, Func<RackDescription, List<Finding>> check)
    {
        if (pending.Count == 0)
        {
            return;
        }

        var before = Errors(findings);
        var left = MostTrials;

        // The gravest first: where the trials run out, it is warnings that go without.
        foreach (var (finding, cures) in pending.OrderBy(p => p.Finding.Severity))
        {
            List<Remedy> remedies = [.. finding.Remedies];
            var kinds = new List<string>();
            foreach (var cure in cures)
            {
                if (remedies.Count >= MostRemedies || left == 0)
                {
                    break;
                }

                if (cure.Kind is not null && kinds.Contains(cure.Kind))
                {
                    continue;
                }

                left--;
                var after = check(cure.After);
                if (!after.Exists(f => f.Rule == finding.Rule && f.Fingerprint == finding.Fingerprint) && Errors(after).IsSubsetOf(before))
                {
                    remedies.Add(new Remedy { Title = cure.Title, Patch = DescriptionDiff.Patch(description, cure.After) });
                    kinds.Add(cure.Kind ?? "");
                }
            }

            findings[findings.IndexOf(finding)] = finding with { Remedies = remedies };
        }
    }

    private static HashSet<(string Rule, string Fingerprint)> Errors(List<Finding> findings) =>
        [.. findings.Where(f => f.Severity == Severity.Error).Select(f => (f.Rule, f.Fingerprint))];
}
