using System.Text.Json;
using System.Text.Json.Nodes;
using CsCheck;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Remedies;
using RackCheck.Remedies.Verification;
using RackCheck.Rules.Tests.Properties;
using RackCheck.Survey.Assumed;
using RackCheck.Survey.Bounds;
using RackCheck.Testing;

namespace RackCheck.Rules.Tests.Guards;

/// <summary>A client can word every message in its own language from key and data.</summary>
public sealed class WordingTests
{
    private static readonly Dictionary<string, Dictionary<string, MessageWording>> ByRule = RuleSet.Default.All.ToDictionary(
        r => r.Descriptor.Id, r => r.Wordings.ToDictionary(w => w.Key, StringComparer.Ordinal), StringComparer.Ordinal);

    private static readonly WordingKeys Common = new(
    [
        .. Subjects.Wordings, .. RemedyTitles.Wordings, .. RemedyTrials.Wordings, .. Bases.Wordings, .. AssumedTexts.Wordings,
        .. FactTable.Bounded.Select(f => f.Assumed.Wording),
    ]);

    private static readonly Dictionary<string, MessageWording> QuestionWordings =
        FactTable.Wordings.ToDictionary(w => w.Key, StringComparer.Ordinal);

    [Fact]
    [Trait("Kind", "property")]
    public void Every_message_is_rendered_from_its_key_and_data() =>
        AnyRack.WithPolicy.Sample(rack => Check(rack), iter: Samples.Of(3_000, least: 500), print: RackCheck.Testing.Wording.Of);

    [Fact]
    public void Messages_about_the_examples_of_rules_are_rendered_from_key_and_data()
    {
        foreach (var rule in RuleSet.Default.All)
        {
            Check(Read(rule.Descriptor.FailingRack));
            Check(Read(rule.Descriptor.PassingRack));
        }
    }

    [Fact]
    public void Acceptance_cases_are_rendered_from_key_and_data()
    {
        var racks = Files("*.json", "tests", "acceptance", "cases").Concat(Files("*.json", "tests", "acceptance", "racks"))
            .Select(f => JsonNode.Parse(File.ReadAllText(f))!["request"]?.ToJsonString())
            .Concat(Files("rack-*.json", "openapi", "examples").Select(File.ReadAllText)).OfType<string>().ToArray();
        Assert.True(racks.Length > 250);
        foreach (var rack in racks)
        {
            if (Sound(rack) is { } request)
            {
                Check(request);
            }
        }
    }

    [Fact]
    public void Message_of_a_rule_switched_off_has_a_key()
    {
        var rule = RuleSet.Default.RackRules.First(r => !r.Descriptor.Safety).Descriptor;
        var rack = Read(rule.FailingRack) with
        {
            Policy = new Policy { Rules = new Dictionary<string, RulePolicy> { [rule.Id] = new() { Severity = PolicySeverity.Off } } },
        };
        Assert.Contains(Judge.Check(rack).NotAssessed, n => n.MessageKey == "not-assessed.policy");
        Check(rack);
    }

    [Fact]
    public void A_key_stands_for_one_template()
    {
        var all = RuleSet.Default.All.SelectMany(r => r.Wordings).GroupBy(w => w.Key).ToArray();
        Assert.All(all, g => Assert.Single(g.Select(w => w.Template).Distinct()));
        Assert.All(all.Select(g => g.Key), k => Assert.Matches("^[a-z0-9]+(-[a-z0-9]+)*([.][a-z0-9]+(-[a-z0-9]+)*)+$", k));
    }

    [Fact]
    public void Keys_of_a_rule_begin_with_its_id() => Assert.All(
        RuleSet.Default.All,
        r => Assert.All(r.Wordings.Select(w => w.Key), k => Assert.True(
            k == r.Descriptor.Id
                || new[] { r.Descriptor.Id, "missing", "not-assessed", "acceptance-lapsed" }.Any(p => k.StartsWith(p + ".", StringComparison.Ordinal)), k)));

    [Fact]
    public void Every_rule_has_a_wording_of_its_own() => Assert.All(
        RuleSet.Default.All, r => Assert.Contains(r.Wordings, w => w is not MissingData && w.Key.StartsWith(r.Descriptor.Id, StringComparison.Ordinal)));

    private static string[] Files(string pattern, params string[] folder) => Directory.GetFiles(Repository.PathOf(folder), pattern);

    private static RackDescription Read(string json) => JsonSerializer.Deserialize(json, ContractJson.Default.RackDescription)!;

    private static void Check(RackDescription rack)
    {
        var report = Judge.Check(rack);
        var request = JsonSerializer.Serialize(rack, ContractJson.Default.RackDescription);
        foreach (var finding in report.Findings)
        {
            Check(finding.Rule, finding.MessageKey, finding.MessageData, finding.Message, request);
            Common.Check(finding.SubjectKey, finding.SubjectData, finding.Subject, request);
            CheckRemedies(finding, request);
            if (finding.LapsedAcceptance is { } lapsed)
            {
                Check(finding.Rule, lapsed.MessageKey, lapsed.MessageData, lapsed.Message, request);
            }
        }

        foreach (var assumption in report.Assumptions)
        {
            Common.Check(assumption, request);
        }

        foreach (var question in report.Questions)
        {
            var wording = QuestionWordings.GetValueOrDefault(question.MessageKey);
            Assert.True(wording is not null, $"{question.MessageKey} is not listed");
            Check(wording, question.MessageData, question.Ask, request);
        }

        foreach (var entry in report.NotAssessed)
        {
            Check(entry.Rule, entry.MessageKey, entry.MessageData, entry.Message, request);
        }
    }

    // Some cases are requests that the service refuses.
    private static RackDescription? Sound(string json)
    {
        try
        {
            return Read(json) is var rack && !Judge.Unsound(rack).Any() ? rack : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private static void CheckRemedies(Finding finding, string request)
    {
        foreach (var remedy in finding.Remedies)
        {
            Common.Check(remedy.TitleKey, remedy.TitleData, remedy.Title, request, isTitle: true);
        }

        Assert.Equal(finding.NoRemedy is null, finding.NoRemedyKey is null);
        if (finding.NoRemedy is { } why)
        {
            Common.Check(finding.NoRemedyKey!, finding.NoRemedyData!, why, request);
        }
    }

    private static void Check(string rule, string key, IReadOnlyDictionary<string, Scalar> data, string message, string request)
    {
        Assert.True(ByRule[rule].TryGetValue(key, out var wording), $"{rule} does not list {key}");
        Check(wording, data, message, request);
    }

    private static void Check(MessageWording wording, IReadOnlyDictionary<string, Scalar> data, string message, string request)
    {
        Assert.Equal(message, wording.Render([.. data.Select(d => (d.Key, d.Value))]));
        WordingKeys.CheckValues(wording.Key, data, request);
    }
}
