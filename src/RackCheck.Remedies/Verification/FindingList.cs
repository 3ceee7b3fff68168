using RackCheck.Model;

namespace RackCheck.Remedies.Verification;

/// <summary>
/// The findings of one rack, at most <see cref="MostOfOneRule"/> of each rule: what is past it is counted, and its errors are known by their roots, so
/// that the verdict and the comparison of two racks miss nothing while nobody has to write or read thousands of sentences of one kind.
/// </summary>
public sealed class FindingList
{
    /// <summary>Findings of one rule that are written out.</summary>
    public const int MostOfOneRule = 200;

    private readonly List<Omission> omissions = [];
    private readonly HashSet<string> failed = new(StringComparer.Ordinal);
    private HashSet<string>? omittedErrors;
    private int ofThisRule;
    private int before;

    /// <summary>What is written out, in the order in which it was found.</summary>
    public List<Finding> Written { get; } = [];

    /// <summary>Whether a rule failed inside the service: then the list does not tell everything.</summary>
    public bool IsIncomplete => failed.Count > 0;

    /// <summary>How many were found in all.</summary>
    public int Count => Written.Count + omissions.Sum(o => o.Count);

    /// <summary>The highest severity among the omitted findings of each rule.</summary>
    public IEnumerable<(string Rule, Severity Severity)> HighestOmitted => omissions.Select(o => (o.Rule, o.Gravest));

    /// <summary>Whether this rule's next finding is only counted.</summary>
    public bool IsFull => ofThisRule >= MostOfOneRule;

    /// <summary>How many were left out, by rule.</summary>
    /// <returns>One entry a rule; null where all are written out.</returns>
    public IReadOnlyList<FindingsOmitted>? Omitted() =>
        omissions.Count == 0
            ? null
            : [.. omissions.Select(o => new FindingsOmitted { Rule = o.Rule, Count = o.Count }).OrderBy(o => o.Rule, StringComparer.Ordinal)];

    /// <summary>What the errors are known by, those that are only counted included.</summary>
    /// <returns>Their roots.</returns>
    public HashSet<string> ErrorRoots()
    {
        var roots = Written.Where(f => f.Severity == Severity.Error).Select(f => f.Root!).ToHashSet(StringComparer.Ordinal);
        roots.UnionWith(omittedErrors ?? []);
        return roots;
    }

    /// <summary>Whether a rule failed inside the service.</summary>
    /// <param name="rule">Its id.</param>
    /// <returns>Whether it did.</returns>
    public bool HasFailed(string rule) => failed.Contains(rule);

    /// <summary>Starts with the next rule.</summary>
    public void Begin() => (ofThisRule, before) = (0, Written.Count);

    /// <summary>Adds a finding of the rule whose turn it is.</summary>
    /// <param name="finding">The finding.</param>
    public void Add(Finding finding)
    {
        ofThisRule++;
        Written.Add(finding);
    }

    /// <summary>Counts a finding of the rule whose turn it is.</summary>
    /// <param name="rule">Id of the rule.</param>
    /// <param name="severity">How grave it is.</param>
    /// <param name="root">What it is known by when two racks are compared.</param>
    public void Omit(string rule, Severity severity, string root)
    {
        ofThisRule++;
        if (omissions.Count == 0 || omissions[^1].Rule != rule)
        {
            omissions.Add(new Omission(rule));
        }

        omissions[^1].Add(severity);
        if (severity == Severity.Error)
        {
            (omittedErrors ??= new HashSet<string>(StringComparer.Ordinal)).Add(root);
        }
    }

    /// <summary>Takes back what the rule whose turn it is has said: it failed.</summary>
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
