using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace RackCheck.Model;

/// <summary>A number, a word or a truth value; in JSON just that.</summary>
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

    /// <summary>The number, where it is one.</summary>
    public double? Number => kind == ScalarKind.Number ? number : null;

    /// <summary>The word, where it is one.</summary>
    public string? Text => kind == ScalarKind.Text ? text : null;

    /// <summary>The truth value, where it is one.</summary>
    public bool? Truth => kind == ScalarKind.Truth ? number != 0 : null;

    /// <summary>A number.</summary>
    /// <param name="value">The number.</param>
    public static implicit operator Scalar(double value) => new(ScalarKind.Number, value, null);

    /// <summary>A whole number.</summary>
    /// <param name="value">The number.</param>
    public static implicit operator Scalar(int value) => new(ScalarKind.Number, value, null);

    /// <summary>A word.</summary>
    /// <param name="value">The word.</param>
    public static implicit operator Scalar(string value) => new(ScalarKind.Text, 0, value);

    /// <summary>A truth value.</summary>
    /// <param name="value">The truth value.</param>
    public static implicit operator Scalar(bool value) => new(ScalarKind.Truth, value ? 1 : 0, null);

    /// <summary>As a sentence shows it: a number with at most three decimals, in the invariant culture.</summary>
    /// <returns>The text.</returns>
    public override string ToString() => kind switch
    {
        ScalarKind.Number => number.ToString("0.###", CultureInfo.InvariantCulture),
        ScalarKind.Truth => number != 0 ? "yes" : "no",
        _ => text ?? "",
    };
}

/// <summary>Reads and writes a <see cref="Scalar"/> as a bare JSON number, string or truth value.</summary>
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
