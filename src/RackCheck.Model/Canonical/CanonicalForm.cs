using RackCheck.Model.Converters;

namespace RackCheck.Model.Canonical;

/// <summary>
/// Writes descriptions in canonical form, RFC 8785: members in the order of their UTF-16 code units, absent ones left out. The methods of the records are
/// written from them when the contract is compiled, by RackCheck.ContractGenerator.
/// </summary>
/// <remarks>The serializer itself, told to sort its members, takes longer than the rest of a check; a test holds both to the same text.</remarks>
[WritesCanonically(typeof(RackDescription))]
internal static partial class CanonicalForm
{
    /// <summary>Appends a description.</summary>
    /// <param name="description">The description.</param>
    /// <param name="text">Grows.</param>
    public static void Append(RackDescription description, CanonicalText text) => Write(text, description);

    private static void Named<TEnum>(CanonicalText text, TEnum value)
        where TEnum : struct, Enum
    {
        text.Raw((byte)'"');
        text.Raw(NamedEnumConverter<TEnum>.Utf8Name(value));
        text.Raw((byte)'"');
    }

    private static void List<T>(CanonicalText text, IReadOnlyList<T> list, Action<CanonicalText, T> write)
    {
        text.Raw((byte)'[');
        for (var i = 0; i < list.Count; i++)
        {
            if (i > 0)
            {
                text.Raw((byte)',');
            }

            write(text, list[i]);
        }

        text.Raw((byte)']');
    }

    private static void Map<T>(CanonicalText text, IReadOnlyDictionary<string, T> map, Action<CanonicalText, T> write)
    {
        var start = text.Begin();
        foreach (var (name, value) in map.OrderBy(m => m.Key, StringComparer.Ordinal))
        {
            text.Raw((byte)',');
            text.String(name);
            text.Raw((byte)':');
            write(text, value);
        }

        text.End(start);
    }
}
