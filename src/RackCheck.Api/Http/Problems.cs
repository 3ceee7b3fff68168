using System.Diagnostics;
using Microsoft.AspNetCore.WebUtilities;
using RackCheck.Model;
using RackCheck.Model.Json;

namespace RackCheck.Api.Http;

/// <summary>Writes problem documents, RFC 9457. The service writes every refusal here.</summary>
public static class Problems
{
    /// <summary>Media type of a problem document.</summary>
    public const string MediaType = "application/problem+json";

    /// <summary>Detail of a refusal that lists the faults of a request.</summary>
    public const string NothingChecked = "Nothing was checked. Correct the faults listed and send the request again.";

    private const string TypePrefix = "urn:rack-check:problem:";

    /// <summary>Writes the problem document of a status.</summary>
    /// <param name="context">The request.</param>
    /// <param name="status">HTTP status, 400 to 599.</param>
    /// <param name="detail">Details of this occurrence.</param>
    /// <param name="errors">The faults, if any.</param>
    /// <returns>Completes when the document is written.</returns>
    public static Task WriteAsync(HttpContext context, int status, string? detail = null, IReadOnlyList<Fault>? errors = null)
    {
        var (type, title) = KindOf(status);
        var problem = new Problem
        {
            Type = TypePrefix + type,
            Title = title,
            Status = status,
            Detail = detail,
            TraceId = Activity.Current?.TraceId.ToHexString(),
            Errors = errors,
        };
        var body = JsonAnswer.Bytes(problem, ContractJson.Default.Problem);
        context.Response.StatusCode = status;
        context.Response.Headers.CacheControl = "no-store";
        return JsonAnswer.SendAsync(context, body, MediaType);
    }

    private static (string Type, string Title) KindOf(int status) => status switch
    {
        400 => ("not-json", "The request cannot be read"),
        404 => ("not-found", "Resource not found"),
        405 => ("method-not-allowed", "Method not allowed"),
        406 => ("not-acceptable", "The accepted media types are not supported"),
        413 => ("too-large", "The request is too large"),
        415 => ("unsupported-media-type", "The media type of the request is not supported"),
        422 => ("invalid-description", "The description is not valid"),
        500 => ("internal", "Internal error"),
        503 => ("unavailable", "Service unavailable"),
        _ => ("status-" + status.ToString(System.Globalization.CultureInfo.InvariantCulture), ReasonPhrases.GetReasonPhrase(status)),
    };
}
