using Microsoft.AspNetCore.WebUtilities;

namespace RackCheck.Api.Http;

/// <summary>Kinds of problem documents. The names are part of the contract: new kinds may be added, none is renamed.</summary>
/// <param name="Status">HTTP status.</param>
/// <param name="Name">Last part of the problem type.</param>
/// <param name="Title">Title of the problem type.</param>
/// <param name="Meaning">What has happened.</param>
/// <param name="Remedy">What the caller does.</param>
public sealed record ProblemKind(int Status, string Name, string Title, string Meaning, string Remedy)
{
    /// <summary>The request is not valid JSON.</summary>
    public static readonly ProblemKind NotJson = new(
        400,
        "not-json",
        "The request cannot be read",
        "The request is not valid JSON.",
        "Send a JSON document in UTF-8, RFC 8259. Comments and trailing commas are not read. `errors` says where reading stopped.");

    /// <summary>A query parameter is unknown or has an unsupported value.</summary>
    public static readonly ProblemKind Query = new(
        400,
        "invalid-query",
        "A query parameter is not supported",
        "A query parameter is unknown or has an unsupported value.",
        "`parameter` names it. Send the parameter as the contract has it, once, or leave it out.");

    /// <summary>No valid credentials.</summary>
    public static readonly ProblemKind Unauthenticated = new(
        401,
        "unauthenticated",
        "Valid credentials are required",
        "Valid credentials are required.",
        "Send an API key in the header X-API-Key, or a bearer token. The operator of the service gives them out.");

    /// <summary>The credentials lack a scope.</summary>
    public static readonly ProblemKind Forbidden = new(
        403,
        "forbidden",
        "The credentials do not permit this operation",
        "The credentials do not permit this operation.",
        "Ask the operator of the service for credentials with the scope that the operation names in the contract.");

    /// <summary>No such resource.</summary>
    public static readonly ProblemKind NotFound = new(
        404,
        "not-found",
        "Resource not found",
        "There is no resource with that name.",
        "Compare the address with the contract. Paths are case-sensitive and do not end with a slash.");

    /// <summary>The request took too long to arrive.</summary>
    public static readonly ProblemKind Timeout = new(
        408,
        "request-timeout",
        "The request took too long to arrive",
        "The request took too long to arrive.",
        "Send the whole body at once, and send the request again.");

    /// <summary>The request is too large.</summary>
    public static readonly ProblemKind TooLarge = new(
        413,
        "too-large",
        "The request is too large",
        "The request is too large.",
        "Send less: `detail` has the maximum length. It counts after decompression.");

    /// <summary>The media type or content encoding of the request is not supported.</summary>
    public static readonly ProblemKind MediaType = new(
        415,
        "unsupported-media-type",
        "The media type of the request is not supported",
        "The request body is not JSON in UTF-8, or its content encoding is not supported.",
        "Send the header Content-Type: application/json, and no content encoding other than gzip or br.");

    /// <summary>The description is not valid.</summary>
    public static readonly ProblemKind Invalid = new(
        422,
        "invalid-description",
        "The description is not valid",
        "The request is not valid. Its faults, up to 100, are listed with their JSON pointers.",
        "Correct the faults in `errors` and send the request again. Each has a pointer into the request (RFC 6901), a code for programs and a sentence.");

    /// <summary>The client exceeds its rate.</summary>
    public static readonly ProblemKind TooMany = new(
        429,
        "too-many-requests",
        "Too many requests",
        "The caller exceeds its rate. Retry-After gives the time to wait.",
        "Wait for the number of seconds in the header Retry-After, then send the request again. The header RateLimit says how many requests are left.");

    /// <summary>The service, or the product catalogue, is unavailable.</summary>
    public static readonly ProblemKind Unavailable = new(
        503,
        "unavailable",
        "Service unavailable",
        "The product catalogue that the request needs is unavailable, or the service is starting or stopping. Retry-After gives the time to wait.",
        "Wait for the number of seconds in the header Retry-After, then send the request again. A check, a drawing, "
            + "a parts list or a sheet of a rack without part numbers needs no catalogue; a basket always does.");

    /// <summary>The service is busy.</summary>
    public static readonly ProblemKind Overloaded = new(
        503,
        "overloaded",
        "The service is busy",
        "The service is busy. Retry-After gives the time to wait.",
        "Wait for the number of seconds in the header Retry-After, then send the request again, with fewer requests at a time.");

    private const string StatusOnly = "about:blank";

    /// <summary>All kinds, by status.</summary>
    public static IReadOnlyList<ProblemKind> All { get; } =
    [
        NotJson,
        Query,
        Unauthenticated,
        Forbidden,
        NotFound,
        new(
            405,
            "method-not-allowed",
            "Method not allowed",
            "The address does not take this method. The header Allow lists those that it takes.",
            "Send the method that the contract has for the address."),
        new(
            406,
            "not-acceptable",
            "The accepted media types are not supported",
            "The client accepts none of the media types of the response.",
            "Send a header Accept with a media type that the contract has for the response, or none."),
        Timeout,
        TooLarge,
        MediaType,
        Invalid,
        TooMany,
        new(
            500,
            "internal",
            "Internal error",
            "The service failed. The error is logged under the trace id.",
            "Tell the operator of the service the trace id. The same request may fail again."),
        Unavailable,
        Overloaded,
    ];

    /// <summary>
    /// Type of the problem: the address, relative to the service, of the page that describes it; <c>about:blank</c> where the status says all (RFC 9457).
    /// </summary>
    public string Type => Name == StatusOnly ? StatusOnly : PagePrefix + Name;

    /// <summary>Address of the pages of problem types, relative to the service.</summary>
    public const string PagePrefix = "/docs/problems/";

    /// <summary>The kind of a status without a more exact one.</summary>
    /// <param name="status">HTTP status, 400 to 599.</param>
    public static ProblemKind Of(int status) => All.FirstOrDefault(k => k.Status == status && k != Query)
        ?? new ProblemKind(status, StatusOnly, ReasonPhrases.GetReasonPhrase(status), "", "");
}
