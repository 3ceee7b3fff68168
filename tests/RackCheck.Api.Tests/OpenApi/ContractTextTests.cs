using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using RackCheck.Api.Http;
using RackCheck.Api.OpenApi;
using RackCheck.Api.Reading;
using RackCheck.Api.Tests.Acceptance;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.OpenApi;

/// <summary>What the contract says in words and extensions holds of the service.</summary>
public sealed partial class ContractTextTests(Service service) : IClassFixture<Service>
{
    private static readonly JsonNode Contract = JsonNode.Parse(Repository.Read("openapi", "rack-check.v1.json"))!;

    private static IEnumerable<(string Owner, string Name, JsonNode Schema)> Members =>
        from owner in Contract["components"]!["schemas"]!.AsObject()
        from member in owner.Value!["properties"]?.AsObject() ?? []
        select (owner.Key, member.Key, member.Value!);

    private static IEnumerable<(string Name, JsonNode Operation)> Operations =>
        from path in Contract["paths"]!.AsObject()
        from operation in path.Value!.AsObject()
        select ($"{operation.Key} {path.Key}", operation.Value!);

    [Fact]
    public void Number_has_its_unit_in_its_name_or_its_description()
    {
        var without =
            from member in Members
            where Types(member.Schema).Any(t => t is "number" or "integer")
            where !NameWithUnit().IsMatch(member.Name) && !TextWithUnit().IsMatch(Text(member.Schema))
            select $"{member.Owner}.{member.Name}: {Text(member.Schema)}";
        Assert.Empty(without);
    }

    [Fact]
    public void Union_of_types_is_a_type_or_null()
    {
        var unions = Members.Where(m => Types(m.Schema).Except(["null"]).Count() > 1).Select(m => $"{m.Owner}.{m.Name}");
        Assert.Empty(unions);
    }

    [Fact]
    public void Member_of_an_answer_is_never_null()
    {
        var schemas = Contract["components"]!["schemas"]!.AsObject();
        var nullable =
            from member in Members
            where schemas[member.Owner]!["additionalProperties"]?.GetValue<bool>() != false
            where Types(member.Schema).Contains("null") || member.Schema["oneOf"] is not null
            select $"{member.Owner}.{member.Name}";
        Assert.Empty(nullable);
    }

    [Fact]
    public void Stated_default_is_in_the_schema()
    {
        var stated = Members.Where(m => StatedDefault().IsMatch(Text(m.Schema))).ToArray();
        Assert.InRange(stated.Length, 25, 60);
        Assert.All(stated, m => Assert.True(m.Schema[StatedDefaults.Plain] is not null || m.Schema[StatedDefaults.Assumed] is not null, $"{m.Owner}.{m.Name}"));
        Assert.Empty(Members.Where(m => m.Schema["default"] is not null).Select(m => $"{m.Owner}.{m.Name}"));
        string[] plain = [.. Members.Where(m => m.Schema[StatedDefaults.Plain] is not null).Select(m => $"{m.Owner}.{m.Name}").Order(StringComparer.Ordinal)];
        Assert.Equal(
            [
                "Connection.plug", "Position.face", "ProposalRequest.effort", "ProposalRequest.growthPercent", "ProposalRequest.maxCabinets",
                "ProposalRequest.prefer", "ProposalRequest.unitNumbering", "RackDescription.unitNumbering",
            ],
            plain);
    }

    // The report says of each absent member what stands in for it.
    [Fact]
    public async Task Assumed_value_is_the_one_that_reports_list()
    {
        var byMember = Members.Where(m => m.Schema[StatedDefaults.Assumed] is not null).ToLookup(m => m.Name, m => m.Schema);
        var (seen, wrong) = (new HashSet<string>(StringComparer.Ordinal), new List<string>());
        foreach (var name in AcceptanceCase.Names)
        {
            var test = AcceptanceCase.Read(name);
            var answer = await service.PostAsync(test.Request.ToJsonString(), test.Post);
            foreach (var assumption in (answer.Json["assumptions"]?.AsArray() ?? []).Where(a => a!["value"] is not null))
            {
                var value = assumption!["value"]!;
                foreach (var member in assumption["pointers"]!.AsArray().Select(p => p!.GetValue<string>().Split('/')[^1]).Distinct())
                {
                    var candidates = byMember[member].ToArray();
                    if (candidates.Length == 1)
                    {
                        seen.Add(member);

                        // A description can have a further value for a special case.
                        if (!JsonNode.DeepEquals(candidates[0][StatedDefaults.Assumed], value)
                            && !Text(candidates[0]).Contains($" {value} ", StringComparison.Ordinal))
                        {
                            wrong.Add($"{name}: {member} is assumed as {value.ToJsonString()}");
                        }
                    }
                }
            }
        }

        Assert.Empty(wrong.Distinct());
        Assert.True(seen.Count >= 8, string.Join(", ", seen));
    }

