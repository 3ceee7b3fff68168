using RackCheck.Model;

namespace RackCheck.Survey.Limits;

/// <summary>Reads the policy for a rule. Only this class knows the layout of a policy.</summary>
/// <param name="policy">The policy; null for the defaults.</param>
public readonly struct RulePolicyReader(Policy? policy)
{
    /// <summary>The policy for a rule; null if there is none.</summary>
    /// <param name="rule">Id of the rule.</param>
    public RulePolicy? Of(string rule) => policy?.Rules?.GetValueOrDefault(rule);

    /// <summary>Whether a rule is switched off.</summary>
    /// <param name="rule">Id of the rule.</param>
    public bool IsOff(string rule) => Of(rule)?.Severity == PolicySeverity.Off;

    /// <summary>The limit in force: from the policy, else the default.</summary>
    /// <param name="rule">Id of the rule with the limit.</param>
    public double ValueOf(string rule, RuleLimit limit) => ValueOf(Of(rule), limit);

    /// <summary>The limit in force: from the policy, else the default.</summary>
    /// <param name="rulePolicy">The policy for the rule; null if there is none.</param>
    public static double ValueOf(RulePolicy? rulePolicy, RuleLimit limit) =>
        rulePolicy?.Limits is { } limits && limits.TryGetValue(limit.Name, out var value) ? value : limit.Default;
}
