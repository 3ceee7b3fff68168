using System.Text.Json.Nodes;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.Http;

public sealed class BasketTests(Service service) : IClassFixture<Service>
{
    private const string Path = "/v1/baskets/checks";

    private static string Basket(params (string PartNumber, int Quantity)[] lines) => new JsonObject
    {
        ["lines"] = new JsonArray([.. lines.Select(l => new JsonObject { ["partNumber"] = l.PartNumber, ["quantity"] = l.Quantity })]),
    }.ToJsonString();

    [Fact]
    public async Task Basket_completed_with_its_missing_lines_misses_nothing()
    {
        var basket = JsonNode.Parse(Repository.Read("openapi", "examples", "basket-incomplete.json"))!;
        var first = await service.PostAsync(basket.ToJsonString(), Path);
        Assert.Equal(200, first.Status);
        Assert.Equal(basket["reference"]!.GetValue<string>(), first.Json["reference"]!.GetValue<string>());
        var missing = first.Json["missingLines"]!.AsArray();
        Assert.NotEmpty(missing);
        Assert.All(missing, m =>
        {
            Assert.StartsWith("QWL-", m!["partNumber"]!.GetValue<string>(), StringComparison.Ordinal);
            Assert.NotEmpty(m["reason"]!.GetValue<string>());
            Assert.True(m["quantity"]!.GetValue<int>() > 0);
        });
        Assert.NotEqual("release", first.Json["verdict"]!.GetValue<string>());

        foreach (var line in missing)
        {
            basket["lines"]!.AsArray().Add(new JsonObject
            {
                ["partNumber"] = line!["partNumber"]!.GetValue<string>(),
                ["quantity"] = line["quantity"]!.GetValue<int>(),
            });
        }

        var second = await service.PostAsync(basket.ToJsonString(), Path);
        Assert.Equal(200, second.Status);
        Assert.Empty(second.Json["missingLines"]!.AsArray());
        Assert.Equal(first.Json["completedVerdict"]!.GetValue<string>(), second.Json["verdict"]!.GetValue<string>());
        var remedied = missing
            .SelectMany(m => m!["rules"]!.AsArray().Select(r => r!.GetValue<string>()))
            .Where(r => r is "layout.no-support" or "power.no-outlet" or "earthing.bar-terminals");
        Assert.DoesNotContain(Rules(second, "report"), remedied.Contains);
    }

    [Fact]
    public async Task Rack_of_the_response_posted_unchanged_has_the_same_report()
    {
        var answer = await service.PostAsync(Repository.Read("openapi", "examples", "basket-incomplete.json"), Path);
        var again = await service.PostAsync(answer.Json["rack"]!.ToJsonString());
        Assert.Equal(200, again.Status);
        Assert.Equal(answer.Json["report"]!["findings"]!.ToJsonString(), again.Json["findings"]!.ToJsonString());
        var rules = again.Json["findings"]!.AsArray().Select(f => f!["rule"]!.GetValue<string>());
        Assert.DoesNotContain("catalogue.", string.Join(' ', rules), StringComparison.Ordinal);
    }

