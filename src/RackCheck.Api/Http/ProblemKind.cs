using System.Globalization;
using Microsoft.AspNetCore.WebUtilities;

namespace RackCheck.Api.Http;

/// <summary>Kinds of problem documents. The names are part of the contract: new kinds may be added, none is renamed.</summary>
/// <param name="Status">HTTP status.</param>
/// <param name="Name">Last part of the problem type.</param>
/// <param name="Title">Title of the problem type.</param>
public sealed record ProblemKind(int Status, string Name, string Title)
{
    /// <summary>The request is not valid JSON.</summary>
    public static readonly ProblemKind NotJson = new(400, "not-json", "The request cannot be read");

    /// <summary>A query parameter is unknown or has an unsupported value.</summary>
    public static readonly ProblemKind Query = new(400, "invalid-query", "A query parameter is not supported");

    /// <summary>No valid credentials.</summary>
    public static readonly ProblemKind Unauthenticated = new(401, "unauthenticated", "Valid credentials are required");

    /// <summary>The credentials lack a scope.</summary>
    public static readonly ProblemKind Forbidden = new(403, "forbidden", "The credentials do not permit this operation");

    /// <summary>No such resource.</summary>
    public static readonly ProblemKind NotFound = new(404, "not-found", "Resource not found");

    /// <summary>The request took too long to arrive.</summary>
    public static readonly ProblemKind Timeout = new(408, "request-timeout", "The request took too long to arrive");

    /// <summary>The request is too large.</summary>
    public static readonly ProblemKind TooLarge = new(413, "too-large", "The request is too large");

    /// <summary>The media type or content encoding of the request is not supported.</summary>
    public static readonly ProblemKind MediaType = new(415, "unsupported-media-type", "The media type of the request is not supported");

    /// <summary>The description is not valid.</summary>
    public static readonly ProblemKind Invalid = new(422, "invalid-description", "The description is not valid");

    /// <summary>The client exceeds its rate.</summary>
    public static readonly ProblemKind TooMany = new(429, "too-many-requests", "Too many requests");

    /// <summary>The service, or the product catalogue, is unavailable.</summary>
    public static readonly ProblemKind Unavailable = new(503, "unavailable", "Service unavailable");

    /// <summary>The service is busy.</summary>
    public static readonly ProblemKind Overloaded = new(503, "overloaded", "The service is busy");

    private static readonly ProblemKind[] ByStatus =
    [
        NotJson, Unauthenticated, Forbidden, NotFound, Timeout, TooLarge, MediaType, Invalid, TooMany, Unavailable,
        new(405, "method-not-allowed", "Method not allowed"),
        new(406, "not-acceptable", "The accepted media types are not supported"),
        new(500, "internal", "Internal error"),
    ];

    /// <summary>The kind of a status without a more exact one.</summary>
    /// <param name="status">HTTP status, 400 to 599.</param>
    public static ProblemKind Of(int status) => Array.Find(ByStatus, k => k.Status == status)
        ?? new ProblemKind(status, "status-" + status.ToString(CultureInfo.InvariantCulture), ReasonPhrases.GetReasonPhrase(status));
}
