using System.Text.Json.Nodes;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Http;

public sealed class ProposalRequestTests(Service service) : IClassFixture<Service>
{
    private const string Path = "/v1/proposals";

    [Theory]
    [InlineData("""{ "items": [] }""", "/items", "wrong-count")]
    [InlineData("""{ "items": [{ "id": "a", "heightU": 1 }], "cabinet": {} }""", "/cabinet", "unknown-member")]
    [InlineData("""{ "items": [{ "id": "a", "heightU": 1 }], "keep": ["b"] }""", "/keep/0", "unknown-id")]
    [InlineData("""{ "items": [{ "id": "a", "heightU": 1 }], "keep": ["a"] }""", "/keep/0", "inconsistent")]
    [InlineData("""{ "items": [{ "id": "a", "heightU": 1 }, { "id": "a", "heightU": 2 }] }""", "/items/1/id", "duplicate-id")]
    [InlineData("""{ "items": [{ "id": "a", "heightU": 1 }], "groups": [{ "id": "g", "items": ["b"] }] }""", "/groups/0/items/0", "unknown-id")]
    [InlineData("""{ "items": [{ "id": "a", "heightU": 1 }], "groups": [{ "id": "g", "items": ["a", "a"] }] }""", "/groups/0/items/1", "inconsistent")]
    [InlineData(
        """{ "items": [{ "id": "a", "heightU": 1 }], "groups": [{ "id": "g", "items": ["a"] }, { "id": "g", "items": ["a"] }] }""",
        "/groups/1/id",
        "duplicate-id")]
    [InlineData("""{ "items": [{ "id": "a", "heightU": 1 }], "maxCabinets": 0 }""", "/maxCabinets", "out-of-range")]
    [InlineData("""{ "items": [{ "id": "a", "heightU": 1 }], "growthPercent": -1 }""", "/growthPercent", "out-of-range")]
    [InlineData("""{ "items": [{ "id": "a", "heightU": 1 }], "effort": "long" }""", "/effort", "unknown-value")]
    [InlineData("""{ "items": [{ "id": "a", "heightU": 1 }], "prefer": "cheap" }""", "/prefer", "unknown-value")]
    [InlineData("""{ "items": [{ "id": "a", "heightU": 1 }], "cabinets": [{ "heightU": 12 }] }""", "/cabinets/0/widthMm", "missing-member")]
    [InlineData(
        """
        {
          "items": [{ "id": "a", "heightU": 1 }],
          "pdus": [{ "id": "p", "supply": "A", "ratedA": 16, "groups": [{ "id": "g", "outlets": [{ "socket": "C13", "count": 4 }] }] }]
        }
        """,
        "/pdus/0/supply",
        "unknown-id")]
    public async Task Faulty_request_is_refused_with_the_pointer(string body, string pointer, string code)
    {
        var answer = await service.PostAsync(body, Path);
        answer.IsProblem(422);
        Assert.Contains(answer.Json["errors"]!.AsArray(), e => e!["pointer"]!.GetValue<string>() == pointer && e["code"]!.GetValue<string>() == code);
    }

    [Fact]
    public async Task Rack_of_an_alternative_posted_unchanged_has_the_same_report()
    {
        var answer = await service.PostAsync(Repository.Read("openapi", "examples", "proposal-fourteen-items.json"), Path);
        Assert.Equal(200, answer.Status);
        foreach (var alternative in answer.Json["alternatives"]!.AsArray())
        {
            var again = await service.PostAsync(alternative!["rack"]!.ToJsonString());
            Assert.Equal(200, again.Status);
            Assert.True(JsonNode.DeepEquals(alternative["report"], again.Json));
        }
    }

    [Fact]
    public async Task Same_request_has_the_same_bytes()
    {
        var body = Repository.Read("openapi", "examples", "proposal-fourteen-items.json");
        Assert.Equal((await service.PostAsync(body, Path)).Text, (await service.PostAsync(body, Path)).Text);
    }

    [Fact]
    public async Task Effort_is_echoed()
    {
        const string Items = """ "items": [{ "id": "a", "heightU": 2, "massKg": 4 }] """;
        Assert.Equal("quick", (await service.PostAsync($$"""{ {{Items}} }""", Path)).Json["effort"]!.GetValue<string>());
        Assert.Equal("thorough", (await service.PostAsync($$"""{ {{Items}}, "effort": "thorough" }""", Path)).Json["effort"]!.GetValue<string>());
    }
}
