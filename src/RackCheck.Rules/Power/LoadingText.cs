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
    public static string Sum(IEnumerable<Cord> cords, double voltageV, SupplyNode? lost, double currentA)
    {
        var terms = cords
            .Select(c => (Watts: c.WattsIn(lost) / (c.IsThreePhase ? c.Group!.Unit.Lines.Count : 1), c.PowerFactor))
            .Where(t => t.Watts > 0)
            .GroupBy(t => (Watts: Math.Round(t.Watts, 6), t.PowerFactor))
            .OrderByDescending(g => g.Key.Watts).ThenBy(g => g.Key.PowerFactor)
            .Select(g => g.Count() == 1
                ? Invariant($"{g.Key.Watts:0.######} / {g.Key.PowerFactor:0.######}")
                : Invariant($"{g.Count()} x {g.Key.Watts:0.######} / {g.Key.PowerFactor:0.######}"));
        return Invariant($"({string.Join(" + ", terms)}) / {voltageV:0.###} = {currentA:0.###}");
    }

    /// <summary>The subject of a sentence about one phase (0 to 2) or one group of a PDU; group null for the phase.</summary>
    /// <returns>The text with the names of values in braces, and the values.</returns>
    public static (string Text, (string Name, Scalar Value)[] Data) Name(PduNode unit, GroupNode? group, int line) =>
        group is not null ? ("Group {group} of {pdu}", [("pdu", unit.Id), ("group", group.Id)])
        : unit.Lines.Count == 3 ? ("Phase {line} of {pdu}", [("pdu", unit.Id), ("line", LineName(line))])
        : ("{pdu}", [("pdu", unit.Id)]);

    /// <summary>The subject of a sentence about one phase of a supply, 0 to 2.</summary>
    /// <returns>The text with the names of values in braces, and the values.</returns>
    public static (string Text, (string Name, Scalar Value)[] Data) Name(SupplyNode supply, int line) =>
        supply.Phases == 3 ? ("Phase {line} of supply {supply}", [("supply", supply.Id), ("line", LineName(line))])
            : ("Supply {supply}", [("supply", supply.Id)]);

    /// <summary>L1, L2 or L3 for phase 0, 1 or 2.</summary>
    public static string LineName(int line) => Invariant($"L{line + 1}");

    /// <summary>
    /// The root of an overload, by which two reports are compared. Where the service chose the outlets, it also chose which PDU is overloaded:
    /// the defect is that the rack draws more than its PDUs and supplies can carry.
    /// </summary>
    /// <returns>The root of an error; null for a warning, and where the description names all connections.</returns>
    public static string? Root(Severity severity, IEnumerable<Cord> cords) =>
        severity == Severity.Error && cords.Any(c => c.Connection is null) ? "the rack draws more than it can be fed with" : null;
}
