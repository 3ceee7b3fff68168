using System.Text.Json.Nodes;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.OpenApi;

/// <summary>The contract breaks no client of the baseline, which is the last released one; tests/release-contract writes it.</summary>
public sealed class ContractChangesTests
{
    private static readonly string[] BaselineFile = ["openapi", "rack-check.v1.baseline.json"];

    // Answers have it only where the caller prefers lowest-cost, which no client of the baseline can ask for.
    private static readonly string[] OnlyOnRequest = ["ObjectiveName: values \"cost\" are new in an answer"];

    private static JsonNode Contract => JsonNode.Parse(Repository.Read("openapi", "rack-check.v1.json"))!;

    [Fact]
    public async Task Contract_breaks_no_client_of_the_baseline()
    {
        if (Environment.GetEnvironmentVariable("RACKCHECK_RELEASE") == "1")
        {
            await File.WriteAllTextAsync(Repository.PathOf(BaselineFile), Reduced(Contract).ToJsonString(new() { WriteIndented = true }) + "\n");
        }

        string[] changes = [.. ContractChanges.Breaking(JsonNode.Parse(Repository.Read(BaselineFile))!, Contract).Except(OnlyOnRequest)];
        Assert.True(changes.Length == 0, "Breaking changes, which need a new version of the contract:\n" + string.Join('\n', changes));
    }

    [Theory]
    [InlineData("/paths/~1v1~1rulesets", null, "get /v1/rulesets is gone")]
    [InlineData("/paths/~1v1~1checks/post/parameters/0/name", "\"use\"", "post /v1/checks: parameter apply is gone")]
    [InlineData("/paths/~1v1~1checks/post/parameters/0/required", "true", "post /v1/checks: parameter apply is required now")]
    [InlineData("/paths/~1v1~1parts-lists/post/responses/200/content/text~1csv", null, "post /v1/parts-lists 200: text/csv is gone")]
    [InlineData("/components/schemas/Cabinet/properties/heightU", null, "Cabinet.heightU is gone")]
    [InlineData("/components/schemas/Cabinet/properties/heightU/maximum", "59", "Cabinet.heightU: maximum is lower")]
    [InlineData("/components/schemas/Cabinet/properties/heightU/minimum", "2", "Cabinet.heightU: minimum is higher")]
    [InlineData("/components/schemas/Cabinet/properties/widthMm/type", "\"number\"", "Cabinet.widthMm has another type")]
    [InlineData("/components/schemas/Cabinet/required", "[\"heightU\"]", "Cabinet: \"heightU\" is required now")]
    [InlineData("/components/schemas/Item/properties/id/maxLength", "32", "Item.id: maxLength is lower")]
    [InlineData("/components/schemas/Item/properties/id/pattern", "\"^a$\"", "Item.id has another pattern")]
    [InlineData("/components/schemas/Region/enum/2", null, "Region: values \"na\" are taken no longer")]
    [InlineData("/components/schemas/Verdict/enum/-", "\"wait\"", "Verdict: values \"wait\" are new in an answer")]
    [InlineData("/components/schemas/CheckReport/properties/figures", null, "CheckReport.figures is gone")]
    [InlineData("/components/schemas/CheckReport/required/0", null, "CheckReport: \"verdict\" can be absent now")]
    [InlineData("/components/schemas/Finding/properties/message/type", "\"number\"", "Finding.message has another type")]
    [InlineData("/components/schemas/Cabinet/properties/frontDoor/oneOf/1/$ref", "\"#/components/schemas/Roof\"", "Cabinet.frontDoor.oneOf: a form is gone")]
    public void Breaking_change_is_found(string pointer, string? value, string expected)
    {
        var changed = Contract;
        Set(changed, pointer, value);
        Assert.Contains(expected, ContractChanges.Breaking(Contract, changed));
    }

    [Theory]
    [InlineData("/paths/~1v1~1further", "{ \"get\": { \"responses\": {} } }")]
    [InlineData("/components/schemas/Cabinet/properties/colour", "{ \"type\": [ \"null\", \"string\" ] }")]
    [InlineData("/components/schemas/Cabinet/properties/heightU/maximum", "70")]
    [InlineData("/components/schemas/CheckReport/properties/colour", "{ \"type\": \"string\" }")]
    [InlineData("/components/schemas/Region/enum/-", "\"au\"")]
    [InlineData("/components/schemas/RuleId/enum/-", "\"layout.none\"")]
    [InlineData("/components/schemas/Cabinet/description", "\"Another text.\"")]
    public void Change_that_clients_take_is_none(string pointer, string value)
    {
        var changed = Contract;
        Set(changed, pointer, value);
        Assert.Empty(ContractChanges.Breaking(Contract, changed));
    }

    // Nothing for people, which breaks no client.
    private static JsonObject Reduced(JsonNode contract)
    {
        var copy = contract.DeepClone().AsObject();
        copy["components"]!.AsObject().Remove("examples");
        Remove(copy);
        return copy;
    }

    private static void Remove(JsonNode? at)
    {
        if (at is JsonArray list)
        {
            foreach (var element in list)
            {
                Remove(element);
            }
        }
        else if (at is JsonObject members)
        {
            foreach (var (name, value) in members.ToArray())
            {
                var isText = name is "description" or "summary" or "title" && value is JsonValue;
                if (isText || name is "example" or "examples" || name.StartsWith("x-", StringComparison.Ordinal))
                {
                    members.Remove(name);
                }
                else
                {
                    Remove(value);
                }
            }
        }
    }

    private static void Set(JsonNode document, string pointer, string? value)
    {
        var names = pointer.Split('/').Skip(1).Select(n => n.Replace("~1", "/", StringComparison.Ordinal)).ToArray();
        var at = names[..^1].Aggregate(document, (node, name) => node is JsonArray list ? list[int.Parse(name)]! : node[name]!);
        var (last, node) = (names[^1], value is null ? null : JsonNode.Parse(value));
        switch (at)
        {
            case JsonArray list when last == "-":
                list.Add(node);
                break;
            case JsonArray list:
                list.RemoveAt(int.Parse(last));
                break;
            case JsonObject members when node is null:
                Assert.True(members.Remove(last));
                break;
            default:
                at[last] = node;
                break;
        }
    }
}
