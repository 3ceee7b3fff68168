using System.Collections.Immutable;

namespace RackCheck.Engineering;

/// <summary>A class of equipment by the air that it may take in.</summary>
/// <param name="Name">A1 to A4.</param>
/// <param name="LeastC">Lowest temperature allowed, C.</param>
/// <param name="GreatestC">Greatest temperature allowed up to 900 m, C.</param>
/// <param name="GreatestDewPointC">Greatest dew point allowed, C.</param>
/// <param name="GreatestHumidityPercent">Greatest relative humidity allowed, percent.</param>
/// <param name="MetresPerK">Height above 900 m that takes 1 K off the greatest temperature, m.</param>
public sealed record InletClass(
    string Name,
    double LeastC,
    double GreatestC,
    double GreatestDewPointC,
    double GreatestHumidityPercent,
    double MetresPerK)
{
    /// <summary>Greatest temperature allowed at a height, by the class's own slope.</summary>
    /// <param name="altitudeM">Height above the sea, m; valid up to 3050, see <see cref="InletLimits.IsWithinAltitude"/>.</param>
    /// <returns>Temperature, C. Example: A3 at 1800 m: 34.86.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The height is no number.</exception>
    public double GreatestAtC(double altitudeM) => InletLimits.DeratedC(GreatestC, altitudeM, MetresPerK);
}

/// <summary>How hot the air may be that equipment takes in.</summary>
/// <remarks>
/// ASHRAE TC 9.9, thermal guidelines: classes (secondary source), height from which limits fall (value from memory; an older edition has 950 m).
/// The recommended range is no limit and does not fall with the height.
/// </remarks>
public static class InletLimits
{
    /// <summary>Lowest temperature recommended, C.</summary>
    public const double RecommendedLeastC = 18;

    /// <summary>Greatest temperature recommended, C.</summary>
    public const double RecommendedGreatestC = 27;

    /// <summary>Height above which limits fall, m.</summary>
    public const double DeratingFromM = 900;

    /// <summary>Height that takes 1 K off a limit of equipment whose class is not told, m.</summary>
    public const double MetresPerK = 300;

    /// <summary>Greatest height that the classes are for, m.</summary>
    public const double GreatestAltitudeM = 3050;

    /// <summary>The classes.</summary>
    public static ImmutableArray<InletClass> Classes { get; } =
    [
        new("A1", 15, 32, 17, 80, 300),
        new("A2", 10, 35, 21, 80, 300),
        new("A3", 5, 40, 24, 85, 175),
        new("A4", 5, 45, 24, 90, 125),
    ];

    /// <summary>A limit at a height: <c>T - (h - 900)/300</c> above 900 m, the limit itself up to there.</summary>
    /// <param name="limitC">Limit up to 900 m T, C.</param>
    /// <param name="altitudeM">Height above the sea h, m; valid up to 3050, see <see cref="IsWithinAltitude"/>.</param>
    /// <param name="metresPerK">Height that takes 1 K off, m, over 0.</param>
    /// <returns>Limit, C.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No number, or a slope not over 0.</exception>
    /// <remarks>Classes A3 and A4 fall faster, by 1 K for 175 and 125 m: take <see cref="InletClass.GreatestAtC"/> where the class is known.</remarks>
    /// <example>35 C at 900 m: 35; at 1800 m: 32; at 3050 m: 27.83.</example>
    public static double DeratedC(double limitC, double altitudeM, double metresPerK = MetresPerK)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(limitC, -Air.ZeroC);
        ArgumentOutOfRangeException.ThrowIfLessThan(altitudeM, double.MinValue);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(metresPerK, 0);
        return limitC - (Math.Max(0, altitudeM - DeratingFromM) / metresPerK);
    }

    /// <summary>Whether a height is one that the classes are for.</summary>
    /// <param name="altitudeM">Height above the sea, m.</param>
    /// <returns>Whether it is up to 3050.</returns>
    public static bool IsWithinAltitude(double altitudeM) => altitudeM <= GreatestAltitudeM;
}
