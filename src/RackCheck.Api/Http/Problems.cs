using System.Diagnostics;
using Microsoft.AspNetCore.WebUtilities;
using RackCheck.Model;
using RackCheck.Model.Json;

namespace RackCheck.Api.Http;

/// <summary>Writes problem documents, RFC 9457. Every refusal of the service goes through here.</summary>
public static class Problems
{
    /// <summary>Media type of a problem document.</summary>
    public const string MediaType = "application/problem+json";

    private const string TypePrefix = "urn:rack-check:problem:";

    /// <summary>Writes the problem of a status that needs no more words.</summary>
    /// <param name="context">The request.</param>
    /// <param name="status">HTTP status, 400 to 599.</param>
    /// <param name="detail">What happened this time.</param>
    /// <param name="errors">The faults, where there are any.</param>
    /// <returns>Done when written.</returns>
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
        400 => ("not-json", "The request is not readable"),
        404 => ("not-found", "There is nothing at this address"),
        405 => ("method-not-allowed", "This address does not take that method"),
        406 => ("not-acceptable", "The answer cannot be given in the form asked for"),
        413 => ("too-large", "The request is too large"),
        415 => ("unsupported-media-type", "The request is not in a form that the service reads"),
        422 => ("invalid-description", "The description is not valid"),
        500 => ("internal", "The service failed"),
        503 => ("unavailable", "The service cannot answer now"),
        _ => ("status-" + status.ToString(System.Globalization.CultureInfo.InvariantCulture), ReasonPhrases.GetReasonPhrase(status)),
    };
}
