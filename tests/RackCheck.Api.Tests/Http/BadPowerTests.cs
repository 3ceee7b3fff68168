namespace RackCheck.Api.Tests.Http;

/// <summary>Impossible power data gets a problem with a pointer. Possible but wrong power data gets findings.</summary>
public sealed class BadPowerTests(Service service) : IClassFixture<Service>
{
    private const string Supplies = """
        "supplies": [ { "id": "A", "voltageV": 230, "phases": 1, "ratedA": 16 }, { "id": "B", "voltageV": 230, "phases": 3, "ratedA": 32 } ]
        """;

    private const string Units = """
         "pdus": [
           { "id": "a", "supply": "A", "ratedA": 16,
             "groups": [ { "id": "g", "outlets": [ { "socket": "C13", "count": 4 }, { "socket": "C19", "count": 1 } ] } ] },
           { "id": "b", "supply": "B", "ratedA": 16, "groups": [ { "id": "g", "phase": "L2", "outlets": [ { "socket": "C13", "count": 4 } ] } ] } ]
        """;

    private const string Items = """
         "items": [
           { "id": "one", "heightU": 2, "power": { "plugs": [ "C14" ] }, "ups": { "feeds": [ "b" ] } },
           { "id": "two", "heightU": 2, "power": { "plugs": [ "C14", "IEC60309-16A-3P" ] } } ]
        """;

    [Theory]
    [InlineData(""" "supply": "none", "ratedA": 16 """, "/pdus/0/supply", "unknown-id")]
    [InlineData(""" "supply": "A", "ratedA": 0 """, "/pdus/0/ratedA", "out-of-range")]
    [InlineData(""" "ratedA": 16 """, "/pdus/0/supply", "missing-member")]
    public async Task Pdu_without_existing_supply_or_rating_is_refused(string members, string pointer, string code) =>
        await Refused(
            Rack(
                units: $$""" "pdus": [ { "id": "a", {{members}}, "groups": [ { "id": "g", "outlets": [ { "socket": "C13", "count": 4 } ] } ] } ] """,
                items: """ "items": [] """),
            pointer,
            code);

    [Theory]
    [InlineData(""" "outlets": [] """, "/pdus/0/groups/0/outlets", "wrong-count")]
    [InlineData(""" "outlets": [ { "socket": "C13", "count": 0 } ] """, "/pdus/0/groups/0/outlets/0/count", "out-of-range")]
    [InlineData(""" "phase": "L2", "outlets": [ { "socket": "C13", "count": 1 } ] """, "/pdus/0/groups/0/phase", "inconsistent")]
    [InlineData(""" "phase": "L4", "outlets": [ { "socket": "C13", "count": 1 } ] """, "/pdus/0/groups/0/phase", "unknown-value")]
    [InlineData(""" "breakerA": -1, "outlets": [ { "socket": "C13", "count": 1 } ] """, "/pdus/0/groups/0/breakerA", "out-of-range")]
    public async Task Group_without_outlets_or_on_missing_phase_is_refused(string members, string pointer, string code) =>
        await Refused(
            Rack(
                units: $$""" "pdus": [ { "id": "a", "supply": "A", "ratedA": 16, "groups": [ { "id": "g", {{members}} } ] } ] """,
                items: """ "items": [] """),
            pointer,
            code);

    // IEC 60038: 230 V to neutral, 400 V between two lines; 240 and 415 V before. The contract has what an outlet sees.
    [Theory]
    [InlineData("eu", 400, 3, "400 V is between two lines. State what an outlet of supply A has between a line and neutral: 231 V.")]
    [InlineData("uk", 415, 3, "415 V is between two lines. State what an outlet of supply A has between a line and neutral: 240 V.")]
    [InlineData("eu", 230, 3, null)]
    [InlineData("eu", 400, 1, null)]
    [InlineData("na", 400, 3, null)]
    public async Task Voltage_between_two_lines_is_refused_where_outlets_have_that_to_neutral(string region, int voltage, int phases, string? detail)
    {
        var supplies = $$"""[ { "id": "A", "voltageV": {{voltage}}, "phases": {{phases}}, "ratedA": 16 } ]""";
        var site = $$"""{ "region": "{{region}}" }""";
        var rack = $$"""{ "cabinet": { "heightU": 42, "widthMm": 600, "depthMm": 800 }, "items": [], "supplies": {{supplies}}, "site": {{site}} }""";
        var basket = $$"""{ "lines": [ { "partNumber": "QWL-SRV-2", "quantity": 1 } ], "supplies": {{supplies}}, "site": {{site}} }""";
        foreach (var (path, body) in ((string, string)[])[("/v1/checks", rack), ("/v1/baskets/checks", basket)])
        {
            var answer = await service.PostAsync(body, path);
            Assert.Equal(detail is null ? 200 : 422, answer.Status);
            if (detail is not null)
            {
                var error = Assert.Single(answer.Json["errors"]!.AsArray())!;
                Assert.Equal(("/supplies/0/voltageV", "inconsistent", detail), ((string?)error["pointer"], (string?)error["code"], (string?)error["detail"]));
            }
        }
    }

