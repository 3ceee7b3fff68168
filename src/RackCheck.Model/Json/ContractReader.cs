using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using System.Text.RegularExpressions;
using RackCheck.Model.Converters;

namespace RackCheck.Model.Json;

/// <summary>
/// Reads requests in one pass, without boxing. The methods of the records are written when the contract is compiled, by RackCheck.ContractGenerator from the
/// records. They accept what the serializer accepts in <see cref="ContractJson"/> and the attributes of the members allow, and read the same; what they refuse,
/// the serializer decides.
/// </summary>
[Reads(typeof(RackDescription))]
[Reads(typeof(BasketRequest))]
[Reads(typeof(ProposalRequest))]
[Reads(typeof(ComparisonRequest))]
[Reads(typeof(ElevationRequest))]
[Reads(typeof(ExistingCabinet))]
public static partial class ContractReader
{
    private const int MostOfId = 64;

    private delegate T Reading<out T>(ref Utf8JsonReader reader);

    private static T? Whole<T>(ReadOnlySpan<byte> json, Reading<T> read)
        where T : class
    {
        var reader = new Utf8JsonReader(json, new JsonReaderOptions { MaxDepth = ContractJson.DepthLimit });
        try
        {
            reader.Read();
            var document = read(ref reader);
            return reader.Read() ? null : document;
        }
        catch (Exception fault) when (fault is JsonException or InvalidOperationException or FormatException)
        {
            return null;
        }
    }

    private static void Begin(ref Utf8JsonReader reader)
    {
        if (reader.TokenType != JsonTokenType.StartObject)
        {
            throw Refused();
        }
    }

    // Goes to the name of the next member. A name with an escape sequence is compared by nothing here.
    private static bool Next(ref Utf8JsonReader reader)
    {
        reader.Read();
        return reader.TokenType == JsonTokenType.EndObject ? false : !reader.ValueIsEscaped ? true : throw Refused();
    }

    private static void Mark(ref ulong seen, ulong member)
    {
        if ((seen & member) != 0)
        {
            throw Refused();
        }

        seen |= member;
    }

    private static void Require(ulong seen, ulong required)
    {
        if ((seen & required) != required)
        {
            throw Refused();
        }
    }

    private static bool IsValue(ref Utf8JsonReader reader)
    {
        reader.Read();
        return reader.TokenType != JsonTokenType.Null;
    }

    private static void Value(ref Utf8JsonReader reader)
    {
        if (!IsValue(ref reader))
        {
            throw Refused();
        }
    }

    private static string Text(ref Utf8JsonReader reader) => reader.GetString() ?? throw Refused();

    private static double Number(ref Utf8JsonReader reader) => reader.GetDouble();

    private static int WholeNumber(ref Utf8JsonReader reader) => WholeNumberConverter.Read(ref reader);

    private static TEnum Named<TEnum>(ref Utf8JsonReader reader)
        where TEnum : struct, Enum => NamedEnumConverter<TEnum>.Read(ref reader);

    private static List<T> List<T>(ref Utf8JsonReader reader, Reading<T> read)
    {
        if (reader.TokenType != JsonTokenType.StartArray)
        {
            throw Refused();
        }

        var list = new List<T>();
        while (reader.Read() && reader.TokenType != JsonTokenType.EndArray)
        {
            list.Add(read(ref reader));
        }

        return list;
    }

    // An element of a list of ids.
    private static string Id(ref Utf8JsonReader reader) => Sized(Text(ref reader), 1, MostOfId);

    private static double InRange(double value, double least, double greatest) => value >= least && value <= greatest ? value : throw Refused();

    private static int InRange(int value, int least, int greatest) => value >= least && value <= greatest ? value : throw Refused();

    private static int OneOf(int value, params ReadOnlySpan<int> allowed) => allowed.Contains(value) ? value : throw Refused();

    private static string Sized(string value, int least, int greatest) =>
        value.Length >= least && Characters.IsAtMost(value, greatest) && !value.AsSpan().ContainsAnyInRange('\0', '\u001f') ? value : throw Refused();

    private static string Formed(string value, Regex form) => value.Length <= MostOfId && form.IsMatch(value) ? value : throw Refused();

    private static List<T> Counted<T>(List<T> list, int least, int greatest) => list.Count >= least && list.Count <= greatest ? list : throw Refused();

    private static Regex Form(string pattern) => new(pattern, RegexOptions.CultureInvariant | RegexOptions.Compiled, TimeSpan.FromMilliseconds(100));

    // As its converter, with the ranges of its members.
    private static BasketCabinet ReadBasketCabinet(ref Utf8JsonReader reader) => reader.TokenType == JsonTokenType.String
        ? reader.ValueTextEquals(BasketCabinet.NoCabinet) ? new BasketCabinet() : throw Refused()
        : new BasketCabinet { Existing = ReadExistingCabinet(ref reader).Existing };

    private static T BySerializer<T>(ref Utf8JsonReader reader) => JsonSerializer.Deserialize(ref reader, Metadata<T>.Type) ?? throw Refused();

    private static JsonException Refused() => new();

    private static class Metadata<T>
    {
        public static readonly JsonTypeInfo<T> Type = (JsonTypeInfo<T>)ContractJson.Default.GetTypeInfo(typeof(T))!;
    }
}
