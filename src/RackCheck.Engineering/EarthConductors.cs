using System.Collections.Immutable;

namespace RackCheck.Engineering;

/// <summary>Protective conductors: least section, resistance, protective conductor current.</summary>
/// <remarks>
/// Sections and k: IEC 60364-5-54 (secondary source). Protective conductor current: BS 7671 543.7; RCD: BS 7671 531.3.2 (values from memory).
/// Resistivity: IEC 60028; most resistance of a path: IEC 60950-1 (secondary sources). Sections on offer: IEC 60228; ratings of RCDs: IEC 61008-1
/// (values from memory).
/// </remarks>
public static class EarthConductors
{
    /// <summary>Line conductor up to which the protective one has its section, mm2; from there to <see cref="HalfPastMm2"/> that section still does.</summary>
    public const double SameUpToMm2 = 16;

    /// <summary>Line conductor past which the protective one has half its section, mm2.</summary>
    public const double HalfPastMm2 = 35;

    /// <summary>Least section of a conductor that is no part of a cable and protected against damage, mm2.</summary>
    public const double LeastProtectedMm2 = 2.5;

    /// <summary>Least section of a conductor that is no part of a cable and not protected, mm2.</summary>
    public const double LeastUnprotectedMm2 = 4;

    /// <summary>k of PVC-insulated copper that is no part of a cable, A s^0.5 / mm2.</summary>
    public const double SeparateCopperK = 143;

    /// <summary>k of PVC-insulated copper in a cable, A s^0.5 / mm2.</summary>
    public const double CabledCopperK = 115;

    /// <summary>Shortest time for which the adiabatic formula holds, s.</summary>
    public const double AdiabaticFromS = 0.1;

    /// <summary>Longest time for which the adiabatic formula holds, s.</summary>
    public const double AdiabaticToS = 5;

    /// <summary>Resistivity of copper at 20 C, ohm mm2 / m: 100 % IACS.</summary>
    public const double CopperOhmMm2PerM = 0.017241;

    /// <summary>Most resistance of the path to the bar, ohm: product safety test of IEC 60950-1.</summary>
    public const double MostPathOhm = 0.1;

    /// <summary>Protective conductor current above which a label and a secured connection are asked for, mA.</summary>
    public const double SecuredFromMa = 3.5;

    /// <summary>Protective conductor current above which high-integrity earthing is asked for, mA.</summary>
    public const double HighIntegrityFromMa = 10;

    /// <summary>Section from which the main protective conductor alone is high-integrity earthing, mm2.</summary>
    public const double HighIntegrityMm2 = 10;

    /// <summary>Share of an RCD's rated residual current that standing leakage may take, percent.</summary>
    public const double RcdSharePercent = 30;

    /// <summary>Nominal sections that conductors are made in, mm2.</summary>
    public static ImmutableArray<double> SectionsMm2 { get; } = [1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120, 150, 185, 240, 300, 400, 500, 630, 800, 1000];

    /// <summary>Rated residual currents that RCDs of circuits are made for, mA.</summary>
    public static ImmutableArray<double> RcdRatingsMa { get; } = [30, 100, 300, 500];

    /// <summary>The least nominal section that is no less than one asked for.</summary>
    /// <param name="leastMm2">Section asked for, mm2, 0 or more.</param>
    /// <returns>Section, mm2; null past the greatest. Example: 6.634 gives 10.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Under 0.</exception>
    public static double? NextSectionMm2(double leastMm2)
    {
        Require.NotNegative(leastMm2);
        foreach (var section in SectionsMm2)
        {
            if (section >= leastMm2)
            {
                return section;
            }
        }

        return null;
    }

    /// <summary>Least section by that of the line conductor, IEC 60364-5-54 table 54.2: S up to 16, 16 up to 35, then S/2.</summary>
    /// <param name="lineMm2">Section of the line conductor S, mm2, over 0.</param>
    /// <returns>Section, mm2. Example: 25 gives 16, 50 gives 25.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not over 0.</exception>
    public static double LeastByLineMm2(double lineMm2)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(lineMm2, 0);
        return lineMm2 <= SameUpToMm2 ? lineMm2 : lineMm2 <= HalfPastMm2 ? SameUpToMm2 : lineMm2 / 2;
    }

    /// <summary>Least section by the heat of a fault, adiabatic: <c>S = sqrt(I2 t)/k</c>.</summary>
    /// <remarks>Holds for 0.1 s to 5 s. For a shorter time take the energy that the breaker lets through, for a longer one heat is shed meanwhile.</remarks>
    /// <param name="faultA">Fault current I, A, 0 or more.</param>
    /// <param name="seconds">Time until it is cut off t, s, 0 or more.</param>
    /// <param name="k">k of conductor and insulation, over 0.</param>
    /// <returns>Section, mm2. Example: 3000 A, 0.1 s, 143 give 6.634.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double AdiabaticMm2(double faultA, double seconds, double k)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(faultA, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(seconds, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(k, 0);
        return Math.Sqrt(faultA * faultA * seconds) / k;
    }

    /// <summary>Resistance of a copper conductor at 20 C: <c>R = rho L/S</c>.</summary>
    /// <param name="lengthM">Length L, m, 0 or more.</param>
    /// <param name="crossSectionMm2">Section S, mm2, over 0.</param>
    /// <returns>Resistance, ohm. Example: 5 m of 6 mm2 give 0.01437.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double ResistanceOhm(double lengthM, double crossSectionMm2)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(lengthM, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(crossSectionMm2, 0);
        return CopperOhmMm2PerM * lengthM / crossSectionMm2;
    }
}
