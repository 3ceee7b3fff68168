using System.Text.Json;
using System.Text.Json.Nodes;

namespace RackCheck.Api.Tests.Acceptance;

/// <summary>Each kind of wrong expectation, compared with a real response, must be reported.</summary>
public sealed class AcceptanceJudgeTests(Service service) : IClassFixture<Service>
{
    // U1 to U4 and U4 to U5 overlap. The depth of the second body is not specified, so some depth rules are not assessed.
    private const string Rack = """
        {
          "cabinet": { "heightU": 12, "widthMm": 600, "depthMm": 800, "frontDoor": { "style": "solid" }, "rearDoor": { "style": "solid" } },
          "items": [
            { "id": "wave-pc", "heightU": 4, "position": { "u": 1 }, "body": { "widthMm": 430, "depthMm": 450 } },
            { "id": "wave-amp", "heightU": 2, "position": { "u": 4 }, "body": { "widthMm": 430 } }
          ]
        }
        """;

    // No overlap, but U12 to U15 in a 12 U cabinet.
    private const string OtherRack = """
        {
          "cabinet": { "heightU": 12, "widthMm": 600, "depthMm": 800, "frontDoor": { "style": "solid" }, "rearDoor": { "style": "solid" } },
          "items": [ { "id": "wave-pc", "heightU": 4, "position": { "u": 12 }, "body": { "widthMm": 430, "depthMm": 450 } } ]
        }
        """;

    [Theory]
    [InlineData("""{ "verdict": "hold" }""")]
    [InlineData("""{ "findings": [ { "rule": "layout.overlap" } ] }""")]
    [InlineData("""{ "findings": [ { "rule": "layout.overlap", "severity": "error", "pointer": "/items/1", "actual": [1, 0], "limit": [0, 0] } ] }""")]
    [InlineData("""{ "findings": [ { "rule": "layout.overlap", "actual": [1.09, 0.1] } ] }""")]
    [InlineData("""{ "noFinding": [ "layout.not-placed", "depth.*" ] }""")]
    [InlineData("""{ "figures": { "/space/unitsUsed": [5, 0], "/space/unitsFree": [7.05, 0.01], "/power/ratedW": [null, 0] } }""")]
    [InlineData("""{ "notAssessed": [ "depth.cabinet-too-shallow" ] }""")]
    [InlineData("""{ "remedyClears": [ "layout.overlap" ] }""")]
    public async Task CorrectExpectation_is_accepted(string expect) =>
        Assert.Empty(await AcceptanceJudge.Of(service).ComplaintsAsync(Case(Rack, expect)));

    [Theory]
    [InlineData("""{ "status": 422 }""", "status is 200, not 422")]
    [InlineData("""{ "verdict": "review" }""", "verdict is hold, not review")]
    [InlineData("""{ "findings": [ { "rule": "layout.not-placed" } ] }""", "no finding layout.not-placed")]
    [InlineData("""{ "findings": [ { "rule": "layout.overlap", "severity": "warning" } ] }""", "no finding layout.overlap warning")]
    [InlineData("""{ "findings": [ { "rule": "layout.overlap", "pointer": "/items/1/pos" } ] }""", "no finding layout.overlap")]
    [InlineData("""{ "findings": [ { "rule": "layout.overlap", "pointer": "/items/2" } ] }""", "no finding layout.overlap")]
    [InlineData("""{ "findings": [ { "rule": "layout.overlap", "actual": [2, 0.4] } ] }""", "no finding layout.overlap")]
    [InlineData("""{ "findings": [ { "rule": "layout.overlap", "actual": [null, 0] } ] }""", "no finding layout.overlap")]
    [InlineData("""{ "findings": [ { "rule": "layout.overlap", "limit": [1, 0.1] } ] }""", "no finding layout.overlap")]
    [InlineData("""{ "noFinding": [ "layout.overlap" ] }""", "unexpected finding of layout.overlap")]
    [InlineData("""{ "noFinding": [ "layout.*" ] }""", "unexpected finding of layout.overlap")]
    [InlineData("""{ "figures": { "/space/unitsUsed": [6, 0.1] } }""", "figure /space/unitsUsed is 5, not [6,0.1]")]
    [InlineData("""{ "figures": { "/space/unitsUsed": [null, 0] } }""", "figure /space/unitsUsed is 5, not [null,0]")]
    [InlineData("""{ "figures": { "/space/unitsLent": [5, 0] } }""", "figure /space/unitsLent is absent")]
    [InlineData("""{ "notAssessed": [ "layout.overlap" ] }""", "layout.overlap is not among notAssessed")]
    [InlineData("""{ "problem": [ { "pointer": "/cabinet" } ] }""", "no error")]
    [InlineData("""{ "remedyClears": [ "layout.not-placed" ] }""", "layout.not-placed has no finding")]
    public async Task WrongExpectation_is_reported(string expect, string complaint) =>
        Assert.StartsWith(complaint, Assert.Single(await AcceptanceJudge.Of(service).ComplaintsAsync(Case(Rack, expect))), StringComparison.Ordinal);

