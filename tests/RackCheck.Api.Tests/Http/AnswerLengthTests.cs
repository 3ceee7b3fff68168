using System.Text;
using System.Text.Json.Nodes;
using RackCheck.Api.Http;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Rules;

namespace RackCheck.Api.Tests.Http;

/// <summary>The response length is limited for any number of findings, and omitted findings are counted.</summary>
public sealed class AnswerLengthTests(Service service) : IClassFixture<Service>
{
    private const int MostBytes = 2_000_000;
    private const string Cabinet = """
        "cabinet": { "heightU": 42, "widthMm": 600, "depthMm": 600, "uprights": { "frontSetbackMm": 20, "spacingMm": 100, "hole": "round" } }
        """;

    [Fact]
    public async Task Two_hundred_items_on_one_U_are_one_overlap()
    {
        var items = string.Join(",", Enumerable.Range(0, 200).Select(i => $$"""{ "id": "i{{i}}", "heightU": 1, "position": { "u": 10 } }"""));
        var answer = await service.PostAsync($$"""{ {{Cabinet}}, "items": [ {{items}} ] }""");
        Assert.Equal(200, answer.Status);
        var overlap = Assert.Single(answer.Json["findings"]!.AsArray(), f => f!["rule"]!.GetValue<string>() == "layout.overlap");
        Assert.Equal(200, overlap!["pointers"]!.AsArray().Count);
        Assert.Equal(200, overlap["actual"]!["value"]!.GetValue<double>());
        Assert.Equal("hold", answer.Json["verdict"]!.GetValue<string>());
    }

    [Fact]
    public async Task Findings_past_two_hundred_of_a_rule_are_counted()
    {
        // 800 cords in outlets that do not fit, one finding each.
        var items = string.Join(",", Enumerable.Range(0, 100).Select(i =>
            $$"""{ "id": "i{{i}}", "heightU": 0, "power": { "ratedW": 10, "plugs": [ {{string.Join(",", Enumerable.Repeat("\"C20\"", 8))}} ] } }"""));
        var cords = string.Join(",", Enumerable.Range(0, 800).Select(i => $$"""{ "item": "i{{i / 8}}", "plug": {{i % 8}}, "pdu": "p", "group": "g" }"""));
        var answer = await service.PostAsync($$"""
            { {{Cabinet}}, "items": [ {{items}} ],
              "supplies": [ { "id": "s", "voltageV": 230, "ratedA": 16 } ],
              "pdus": [ { "id": "p", "supply": "s", "ratedA": 16, "groups": [ { "id": "g", "outlets": [ { "socket": "C13", "count": 100 } ] } ] } ],
              "connections": [ {{cords}} ] }
            """);
        Assert.Equal(200, answer.Status);
        var counts = Counts(answer.Json);
        Assert.Equal(200, counts["power.plug-mismatch"]);
        Assert.Equal(600, Omitted(answer.Json)["power.plug-mismatch"]);
        Assert.All(counts, c => Assert.InRange(c.Value, 1, 200));
        Assert.InRange(Encoding.UTF8.GetByteCount(answer.Text), 1, MostBytes);
    }

