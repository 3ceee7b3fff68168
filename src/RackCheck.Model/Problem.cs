namespace RackCheck.Model;

/// <summary>A problem document, RFC 9457: why a request was not answered.</summary>
public sealed record Problem
{
    /// <summary>A URI reference that names the kind of problem.</summary>
    public required string Type { get; init; }

    /// <summary>The kind in words.</summary>
    public required string Title { get; init; }

    /// <summary>The HTTP status.</summary>
    public required int Status { get; init; }

    /// <summary>What happened this time.</summary>
    public string? Detail { get; init; }

    /// <summary>W3C trace id of the request, to quote to support.</summary>
    public string? TraceId { get; init; }

    /// <summary>Every fault of the request, in the order of their places.</summary>
    public IReadOnlyList<Fault>? Errors { get; init; }
}

/// <summary>One fault of a request.</summary>
public sealed record Fault
{
    /// <summary>Its place in the request, RFC 6901; empty for the whole.</summary>
    public required string Pointer { get; init; }

    /// <summary>What kind of fault, for programs.</summary>
    public required string Code { get; init; }

    /// <summary>What is wrong, for people.</summary>
    public required string Detail { get; init; }
}
