using System.Collections.Immutable;

namespace RackCheck.Engineering;

/// <summary>A copper cable of the drop table.</summary>
/// <param name="CrossSectionMm2">Section of a line conductor, mm2.</param>
/// <param name="DropMvPerAM">Drop there and back, mV/A/m, single phase, conductor at 70 C.</param>
/// <param name="CapacityA">Current that it carries clipped to a surface, two loaded conductors, A.</param>
/// <param name="ThreePhaseCapacityA">Current that it carries clipped to a surface, three loaded conductors, A.</param>
/// <param name="ResistanceMilliohmPerM">Resistance of one conductor at 20 C, milliohm/m.</param>
public sealed record CopperCable(double CrossSectionMm2, double DropMvPerAM, double CapacityA, double ThreePhaseCapacityA, double ResistanceMilliohmPerM)
{
    /// <summary>Current that it carries clipped to a surface, A.</summary>
    /// <param name="phases">1 or 3.</param>
    /// <returns>That of two loaded conductors, or of three.</returns>
    public double CapacityOnA(int phases) => phases == 3 ? ThreePhaseCapacityA : CapacityA;
}

/// <summary>Voltage drop and capacity of supply cables.</summary>
/// <remarks>
/// Drop: BS 7671 table 4D2B, two-core copper, 70 C thermoplastic (secondary source). Capacity: BS 7671 table 4D2A, reference method C
/// (values from memory): a line of three phases carries less, since three conductors warm each other. Resistance: IEC 60228 class 2 (secondary source). The drop follows from the resistance at 70 C, rounded to two
/// figures, but for 6 mm2: the table says 7.3 where the resistance gives 7.37, and the table counts.
/// </remarks>
public static class Cables
{
    /// <summary>Drop of a three-phase cable to that of a single-phase one: half the square root of three.</summary>
    public const double ThreePhaseFactor = 0.866;

    /// <summary>The table.</summary>
    public static ImmutableArray<CopperCable> All { get; } =
    [
        new(1.5, 29, 19.5, 17.5, 12.1),
        new(2.5, 18, 27, 24, 7.41),
        new(4, 11, 36, 32, 4.61),
        new(6, 7.3, 46, 41, 3.08),
        new(10, 4.4, 63, 57, 1.83),
        new(16, 2.8, 85, 76, 1.15),
    ];

    /// <summary>The row of a section.</summary>
    /// <param name="crossSectionMm2">Section, mm2.</param>
    /// <returns>The row, or null where the table has none.</returns>
    public static CopperCable? Find(double crossSectionMm2) => All.FirstOrDefault(c => Math.Abs(c.CrossSectionMm2 - crossSectionMm2) < 1e-9);

    /// <summary>Current that a section carries at least: that of the row at or next under it.</summary>
    /// <param name="crossSectionMm2">Section S, mm2, over 0.</param>
    /// <param name="phases">1 or 3.</param>
    /// <returns>Capacity, A. Under the first row the first one's in proportion, which is the cautious end: thin cables carry more a square millimetre.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The section is not positive.</exception>
    /// <example>4 mm2: 36; 5 mm2: 36; 25 mm2: 85, the last row's; 0.75 mm2: 19.5 x 0.75 / 1.5 = 9.75.</example>
    public static double CapacityA(double crossSectionMm2, int phases)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(crossSectionMm2, 0);
        var row = All.LastOrDefault(c => c.CrossSectionMm2 <= crossSectionMm2 + 1e-9);
        return row?.CapacityOnA(phases) ?? All[0].CapacityOnA(phases) * crossSectionMm2 / All[0].CrossSectionMm2;
    }

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

    /// <summary>Drop of a section: the table's, else that of the row next under it in proportion, <c>d S1 / S</c>.</summary>
    /// <param name="crossSectionMm2">Section of a line conductor S, mm2, over 0.</param>
    /// <returns>Drop, mV/A/m, go and return.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The section is not positive.</exception>
    /// <remarks>
    /// Within 4 % of what the conductors of IEC 60228 from 0.75 to 50 mm2 drop at 70 C. The resistivity of copper alone would fall short of them by 5 to 11 %:
    /// a conductor sold as a section has less copper. Reactance, which counts past 16 mm2, is not in it.
    /// </remarks>
    /// <example>2.5 mm2: 18, the table's; 8 mm2: 7.3 x 6 / 8 = 5.475; 25 mm2: 2.8 x 16 / 25 = 1.792; 1 mm2: 29 x 1.5 / 1 = 43.5.</example>
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
}
