using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using RackCheck.Model;
using RackCheck.Rules;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Http;

/// <summary>Extreme numbers in every numeric member and policy limit get a report or a problem document, never status 500.</summary>
public sealed class NumberSweepTests(Service service) : IClassFixture<Service>
{
    // Subnormal, tiny, both zeros, negative, the largest exact integer, close to overflow.
    private static readonly string[] Awkward = ["1e-320", "1e-9", "0", "-0.0", "-1", "9007199254740992", "1e308"];

    public static TheoryData<string> Examples =>
        [.. Directory.EnumerateFiles(Repository.PathOf("openapi", "examples"), "*.json").Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Examples))]
    public async Task Example_with_extreme_number_is_answered(string example)
    {
        var request = JsonNode.Parse(Repository.Read("openapi", "examples", example))!;
        await SweepAsync(request, example.Split('-')[0] switch
        {
            "basket" => "/v1/baskets/checks",
            "comparison" => "/v1/comparisons",
            "proposal" => "/v1/proposals",
            _ => "/v1/checks",
        });
    }

    [Fact]
    public async Task Rack_with_every_number_of_the_contract_is_answered()
    {
        var rack = FilledRack.Make();
        var answer = await service.PostAsync(rack.ToJsonString());
        Assert.True(answer.Status == 200, answer.Text);
        await SweepAsync(rack, "/v1/checks");
    }

    [Fact]
    public async Task Basket_with_every_number_of_a_cabinet_that_is_there_is_answered()
    {
        var basket = FilledRack.Basket();
        var answer = await service.PostAsync(basket.ToJsonString(), "/v1/baskets/checks");
        Assert.True(answer.Status == 200, answer.Text);
        await SweepAsync(basket, "/v1/baskets/checks");
    }

    [Fact]
    public async Task PolicyLimit_with_extreme_number_is_answered()
    {
        using var client = service.CreateClient();
        var failed = new List<string>();
        var limits = RuleSet.Default.All.Select(r => r.Descriptor).SelectMany(r => r.Limits.Select(l => (Rule: r, l.Name))).ToArray();
        Assert.True(limits.Length > 30, $"{limits.Length} limits");
        foreach (var (rule, name) in limits)
        {
            var racks = new[] { JsonNode.Parse(rule.FailingRack)!, FilledRack.Make() };
            foreach (var number in Awkward)
            {
                foreach (var rack in racks)
                {
                    rack["policy"] = JsonNode.Parse($$"""{ "rules": { "{{rule.Id}}": { "limits": { "{{name}}": {{number}} } } } }""");
                    await TryAsync(client, rack.ToJsonString(), "/v1/checks", $"{rule.Id} {name} {number}", failed);
                }
            }
        }

        Assert.True(failed.Count == 0, $"{failed.Count} failed:\n{string.Join("\n", failed)}");
    }

    private async Task SweepAsync(JsonNode request, string path)
    {
        using var client = service.CreateClient();
        var failed = new List<string>();
        var places = Numbers(request).ToArray();
        Assert.NotEmpty(places);
        foreach (var place in places)
        {
            foreach (var number in Awkward)
            {
                await TryAsync(client, With(request, place, number), path, $"{string.Join('/', place)} {number}", failed);
            }
        }

        Assert.True(failed.Count == 0, $"{failed.Count} failed:\n{string.Join("\n", failed)}");
    }

    private static async Task TryAsync(HttpClient client, string body, string path, string about, List<string> failed)
    {
        using var content = new StringContent(body, System.Text.Encoding.UTF8, "application/json");
        try
        {
            var answer = await Answer.OfAsync(await client.PostAsync(new Uri(path, UriKind.Relative), content));
            JsonDocument.Parse(answer.Text).Dispose();
            if (answer.Status is not (200 or 422) || answer.Text.Contains("failed inside the service", StringComparison.Ordinal))
            {
                failed.Add($"{about}: {answer.Status}");
            }
        }
        catch (Exception fault) when (fault is HttpRequestException or JsonException or IOException)
        {
            failed.Add($"{about}: {fault.Message}");
        }
    }

    private static IEnumerable<object[]> Numbers(JsonNode? node) => node switch
    {
        JsonObject record => record.SelectMany(m => Below(m.Key, m.Value)),
        JsonArray list => list.SelectMany((element, i) => Below(i, element)),
        JsonValue value when value.GetValueKind() == JsonValueKind.Number => [[]],
        _ => [],
    };

    private static IEnumerable<object[]> Below(object token, JsonNode? node) => Numbers(node).Select(place => (object[])[token, .. place]);

    // The object model changes numbers such as 1e-320, so the text replaces a placeholder.
    private static string With(JsonNode request, object[] place, string number)
    {
        const string Mark = "\"put the number here\"";
        var copy = request.DeepClone();
        var parent = place[..^1].Aggregate(copy, static (at, token) => token is int i ? at[i]! : at[(string)token]!);
        var mark = JsonNode.Parse(Mark);
        if (place[^1] is int index)
        {
            parent[index] = mark;
        }
        else
        {
            parent[(string)place[^1]] = mark;
        }

        return copy.ToJsonString().Replace(Mark, number, StringComparison.Ordinal);
    }
}