    [Fact]
    public async Task Rack_full_of_defects_has_answer_of_at_most_two_megabytes()
    {
        // Ids of maximum length, of characters with three bytes each. Nearly every rule for items has a finding for every item.
        static string Id(int i) => new string('\u4e2d', 60) + i.ToString("D4", System.Globalization.CultureInfo.InvariantCulture);
        var items = string.Join(",", Enumerable.Range(0, 50).Select(i => $$"""
            { "id": "{{Id(i)}}", "heightU": 1, "position": { "u": {{(i % 100) - 20}}, "face": "{{(i % 2 == 0 ? "front" : "rear")}}" },
              "body": { "widthMm": 470, "heightMm": 100, "depthMm": 900 },
              "massKg": 90, "fixing": "cage-nut",
              "support": { "style": "slides", "ratedKg": 10, "minSpacingMm": 700, "maxSpacingMm": 800, "usedExtended": true },
              "earthStud": true, "console": true,
              "power": { "ratedW": 5000, "leakageMa": 20, "inrushA": 500, "redundant": true, "plugs": ["C14","C14","C14","C14"] },
              "heatW": 5000,
              "earthLead": { "crossSectionMm2": 0.5, "lengthM": 0.01 },
              "airflow": { "direction": "{{(i % 3 == 0 ? "side" : i % 3 == 1 ? "front-to-rear" : "rear-to-front")}}", "flowM3h": 10 }, "maxInletC": 20 }
            """));
        var pdus = string.Join(",", Enumerable.Range(0, 32).Select(i =>
            $$"""{ "id": "{{Id(i)}}", "supply": "s{{i % 16}}", "ratedA": 1, "groups": [ { "id": "g", "outlets": [ { "socket": "C13", "count": 8 } ] } ] }"""));
        var supplies = string.Join(",", Enumerable.Range(0, 16).Select(i => $$"""{ "id": "s{{i}}", "voltageV": 230, "ratedA": 1, "rcdMa": 10 }"""));
        var cords = string.Join(
            ",", Enumerable.Range(0, 200).Select(i => $$"""{ "item": "{{Id(i / 4)}}", "plug": {{i % 4}}, "pdu": "{{Id(i % 32)}}", "group": "g" }"""));
        var answer = await service.PostAsync($$"""
            { {{Cabinet}}, "items": [ {{items}} ], "supplies": [ {{supplies}} ], "pdus": [ {{pdus}} ], "connections": [ {{cords}} ],
              "site": { "region": "eu", "remote": true, "ambientMaxC": 40 } }
            """);
        Assert.True(answer.Status == 200, answer.Text);
        Assert.InRange(Encoding.UTF8.GetByteCount(answer.Text), 100_000, MostBytes);
        Assert.Equal("hold", answer.Json["verdict"]!.GetValue<string>());
        Assert.All(answer.Json["notAssessed"]!.AsArray(), n => Assert.NotEqual("failed", n!["reason"]!.GetValue<string>()));
    }

    [Fact]
    public void Report_that_is_too_long_counts_its_last_findings()
    {
        var rack = new RackDescription
        {
            Cabinet = new Cabinet { HeightU = 42, WidthMm = 600, DepthMm = 800 },
            Items = [.. Enumerable.Range(0, 40).Select(i => new Item { Id = $"i{i}", HeightU = 1, Position = new Position { U = 50 + i } })],
        };
        var report = new RackChecker(RuleSet.Default, (_, _) => { }).Check(rack);
        var before = JsonAnswer.Length(report, ContractJson.Default.CheckReport);
        var shorter = ReportLength.Shorten(report, before / 4);
        Assert.InRange(JsonAnswer.Length(shorter, ContractJson.Default.CheckReport), 1, before - (before / 4));
        Assert.Equal(report.Findings.Take(shorter.Findings.Count), shorter.Findings);
        Assert.Equal(report.Findings.Count, shorter.Findings.Count + shorter.FindingsOmitted!.Sum(o => o.Count));
        Assert.Equal(report.Verdict, shorter.Verdict);
    }

    [Fact]
    public async Task Two_hundred_bare_items_have_a_short_answer()
    {
        var items = string.Join(
            ",",
            Enumerable.Range(0, 200).Select(i => $$"""{ "id": "{{new string('\u4e2d', 60)}}{{i}}", "heightU": 1, "power": { "plugs": ["C14"] } }"""));
        var answer = await service.PostAsync($$"""{ {{Cabinet}}, "items": [ {{items}} ] }""");
        Assert.Equal(200, answer.Status);
        Assert.InRange(Encoding.UTF8.GetByteCount(answer.Text), 1, MostBytes);
    }

    private static Dictionary<string, int> Counts(JsonNode report) =>
        report["findings"]!.AsArray().CountBy(f => f!["rule"]!.GetValue<string>()).ToDictionary(StringComparer.Ordinal);

    private static Dictionary<string, int> Omitted(JsonNode report) =>
        report["findingsOmitted"]!.AsArray().ToDictionary(o => o!["rule"]!.GetValue<string>(), o => o!["count"]!.GetValue<int>(), StringComparer.Ordinal);
}
