using System.Text.RegularExpressions;
using RackCheck.Rules;

namespace RackCheck.Api.Tests.Docs;

/// <summary>GET /v1/rulesets, and what rules and headers say of the ruleset.</summary>
public sealed class RulesetsTests(Service service) : IClassFixture<Service>
{
    [Fact]
    public async Task History_has_every_version_and_the_rules_that_it_names()
    {
        var versions = (await service.GetAsync("/v1/rulesets")).Json["rulesets"]!.AsArray();
        Assert.Equal(RuleSet.Changes.Select(c => c.Version), versions.Select(v => v!["version"]!.GetValue<string>()));
        foreach (var (version, changes) in versions.Zip(RuleSet.Changes))
        {
            Assert.Equal(changes.Changes, version!["changes"]!.AsArray().Select(c => c!["text"]!.GetValue<string>()));
        }

        var older = versions.Single(v => v!["version"]!.GetValue<string>() == "2026.11.10")!["changes"]!;
        Assert.Equal("catalogue.unknown-part", Assert.Single(older[0]!["rules"]!.AsArray())!.GetValue<string>());
    }

    [Fact]
    public async Task Rule_says_in_which_version_it_changed_last()
    {
        var rules = (await service.GetAsync("/v1/rules")).Json["rules"]!.AsArray();
        foreach (var rule in rules)
        {
            var id = rule!["id"]!.GetValue<string>();
            var last = RuleSet.Changes.FirstOrDefault(v => v.Changes.Any(c => Regex.IsMatch(c, $@"\b{id}(?![a-z0-9-])")))?.Version;
            Assert.Equal((id, last), (id, rule["changedIn"]?.GetValue<string>()));
            Assert.Equal(last, (await service.GetAsync("/v1/rules/" + id)).Json["changedIn"]?.GetValue<string>());
        }

        Assert.Contains(rules, r => r!["changedIn"] is not null);
    }

    [Fact]
    public async Task Every_answer_names_the_ruleset()
    {
        Answer[] answers = [await service.GetAsync("/health/live"), await service.GetAsync("/v1/none"), await service.PostAsync("{")];
        Assert.All(answers, a => Assert.Equal(RuleSet.CurrentVersion, a.Headers.GetValues("Ruleset-Version").Single()));
    }
}
