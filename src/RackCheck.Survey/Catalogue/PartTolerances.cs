using RackCheck.Model;

namespace RackCheck.Survey.Catalogue;

/// <summary>How far a value may be from its product's before it contradicts it.</summary>
public static class PartTolerances
{
    /// <summary>A length differs by more than this, mm.</summary>
    public const double LengthMm = 1;

    /// <summary>Any other number differs by more than this share.</summary>
    public const double Share = 0.01;

    /// <summary>Whether two numbers contradict each other.</summary>
    /// <param name="member">The contract's name of the member, which ends in its unit.</param>
    /// <param name="one">One number.</param>
    /// <param name="other">The other, which the share is taken of.</param>
    /// <returns>Whether they differ by more than the tolerance.</returns>
    public static bool Differs(string member, double one, double other) =>
        Quantities.Round(Math.Abs(one - other)) > (member.EndsWith("Mm", StringComparison.Ordinal) ? LengthMm : Quantities.Round(Share * Math.Abs(other)));
}
