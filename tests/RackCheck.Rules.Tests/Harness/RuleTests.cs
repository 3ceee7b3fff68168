using RackCheck.Model;
using RackCheck.Remedies.Patches;
using RackCheck.Testing;

namespace RackCheck.Rules.Tests.Harness;

/// <summary>Base of a rule's tests: applies that rule alone, and judges its remedies with all rules.</summary>
public abstract class RuleTests<TRule>
    where TRule : RuleBase, new()
{
    private static readonly RackChecker Alone = new(RuleSet.Of(new TRule()), (rule, fault) => throw new InvalidOperationException($"{rule.Id} threw.", fault))
    {
        AssessesRanges = false,
    };

    protected static string Id { get; } = new TRule().Descriptor.Id;

    protected static CheckReport Report(RackDescription rack)
    {
        Assert.Empty(Judge.Unsound(rack));
        return Alone.Check(rack);
    }

    protected static IReadOnlyList<Finding> Findings(RackDescription rack) => Report(rack).Findings;

    protected static Finding Only(RackDescription rack) => Assert.Single(Findings(rack));

    /// <summary>That there is no finding and no missing data.</summary>
    protected static void Passes(RackDescription rack)
    {
        var report = Report(rack);
        Assert.Empty(report.Findings);
        Assert.Empty(report.NotAssessed);
    }

    /// <summary>That the rule reports its missing data, and nothing else.</summary>
    protected static void ReportsMissing(RackDescription rack, params string[] missing)
    {
        var report = Report(rack);
        Assert.Empty(report.Findings);
        Assert.Equal(missing, Assert.Single(report.NotAssessed).Missing);
    }

    protected static void Numbers(Finding finding, double actual, double limit, string unit)
    {
        Assert.Equal(new Quantity { Value = actual, Unit = unit }, finding.Actual);
        Assert.Equal(new Quantity { Value = limit, Unit = unit }, finding.Limit);
    }

    /// <summary>
    /// The rack with a remedy of a finding applied. The remedy must clear the finding and add no error. It comes from a report by all rules.
    /// </summary>
    protected static RackDescription Remedied(RackDescription rack, Finding finding, int remedy = 0)
    {
        var report = Judge.Checker.Check(rack);
        var whole = Assert.Single(report.Findings, f => Judge.IsSame(f, finding));
        Assert.InRange(remedy, 0, whole.Remedies.Count - 1);
        Assert.Empty(Judge.Faults(rack, report, whole, whole.Remedies[remedy]));
        return RackPatch.Apply(rack, whole.Remedies[remedy]);
    }
}
