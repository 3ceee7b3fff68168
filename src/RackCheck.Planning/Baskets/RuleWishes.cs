using RackCheck.Model;
using RackCheck.Rules;

namespace RackCheck.Planning.Baskets;

/// <summary>What the rules limit, as the caller's policy sets it: what is proposed keeps to the limits that it is checked by.</summary>
/// <param name="policy">The policy.</param>
internal sealed class RuleWishes(Policy? policy)
{
    /// <summary>A checker of one rule.</summary>
    public static RackChecker Only(string rule) => new(RuleSet.Of(RuleSet.Default.All.Where(r => r.Descriptor.Id == rule)), static (_, _) => { });

    public bool IsOff(string rule) => policy?.Rules?.GetValueOrDefault(rule)?.Severity == PolicySeverity.Off;

    public double Limit(string rule, string name) =>
        policy?.Rules?.GetValueOrDefault(rule)?.Limits is { } limits && limits.TryGetValue(name, out var value)
            ? value
            : RuleSet.Default.Find(rule)!.Limits.Single(l => l.Name == name).Default;
}
