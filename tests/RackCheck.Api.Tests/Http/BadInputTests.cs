using System.Text;

namespace RackCheck.Api.Tests.Http;

/// <summary>Any bad input gets a problem with a pointer, never status 500 and never a hang.</summary>
public sealed class BadInputTests(Service service) : IClassFixture<Service>
{
    private const string Cabinet = """ "cabinet": { "heightU": 42, "widthMm": 600, "depthMm": 800 } """;

    // The theory data holds names only, since the test runner writes out all data and some bodies are megabytes long.
    private static readonly Dictionary<string, (byte[] Body, int Status)> Bodies = new()
    {
        ["empty"] = ([], 400),
        ["white space"] = ("  \n "u8.ToArray(), 400),
        ["null"] = ("null"u8.ToArray(), 422),
        ["array"] = ("[]"u8.ToArray(), 422),
        ["number"] = ("42"u8.ToArray(), 422),
        ["string"] = ("\"rack\""u8.ToArray(), 422),
        ["empty object"] = ("{}"u8.ToArray(), 422),
        ["half an object"] = ("{\"items\": ["u8.ToArray(), 400),
        ["trailing text"] = (Encoding.UTF8.GetBytes("{" + Cabinet + ", \"items\": [] } x"), 400),
        ["two documents"] = (Encoding.UTF8.GetBytes("{" + Cabinet + ", \"items\": [] }{}"), 400),
        ["trailing comma in object"] = (Encoding.UTF8.GetBytes("{" + Cabinet + ", \"items\": [], }"), 400),
        ["trailing comma in array"] = (Encoding.UTF8.GetBytes("{" + Cabinet + ", \"items\": [ {\"id\":\"a\"}, ] }"), 400),
        ["comment"] = (Encoding.UTF8.GetBytes("{" + Cabinet + ", /* none */ \"items\": [] }"), 400),
        ["single quotes"] = ("{'items': []}"u8.ToArray(), 400),
        ["NaN"] = (Encoding.UTF8.GetBytes("{" + Cabinet + ", \"items\": [ { \"id\": \"a\", \"heightU\": 1, \"massKg\": NaN } ] }"), 400),
        ["Infinity"] = (Encoding.UTF8.GetBytes("{" + Cabinet + ", \"items\": [ { \"id\": \"a\", \"heightU\": 1, \"massKg\": Infinity } ] }"), 400),
        ["leading zero"] = (Encoding.UTF8.GetBytes("{" + Cabinet + ", \"items\": [ { \"id\": \"a\", \"heightU\": 01 } ] }"), 400),
        ["no UTF-8"] = ([.. "{\"reference\": \""u8, 0xff, 0xfe, .. "\"}"u8], 400),
        ["overlong UTF-8"] = ([.. "{\"reference\": \""u8, 0xc0, 0xaf, .. "\"}"u8], 400),
        ["surrogate as UTF-8"] = ([.. "{\"reference\": \""u8, 0xed, 0xa0, 0x80, .. "\"}"u8], 400),
        ["UTF-16"] = (Encoding.Unicode.GetBytes("{" + Cabinet + ", \"items\": [] }"), 400),
        ["UTF-16 with mark"] = ([0xff, 0xfe, .. Encoding.Unicode.GetBytes("{}")], 400),
        ["zero bytes"] = (new byte[1000], 400),
        ["10 MB of ["] = (Filled(10_000_000, (byte)'['), 413),
        ["half a megabyte of ["] = (Filled(500_000, (byte)'['), 400),
        ["depth 1,000"] = (Encoding.UTF8.GetBytes("{\"items\":" + new string('[', 1000) + new string(']', 1000) + "}"), 422),
        ["depth 1,000 of objects"] = (Encoding.UTF8.GetBytes(string.Concat(Enumerable.Repeat("{\"cabinet\":", 1000)) + "1" + new string('}', 1000)), 422),
        ["depth 33"] = (Encoding.UTF8.GetBytes("{\"items\":" + new string('[', 32) + new string(']', 32) + "}"), 422),
        ["100,000 items"] = (WithItems(100_000), 413),
        ["20,000 items"] = (WithItems(20_000), 422),
        ["100,000 nulls"] = (Encoding.UTF8.GetBytes("{" + Cabinet + ", \"items\": [" + string.Join(",", Enumerable.Repeat("null", 100_000)) + "] }"), 422),
        ["100,000 unknown members"] = (Encoding.UTF8.GetBytes("{" + string.Join(",", Enumerable.Range(0, 60_000).Select(i => $"\"m{i}\":0")) + "}"), 422),
        ["id of 1 MB"] = (Encoding.UTF8.GetBytes("{" + Cabinet + ", \"items\": [ { \"id\": \"" + new string('x', 1_000_000) + "\", \"heightU\": 1 } ] }"), 422),
        ["member name of 1 MB"] = (Encoding.UTF8.GetBytes("{ \"" + new string('x', 1_000_000) + "\": 1 }"), 422),
    };

