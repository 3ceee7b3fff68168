using System.Security.Cryptography;
using System.Text;

namespace RackCheck.Model.Canonical;

/// <summary>The digest of a description: the same however it is written, so that it can be proved later what was checked.</summary>
public static class DescriptionDigest
{
    [ThreadStatic]
    private static CanonicalText? spare;

    /// <summary>Works the digest out.</summary>
    /// <param name="description">The description.</param>
    /// <returns>"sha-256:" and 64 hexadecimal digits.</returns>
    public static string Of(RackDescription description)
    {
        var text = Write(description);
        Span<byte> hash = stackalloc byte[SHA256.HashSizeInBytes];
        SHA256.HashData(text.Written, hash);
        spare = text;
        return "sha-256:" + Convert.ToHexStringLower(hash);
    }

    /// <summary>
    /// Works out the digest of the rack alone: without reference, policy, acceptances, sign-offs, date of the check and the descriptions of items, and with
    /// items, supplies and PDUs in the order of their ids. The same rack has the same digest in every order.
    /// </summary>
    /// <param name="description">The description.</param>
    /// <returns>"sha-256:" and 64 hexadecimal digits.</returns>
    public static string OfRack(RackDescription description)
    {
        var items = description.Items;
        if (items.Any(static i => i.Description is not null))
        {
            items = [.. items.Select(static i => i.Description is null ? i : i with { Description = null })];
        }

        return Of(description with
        {
            Reference = null,
            Policy = null,
            Acceptances = null,
            SignOffs = null,
            AsOf = null,
            Items = ById(items, i => i.Id),
            Supplies = description.Supplies is { } supplies ? ById(supplies, s => s.Id) : null,
            Pdus = description.Pdus is { } pdus ? ById(pdus, u => u.Id) : null,
        });
    }

    /// <summary>The text that is digested: the description in canonical form, RFC 8785.</summary>
    /// <param name="description">The description.</param>
    /// <returns>The text.</returns>
    public static string CanonicalForm(RackDescription description) => Encoding.UTF8.GetString(Write(description).Written);

    private static IReadOnlyList<T> ById<T>(IReadOnlyList<T> list, Func<T, string> id)
    {
        for (var i = 1; i < list.Count; i++)
        {
            if (string.CompareOrdinal(id(list[i - 1]), id(list[i])) > 0)
            {
                return [.. list.OrderBy(id, StringComparer.Ordinal)];
            }
        }

        return list;
    }

    private static CanonicalText Write(RackDescription description)
    {
        var text = spare ?? new CanonicalText();
        spare = null;
        text.Clear();
        Canonical.CanonicalForm.Append(description, text);
        return text;
    }
}
