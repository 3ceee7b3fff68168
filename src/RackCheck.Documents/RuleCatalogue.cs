using RackCheck.Survey.Limits;
using System.Collections.Immutable;
using System.Text.Json;
using System.Text.RegularExpressions;
using RackCheck.Model;
using RackCheck.Rules;

namespace RackCheck.Documents;

/// <summary>The pages of the rules, made from their descriptors.</summary>
public sealed partial class RuleCatalogue
{
    /// <summary>Makes the pages.</summary>
    /// <param name="rules">The rules.</param>
    /// <exception cref="JsonException">An example rack of a descriptor is not valid JSON.</exception>
    public RuleCatalogue(RuleSet rules)
    {
        History = HistoryOf(rules);
        var changedIn = History.Rulesets.Reverse()
            .SelectMany(v => v.Changes.SelectMany(c => c.Rules), static (version, rule) => (rule, version.Version))
            .Aggregate(new Dictionary<string, string>(StringComparer.Ordinal), static (latest, one) =>
            {
                latest[one.rule] = one.Version;
                return latest;
            });
        Pages = [.. rules.All.Select(r => PageOf(r) with { ChangedIn = changedIn.GetValueOrDefault(r.Descriptor.Id) })];
        List = new RuleList
        {
            Ruleset = new RulesetInfo { Version = RuleSet.CurrentVersion },
            Changes = RuleSet.Changes,
            Rules = [.. rules.All.Select(r => SummaryOf(r.Descriptor) with { ChangedIn = changedIn.GetValueOrDefault(r.Descriptor.Id) })],
        };
    }

    /// <summary>Summaries of the rules, by id.</summary>
    public RuleList List { get; }

    /// <summary>One page per rule, by id.</summary>
    public ImmutableArray<RulePage> Pages { get; }

    /// <summary>What each version of the ruleset changed, by rule id.</summary>
    public RulesetHistory History { get; }

    // A change names the rules that it concerns by their ids.
    private static RulesetHistory HistoryOf(RuleSet rules) => new()
    {
        Rulesets =
        [
            .. RuleSet.Changes.Select(v => new RulesetVersion
            {
                Version = v.Version,
                Changes =
                [
                    .. v.Changes.Select(text => new RulesetEntry
                    {
                        Text = text,
                        Rules = [.. Id().Matches(text).Select(m => m.Value).Where(id => rules.Find(id) is not null).Distinct().Order(StringComparer.Ordinal)],
                    }),
                ],
            }),
        ],
    };

    private static RuleSummary SummaryOf(RuleDescriptor rule) => new()
    {
        Id = rule.Id,
        Theme = rule.Theme,
        Title = rule.Title,
        Severity = rule.Severity,
        MilderSeverity = rule.MilderSeverity,
        Concern = rule.Concern,
        Safety = rule.Safety,
        What = rule.What,
    };

    private static RulePage PageOf(RuleBase rule) => new()
    {
        Id = rule.Descriptor.Id,
        Theme = rule.Descriptor.Theme,
        Title = rule.Descriptor.Title,
        Severity = rule.Descriptor.Severity,
        MilderSeverity = rule.Descriptor.MilderSeverity,
        Concern = rule.Descriptor.Concern,
        Safety = rule.Descriptor.Safety,
        What = rule.Descriptor.What,
        Why = rule.Descriptor.Why,
        Formula = rule.Descriptor.Formula,
        Notes = rule.Descriptor.Notes.Count == 0 ? null : rule.Descriptor.Notes,
        Needs = rule.Descriptor.Needs,
        Limits = [.. rule.Descriptor.Limits.Select(LimitOf)],
        Sources = [.. rule.Descriptor.Sources.Select(ReferencePages.Of)],
        Remedies = rule.Descriptor.Remedies,
        Wordings = [.. rule.Wordings.Select(w => new WordingPage { MessageKey = w.Key, Template = w.Template })],
        FailingRack = RackOf(rule.Descriptor.FailingRack),
        PassingRack = RackOf(rule.Descriptor.PassingRack),
    };

    private static RuleLimitPage LimitOf(RuleLimit limit) => new()
    {
        Name = limit.Name,
        Meaning = limit.Meaning,
        Default = limit.Default,
        Unit = limit.Unit,
        Minimum = limit.Minimum,
        Maximum = limit.Maximum,
        Stricter = limit.Stricter == Stricter.Lower ? "lower" : "higher",
    };

    private static JsonElement RackOf(string json)
    {
        using var document = JsonDocument.Parse(json);
        return document.RootElement.Clone();
    }

    [GeneratedRegex("[a-z]+\\.[a-z0-9-]+")]
    private static partial Regex Id();
}
