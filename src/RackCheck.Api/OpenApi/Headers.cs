using System.Text.Json.Nodes;
using Microsoft.Net.Http.Headers;
using Microsoft.OpenApi;
using RackCheck.Api.Http;
using RackCheck.Rules;

namespace RackCheck.Api.OpenApi;

/// <summary>The headers of answers, in the contract.</summary>
internal static class Headers
{
    private const string RateLimit = "RateLimit";
    private const string RateLimitPolicy = "RateLimit-Policy";

    private static readonly (string Name, string Description, JsonNode Example, string? Pattern)[] All =
    [
        (CommonHeaders.TraceId, "W3C trace id of the request. Quote it to support.", "0af7651916cd43dd8448eb211c80319c", "^[0-9a-f]{32}$"),
        (CommonHeaders.Ruleset, "Version of the ruleset: year, month, counter.", RuleSet.CurrentVersion, "^[0-9]{4}\\.[0-9]{1,2}\\.[0-9]+$"),
        (HeaderNames.RetryAfter, "Time to wait before the request is sent again, s.", "1", "^[0-9]+$"),
        (HeaderNames.ETag, "Tag of this version, for If-None-Match. It changes only with the service.", "W/\"5f2b1c0d9e8a7b6c5d4e3f2a\"", null),
        (HeaderNames.CacheControl, "How long a cache may serve the answer.", "max-age=300", null),
        (HeaderNames.Allow, "The methods that the address takes.", "POST, OPTIONS", null),
        (HeaderNames.WWWAuthenticate, "The kinds of credentials that the service takes.", "ApiKey", null),
        (RateLimit, "How many requests the caller may send at once (r), and the time until the burst is whole again, s (t).", "\"default\";r=19;t=6", null),
        (RateLimitPolicy, "The burst of the caller, requests (q), and the time in which it fills, s (w).", "\"default\";q=20;w=120", null),
    ];

    /// <summary>Adds the headers to the shared parts of the contract.</summary>
    public static void AddTo(OpenApiDocument document)
    {
        document.Components!.Headers = new Dictionary<string, IOpenApiHeader>(StringComparer.Ordinal);
        foreach (var (name, description, example, pattern) in All)
        {
            document.Components.Headers[name] = new OpenApiHeader
            {
                Description = description,
                Example = example.DeepClone(),
                Schema = new OpenApiSchema { Type = JsonSchemaType.String, Pattern = pattern },
            };
        }
    }

    /// <summary>Headers of an answer with a document.</summary>
    /// <param name="document">The contract.</param>
    /// <param name="isLimited">Whether the rate of the operation is limited.</param>
    /// <param name="isStatic">Whether the answer changes only with the service.</param>
    public static Dictionary<string, IOpenApiHeader> For(OpenApiDocument document, bool isLimited, bool isStatic) => Of(
        document,
        [
            CommonHeaders.TraceId,
            CommonHeaders.Ruleset,
            .. isLimited ? (ReadOnlySpan<string>)[RateLimit, RateLimitPolicy] : [],
            .. isStatic ? (ReadOnlySpan<string>)[HeaderNames.ETag, HeaderNames.CacheControl] : [],
        ]);

    /// <summary>Headers of a refusal.</summary>
    /// <param name="document">The contract.</param>
    /// <param name="status">HTTP status.</param>
    public static Dictionary<string, IOpenApiHeader> Of(OpenApiDocument document, int status) => Of(
        document,
        [
            CommonHeaders.TraceId,
            CommonHeaders.Ruleset,
            .. status switch
            {
                StatusCodes.Status401Unauthorized => [HeaderNames.WWWAuthenticate],
                StatusCodes.Status405MethodNotAllowed => [HeaderNames.Allow],
                StatusCodes.Status429TooManyRequests => [HeaderNames.RetryAfter, RateLimit, RateLimitPolicy],
                StatusCodes.Status503ServiceUnavailable => [HeaderNames.RetryAfter],
                _ => (ReadOnlySpan<string>)[],
            },
        ]);

    private static Dictionary<string, IOpenApiHeader> Of(OpenApiDocument document, ReadOnlySpan<string> names)
    {
        var headers = new Dictionary<string, IOpenApiHeader>(StringComparer.Ordinal);
        foreach (var name in names)
        {
            headers[name] = new OpenApiHeaderReference(name, document);
        }

        return headers;
    }
}
