using RackCheck.Model;

namespace RackCheck.Survey.Catalogue;

/// <summary>Tolerances for the comparison with the catalogue.</summary>
public static class PartTolerances
{
    /// <summary>Tolerance of a length, mm.</summary>
    public const double LengthMm = 1;

    /// <summary>Tolerance of any other number, as a share.</summary>
    public const double Share = 0.01;

    /// <summary>Whether two numbers contradict each other.</summary>
    /// <param name="member">Name of the member in the contract, which ends in its unit.</param>
    /// <param name="one">The given number.</param>
    /// <param name="other">The reference number for the share.</param>
    /// <returns>Whether the difference exceeds the tolerance.</returns>
    public static bool Differs(string member, double one, double other) =>
        Quantities.Round(Math.Abs(one - other)) > (member.EndsWith("Mm", StringComparison.Ordinal) ? LengthMm : Quantities.Round(Share * Math.Abs(other)));
}
