using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using RackCheck.Api.Catalogue;
using RackCheck.Api.Tests.OpenApi;
using RackCheck.ProductService;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Catalogue;

/// <summary>The contract of the product service: reviewed as a whole, as strict as the client, and followed by the test host.</summary>
public sealed class ProductContractTests : IAsyncLifetime
{
    private static readonly string[] Snapshot = ["openapi", "catalogue.v1.json"];

    private ProductServiceHost host = null!;

    public async Task InitializeAsync() => host = await ProductServiceHost.StartAsync(FileCatalogue.Read(new CatalogueOptions().File).Products);

    public async Task DisposeAsync() => await host.DisposeAsync();

    [Fact]
    public async Task Contract_equals_the_reviewed_file()
    {
        var served = (await GetAsync("/openapi/catalogue.v1.json")).Text.ReplaceLineEndings("\n") + "\n";
        if (Repository.IsRegenerating)
        {
            await File.WriteAllTextAsync(Repository.PathOf(Snapshot), served);
        }

        Assert.True(
            Repository.Read(Snapshot).ReplaceLineEndings("\n") == served,
            "The contract of the product service has changed. Review the change. If it is intended, run tests/regenerate and commit "
            + "openapi/catalogue.v1.json.");
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
    public async Task BundledFile_and_responses_satisfy_the_contract()
    {
        Assert.True(await IsValidAsync(await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, new CatalogueOptions().File))));
        Assert.True(await IsValidAsync((await GetAsync("/v1/products/offered")).Text));
        Assert.True(await IsValidAsync((await LookUpAsync("""{ "partNumbers": [ "QWL-CAB-42-8-10", "QWL-NONE" ] }""")).Text));
    }

    [Theory]
    [InlineData(FaultKind.WrongSchema)]
    [InlineData(FaultKind.WrongValue)]
    public async Task FaultyAnswer_violates_the_contract(FaultKind kind)
    {
        host.Faults.Set(kind);
        Assert.False(await IsValidAsync((await GetAsync("/v1/products/offered")).Text));
    }

    [Theory]
    [InlineData("{", 400)]
    [InlineData("{}", 422)]
    [InlineData("""{ "partNumbers": [] }""", 422)]
    [InlineData("""{ "partNumbers": [ null ] }""", 422)]
    [InlineData("""{ "partNumbers": [ "QWL-A" ], "more": 1 }""", 422)]
    public async Task InvalidRequest_gets_a_problem(string body, int status) => (await LookUpAsync(body)).IsProblem(status);

    [Fact]
    public async Task LookUp_of_more_than_1000_part_numbers_is_refused()
    {
        (await LookUpAsync(Ask(1001))).IsProblem(422);
        Assert.Equal(200, (await LookUpAsync(Ask(1000))).Status);
    }

    [Fact]
    public async Task Fault_is_switched_over_http()
    {
        using var client = new HttpClient { BaseAddress = host.BaseUrl };
        using var order = new StringContent("""{ "kind": "failed", "times": 1 }""");
        Assert.Equal(200, (await Answer.OfAsync(await client.PutAsync("/faults", order))).Status);
        (await GetAsync("/v1/products/offered")).IsProblem(500);
        Assert.Equal(200, (await GetAsync("/v1/products/offered")).Status);
        using var unknown = new StringContent("""{ "kind": "fire" }""");
        (await Answer.OfAsync(await client.PutAsync("/faults", unknown))).IsProblem(400);
        Assert.Equal("failed", (await GetAsync("/faults")).Json["kind"]!.GetValue<string>());
    }

    private static string Ask(int count) => JsonSerializer.Serialize(new { partNumbers = CatalogueRig.Packs(count).Select(p => p.PartNumber) });

    private async Task<Answer> GetAsync(string path)
    {
        using var client = new HttpClient { BaseAddress = host.BaseUrl };
        return await Answer.OfAsync(await client.GetAsync(path));
    }

    private async Task<Answer> LookUpAsync(string body)
    {
        using var client = new HttpClient { BaseAddress = host.BaseUrl };
        using var content = new StringContent(body, Encoding.UTF8, "application/json");
        return await Answer.OfAsync(await client.PostAsync("/v1/products/look-up", content));
    }

    private async Task<JsonNode> ContractAsync() => (await GetAsync("/openapi/catalogue.v1.json")).Json;

    private async Task<bool> IsValidAsync(string products)
    {
        var wrapped = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["$id"] = $"https://rack-check.example/{Guid.NewGuid()}",
            ["$ref"] = "#/components/schemas/ProductList",
            ["components"] = ContractSchemas.WithoutExtensions((await ContractAsync())["components"]!),
        };
        using var document = JsonDocument.Parse(products);
        return JsonSchema.FromText(wrapped.ToJsonString()).Evaluate(document.RootElement).IsValid;
    }
}
