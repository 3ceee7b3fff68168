using System.ComponentModel.DataAnnotations;

namespace RackCheck.Model;

/// <summary>Description of a 19-inch rack: cabinet, equipment, supplies, cooling, earthing and site.</summary>
public sealed record RackDescription
{
    /// <summary>The caller's own reference, returned in the report.</summary>
    [StringLength(64)]
    [Kind(MemberKind.Part)]
    public string? Reference { get; init; }

    /// <summary>End of the cabinet from which U positions are counted. Default bottom-up.</summary>
    [Kind(MemberKind.Choice)]
    [AbsentMeansDefault]
    public UnitNumbering? UnitNumbering { get; init; }

    /// <summary>The cabinet. Required for a check, optional for proposals and baskets.</summary>
    [Kind(MemberKind.Part)]
    public Cabinet? Cabinet { get; init; }

    /// <summary>The equipment, up to 200 items.</summary>
    [MaxLength(200)]
    public required IReadOnlyList<Item> Items { get; init; }

    /// <summary>The electrical supplies that reach the rack.</summary>
    [MaxLength(16)]
    [Kind(MemberKind.Part)]
    public IReadOnlyList<Supply>? Supplies { get; init; }

    /// <summary>The PDUs in the rack.</summary>
    [MaxLength(32)]
    [Kind(MemberKind.Part)]
    public IReadOnlyList<Pdu>? Pdus { get; init; }

    /// <summary>Assignment of cords to outlet groups. Absent: the service assigns the cords.</summary>
    [MaxLength(800)]
    [Kind(MemberKind.Choice)]
    public IReadOnlyList<Connection>? Connections { get; init; }

    /// <summary>Fans, air intake, filters and air conditioner.</summary>
    [Kind(MemberKind.Part)]
    public Cooling? Cooling { get; init; }

    /// <summary>Protective earthing in addition to the mains cords.</summary>
    [Kind(MemberKind.Part)]
    public Earthing? Earthing { get; init; }

    /// <summary>Installation site and delivery route.</summary>
    [Kind(MemberKind.Part)]
    public Site? Site { get; init; }

    /// <summary>The caller's own limits and severities.</summary>
    [Kind(MemberKind.Requirement)]
    public Policy? Policy { get; init; }

    /// <summary>Accepted findings, each with a reason.</summary>
    [MaxLength(200)]
    [Kind(MemberKind.Choice)]
    public IReadOnlyList<Acceptance>? Acceptances { get; init; }

    /// <summary>Statements of qualified persons on safety warnings and on safety rules that could not be assessed.</summary>
    [MaxLength(200)]
    [Kind(MemberKind.Choice)]
    public IReadOnlyList<SignOff>? SignOffs { get; init; }

    /// <summary>Date and time of the check, required where an acceptance has <c>expiresAt</c>: RFC 3339 with an offset.</summary>
    [DataType(DataType.DateTime)]
    [RegularExpression(Timestamps.Pattern)]
    [Kind(MemberKind.Choice)]
    public string? AsOf { get; init; }
}
