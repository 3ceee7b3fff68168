using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using RackCheck.Api.Http;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.OpenApi;

/// <summary>The answers in openapi/examples/answers, for those who test against a mock, are those of the service.</summary>
public sealed class RecordedAnswersTests(Service service) : IClassFixture<Service>
{
    // In place of that of a real request, so that the files stay as they are.
    private const string TraceId = "0af7651916cd43dd8448eb211c80319c";

    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static TheoryData<string> Names => [.. RecordedRequest.Examples.Select(r => r.Name)];

    public static TheoryData<string> ProblemNames => [.. ProblemKind.All.Select(k => k.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public async Task Answer_to_an_example_is_the_recorded_one(string name)
    {
        var request = RecordedRequest.Examples.Single(r => r.Name == name);
        var answer = await service.PostAsync(Repository.Read("openapi", "examples", request.File), request.Path);
        Assert.Equal((200, request.MediaType), (answer.Status, answer.MediaType));
        await CompareAsync(request.Answer, request.IsJson ? Written(answer.Json) : answer.Text);
    }

    [Theory]
    [MemberData(nameof(ProblemNames))]
    public async Task Problem_is_the_recorded_one(string name)
    {
        var kind = ProblemKind.All.Single(k => k.Name == name);
        var answer = await RecordedProblems.ProvokeAsync(name);
        answer.IsProblem(kind.Status);
        var problem = answer.Json;
        Assert.Equal(kind.Type, problem["type"]!.GetValue<string>());
        Assert.Matches("^[0-9a-f]{32}$", problem["traceId"]!.GetValue<string>());
        problem["traceId"] = TraceId;
        await CompareAsync($"problem-{name}.json", Written(problem));
    }

    [Fact]
    public async Task Index_lists_every_answer()
    {
        var index = new JsonArray(
        [
            .. RecordedRequest.Examples.Select(r => new JsonObject
            {
                ["answer"] = r.Answer, ["method"] = "POST", ["path"] = r.Path, ["request"] = $"../{r.File}", ["status"] = 200, ["mediaType"] = r.MediaType,
            }),
            .. ProblemKind.All.Select(k => new JsonObject
            {
                ["answer"] = $"problem-{k.Name}.json", ["status"] = k.Status, ["mediaType"] = Problems.MediaType,
            }),
        ]);
        await CompareAsync("index.json", Written(index));
        var files = Directory.EnumerateFiles(Repository.PathOf("openapi", "examples", "answers")).Select(Path.GetFileName)
            .Where(f => f is not ("index.json" or "README.md"));
        Assert.Equal(index.Select(e => e!["answer"]!.GetValue<string>()).Order(StringComparer.Ordinal), files.Order(StringComparer.Ordinal));
    }

    private static string Written(JsonNode answer) => answer.ToJsonString(Indented) + "\n";

    private static async Task CompareAsync(string file, string text)
    {
        var path = Repository.PathOf("openapi", "examples", "answers", file);
        if (Repository.IsRegenerating)
        {
            await File.WriteAllTextAsync(path, text);
        }

        Assert.True(
            (await File.ReadAllTextAsync(path)).ReplaceLineEndings("\n") == text,
            $"The answer {file} has changed. Look at the change; where it is meant, run tests/regenerate and commit openapi/examples/answers.");
    }
}
