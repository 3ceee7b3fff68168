using RackCheck.Rules;

namespace RackCheck.Api.Tests.Docs;

/// <summary>The sources of a finding are on the page of its rule.</summary>
public sealed class RuleSourcesTests(Service service) : IClassFixture<Service>
{
    public static TheoryData<string> Ids => [.. RuleSet.Default.All.Select(r => r.Descriptor.Id)];

    [Theory]
    [MemberData(nameof(Ids))]
    public async Task Source_of_a_finding_is_on_the_page_of_its_rule(string id)
    {
        var page = (await service.GetAsync($"/v1/rules/{id}")).Json;
        var texts = page["sources"]!.AsArray().ToDictionary(s => s!["key"]!.GetValue<string>(), s => s!["text"]!.GetValue<string>());
        var report = (await service.PostAsync(page["failingRack"]!.ToJsonString())).Json;
        var findings = report["findings"]!.AsArray().Where(f => f!["rule"]!.GetValue<string>() == id).ToArray();
        Assert.NotEmpty(findings);
        Assert.All(findings, f =>
        {
            string[] keys = [.. f!["sources"]!.AsArray().Select(k => k!.GetValue<string>())];
            Assert.NotEmpty(keys);
            Assert.All(keys, k => Assert.False(string.IsNullOrWhiteSpace(texts.GetValueOrDefault(k)), $"{k} is on no page"));
        });
    }
}
