using System.ComponentModel.DataAnnotations;

namespace RackCheck.Model;

/// <summary>Several racks to draw on one sheet: side by side, or before and after a change.</summary>
public sealed record ElevationRequest
{
    /// <summary>The racks, from left to right. Not with before and after.</summary>
    [Length(1, 6)]
    public IReadOnlyList<RackDescription>? Racks { get; init; }

    /// <summary>The rack before a change. Only with after.</summary>
    public RackDescription? Before { get; init; }

    /// <summary>The rack after the change. Only with before.</summary>
    public RackDescription? After { get; init; }
}
