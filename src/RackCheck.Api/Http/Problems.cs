using System.Diagnostics;
using System.Globalization;
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

    /// <summary>Detail of a refusal because of product data.</summary>
    public const string Contradiction =
        "The description contradicts the product data of its part numbers. Correct the faults listed and send the request again.";

    private static readonly Overloaded Marker = new();

    /// <summary>Writes the problem document of a status.</summary>
    /// <param name="context">The request.</param>
    /// <param name="status">HTTP status, 400 to 599.</param>
    /// <param name="detail">Details of this occurrence.</param>
    /// <returns>Completes when the document is written.</returns>
    public static Task WriteAsync(HttpContext context, int status, string? detail = null) => WriteAsync(context, ProblemKind.Of(status), detail);

    /// <summary>Writes a problem document.</summary>
    /// <param name="context">The request.</param>
    /// <param name="kind">Kind of the problem.</param>
    /// <param name="detail">Details of this occurrence.</param>
    /// <param name="errors">The faults, if any.</param>
    /// <returns>Completes when the document is written.</returns>
    public static Task WriteAsync(HttpContext context, ProblemKind kind, string? detail = null, IReadOnlyList<Fault>? errors = null) =>
        WriteAsync(context, kind, detail, errors, parameter: null);

    /// <summary>Refuses a query parameter.</summary>
    /// <param name="context">The request.</param>
    /// <param name="parameter">Name of the parameter, fit to be shown.</param>
    /// <param name="detail">Details of this occurrence.</param>
    /// <returns>Completes when the document is written.</returns>
    public static Task WriteQueryAsync(HttpContext context, string parameter, string detail) =>
        WriteAsync(context, ProblemKind.Query, detail, errors: null, parameter);

    /// <summary>A problem document of the current request.</summary>
    /// <param name="kind">Kind of the problem.</param>
    /// <param name="detail">Details of this occurrence.</param>
    /// <param name="errors">The faults, if any.</param>
    /// <returns>The document.</returns>
    public static Problem Of(ProblemKind kind, string? detail, IReadOnlyList<Fault>? errors = null) => new()
    {
        Type = kind.Type,
        Title = kind.Title,
        Status = kind.Status,
        Detail = detail,
        TraceId = Activity.Current?.TraceId.ToHexString(),
        Errors = errors,
    };

    private static Task WriteAsync(HttpContext context, ProblemKind kind, string? detail, IReadOnlyList<Fault>? errors, string? parameter)
    {
        var body = JsonAnswer.Bytes(Of(kind, detail, errors) with { Parameter = parameter }, ContractJson.Default.Problem);
        context.Response.StatusCode = kind.Status;
        context.Response.Headers.CacheControl = "no-store";
        return JsonAnswer.SendAsync(context, body, MediaType);
    }

    /// <summary>Refuses a request because the service is busy.</summary>
    /// <param name="context">The request.</param>
    /// <param name="detail">Details of this occurrence.</param>
    /// <returns>Completes when the document is written.</returns>
    public static Task WriteOverloadedAsync(HttpContext context, string detail = "The service is busy. Send the request again later.")
    {
        context.Features.Set(Marker);
        SetRetryAfter(context, TimeSpan.FromSeconds(1));
        return WriteAsync(context, ProblemKind.Overloaded, detail);
    }

    /// <summary>Whether a request was refused because the service is busy.</summary>
    /// <param name="context">The request.</param>
    public static bool IsOverloaded(HttpContext context) => context.Features.Get<Overloaded>() is not null;

    /// <summary>Says when the request can be sent again: whole seconds, at least one.</summary>
    /// <param name="context">The request.</param>
    /// <param name="wait">Time to wait.</param>
    public static void SetRetryAfter(HttpContext context, TimeSpan wait) =>
        context.Response.Headers.RetryAfter = Math.Max(1, Math.Ceiling(wait.TotalSeconds)).ToString(CultureInfo.InvariantCulture);

    private sealed class Overloaded;
}
