using RackCheck.Model;
using RackCheck.Survey.Power;

namespace RackCheck.Rules.Power;

/// <summary>A load that is too much: an error past the limit, in normal use or with a supply lost; a warning past what is planned for.</summary>
/// <param name="CurrentA">The current, A.</param>
/// <param name="LimitA">What it passes, A.</param>
/// <param name="Severity">Error or warning.</param>
/// <param name="Lost">The supply whose loss brings it; null in normal use.</param>
internal readonly record struct Loading(double CurrentA, double LimitA, Severity Severity, SupplyNode? Lost)
{
    /// <summary>Whether a value passes a limit, both as they are shown: sums of decimals come out a hair beside a limit that they meet.</summary>
    /// <param name="value">The value.</param>
    /// <param name="limit">The limit.</param>
    /// <returns>Whether it does.</returns>
    public static bool IsOver(double value, double limit) => Quantities.Round(value) > Quantities.Round(limit);

    /// <summary>Judges a load.</summary>
    /// <param name="load">The load.</param>
    /// <param name="limitA">What it may carry, A.</param>
    /// <param name="designA">What is planned for, A.</param>
    /// <returns>What is wrong, or null.</returns>
    public static Loading? Judge(LoadPoint load, double limitA, double designA) =>
        IsOver(load.NormalA, limitA) ? new Loading(load.NormalA, limitA, Severity.Error, null)
        : IsOver(load.WorstA, limitA) ? new Loading(load.WorstA, limitA, Severity.Error, load.WorstWithout)
        : IsOver(load.NormalA, designA) ? new Loading(load.NormalA, designA, Severity.Warning, null)
        : null;

    /// <summary>Judges lines that may carry alike: the gravest of what is wrong counts, and of the grave ones the largest current.</summary>
    /// <param name="lines">The lines.</param>
    /// <param name="limitA">What each may carry, A.</param>
    /// <param name="designA">What is planned for, A.</param>
    /// <returns>The line, 0 to 2, and what is wrong; null where nothing is.</returns>
    public static (int Line, Loading Found)? Gravest(IReadOnlyList<LoadPoint> lines, double limitA, double designA)
    {
        (int Line, Loading Found)? gravest = null;
        for (var line = 0; line < lines.Count; line++)
        {
            if (Judge(lines[line], limitA, designA) is { } found
                && (gravest is not { Found: var other } || found.Severity < other.Severity || (found.Severity == other.Severity && found.CurrentA > other.CurrentA)))
            {
                gravest = (line, found);
            }
        }

        return gravest;
    }

    /// <summary>The sentence.</summary>
    /// <param name="what">What carries it, with the names of values in braces.</param>
    /// <returns>The message.</returns>
    public string Message(string what) =>
        Lost is not null ? what + " would carry {currentA} A with supply {lost} lost; {limitA} A is the most that it may."
        : Severity == Severity.Error ? what + " carries {currentA} A; {limitA} A is the most that it may."
        : what + " carries {currentA} A, more than the {limitA} A that it should be planned for.";

    /// <summary>The values of the sentence.</summary>
    public IEnumerable<(string Name, Scalar Value)> Data =>
        Lost is { } lost ? [("currentA", CurrentA), ("limitA", LimitA), ("lost", lost.Id)] : [("currentA", CurrentA), ("limitA", LimitA)];
}

/// <summary>What the rules on loading have to say of power that is not known.</summary>
internal static class MissingLoadingData
{
    /// <summary>Names the rated powers that are absent though their items hang on an outlet, and the units that a UPS feeds where it is not said which.</summary>
    /// <param name="context">Where to say it.</param>
    /// <param name="tree">The power tree.</param>
    /// <param name="concerns">Which outlet groups the rule judges; null for all.</param>
    public static void Report(RuleContext context, PowerTree tree, Func<GroupNode, bool>? concerns = null)
    {
        foreach (var cord in tree.Cords)
        {
            if (cord.Group is not { } group || (concerns is null ? cord.Plug > 0 : !concerns(group)))
            {
                continue;
            }

            if (cord.Item.Item is { Ups: { Feeds: null }, Power.RatedW: null })
            {
                context.Lacks(
                    FormattableString.Invariant($"/items/{cord.Item.Index}/ups/feeds"),
                    "Without the units that a UPS feeds it cannot be said what it draws.");
            }
            else if (cord.Item.Item is { Ups: null, Power.RatedW: null })
            {
                context.Lacks(Pointers.ItemRatedW[cord.Item.Index], "Without the rated power of an item it cannot be said what its outlet, unit and supply carry.");
            }
        }
    }
}
