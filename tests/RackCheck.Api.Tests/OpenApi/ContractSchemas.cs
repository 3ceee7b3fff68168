using System.Collections.Concurrent;
using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using RackCheck.Testing;

namespace RackCheck.Api.Tests.OpenApi;

/// <summary>The schemas of the contract for an independent validator, which takes the committed file as a client does.</summary>
public static class ContractSchemas
{
    private static readonly ConcurrentDictionary<string, Lazy<JsonSchema>> Built = new(StringComparer.Ordinal);

    private static readonly Lazy<JsonNode> Shared = new(static () =>
    {
        var schemas = JsonNode.Parse(Repository.Read("openapi", "rack-check.v1.json"))!["components"]!["schemas"]!;
        return WithoutExtensions(schemas);
    });

    /// <summary>What a document violates; nothing where it satisfies a schema.</summary>
    public static IReadOnlyList<string> Faults(string schema, string json)
    {
        using var document = JsonDocument.Parse(json);
        return Faults(schema, document.RootElement);
    }

    /// <summary>What a document violates; nothing where it satisfies a schema.</summary>
    public static IReadOnlyList<string> Faults(string schema, JsonElement document)
    {
        var options = new EvaluationOptions { OutputFormat = OutputFormat.List, RequireFormatValidation = true };
        var results = Built.GetOrAdd(schema, static name => new Lazy<JsonSchema>(() => Build(name))).Value.Evaluate(document, options);
        return results.IsValid
            ? []
            :
            [
                .. (results.Details ?? []).Where(d => d.Errors is { Count: > 0 }).Select(d => $"{d.InstanceLocation}: {string.Join("; ", d.Errors!.Values)}"),
                "not valid",
            ];
    }

    /// <summary>Asserts that a document satisfies a schema.</summary>
    public static void AssertValid(string schema, string json) => Assert.Empty(Faults(schema, json));

    /// <summary>A copy of schemas without extensions: the validator refuses keywords that JSON Schema does not define. No member begins so.</summary>
    public static JsonNode WithoutExtensions(JsonNode schemas)
    {
        var copy = schemas.DeepClone();
        RemoveExtensions(copy);
        return copy;
    }

    private static JsonSchema Build(string schema) => JsonSchema.FromText(new JsonObject
    {
        ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
        ["$id"] = $"https://rack-check.example/{schema}",
        ["$ref"] = $"#/components/schemas/{schema}",
        ["components"] = new JsonObject { ["schemas"] = Shared.Value.DeepClone() },
    }.ToJsonString());

    private static void RemoveExtensions(JsonNode? at)
    {
        if (at is JsonArray list)
        {
            foreach (var element in list)
            {
                RemoveExtensions(element);
            }
        }
        else if (at is JsonObject members)
        {
            foreach (var (name, value) in members.ToArray())
            {
                if (name.StartsWith("x-", StringComparison.Ordinal))
                {
                    members.Remove(name);
                }
                else
                {
                    RemoveExtensions(value);
                }
            }
        }
    }
}
