using System.Security.Cryptography;
using System.Text;

namespace RackCheck.Rules;

/// <summary>
/// Fingerprints of findings: the first 8 bytes of the SHA-256 of rule and ids, in hexadecimal. Trials and ranges make the same finding again and again, so each
/// thread keeps the last ones.
/// </summary>
internal static class Fingerprints
{
    // A power of two. A slot is taken over by the next finding that falls on it.
    private const int Slots = 512;

    // Ids contain no control characters, so the separator is unambiguous.
    private const char Separator = '\u001f';

    [ThreadStatic]
    private static Entry?[]? kept;

    /// <summary>The fingerprint of a finding.</summary>
    /// <param name="rule">Id of the rule.</param>
    /// <param name="identity">What tells the finding from others of the rule; not changed afterwards.</param>
    /// <returns>16 hexadecimal digits.</returns>
    public static string Of(string rule, IReadOnlyList<string> identity)
    {
        var hash = default(HashCode);
        hash.Add(rule, StringComparer.Ordinal);
        for (var i = 0; i < identity.Count; i++)
        {
            hash.Add(identity[i], StringComparer.Ordinal);
        }

        ref var slot = ref (kept ??= new Entry?[Slots])[hash.ToHashCode() & (Slots - 1)];
        if (slot is not { } entry || !entry.IsOf(rule, identity))
        {
            slot = entry = new Entry(rule, identity, Make(rule, identity));
        }

        return entry.Fingerprint;
    }

    private static string Make(string rule, IReadOnlyList<string> identity) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(rule + Separator + string.Join(Separator, identity))).AsSpan(0, 8));

    private sealed class Entry(string rule, IReadOnlyList<string> identity, string fingerprint)
    {
        public string Fingerprint => fingerprint;

        public bool IsOf(string otherRule, IReadOnlyList<string> other)
        {
            if (rule != otherRule || identity.Count != other.Count)
            {
                return false;
            }

            for (var i = 0; i < other.Count; i++)
            {
                if (identity[i] != other[i])
                {
                    return false;
                }
            }

            return true;
        }
    }
}
