using System.Text.Json.Nodes;
using RackCheck.Api.Tests.Hosting;
using RackCheck.ProductService;

namespace RackCheck.Api.Tests.Catalogue;

/// <summary>A service whose catalogue does not answer is ready, says so, and answers what needs no parts.</summary>
public sealed class AvailabilityTests
{
    private const string Proposals = "/v1/proposals";
    private const string Baskets = "/v1/baskets/checks";
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(2);

    [Fact]
    public async Task Service_without_catalogue_is_ready_and_answers_what_needs_no_parts()
    {
        var port = KestrelService.FreePort();
        await using var service = await KestrelService.StartAsync(FormattableString.Invariant($"Catalogue:BaseUrl=http://127.0.0.1:{port}"));
        Assert.Equal("unavailable", await CatalogueAsync(service));
        const string Rack = """{ "cabinet": { "heightU": 42, "widthMm": 800, "depthMm": 1000 }, "items": [] }""";
        Assert.Equal(200, (await service.PostAsync("/v1/checks", Rack)).Status);
        const string Side = $$"""{ "description": {{Rack}} }""";
        Assert.Equal(200, (await service.PostAsync("/v1/comparisons", $$"""{ "before": {{Side}}, "after": {{Side}} }""")).Status);
        Assert.Equal(200, (await service.PostAsync("/v1/elevations", Rack)).Status);
        var sheet = await service.PostAsync("/v1/specifications", Rack);
        Assert.Equal(200, sheet.Status);
        Assert.Contains("The products on offer could not be had.", sheet.Text, StringComparison.Ordinal);
        var parts = await service.PostAsync("/v1/parts-lists", Rack);
        Assert.Equal(200, parts.Status);
        Assert.Contains(
            "The products on offer could not be had. Lines have the part numbers of the description only.",
            parts.Json["notes"]!.AsArray().Select(n => n!.GetValue<string>()));
        var proposal = await service.PostAsync(Proposals, Proposal(cabinets: true));
        Assert.Equal(200, proposal.Status);
        Assert.Equal(
            "The product catalogue is unavailable, so that no product is on offer.", proposal.Json["alternatives"]![0]!["givenUp"]![0]!.GetValue<string>());

        Needs(await service.PostAsync(Proposals, Proposal(cabinets: false)));
        Needs(await service.PostAsync("/v1/checks", """{ "cabinet": { "partNumber": "QWL-CAB-42-8-10" }, "items": [] }"""));
        Needs(await service.PostAsync(Baskets, """{ "lines": [ { "partNumber": "QWL-CAB-42-8-10", "quantity": 1 } ] }"""));
        Assert.Equal("unavailable", await CatalogueAsync(service));
    }

    [Fact]
    public async Task File_is_available()
    {
        await using var service = await KestrelService.StartAsync();
        Assert.Equal("available", await CatalogueAsync(service));
        Assert.Null((await service.GetAsync("/health/live")).Json["catalogue"]);
    }

    [Fact]
    public async Task Product_service_is_watched_without_a_request()
    {
        await using var host = await ProductServiceHost.StartAsync();
        host.Faults.Set(FaultKind.Failed);
        await using var service = await KestrelService.StartAsync(
            $"Catalogue:BaseUrl={host.BaseUrl}", "Catalogue:WatchSeconds=1", "Catalogue:Retries=0", "Catalogue:CacheSeconds=0", "Catalogue:StaleSeconds=0",
            "Catalogue:TryTimeoutMs=60000", "Catalogue:TotalTimeoutMs=60000");
        Assert.Equal("unavailable", await CatalogueAsync(service));
        host.Faults.Set(FaultKind.None);
        await BecomesAsync(service, "available");
        Assert.Contains("rack_check_catalogue_available 1", (await service.GetAsync("/metrics")).Text, StringComparison.Ordinal);
        host.Faults.Set(FaultKind.Failed);
        await BecomesAsync(service, "unavailable");
    }

    private static string Proposal(bool cabinets)
    {
        var request = new JsonObject
        {
            ["items"] = new JsonArray(JsonNode.Parse(
                """{ "id": "patch", "category": "network", "heightU": 1, "body": { "widthMm": 440, "heightMm": 40, "depthMm": 90 }, "massKg": 1 }""")),
        };
        if (cabinets)
        {
            request["cabinets"] = new JsonArray(JsonNode.Parse(
                """
                { "heightU": 24, "widthMm": 600, "depthMm": 800, "heightMm": 1200, "massKg": 60,
                  "uprights": { "hole": "square", "frontSetbackMm": 80, "spacingMm": 600 } }
                """));
        }

        return request.ToJsonString();
    }

    private static void Needs(Answer answer)
    {
        answer.IsProblem(503);
        Assert.True(answer.Headers.RetryAfter?.Delta >= TimeSpan.FromSeconds(1));
    }

    private static async Task<string> CatalogueAsync(KestrelService service)
    {
        var answer = await service.GetAsync("/health/ready");
        Assert.Equal((200, "ready"), (answer.Status, answer.Json["status"]!.GetValue<string>()));
        return answer.Json["catalogue"]!.GetValue<string>();
    }

    private static async Task BecomesAsync(KestrelService service, string state)
    {
        using var limit = new CancellationTokenSource(Longest);
        while (await CatalogueAsync(service) != state)
        {
            await Task.Delay(50, limit.Token);
        }
    }
}
