using System.ComponentModel.DataAnnotations;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization.Metadata;
using Microsoft.OpenApi;
using RackCheck.Model;
using RackCheck.Model.Json;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace RackCheck.Api.OpenApi;

/// <summary>
/// Aligns the schemas with the reader and the writer: required members, refusal of unknown members, null only where the reader takes it, text without control
/// characters, rule ids, and the values assumed for absent members.
/// </summary>
internal sealed class ContractSchemaFilter : ISchemaFilter
{
    // As the reader: text goes into logs, sheets and drawings.
    private const string NoControlCharacters = @"^[^\u0000-\u001f]*$";

    /// <inheritdoc/>
    public void Apply(IOpenApiSchema schema, SchemaFilterContext context)
    {
        if (schema is not OpenApiSchema { Properties: { } properties } own)
        {
            return;
        }

        if (ContractJson.Default.GetTypeInfo(context.Type) is not { Kind: JsonTypeInfoKind.Object } type)
        {
            // Health and version, which are no part of the serializer's context. They leave out what is null as well.
            own.AdditionalPropertiesAllowed = true;
            own.Required = properties.Where(p => p.Value.Type?.HasFlag(JsonSchemaType.Null) != true).Select(p => p.Key).ToHashSet(StringComparer.Ordinal);
            foreach (var member in properties.Values.OfType<OpenApiSchema>())
            {
                member.Type &= ~JsonSchemaType.Null;
            }

            return;
        }

        own.Required = type.Properties.Where(p => p.IsRequired).Select(p => p.Name).ToHashSet(StringComparer.Ordinal);

        // The reader refuses unknown members. Responses may gain members, and clients must accept that.
        var isRequest = RequestTypes.Contains(context.Type);
        own.AdditionalPropertiesAllowed = !isRequest;
        foreach (var property in type.Properties)
        {
            if (properties.TryGetValue(property.Name, out var member))
            {
                properties[property.Name] = isRequest ? OfRequest(member, property) : OfAnswer(member, property, context);
            }
        }
    }

    private static IOpenApiSchema OfRequest(IOpenApiSchema member, JsonPropertyInfo property)
    {
        if (RuleIds.IsName(property.Name))
        {
            return RuleIds.Reference(member.Description);
        }

        if (member is OpenApiSchemaReference { } required && property.IsRequired)
        {
            return required;
        }

        var own = member as OpenApiSchema ?? OrNull(member);
        if (own.OneOf is { } forms && forms.Count > 0 && forms.All(f => f.Type != JsonSchemaType.Null))
        {
            forms.Insert(0, new OpenApiSchema { Type = JsonSchemaType.Null });
        }

        if (property.AttributeProvider?.GetCustomAttributes(typeof(AllowedValuesAttribute), true) is [AllowedValuesAttribute allowed])
        {
            LimitTo([.. allowed.Values.Select(v => (int)v!)], own);
        }

        LimitText(own);
        if (own.Items is OpenApiSchema { Type: JsonSchemaType.String } items)
        {
            (items.MinLength, items.MaxLength, items.Pattern) = (1, 64, NoControlCharacters);
        }

        StatedDefaults.Mark(own, property);
        return own;
    }

    // Not as an enum: generators make text of it, which the reader refuses.
    private static void LimitTo(int[] allowed, OpenApiSchema own)
    {
        var (least, greatest) = (allowed.Min(), allowed.Max());
        own.Minimum = least.ToString(CultureInfo.InvariantCulture);
        own.Maximum = greatest.ToString(CultureInfo.InvariantCulture);
        var gaps = Enumerable.Range(least, greatest - least).Except(allowed).Select(v => (JsonNode)JsonValue.Create(v)).ToList();
        own.Not = gaps.Count == 0 ? null : new OpenApiSchema { Enum = gaps };
    }

    private static void LimitText(OpenApiSchema own)
    {
        if (own.Type?.HasFlag(JsonSchemaType.String) == true && own.Pattern is null)
        {
            own.Pattern = NoControlCharacters;
        }
    }

    // The reader takes null for an absent member.
    private static OpenApiSchema OrNull(IOpenApiSchema reference)
    {
        var own = new OpenApiSchema { Description = reference.Description, OneOf = [new OpenApiSchema { Type = JsonSchemaType.Null }, reference] };
        ((OpenApiSchemaReference)reference).Description = null;
        return own;
    }

    // The writer leaves out what is null.
    private static IOpenApiSchema OfAnswer(IOpenApiSchema member, JsonPropertyInfo property, SchemaFilterContext context)
    {
        if (context.Type == typeof(RulePage) && property.PropertyType == typeof(JsonElement))
        {
            return new OpenApiSchemaReference(nameof(RackDescription)) { Description = member.Description };
        }

        if (member is not OpenApiSchema own)
        {
            return member;
        }

        own.Type &= ~JsonSchemaType.Null;
        var isRule = RuleIds.IsName(property.Name)
            || (property.Name == "id" && (context.Type == typeof(RuleSummary) || context.Type == typeof(RulePage)));
        if (isRule)
        {
            own.Pattern = RuleIds.Pattern;
        }
        else if (RuleIds.IsListName(property.Name) && own.Items is OpenApiSchema { Type: JsonSchemaType.String } items)
        {
            items.Pattern = RuleIds.Pattern;
        }

        return own;
    }
}
