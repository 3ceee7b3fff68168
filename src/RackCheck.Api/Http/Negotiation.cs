using Microsoft.Extensions.Primitives;
using Microsoft.Net.Http.Headers;

namespace RackCheck.Api.Http;

/// <summary>Content negotiation.</summary>
internal static class Negotiation
{
    private const string Json = "application/json";
    private const string Charset = "utf-8";

    /// <summary>Whether the content type is JSON in UTF-8, as RFC 8259 requires.</summary>
    public static bool SendsJson(HttpRequest request) => Sends(request, Json);

    /// <summary>Whether the content type is one, in UTF-8.</summary>
    /// <param name="request">The request.</param>
    /// <param name="mediaType">The media type.</param>
    public static bool Sends(HttpRequest request, string mediaType)
    {
        var header = request.ContentType;
        if (string.Equals(header, mediaType, StringComparison.OrdinalIgnoreCase))
        {
            return true;
        }

        return MediaTypeHeaderValue.TryParse(header, out var type)
            && type.MediaType.Equals(mediaType, StringComparison.OrdinalIgnoreCase)
            && (!type.Charset.HasValue || IsUtf8(type.Charset));
    }

    /// <summary>Whether the client accepts JSON. An unreadable header is ignored.</summary>
    public static bool TakesJson(HttpRequest request)
    {
        var header = request.Headers.Accept;
        if (header.Count == 0 || (header.Count == 1 && header[0] is "*/*" or Json))
        {
            return true;
        }

        return Choose(request, [Json]) is not null;
    }

    /// <summary>The media type of the answer: the one that the client likes best. An unreadable header is ignored.</summary>
    /// <param name="request">The request.</param>
    /// <param name="offered">Media types of the service, the preferred first.</param>
    /// <returns>The media type; null if the client accepts none.</returns>
    public static string? Choose(HttpRequest request, IReadOnlyList<string> offered)
    {
        var header = request.Headers.Accept;
        if (header.Count == 0 || !MediaTypeHeaderValue.TryParseList(header, out var ranges))
        {
            return offered[0];
        }

        foreach (var range in ranges.Where(static r => IsUtf8(r.Charset)))
        {
            // As the answer has it, so that the two are equal where the range has quotation marks.
            range.Charset = Charset;
        }

        string? chosen = null;
        var most = 0.0;
        foreach (var mediaType in offered)
        {
            if (QualityOf(mediaType, ranges) is var quality && quality > most)
            {
                (chosen, most) = (mediaType, quality);
            }
        }

        return chosen;
    }

    // The most specific range decides: "application/json;q=0, */*" accepts everything except JSON.
    // A parameter of a range has to be one of the answer (RFC 9110, section 12.5.1), and all text is sent in UTF-8.
    private static double QualityOf(string mediaType, IList<MediaTypeHeaderValue> ranges)
    {
        var type = new MediaTypeHeaderValue(mediaType) { Charset = Charset };
        MediaTypeHeaderValue? best = null;
        foreach (var range in ranges)
        {
            if (type.IsSubsetOf(range) && (best is null || Exactness(range) > Exactness(best)))
            {
                best = range;
            }
        }

        return best is null ? 0 : best.Quality ?? 1;
    }

    private static int Exactness(MediaTypeHeaderValue range) =>
        range.MatchesAllTypes ? 0 : range.MatchesAllSubTypes ? 1 : range.Charset.HasValue ? 3 : 2;

    private static bool IsUtf8(StringSegment charset) => charset.HasValue && charset.Value.Trim('"').Equals(Charset, StringComparison.OrdinalIgnoreCase);
}
