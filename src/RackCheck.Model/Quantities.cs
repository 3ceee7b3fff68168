using System.Globalization;

namespace RackCheck.Model;

/// <summary>
/// Short forms for numbers with units, and how they are rounded. What a program reads or a person redoes, <c>actual</c>, <c>limit</c>,
/// <c>messageData</c> and the results in <c>calculation</c>, is rounded to a thousandth; a number that a calculation goes on with has up to six decimals,
/// so that the result comes out. A sentence shows two decimals, from 100 on one, and more only where two of its values would read alike.
/// </summary>
public static class Quantities
{
    /// <summary>A length, rounded to a thousandth so that sums of decimals come out as a person would write them.</summary>
    /// <param name="value">Length, mm.</param>
    /// <returns>The quantity.</returns>
    public static Quantity Millimetres(double value) => Of(value, "mm");

    /// <summary>A number of rack units.</summary>
    /// <param name="value">Units.</param>
    /// <returns>The quantity.</returns>
    public static Quantity Units(double value) => Of(value, "U");

    /// <summary>A number with a unit, rounded to a thousandth.</summary>
    /// <param name="value">The number.</param>
    /// <param name="unit">Its unit.</param>
    /// <returns>The quantity.</returns>
    public static Quantity Of(double value, string unit) => new() { Value = Round(value), Unit = unit };

    /// <summary>Rounds to a thousandth: the last binary digits of a sum are nobody's business, and may differ between machines.</summary>
    /// <param name="value">The number.</param>
    /// <returns>The rounded number.</returns>
    public static double Round(double value) => Math.Round(value, 3, MidpointRounding.AwayFromZero);

    /// <summary>A value as a sentence shows it.</summary>
    /// <param name="value">The value.</param>
    /// <param name="all">All values of the sentence.</param>
    /// <returns>The text: a number with at most two decimals, from 100 on one; more where a different value would read alike.</returns>
    public static string InSentence(Scalar value, IReadOnlyList<(string Name, Scalar Value)> all)
    {
        if (value.Number is not { } exact)
        {
            return value.ToString();
        }

        var number = Round(exact);
        var decimals = Math.Abs(number) < 100 ? 2 : 1;
        foreach (var (_, other) in all)
        {
            while (decimals < 3 && other.Number is { } near && Round(near) != number && Shown(near, decimals) == Shown(number, decimals))
            {
                decimals++;
            }
        }

        return Shown(number, decimals).ToString("0.###", CultureInfo.InvariantCulture);
    }

    private static double Shown(double value, int decimals) => Math.Round(value, decimals, MidpointRounding.AwayFromZero);
}
