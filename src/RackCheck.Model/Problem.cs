namespace RackCheck.Model;

/// <summary>A problem document, RFC 9457: why a request was rejected.</summary>
public sealed record Problem
{
    /// <summary>
    /// URI reference that identifies the problem type: the address, relative to the service, of the page that describes it. A later version may have further
    /// types; a program that does not know one goes by the status.
    /// </summary>
    public required string Type { get; init; }

    /// <summary>Title of the problem type.</summary>
    public required string Title { get; init; }

    /// <summary>HTTP status code.</summary>
    public required int Status { get; init; }

    /// <summary>Explanation of this occurrence.</summary>
    public string? Detail { get; init; }

    /// <summary>Name of the query parameter that is refused. Only for refused query parameters.</summary>
    public string? Parameter { get; init; }

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

    /// <summary>Error code, for programs. A later version may have further codes.</summary>
    public required string Code { get; init; }

    /// <summary>Error description, for people.</summary>
    public required string Detail { get; init; }
}
