using System.Numerics;
using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Rules.Power;

/// <summary>The calculation of a load with its values.</summary>
internal static class LoadingText
{
    /// <summary>The sum of apparent powers over the voltage, as "(10 x 400 / 0.95) / 230 = 18.307".</summary>
    /// <param name="cords">Cords on the phase or group.</param>
    /// <param name="voltageV">Voltage, V.</param>
    /// <param name="lost">Lost supply; null in normal use.</param>
    /// <param name="currentA">Resulting current, A.</param>
    /// <returns>The text.</returns>
    public static string Sum(IEnumerable<Cord> cords, double voltageV, SupplyNode? lost, double currentA) =>
        Invariant($"({Terms(cords, lost)}) / {voltageV:0.###} = {currentA:0.###}");

    /// <summary>The current of a line: the sum of its cords, or from line to line the phasor difference of the sums of two pairs.</summary>
    /// <param name="supply">The supply.</param>
    /// <param name="cords">Cords that load the line.</param>
    /// <param name="line">The line, 0 to 2.</param>
    /// <param name="lost">Lost supply; null in normal use.</param>
    /// <param name="currentA">Resulting current, A.</param>
    /// <param name="withCooling">Whether fans and air conditioner on the supply itself count.</param>
    /// <returns>The text.</returns>
    public static string Line(SupplyNode supply, IEnumerable<Cord> cords, int line, SupplyNode? lost, double currentA, bool withCooling)
    {
        var voltage = supply.Source.VoltageV;
        if (!supply.IsLineToLine)
        {
            return withCooling && supply.CoolingW > 0 && supply.CoolingLine == line
                ? Invariant($"({Cooling(Terms(cords, lost))}) / {voltage:0.###} = {currentA:0.###}")
                : Sum(cords, voltage, lost, currentA);
        }

        var (one, other) = (Pair(line), Pair((line + 2) % 3));
        var (a, b) = (Amperes(one, line), Amperes(other, (line + 2) % 3));
        var text = Clause(one, a) + Clause(other, b);
        if (a.Magnitude == 0 || b.Magnitude == 0)
        {
            return text + Invariant($"{a.Magnitude + b.Magnitude:0.######} = {currentA:0.###}");
        }

        var angle = 120 + ((b.Phase - a.Phase) * 180 / Math.PI);
        return text + Invariant($"sqrt({a.Magnitude:0.######} x {a.Magnitude:0.######} + {b.Magnitude:0.######} x {b.Magnitude:0.######} - 2 x ")
            + Invariant($"{a.Magnitude:0.######} x {b.Magnitude:0.######} x cos({angle:0.######})) = {currentA:0.###}");

        Cord[] Pair(int pair) => [.. cords.Where(c => (c.Group!.Line == pair || c.IsThreePhase) && c.WattsIn(lost) > 0)];

        Complex Amperes(Cord[] of, int pair) => of.Aggregate(
            withCooling && supply.CoolingW > 0 && supply.CoolingLine == pair
                ? Currents.Phasor(supply.CoolingW / Currents.UsualPowerFactor / voltage, Currents.UsualPowerFactor)
                : Complex.Zero,
            (sum, c) => sum + Currents.Phasor(c.WattsIn(lost) / c.PowerFactor / (c.IsThreePhase ? 3 : 1) / voltage, c.PowerFactor));

        string Cooling(string terms) =>
            Invariant($"{terms}{(terms.Length > 0 ? " + " : "")}{supply.CoolingW:0.######} / {Currents.UsualPowerFactor:0.######}");

        // With several power factors the sum of a pair is not one of numbers.
        string Clause(Cord[] of, Complex amperes) => of.Select(c => c.PowerFactor).Distinct().Count() == 1 && !(withCooling && supply.CoolingW > 0)
            ? Invariant($"({Terms(of, lost)}) / {voltage:0.###} = {amperes.Magnitude:0.######}; ")
            : "";
    }

    private static string Terms(IEnumerable<Cord> cords, SupplyNode? lost)
    {
        var terms = cords
            .Select(c => (Watts: c.WattsIn(lost) / (c.IsThreePhase ? c.Group!.Unit.Lines.Count : 1), c.PowerFactor))
            .Where(t => t.Watts > 0)
            .GroupBy(t => (Watts: Math.Round(t.Watts, 6), t.PowerFactor))
            .OrderByDescending(g => g.Key.Watts).ThenBy(g => g.Key.PowerFactor)
            .Select(g => g.Count() == 1
                ? Invariant($"{g.Key.Watts:0.######} / {g.Key.PowerFactor:0.######}")
                : Invariant($"{g.Count()} x {g.Key.Watts:0.######} / {g.Key.PowerFactor:0.######}"));
        return string.Join(" + ", terms);
    }

    /// <summary>The subject of a sentence about one phase (0 to 2) or one group of a PDU; group null for the phase.</summary>
    /// <returns>The part of the pattern that applies, and the values.</returns>
    public static (string Variant, (string Name, Scalar Value)[] Data) Name(PduNode unit, GroupNode? group, int line) =>
        group is not null ? ("group", [("pdu", unit.Id), ("group", group.Id)])
        : unit.Lines.Count == 3 ? ("phase", [("pdu", unit.Id), ("line", LineName(line))])
        : ("", [("pdu", unit.Id)]);

    /// <summary>The subject of a sentence about one phase of a supply, 0 to 2.</summary>
    /// <returns>The part of the pattern that applies, and the values.</returns>
    public static (string Variant, (string Name, Scalar Value)[] Data) Name(SupplyNode supply, int line) =>
        supply.Phases == 3 ? ("phase", [("supply", supply.Id), ("line", LineName(line))])
            : ("", [("supply", supply.Id)]);

    /// <summary>L1, L2 or L3 for phase 0, 1 or 2.</summary>
    public static string LineName(int line) => Invariant($"L{line + 1}");
}
