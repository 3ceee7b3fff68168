using System.Text.Json;
using System.Text.Json.Nodes;
using CsCheck;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Remedies;
using RackCheck.Remedies.Patches;
using RackCheck.Remedies.Verification;
using RackCheck.Rules.Tests.Properties;
using RackCheck.Survey.Assumed;
using RackCheck.Survey.Bounds;
using RackCheck.Testing;

namespace RackCheck.Rules.Tests.Guards;

/// <summary>A client can word every message in its own language from key and data.</summary>
public sealed class WordingTests
{
    // The wordings that the page of each rule has.
    private static readonly Dictionary<string, HashSet<string>> ByRule = RuleSet.Default.All.ToDictionary(
        r => r.Descriptor.Id, r => r.Wordings.Select(w => w.Key).ToHashSet(StringComparer.Ordinal), StringComparer.Ordinal);

    private static readonly WordingKeys Texts = new(
    [
        .. RuleSet.Default.All.SelectMany(r => r.Wordings), .. FactTable.Wordings, .. Subjects.Wordings, .. RemedyTitles.Wordings, .. RemedyTrials.Wordings,
        .. Bases.Wordings, .. AssumedTexts.Wordings, .. FactTable.Bounded.Select(f => f.Assumed.Wording), .. Cautions.Wordings,
    ]);

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
    public void Racks_with_a_defect_are_rendered_from_key_and_data()
    {
        var defects = Files("defect-*.json", "tests", "acceptance", "racks").Select(f => JsonNode.Parse(File.ReadAllText(f))!).ToArray();
        Assert.True(defects.Length > 100);
        foreach (var defect in defects)
        {
            var whole = JsonNode.Parse(File.ReadAllText(Repository.PathOf("tests", "acceptance", "racks", $"{defect["base"]}.json")))!["request"];
            foreach (var (index, step) in defect["patch"]!.AsArray().Index())
            {
                var value = step!["value"]?.Deserialize<JsonElement>();
                whole = RackPatch.Apply(whole, new PatchOperation { Op = (string)step["op"]!, Path = (string)step["path"]!, Value = value }, index);
            }

            Check(Read(whole!.ToJsonString()));
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
        Texts.CheckAnswer(
            JsonSerializer.Serialize(report, ContractJson.Default.CheckReport), JsonSerializer.Serialize(rack, ContractJson.Default.RackDescription));
        Assert.All(report.Findings, f => CheckListed(f.Rule, f.MessageKey));
        Assert.All(report.Findings.Where(f => f.LapsedAcceptance is not null), f => CheckListed(f.Rule, f.LapsedAcceptance!.MessageKey));
        Assert.All(report.NotAssessed, n => CheckListed(n.Rule, n.MessageKey));
    }

    private static void CheckListed(string rule, string key) => Assert.True(ByRule[rule].Contains(key), $"{rule} does not list {key}");

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
}