    [Theory]
    [InlineData(""" "powerFactor": 0 """, "/items/0/power/powerFactor", "out-of-range")]
    [InlineData(""" "powerFactor": 1.01 """, "/items/0/power/powerFactor", "out-of-range")]
    [InlineData(""" "ratedW": -1 """, "/items/0/power/ratedW", "out-of-range")]
    [InlineData(""" "plugs": [ "C12" ] """, "/items/0/power/plugs/0", "unknown-value")]
    [InlineData(""" "voltageV": 0 """, "/items/0/power/voltageV", "out-of-range")]
    public async Task Item_with_impossible_power_is_refused(string members, string pointer, string code) =>
        await Refused(Rack(items: $$""" "items": [ { "id": "one", "heightU": 2, "power": { {{members}} } } ] """), pointer, code);

    [Theory]
    [InlineData(""" { "item": "two", "plug": 1, "pdu": "a", "group": "g" } """, "/connections/0/group", "inconsistent")] // three phases on one
    [InlineData(""" { "item": "two", "plug": 2, "pdu": "a", "group": "g" } """, "/connections/0/plug", "unknown-id")]
    [InlineData(""" { "item": "two", "pdu": "a", "group": "h" } """, "/connections/0/group", "unknown-id")]
    [InlineData(""" { "item": "two", "pdu": "c", "group": "g" } """, "/connections/0/pdu", "unknown-id")]
    [InlineData(""" { "item": "one", "pdu": "b", "group": "g" } """, "/items/0/ups/feeds", "inconsistent")] // a loop of one
    public async Task Cord_in_impossible_group_is_refused(string connection, string pointer, string code) =>
        await Refused(Rack(more: $$""", "connections": [ {{connection}} ] """), pointer, code);

    [Fact]
    public async Task Loop_of_two_ups_is_refused_and_chain_is_accepted()
    {
        const string Two = """
             "items": [
               { "id": "one", "heightU": 2, "power": { "plugs": [ "C14" ] }, "ups": { "feeds": [ "b" ] } },
               { "id": "two", "heightU": 2, "power": { "plugs": [ "C14" ] }, "ups": { "feeds": [ "a" ] } } ]
            """;
        const string Chain = """ { "item": "two", "pdu": "b", "group": "g" } """;
        Assert.Equal(200, (await service.PostAsync(Rack(items: Two, more: $$""", "connections": [ {{Chain}} ] """))).Status);
        await Refused(
            Rack(items: Two, more: $$""", "connections": [ {{Chain}}, { "item": "one", "pdu": "a", "group": "g" } ] """),
            "/items/0/ups/feeds",
            "inconsistent");
    }

    [Fact]
    public async Task Pdu_fed_from_two_ups_is_refused() =>
        await Refused(
            Rack(items: """
                "items": [ { "id": "one", "heightU": 2, "ups": { "feeds": [ "b" ] } }, { "id": "two", "heightU": 2, "ups": { "feeds": [ "a", "b" ] } } ]
                """),
            "/items/1/ups/feeds/1",
            "inconsistent");

    [Fact]
    public async Task Supply_with_two_phases_is_refused() =>
        await Refused(
            """
            { "cabinet": { "heightU": 12, "widthMm": 600, "depthMm": 800 }, "items": [],
              "supplies": [ { "id": "A", "voltageV": 230, "phases": 2, "ratedA": 16 } ] }
            """,
            "/supplies/0/phases",
            "out-of-range");

    private static string Rack(string supplies = Supplies, string units = Units, string items = Items, string more = "") =>
        $$"""{ "cabinet": { "heightU": 12, "widthMm": 600, "depthMm": 800 }, {{items}}, {{supplies}}, {{units}} {{more}} }""";

    private async Task Refused(string body, string pointer, string code)
    {
        var answer = await service.PostAsync(body);
        answer.IsProblem(422);
        Assert.Contains((pointer, code), answer.Faults);
    }
}
