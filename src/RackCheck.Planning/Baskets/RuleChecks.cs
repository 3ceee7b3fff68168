using RackCheck.Model;
using RackCheck.Rules;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Planning.Baskets;

/// <summary>What the rules limit, as the caller's policy sets it: what is proposed keeps to the limits that it is checked by.</summary>
/// <param name="policy">The policy.</param>
internal sealed class RuleChecks(Policy? policy)
{
    /// <summary>A checker of one rule.</summary>
    /// <param name="rule">Id of the rule.</param>
    /// <returns>The checker.</returns>
    public static RackChecker Only(string rule) => new(RuleSet.Of(RuleSet.Default.All.Where(r => r.Descriptor.Id == rule)), static (_, _) => { });

    /// <summary>A checker of all rules of some themes.</summary>
    /// <param name="themes">The themes, as ids begin.</param>
    /// <returns>The checker.</returns>
    public static RackChecker OfThemes(params string[] themes) =>
        new(RuleSet.Of(RuleSet.Default.All.Where(r => themes.Contains(r.Descriptor.Id.Split('.')[0], StringComparer.Ordinal))), static (_, _) => { });

    /// <summary>How much is wrong with a rack: open errors, and open warnings.</summary>
    /// <param name="checker">By which rules.</param>
    /// <param name="rack">The rack.</param>
    /// <param name="cancellation">Stops between two rules.</param>
    /// <returns>Both numbers; of two racks the lesser is the better.</returns>
    public static (int Errors, int Warnings) FaultsOf(RackChecker checker, RackDescription rack, CancellationToken cancellation = default) =>
        FaultsOf(checker.Recheck(ResolvedRack.Plain(rack), cancellation));

    /// <summary>How much a report finds wrong: open errors, and open warnings.</summary>
    /// <param name="report">The report.</param>
    /// <returns>Both numbers; of two reports the lesser is the better.</returns>
    public static (int Errors, int Warnings) FaultsOf(CheckReport report)
    {
        var open = report.Findings.Where(f => f.Accepted is null).ToLookup(f => f.Severity);
        return (open[Severity.Error].Count(), open[Severity.Warning].Count());
    }

    /// <summary>Whether a rule is switched off.</summary>
    /// <param name="rule">Id of the rule.</param>
    /// <returns>Whether it is.</returns>
    public bool IsOff(string rule) => policy?.Rules?.GetValueOrDefault(rule)?.Severity == PolicySeverity.Off;

    /// <summary>A limit of a rule: the policy's, else the default.</summary>
    /// <param name="rule">Id of the rule.</param>
    /// <param name="name">Name of the limit.</param>
    /// <returns>Its value in its unit.</returns>
    public double Limit(string rule, string name) =>
        policy?.Rules?.GetValueOrDefault(rule)?.Limits is { } limits && limits.TryGetValue(name, out var value)
            ? value
            : RuleSet.Default.Find(rule)!.Limits.Single(l => l.Name == name).Default;
}
