using RackCheck.Model;

namespace RackCheck.Survey.Limits;

/// <summary>Reads what a caller's policy says of a rule: the one place that knows how a policy is laid out.</summary>
/// <param name="policy">The policy; null for the defaults.</param>
public readonly struct RulePolicyReader(Policy? policy)
{
    /// <summary>What the policy says of a rule; null where it says nothing.</summary>
    /// <param name="rule">Id of the rule.</param>
    /// <returns>Severity and limits.</returns>
    public RulePolicy? Of(string rule) => policy?.Rules?.GetValueOrDefault(rule);

    /// <summary>Whether a rule is switched off.</summary>
    /// <param name="rule">Id of the rule.</param>
    /// <returns>Whether it is.</returns>
    public bool IsOff(string rule) => Of(rule)?.Severity == PolicySeverity.Off;

    /// <summary>The value of a limit in force: the policy's, else the default.</summary>
    /// <param name="rule">Id of the rule that has the limit.</param>
    /// <param name="limit">The limit.</param>
    /// <returns>Its value in its unit.</returns>
    public double ValueOf(string rule, RuleLimit limit) => ValueOf(Of(rule), limit);

    /// <summary>The value of a limit in force: the policy's, else the default.</summary>
    /// <param name="rulePolicy">What the policy says of the rule; null where it says nothing.</param>
    /// <param name="limit">The limit.</param>
    /// <returns>Its value in its unit.</returns>
    public static double ValueOf(RulePolicy? rulePolicy, RuleLimit limit) =>
        rulePolicy?.Limits is { } limits && limits.TryGetValue(limit.Name, out var value) ? value : limit.Default;
}
