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

    /// <summary>The text that is digested: the description in canonical form, RFC 8785.</summary>
    /// <param name="description">The description.</param>
    /// <returns>The text.</returns>
    public static string CanonicalForm(RackDescription description) => Encoding.UTF8.GetString(Write(description).Written);

    private static CanonicalText Write(RackDescription description)
    {
        var text = spare ?? new CanonicalText();
        spare = null;
        text.Clear();
        CanonicalRecord<RackDescription>.Instance.Write(text, description);
        return text;
    }
}
