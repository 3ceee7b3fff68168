namespace RackCheck.Engineering;

/// <summary>Earth faults: current at the end of a circuit and disconnection by its breaker.</summary>
/// <remarks>BS 7671 411.4.4 and IEC 60364-4-41 (values from memory). Resistance only: reactance is small up to 16 mm2.</remarks>
public static class FaultLoops
{
    /// <summary>Ratio of the resistance of a conductor at its operating temperature to that at 20 C.</summary>
    public const double HotFactor = 1.2;

    /// <summary>Highest external earth fault loop impedance that public TN-S supplies are declared with, ohm. Common practice, no source.</summary>
    public const double MostDeclaredOhm = 0.8;

    /// <summary>Breaking capacity of usual breakers, kA.</summary>
    public const double UsualBreakingKa = 6;

    /// <summary>Fault current at the end of a cable: <c>I = U/(U/I0 + 1.2 x 2 x rho L/S)</c>, with a protective conductor of the same area.</summary>
    /// <param name="voltageV">Voltage from line to earth U, V, above 0.</param>
    /// <param name="originA">Fault current at the origin of the cable I0, A, above 0.</param>
    /// <param name="lengthM">Cable length L, m, 0 or more.</param>
    /// <param name="crossSectionMm2">Cross-sectional area S, mm2, above 0.</param>
    /// <returns>Current, A. Example: 230 V, 800 A, 15 m of 2.5 mm2 gives 429.3 A.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double EndA(double voltageV, double originA, double lengthM, double crossSectionMm2)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(voltageV, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(originA, 0);
        return voltageV / ((voltageV / originA) + (HotFactor * 2 * EarthConductors.ResistanceOhm(lengthM, crossSectionMm2)));
    }

    /// <summary>Highest voltage of extra-low voltage, V AC: up to it the voltage itself protects against shock, not the disconnection.</summary>
    /// <remarks>Source: IEC 60364-4-41 clause 414; value from memory.</remarks>
    public const double ExtraLowV = 50;

    /// <summary>Current from which a breaker always trips instantaneously: <c>upper multiple x In</c>.</summary>
    /// <param name="curve">B, C or D.</param>
    /// <param name="ratedA">Rated current In, A, above 0.</param>
    /// <returns>Current, A. Example: C 16 gives 160.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Unknown curve, or a rating of 0 or less.</exception>
    public static double CertainTripA(string curve, double ratedA)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(ratedA, 0);
        var found = Breakers.Curves.FirstOrDefault(c => c.Curve == curve)
            ?? throw new ArgumentOutOfRangeException(nameof(curve), curve, "The curve must be B, C or D.");
        return found.Greatest * ratedA;
    }
}
