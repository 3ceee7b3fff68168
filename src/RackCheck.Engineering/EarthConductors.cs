using System.Collections.Immutable;

namespace RackCheck.Engineering;

/// <summary>Protective conductors: minimum cross-sectional area, resistance and protective conductor current.</summary>
/// <remarks>
/// Cross-sectional areas and k: IEC 60364-5-54 (secondary source). Protective conductor current: BS 7671 543.7; RCD: BS 7671 531.3.2 (values from memory).
/// Resistivity: IEC 60028; maximum earth continuity resistance: IEC 60950-1 (secondary sources). Nominal cross-sectional areas: IEC 60228; ratings of
/// RCDs: IEC 61008-1 (values from memory).
/// </remarks>
public static class EarthConductors
{
    /// <summary>
    /// Largest line conductor for which the protective conductor has the same area, mm2; from there to <see cref="HalfPastMm2"/> this area is sufficient.
    /// </summary>
    public const double SameUpToMm2 = 16;

    /// <summary>Line conductor above which the protective conductor has half its area, mm2.</summary>
    public const double HalfPastMm2 = 35;

    /// <summary>Minimum area of a separate conductor, protected against mechanical damage, mm2.</summary>
    public const double LeastProtectedMm2 = 2.5;

    /// <summary>Minimum area of a separate conductor, not protected against mechanical damage, mm2.</summary>
    public const double LeastUnprotectedMm2 = 4;

    /// <summary>k of a separate PVC-insulated copper conductor, A s^0.5 / mm2.</summary>
    public const double SeparateCopperK = 143;

    /// <summary>k of a PVC-insulated copper conductor in a cable, A s^0.5 / mm2.</summary>
    public const double CabledCopperK = 115;

    /// <summary>Minimum time for the adiabatic equation, s.</summary>
    public const double AdiabaticFromS = 0.1;

    /// <summary>Maximum time for the adiabatic equation, s.</summary>
    public const double AdiabaticToS = 5;

    /// <summary>Resistivity of copper at 20 C, ohm mm2 / m: 100 % IACS.</summary>
    public const double CopperOhmMm2PerM = 0.017241;

    /// <summary>Maximum earth continuity resistance to the earth bar, ohm: product safety test of IEC 60950-1.</summary>
    public const double MostPathOhm = 0.1;

    /// <summary>Protective conductor current above which a label and a secured connection are required, mA.</summary>
    public const double SecuredFromMa = 3.5;

    /// <summary>Protective conductor current above which high-integrity earthing is required, mA.</summary>
    public const double HighIntegrityFromMa = 10;

    /// <summary>Minimum area at which a single main protective conductor counts as high-integrity earthing, mm2.</summary>
    public const double HighIntegrityMm2 = 10;

    /// <summary>Minimum earth conductor of a high-integrity connection by an IEC 60309 plug up to <see cref="SmallIndustrialPlugA"/>, mm2.</summary>
    public const double SmallIndustrialPlugMm2 = 2.5;

    /// <summary>Minimum earth conductor of a high-integrity connection by a larger IEC 60309 plug, mm2.</summary>
    public const double IndustrialPlugMm2 = 4;

    /// <summary>Largest IEC 60309 plug for which <see cref="SmallIndustrialPlugMm2"/> is enough, A.</summary>
    public const double SmallIndustrialPlugA = 16;

    /// <summary>Maximum standing leakage, percent of the rated residual current of the RCD.</summary>
    public const double RcdSharePercent = 30;

    /// <summary>Nominal cross-sectional areas of conductors, mm2.</summary>
    public static ImmutableArray<double> SectionsMm2 { get; } = [1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120, 150, 185, 240, 300, 400, 500, 630, 800, 1000];

    /// <summary>Rated residual currents of RCDs, mA.</summary>
    public static ImmutableArray<double> RcdRatingsMa { get; } = [30, 100, 300, 500];

