using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization.Metadata;
using System.Text.RegularExpressions;
using Microsoft.OpenApi;
using RackCheck.Api.Reading;
using RackCheck.Model;

namespace RackCheck.Api.OpenApi;

/// <summary>
/// What stands in for an absent member. A <c>default</c> is for members whose absence means just that value. Where a product of the catalogue, a range or an
/// assumption can take its place, the value is in an extension: generators write a <c>default</c> into every request, and a client would send
/// assumptions as facts.
/// </summary>
internal static partial class StatedDefaults
{
    /// <summary>Name of the extension.</summary>
    public const string Extension = "x-assumed";

    /// <summary>Adds the value that the member's text names.</summary>
    public static void Mark(OpenApiSchema schema, JsonPropertyInfo property)
    {
        if (Find(schema.Description, property) is not { } value)
        {
            return;
        }

        if (IsDefault(property))
        {
            schema.Default = value;
        }
        else
        {
            (schema.Extensions ??= new Dictionary<string, IOpenApiExtension>(StringComparer.Ordinal))[Extension] = new JsonNodeExtension(value);
        }
    }

    private static bool IsDefault(JsonPropertyInfo property) => property.AttributeProvider!.IsDefined(typeof(AbsentMeansDefaultAttribute), true);

    // The text of the member is the only home of the value; a test compares it with the assumptions of reports.
    private static JsonNode? Find(string? description, JsonPropertyInfo property)
    {
        var word = Stated().Match(description ?? "").Groups["value"].Value;
        var type = Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;
        return type == typeof(bool) && bool.TryParse(word, out var truth) ? JsonValue.Create(truth)
            : type == typeof(int) && int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var whole) ? JsonValue.Create(whole)
            : type == typeof(double) && double.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? JsonValue.Create(number)
            : type.IsEnum && ContractNames.Of(type).Contains(word) ? JsonValue.Create(word)
            : null;
    }

    [GeneratedRegex(@"\bDefault:? (?<value>[A-Za-z0-9-]+(\.[0-9]+)?)")]
    private static partial Regex Stated();
}
