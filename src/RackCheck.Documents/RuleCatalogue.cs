using RackCheck.Survey.Limits;
using System.Collections.Immutable;
using System.Text.Json;
using RackCheck.Model;
using RackCheck.Rules;

namespace RackCheck.Documents;

/// <summary>The pages of the rules, made from their descriptors.</summary>
public sealed class RuleCatalogue
{
    /// <summary>Makes the pages.</summary>
    /// <param name="rules">The rules.</param>
    /// <exception cref="JsonException">An example rack of a descriptor is not valid JSON.</exception>
    public RuleCatalogue(RuleSet rules)
    {
        Pages = [.. rules.All.Select(r => PageOf(r.Descriptor))];
        List = new RuleList
        {
            Ruleset = new RulesetInfo { Version = RuleSet.CurrentVersion },
            Changes = RuleSet.Changes,
            Rules = [.. rules.All.Select(r => SummaryOf(r.Descriptor))],
        };
    }

    /// <summary>Summaries of the rules, by id.</summary>
    public RuleList List { get; }

    /// <summary>One page per rule, by id.</summary>
    public ImmutableArray<RulePage> Pages { get; }

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

    private static RulePage PageOf(RuleDescriptor rule) => new()
    {
        Id = rule.Id,
        Theme = rule.Theme,
        Title = rule.Title,
        Severity = rule.Severity,
        MilderSeverity = rule.MilderSeverity,
        Concern = rule.Concern,
        Safety = rule.Safety,
        What = rule.What,
        Why = rule.Why,
        Formula = rule.Formula,
        Notes = rule.Notes.Count == 0 ? null : rule.Notes,
        Needs = rule.Needs,
        Limits = [.. rule.Limits.Select(LimitOf)],
        Sources = [.. rule.Sources.Select(ReferencePages.Of)],
        Remedies = rule.Remedies,
        FailingRack = RackOf(rule.FailingRack),
        PassingRack = RackOf(rule.PassingRack),
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
}
