using System.Text.Json.Nodes;

namespace RackCheck.Api.Tests.Acceptance;

/// <summary>The reports of all rack cases, each posted once to the service in this process.</summary>
public sealed class RackReports : IAsyncLifetime
{
    private readonly Service service = new();
    private readonly Dictionary<string, JsonNode> reports = [];

    /// <summary>The report of a case.</summary>
    public JsonNode Of(RackCase @case) => reports[@case.Name];

    /// <summary>Rule and severity of each finding, without repetitions, in the order of the report.</summary>
    public (string Rule, string Severity, int Count)[] Findings(RackCase @case) =>
    [
        .. Of(@case)["findings"]!.AsArray().Select(f => (Rule: f!["rule"]!.GetValue<string>(), Severity: f["severity"]!.GetValue<string>()))
            .GroupBy(f => f).Select(g => (g.Key.Rule, g.Key.Severity, g.Count())),
    ];

    /// <summary>The verdict of a concern.</summary>
    public string Verdict(RackCase @case, string concern) => Of(@case)["verdicts"]![concern]!.GetValue<string>();

    /// <summary>Rules that wait for missing data.</summary>
    public string[] Asked(RackCase @case) => [.. Of(@case)["notAssessed"]!.AsArray().Select(n => n!["rule"]!.GetValue<string>()).Distinct()];

    public async Task InitializeAsync()
    {
        foreach (var @case in RackCase.All)
        {
            var answer = await service.PostAsync(@case.Rack().ToJsonString());
            Assert.True(answer.Status == 200, $"{@case.Name} is refused: {answer.Text}");
            reports[@case.Name] = answer.Json;
        }
    }

    public async Task DisposeAsync() => await service.DisposeAsync();
}
