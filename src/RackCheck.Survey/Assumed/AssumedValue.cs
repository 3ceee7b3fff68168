using RackCheck.Model;

namespace RackCheck.Survey.Assumed;

/// <summary>A value that the survey assumes because the description does not give it. The report merges those of one kind.</summary>
public readonly record struct AssumedValue
{
    /// <summary>Pointer to the member that the description does not give.</summary>
    public required string Pointer { get; init; }

    /// <summary>The assumed value.</summary>
    public required Scalar Value { get; init; }

    /// <summary>Unit of measure; null for text and for true or false.</summary>
    public string? Unit { get; init; }

    /// <summary>Basis of the value.</summary>
    public required WordedText Basis { get; init; }
}
