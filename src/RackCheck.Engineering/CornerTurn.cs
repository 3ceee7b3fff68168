namespace RackCheck.Engineering;

/// <summary>How a footprint gets round a corner.</summary>
/// <param name="GreatestWidthMm">Greatest width that gets round at its length, mm; 0 or less where nothing of that length does.</param>
/// <param name="Straight">Whether it changes direction without being turned.</param>
/// <param name="Passes">Whether it gets round.</param>
public readonly record struct CornerPassage(double GreatestWidthMm, bool Straight, bool Passes);

/// <summary>Whether a rectangle gets round the right-angled corner of two corridors.</summary>
/// <remarks>Geometry of a rectangle on swivel castors between plain walls: no door, skirting, handle or hand is in it. Source: derived.</remarks>
public static class CornerTurn
{
    /// <summary>Halvings of a right angle: the angle is then known to 1e-9 rad.</summary>
    private const int Halvings = 30;

    /// <summary>
    /// Round the corner from a corridor a into one b with a footprint L x w. It goes across without turning where one side fits into each:
    /// <c>L &lt;= b and w &lt;= a</c>, or <c>L &lt;= a and w &lt;= b</c>; else it turns where w is at most <see cref="TurningWidthMm"/>.
    /// </summary>
    /// <param name="fromMm">Width of the corridor a, mm, over 0.</param>
    /// <param name="intoMm">Width of the corridor b, mm, over 0.</param>
    /// <param name="oneMm">A side of the footprint, mm, over 0; the longer of the two counts as L.</param>
    /// <param name="otherMm">The other side, mm, over 0.</param>
    /// <returns>Whether and how it gets round.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <remarks>Where L fits into a corridor turning lets no greater width round than going straight: it never lets more than <c>min(a, b)</c>.</remarks>
    /// <example>From 1200 into 1200: 2000 x 690 turns, 2000 x 700 does not (697.1); 1200 x 1200 goes straight.</example>
    public static CornerPassage Round(double fromMm, double intoMm, double oneMm, double otherMm)
    {
        Require.Positive(fromMm);
        Require.Positive(intoMm);
        Require.Positive(oneMm);
        Require.Positive(otherMm);
        var (length, width) = oneMm >= otherMm ? (oneMm, otherMm) : (otherMm, oneMm);
        var (narrow, wide) = fromMm <= intoMm ? (fromMm, intoMm) : (intoMm, fromMm);
        const double Tolerance = SetbackInterval.ToleranceMm;
        if (length <= wide + Tolerance)
        {
            // One side lies across each corridor; a length that fits into both leaves the width the wide one.
            var across = length <= narrow + Tolerance ? wide : narrow;
            return new(across, Straight: true, width <= across + Tolerance);
        }

        var turning = TurningWidthMm(fromMm, intoMm, length);
        return new(turning, Straight: false, width <= turning + Tolerance);
    }

    /// <summary>Greatest width that turns round the corner: least over t from 0 to 90 degrees of <c>a sin t + b cos t - L sin t cos t</c>.</summary>
    /// <param name="fromMm">Width of the corridor a, mm, over 0.</param>
    /// <param name="intoMm">Width of the corridor b, mm, over 0.</param>
    /// <param name="lengthMm">Length L, mm, at least the wider of the two: a shorter one need not turn.</param>
    /// <returns>
    /// Width, mm; 0 or less where nothing of that length turns, which is from <c>L = (a^(2/3) + b^(2/3))^(3/2)</c> on. It lies at most
    /// <c>(a + b + 2 L) 3e-19</c> over the true least, which is under rounding.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <remarks>
    /// The slope, <c>a cos t - b sin t - L cos 2t</c>, has at most four zeros on the full circle. For such a length it changes sign in each of the other
    /// three quarters, so it has exactly one in this, from falling to rising: halving finds it, in the same steps each time. The distance to
    /// the zero is then known, and the width is off by no more than half the greatest bend times its square.
    /// </remarks>
    /// <example>a = b = 1200, L = 2000: 1200 sqrt 2 - 1000 = 697.06.</example>
    public static double TurningWidthMm(double fromMm, double intoMm, double lengthMm)
    {
        var (s, c) = Math.SinCos(TurningAngle(fromMm, intoMm, lengthMm));
        return (fromMm * s) + (intoMm * c) - (lengthMm * s * c);
    }

    /// <summary>The angle at which the corner leaves the least width.</summary>
    /// <param name="fromMm">Width of the corridor that it comes from, mm, over 0.</param>
    /// <param name="intoMm">Width of the corridor that it turns into, mm, over 0.</param>
    /// <param name="lengthMm">Length of the footprint, mm, at least the wider corridor.</param>
    /// <returns>Angle between the footprint's length and the corridor that it comes from, degrees.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A size is out of its range.</exception>
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
