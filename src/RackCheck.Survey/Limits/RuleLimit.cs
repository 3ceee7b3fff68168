namespace RackCheck.Survey.Limits;

/// <summary>A limit that a policy can set.</summary>
/// <param name="Name">camelCase noun with its unit.</param>
/// <param name="Meaning">What it limits.</param>
/// <param name="Default">Value while no policy sets it.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Minimum">Least value that a policy can set.</param>
/// <param name="Maximum">Greatest value that a policy can set.</param>
/// <param name="Stricter">Which way finds more.</param>
public sealed record RuleLimit(string Name, string Meaning, double Default, string Unit, double Minimum, double Maximum, Stricter Stricter);

/// <summary>Which way a limit finds more.</summary>
public enum Stricter
{
    /// <summary>A lower value is stricter.</summary>
    Lower,

    /// <summary>A higher value is stricter.</summary>
    Higher,
}
