using System.Text.Json.Nodes;
using Microsoft.OpenApi;
using RackCheck.Api.Reading;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace RackCheck.Api.OpenApi;

/// <summary>Says what each value of an enum means: for people in the description, for generators in an extension.</summary>
internal sealed class EnumSchemaFilter : ISchemaFilter
{
    /// <inheritdoc/>
    public void Apply(IOpenApiSchema schema, SchemaFilterContext context)
    {
        if (schema is not OpenApiSchema { Enum: not null } own || !context.Type.IsEnum)
        {
            return;
        }

        var meanings = Enum.GetNames(context.Type).Select(n => DocumentedMembers.Of(context.Type, n)).ToArray();
        var lines = ContractNames.Of(context.Type).Zip(meanings, static (name, meaning) => $"- `{name}`: {meaning}");
        own.Description = $"{own.Description}\n\n{string.Join('\n', lines)}";
        (own.Extensions ??= new Dictionary<string, IOpenApiExtension>(StringComparer.Ordinal))["x-enum-descriptions"] =
            new JsonNodeExtension(new JsonArray([.. meanings.Select(m => (JsonNode)JsonValue.Create(m))]));
    }
}
