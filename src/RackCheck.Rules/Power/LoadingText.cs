using RackCheck.Model;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Rules.Power;

/// <summary>The arithmetic of a load with its numbers put in.</summary>
internal static class LoadingText
{
    /// <summary>The sum of apparent powers over the voltage, as "(10 x 400 / 0.95) / 230 = 18.307".</summary>
    /// <param name="cords">Cords on the line or group.</param>
    /// <param name="voltageV">Its voltage, V.</param>
    /// <param name="lost">The supply that is lost; null for normal use.</param>
    /// <param name="currentA">What it comes to, A.</param>
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

    /// <summary>What a sentence calls a line of a unit, or a group of it.</summary>
    /// <param name="unit">The unit.</param>
    /// <param name="group">The group; null for the line.</param>
    /// <param name="line">The line, 0 to 2.</param>
    /// <returns>The words with the names of values in braces, and the values.</returns>
    public static (string Text, (string Name, Scalar Value)[] Data) Name(PduNode unit, GroupNode? group, int line) =>
        group is not null ? ("{pdu}, group {group},", [("pdu", unit.Id), ("group", group.Id)])
        : unit.Lines.Count == 3 ? ("{pdu} on phase {line}", [("pdu", unit.Id), ("line", LineName(line))])
        : ("{pdu}", [("pdu", unit.Id)]);

    /// <summary>What a sentence calls a line of a supply.</summary>
    /// <param name="supply">The supply.</param>
    /// <param name="line">The line, 0 to 2.</param>
    /// <returns>The words with the names of values in braces, and the values.</returns>
    public static (string Text, (string Name, Scalar Value)[] Data) Name(SupplyNode supply, int line) =>
        supply.Phases == 3 ? ("Supply {supply} on phase {line}", [("supply", supply.Id), ("line", LineName(line))]) : ("Supply {supply}", [("supply", supply.Id)]);

    /// <summary>Name of a line.</summary>
    /// <param name="line">The line, 0 to 2.</param>
    /// <returns>L1, L2 or L3.</returns>
    public static string LineName(int line) => Invariant($"L{line + 1}");

    /// <summary>
    /// What an overload is known by when two reports are compared. Where the service chose the outlets, which unit has too much is its choice:
    /// the defect is that the rack draws more than its units and supplies carry.
    /// </summary>
    /// <param name="severity">Error or warning; a warning is known by itself.</param>
    /// <param name="cords">The cords that make the load.</param>
    /// <returns>The root, or null.</returns>
    public static string? Root(Severity severity, IEnumerable<Cord> cords) =>
        severity == Severity.Error && cords.Any(c => c.Connection is null) ? "the rack draws more than it can be fed with" : null;
}
