using System.Text.Json;
using System.Text.Json.Serialization;

namespace RackCheck.Model.Converters;

/// <summary>Reads a whole number as JSON Schema defines it: 42 and 42.0 are equal. The framework's own converter rejects 42.0.</summary>
public sealed class WholeNumberConverter : JsonConverter<int>
{
    /// <summary>Reads a whole number.</summary>
    /// <param name="reader">The reader, at the number.</param>
    /// <returns>The number.</returns>
    /// <exception cref="JsonException">It is no whole number, or too large.</exception>
    public static int Read(ref Utf8JsonReader reader)
    {
        if (reader.TokenType != JsonTokenType.Number)
        {
            throw new JsonException();
        }

        if (reader.TryGetInt32(out var whole))
        {
            return whole;
        }

        return reader.TryGetDouble(out var number) && number == Math.Truncate(number) && Math.Abs(number) <= int.MaxValue
            ? (int)number
            : throw new JsonException();
    }

    /// <inheritdoc/>
    public override int Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => Read(ref reader);

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, int value, JsonSerializerOptions options) => writer.WriteNumberValue(value);
}