    private static byte[] WithItems(int count)
    {
        var items = string.Join(",", Enumerable.Range(0, count).Select(i => $"{{\"id\":\"i{i}\",\"heightU\":1}}"));
        return Encoding.UTF8.GetBytes("{" + Cabinet + ", \"items\": [" + items + "] }");
    }

    public static TheoryData<string> BodyNames => [.. Bodies.Keys];

    [Theory(Timeout = 60_000)]
    [MemberData(nameof(BodyNames))]
    public async Task BadBody_gets_a_problem(string name)
    {
        var (body, status) = Bodies[name];
        var answer = await service.PostAsync(body);
        answer.IsProblem(status);
        Assert.True(answer.Text.Length < 1_200_000, $"{name}: {answer.Text.Length} characters");
        if (status != 413)
        {
            Assert.NotEmpty(answer.Faults);
        }
    }

    [Theory]
    [InlineData("\"massKg\": 1e999", "/items/0/massKg", "out-of-range")]
    [InlineData("\"massKg\": -1e999", "/items/0/massKg", "out-of-range")]
    [InlineData("\"massKg\": 123456789012345678901234567890", "/items/0/massKg", "out-of-range")]
    [InlineData("\"position\": { \"u\": 99999999999999999999 }", "/items/0/position/u", "out-of-range")]
    [InlineData("\"position\": { \"u\": 2147483648 }", "/items/0/position/u", "out-of-range")]
    [InlineData("\"position\": { \"u\": 1.5 }", "/items/0/position/u", "wrong-type")]
    [InlineData("\"position\": { \"u\": \"1\" }", "/items/0/position/u", "wrong-type")]
    [InlineData("\"position\": { }", "/items/0/position/u", "missing-member")]
    [InlineData("\"position\": { \"u\": null }", "/items/0/position/u", "null-value")]
    [InlineData("\"position\": [ ]", "/items/0/position", "wrong-type")]
    [InlineData("\"position\": { \"u\": 1, \"face\": \"Front\" }", "/items/0/position/face", "unknown-value")]
    [InlineData("\"position\": { \"u\": 1, \"face\": \"front, rear\" }", "/items/0/position/face", "unknown-value")]
    [InlineData("\"position\": { \"u\": 1, \"face\": 0 }", "/items/0/position/face", "wrong-type")]
    [InlineData("\"massKg\": \"12\"", "/items/0/massKg", "wrong-type")]
    [InlineData("\"massKg\": true", "/items/0/massKg", "wrong-type")]
    [InlineData("\"massKg\": 1, \"massKg\": 2", "/items/0/massKg", "duplicate-member")]
    [InlineData("\"MassKg\": 1", "/items/0/MassKg", "unknown-member")]
    [InlineData("\"a/b~c\": 1", "/items/0/a~1b~0c", "unknown-member")]
    [InlineData("\"description\": \"\\ud800\"", "/items/0/description", "wrong-form")]
    [InlineData("\"description\": \"\\udc00 x\"", "/items/0/description", "wrong-form")]
    [InlineData("\"\\ud800\": 1", "/items/0", "wrong-form")]
    [InlineData("\"description\": \"a\\u0000b\"", "/items/0/description", "wrong-form")]
    [InlineData("\"description\": 7", "/items/0/description", "wrong-type")]
    [InlineData("\"earthStud\": \"yes\"", "/items/0/earthStud", "wrong-type")]
    [InlineData("\"cables\": [ null ]", "/items/0/cables/0", "null-value")]
    [InlineData("\"cables\": { }", "/items/0/cables", "wrong-type")]
    [InlineData("\"cables\": [ { \"diameterMm\": 6 } ]", "/items/0/cables/0/count", "missing-member")]
    [InlineData("\"cables\": [ { \"diameterMm\": 0, \"count\": 1 } ]", "/items/0/cables/0/diameterMm", "out-of-range")]
    [InlineData("\"power\": { \"plugs\": [ \"C14\", \"c14\" ] }", "/items/0/power/plugs/1", "unknown-value")]
    [InlineData("\"power\": { \"powerFactor\": 0 }", "/items/0/power/powerFactor", "out-of-range")]
    [InlineData("\"onShelf\": \"nowhere\"", "/items/0/onShelf", "unknown-id")]
    [InlineData("\"partNumber\": \"\"", "/items/0/partNumber", "wrong-length")]
    [InlineData("\"quantity\": 2", "/items/0/quantity", "not-here")]
    [InlineData("\"support\": { \"minSpacingMm\": 700, \"maxSpacingMm\": 600 }", "/items/0/support/minSpacingMm", "inconsistent")]
    [InlineData("\"ups\": { \"feeds\": [ \"strip\" ] }", "/items/0/ups/feeds/0", "unknown-id")]
    public async Task BadMember_of_item_is_named(string member, string pointer, string code)
    {
        var answer = await service.PostAsync($$"""{ {{Cabinet}}, "items": [ { "id": "a", "heightU": 1, {{member}} } ] }""");
        answer.IsProblem(422);
        Assert.Equal((pointer, code), Assert.Single(answer.Faults));
    }

