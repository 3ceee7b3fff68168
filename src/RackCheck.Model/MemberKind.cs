namespace RackCheck.Model;

/// <summary>What an optional member of a description is, and so what its absence means.</summary>
public enum MemberKind
{
    /// <summary>A property of the equipment or of the site. It has a value whether or not it is given, so its absence leaves a range of values.</summary>
    Fact,

    /// <summary>Something that is asked for. Absent: it is not asked for.</summary>
    Requirement,

    /// <summary>A decision on how the rack is built. Absent: it is still open.</summary>
    Choice,

    /// <summary>A part of the rack, or what identifies it. Absent: the part is not there.</summary>
    Part,
}

/// <summary>Marks an optional member of a description. Read by tests and at start, never for a request.</summary>
/// <param name="kind">What the member is.</param>
[AttributeUsage(AttributeTargets.Property)]
public sealed class KindAttribute(MemberKind kind) : Attribute
{
    /// <summary>What the member is.</summary>
    public MemberKind Kind { get; } = kind;
}

/// <summary>
/// Marks an optional member whose absence means just the default in its summary: no product of the catalogue, no range and no assumption takes its place.
/// </summary>
[AttributeUsage(AttributeTargets.Property)]
public sealed class AbsentMeansDefaultAttribute : Attribute;
