using System.ComponentModel.DataAnnotations;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization.Metadata;
using Microsoft.OpenApi;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Rules;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace RackCheck.Api.OpenApi;

/// <summary>Aligns the schemas with the reader: required members, refusal of unknown members, and rule ids.</summary>
internal sealed class ContractSchemaFilter : ISchemaFilter
{
    private static readonly HashSet<Type> Answers = [typeof(CheckReport), typeof(Problem), typeof(RuleList), typeof(RulePage), typeof(ReferenceTable)];

    /// <inheritdoc/>
    public void Apply(IOpenApiSchema schema, SchemaFilterContext context)
    {
        if (schema is not OpenApiSchema { Properties: { } properties } own
            || ContractJson.Default.GetTypeInfo(context.Type) is not { Kind: JsonTypeInfoKind.Object } type)
        {
            return;
        }

        own.Required = type.Properties.Where(p => p.IsRequired).Select(p => p.Name).ToHashSet(StringComparer.Ordinal);

        // The reader refuses unknown members. Responses may gain members, and clients must accept that.
        own.AdditionalPropertiesAllowed = !RequestTypes.Contains(context.Type);
        foreach (var property in type.Properties)
        {
            if (properties.TryGetValue(property.Name, out var member) && member is OpenApiSchema memberSchema)
            {
                Complete(memberSchema, property, context.Type);
            }
        }
    }

    private static void Complete(OpenApiSchema schema, JsonPropertyInfo property, Type owner)
    {
        if (property.AttributeProvider?.GetCustomAttributes(typeof(AllowedValuesAttribute), true) is [AllowedValuesAttribute allowed])
        {
            schema.Enum = [.. allowed.Values.Select(v => (JsonNode)JsonValue.Create((int)v!))];
        }

        if (property.Name == "rule" && (owner == typeof(Acceptance) || owner == typeof(Finding) || owner == typeof(NotAssessed)))
        {
            schema.Enum = [.. RuleIds()];
        }
    }

    /// <summary>The ids of the rules, as JSON.</summary>
    public static IEnumerable<JsonNode> RuleIds() => RuleSet.Default.All.Select(r => (JsonNode)JsonValue.Create(r.Descriptor.Id));
}