    [Fact]
    public async Task FrontPanelMounting_without_rails_is_not_a_contradiction()
    {
        var answer = await service.PostAsync(Basket(("QWL-CAB-42-6-10", 1), ("QWL-SRV-220", 2), ("QWL-PC-305", 1), ("QWL-UPS-15", 1)), Path);
        var again = await service.PostAsync(answer.Json["rack"]!.ToJsonString());
        Assert.Contains("layout.no-support", Rules(answer, "report"));
        Assert.DoesNotContain(again.Json["findings"]!.AsArray(), f => f!["rule"]!.GetValue<string>().StartsWith("catalogue.", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Findings_name_their_lines()
    {
        var answer = await service.PostAsync(Basket(("QWL-CAB-42-6-6", 1), ("QWL-PC-410", 1)), Path);
        var report = answer.Json["report"]!["findings"]!.AsArray();
        var lines = answer.Json["findingLines"]!.AsArray();
        Assert.Equal(report.Select(f => f!["fingerprint"]!.GetValue<string>()), lines.Select(l => l!["fingerprint"]!.GetValue<string>()));
        var shallow = lines.First(l => l!["rule"]!.GetValue<string>() == "depth.cabinet-too-shallow")!;
        Assert.Equal(["/lines/0", "/lines/1"], shallow["lines"]!.AsArray().Select(l => l!.GetValue<string>()));
    }

    [Fact]
    public async Task UnknownPartNumber_holds_the_order_and_is_listed()
    {
        var answer = await service.PostAsync(Basket(("QWL-CAB-42-8-10", 1), ("QWL-NO-SUCH-PART", 3)), Path);
        Assert.Equal((200, "hold"), (answer.Status, answer.Json["verdict"]!.GetValue<string>()));
        Assert.Equal(["/lines/1"], answer.Json["unknownLines"]!.AsArray().Select(l => l!.GetValue<string>()));
    }

    [Theory]
    [InlineData(0, "/lines/1/quantity", "out-of-range")]
    [InlineData(-1, "/lines/1/quantity", "out-of-range")]
    [InlineData(10_001, "/lines/1/quantity", "out-of-range")]
    [InlineData(int.MaxValue, "/lines/1/quantity", "out-of-range")]
    public async Task Quantity_out_of_range_is_a_fault(int quantity, string pointer, string code)
    {
        var answer = await service.PostAsync(Basket(("QWL-CAB-42-8-10", 1), ("QWL-PC-410", quantity)), Path);
        answer.IsProblem(422);
        Assert.Equal([(pointer, code)], answer.Faults);
    }

    [Theory]
    [InlineData("""{"lines":[{"partNumber":"QWL-PC-410","quantity":1e300}]}""", "/lines/0/quantity")]
    [InlineData("""{"lines":[{"partNumber":"QWL-PC-410","quantity":1.5}]}""", "/lines/0/quantity")]
    [InlineData("""{"lines":[{"partNumber":"QWL-PC-410","quantity":"2"}]}""", "/lines/0/quantity")]
    [InlineData("""{"lines":[{"partNumber":"","quantity":2}]}""", "/lines/0/partNumber")]
    [InlineData("""{"lines":[{"quantity":2}]}""", "/lines/0/partNumber")]
    [InlineData("""{"lines":[null]}""", "/lines/0")]
    [InlineData("""{"lines":[]}""", "/lines")]
    [InlineData("""{}""", "/lines")]
    [InlineData("""{"lines":[{"partNumber":"a","quantity":1}],"colour":"red"}""", "/colour")]
    [InlineData("""{"lines":[{"partNumber":"a","quantity":1}],"policy":{"rules":{"no.rule":{}}}}""", "/policy/rules/no.rule")]
    [InlineData(
        """{"lines":[{"partNumber":"a","quantity":1}],"supplies":[{"id":"A","voltageV":230,"ratedA":16},{"id":"A","voltageV":230,"ratedA":16}]}""",
        "/supplies/1/id")]
    [InlineData(
        """{"lines":[{"partNumber":"a","quantity":1}],"acceptances":[{"rule":"earthing.bar-missing","fingerprint":"f","reason":"r","acceptedBy":"b"}]}""",
        "/acceptances/0/rule")]
    public async Task InvalidBasket_is_a_problem_with_pointer(string body, string pointer)
    {
        var answer = await service.PostAsync(body, Path);
        answer.IsProblem(422);
        Assert.Contains(answer.Faults, f => f.Pointer == pointer);
    }

    [Theory]
    [InlineData("heightU", "2000000000")]
    [InlineData("widthMm", "1e300")]
    [InlineData("depthMm", "-1")]
    public async Task Size_out_of_range_of_a_cabinet_that_is_there_is_a_fault(string member, string size)
    {
        var basket = FilledRack.Basket();
        basket["options"]!["cabinet"]!["existing"]![member] = JsonNode.Parse(size);
        var answer = await service.PostAsync(basket.ToJsonString(), Path);
        answer.IsProblem(422);
        Assert.Contains(($"/options/cabinet/existing/{member}", "out-of-range"), answer.Faults);
    }

    [Fact]
    public async Task TooManyItems_or_lines_are_a_fault()
    {
        (await service.PostAsync(Basket(("QWL-CAB-42-8-10", 1), ("QWL-PC-410", 10_000)), Path)).IsProblem(422);
        (await service.PostAsync(Basket([.. Enumerable.Range(0, 1001).Select(i => ("QWL-PC-410", 1))]), Path)).IsProblem(422);
    }

    [Fact]
    public async Task Basket_of_1000_lines_is_answered()
    {
        (string, int)[] lines =
        [
            .. Enumerable.Range(0, 980).Select(i => ("QWL-CRD-13-10", 1 + (i % 7))),
            .. Enumerable.Repeat(("QWL-PC-210", 1), 19),
            ("QWL-CAB-47-8-12", 1),
        ];
        var answer = await service.PostAsync(Basket(lines), Path);
        Assert.Equal(200, answer.Status);
        Assert.NotEmpty(answer.Json["excessLines"]!.AsArray());
    }

    [Fact]
    public async Task InvalidJson_and_other_content_types_are_refused()
    {
        (await service.PostAsync("lines", Path)).IsProblem(400);
        (await service.PostAsync("{}"u8.ToArray(), Path, "text/plain")).IsProblem(415);
        (await service.PostAsync("{}"u8.ToArray(), Path, accept: "text/html")).IsProblem(406);
    }

    private static IEnumerable<string> Rules(Answer answer, string report) =>
        answer.Json[report]!["findings"]!.AsArray().Select(f => f!["rule"]!.GetValue<string>());
}
