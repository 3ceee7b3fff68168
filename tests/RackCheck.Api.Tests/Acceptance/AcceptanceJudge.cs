using System.Globalization;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using RackCheck.Model.Json;
using RackCheck.Remedies.Patches;

namespace RackCheck.Api.Tests.Acceptance;

/// <summary>Compares responses with the expectations of cases, as <c>tests/acceptance/run.py</c> does.</summary>
/// <param name="post">Posts the request of a case.</param>
public sealed class AcceptanceJudge(Func<AcceptanceCase, JsonNode, Task<Answer>> post)
{
    public static AcceptanceJudge Of(Service service) => new((@case, request) => PostAsync(service, @case, request));

    public static async Task<Answer> PostAsync(Service service, AcceptanceCase @case, JsonNode body)
    {
        using var client = service.CreateClient();
        using var request = new HttpRequestMessage(HttpMethod.Post, @case.Post) { Content = new ByteArrayContent(Encoding.UTF8.GetBytes(body.ToJsonString())) };
        request.Content.Headers.ContentType = new MediaTypeHeaderValue("application/json");
        foreach (var (name, value) in @case.Headers)
        {
            if (string.Equals(name, "Content-Type", StringComparison.OrdinalIgnoreCase))
            {
                request.Content.Headers.ContentType = MediaTypeHeaderValue.Parse(value);
            }
            else
            {
                request.Headers.TryAddWithoutValidation(name, value);
            }
        }

        return await Answer.OfAsync(await client.SendAsync(request));
    }

    /// <summary>All differences between the response and the expectations of the case.</summary>
    public async Task<IReadOnlyList<string>> ComplaintsAsync(AcceptanceCase @case)
    {
        var expect = @case.Expect;
        var answer = await post(@case, @case.Request);
        if (answer.Status != expect.Status)
        {
            return [$"status is {answer.Status}, not {expect.Status}: {Short(answer.Text)}"];
        }

        var document = Parsed(answer.Text);
        var report = Report(document);
        return
        [
            .. AboutProblem(expect, document),
            .. AboutFindings(expect, report),
            .. AboutNotAssessed(expect, report),
            .. AboutFigures(expect, report),
            .. await AboutRemediesAsync(@case, report),
        ];
    }

    private static IEnumerable<string> AboutProblem(Expectation expect, JsonNode document)
    {
        var errors = Elements(document["errors"]);
        foreach (var fault in expect.Problem)
        {
            if (!errors.Any(e => (fault.Pointer ?? Text(e["pointer"])) == Text(e["pointer"]) && (fault.Code ?? Text(e["code"])) == Text(e["code"])))
            {
                yield return $"no error {fault} among {Short(document["errors"]?.ToJsonString() ?? "none")}";
            }
        }
    }

    private static IEnumerable<string> AboutFindings(Expectation expect, JsonNode report)
    {
        var findings = Elements(report["findings"]);
        if (expect.Verdict is { } verdict && Text(report["verdict"]) != verdict)
        {
            yield return $"verdict is {Text(report["verdict"])}, not {verdict}";
        }

        foreach (var expected in expect.Findings)
        {
            if (!findings.Any(f => Agrees(f, expected)))
            {
                var others = findings.Where(f => Text(f["rule"]) == expected.Rule)
                    .Select(f => Short(
                        $"{f["severity"]} {f["pointers"]?.ToJsonString()} actual {f["actual"]?.ToJsonString()} limit {f["limit"]?.ToJsonString()}"));
                yield return $"no finding {Shown(expected)}; that rule found: {string.Join("; ", others)}";
            }
        }

        foreach (var unwanted in expect.NoFinding)
        {
            foreach (var finding in findings.Where(f => Covers(unwanted, Text(f["rule"]))))
            {
                yield return $"unexpected finding of {Text(finding["rule"])}: {Text(finding["message"])}";
            }
        }
    }

    private static IEnumerable<string> AboutNotAssessed(Expectation expect, JsonNode report)
    {
        string[] silent = [.. Elements(report["notAssessed"]).Select(n => Text(n["rule"]))];
        return expect.NotAssessed.Except(silent).Select(rule => $"{rule} is not among notAssessed: {string.Join(", ", silent)}");
    }

    private static IEnumerable<string> AboutFigures(Expectation expect, JsonNode report)
    {
        foreach (var (pointer, expected) in expect.Figures)
        {
            var actual = LookUp(report["figures"], pointer);
            if (!IsNear(actual, expected))
            {
                yield return $"figure {pointer} is {actual?.ToJsonString() ?? "absent"}, not {Shown(expected)}";
            }
        }
    }