    [Theory]
    [InlineData("\"reference\": \"bay\\u001b[31m\"", "/reference", "wrong-form")]
    [InlineData("\"cabinet\": { \"widthMm\": 600, \"depthMm\": 800 }", "/cabinet/heightU", "missing-member")]
    [InlineData("\"cabinet\": { \"heightU\": 61, \"widthMm\": 600, \"depthMm\": 800 }", "/cabinet/heightU", "out-of-range")]
    [InlineData("\"cabinet\": { \"heightU\": 42, \"widthMm\": 600, \"depthMm\": 800, \"ipCode\": \"IP7\" }", "/cabinet/ipCode", "wrong-form")]
    [InlineData("\"cabinet\": { \"heightU\": 42, \"widthMm\": 600, \"depthMm\": 800, \"frontDoor\": { } }", "/cabinet/frontDoor/style", "missing-member")]
    [InlineData("\"supplies\": [ { \"id\": \"A\", \"voltageV\": 230, \"ratedA\": 16, \"phases\": 2 } ]", "/supplies/0/phases", "out-of-range")]
    [InlineData(
        "\"pdus\": [ { \"id\": \"p\", \"supply\": \"A\", \"ratedA\": 16, \"groups\": [ { \"id\": \"g\", \"outlets\": [ { "
        + "\"socket\": \"C13\", \"count\": 4 } ] } ] } ]",
        "/pdus/0/supply",
        "unknown-id")]
    [InlineData(
        "\"pdus\": [ { \"id\": \"p\", \"supply\": \"A\", \"ratedA\": 16, \"groups\": [ ] } ], \"supplies\": [ { \"id\": \"A\", "
        + "\"voltageV\": 230, \"ratedA\": 16 } ]",
        "/pdus/0/groups",
        "wrong-count")]
    [InlineData("\"connections\": [ { \"item\": \"b\", \"unit\": \"p\", \"group\": \"g\" } ]", "/connections/0/item", "unknown-id")]
    [InlineData("\"policy\": { \"rules\": { \"layout.nothing\": { \"severity\": \"off\" } } }", "/policy/rules/layout.nothing", "unknown-rule")]
    [InlineData(
        "\"policy\": { \"rules\": { \"layout.reserve\": { \"limits\": { \"reserve\": 5 } } } }",
        "/policy/rules/layout.reserve/limits/reserve",
        "unknown-limit")]
    [InlineData(
        "\"policy\": { \"rules\": { \"layout.reserve\": { \"limits\": { \"reservePercent\": 101 } } } }",
        "/policy/rules/layout.reserve/limits/reservePercent",
        "out-of-range")]
    [InlineData(
        "\"policy\": { \"rules\": { \"layout.reserve\": { \"limits\": { \"reservePercent\": 1e999 } } } }",
        "/policy/rules/layout.reserve/limits/reservePercent",
        "out-of-range")]
    [InlineData("\"policy\": { \"rules\": { \"layout.reserve\": null } }", "/policy/rules/layout.reserve", "null-value")]
    [InlineData("\"policy\": { \"rules\": { \"layout.reserve\": { \"severity\": \"fatal\" } } }", "/policy/rules/layout.reserve/severity", "unknown-value")]
    [InlineData(
        "\"acceptances\": [ { \"rule\": \"layout.nothing\", \"pointer\": \"/items/0\", \"reason\": \"r\", \"acceptedBy\": \"b\" } ]",
        "/acceptances/0/rule",
        "unknown-rule")]
    [InlineData("\"acceptances\": [ { \"rule\": \"layout.reserve\", \"reason\": \"r\", \"acceptedBy\": \"b\" } ]", "/acceptances/0", "inconsistent")]
    [InlineData(
        "\"acceptances\": [ { \"rule\": \"layout.reserve\", \"item\": \"a\", \"reason\": \"r\", \"acceptedBy\": \"b\", \"fingerprint\": \"f\" } ]",
        "/acceptances/0",
        "inconsistent")]
    [InlineData(
        "\"acceptances\": [ { \"rule\": \"layout.reserve\", \"item\": \"a\", \"reason\": \"r\", "
            + "\"acceptedBy\": \"b\", \"expiresAt\": \"2026-12-01T00:00:00Z\" } ]",
        "/acceptances/0/expiresAt",
        "inconsistent")]
    [InlineData(
        "\"acceptances\": [ { \"rule\": \"layout.reserve\", \"item\": \"a\", \"reason\": \"r\", "
            + "\"acceptedBy\": \"b\", \"acceptedAt\": \"2026-02-30T00:00:00Z\" } ]",
        "/acceptances/0/acceptedAt",
        "wrong-form")]
    [InlineData(
        "\"acceptances\": [ { \"rule\": \"layout.reserve\", \"item\": \"a\", \"reason\": \"r\", \"acceptedBy\": \"b\", \"upTo\": { \"value\": 1 } } ]",
        "/acceptances/0/upTo/unit",
        "missing-member")]
    [InlineData(
        "\"acceptances\": [ { \"rule\": \"layout.reserve\", \"pointer\": \"items/0\", \"reason\": \"r\", \"acceptedBy\": \"b\" } ]",
        "/acceptances/0/pointer",
        "wrong-form")]
    [InlineData(
        "\"acceptances\": [ { \"rule\": \"layout.reserve\", \"pointer\": \"/items/~2\", \"reason\": \"r\", \"acceptedBy\": \"b\" } ]",
        "/acceptances/0/pointer",
        "wrong-form")]
    [InlineData(
        "\"acceptances\": [ { \"rule\": \"layout.reserve\", \"pointer\": \"/items/0~\", \"reason\": \"r\", \"acceptedBy\": \"b\" } ]",
        "/acceptances/0/pointer",
        "wrong-form")]
    [InlineData("\"asOf\": \"2026-12-01\"", "/asOf", "wrong-form")]
    [InlineData("\"asOf\": \"2026-12-01T00:00:00\"", "/asOf", "wrong-form")]
    [InlineData(
        "\"signOffs\": [ { \"by\": \"q\", \"role\": \"engineer\", \"reason\": \"r\", \"rule\": \"layout.reserve\", \"at\": \"2026-12-01T00:00:00Z\" } ]",
        "/signOffs/0/rule",
        "inconsistent")]
    [InlineData(
        "\"signOffs\": [ { \"by\": \"q\", \"role\": \"engineer\", \"reason\": \"r\", \"rule\": \"load.none\", \"at\": \"2026-12-01T00:00:00Z\" } ]",
        "/signOffs/0/rule",
        "unknown-rule")]
    [InlineData(
        "\"signOffs\": [ { \"by\": \"q\", \"role\": \"engineer\", \"reason\": \"r\", \"rule\": \"load.seismic\", \"at\": \"yesterday\" } ]",
        "/signOffs/0/at",
        "wrong-form")]
    public async Task BadMember_of_description_is_named(string member, string pointer, string code)
    {
        var cabinet = member.StartsWith("\"cabinet\"", StringComparison.Ordinal) ? "" : Cabinet + ",";
        var answer = await service.PostAsync($$"""{ {{cabinet}} {{member}}, "items": [ { "id": "a", "heightU": 1 } ] }""");
        answer.IsProblem(422);
        Assert.Contains((pointer, code), answer.Faults);
    }

