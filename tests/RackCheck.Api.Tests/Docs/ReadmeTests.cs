using System.Text.Json.Nodes;
using RackCheck.Model;
using RackCheck.Rules;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Docs;

/// <summary>The README agrees with the rules and responses of the service.</summary>
public sealed class ReadmeTests(Service service) : IClassFixture<Service>
{
    private const string Head = "| --- | --- | --- |\n";

    private static string Readme => Repository.Read("README.md");

    [Fact]
    public void RuleList_equals_the_descriptors()
    {
        string[] rows = [.. RuleSet.Default.All.Select(r => r.Descriptor).Select(r => $"| `{r.Id}` | {r.What} | {Mark(r)} |")];
        var (before, after) = (Readme.Split("<!-- /rules -->")[0], Readme.Split("<!-- /rules -->")[1]);
        var start = before.LastIndexOf(Head, StringComparison.Ordinal) + Head.Length;
        if (Repository.IsRegenerating)
        {
            File.WriteAllText(Repository.PathOf("README.md"), $"{before[..start]}{string.Join('\n', rows)}\n<!-- /rules -->{after}");
            return;
        }

        Assert.Equal(rows, before[start..].TrimEnd().Split('\n'));
    }

    [Fact]
    public void DevelopersPage_is_short() =>
        Assert.InRange(Repository.Read("DEVELOPERS.md").Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Length, 1, 1200);

    [Fact]
    public async Task ExampleResponse_equals_the_response()
    {
        var answer = await service.PostAsync(Repository.Read("openapi", "examples", "rack-doors-do-not-close.json"));
        var finding = answer.Json["findings"]![0]!;
        Assert.Contains(finding["message"]!.GetValue<string>(), Readme, StringComparison.Ordinal);
        Assert.Contains($"\"calculation\": \"{finding["calculation"]!.GetValue<string>()}\"", Readme, StringComparison.Ordinal);
        var quoted = Readme.Split("\"patch\": ")[1].Split(" },\n")[0];
        Assert.True(JsonNode.DeepEquals(finding["remedies"]![0]!["patch"], JsonNode.Parse(quoted)));
    }

    [Fact]
    public async Task Fourteen_items_of_the_README_become_a_rack_in_one_request()
    {
        const string Example = "openapi/examples/proposal-fourteen-items.json";
        Assert.Contains($"--data @{Example} http://localhost:5080/v1/proposals", Readme, StringComparison.Ordinal);
        var answer = await service.PostAsync(Repository.Read(Example.Split('/')), "/v1/proposals");
        var alternatives = answer.Json["alternatives"]!.AsArray();
        Assert.NotEmpty(alternatives);
        Assert.All(alternatives, a => Assert.NotEqual("hold", a!["report"]!["verdicts"]!["product"]!.GetValue<string>()));
        Assert.Equal(14, JsonNode.Parse(Repository.Read(Example.Split('/')))!["items"]!.AsArray().Count);
    }

    [Fact]
    public async Task Picture_is_the_drawing_of_the_example()
    {
        string[] path = ["openapi", "elevation.svg"];
        var answer = await service.PostAsync(Repository.Read("openapi", "examples", "rack-power-and-earth.json"), "/v1/elevations");
        if (Repository.IsRegenerating)
        {
            await File.WriteAllTextAsync(Repository.PathOf(path), answer.Text);
        }

        Assert.Equal(Repository.Read(path).ReplaceLineEndings("\n"), answer.Text);
        Assert.Contains("](openapi/elevation.svg)", Readme, StringComparison.Ordinal);
        Assert.Contains("examples/rack-power-and-earth.json http://localhost:5080/v1/elevations", Readme, StringComparison.Ordinal);
    }

    private static string Mark(RuleDescriptor rule) =>
        (rule.MilderSeverity == Severity.Warning ? "W/" : "") + rule.Severity.ToString()[0] + (rule.Safety ? " S" : "");
}
