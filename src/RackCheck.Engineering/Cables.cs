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
}