    private async Task<List<string>> AboutRemediesAsync(AcceptanceCase @case, JsonNode before)
    {
        var complaints = new List<string>();
        foreach (var rule in @case.Expect.RemedyClears)
        {
            var finding = Elements(before["findings"]).FirstOrDefault(f => Text(f["rule"]) == rule);
            if (finding is null || Elements(finding["remedies"]) is not [var remedy, ..])
            {
                complaints.Add($"{rule} has no {(finding is null ? "finding" : "remedy")}");
                continue;
            }

            try
            {
                var answer = await post(@case, Patched(@case.Request, remedy["patch"]!));
                complaints.AddRange(answer.Status == 200
                    ? AboutRemedy(finding, before, Report(Parsed(answer.Text)))
                    : [$"{rule}: the rack with its remedy is refused: {answer.Status} {Short(answer.Text)}"]);
            }
            catch (RackPatchException fault)
            {
                complaints.Add($"{rule}: its remedy does not apply: {fault.Message}");
            }
        }

        return complaints;
    }

    private static IEnumerable<string> AboutRemedy(JsonNode finding, JsonNode before, JsonNode after)
    {
        var (rule, left) = (Text(finding["rule"]), Elements(after["findings"]));
        if (left.Any(f => Identity(f) == Identity(finding)))
        {
            yield return $"{rule}: its remedy does not clear it";
        }

        var known = Errors(Elements(before["findings"])).Select(Identity).ToHashSet();
        foreach (var fresh in Errors(left).Where(f => !known.Contains(Identity(f))))
        {
            yield return $"{rule}: its remedy brings {Text(fresh["rule"])}: {Text(fresh["message"])}";
        }
    }

    private static JsonNode Patched(JsonNode request, JsonNode patch)
    {
        JsonNode? document = request.DeepClone();
        var operations = Elements(patch);
        for (var i = 0; i < operations.Count; i++)
        {
            document = RackPatch.Apply(document, operations[i].Deserialize(ContractJson.Default.PatchOperation)!, i);
        }

        return document!;
    }

    private static bool Agrees(JsonNode finding, ExpectedFinding expected) =>
        Text(finding["rule"]) == expected.Rule
        && (expected.Severity is null || Text(finding["severity"]) == expected.Severity)
        && (expected.Pointer is null || Elements(finding["pointers"]).Any(p => IsUnder(Text(p), expected.Pointer)))
        && (expected.Actual is null || IsNear(finding["actual"]?["value"], expected.Actual))
        && (expected.Limit is null || IsNear(finding["limit"]?["value"], expected.Limit));

    private static bool IsNear(JsonNode? actual, double?[] expected) => expected[0] is { } value
        ? actual?.GetValueKind() == JsonValueKind.Number && Math.Abs(actual.GetValue<double>() - value) <= expected[1]!.Value * Math.Abs(value)
        : actual is null;

    private static bool IsUnder(string pointer, string start) =>
        pointer == start || pointer.StartsWith(start.TrimEnd('/') + "/", StringComparison.Ordinal);

    private static bool Covers(string unwanted, string rule) => unwanted.EndsWith(".*", StringComparison.Ordinal)
        ? rule.StartsWith(unwanted[..^1], StringComparison.Ordinal)
        : rule == unwanted;

    // A patch may change indices and so pointers; the fingerprint stays the same.
    private static (string Rule, string Fingerprint) Identity(JsonNode finding) => (Text(finding["rule"]), Text(finding["fingerprint"]));

    private static IEnumerable<JsonNode> Errors(IEnumerable<JsonNode> findings) => findings.Where(f => Text(f["severity"]) == "error");

    // Some endpoints return further members beside the report.
    private static JsonNode Report(JsonNode document) => document["report"] ?? document;

    // A response that is not a JSON object has no members, which suits a case that expects a status only.
    private static JsonObject Parsed(string text)
    {
        try
        {
            return JsonNode.Parse(text) as JsonObject ?? [];
        }
        catch (JsonException)
        {
            return [];
        }
    }

    private static JsonNode? LookUp(JsonNode? node, string pointer)
    {
        var steps = pointer.Split('/').Skip(1).Select(s => s.Replace("~1", "/", StringComparison.Ordinal).Replace("~0", "~", StringComparison.Ordinal));
        foreach (var step in steps)
        {
            node = node switch
            {
                JsonObject members => members[step],
                JsonArray elements when int.TryParse(step, NumberStyles.None, CultureInfo.InvariantCulture, out var i) && i < elements.Count => elements[i],
                _ => null,
            };
        }

        return node;
    }

    private static List<JsonNode> Elements(JsonNode? list) => [.. (list as JsonArray ?? []).OfType<JsonNode>()];

    private static string Text(JsonNode? node) => node?.ToString() ?? "";

    private static string Shown(ExpectedFinding expected) =>
        $"{expected.Rule} {expected.Severity} {expected.Pointer} actual {Shown(expected.Actual)} limit {Shown(expected.Limit)}";

    private static string Shown(double?[]? number) => number is null ? "any" : JsonSerializer.Serialize(number);

    private static string Short(string text) => text.Length <= 300 ? text : text[..300] + "...";
}
