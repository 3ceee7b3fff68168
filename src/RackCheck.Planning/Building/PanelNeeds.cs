using System.Numerics;
using RackCheck.Model;
using RackCheck.Rules.Layout;
using RackCheck.Survey;
using RackCheck.Survey.Layout;

namespace RackCheck.Planning.Building;

/// <summary>A run of open U positions at the front.</summary>
/// <param name="Bottom">Lowest U position, counted from the bottom.</param>
/// <param name="HeightU">Height, U.</param>
public sealed record OpenRun(int Bottom, int HeightU);

/// <summary>Open U positions at the front, and the panels that close them.</summary>
public static class PanelNeeds
{
    /// <summary>Id of the rule that finds the open U positions that matter.</summary>
    public static string Rule { get; } = RuleChecks.IdOf<Blanking>();

    /// <summary>The runs of open U positions, from the bottom up.</summary>
    /// <param name="survey">The rack.</param>
    public static IReadOnlyList<OpenRun> Runs(RackSurvey survey)
    {
        List<OpenRun> runs = [];
        for (var open = survey.Occupancy.OpenFront; open != 0;)
        {
            var bottom = BitOperations.TrailingZeroCount(open) + 1;
            var height = BitOperations.TrailingZeroCount(~(open >> (bottom - 1)));
            open &= ~Occupancy.Mask(bottom, bottom + height - 1);
            runs.Add(new OpenRun(bottom, height));
        }

        return runs;
    }

    /// <summary>The runs that cause hot-air recirculation, depending on doors, equipment and policy.</summary>
    /// <param name="survey">The rack.</param>
    /// <param name="findings">Findings of a check of the rack.</param>
    /// <returns>The runs, from the bottom up.</returns>
    public static IReadOnlyList<OpenRun> Harmful(RackSurvey survey, IEnumerable<Finding> findings)
    {
        var found = findings.Where(f => f.Rule == Rule).Select(f => f.MessageData["units"].ToString()).ToHashSet(StringComparer.Ordinal);
        return [.. Runs(survey).Where(r => found.Contains(survey.Cabinet.Units(r.Bottom, r.Bottom + r.HeightU - 1).ToString()))];
    }

    /// <summary>Panels for a run: the largest first.</summary>
    /// <param name="runU">Height of the run, U.</param>
    /// <param name="heights">Heights of the panels that there are, U, in descending order.</param>
    /// <returns>Heights of the panels, U; their sum is less than the run where no panel is low enough for the rest.</returns>
    public static IReadOnlyList<int> Sizes(int runU, int[] heights)
    {
        List<int> sizes = [];
        for (var left = runU; left > 0 && Array.Find(heights, h => h <= left) is > 0 and var height; left -= height)
        {
            sizes.Add(height);
        }

        return sizes;
    }
}
