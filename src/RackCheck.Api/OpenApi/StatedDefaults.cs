using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization.Metadata;
using System.Text.RegularExpressions;
using Microsoft.OpenApi;
using RackCheck.Api.Reading;
using RackCheck.Model;

namespace RackCheck.Api.OpenApi;

/// <summary>
/// What stands in for an absent member, as extensions. The keyword <c>default</c> is not used: generators write it into every request, so that a client would
/// send assumptions as facts, or make the member required.
/// </summary>
internal static partial class StatedDefaults
{
    /// <summary>Extension of a member whose value a product of the catalogue, a range or an assumption takes.</summary>
    public const string Assumed = "x-assumed";

    /// <summary>Extension of a member whose absence means just the value.</summary>
    public const string Plain = "x-default";

    /// <summary>Adds the value that the member's text names.</summary>
    public static void Mark(OpenApiSchema schema, JsonPropertyInfo property)
    {
        if (Find(schema.Description, property) is { } value)
        {
            var name = property.AttributeProvider!.IsDefined(typeof(AbsentMeansDefaultAttribute), true) ? Plain : Assumed;
            (schema.Extensions ??= new Dictionary<string, IOpenApiExtension>(StringComparer.Ordinal))[name] = new JsonNodeExtension(value);
        }
    }

    // The text of the member is the only home of the value; a test compares it with the assumptions of reports.
    private static JsonValue? Find(string? description, JsonPropertyInfo property)
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