    [Fact]
    public async Task All_faults_are_listed_together()
    {
        var answer = await service.PostAsync("""
            {
              "cabinet": { "heightU": 0, "widthMm": "600", "depthMm": 800, "colour": "grey" },
              "items": [
                { "id": "a", "heightU": 2, "masKg": 4, "position": { "face": "front" } },
                { "id": "a", "heightU": 2, "massKg": -3, "onShelf": "none" },
                null,
                { "heightU": 2, "support": { "style": "rope" } }
              ]
            }
            """);
        answer.IsProblem(422);
        Assert.Equal(
            [
                ("/cabinet/colour", "unknown-member"),
                ("/cabinet/heightU", "out-of-range"),
                ("/cabinet/widthMm", "wrong-type"),
                ("/items/0/masKg", "unknown-member"),
                ("/items/0/position/u", "missing-member"),
                ("/items/1/id", "duplicate-id"),
                ("/items/1/massKg", "out-of-range"),
                ("/items/1/onShelf", "unknown-id"),
                ("/items/2", "null-value"),
                ("/items/3/id", "missing-member"),
                ("/items/3/support/style", "unknown-value"),
            ],
            answer.Faults);
        Assert.Contains("Did you mean massKg?", answer.Text, StringComparison.Ordinal);
    }