    /// <summary>The smallest nominal cross-sectional area that is at least the required area.</summary>
    /// <param name="leastMm2">Required area, mm2, 0 or more.</param>
    /// <returns>Nominal area, mm2; null above the largest. Example: 6.634 gives 10.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Below 0.</exception>
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

    /// <summary>Minimum area by line conductor, IEC 60364-5-54 table 54.2: S up to 16, 16 up to 35, then S/2.</summary>
    /// <param name="lineMm2">Cross-sectional area of the line conductor S, mm2, above 0.</param>
    /// <returns>Cross-sectional area, mm2. Example: 25 gives 16, 50 gives 25.</returns>
    /// <exception cref="ArgumentOutOfRangeException">0 or less.</exception>
    public static double LeastByLineMm2(double lineMm2)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(lineMm2, 0);
        return lineMm2 <= SameUpToMm2 ? lineMm2 : lineMm2 <= HalfPastMm2 ? SameUpToMm2 : lineMm2 / 2;
    }

    /// <summary>
    /// Largest breaker of curve B or C whose let-through energy is taken as 90 000 A2s, A: IEC 60898-1 energy limitation class 3
    /// at 10 kA (value from memory). A
    /// separate conductor then needs sqrt(90 000)/143 = 2.1 mm2, less than the minimum for strength.
    /// </summary>
    public const double MostLimitedA = 32;

    /// <summary>Minimum copper equipment grounding conductor by overcurrent device, NEC 250.122 (value from memory).</summary>
    /// <param name="breakerA">Rated current of the device, A, above 0.</param>
    /// <returns>Cross-sectional area, mm2. Examples: 15 A gives 2.1, 20 A gives 3.3, 30 A gives 5.3, 100 A gives 8.4, 200 A gives 13.3.</returns>
    /// <exception cref="ArgumentOutOfRangeException">0 or less.</exception>
    public static double LeastByBreakerMm2(double breakerA)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(breakerA, 0);
        return breakerA switch { <= 15 => 2.1, <= 20 => 3.3, <= 60 => 5.3, <= 100 => 8.4, <= 200 => 13.3, <= 300 => 21.2, _ => 33.6 };
    }

    /// <summary>Minimum earth conductor of a high-integrity connection by an IEC 60309 plug: BS 7671 543.7.1.202 (value from memory).</summary>
    /// <param name="plugA">Rated current of the plug, A, above 0.</param>
    /// <returns>Cross-sectional area, mm2. Examples: 16 A gives 2.5, 32 A gives 4.</returns>
    /// <exception cref="ArgumentOutOfRangeException">0 or less.</exception>
    public static double LeastByIndustrialPlugMm2(double plugA)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(plugA, 0);
        return plugA <= SmallIndustrialPlugA ? SmallIndustrialPlugMm2 : IndustrialPlugMm2;
    }

    /// <summary>Minimum area by the adiabatic equation: <c>S = sqrt(I2 t)/k</c>.</summary>
    /// <remarks>
    /// Valid from 0.1 s to 5 s. For shorter times use the let-through energy of the breaker. For longer times heat is lost to the surroundings.
    /// </remarks>
    /// <param name="faultA">Fault current I, A, 0 or more.</param>
    /// <param name="seconds">Disconnection time t, s, 0 or more.</param>
    /// <param name="k">k of conductor and insulation, above 0.</param>
    /// <returns>Cross-sectional area, mm2. Example: 3000 A, 0.1 s and 143 gives 6.634.</returns>
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
    /// <param name="crossSectionMm2">Cross-sectional area S, mm2, above 0.</param>
    /// <returns>Resistance, ohm. Example: 5 m of 6 mm2 gives 0.01437.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double ResistanceOhm(double lengthM, double crossSectionMm2)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(lengthM, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(crossSectionMm2, 0);
        return CopperOhmMm2PerM * lengthM / crossSectionMm2;
    }
}
