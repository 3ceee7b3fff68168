using System.Collections.Immutable;

namespace RackCheck.Engineering;

/// <summary>A copper cable in the voltage drop table.</summary>
/// <param name="CrossSectionMm2">Cross-sectional area of a line conductor, mm2.</param>
/// <param name="DropMvPerAM">Voltage drop over both conductors, mV/A/m, single phase, conductor at 70 C.</param>
/// <param name="CapacityA">Current-carrying capacity clipped direct, two loaded conductors, A.</param>
/// <param name="ThreePhaseCapacityA">Current-carrying capacity clipped direct, three loaded conductors, A.</param>
/// <param name="ResistanceMilliohmPerM">Resistance of one conductor at 20 C, milliohm/m.</param>
public sealed record CopperCable(double CrossSectionMm2, double DropMvPerAM, double CapacityA, double ThreePhaseCapacityA, double ResistanceMilliohmPerM)
{
    /// <summary>Current-carrying capacity clipped direct, A.</summary>
    /// <param name="phases">Number of phases, 1 or 3.</param>
    /// <returns>Capacity for two loaded conductors (1 phase) or three (3 phases).</returns>
    public double CapacityOnA(int phases) => phases == 3 ? ThreePhaseCapacityA : CapacityA;
}

/// <summary>Voltage drop and current-carrying capacity of supply cables.</summary>
/// <remarks>
/// Voltage drop: BS 7671 table 4D2B, two-core copper, 70 C thermoplastic (secondary source). Capacity: BS 7671 table 4D2A, reference method C (values from
/// memory); three loaded conductors carry less because they heat each other. Resistance: IEC 60228 class 2 (secondary source). The voltage drop equals the
/// resistance at 70 C, rounded to two digits, except for 6 mm2: the table has 7.3, the resistance gives 7.37, and the table value is used.
/// </remarks>
public static class Cables
{
    /// <summary>Ratio of three-phase to single-phase voltage drop: half the square root of three.</summary>
    public const double ThreePhaseFactor = 0.866;

    /// <summary>The voltage drop table.</summary>
    public static ImmutableArray<CopperCable> All { get; } =
    [
        new(1.5, 29, 19.5, 17.5, 12.1),
        new(2.5, 18, 27, 24, 7.41),
        new(4, 11, 36, 32, 4.61),
        new(6, 7.3, 46, 41, 3.08),
        new(10, 4.4, 63, 57, 1.83),
        new(16, 2.8, 85, 76, 1.15),
    ];

    /// <summary>Table row of a cross-sectional area.</summary>
    /// <param name="crossSectionMm2">Cross-sectional area, mm2.</param>
    /// <returns>The row; null where the table has none.</returns>
    public static CopperCable? Find(double crossSectionMm2) => All.FirstOrDefault(c => Math.Abs(c.CrossSectionMm2 - crossSectionMm2) < 1e-9);

