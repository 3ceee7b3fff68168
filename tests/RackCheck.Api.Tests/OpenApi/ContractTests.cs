using System.Text.Json.Nodes;
using RackCheck.Api.OpenApi;
using RackCheck.Documents;
using RackCheck.Rules;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.OpenApi;

/// <summary>The served contract: reviewed as a whole, and as strict as the reader.</summary>
public sealed class ContractTests(Service service) : IClassFixture<Service>
{
    private static readonly string[] Snapshot = ["openapi", "rack-check.v1.json"];

    public static TheoryData<string> ExampleNames =>
    [
        .. Directory.EnumerateFiles(Repository.PathOf("openapi", "examples"), "*.json").Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal),
    ];

    [Fact]
    public async Task Contract_equals_the_reviewed_file()
    {
        var served = (await service.GetAsync("/openapi/v1.json")).Text.ReplaceLineEndings("\n") + "\n";
        if (Repository.IsRegenerating)
        {
            await File.WriteAllTextAsync(Repository.PathOf(Snapshot), served);
        }

        Assert.True(
            Repository.Read(Snapshot).ReplaceLineEndings("\n") == served,
            "The contract has changed. Look at the change; where it is meant, run tests/regenerate and commit openapi/rack-check.v1.json.");
    }

    [Fact]
    public async Task Contract_is_openapi_3_1_with_an_example_for_every_input()
    {
        var contract = await ContractAsync();
        Assert.StartsWith("3.1", contract["openapi"]!.GetValue<string>(), StringComparison.Ordinal);
        foreach (var (path, item) in contract["paths"]!.AsObject())
        {
            foreach (var (method, operation) in item!.AsObject())
            {
                Assert.False(string.IsNullOrEmpty(operation!["summary"]?.GetValue<string>()), $"{method} {path} has no summary");
                foreach (var parameter in operation["parameters"]?.AsArray() ?? [])
                {
                    Assert.True(parameter!["example"] is not null || parameter["required"] is null, $"{method} {path}: {parameter["name"]} has no example");
                }

                if (operation["requestBody"] is { } body)
                {
                    // One text with several lines is as good as several documents.
                    var (mediaType, media) = body["content"]!.AsObject().Single();
                    var least = mediaType == "application/json" ? 3 : 1;
                    Assert.True(media!["examples"]!.AsObject().Count >= least, $"{method} {path} has too few examples");
                }
            }
        }
    }

    [Fact]
    public async Task Property_has_a_description()
    {
        var silent =
            from schema in (await ContractAsync())["components"]!["schemas"]!.AsObject()
            from property in schema.Value!["properties"]?.AsObject() ?? []
            where property.Value!["description"] is null && property.Value["$ref"] is null
            select $"{schema.Key}.{property.Key}";
        Assert.Empty(silent);
    }

    [Fact]
    public async Task Contract_lists_rules_and_tables_of_the_service()
    {
        var contract = await ContractAsync();
        var paths = contract["paths"]!;
        var ids = RuleSet.Default.All.Select(r => r.Descriptor.Id).ToArray();
        Assert.Equal(ids, Choices(contract["components"]!["schemas"]!["RuleId"]!));
        Assert.All(ids, id => Assert.Matches(RuleIds.Pattern, id));
        Assert.Equal("#/components/schemas/RuleId", Schema(paths["/v1/rules/{id}"]!)["$ref"]!.GetValue<string>());
        Assert.Equal(ReferencePages.All.Select(t => t.Table), Choices(Schema(paths["/v1/reference/{table}"]!)));
    }

    [Theory]
    [MemberData(nameof(ExampleNames))]
    public async Task Example_and_its_response_satisfy_the_contract(string name)
    {
        var body = Repository.Read("openapi", "examples", name);
        var (request, path, response) = name.Split('-')[0] switch
        {
            "basket" => ("BasketRequest", "/v1/baskets/checks", "BasketReport"),
            "comparison" => ("ComparisonRequest", "/v1/comparisons", "ComparisonAnswer"),
            "elevation" => ("ElevationRequest", "/v1/elevations", null),
            "proposal" => ("ProposalRequest", "/v1/proposals", "ProposalAnswer"),
            _ => ("RackDescription", "/v1/checks", "CheckReport"),
        };
        ContractSchemas.AssertValid(request, body);
        var answer = await service.PostAsync(body, path);
        Assert.Equal(200, answer.Status);
        if (response is null)
        {
            Assert.Equal("image/svg+xml", answer.MediaType);
            return;
        }

        ContractSchemas.AssertValid(response, answer.Text);
        if (response == "ProposalAnswer")
        {
            Assert.Equal(name == "proposal-conflict.json", answer.Json["alternatives"]!.AsArray().Count == 0);
            return;
        }

        if (response == "ComparisonAnswer")
        {
            Assert.NotEmpty(answer.Json["figures"]!.AsArray());
            return;
        }

        var expected = name switch { "rack-sound.json" => "release", "basket-complete.json" => "review", _ => "hold" };
        Assert.Equal(expected, answer.Json["verdict"]!.GetValue<string>());
        if (name == "basket-complete.json")
        {
            Assert.Empty(answer.Json["missingLines"]!.AsArray());
            Assert.Empty(answer.Json["excessLines"]!.AsArray());
        }

        if (path == "/v1/checks")
        {
            ContractSchemas.AssertValid("PartsList", (await service.PostAsync(body, "/v1/parts-lists")).Text);
        }
    }

    [Fact]
    public async Task Rules_tables_and_problems_satisfy_the_contract()
    {
        ContractSchemas.AssertValid("RuleList", (await service.GetAsync("/v1/rules")).Text);
        foreach (var rule in RuleSet.Default.All)
        {
            ContractSchemas.AssertValid("RulePage", (await service.GetAsync("/v1/rules/" + rule.Descriptor.Id)).Text);
        }

        foreach (var table in ReferencePages.All)
        {
            ContractSchemas.AssertValid("ReferenceTable", (await service.GetAsync("/v1/reference/" + table.Table)).Text);
        }

        ContractSchemas.AssertValid("Problem", (await service.PostAsync("{}")).Text);
        ContractSchemas.AssertValid("Problem", (await service.PostAsync("{")).Text);
    }

    [Theory]
    [InlineData("""{ "cabinet": { "heightU": 42 }, "items": [], "extra": 1 }""")]
    [InlineData("""{ "cabinet": { "heightU": 61 }, "items": [] }""")]
    [InlineData("""{ "cabinet": { "heightU": 42.5 }, "items": [] }""")]
    [InlineData("""{ "cabinet": { "heightU": 42, "frontDoor": { "style": "open" } }, "items": [] }""")]
    [InlineData("""{ "cabinet": { "heightU": 42, "ipCode": "IP" }, "items": [] }""")]
    [InlineData("""{ "items": [ { "heightU": 1 } ] }""")]
    [InlineData("""{ "items": [ { "id": "" } ] }""")]
    [InlineData("""{ "items": [ { "id": "a", "category": "Computer" } ] }""")]
    [InlineData("""{ "items": [ { "id": "a", "power": { "plugs": [ "C1" ] } } ] }""")]
    [InlineData("""{ "items": [], "supplies": [ { "id": "A", "voltageV": 230, "ratedA": 16, "phases": 2 } ] }""")]
    [InlineData("""{ "items": [], "acceptances": [ { "rule": "layout.none", "reason": "r", "acceptedBy": "b" } ] }""")]
    [InlineData("""{ "reference": 1, "items": [] }""")]
    [InlineData("""{ }""")]
    public async Task Rack_that_violates_the_contract_is_refused(string rack)
    {
        Assert.NotEmpty(ContractSchemas.Faults("RackDescription", rack));
        (await service.PostAsync(rack)).IsProblem(422);
    }

    [Fact]
    public async Task SameRack_written_differently_gets_the_same_bytes()
    {
        var text = Repository.Read("openapi", "examples", "rack-layout-clashes.json");
        var first = await service.PostAsync(text);
        var compact = await service.PostAsync(JsonNode.Parse(text)!.ToJsonString());
        var reversed = JsonNode.Parse(text)!.AsObject();
        foreach (var (name, value) in reversed.Reverse().ToArray())
        {
            reversed.Remove(name);
            reversed.Add(name, value);
        }

        Assert.Equal(first.Text, compact.Text);
        Assert.Equal(first.Text, (await service.PostAsync(reversed.ToJsonString())).Text);
    }

    private static JsonNode Schema(JsonNode path) => path["get"]!["parameters"]![0]!["schema"]!;

    private static IEnumerable<string> Choices(JsonNode schema) => schema["enum"]!.AsArray().Select(e => e!.GetValue<string>());

    private async Task<JsonNode> ContractAsync() => (await service.GetAsync("/openapi/v1.json")).Json;
}