    // Faults that the relations, the ranges, and the members themselves have.
    [Theory]
    [InlineData("{\"id\":\"\",\"heightU\":1}")]
    [InlineData("{\"id\":\"a$\",\"heightU\":99}")]
    [InlineData("{\"id\":\"a$\",\"heightU\":\"1\"}")]
    [InlineData("{\"id\":\"a$\",\"heightU\":1,\"x\":1}")]
    [InlineData("null")]
    public async Task Faults_beyond_the_maximum_are_cut_off_with_notice(string item)
    {
        var answer = await FaultyAsync(150, item);
        Assert.Equal(101, answer.Faults.Count());
        Assert.Equal(("", "more-faults"), answer.Faults.Last());
        Assert.Equal(101, (await FaultyAsync(101, item)).Faults.Count());
        Assert.DoesNotContain("more-faults", (await FaultyAsync(100, item)).Faults.Select(f => f.Code));
    }

    [Fact]
    public async Task Members_beyond_the_maximum_are_cut_off_with_notice()
    {
        var members = string.Join(",", Enumerable.Range(0, 101).Select(i => $"\"x{i}\":1"));
        var answer = await service.PostAsync($$"""{ {{Cabinet}}, "items": [], {{members}} }""");
        Assert.Equal(("", "more-faults"), answer.Faults.Last());
    }

