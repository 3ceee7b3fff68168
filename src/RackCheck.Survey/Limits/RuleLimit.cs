namespace RackCheck.Survey.Limits;

/// <summary>A limit that a policy can set.</summary>
/// <param name="Name">camelCase noun with its unit.</param>
/// <param name="Meaning">What it limits.</param>
/// <param name="Default">Value without a policy.</param>
/// <param name="Unit">Unit of the limit.</param>
/// <param name="Minimum">Minimum value that a policy can set.</param>
/// <param name="Maximum">Maximum value that a policy can set.</param>
/// <param name="Stricter">The direction in which the limit is stricter.</param>
public sealed record RuleLimit(string Name, string Meaning, double Default, string Unit, double Minimum, double Maximum, Stricter Stricter);

/// <summary>The direction in which a limit is stricter.</summary>
public enum Stricter
{
    /// <summary>A lower value is stricter.</summary>
    Lower,

    /// <summary>A higher value is stricter.</summary>
    Higher,
}
