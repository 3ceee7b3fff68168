using System.Text.Json.Nodes;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Http;

/// <summary>A fault tells what was meant, in words that do not come from a library.</summary>
public sealed class HelpfulFaultTests(Service service) : IClassFixture<Service>
{
    [Theory]
    [InlineData("/items/0", "weight", "massKg")]
    [InlineData("/items/0", "weightKg", "massKg")]
    [InlineData("/items/0", "mass_kg", "massKg")]
    [InlineData("/items/0", "depth", "body/depthMm")]
    [InlineData("/items/0", "u", "position/u")]
    [InlineData("/items/0", "watts", "power/ratedW")]
    [InlineData("/items/0", "powerW", "power/ratedW")]
    [InlineData("/items/0", "type", "category")]
    [InlineData("/items/0", "heigthU", "heightU")]
    [InlineData("/cabinet", "depth", "depthMm")]
    [InlineData("/cabinet", "height", "heightU")]
    [InlineData("", "devices", "items")]
    [InlineData("/items/0", "x", null)]
    [InlineData("/items/0", "colour", null)]
    public async Task Unknown_member_has_a_hint(string owner, string name, string? meant)
    {
        var rack = JsonNode.Parse("""{ "cabinet": { "heightU": 42, "widthMm": 600, "depthMm": 800 }, "items": [ { "id": "a", "heightU": 1 } ] }""")!;
        var holder = owner switch { "/items/0" => rack["items"]![0]!, "/cabinet" => rack["cabinet"]!, _ => rack };
        holder[name] = 5;
        var fault = (await service.PostAsync(rack.ToJsonString())).Json["errors"]![0]!;
        Assert.Equal($"{owner}/{name}", fault["pointer"]!.GetValue<string>());
        var detail = fault["detail"]!.GetValue<string>();
        Assert.EndsWith(meant is null ? "here." : $"Did you mean {meant}?", detail, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("""{ "items": [], }""", "a comma with nothing after it")]
    [InlineData("""{ "items": [ {}, ] }""", "a comma with nothing after it")]
    [InlineData("""{ /* none */ "items": [] }""", "a comment")]
    [InlineData("{ 'items': [] }", "a single quotation mark")]
    [InlineData("""{ "items": [""", "it ends too early")]
    [InlineData("""{ "items""", "it ends too early")]
    [InlineData("{} {}", "something after the end of the document")]
    [InlineData("""{ "items": [] } x""", "something after the end of the document")]
    public async Task Text_that_is_not_json_has_its_cause(string body, string cause)
    {
        var answer = await service.PostAsync(body);
        answer.IsProblem(400);
        Assert.EndsWith($": {cause}.", answer.Json["errors"]![0]!["detail"]!.GetValue<string>(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"heightU\": 61", "61 is outside 1 to 60.")]
    [InlineData("\"heightU\": 3000000000", "3000000000 is outside 1 to 60.")]
    [InlineData("\"heightU\": 1e400", "The number is too large; 1 to 60 is allowed.")]
    [InlineData("\"heightU\": 42, \"massKg\": 1e400", "The number is too large; 0 to 5000 is allowed.")]
    [InlineData("\"heightU\": 42, \"massKg\": -1e400", "The number is too small; 0 to 5000 is allowed.")]
    [InlineData("\"heightU\": 42, \"frontDoor\": { \"style\": \"solid\", \"leaves\": 3000000000 }", "3000000000 is not one of the allowed values: 1, 2.")]
    [InlineData("\"heightU\": 42, \"frontDoor\": { \"style\": \"solid\", \"leaves\": -1e400 }", "The number is not one of the allowed values: 1, 2.")]
    public async Task Number_outside_its_range_is_told_the_range(string members, string detail)
    {
        var answer = await service.PostAsync($$"""{ "cabinet": { {{members}}, "widthMm": 600, "depthMm": 800 }, "items": [] }""");
        answer.IsProblem(422);
        var fault = Assert.Single(answer.Json["errors"]!.AsArray())!;
        Assert.Equal(("out-of-range", detail), (fault["code"]!.GetValue<string>(), fault["detail"]!.GetValue<string>()));
    }

    [Fact]
    public async Task Date_without_an_offset_is_told_the_format()
    {
        var rack = JsonNode.Parse(Repository.Read("openapi", "examples", "rack-sound.json"))!;
        rack["asOf"] = "2026-11-28T09:00:00";
        var fault = (await service.PostAsync(rack.ToJsonString())).Json["errors"]![0]!;
        Assert.Equal("/asOf", fault["pointer"]!.GetValue<string>());
        Assert.Contains("such as 2026-11-28T09:00:00Z", fault["detail"]!.GetValue<string>(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Unknown_address_and_media_type_say_where_to_look()
    {
        var missing = await service.GetAsync("/v1/specification");
        Assert.Contains("/docs/reference/operations", missing.Json["detail"]!.GetValue<string>(), StringComparison.Ordinal);
        var text = await service.PostAsync("{}"u8.ToArray(), "/v1/checks", contentType: "text/plain");
        text.IsProblem(415);
        Assert.Contains("application/json", text.Json["detail"]!.GetValue<string>(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("""{ "lines": [ { "partNumber": "QWL-BP-1", "quantity": 5000 }, { "partNumber": "QWL-SRV-2", "quantity": 300 } ] }""", "too-many-items")]
    [InlineData(
        """{ "lines": [ { "partNumber": "QWL-SRV-2", "quantity": 1 } ], "options": { "cabinet": { "existing": { "partNumber": "QWL-NOPE" } } } }""",
        "no-cabinet")]
    public async Task Codes_of_baskets_are_in_the_contract(string basket, string code)
    {
        var answer = await service.PostAsync(basket, "/v1/baskets/checks");
        answer.IsProblem(422);
        Assert.Equal(code, answer.Json["errors"]![0]!["code"]!.GetValue<string>());
        var codes = (await service.GetAsync("/openapi/v1.json")).Json["components"]!["schemas"]!["Fault"]!["properties"]!["code"]!["x-fault-codes"]!.AsArray();
        Assert.Contains(code, codes.Select(c => c!["code"]!.GetValue<string>()));
        Assert.Contains($"id=\"{code}\"", (await service.GetAsync("/docs/problems")).Text, StringComparison.Ordinal);
    }
}
