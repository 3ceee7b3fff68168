using System.Text;
using System.Text.Json;
using RackCheck.Documents.Parts;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Http;

/// <summary>POST /v1/parts-lists.</summary>
public sealed class PartsListTests(Service service) : IClassFixture<Service>
{
    private const string Path = "/v1/parts-lists";
    private const string Json = "application/json";
    private const string Csv = "text/csv";
    private static readonly string Sound = Repository.Read("openapi", "examples", "rack-sound.json");

    [Theory]
    [InlineData(null, Json)]
    [InlineData("*/*", Json)]
    [InlineData("application/*", Json)]
    [InlineData("text/*", Csv)]
    [InlineData("text/csv", Csv)]
    [InlineData("text/csv, application/json;q=0.5", Csv)]
    [InlineData("application/json;q=0, */*", Csv)]
    public async Task Answer_has_the_media_type_that_the_client_prefers(string? accept, string mediaType)
    {
        var answer = await service.PostAsync(Encoding.UTF8.GetBytes(Sound), Path, accept: accept);
        Assert.Equal(200, answer.Status);
        Assert.Equal(mediaType, answer.MediaType);
        Assert.Contains("Accept", answer.Headers.Vary);
    }

    [Theory]
    [InlineData("text/html")]
    [InlineData("application/pdf")]
    [InlineData("text/csv;q=0")]
    public async Task Other_media_type_is_refused(string accept) =>
        (await service.PostAsync(Encoding.UTF8.GetBytes(Sound), Path, accept: accept)).IsProblem(406);

    [Theory]
    [InlineData("{", 400)]
    [InlineData("[]", 422)]
    [InlineData("{}", 422)]
    [InlineData("""{ "items": [] }""", 422)]
    public async Task Bad_request_is_refused(string body, int status) => (await service.PostAsync(body, Path)).IsProblem(status);

    [Fact]
    public async Task Unknown_query_parameter_is_refused() => (await service.PostAsync(Sound, Path + "?view=front")).IsProblem(400);

    [Fact]
    public async Task Both_forms_have_the_same_lines_and_the_digest_is_that_of_a_check()
    {
        var json = await service.PostAsync(Sound, Path);
        var list = JsonSerializer.Deserialize(json.Text, ContractJson.Default.PartsList)!;
        var csv = await service.PostAsync(Encoding.UTF8.GetBytes(Sound), Path, accept: Csv);
        Assert.Equal(Encoding.UTF8.GetString(PartsCsv.Of(list)), csv.Text);
        var report = (await service.PostAsync(Sound)).Json;
        Assert.Equal(report["descriptionDigest"]!.GetValue<string>(), list.DescriptionDigest);
        Assert.Equal(report["verdict"]!.GetValue<string>(), json.Json["verdict"]!.GetValue<string>());
    }

    [Fact]
    public async Task Same_request_gives_the_same_bytes() =>
        Assert.Equal((await service.PostAsync(Sound, Path)).Text, (await service.PostAsync(Sound, Path)).Text);

    [Fact]
    public async Task Part_numbers_are_looked_up_and_products_offered()
    {
        var answer = await service.PostAsync(
            """{ "cabinet": { "partNumber": "QWL-CAB-42-6-8" }, "items": [{ "id": "daq", "partNumber": "QWL-DAQ-3", "position": { "u": 4 } }] }""", Path);
        Assert.Equal(200, answer.Status);
        var list = JsonSerializer.Deserialize(answer.Text, ContractJson.Default.PartsList)!;
        Assert.Contains(list.Lines, l => l is { Kind: PartKind.Fixing, PartNumber: "QWL-FIX-CN20" });
        Assert.Contains(list.Lines, l => l.Data.Text == "daq, U4-U6, front");
    }

    [Fact]
    public async Task Rack_without_its_product_data_is_answered()
    {
        var answer = await service.PostAsync("""{ "cabinet": { "partNumber": "QWL-NONE" }, "items": [{ "id": "a", "partNumber": "QWL-NONE-2" }] }""", Path);
        Assert.Equal(200, answer.Status);
        Assert.Contains("essential data is missing", answer.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Formula_in_a_name_stays_text()
    {
        const string Rack = """
            { "cabinet": { "heightU": 9, "widthMm": 600, "depthMm": 800 }, "items": [{ "id": "=HYPERLINK(\"x\")", "heightU": 1, "position": { "u": 1 } }] }
            """;
        var csv = await service.PostAsync(Encoding.UTF8.GetBytes(Rack), Path, accept: Csv);
        Assert.Contains("\"'=HYPERLINK(\"\"x\"\")", csv.Text, StringComparison.Ordinal);
        Assert.Equal("=HYPERLINK(\"x\")", (await service.PostAsync(Rack, Path)).Json["lines"]![0]!["items"]![0]!.GetValue<string>());
    }
}
