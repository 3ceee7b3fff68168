using RackCheck.Model;

namespace RackCheck.Remedies.Verification;

/// <summary>
/// The findings of one rack, at most <see cref="MostOfOneRule"/> of each rule. Further findings are counted, and their errors are known by their fingerprints.
/// The verdict and the comparison of two racks stay complete, without thousands of similar sentences.
/// </summary>
public sealed class FindingList
{
    /// <summary>Maximum number of listed findings of one rule.</summary>
    public const int MostOfOneRule = 200;

    private readonly List<Omission> omissions = [];
    private readonly ErrorList omittedErrors = new();
    private readonly HashSet<string> failed = new(StringComparer.Ordinal);
    private int ofThisRule;
    private int before;

    /// <summary>Whether only rule, fingerprint, severity and utilisation of findings are wanted, for the verification of a remedy.</summary>
    public bool IsOutline { get; init; }

    /// <summary>The listed findings, in the order in which they were found.</summary>
    public List<Finding> Written { get; } = [];

    /// <summary>Whether a rule failed inside the service, so that the list is incomplete.</summary>
    public bool IsIncomplete => failed.Count > 0;

    /// <summary>Total number of findings.</summary>
    public int Count => Written.Count + omissions.Sum(o => o.Count);

    /// <summary>The highest severity among the omitted findings of each rule.</summary>
    public IEnumerable<(string Rule, Severity Severity)> HighestOmitted => omissions.Select(o => (o.Rule, o.Gravest));

    /// <summary>Whether the next finding of this rule is only counted.</summary>
    public bool IsFull => ofThisRule >= MostOfOneRule;

    /// <summary>Number of findings that are not listed, by rule.</summary>
    /// <returns>One entry for each rule; null if all are listed.</returns>
    public IReadOnlyList<FindingsOmitted>? Omitted() =>
        omissions.Count == 0
            ? null
            : [.. omissions.Select(o => new FindingsOmitted { Rule = o.Rule, Count = o.Count }).OrderBy(o => o.Rule, StringComparer.Ordinal)];

    /// <summary>All errors, including errors that are only counted.</summary>
    /// <returns>The errors.</returns>
    public ErrorList Errors()
    {
        var errors = new ErrorList();
        foreach (var finding in Written)
        {
            if (finding.Severity == Severity.Error)
            {
                errors.Add(finding.Fingerprint, finding.UtilisationPercent);
            }
        }

        errors.AddRange(omittedErrors);
        return errors;
    }

    /// <summary>Whether a rule failed inside the service.</summary>
    public bool HasFailed(string rule) => failed.Contains(rule);

    /// <summary>Starts with the next rule.</summary>
    public void Begin() => (ofThisRule, before) = (0, Written.Count);

    /// <summary>Adds a finding of the current rule.</summary>
    public void Add(Finding finding)
    {
        ofThisRule++;
        Written.Add(finding);
    }

    /// <summary>Counts a finding of the current rule.</summary>
    /// <param name="rule">Id of the rule.</param>
    /// <param name="severity">Its severity.</param>
    /// <param name="fingerprint">Its fingerprint.</param>
    /// <param name="utilisationPercent">Actual value as a share of the limit, percent; null where the rule gives none.</param>
    public void Omit(string rule, Severity severity, string fingerprint, double? utilisationPercent)
    {
        ofThisRule++;
        if (omissions.Count == 0 || omissions[^1].Rule != rule)
        {
            omissions.Add(new Omission(rule));
        }

        omissions[^1].Add(severity);
        if (severity == Severity.Error)
        {
            omittedErrors.Add(fingerprint, utilisationPercent);
        }
    }

    /// <summary>Removes the findings of the current rule because it failed.</summary>
    /// <param name="rule">Id of the rule.</param>
    public void Fail(string rule)
    {
        Written.RemoveRange(before, Written.Count - before);
        omissions.RemoveAll(o => o.Rule == rule);
        failed.Add(rule);
    }

    private sealed class Omission(string rule)
    {
        public string Rule => rule;

        public int Count { get; private set; }

        public Severity Gravest { get; private set; } = Severity.Advice;

        public void Add(Severity severity)
        {
            Count++;
            Gravest = severity < Gravest ? severity : Gravest;
        }
    }
}