    [Fact]
    public void Operation_has_every_status_with_headers_and_an_example()
    {
        string[] everywhere = ["200", "400", "405", "500"];
        string[] ofDocuments = ["401", "403", "406", "408", "413", "415", "422", "429", "503"];
        foreach (var (name, operation) in Operations)
        {
            var responses = operation["responses"]!.AsObject();
            var needed = name.StartsWith("post", StringComparison.Ordinal) ? everywhere.Concat(ofDocuments) : everywhere;
            Assert.Subset(responses.Select(r => r.Key).ToHashSet(), needed.ToHashSet());
            foreach (var (status, own) in responses)
            {
                var response = own!["$ref"] is { } reference ? Contract["components"]!["responses"]![reference.GetValue<string>().Split('/')[^1]]! : own;
                var headers = response["headers"]!.AsObject().Select(h => h.Key).ToHashSet();
                Assert.Contains("Trace-Id", headers);
                Assert.Equal((name, status, status is "429" or "503"), (name, status, headers.Contains("Retry-After")));
                if (status[0] >= '4')
                {
                    Assert.NotEmpty(response["content"]!["application/problem+json"]!["examples"]!.AsObject());
                }
            }
        }
    }

    [Fact]
    public async Task Problem_type_leads_to_its_page()
    {
        var listed = Contract["components"]!["schemas"]!["Problem"]!["properties"]!["type"]![SharedPartsFilter.ProblemTypes]!.AsArray();
        Assert.Equal(ProblemKind.All.Select(k => k.Type), listed.Select(t => t!["type"]!.GetValue<string>()));
        var index = await service.GetAsync("/docs/problems");
        foreach (var kind in ProblemKind.All)
        {
            var page = await service.GetAsync(kind.Type);
            Assert.Equal((200, "text/html"), (page.Status, page.MediaType));
            Assert.Contains($"<h1>{kind.Title}</h1>", page.Text, StringComparison.Ordinal);
            Assert.Contains($"href=\"../docs/problems/{kind.Name}\"", index.Text, StringComparison.Ordinal);
        }

        var codes = Contract["components"]!["schemas"]!["Fault"]!["properties"]!["code"]![SharedPartsFilter.Codes]!.AsArray();
        Assert.Equal(FaultCodes.All.Select(c => c.Code), codes.Select(c => c!["code"]!.GetValue<string>()));
    }

    private static IEnumerable<string> Types(JsonNode schema) => schema["type"] switch
    {
        JsonArray several => several.Select(t => t!.GetValue<string>()),
        { } one => [one.GetValue<string>()],
        null => [],
    };

    private static string Text(JsonNode schema) => schema["description"]?.GetValue<string>() ?? "";

    [GeneratedRegex("(Mm2?|Cm2|M2|M3h|KgM3|KnM2|BtuH|Kg|Kn|Va|Ma|Ka|Ms|Ah|Kva|Pa|Percent|Deg|Minutes|[WAVCKMUS])$")]
    private static partial Regex NameWithUnit();

    [GeneratedRegex(@", (mm|A|Pa|m3/h|U|percent|s)[.;]|"
        + @"\b([Nn]umber|[Ii]ndex|[Qq]uantity|Pieces|Order units|factor|status code|U position|[Pp]rice)\b|[Vv]alue|assumed range|less first")]
    private static partial Regex TextWithUnit();

    [GeneratedRegex(@"\bDefault:? (true|false|[0-9]|free|front\b|bottom-up|quick|lowest|L1)")]
    private static partial Regex StatedDefault();
}
