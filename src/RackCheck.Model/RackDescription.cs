using System.ComponentModel.DataAnnotations;

namespace RackCheck.Model;

/// <summary>A 19-inch rack as a caller describes it: cabinet, equipment, supplies, cooling, earthing and site.</summary>
public sealed record RackDescription
{
    /// <summary>The caller's own reference, echoed in the answer.</summary>
    [StringLength(64)]
    public string? Reference { get; init; }

    /// <summary>From which end units are counted; bottom-up unless told.</summary>
    public UnitNumbering? UnitNumbering { get; init; }

    /// <summary>The cabinet. Needed for a check; proposals and baskets can go without.</summary>
    public Cabinet? Cabinet { get; init; }

    /// <summary>The equipment, up to 200 items.</summary>
    [MaxLength(200)]
    public required IReadOnlyList<Item> Items { get; init; }

    /// <summary>The electrical supplies that reach the rack.</summary>
    [MaxLength(16)]
    public IReadOnlyList<Supply>? Supplies { get; init; }

    /// <summary>The PDUs in the rack.</summary>
    [MaxLength(32)]
    public IReadOnlyList<Pdu>? Pdus { get; init; }

    /// <summary>Which cord goes into which outlet group. Absent: the service assigns the cords itself.</summary>
    [MaxLength(800)]
    public IReadOnlyList<Connection>? Connections { get; init; }

    /// <summary>Fans, intake, filters, air conditioner.</summary>
    public Cooling? Cooling { get; init; }

    /// <summary>Protective earth beyond the cords.</summary>
    public Earthing? Earthing { get; init; }

    /// <summary>Where the rack goes and how it gets there.</summary>
    public Site? Site { get; init; }

    /// <summary>The caller's own limits and severities.</summary>
    public Policy? Policy { get; init; }

    /// <summary>Findings that somebody has accepted, with a reason.</summary>
    [MaxLength(200)]
    public IReadOnlyList<Acceptance>? Acceptances { get; init; }
}