    [Fact]
    public async Task Empty_list_hides_no_other_fault()
    {
        var answer = await service.PostAsync(
            $$"""
            { {{Cabinet}}, "items": [ { "id": "a", "heightU": 1, "onShelf": "none" } ],
              "pdus": [ { "id": "p", "supply": "none", "ratedA": 10, "groups": [] } ] }
            """);
        Assert.Equal([("/items/0/onShelf", "unknown-id"), ("/pdus/0/groups", "wrong-count"), ("/pdus/0/supply", "unknown-id")], answer.Faults);
    }

    [Theory]
    [InlineData("")]
    [InlineData("/items/0")]
    [InlineData("/a~1b/~0/")]
    public async Task JsonPointer_of_an_acceptance_is_accepted(string pointer)
    {
        var acceptance = $$"""{ "rule": "layout.reserve", "pointer": "{{pointer}}", "reason": "r", "acceptedBy": "b" }""";
        Assert.Equal(200, (await service.PostAsync($$"""{ {{Cabinet}}, "items": [], "acceptances": [ {{acceptance}} ] }""")).Status);
    }

    private async Task<Answer> FaultyAsync(int count, string item)
    {
        var items = string.Join(",", Enumerable.Range(0, count).Select(i => item.Replace("$", $"{i}", StringComparison.Ordinal)));
        var answer = await service.PostAsync("{" + Cabinet + ", \"items\": [" + items + "] }");
        answer.IsProblem(422);
        return answer;
    }

    [Theory]
    [InlineData("\"massKg\": -0")]
    [InlineData("\"massKg\": -0.0")]
    [InlineData("\"massKg\": 1e2")]
    [InlineData("\"massKg\": null")]
    [InlineData("\"position\": { \"u\": 1.0 }")]
    [InlineData("\"position\": { \"u\": -0 }")]
    [InlineData("\"description\": \"\\ud83d\\ude80 \\u00e9\"")]
    public async Task Unusual_but_valid_member_is_accepted(string member)
    {
        var answer = await service.PostAsync($$"""{ {{Cabinet}}, "items": [ { "id": "a", "heightU": 1, {{member}} } ] }""");
        Assert.Equal(200, answer.Status);
    }

    [Fact]
    public async Task ByteOrderMark_is_skipped()
    {
        var answer = await service.PostAsync([0xef, 0xbb, 0xbf, .. Encoding.UTF8.GetBytes("{" + Cabinet + ", \"items\": [] }")]);
        Assert.Equal(200, answer.Status);
    }

    [Fact]
    public async Task Body_without_length_is_refused_at_the_limit()
    {
        using var client = service.CreateClient();
        using var request = new HttpRequestMessage(HttpMethod.Post, "/v1/checks") { Content = new StreamContent(new EndlessStream()) };
        request.Content.Headers.ContentType = new("application/json");
        request.Headers.TransferEncodingChunked = true;
        (await Answer.OfAsync(await client.SendAsync(request))).IsProblem(413);
    }

    private static byte[] Filled(int length, byte value)
    {
        var bytes = new byte[length];
        Array.Fill(bytes, value);
        return bytes;
    }

    /// <summary>Two megabytes of white space in pieces: more than the limit, without a Content-Length header.</summary>
    private sealed class EndlessStream : MemoryStream
    {
        public EndlessStream()
            : base(Filled(2 * 1024 * 1024, (byte)' '), writable: false)
        {
        }

        public override bool CanSeek => false;
    }
}
