using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Documents.Drawings.Elevations;

/// <summary>Supplies in words.</summary>
internal static class SupplyWords
{
    // Nominal voltages of three-phase systems, V: line to neutral, line to line. IEC 60038; 240/415 V and the North American ones are common practice.
    private static readonly (double Neutral, double Line)[] Nominal = [(120, 208), (220, 380), (230, 400), (240, 415), (277, 480)];

    /// <summary>Phases and voltage, as "3-phase 400/230 V" and "1-phase 230 V".</summary>
    public static string VoltageOf(SupplyNode supply)
    {
        var volts = supply.Source.VoltageV;
        if (supply.Phases != 3)
        {
            return Invariant($"1-phase {volts:0.###} V");
        }

        var pair = Array.Find(Nominal, n => n.Neutral.Equals(volts));
        return supply.IsLineToLine ? Invariant($"3-phase {volts:0.###} V line to line")
            : pair.Line > 0 ? Invariant($"3-phase {pair.Line:0.###}/{volts:0.###} V")
            : Invariant($"3-phase, {volts:0.###} V at the outlets");
    }
}
