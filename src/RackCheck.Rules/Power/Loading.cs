using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Power;

namespace RackCheck.Rules.Power;

/// <summary>An overload: an error above the limit, in normal use or with a supply lost; a warning above the design load.</summary>
/// <param name="CurrentA">Current, A.</param>
/// <param name="LimitA">Limit or design load that is exceeded, A.</param>
/// <param name="Severity">Error or warning.</param>
/// <param name="Lost">Supply whose loss causes the overload; null in normal use.</param>
internal readonly record struct Loading(double CurrentA, double LimitA, Severity Severity, SupplyNode? Lost)
{
    /// <summary>Compares a load with its limit and its design load, A.</summary>
    /// <returns>The overload, or null.</returns>
    public static Loading? Judge(LoadPoint load, double limitA, double designA) =>
        Comparison.IsOver(load.NormalA, limitA) ? new Loading(load.NormalA, limitA, Severity.Error, null)
        : Comparison.IsOver(load.WorstA, limitA) ? new Loading(load.WorstA, limitA, Severity.Error, load.WorstWithout)
        : Comparison.IsOver(load.NormalA, designA) ? new Loading(load.NormalA, designA, Severity.Warning, null)
        : null;

    /// <summary>
    /// Compares phases with the limit and the design load of one phase, A. The most severe overload counts, and among equals the largest current.
    /// </summary>
    /// <returns>The phase, 0 to 2, and its overload; null without an overload.</returns>
    public static (int Line, Loading Found)? Gravest(IReadOnlyList<LoadPoint> lines, double limitA, double designA)
    {
        (int Line, Loading Found)? gravest = null;
        for (var line = 0; line < lines.Count; line++)
        {
            if (Judge(lines[line], limitA, designA) is { } found
                && (gravest is not { Found: var other } || found.Severity < other.Severity
                    || (found.Severity == other.Severity && found.CurrentA > other.CurrentA)))
            {
                gravest = (line, found);
            }
        }

        return gravest;
    }

    /// <summary>The predicate of a sentence about an overload, for a <see cref="WordingChoice"/>.</summary>
    public const string Pattern = "[lost:would carry {currentA} A with supply {lost} lost; the limit is {limitA} A."
        + "|design:carries {currentA} A, above the design load of {limitA} A.|carries {currentA} A; the limit is {limitA} A.]";

    /// <summary>The same where there is no design load.</summary>
    public const string LimitPattern = "[lost:would carry {currentA} A with supply {lost} lost; the limit is {limitA} A."
        + "|carries {currentA} A; the limit is {limitA} A.]";

    /// <summary>The part of the pattern that applies.</summary>
    public string Variant => Lost is not null ? "lost" : Severity == Severity.Error ? "" : "design";

    /// <summary>The values of the message.</summary>
    public IEnumerable<(string Name, Scalar Value)> Data =>
        Lost is { } lost ? [("currentA", CurrentA), ("limitA", LimitA), ("lost", lost.Id)] : [("currentA", CurrentA), ("limitA", LimitA)];
}

/// <summary>Reports missing power data for the rules on loading.</summary>
internal static class MissingLoadingData
{
    private static readonly MissingData MissingFeeds = new("missing.feeds", "The PDUs fed from a UPS are missing, so the load of the UPS is unknown.");

    private static readonly MissingData MissingRatedW = new(
        "missing.rated-w",
        "The rated power of an item is missing, so the load on its outlet, PDU and supply is unknown.");

    /// <summary>Reports items on an outlet without a rated power, and UPSs without a list of the PDUs that they feed.</summary>
    /// <param name="context">Context that collects the missing members.</param>
    /// <param name="tree">Power tree.</param>
    /// <param name="concerns">Selects the outlet groups that the rule checks; null for all.</param>
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
                context.ReportMissing(FormattableString.Invariant($"/items/{cord.Item.Index}/ups/feeds"), MissingFeeds);
            }
            else if (cord.Item.Item is { Ups: null, Power.RatedW: null })
            {
                context.ReportMissing(Pointers.ItemRatedW[cord.Item.Index], MissingRatedW);
            }
        }
    }
}
