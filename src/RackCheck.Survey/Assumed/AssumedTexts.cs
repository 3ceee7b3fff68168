using RackCheck.Model;

namespace RackCheck.Survey.Assumed;

/// <summary>Assumed values that are texts in English, not values that the member can have.</summary>
public static class AssumedTexts
{
    /// <summary>No value is assumed; what stands for it is the basis.</summary>
    public static readonly WordedText NotKnown = new("assumed-value.not-known", "not known");

    /// <summary>The value given is not used.</summary>
    public static readonly WordedText NotUsed = new("assumed-value.not-used", "not used");

    /// <summary>The device is assumed absent.</summary>
    public static readonly WordedText None = new("assumed-value.none", "none");

    /// <summary>Wordings of these values.</summary>
    public static IReadOnlyList<MessageWording> Wordings { get; } = [.. MessageWording.DeclaredIn(typeof(AssumedTexts))];
}