    /// <summary>Current-carrying capacity of any cross-sectional area: the value of the same or the next smaller row.</summary>
    /// <param name="crossSectionMm2">Cross-sectional area S, mm2, above 0.</param>
    /// <param name="phases">Number of phases, 1 or 3.</param>
    /// <returns>
    /// Capacity, A. Below the first row the value is proportional to the first row, which is conservative: thin cables carry more per square millimetre.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">The cross-sectional area is not positive.</exception>
    /// <example>4 mm2: 36; 5 mm2: 36; 25 mm2: 85 (last row); 0.75 mm2: 19.5 x 0.75 / 1.5 = 9.75.</example>
    public static double CapacityA(double crossSectionMm2, int phases)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(crossSectionMm2, 0);
        var row = All.LastOrDefault(c => c.CrossSectionMm2 <= crossSectionMm2 + 1e-9);
        return row?.CapacityOnA(phases) ?? All[0].CapacityOnA(phases) * crossSectionMm2 / All[0].CrossSectionMm2;
    }

    // Ambient temperature, C, and correction factor of 70 C thermoplastic cables: BS 7671 table 4B1, values from memory.
    private static readonly (double AmbientC, double Factor)[] AmbientFactors =
        [(25, 1.03), (30, 1.00), (35, 0.94), (40, 0.87), (45, 0.79), (50, 0.71), (55, 0.61), (60, 0.50)];

    // Correction factor of 1 to 6 bunched circuits: BS 7671 table 4C1, values from memory.
    private static readonly double[] GroupFactors = [1, 0.80, 0.70, 0.65, 0.60, 0.57];

    /// <summary>Ambient temperature of the capacity table, C.</summary>
    public const double ReferenceAmbientC = 30;

    /// <summary>Cross-sectional area of a ring final circuit, mm2.</summary>
    public const double RingMm2 = 2.5;

    /// <summary>Largest breaker of a ring final circuit of 2.5 mm2, A: BS 7671 433.1.204 (value from memory).</summary>
    public const double MostRingA = 32;

    /// <summary>
    /// Length of a single cable with the voltage drop and the fault loop of the circuit at its far point: <c>L</c>, for a ring final circuit <c>L/4</c>.
    /// </summary>
    /// <param name="lengthM">Length of the cable L, m, 0 or more; of a ring the whole cable, from the breaker round to the breaker.</param>
    /// <param name="isRing">Whether it is a ring final circuit.</param>
    /// <returns>Length, m. Example: a ring of 60 m counts as 15 m.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A negative length.</exception>
    /// <remarks>
    /// The far point of a ring is half the length away on either side, and the two legs are in parallel: half of half the length. On-Site Guide to BS 7671,
    /// R1 + R2 = (r1 + r2)/4 (value from memory).
    /// </remarks>
    public static double LoopLengthM(double lengthM, bool isRing)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(lengthM, 0);
        return isRing ? lengthM / RingShare : lengthM;
    }

    /// <summary>A ring final circuit has this fraction of its length as loop: two legs in parallel, each of half the length.</summary>
    public const double RingShare = 4;

    /// <summary>Correction factor Ca for the ambient temperature of a 70 C thermoplastic cable, interpolated.</summary>
    /// <param name="ambientC">Ambient temperature, C.</param>
    /// <returns>
    /// Factor. Below 25 C that of 25 C; above 60 C it falls on to 0 at 70 C. Examples: 30 gives 1, 42.5 gives 0.83, 65 gives 0.25.
    /// </returns>
    public static double AmbientFactor(double ambientC)
    {
        if (ambientC <= AmbientFactors[0].AmbientC)
        {
            return AmbientFactors[0].Factor;
        }

        for (var i = 1; i < AmbientFactors.Length; i++)
        {
            var (low, high) = (AmbientFactors[i - 1], AmbientFactors[i]);
            if (ambientC <= high.AmbientC)
            {
                return low.Factor + ((high.Factor - low.Factor) * (ambientC - low.AmbientC) / (high.AmbientC - low.AmbientC));
            }
        }

        var last = AmbientFactors[^1];
        return Math.Max(0, last.Factor * (70 - ambientC) / (70 - last.AmbientC));
    }

    /// <summary>Correction factor Cg for bunched circuits.</summary>
    /// <param name="circuits">Number of loaded circuits, this one included, 1 or more; above 6 the factor of 6.</param>
    /// <returns>Factor. Examples: 1 gives 1, 3 gives 0.70, 6 gives 0.57.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Below 1.</exception>
    public static double GroupFactor(int circuits)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(circuits, 1);
        return GroupFactors[Math.Min(circuits, GroupFactors.Length) - 1];
    }

    /// <summary>Voltage drop: <c>mV/A/m x L x I / 1000</c>; for three phases times 0.866.</summary>
    /// <param name="dropMvPerAM">Voltage drop of the cable, mV/A/m.</param>
    /// <param name="lengthM">Cable length L, m, 0 or more.</param>
    /// <param name="currentA">Line current I, A, 0 or more.</param>
    /// <param name="phases">Number of phases, 1 or 3.</param>
    /// <returns>Voltage drop, V; for three phases line to line. Example: 2.5 mm2, 18 m, 16 A gives 5.184 V.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double DropV(double dropMvPerAM, double lengthM, double currentA, int phases)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(dropMvPerAM, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(lengthM, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(currentA, 0);
        if (phases is not (1 or 3))
        {
            throw new ArgumentOutOfRangeException(nameof(phases), phases, "The number of phases must be 1 or 3.");
        }

        return dropMvPerAM * (phases == 3 ? ThreePhaseFactor : 1) * lengthM * currentA / 1000;
    }

    /// <summary>Voltage drop of any cross-sectional area: the table value, otherwise proportional to the next smaller row, <c>d S1 / S</c>.</summary>
    /// <param name="crossSectionMm2">Cross-sectional area of a line conductor S, mm2, above 0.</param>
    /// <returns>Voltage drop over both conductors, mV/A/m.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The cross-sectional area is not positive.</exception>
    /// <remarks>
    /// Within 4 % of the voltage drop of IEC 60228 conductors from 0.75 to 50 mm2 at 70 C. The resistivity of copper alone gives values 5 to 11 % lower,
    /// because a conductor has less copper than its nominal cross-sectional area. Reactance, relevant above 16 mm2, is not included.
    /// </remarks>
    /// <example>2.5 mm2: 18 (table); 8 mm2: 7.3 x 6 / 8 = 5.475; 25 mm2: 2.8 x 16 / 25 = 1.792; 1 mm2: 29 x 1.5 / 1 = 43.5.</example>
    public static double DropMvPerAM(double crossSectionMm2)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(crossSectionMm2, 0);
        if (Find(crossSectionMm2) is { } own)
        {
            return own.DropMvPerAM;
        }

        var row = All.LastOrDefault(c => c.CrossSectionMm2 < crossSectionMm2) ?? All[0];
        return row.DropMvPerAM * row.CrossSectionMm2 / crossSectionMm2;
    }

    /// <summary>Voltage drop at the outlet: <c>d L I/1000</c>, as a percentage of the voltage.</summary>
    /// <param name="dropMvPerAM">Voltage drop d over both conductors, mV/A/m; half of it in each conductor.</param>
    /// <param name="lengthM">Cable length L, m.</param>
    /// <param name="loopA">
    /// Mean current I of the two conductors, A: the line current for a single phase, half the sum of line and neutral for three phases, half the difference
    /// of two lines for a load from line to line.
    /// </param>
    /// <param name="voltageV">Voltage at the outlet, V, above 0.</param>
    /// <returns>Voltage drop, percent.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A negative value, or a voltage that is not positive.</exception>
    /// <remarks>
    /// Single phase: the table value. Balanced three phases: half of it, equal to 0.866 d line to line over sqrt(3) times the voltage. For unbalanced loads
    /// the voltage drops of line and neutral are added arithmetically, which is conservative.
    /// </remarks>
    /// <example>2.5 mm2, 18 m, 16 A, 230 V: 18 x 18 x 16 / 1000 = 5.184 V, 2.254 %.</example>
    public static double DropPercent(double dropMvPerAM, double lengthM, double loopA, double voltageV)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(dropMvPerAM, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(lengthM, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(loopA, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(voltageV, 0);
        return dropMvPerAM * lengthM * loopA / 1000 / voltageV * 100;
    }
}
