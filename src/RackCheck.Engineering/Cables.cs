using System.Collections.Immutable;

namespace RackCheck.Engineering;

/// <summary>A copper cable of the drop table.</summary>
/// <param name="CrossSectionMm2">Section of a line conductor, mm2.</param>
/// <param name="DropMvPerAM">Drop there and back, mV/A/m, single phase, conductor at 70 C.</param>
/// <param name="CapacityA">Current that it carries clipped to a surface, two loaded conductors, A.</param>
/// <param name="ResistanceMilliohmPerM">Resistance of one conductor at 20 C, milliohm/m.</param>
public sealed record CopperCable(double CrossSectionMm2, double DropMvPerAM, double CapacityA, double ResistanceMilliohmPerM);

/// <summary>Voltage drop and capacity of supply cables.</summary>
/// <remarks>
/// Drop: BS 7671 table 4D2B, two-core copper, 70 C thermoplastic (secondary source). Capacity: BS 7671 table 4D2A, reference method C
/// (value from memory). Resistance: IEC 60228 class 2 (secondary source). The drop follows from the resistance at 70 C, rounded to two
/// figures, but for 6 mm2: the table says 7.3 where the resistance gives 7.37, and the table counts.
/// </remarks>
public static class Cables
{
    /// <summary>Drop of a three-phase cable to that of a single-phase one: half the square root of three.</summary>
    public const double ThreePhaseFactor = 0.866;

    /// <summary>The table.</summary>
    public static ImmutableArray<CopperCable> All { get; } =
    [
        new(1.5, 29, 19.5, 12.1),
        new(2.5, 18, 27, 7.41),
        new(4, 11, 36, 4.61),
        new(6, 7.3, 46, 3.08),
        new(10, 4.4, 63, 1.83),
        new(16, 2.8, 85, 1.15),
    ];

    /// <summary>The row of a section.</summary>
    /// <param name="crossSectionMm2">Section, mm2.</param>
    /// <returns>The row, or null where the table has none.</returns>
    public static CopperCable? Find(double crossSectionMm2) => All.FirstOrDefault(c => Math.Abs(c.CrossSectionMm2 - crossSectionMm2) < 1e-9);

    /// <summary>Voltage drop: <c>mV/A/m x L x I / 1000</c>, on three phases times 0.866.</summary>
    /// <param name="dropMvPerAM">Drop of the cable, mV/A/m.</param>
    /// <param name="lengthM">Length one way L, m, 0 or more.</param>
    /// <param name="currentA">Current of a line I, A, 0 or more.</param>
    /// <param name="phases">1 or 3.</param>
    /// <returns>Drop, V; on three phases line to line. Example: 2.5 mm2, 18 m, 16 A give 5.184 V.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double DropV(double dropMvPerAM, double lengthM, double currentA, int phases)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(dropMvPerAM, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(lengthM, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(currentA, 0);
        if (phases is not (1 or 3))
        {
            throw new ArgumentOutOfRangeException(nameof(phases), phases, "1 or 3.");
        }

        return dropMvPerAM * (phases == 3 ? ThreePhaseFactor : 1) * lengthM * currentA / 1000;
    }

    /// <summary>Drop of a section: the table's, else by resistance, <c>2 rho_70 / S</c>.</summary>
    /// <param name="crossSectionMm2">Section of a line conductor S, mm2, over 0.</param>
    /// <returns>Drop, mV/A/m, go and return.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The section is not positive.</exception>
    /// <remarks>Between and past the rows of the table: resistivity of IEC 60028 at 20 C, taken to 70 C. Class 2 conductors are within about 4 % of it; reactance, which counts past 16 mm2, is not in it.</remarks>
    /// <example>2.5 mm2: 18, the table's; 8 mm2: 2 x 0.017241 x 1.1965 x 1000 / 8 = 5.157.</example>
    public static double DropMvPerAM(double crossSectionMm2)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(crossSectionMm2, 0);
        return Find(crossSectionMm2)?.DropMvPerAM ?? 2000 * EarthConductors.CopperOhmMm2PerM * HotFactor / crossSectionMm2;
    }

    /// <summary>Drop as an outlet sees it, line to neutral: <c>(d/2) L (I + I_N)/1000</c>, as a share of the voltage.</summary>
    /// <param name="dropMvPerAM">Drop d of the section, mV/A/m, go and return; half of it falls on each conductor.</param>
    /// <param name="lengthM">Length of the cable L, m.</param>
    /// <param name="lineA">Current of the line I, A.</param>
    /// <param name="neutralA">Current of the neutral I_N, A: that of the line with a single phase, 0 with three phases alike.</param>
    /// <param name="voltageV">Voltage line to neutral, V, over 0.</param>
    /// <returns>Drop, percent.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A negative value, or a voltage that is not positive.</exception>
    /// <remarks>Single phase: the table's own. Three phases alike: half, which is 0.866 d line to line over root 3 times the voltage. In between the two drops add at most arithmetically, so it is the cautious end.</remarks>
    /// <example>2.5 mm2, 18 m, 16 A and 16 A, 230 V: 9 x 18 x 32 / 1000 = 5.184 V, 2.254 %.</example>
    public static double DropPercent(double dropMvPerAM, double lengthM, double lineA, double neutralA, double voltageV)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(dropMvPerAM, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(lengthM, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(lineA, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(neutralA, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(voltageV, 0);
        return dropMvPerAM / 2 * lengthM * (lineA + neutralA) / 1000 / voltageV * 100;
    }

    /// <summary>Resistance of copper at 70 C to that at 20 C: <c>(234.5 + 70)/(234.5 + 20)</c>.</summary>
    public const double HotFactor = (234.5 + 70) / (234.5 + 20);
}
