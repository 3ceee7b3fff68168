using Microsoft.Net.Http.Headers;

namespace RackCheck.Api.Http;

/// <summary>Content negotiation.</summary>
internal static class Negotiation
{
    private const string Json = "application/json";
    private static readonly MediaTypeHeaderValue JsonType = new(Json);

    /// <summary>Whether the content type is JSON in UTF-8, as RFC 8259 requires.</summary>
    public static bool SendsJson(HttpRequest request)
    {
        var header = request.ContentType;
        if (string.Equals(header, Json, StringComparison.OrdinalIgnoreCase))
        {
            return true;
        }

        return MediaTypeHeaderValue.TryParse(header, out var type)
            && type.MediaType.Equals(Json, StringComparison.OrdinalIgnoreCase)
            && (!type.Charset.HasValue || type.Charset.Value.Trim('"').Equals("utf-8", StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>Whether the client accepts JSON. An unreadable header is ignored.</summary>
    public static bool TakesJson(HttpRequest request)
    {
        var header = request.Headers.Accept;
        if (header.Count == 0 || (header.Count == 1 && header[0] is "*/*" or Json))
        {
            return true;
        }

        if (!MediaTypeHeaderValue.TryParseList(header, out var ranges))
        {
            return true;
        }

        // The most specific range decides: "application/json;q=0, */*" accepts everything except JSON.
        MediaTypeHeaderValue? best = null;
        foreach (var range in ranges)
        {
            if (JsonType.IsSubsetOf(range) && (best is null || Exactness(range) > Exactness(best)))
            {
                best = range;
            }
        }

        return best is not null && best.Quality != 0;
    }

    private static int Exactness(MediaTypeHeaderValue range) => range.MatchesAllTypes ? 0 : range.MatchesAllSubTypes ? 1 : 2;
}
