using System.Collections.Frozen;
using System.Collections.Immutable;

namespace RackCheck.Rules;

/// <summary>The rules of this version.</summary>
public sealed class RuleSet
{
    /// <summary>Version of the rules: year, month, counter. Raised when an answer can change.</summary>
    public const string CurrentVersion = "2026.11.5";

    private readonly FrozenDictionary<string, RuleBase> byId;

    private RuleSet(IEnumerable<RuleBase> rules)
    {
        All = [.. rules.OrderBy(r => r.Descriptor.Id, StringComparer.Ordinal)];
        PartRules = [.. All.OfType<PartRule>()];
        RackRules = [.. All.OfType<Rule>()];
        ReportRules = [.. All.OfType<ReportRule>()];
        byId = All.ToFrozenDictionary(r => r.Descriptor.Id, StringComparer.Ordinal);
    }

    /// <summary>Every rule of this assembly, found once by reflection at start.</summary>
    public static RuleSet Default { get; } = new(
        typeof(RuleSet).Assembly.GetTypes()
            .Where(t => t is { IsSealed: true, IsAbstract: false } && t.IsSubclassOf(typeof(RuleBase)))
            .Select(t => (RuleBase)Activator.CreateInstance(t)!));

    /// <summary>All rules by id.</summary>
    public ImmutableArray<RuleBase> All { get; }

    /// <summary>Rules about part numbers, by id.</summary>
    public ImmutableArray<PartRule> PartRules { get; }

    /// <summary>Rules about the rack, by id.</summary>
    public ImmutableArray<Rule> RackRules { get; }

    /// <summary>Rules about the report, by id.</summary>
    public ImmutableArray<ReportRule> ReportRules { get; }

    /// <summary>The descriptor of a rule.</summary>
    /// <param name="id">Its id.</param>
    /// <returns>The descriptor, or null where there is no such rule.</returns>
    public RuleDescriptor? Find(string id) => byId.TryGetValue(id, out var rule) ? rule.Descriptor : null;

    /// <summary>A set of other rules, for tests of the pipeline.</summary>
    /// <param name="rules">The rules.</param>
    /// <returns>The set.</returns>
    public static RuleSet Of(params IEnumerable<RuleBase> rules) => new(rules);
}
