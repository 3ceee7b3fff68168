using System.Buffers;
using System.Security.Cryptography;
using System.Text.Json;
using RackCheck.Model;

namespace RackCheck.Rules.Canonical;

/// <summary>The digest of a description: the same however it is written, so that it can be proved later what was checked.</summary>
public static class DescriptionDigest
{
    [ThreadStatic]
    private static ArrayBufferWriter<byte>? spare;

    /// <summary>Works the digest out.</summary>
    /// <param name="description">The description.</param>
    /// <returns>"sha-256:" and 64 hexadecimal digits.</returns>
    public static string Of(RackDescription description)
    {
        var buffer = spare ?? new ArrayBufferWriter<byte>(16 * 1024);
        spare = null;
        using (var writer = new Utf8JsonWriter(buffer, CanonicalJson.WriterOptions))
        {
            JsonSerializer.Serialize(writer, description, CanonicalJson.Description);
        }

        Span<byte> hash = stackalloc byte[SHA256.HashSizeInBytes];
        SHA256.HashData(buffer.WrittenSpan, hash);
        buffer.ResetWrittenCount();
        spare = buffer;
        return "sha-256:" + Convert.ToHexStringLower(hash);
    }
}
