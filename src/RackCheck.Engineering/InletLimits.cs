using System.Collections.Immutable;

namespace RackCheck.Engineering;

/// <summary>A class of equipment by permitted inlet air.</summary>
/// <param name="Name">Class name, A1 to A4.</param>
/// <param name="LeastC">Minimum inlet temperature, C.</param>
/// <param name="GreatestC">Maximum inlet temperature up to 900 m, C.</param>
/// <param name="GreatestDewPointC">Maximum dew point, C.</param>
/// <param name="GreatestHumidityPercent">Maximum relative humidity, percent.</param>
/// <param name="MetresPerK">Altitude above 900 m that lowers the maximum temperature by 1 K, m.</param>
public sealed record InletClass(
    string Name,
    double LeastC,
    double GreatestC,
    double GreatestDewPointC,
    double GreatestHumidityPercent,
    double MetresPerK)
{
    /// <summary>Maximum inlet temperature at an altitude, with the derating of the class.</summary>
    /// <param name="altitudeM">Altitude above sea level, m; valid up to 3050, see <see cref="InletLimits.IsWithinAltitude"/>.</param>
    /// <returns>Temperature, C. Example: A3 at 1800 m: 34.86.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The altitude is not a finite number.</exception>
    public double GreatestAtC(double altitudeM) => InletLimits.DeratedC(GreatestC, altitudeM, MetresPerK);
}

/// <summary>Maximum inlet air temperature of equipment.</summary>
/// <remarks>
/// ASHRAE TC 9.9, thermal guidelines: classes (secondary source), altitude from which limits are derated (value from memory; an older edition has 950 m).
/// The recommended range is not a limit and is not derated.
/// </remarks>
public static class InletLimits
{
    /// <summary>Minimum recommended temperature, C.</summary>
    public const double RecommendedLeastC = 18;

    /// <summary>Maximum recommended temperature, C.</summary>
    public const double RecommendedGreatestC = 27;

    /// <summary>Altitude above which limits are derated, m.</summary>
    public const double DeratingFromM = 900;

    /// <summary>Altitude difference that lowers the limit of classes A1 and A2 by 1 K, m.</summary>
    public const double MetresPerK = 300;

    /// <summary>Maximum altitude of the classes, m.</summary>
    public const double GreatestAltitudeM = 3050;

    /// <summary>Inlet limit above which no class applies, C.</summary>
    public const double GreatestClassC = 45;

    /// <summary>The classes.</summary>
    public static ImmutableArray<InletClass> Classes { get; } =
    [
        new("A1", 15, 32, 17, 80, 300),
        new("A2", 10, 35, 21, 80, 300),
        new("A3", 5, 40, 24, 85, 175),
        new("A4", 5, 45, 24, 90, 125),
    ];

    /// <summary>Class of equipment with an inlet limit: up to 32 C A1, up to 35 C A2, up to 40 C A3, above that A4.</summary>
    /// <param name="limitC">Inlet limit up to 900 m, C; any finite number.</param>
    /// <returns>The class. Examples: 32: A1; 35: A2; 38: A3; 45 and 55: A4.</returns>
    /// <remarks>ASHRAE TC 9.9 (secondary source). Above 45 C no class applies; the humidity limits of A4 are used.</remarks>
    public static InletClass ClassOf(double limitC) => Classes.FirstOrDefault(c => limitC <= c.GreatestC) ?? Classes[^1];

    /// <summary>Altitude difference that lowers an inlet limit by 1 K: 300 m below 40 C, 175 m from 40 C, 125 m from 45 C.</summary>
    /// <param name="limitC">Inlet limit up to 900 m, C; any finite number.</param>
    /// <returns>Altitude difference, m. Examples: 35: 300; 40: 175; 44.9: 175; 45: 125.</returns>
    /// <remarks>
    /// ASHRAE TC 9.9 (value from memory): the slope of class A2 up to A3, of A3 up to A4, and of A4 from there. Above 45 C the manufacturer's own slope
    /// takes precedence.
    /// </remarks>
    public static double MetresPerKOf(double limitC) => limitC switch
    {
        >= GreatestClassC => 125,
        >= 40 => 175,
        _ => MetresPerK,
    };

    /// <summary>Derated limit: <c>T - (h - 900)/300</c> above 900 m, otherwise the limit itself.</summary>
    /// <param name="limitC">Limit up to 900 m T, C.</param>
    /// <param name="altitudeM">Altitude above sea level h, m; valid up to 3050, see <see cref="IsWithinAltitude"/>.</param>
    /// <param name="metresPerK">Altitude difference that lowers the limit by 1 K, m, above 0.</param>
    /// <returns>Limit, C.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number, or a derating of 0 or less.</exception>
    /// <remarks>Classes A3 and A4 are derated faster, by 1 K per 175 m and 125 m. See <see cref="MetresPerKOf"/>.</remarks>
    /// <example>35 C at 900 m: 35; at 1800 m: 32; at 3050 m: 27.83.</example>
    public static double DeratedC(double limitC, double altitudeM, double metresPerK = MetresPerK)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(limitC, -Air.ZeroC);
        ArgumentOutOfRangeException.ThrowIfLessThan(altitudeM, double.MinValue);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(metresPerK, 0);
        return limitC - (Math.Max(0, altitudeM - DeratingFromM) / metresPerK);
    }

    /// <summary>Whether an altitude is within the range of the classes.</summary>
    /// <param name="altitudeM">Altitude above sea level, m.</param>
    /// <returns>True up to 3050.</returns>
    public static bool IsWithinAltitude(double altitudeM) => altitudeM <= GreatestAltitudeM;
}
