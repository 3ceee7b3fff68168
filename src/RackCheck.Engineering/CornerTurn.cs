namespace RackCheck.Engineering;

/// <summary>Result of moving a footprint round a corner.</summary>
/// <param name="GreatestWidthMm">Maximum width that passes at this length, mm; 0 or less where nothing of this length passes.</param>
/// <param name="Straight">Whether it passes by a change of direction, without turning.</param>
/// <param name="Passes">Whether it passes.</param>
public readonly record struct CornerPassage(double GreatestWidthMm, bool Straight, bool Passes);

/// <summary>Whether a rectangle passes the right-angled corner between two corridors.</summary>
/// <remarks>Geometry of a rectangle on swivel castors between plain walls. Doors, skirting boards and handles are not included. Source: derived.</remarks>
public static class CornerTurn
{
    /// <summary>Number of bisections of a right angle; gives the angle to 1e-9 rad.</summary>
    private const int Halvings = 30;

    /// <summary>
    /// A footprint L x w at the corner from corridor a into corridor b. It passes without turning where one side fits each corridor:
    /// <c>L &lt;= b and w &lt;= a</c>, or <c>L &lt;= a and w &lt;= b</c>. Otherwise it passes by turning where w is at most <see cref="TurningWidthMm"/>.
    /// </summary>
    /// <param name="fromMm">Width of corridor a, mm, above 0.</param>
    /// <param name="intoMm">Width of corridor b, mm, above 0.</param>
    /// <param name="oneMm">One side of the footprint, mm, above 0; the longer side is L.</param>
    /// <param name="otherMm">The other side, mm, above 0.</param>
    /// <returns>Whether and how it passes.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <remarks>Where L fits a corridor, turning passes no larger width than a change of direction: never more than <c>min(a, b)</c>.</remarks>
    /// <example>From 1200 into 1200: 2000 x 690 passes by turning, 2000 x 700 does not pass (697.1); 1200 x 1200 passes without turning.</example>
    public static CornerPassage Round(double fromMm, double intoMm, double oneMm, double otherMm)
    {
        Require.Positive(fromMm);
        Require.Positive(intoMm);
        Require.Positive(oneMm);
        Require.Positive(otherMm);
        var (length, width) = oneMm >= otherMm ? (oneMm, otherMm) : (otherMm, oneMm);
        var (narrow, wide) = fromMm <= intoMm ? (fromMm, intoMm) : (intoMm, fromMm);
        const double Tolerance = Comparison.Tolerance;
        if (length <= wide + Tolerance)
        {
            // One side lies across each corridor. If the length fits both, the width gets the wider corridor.
            var across = length <= narrow + Tolerance ? wide : narrow;
            return new(across, Straight: true, width <= across + Tolerance);
        }

        var turning = TurningWidthMm(fromMm, intoMm, length);
        return new(turning, Straight: false, width <= turning + Tolerance);
    }

    /// <summary>Maximum width that turns the corner: minimum over t from 0 to 90 degrees of <c>a sin t + b cos t - L sin t cos t</c>.</summary>
    /// <param name="fromMm">Width of corridor a, mm, above 0.</param>
    /// <param name="intoMm">Width of corridor b, mm, above 0.</param>
    /// <param name="lengthMm">Length L, mm, at least the wider corridor; a shorter footprint need not turn.</param>
    /// <returns>
    /// Width, mm; 0 or less where nothing of this length turns, from <c>L = (a^(2/3) + b^(2/3))^(3/2)</c>. It exceeds the exact minimum by at most
    /// <c>(a + b + 2 L) 3e-19</c>, which is below rounding.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <remarks>
    /// The slope <c>a cos t - b sin t - L cos 2t</c> has at most four zeros on the full circle. For such a length it changes sign in each of the other
    /// three quadrants, so it has exactly one zero in this quadrant, from falling to rising. Bisection finds it in a fixed number of steps. The error of
    /// the width is at most half the maximum curvature times the square of the angle error.
    /// </remarks>
    /// <example>a = b = 1200, L = 2000: 1200 sqrt 2 - 1000 = 697.06.</example>
    public static double TurningWidthMm(double fromMm, double intoMm, double lengthMm)
    {
        var (s, c) = Math.SinCos(TurningAngle(fromMm, intoMm, lengthMm));
        return (fromMm * s) + (intoMm * c) - (lengthMm * s * c);
    }

    /// <summary>The angle at which the corner leaves the smallest width.</summary>
    /// <param name="fromMm">Width of the corridor before the corner, mm, above 0.</param>
    /// <param name="intoMm">Width of the corridor after the corner, mm, above 0.</param>
    /// <param name="lengthMm">Length of the footprint, mm, at least the wider corridor.</param>
    /// <returns>Angle between the long side of the footprint and the corridor before the corner, degrees.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double TurningAngleDeg(double fromMm, double intoMm, double lengthMm) => TurningAngle(fromMm, intoMm, lengthMm) * 180 / Math.PI;

    private static double TurningAngle(double fromMm, double intoMm, double lengthMm)
    {
        Require.Positive(fromMm);
        Require.Positive(intoMm);
        Require.Finite(lengthMm);
        ArgumentOutOfRangeException.ThrowIfLessThan(lengthMm, Math.Max(fromMm, intoMm));
        var (falling, rising) = (0.0, Math.PI / 2);
        for (var i = 0; i < Halvings; i++)
        {
            var middle = (falling + rising) / 2;
            var (sin, cos) = Math.SinCos(middle);
            var slope = (fromMm * cos) - (intoMm * sin) - (lengthMm * ((cos * cos) - (sin * sin)));
            (falling, rising) = slope < 0 ? (middle, rising) : (falling, middle);
        }

        return (falling + rising) / 2;
    }
}
