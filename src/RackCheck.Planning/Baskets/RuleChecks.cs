using RackCheck.Model;
using RackCheck.Rules;
using RackCheck.Survey.Catalogue;
using RackCheck.Survey.Limits;

namespace RackCheck.Planning.Baskets;

/// <summary>What the rules limit, as the caller's policy sets it: what is proposed keeps to the limits that it is checked by.</summary>
/// <param name="policy">The policy.</param>
internal sealed class RuleChecks(Policy? policy)
{
    /// <summary>A checker of one rule.</summary>
    /// <typeparam name="TRule">The rule.</typeparam>
    /// <returns>The checker.</returns>
    public static RackChecker Only<TRule>()
        where TRule : RuleBase => new(RuleSet.Of(RuleSet.Default.All.OfType<TRule>()), static (_, _) => { });

    /// <summary>The id of a rule.</summary>
    /// <typeparam name="TRule">The rule.</typeparam>
    /// <returns>Its id.</returns>
    public static string IdOf<TRule>()
        where TRule : RuleBase => RuleSet.Default.All.OfType<TRule>().Single().Descriptor.Id;

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
