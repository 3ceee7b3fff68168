namespace RackCheck.Engineering;

/// <summary>Comparison of a value with a limit. All rooms ask here, so that a rule, its remedy and a search agree at the limit.</summary>
public static class Comparison
{
    /// <summary>
    /// Tolerance in the unit of the values (mm, A, kg, W, K, %). Covers binary rounding of decimal sums. Reports show 0.001 of a unit, so a value over
    /// its limit also looks larger.
    /// </summary>
    public const double Tolerance = 1e-3;

    /// <summary>Whether a value is over a limit by more than the tolerance.</summary>
    /// <param name="value">The value.</param>
    /// <param name="limit">The limit, in the same unit.</param>
    /// <returns>Whether it is. Examples with limit 10: 10.001 is not over, 10.002 is.</returns>
    public static bool IsOver(double value, double limit) => value > limit + Tolerance;
}
