using System.Buffers;
using System.Reflection;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using RackCheck.Model;
using RackCheck.Model.Converters;
using RackCheck.Model.Json;

namespace RackCheck.Api.Reading;

/// <summary>
/// Finds every fault of a document that the serializer refused. It uses the serializer's metadata, so that the contract is defined once.
/// The serializer stops at the first fault and gives neither its JSON pointer nor a message for the caller.
/// </summary>
internal sealed class RequestDiagnostics
{
    private static readonly JsonSerializerOptions Lenient = MakeLenient();

    private readonly FaultList faults;
    private readonly Utf8JsonWriter sound;

    private RequestDiagnostics(FaultList faults, Utf8JsonWriter sound) => (this.faults, this.sound) = (faults, sound);

    /// <summary>Finds faults of the text itself: not valid JSON, or nested too deep.</summary>
    /// <returns>Whether the body is valid JSON.</returns>
    public static bool IsJson(ReadOnlySpan<byte> body, FaultList faults)
    {
        // No depth limit here: a deeply nested body can be valid JSON. The response then says where it is too deep.
        var reader = new Utf8JsonReader(body, new JsonReaderOptions { MaxDepth = int.MaxValue });
        var path = new List<PathStep>();
        string? tooDeep = null;
        try
        {
            while (reader.Read())
            {
                tooDeep ??= Follow(ref reader, path);
            }
        }
        catch (JsonException fault)
        {
            faults.Add("", FaultCodes.NotJson, $"Not valid JSON: line {fault.LineNumber + 1}, byte {fault.BytePositionInLine + 1}{Cause(fault)}.");
            return false;
        }

        if (tooDeep is not null)
        {
            faults.Add(tooDeep, FaultCodes.TooDeep, $"The nesting is deeper than {ContractJson.DepthLimit} levels.");
        }

        return true;
    }

    /// <summary>Finds every member that is unknown, duplicate, missing or of the wrong type, and reads the rest.</summary>
    /// <param name="body">Valid JSON that is not too deep.</param>
    /// <param name="type">Metadata of the document type.</param>
    /// <param name="faults">Receives the faults.</param>
    /// <returns>The readable part, with nulls for the rest, so that further checks find further faults; null if nothing is readable.</returns>
    public static T? Find<T>(ReadOnlyMemory<byte> body, JsonTypeInfo<T> type, FaultList faults)
        where T : class
    {
        using var document = JsonDocument.Parse(body, new JsonDocumentOptions { MaxDepth = ContractJson.DepthLimit });
        var buffer = new ArrayBufferWriter<byte>(body.Length);
        using (var writer = new Utf8JsonWriter(buffer, new JsonWriterOptions { SkipValidation = true }))
        {
            new RequestDiagnostics(faults, writer).Walk(document.RootElement, type, "", null);
        }

        try
        {
            return (T?)JsonSerializer.Deserialize(buffer.WrittenSpan, Lenient.GetTypeInfo(typeof(T)));
        }
        catch (JsonException)
        {
            // Nothing further can be read. The faults found so far give the reason.
            return null;
        }
    }

    private static JsonSerializerOptions MakeLenient()
    {
        var options = new JsonSerializerOptions(JsonSerializerDefaults.Web)
        {
            MaxDepth = ContractJson.DepthLimit,
            NumberHandling = JsonNumberHandling.Strict,
            TypeInfoResolver = ContractJson.Default.WithAddedModifier(static type =>
            {
                foreach (var property in type.Properties)
                {
                    property.IsRequired = false;
                }
            }),
        };
        options.Converters.Add(new WholeNumberConverter());
        return options;
    }

    private void Walk(JsonElement element, JsonTypeInfo type, string pointer, string? member, ICustomAttributeProvider? attributes = null)
    {
        switch (type.Kind)
        {
            case JsonTypeInfoKind.Object when element.ValueKind == JsonValueKind.Object:
                WalkObject(element, type, pointer, member);
                break;
            case JsonTypeInfoKind.Dictionary when element.ValueKind == JsonValueKind.Object:
                WalkMap(element, type, pointer, member);
                break;
            case JsonTypeInfoKind.Enumerable when element.ValueKind == JsonValueKind.Array:
                WalkList(element, type, pointer, member);
                break;
            case JsonTypeInfoKind.None when type.Type == typeof(BasketCabinet) && element.ValueKind == JsonValueKind.Object:
                WalkObject(element, Metadata(typeof(ExistingCabinet)), pointer, member);
                break;
            case JsonTypeInfoKind.None:
                WalkScalar(element, type, pointer, member, attributes);
                break;
            default:
                var wanted = type.Kind == JsonTypeInfoKind.Enumerable ? "an array" : "an object";
                faults.Add(pointer, FaultCodes.WrongType, $"It is {Kind(element)} where {wanted} is required.");
                WriteNull(member);
                break;
        }
    }

