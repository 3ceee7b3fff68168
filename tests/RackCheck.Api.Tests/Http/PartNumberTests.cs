using System.Text.Json.Nodes;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Http;

public sealed class PartNumberTests(Service service) : IClassFixture<Service>
{
    [Fact]
    public async Task Rack_with_part_numbers_is_checked()
    {
        var answer = await service.PostAsync(Repository.Read("openapi", "examples", "rack-part-numbers.json"));
        Assert.Equal(200, answer.Status);
        var rules = answer.Json["findings"]!.AsArray().Select(f => f!["rule"]!.GetValue<string>()).ToHashSet();
        Assert.Subset(rules, new HashSet<string> { "catalogue.unknown-part", "catalogue.contradiction", "layout.overlap" });
        Assert.Contains("/cabinet/partNumber", Assumed(answer));
        Assert.StartsWith("sha-256:", answer.Json["resolvedDigest"]!.GetValue<string>(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task AppliedRemedies_keep_unaffected_part_numbers()
    {
        var answer = await service.PostAsync(Repository.Read("openapi", "examples", "rack-part-numbers.json"), "/v1/checks?apply=remedies");
        Assert.Equal(200, answer.Status);
        var rack = answer.Json["applied"]!["rack"]!;
        Assert.Equal("QWL-PC-410", rack["items"]![1]!["partNumber"]!.GetValue<string>());
        Assert.Null(rack["items"]![1]!["massKg"]);
        Assert.DoesNotContain(answer.Json["findings"]!.AsArray(), f => f!["rule"]!.GetValue<string>() is "catalogue.unknown-part" or "layout.overlap");
    }

    [Fact]
    public async Task Contradiction_with_product_data_is_a_fault_with_pointer()
    {
        var rack = JsonNode.Parse("""
            {
              "cabinet": { "partNumber": "QWL-CAB-42-8-10" },
              "items": [ { "id": "wave-pc", "partNumber": "QWL-PC-410", "position": { "u": 1 } } ],
              "supplies": [ { "id": "A", "voltageV": 230, "ratedA": 16 } ],
              "pdus": [ { "id": "strip", "supply": "A", "partNumber": "QWL-DU-16-V" } ],
              "connections": [ { "item": "wave-pc", "plug": 6, "pdu": "strip", "group": "no-such-group" } ]
            }
            """)!;
        var answer = await service.PostAsync(rack.ToJsonString());
        answer.IsProblem(422);
        Assert.Equal(["/connections/0/group", "/connections/0/plug"], answer.Faults.Select(f => f.Pointer));
        rack["connections"]![0]!["plug"] = 0;
        rack["connections"]![0]!["group"] = "g1";
        Assert.Equal(200, (await service.PostAsync(rack.ToJsonString())).Status);
    }

    [Fact]
    public async Task Door_and_earth_bar_part_numbers_are_looked_up()
    {
        var answer = await service.PostAsync("""
            {
              "cabinet": { "partNumber": "QWL-CAB-42-6-10", "rearDoor": { "partNumber": "QWL-DOR-42-6RS" },
                "earthBar": { "partNumber": "QWL-EBR-24" }, "frontDoor": { "partNumber": "QWL-DOR-42-8FG" } },
              "items": []
            }
            """);
        Assert.Equal(200, answer.Status);
        string[] filled = ["/cabinet/partNumber", "/cabinet/frontDoor/partNumber", "/cabinet/rearDoor/partNumber", "/cabinet/earthBar/partNumber"];
        Assert.Subset(Assumed(answer).ToHashSet(), filled.ToHashSet());
        var misfit = Assert.Single(answer.Json["findings"]!.AsArray(), f => f!["rule"]!.GetValue<string>() == "catalogue.contradiction")!;
        Assert.Equal(
            "Part number QWL-DOR-42-8FG of the front door is made for cabinets 800 mm wide, but the cabinet is 600 mm wide.",
            misfit["message"]!.GetValue<string>());
    }

    [Theory]
    [InlineData("""{ "cabinet": { "heightU": 42 }, "items": [] }""", "/cabinet/widthMm")]
    [InlineData("""{ "cabinet": { "partNumber": "QWL-CAB-42-8-10" }, "items": [ { "id": "a" } ] }""", "/items/0/heightU")]
    [InlineData("""{ "cabinet": { "heightU": 42, "widthMm": 600, "depthMm": 800, "rearDoor": { "bonded": true } }, "items": [] }""", "/cabinet/rearDoor/style")]
    public async Task Required_member_without_part_number_is_a_fault(string rack, string pointer)
    {
        var answer = await service.PostAsync(rack);
        answer.IsProblem(422);
        Assert.Contains(answer.Faults, f => f == (pointer, "missing-member"));
    }

    [Fact]
    public async Task Rack_of_unknown_part_numbers_is_held_and_not_assessed()
    {
        var answer = await service.PostAsync("""
            { "cabinet": { "partNumber": "QWL-NO-1" }, "items": [ { "id": "a", "partNumber": "QWL-NO-2" } ],
              "acceptances": [ { "rule": "layout.reserve", "pointer": "/cabinet", "reason": "r", "acceptedBy": "b" } ] }
            """);
        Assert.Equal((200, "hold"), (answer.Status, answer.Json["verdict"]!.GetValue<string>()));
        Assert.Equal(2, answer.Json["findings"]!.AsArray().Count);
        Assert.True(answer.Json["notAssessed"]!.AsArray().Count > 70);
    }

    private static IEnumerable<string> Assumed(Answer answer) =>
        answer.Json["assumptions"]!.AsArray().SelectMany(a => a!["pointers"]!.AsArray().Select(p => p!.GetValue<string>()));
}
