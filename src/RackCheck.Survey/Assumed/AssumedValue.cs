using RackCheck.Model;

namespace RackCheck.Survey.Assumed;

/// <summary>A value that the survey assumes because the description does not give it. The report merges those of one kind.</summary>
public readonly record struct AssumedValue
{
    /// <summary>Pointer to the member that the description does not give.</summary>
    public required string Pointer { get; init; }

    /// <summary>The assumed value.</summary>
    public required Scalar Value { get; init; }

    /// <summary>Wording of a value that is a text in English; null for values that the member can have.</summary>
    public WordedText? ValueWording { get; init; }

    /// <summary>Unit of measure; null for text and for true or false.</summary>
    public string? Unit { get; init; }

    /// <summary>Basis of the value.</summary>
    public required WordedText Basis { get; init; }

    /// <summary>A value that is a text in English.</summary>
    /// <param name="pointer">Pointer to the member.</param>
    /// <param name="value">The text.</param>
    /// <param name="basis">Basis of the value.</param>
    public static AssumedValue Worded(string pointer, WordedText value, WordedText basis) =>
        new() { Pointer = pointer, Value = value.Text, ValueWording = value, Basis = basis };
}