    private void WalkObject(JsonElement element, JsonTypeInfo type, string pointer, string? member)
    {
        Name(member);
        sound.WriteStartObject();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (name, value) in Members(element, pointer, seen))
        {
            var below = FaultList.Below(pointer, name);
            if (type.Properties.FirstOrDefault(p => p.Name == name) is not { } property)
            {
                faults.Add(below, FaultCodes.UnknownMember, $"The contract does not define this member here.{MemberHints.Of(name, type)}");
            }
            else if (value.ValueKind != JsonValueKind.Null)
            {
                Walk(value, Metadata(property.PropertyType), below, name, property.AttributeProvider);
            }
            else if (property.IsRequired)
            {
                faults.Add(below, FaultCodes.NullValue, "It is required and must not be null.");
            }
        }

        foreach (var property in type.Properties)
        {
            if (property.IsRequired && !seen.Contains(property.Name))
            {
                faults.Add(FaultList.Below(pointer, property.Name), FaultCodes.MissingMember, "It is required but missing.");
            }
        }

        sound.WriteEndObject();
    }

    private void WalkMap(JsonElement element, JsonTypeInfo type, string pointer, string? member)
    {
        Name(member);
        sound.WriteStartObject();
        foreach (var (name, value) in Members(element, pointer, new HashSet<string>(StringComparer.Ordinal)))
        {
            WalkElement(value, type.ElementType!, FaultList.Below(pointer, name), name);
        }

        sound.WriteEndObject();
    }

    private void WalkList(JsonElement element, JsonTypeInfo type, string pointer, string? member)
    {
        Name(member);
        sound.WriteStartArray();
        var index = 0;
        foreach (var value in element.EnumerateArray())
        {
            if (faults.HasMore)
            {
                break;
            }

            WalkElement(value, type.ElementType!, FaultList.Below(pointer, index.ToString(System.Globalization.CultureInfo.InvariantCulture)), null);
            index++;
        }

        sound.WriteEndArray();
    }

    private void WalkElement(JsonElement value, Type type, string pointer, string? member)
    {
        if (value.ValueKind == JsonValueKind.Null)
        {
            faults.Add(pointer, FaultCodes.NullValue, "An element must not be null.");
            WriteNull(member);
        }
        else
        {
            Walk(value, Metadata(type), pointer, member);
        }
    }

    private void WalkScalar(JsonElement element, JsonTypeInfo type, string pointer, string? member, ICustomAttributeProvider? attributes)
    {
        try
        {
            JsonSerializer.Deserialize(element, type);
            Name(member);
            element.WriteTo(sound);
        }
        catch (Exception fault) when (fault is JsonException or InvalidOperationException or FormatException)
        {
            var (code, detail) = Explain(element, Nullable.GetUnderlyingType(type.Type) ?? type.Type, attributes);
            faults.Add(pointer, code, detail);
            WriteNull(member);
        }
    }

    // The members of an object, each once. Of duplicate members the first counts.
    private IEnumerable<(string Name, JsonElement Value)> Members(JsonElement element, string pointer, HashSet<string> seen)
    {
        foreach (var property in element.EnumerateObject())
        {
            if (faults.HasMore)
            {
                yield break;
            }

            if (NameOf(property) is not { } name)
            {
                faults.Add(pointer, FaultCodes.WrongForm, "The name of a member is invalid UTF-16: an unpaired surrogate.");
            }
            else if (!seen.Add(name))
            {
                faults.Add(FaultList.Below(pointer, name), FaultCodes.DuplicateMember, "Duplicate member.");
            }
            else
            {
                yield return (name, property.Value);
            }
        }
    }

    private static string? NameOf(JsonProperty property)
    {
        try
        {
            return property.Name;
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }

    private static (string Code, string Detail) Explain(JsonElement element, Type type, ICustomAttributeProvider? attributes)
    {
        if (type.IsEnum && element.ValueKind == JsonValueKind.String)
        {
            return (FaultCodes.UnknownValue, $"It is not one of the allowed values: {string.Join(", ", ContractNames.Of(type))}.");
        }

        if (element.ValueKind == JsonValueKind.Number && (type == typeof(int) || type == typeof(double)))
        {
            return element.TryGetDouble(out var number) && double.IsFinite(number) && Math.Abs(number) < int.MaxValue
                ? (FaultCodes.WrongType, "It is a number with a fraction where an integer is required.")
                : (FaultCodes.OutOfRange, RangeWording.Of(attributes, element.GetDouble()) ?? "It exceeds the largest number allowed here.");
        }

        if (type == typeof(string) && element.ValueKind == JsonValueKind.String)
        {
            return (FaultCodes.WrongForm, "It is invalid UTF-16: an unpaired surrogate.");
        }

        if (type.IsEnum)
        {
            return (FaultCodes.WrongType, $"It is {Kind(element)}. Allowed values: {string.Join(", ", ContractNames.Of(type))}.");
        }

        var wanted = type == typeof(bool) ? "true or false"
            : type == typeof(BasketCabinet) ? $"\"{BasketCabinet.NoCabinet}\" or an object with the existing cabinet"
            : type == typeof(string) ? "a string"
            : "a number";
        return (FaultCodes.WrongType, $"It is {Kind(element)} where {wanted} is required.");
    }

    private static string Kind(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Object => "an object",
        JsonValueKind.Array => "an array",
        JsonValueKind.String => "a string",
        JsonValueKind.Number => "a number",
        JsonValueKind.Null => "null",
        _ => "a Boolean",
    };

    // Metadata of nullable value types is not registered; that of the value type is used.
    private static JsonTypeInfo Metadata(Type type)
    {
        var lenient = Lenient.GetTypeInfo(Nullable.GetUnderlyingType(type) ?? type);
        return lenient.Kind == JsonTypeInfoKind.Object ? ContractJson.Default.GetTypeInfo(lenient.Type)! : lenient;
    }

    // What the reader stopped at, in words for the usual slips; the text of the library speaks of its own options.
    private static string Cause(JsonException fault) => fault.Message switch
    {
        var text when text.Contains("trailing comma", StringComparison.Ordinal) => ": a comma with nothing after it",
        var text when text.Contains("'/' is", StringComparison.Ordinal) => ": a comment",
        var text when text.Contains("''' is", StringComparison.Ordinal) => ": a single quotation mark",
        var text when text.Contains("Expected end of data", StringComparison.Ordinal) => ": something after the end of the document",
        var text when text.Contains("depth to be zero", StringComparison.Ordinal) || text.Contains("end of data", StringComparison.Ordinal) =>
            ": it ends too early",
        _ => "",
    };

    private static string? Follow(ref Utf8JsonReader reader, List<PathStep> path)
    {
        switch (reader.TokenType)
        {
            case JsonTokenType.StartObject or JsonTokenType.StartArray:
                if (path.Count > 0)
                {
                    path[^1] = path[^1].Next();
                }

                path.Add(new PathStep(reader.TokenType == JsonTokenType.StartArray, -1, null));
                return path.Count > ContractJson.DepthLimit ? string.Concat(path.SkipLast(1).Select(s => s.Token)) : null;
            case JsonTokenType.EndObject or JsonTokenType.EndArray:
                path.RemoveAt(path.Count - 1);
                return null;
            case JsonTokenType.PropertyName:
                path[^1] = path[^1] with { Name = NameAt(ref reader) };
                return null;
            default:
                if (path.Count > 0)
                {
                    path[^1] = path[^1].Next();
                }

                return null;
        }
    }

    private static string NameAt(ref Utf8JsonReader reader)
    {
        try
        {
            return reader.GetString()!;
        }
        catch (InvalidOperationException)
        {
            return "?";
        }
    }

    private void Name(string? member)
    {
        if (member is not null)
        {
            sound.WritePropertyName(member);
        }
    }

    private void WriteNull(string? member)
    {
        // A missing member equals a null one. In a list the element must remain, so that indices stay correct.
        if (member is null)
        {
            sound.WriteNullValue();
        }
    }

    private readonly record struct PathStep(bool IsList, int Index, string? Name)
    {
        public string Token => FaultList.Below("", IsList ? Index.ToString(System.Globalization.CultureInfo.InvariantCulture) : Name ?? "");

        public PathStep Next() => this with { Index = Index + 1 };
    }
}
