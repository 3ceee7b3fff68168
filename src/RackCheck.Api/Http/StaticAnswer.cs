using System.IO.Compression;
using System.Security.Cryptography;
using Microsoft.Net.Http.Headers;

namespace RackCheck.Api.Http;

/// <summary>An answer that changes only with the service, with an entity tag. It is compressed once for each encoding, when it is first asked for.</summary>
/// <param name="body">The document.</param>
/// <param name="mediaType">Its media type.</param>
internal sealed class StaticAnswer(byte[] body, string mediaType = JsonAnswer.MediaType)
{
    // Clients and caches may serve it for five minutes, then ask whether it has changed.
    private const string CacheControl = "max-age=300";

    private const int BrotliQuality = 9;

    private readonly Lazy<byte[]> brotli = new(() => Compressed(
        body, static output => new BrotliStream(output, new BrotliCompressionOptions { Quality = BrotliQuality })));

    private readonly Lazy<byte[]> gzip = new(() => Compressed(body, static output => new GZipStream(output, CompressionLevel.SmallestSize)));

    // Weak, since the compressed and the plain answer have the same tag.
    private readonly EntityTagHeaderValue tag = new($"\"{Convert.ToHexStringLower(SHA256.HashData(body).AsSpan(0, 12))}\"", isWeak: true);

    /// <summary>Writes the answer, or 304 for a client that has it.</summary>
    /// <returns>Completes when the server has taken the answer.</returns>
    public Task WriteAsync(HttpContext context)
    {
        var headers = context.Response.Headers;
        headers.ETag = tag.ToString();
        headers.CacheControl = CacheControl;
        headers.Append(HeaderNames.Vary, HeaderNames.AcceptEncoding);
        if (IsKnown(context.Request.Headers.IfNoneMatch))
        {
            context.Response.StatusCode = StatusCodes.Status304NotModified;
            return Task.CompletedTask;
        }

        var (name, content) = Form(context.Request);
        headers.ContentEncoding = name;
        return JsonAnswer.SendAsync(context, content, mediaType);
    }

    // The form that the client likes best; Brotli, the shorter one, where it has no preference.
    private (string? Name, byte[] Content) Form(HttpRequest request)
    {
        (string Name, double Quality)[] accepted =
            [.. request.GetTypedHeaders().AcceptEncoding.Select(e => (e.Value.Value ?? "", e.Quality ?? 1)).Where(e => e.Item2 > 0)];
        return accepted.Where(e => e.Name is "br" or "gzip").OrderByDescending(e => e.Quality).ThenBy(e => e.Name, StringComparer.Ordinal)
            .Select(e => e.Name).FirstOrDefault() switch
        {
            "br" => ("br", brotli.Value),
            "gzip" => ("gzip", gzip.Value),
            _ => (null, body),
        };
    }

    private static byte[] Compressed(byte[] plain, Func<Stream, Stream> wrap)
    {
        using var output = new MemoryStream();
        using (var stream = wrap(output))
        {
            stream.Write(plain);
        }

        return output.ToArray();
    }

    private bool IsKnown(Microsoft.Extensions.Primitives.StringValues header) =>
        header.Count > 0
        && EntityTagHeaderValue.TryParseList(header, out var tags)
        && tags.Any(t => t.Equals(EntityTagHeaderValue.Any) || t.Compare(tag, useStrongComparison: false));
}
