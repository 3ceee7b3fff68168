using RackCheck.Model;
using RackCheck.Rules;
using RackCheck.Survey.Catalogue;
using RackCheck.Survey.Limits;

namespace RackCheck.Planning.Building;

/// <summary>Rule limits including the caller's policy. Proposed parts keep to the same limits that the check applies.</summary>
internal sealed class RuleChecks(Policy? policy)
{
    /// <summary>A checker of one rule.</summary>
    /// <typeparam name="TRule">The rule.</typeparam>
    /// <returns>The checker.</returns>
    public static RackChecker Only<TRule>()
        where TRule : RuleBase => new(RuleSet.Of(RuleSet.Default.All.OfType<TRule>()), static (_, _) => { }) { AssessesRanges = false };

    /// <summary>The id of a rule.</summary>
    /// <typeparam name="TRule">The rule.</typeparam>
    /// <returns>Its id.</returns>
    public static string IdOf<TRule>()
        where TRule : RuleBase => IdsByRule<TRule>.Id;

    /// <summary>A checker of all rules of the themes that rule ids begin with.</summary>
    public static RackChecker OfThemes(params string[] themes) =>
        new(RuleSet.Of(RuleSet.Default.All.Where(r => themes.Contains(r.Descriptor.Id.Split('.')[0], StringComparer.Ordinal))), static (_, _) => { })
        {
            AssessesRanges = false,
        };

    /// <summary>Number of open errors and of open warnings of a rack.</summary>
    /// <returns>Both numbers; the rack with the smaller value is better.</returns>
    public static (int Errors, int Warnings) FaultsOf(RackChecker checker, RackDescription rack, CancellationToken cancellation = default) =>
        FaultsOf(checker.Find(ResolvedRack.Plain(rack), cancellation));

    /// <summary>Number of open errors and of open warnings of a rack.</summary>
    /// <returns>Both numbers; the rack with the smaller value is better.</returns>
    public static (int Errors, int Warnings) FaultsOf(RackFindings found)
    {
        var (errors, warnings) = (0, 0);
        foreach (var finding in found.Findings)
        {
            if (finding is { Accepted: null, SignedOff: null })
            {
                errors += finding.Severity == Severity.Error ? 1 : 0;
                warnings += finding.Severity == Severity.Warning ? 1 : 0;
            }
        }

        return (errors, warnings);
    }

    // Found once: a search over layouts asks for limits thousands of times.
    private static class IdsByRule<TRule>
        where TRule : RuleBase
    {
        public static readonly string Id = RuleSet.Default.All.OfType<TRule>().Single().Descriptor.Id;
    }

    /// <summary>Whether a rule is switched off.</summary>
    /// <typeparam name="TRule">The rule.</typeparam>
    /// <returns>Whether it is.</returns>
    public bool IsOff<TRule>()
        where TRule : RuleBase => new RulePolicyReader(policy).IsOff(IdOf<TRule>());

    /// <summary>A limit of a rule: the policy's, else the default.</summary>
    /// <typeparam name="TRule">The rule.</typeparam>
    /// <param name="limit">The limit.</param>
    /// <returns>Its value in its unit.</returns>
    public double Limit<TRule>(RuleLimit limit)
        where TRule : RuleBase => new RulePolicyReader(policy).ValueOf(IdOf<TRule>(), limit);
}
