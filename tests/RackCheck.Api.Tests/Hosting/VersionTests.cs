using RackCheck.Rules;

namespace RackCheck.Api.Tests.Hosting;

/// <summary>GET /version.</summary>
public sealed class VersionTests(Service service) : IClassFixture<Service>
{
    [Fact]
    public async Task Version_names_build_ruleset_and_contract()
    {
        var json = (await service.GetAsync("/version")).Json;
        Assert.Matches(@"^\d+\.\d+\.\d+(\+[0-9a-f]{40})?$", json["build"]!.GetValue<string>());
        Assert.Equal((RuleSet.CurrentVersion, "v1"), (json["ruleset"]!.GetValue<string>(), json["contract"]!.GetValue<string>()));
    }
}
