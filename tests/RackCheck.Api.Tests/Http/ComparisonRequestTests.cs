using System.Text.Json.Nodes;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Http;

public sealed class ComparisonRequestTests(Service service) : IClassFixture<Service>
{
    private const string Path = "/v1/comparisons";
    private const string Cabinet = """ "cabinet": { "heightU": 24, "widthMm": 600, "depthMm": 800 } """;
    private const string Rack = $$"""{ "description": { {{Cabinet}}, "items": [] } }""";

    [Theory]
    [InlineData("{}", "/before", "inconsistent")]
    [InlineData(
        $$"""{ "description": { {{Cabinet}}, "items": [] }, "basket": { "lines": [{ "partNumber": "QWL-SRV-2", "quantity": 1 }] } }""",
        "/before",
        "inconsistent")]
    [InlineData($$"""{ "description": { {{Cabinet}}, "items": [{ "id": "a", "heightU": 91 }] } }""", "/before/description/items/0/heightU", "out-of-range")]
    [InlineData(
        $$"""{ "description": { {{Cabinet}}, "items": [{ "id": "a", "heightU": 1 }, { "id": "a", "heightU": 1 }] } }""",
        "/before/description/items/1/id",
        "duplicate-id")]
    [InlineData("""{ "basket": { "lines": [] } }""", "/before/basket/lines", "wrong-count")]
    [InlineData("""{ "report": {} }""", "/before/report/verdict", "missing-member")]
    public async Task Faulty_request_is_refused_with_the_pointer(string before, string pointer, string code)
    {
        var answer = await service.PostAsync($$"""{ "before": {{before}}, "after": {{Rack}} }""", Path);
        answer.IsProblem(422);
        Assert.Contains(answer.Json["errors"]!.AsArray(), e => e!["pointer"]!.GetValue<string>() == pointer && e["code"]!.GetValue<string>() == code);
    }

    [Fact]
    public async Task Change_is_listed()
    {
        var answer = await service.PostAsync(Repository.Read("openapi", "examples", "comparison-change.json"), Path);
        Assert.Equal(200, answer.Status);
        Assert.Contains(answer.Json["goneFindings"]!.AsArray(), f => f!["rule"]!.GetValue<string>() == "layout.overlap");
        Assert.Equal(["switch"], answer.Json["content"]!["added"]!.AsArray().Select(i => i!.GetValue<string>()));
        Assert.Equal("QWL-SW-48", answer.Json["partsToAdd"]![0]!["partNumber"]!.GetValue<string>());
    }

    // A report of this service is accepted as it was given.
    [Fact]
    public async Task Report_given_is_not_made_again()
    {
        var rack = Repository.Read("openapi", "examples", "rack-sound.json");
        var report = (await service.PostAsync(rack)).Text;
        var answer = await service.PostAsync($$"""{ "before": { "report": {{report}} }, "after": { "description": {{rack}} } }""", Path);
        Assert.Equal(200, answer.Status);
        Assert.Empty(answer.Json["newFindings"]!.AsArray());
        Assert.Empty(answer.Json["goneFindings"]!.AsArray());
        Assert.Null(answer.Json["positions"]);
        Assert.All(answer.Json["figures"]!.AsArray(), f => Assert.Equal(0, f!["difference"]!.GetValue<double>()));
    }

    [Fact]
    public async Task Basket_is_compared_by_its_lines()
    {
        var answer = await service.PostAsync(Repository.Read("openapi", "examples", "comparison-baskets.json"), Path);
        Assert.Equal(200, answer.Status);
        Assert.Equal(["QWL-AMP-1", "QWL-CAB-42-6-8"], Parts(answer.Json["partsToReturn"]!));
        Assert.Equal(["QWL-AMP-2", "QWL-CAB-24-6-8"], Parts(answer.Json["partsToAdd"]!));
    }

    private static IEnumerable<string> Parts(JsonNode lines) => lines.AsArray().Select(l => l!["partNumber"]!.GetValue<string>());
}
