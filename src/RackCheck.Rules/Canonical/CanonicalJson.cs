using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using RackCheck.Model;
using RackCheck.Model.Json;

namespace RackCheck.Rules.Canonical;

/// <summary>The canonical form of a description: RFC 8785. Members in order of their UTF-16 code units, numbers as ECMAScript writes them, no absent members.</summary>
public static class CanonicalJson
{
    private static readonly JsonSerializerOptions Options = MakeOptions();

    /// <summary>How a description is written in canonical form.</summary>
    public static JsonTypeInfo<RackDescription> Description { get; } = (JsonTypeInfo<RackDescription>)Options.GetTypeInfo(typeof(RackDescription));

    /// <summary>Settings of the writer that go with it.</summary>
    public static JsonWriterOptions WriterOptions { get; } = new() { Encoder = CanonicalEncoder.Instance, SkipValidation = true };

    /// <summary>A number as ECMAScript writes it, which RFC 8785 section 3.2.2.3 asks for.</summary>
    /// <param name="value">A finite number.</param>
    /// <returns>The text. Examples: 1e21 gives 1e+21, 0.000001 gives 0.000001, -0 gives 0.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not finite.</exception>
    public static string Number(double value)
    {
        if (!double.IsFinite(value))
        {
            throw new ArgumentOutOfRangeException(nameof(value), value, "JSON has no such number.");
        }

        if (value == Math.Truncate(value) && Math.Abs(value) < 1e15)
        {
            return ((long)value).ToString(CultureInfo.InvariantCulture);
        }

        // The framework's shortest form has the digits of ECMAScript's, in another layout.
        var scientific = value.ToString("E16", CultureInfo.InvariantCulture);
        var shortest = value.ToString("R", CultureInfo.InvariantCulture);
        var point = int.Parse(scientific.AsSpan(scientific.IndexOf('E', StringComparison.Ordinal) + 1), CultureInfo.InvariantCulture) + 1;
        var mantissa = shortest.Split('E')[0].TrimStart('-').Replace(".", "", StringComparison.Ordinal).Trim('0');
        var sign = value < 0 ? "-" : "";
        return sign + point switch
        {
            > 0 and <= 21 when mantissa.Length <= point => mantissa.PadRight(point, '0'),
            > 0 and <= 21 => mantissa[..point] + "." + mantissa[point..],
            > -6 and <= 0 => "0." + new string('0', -point) + mantissa,
            _ => mantissa[..1] + (mantissa.Length > 1 ? "." + mantissa[1..] : "") + "e" + (point > 0 ? "+" : "-")
                + Math.Abs(point - 1).ToString(CultureInfo.InvariantCulture),
        };
    }

    private static JsonSerializerOptions MakeOptions()
    {
        var options = new JsonSerializerOptions(JsonSerializerDefaults.Web)
        {
            DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
            Encoder = CanonicalEncoder.Instance,
            MaxDepth = ContractJson.DepthLimit,
            TypeInfoResolver = ContractJson.Default.WithAddedModifier(SortMembers),
        };
        options.Converters.Add(new NumberConverter());
        options.Converters.Add(new MapConverter<RulePolicy>());
        options.Converters.Add(new MapConverter<double>());
        return options;
    }

    private static void SortMembers(JsonTypeInfo type)
    {
        if (type.Kind != JsonTypeInfoKind.Object)
        {
            return;
        }

        var sorted = type.Properties.OrderBy(p => p.Name, StringComparer.Ordinal).ToArray();
        type.Properties.Clear();
        foreach (var property in sorted)
        {
            type.Properties.Add(property);
        }
    }

    private sealed class NumberConverter : JsonConverter<double>
    {
        public override double Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.GetDouble();

        public override void Write(Utf8JsonWriter writer, double value, JsonSerializerOptions options)
        {
            if (value == Math.Truncate(value) && Math.Abs(value) < 1e15)
            {
                writer.WriteNumberValue((long)value);
            }
            else
            {
                writer.WriteRawValue(Number(value), skipInputValidation: true);
            }
        }
    }

    private sealed class MapConverter<T> : JsonConverter<IReadOnlyDictionary<string, T>>
    {
        public override IReadOnlyDictionary<string, T>? Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            throw new NotSupportedException("The canonical form is written only.");

        public override void Write(Utf8JsonWriter writer, IReadOnlyDictionary<string, T> value, JsonSerializerOptions options)
        {
            var type = (JsonTypeInfo<T>)options.GetTypeInfo(typeof(T));
            writer.WriteStartObject();
            foreach (var (name, member) in value.OrderBy(m => m.Key, StringComparer.Ordinal))
            {
                writer.WritePropertyName(name);
                JsonSerializer.Serialize(writer, member, type);
            }

            writer.WriteEndObject();
        }
    }

    /// <summary>Escapes what RFC 8785 section 3.2.2.2 escapes, and nothing else.</summary>
    private sealed class CanonicalEncoder : JavaScriptEncoder
    {
        public static CanonicalEncoder Instance { get; } = new();

        public override int MaxOutputCharactersPerInputCharacter => 6;

        public override bool WillEncode(int unicodeScalar) => unicodeScalar is < 0x20 or '"' or '\\';

        public override unsafe int FindFirstCharacterToEncode(char* text, int textLength)
        {
            for (var i = 0; i < textLength; i++)
            {
                if (WillEncode(text[i]))
                {
                    return i;
                }
            }

            return -1;
        }

        public override unsafe bool TryEncodeUnicodeScalar(int unicodeScalar, char* buffer, int bufferLength, out int numberOfCharactersWritten)
        {
            var text = unicodeScalar switch
            {
                '"' => "\\\"",
                '\\' => "\\\\",
                '\b' => "\\b",
                '\t' => "\\t",
                '\n' => "\\n",
                '\f' => "\\f",
                '\r' => "\\r",
                < 0x20 => string.Create(CultureInfo.InvariantCulture, $"\\u{unicodeScalar:x4}"),
                _ => char.ConvertFromUtf32(unicodeScalar),
            };
            numberOfCharactersWritten = text.Length;
            return text.TryCopyTo(new Span<char>(buffer, bufferLength));
        }
    }
}
