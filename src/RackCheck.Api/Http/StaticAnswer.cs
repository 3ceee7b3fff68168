using System.Security.Cryptography;
using Microsoft.Net.Http.Headers;

namespace RackCheck.Api.Http;

/// <summary>An answer that changes only with the service, with an entity tag.</summary>
/// <param name="body">The document.</param>
/// <param name="mediaType">Its media type.</param>
internal sealed class StaticAnswer(byte[] body, string mediaType = JsonAnswer.MediaType)
{
    // Clients and caches may serve it for five minutes, then ask whether it has changed.
    private const string CacheControl = "max-age=300";

    // Weak, since the compressed and the plain answer have the same tag.
    private readonly EntityTagHeaderValue tag = new($"\"{Convert.ToHexStringLower(SHA256.HashData(body).AsSpan(0, 12))}\"", isWeak: true);

    /// <summary>Writes the answer, or 304 for a client that has it.</summary>
    /// <returns>Completes when the server has taken the answer.</returns>
    public Task WriteAsync(HttpContext context)
    {
        var headers = context.Response.Headers;
        headers.ETag = tag.ToString();
        headers.CacheControl = CacheControl;
        if (IsKnown(context.Request.Headers.IfNoneMatch))
        {
            context.Response.StatusCode = StatusCodes.Status304NotModified;
            return Task.CompletedTask;
        }

        return JsonAnswer.SendAsync(context, body, mediaType);
    }

    private bool IsKnown(Microsoft.Extensions.Primitives.StringValues header) =>
        header.Count > 0
        && EntityTagHeaderValue.TryParseList(header, out var tags)
        && tags.Any(t => t.Equals(EntityTagHeaderValue.Any) || t.Compare(tag, useStrongComparison: false));
}
