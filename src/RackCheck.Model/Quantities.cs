using System.Globalization;

namespace RackCheck.Model;

/// <summary>
/// Values with units, and their rounding. <c>actual</c>, <c>limit</c>, <c>messageData</c> and the results in <c>calculation</c> are rounded to 0.001.
/// Intermediate values in <c>calculation</c> have up to six decimals, so that the result can be reproduced. A sentence shows two decimals, one from 100
/// up, and more only where two different values would otherwise look the same.
/// </summary>
public static class Quantities
{
    /// <summary>A length, rounded to 0.001 mm.</summary>
    /// <param name="value">Length, mm.</param>
    /// <returns>The quantity.</returns>
    public static Quantity Millimetres(double value) => Of(value, "mm");

    /// <summary>A height in U.</summary>
    /// <param name="value">Height, U.</param>
    /// <returns>The quantity.</returns>
    public static Quantity Units(double value) => Of(value, "U");

    /// <summary>A value with its unit of measure, rounded to 0.001.</summary>
    /// <param name="value">The value.</param>
    /// <param name="unit">Unit of measure.</param>
    /// <returns>The quantity.</returns>
    public static Quantity Of(double value, string unit) => new() { Value = Round(value), Unit = unit };

    /// <summary>Rounds to 0.001. The last binary digits of a sum carry no information and may differ between machines.</summary>
    /// <param name="value">The number.</param>
    /// <returns>The rounded number.</returns>
    public static double Round(double value) => Math.Round(value, 3, MidpointRounding.AwayFromZero);

    /// <summary>Rounds as a text with that many decimals does: by the decimal digits, so that 1.265 is 1.27.</summary>
    /// <param name="value">The number.</param>
    /// <param name="decimals">Number of decimals.</param>
    public static double RoundTo(double value, int decimals) => (double)Math.Round((decimal)value, decimals, MidpointRounding.AwayFromZero);

    /// <summary>A value as a sentence shows it.</summary>
    /// <param name="value">The value.</param>
    /// <param name="all">All values of the sentence.</param>
    /// <returns>The text: a number with at most two decimals, at most one from 100 up, and more where a different value would look the same.</returns>
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
