using System.Collections.Immutable;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace RackCheck.Model.Converters;

/// <summary>
/// Reads and writes an enum by the contract's names: the name in <see cref="JsonStringEnumMemberNameAttribute"/>, otherwise the member's name in
/// lower-case words joined by hyphens. It accepts nothing else: no number, no other case, no list.
/// </summary>
/// <typeparam name="TEnum">The enum.</typeparam>
/// <remarks>The framework's own converter accepts other cases and comma-separated lists, which the contract does not allow.</remarks>
public sealed class NamedEnumConverter<TEnum> : JsonConverter<TEnum>
    where TEnum : struct, Enum
{
    private static readonly TEnum[] Members = Enum.GetValues<TEnum>();
    private static readonly string[] MemberNames = Array.ConvertAll(Members, NameOf);
    private static readonly byte[][] Utf8Names = Array.ConvertAll(MemberNames, Encoding.UTF8.GetBytes);
    private static readonly JsonEncodedText[] Encoded = Array.ConvertAll(MemberNames, n => JsonEncodedText.Encode(n));

    /// <summary>The names, in the order of the members.</summary>
    public static ImmutableArray<string> Names { get; } = [.. MemberNames];

    /// <summary>The contract's name of a member.</summary>
    /// <param name="value">The member.</param>
    /// <returns>The name.</returns>
    public static string Name(TEnum value) => MemberNames[Array.IndexOf(Members, value)];

    /// <summary>The contract's name of a member in UTF-8.</summary>
    /// <param name="value">The member.</param>
    /// <returns>The name.</returns>
    /// <remarks>The members of a contract's enum are numbered from 0 on, so a member is its own index.</remarks>
    internal static ReadOnlySpan<byte> Utf8Name(TEnum value) => Utf8Names[Unsafe.BitCast<TEnum, int>(value)];

    /// <summary>Reads a member.</summary>
    /// <param name="reader">The reader, at the name.</param>
    /// <returns>The member.</returns>
    /// <exception cref="JsonException">It is no name of the contract.</exception>
    public static TEnum Read(ref Utf8JsonReader reader)
    {
        if (reader.TokenType == JsonTokenType.String)
        {
            for (var i = 0; i < Utf8Names.Length; i++)
            {
                if (reader.ValueTextEquals(Utf8Names[i]))
                {
                    return Members[i];
                }
            }
        }

        throw new JsonException();
    }

    /// <inheritdoc/>
    public override TEnum Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => Read(ref reader);

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, TEnum value, JsonSerializerOptions options) =>
        writer.WriteStringValue(Encoded[Unsafe.BitCast<TEnum, int>(value)]);

    private static string NameOf(TEnum value)
    {
        var name = value.ToString();
        return typeof(TEnum).GetField(name)!.GetCustomAttribute<JsonStringEnumMemberNameAttribute>()?.Name
            ?? JsonNamingPolicy.KebabCaseLower.ConvertName(name);
    }
}
