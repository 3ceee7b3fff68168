using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Text.Json;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Survey;
using RackCheck.Survey.Bounds;

namespace RackCheck.Rules;

/// <summary>The rules of this version.</summary>
public sealed class RuleSet
{
    private readonly FrozenDictionary<string, RuleBase> byId;
    private readonly FrozenDictionary<string, FactSet> reads;
    private readonly FrozenDictionary<string, Sections> sections;

    private RuleSet(IEnumerable<RuleBase> rules)
    {
        All = [.. rules.OrderBy(r => r.Descriptor.Id, StringComparer.Ordinal)];
        PartRules = [.. All.OfType<PartRule>()];
        RackRules = [.. All.OfType<Rule>()];
        ReportRules = [.. All.OfType<ReportRule>()];
        FactsRead = [.. RackRules.Select(r => FactTable.ReadBy(r.Descriptor.Needs))];
        reads = RackRules.Zip(FactsRead).ToFrozenDictionary(r => r.First.Descriptor.Id, r => r.Second, StringComparer.Ordinal);
        SectionsRead = [.. RackRules.Select(r => SectionTable.ReadBy(r.Descriptor.Needs))];
        sections = RackRules.Zip(SectionsRead).ToFrozenDictionary(r => r.First.Descriptor.Id, r => r.Second, StringComparer.Ordinal);
        byId = All.ToFrozenDictionary(r => r.Descriptor.Id, StringComparer.Ordinal);
    }

    /// <summary>What each version changed, newest first. A version is added when the same description can get another answer.</summary>
    public static IReadOnlyList<RulesetChange> Changes { get; } = ReadChanges();

    /// <summary>Version of the rules: year, month, counter.</summary>
    public static string CurrentVersion => Changes[0].Version;

    /// <summary>Every rule of this assembly, found once by reflection at start.</summary>
    public static RuleSet Default { get; } = new(
        typeof(RuleSet).Assembly.GetTypes()
            .Where(t => t is { IsSealed: true, IsAbstract: false } && t.IsSubclassOf(typeof(RuleBase)))
            .Select(t => (RuleBase)Activator.CreateInstance(t)!));

    private static IReadOnlyList<RulesetChange> ReadChanges()
    {
        using var stream = typeof(RuleSet).Assembly.GetManifestResourceStream("Rules/changes.json")!;
        return JsonSerializer.Deserialize(stream, ContractJson.Default.IReadOnlyListRulesetChange)!;
    }

    /// <summary>All rules by id.</summary>
    public ImmutableArray<RuleBase> All { get; }

    /// <summary>Rules about part numbers, by id.</summary>
    public ImmutableArray<PartRule> PartRules { get; }

    /// <summary>Rules about the rack, by id.</summary>
    public ImmutableArray<Rule> RackRules { get; }

    /// <summary>Which facts with a plausible range each of the rules about the rack reads, in their order.</summary>
    internal ImmutableArray<FactSet> FactsRead { get; }

    /// <summary>Which sections of the description each of the rules about the rack reads, in their order.</summary>
    internal ImmutableArray<Sections> SectionsRead { get; }

    /// <summary>Rules about the report, by id.</summary>
    public ImmutableArray<ReportRule> ReportRules { get; }

    /// <summary>The descriptor of a rule.</summary>
    /// <param name="id">Its id.</param>
    /// <returns>The descriptor, or null where there is no such rule.</returns>
    public RuleDescriptor? Find(string id) => byId.TryGetValue(id, out var rule) ? rule.Descriptor : null;

    /// <summary>The message of a finding as its wording and values.</summary>
    /// <param name="finding">A finding, written out, of one of these rules.</param>
    public WordedText TextOf(Finding finding) => new(
        byId[finding.Rule].Wordings.First(w => w.Key == finding.MessageKey), [.. finding.MessageData.Select(d => (d.Key, d.Value))]);

    /// <summary>A rule about the rack.</summary>
    /// <param name="id">Its id.</param>
    /// <returns>The rule, or null where no rule about the rack has the id.</returns>
    internal Rule? FindRackRule(string id) => byId.GetValueOrDefault(id) as Rule;

    /// <summary>Which facts with a plausible range a rule about the rack reads.</summary>
    /// <param name="id">Its id.</param>
    /// <returns>The facts.</returns>
    internal FactSet FactsReadBy(string id) => reads[id];

    /// <summary>Which sections of the description a rule reads.</summary>
    /// <param name="id">Its id.</param>
    /// <returns>The sections; all for a rule about part numbers or about the report.</returns>
    internal Sections SectionsReadBy(string id) => sections.GetValueOrDefault(id, Sections.All);

    /// <summary>A set of other rules, for tests of the pipeline.</summary>
    /// <param name="rules">The rules.</param>
    /// <returns>The set.</returns>
    public static RuleSet Of(params IEnumerable<RuleBase> rules) => new(rules);
}