    [Theory]
    [InlineData("""{ "pointer": "/items", "code": "null-value" }""")]
    [InlineData("""{ "pointer": "/cabinet", "code": "missing-member" }""")]
    public async Task Fault_with_other_pointer_or_code_is_reported(string fault)
    {
        var @case = Case("""{ "cabinet": { "heightU": 12, "widthMm": 600, "depthMm": 800 } }""", $$"""{ "status": 422, "problem": [ {{fault}} ] }""");
        Assert.StartsWith("no error", Assert.Single(await AcceptanceJudge.Of(service).ComplaintsAsync(@case)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task All_differences_are_reported_together()
    {
        var @case = Case(Rack, """
            {
              "verdict": "release", "findings": [ { "rule": "layout.reserve" } ], "noFinding": [ "layout.overlap" ],
              "figures": { "/space/unitsTotal": [13, 0] }, "notAssessed": [ "layout.reserve" ], "remedyClears": [ "layout.reserve" ]
            }
            """);
        Assert.Equal(6, (await AcceptanceJudge.Of(service).ComplaintsAsync(@case)).Count);
    }

    [Theory]
    [InlineData(Rack, "layout.overlap: its remedy does not clear it")]
    [InlineData(OtherRack, "layout.overlap: its remedy brings layout.outside-rack")]
    [InlineData("""{ "items": [] }""", "layout.overlap: the rack with its remedy is refused: 422")]
    public async Task IneffectiveRemedy_is_reported(string rackAfter, string complaint)
    {
        // Another rack is posted in place of the remedied one, so that the response is real but wrong.
        var posts = 0;
        var judge = new AcceptanceJudge((@case, request) =>
            AcceptanceJudge.PostAsync(service, @case, posts++ == 0 ? request : JsonNode.Parse(rackAfter)!));
        var complaints = await judge.ComplaintsAsync(Case(Rack, """{ "remedyClears": [ "layout.overlap" ] }"""));
        Assert.StartsWith(complaint, Assert.Single(complaints), StringComparison.Ordinal);
        Assert.Equal(2, posts);
    }

    [Theory]
    [InlineData("""{ "noFindings": [ "layout.overlap" ] }""")]
    [InlineData("""{ "findings": [ { "rule": "layout.overlap", "pointers": [ "/items/0" ] } ] }""")]
    [InlineData("""{ "verdict": "hold", "verdict": "hold" }""")]
    public void MisspeltExpectation_is_refused(string expect) => Assert.Throws<JsonException>(() => Case(Rack, expect));

    private static AcceptanceCase Case(string request, string expect) =>
        AcceptanceCase.Parse($$"""{ "about": "Held against a real answer.", "request": {{request}}, "expect": {{expect}} }""");
}
