namespace RackCheck.Model;

/// <summary>A problem document, RFC 9457: why a request was rejected.</summary>
public sealed record Problem
{
    /// <summary>
    /// URI reference that identifies the problem type: <c>urn:rack-check:problem:</c> with not-json, invalid-query (400), unauthenticated (401), forbidden
    /// (403), not-found (404), method-not-allowed (405), not-acceptable (406), request-timeout (408), too-large (413), unsupported-media-type (415),
    /// invalid-description (422), too-many-requests (429), internal (500), unavailable or overloaded (503). Further types may be added.
    /// </summary>
    public required string Type { get; init; }

    /// <summary>Title of the problem type.</summary>
    public required string Title { get; init; }

    /// <summary>HTTP status code.</summary>
    public required int Status { get; init; }

    /// <summary>Explanation of this occurrence.</summary>
    public string? Detail { get; init; }

    /// <summary>W3C trace id of the request. Quote it to support.</summary>
    public string? TraceId { get; init; }

    /// <summary>All errors in the request, in document order.</summary>
    public IReadOnlyList<Fault>? Errors { get; init; }
}

/// <summary>One error in a request.</summary>
public sealed record Fault
{
    /// <summary>Pointer to the member concerned, RFC 6901. Empty for the whole request.</summary>
    public required string Pointer { get; init; }

    /// <summary>Error code, for programs.</summary>
    public required string Code { get; init; }

    /// <summary>Error description, for people.</summary>
    public required string Detail { get; init; }
}
