using System.Text.Json.Nodes;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Http;

/// <summary>POST /v1/checks with remedies applied.</summary>
public sealed class RemedyQueryTests(Service service) : IClassFixture<Service>
{
    private static readonly string Clashes = Repository.Read("openapi", "examples", "rack-layout-clashes.json");

    [Fact]
    public async Task AppliedRemedies_leave_no_error_and_rack_has_same_report()
    {
        var before = (await service.PostAsync(Clashes)).Json;
        var answer = await service.PostAsync(Clashes, "/v1/checks?apply=remedies");
        Assert.Equal(200, answer.Status);
        Assert.Contains(Findings(before), f => f == "error");
        Assert.DoesNotContain(Findings(answer.Json), f => f == "error");

        var applied = answer.Json["applied"]!;
        Assert.Equal(
            ["layout.outside-rack", "layout.overlap", "layout.shelf-fit", "layout.shelf-missing"],
            applied["steps"]!.AsArray().Select(s => s!["rule"]!.GetValue<string>()));
        var again = (await service.PostAsync(applied["rack"]!.ToJsonString())).Json;
        Assert.True(JsonNode.DeepEquals(again["findings"], answer.Json["findings"]));
        Assert.True(JsonNode.DeepEquals(again["descriptionDigest"], answer.Json["descriptionDigest"]));
    }

    [Fact]
    public async Task Rack_without_errors_is_unchanged()
    {
        var sound = Repository.Read("openapi", "examples", "rack-sound.json");
        var answer = await service.PostAsync(sound, "/v1/checks?apply=remedies");
        Assert.Empty(answer.Json["applied"]!["steps"]!.AsArray());
        Assert.Equal((await service.PostAsync(sound)).Json["descriptionDigest"]!.GetValue<string>(), answer.Json["descriptionDigest"]!.GetValue<string>());
    }

    [Theory]
    [InlineData("?apply=all")]
    [InlineData("?apply=")]
    [InlineData("?apply=remedies&apply=remedies")]
    [InlineData("?remedies=verified")]
    [InlineData("?verify=1")]
    public async Task Other_query_is_refused(string query) =>
        (await service.PostAsync(Clashes, "/v1/checks" + query)).IsProblem(400);

    private static IEnumerable<string> Findings(JsonNode report) => report["findings"]!.AsArray().Select(f => f!["severity"]!.GetValue<string>());
}
