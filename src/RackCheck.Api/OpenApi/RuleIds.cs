using System.Text.Json.Nodes;
using Microsoft.OpenApi;
using RackCheck.Rules;

namespace RackCheck.Api.OpenApi;

/// <summary>
/// Rule ids in the contract. A request names rules that exist, so it has the list; an answer of a later version can name a new rule, and clients made from this
/// contract have to take it, so it has a pattern.
/// </summary>
internal static class RuleIds
{
    /// <summary>Name of the schema with the list.</summary>
    public const string Schema = "RuleId";

    /// <summary>Pattern of every id: theme and short name.</summary>
    public const string Pattern = "^[a-z]+\\.[a-z0-9]+(-[a-z0-9]+)*$";

    /// <summary>The ids, as JSON.</summary>
    public static IEnumerable<JsonNode> All => RuleSet.Default.All.Select(r => (JsonNode)JsonValue.Create(r.Descriptor.Id));

    /// <summary>Whether a member with this name holds a rule id.</summary>
    public static bool IsName(string member) => member == "rule";

    /// <summary>Whether a list with this name holds rule ids.</summary>
    public static bool IsListName(string member) => member == "rules";

    /// <summary>The list of a request.</summary>
    public static OpenApiSchema List() => new()
    {
        Type = JsonSchemaType.String,
        Enum = [.. All],
        Description = "Id of a rule: theme and short name. An id is never changed and never used again; later versions have further ones.",
    };

    /// <summary>A reference to the list.</summary>
    public static OpenApiSchemaReference Reference(string? description = null) => new(Schema) { Description = description };
}
