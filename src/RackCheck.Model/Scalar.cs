using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace RackCheck.Model;

/// <summary>A number, a text, a Boolean or a list of these; in JSON the bare value.</summary>
[JsonConverter(typeof(ScalarConverter))]
public readonly record struct Scalar
{
    private readonly string? text;
    private readonly IReadOnlyList<Scalar>? list;
    private readonly double number;
    private readonly ScalarKind kind;

    private Scalar(ScalarKind kind, double number, string? text) => (this.kind, this.number, this.text) = (kind, number, text);

    private Scalar(IReadOnlyList<Scalar> list) => (kind, this.list) = (ScalarKind.List, list);

    private enum ScalarKind : byte
    {
        Number,
        Text,
        Truth,
        List,
    }

    /// <summary>The number, where the value is a number.</summary>
    public double? Number => kind == ScalarKind.Number ? number : null;

    /// <summary>The text, where the value is a text.</summary>
    public string? Text => kind == ScalarKind.Text ? text : null;

    /// <summary>The Boolean, where the value is a Boolean.</summary>
    public bool? Truth => kind == ScalarKind.Truth ? number != 0 : null;

    /// <summary>The values, where the value is a list.</summary>
    public IReadOnlyList<Scalar>? List => list;

    /// <summary>A list of texts, such as ids.</summary>
    /// <param name="values">The texts.</param>
    public static Scalar Ids(IEnumerable<string> values) => new([.. values.Select(v => (Scalar)v)]);

    /// <summary>A list.</summary>
    /// <param name="values">The values.</param>
    public static Scalar Of(IReadOnlyList<Scalar> values) => new(values);

    /// <summary>A range of U positions, in the caller's numbering.</summary>
    /// <param name="from">First U position.</param>
    /// <param name="to">Last U position.</param>
    public static Scalar Range(int from, int to) => new([from, to]);

    /// <summary>A phrase as a code: "front door" is front-door.</summary>
    /// <param name="phrase">Words with single spaces.</param>
    public static string CodeOf(string phrase) => phrase.Replace(' ', '-');

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
        ScalarKind.List => string.Join(", ", list!),
        _ => text ?? "",
    };
}

/// <summary>Reads and writes a <see cref="Scalar"/> as a bare JSON number, string, Boolean or array of these.</summary>
public sealed class ScalarConverter : JsonConverter<Scalar>
{
    /// <inheritdoc/>
    public override Scalar Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.TokenType switch
    {
        JsonTokenType.Number => reader.GetDouble(),
        JsonTokenType.String => reader.GetString()!,
        JsonTokenType.StartArray => ReadList(ref reader, options),
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
        else if (value.List is { } list)
        {
            writer.WriteStartArray();
            foreach (var one in list)
            {
                Write(writer, one, options);
            }

            writer.WriteEndArray();
        }
        else
        {
            writer.WriteStringValue(value.Text);
        }
    }

    private Scalar ReadList(ref Utf8JsonReader reader, JsonSerializerOptions options)
    {
        var list = new List<Scalar>();
        while (reader.Read() && reader.TokenType != JsonTokenType.EndArray)
        {
            list.Add(Read(ref reader, typeof(Scalar), options));
        }

        return Scalar.Of(list);
    }
}
