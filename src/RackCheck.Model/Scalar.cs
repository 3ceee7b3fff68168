using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace RackCheck.Model;

/// <summary>A number, a text or a Boolean; in JSON the bare value.</summary>
[JsonConverter(typeof(ScalarConverter))]
public readonly record struct Scalar
{
    private readonly string? text;
    private readonly double number;
    private readonly ScalarKind kind;

    private Scalar(ScalarKind kind, double number, string? text) => (this.kind, this.number, this.text) = (kind, number, text);

    private enum ScalarKind : byte
    {
        Number,
        Text,
        Truth,
    }

    /// <summary>The number, where the value is a number.</summary>
    public double? Number => kind == ScalarKind.Number ? number : null;

    /// <summary>The text, where the value is a text.</summary>
    public string? Text => kind == ScalarKind.Text ? text : null;

    /// <summary>The Boolean, where the value is a Boolean.</summary>
    public bool? Truth => kind == ScalarKind.Truth ? number != 0 : null;

    /// <summary>A number.</summary>
    /// <param name="value">The number.</param>
    public static implicit operator Scalar(double value) => new(ScalarKind.Number, value, null);

    /// <summary>A whole number.</summary>
    /// <param name="value">The number.</param>
    public static implicit operator Scalar(int value) => new(ScalarKind.Number, value, null);

    /// <summary>A text.</summary>
    /// <param name="value">The text.</param>
    public static implicit operator Scalar(string value) => new(ScalarKind.Text, 0, value);

    /// <summary>A Boolean.</summary>
    /// <param name="value">The Boolean.</param>
    public static implicit operator Scalar(bool value) => new(ScalarKind.Truth, value ? 1 : 0, null);

    /// <summary>The value as shown in a sentence: a number with at most three decimals, in the invariant culture.</summary>
    /// <returns>The text.</returns>
    public override string ToString() => kind switch
    {
        ScalarKind.Number => number.ToString("0.###", CultureInfo.InvariantCulture),
        ScalarKind.Truth => number != 0 ? "yes" : "no",
        _ => text ?? "",
    };
}

/// <summary>Reads and writes a <see cref="Scalar"/> as a bare JSON number, string or Boolean.</summary>
public sealed class ScalarConverter : JsonConverter<Scalar>
{
    /// <inheritdoc/>
    public override Scalar Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.TokenType switch
    {
        JsonTokenType.Number => reader.GetDouble(),
        JsonTokenType.String => reader.GetString()!,
        JsonTokenType.True or JsonTokenType.False => reader.GetBoolean(),
        _ => throw new JsonException(),
    };

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, Scalar value, JsonSerializerOptions options)
    {
        if (value.Number is { } number)
        {
            writer.WriteNumberValue(number);
        }
        else if (value.Truth is { } truth)
        {
            writer.WriteBooleanValue(truth);
        }
        else
        {
            writer.WriteStringValue(value.Text);
        }
    }
}
