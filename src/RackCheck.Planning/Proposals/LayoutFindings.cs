using RackCheck.Model;
using RackCheck.Planning.Building;
using RackCheck.Planning.Layouts;
using RackCheck.Rules.Cooling;
using RackCheck.Rules.Layout;
using RackCheck.Rules.Loads;
using RackCheck.Rules.Service;

namespace RackCheck.Planning.Proposals;

/// <summary>Turns findings against positions into what the next layout may not do.</summary>
internal static class LayoutFindings
{
    // Rules whose finding another position may clear, and that the layout does not already make as good as possible.
    private static readonly HashSet<string> Rules =
    [
        RuleChecks.IdOf<Overlap>(), RuleChecks.IdOf<RunnerStack>(), RuleChecks.IdOf<ShelfFit>(), RuleChecks.IdOf<AirflowConflict>(),
        RuleChecks.IdOf<ConsoleHeight>(),
    ];

    private static readonly HashSet<string> OfNeighbours =
        [RuleChecks.IdOf<Overlap>(), RuleChecks.IdOf<RunnerStack>(), RuleChecks.IdOf<AirflowConflict>()];

    private static readonly HashSet<string> OfHeight = [RuleChecks.IdOf<HeavyHigh>(), RuleChecks.IdOf<TipStatic>(), RuleChecks.IdOf<TipExtended>()];

    /// <summary>Whether a rack has an open error or warning that it may not have with less of what good practice asks for next to each other.</summary>
    /// <param name="trial">The rack.</param>
    public static bool AreIn(Trial trial) => trial.Found.Findings.Any(f =>
        IsOpen(f) && (OfHeight.Contains(f.Rule) || (OfNeighbours.Contains(f.Rule) && f.Pointers.Select(p => CarrierOf(trial.Rack, p)).Distinct().Count() > 1)));

    /// <summary>Forbids what the check of a rack finds against its positions.</summary>
    /// <returns>Whether anything new was forbidden.</returns>
    public static bool Forbid(Trial trial, LayoutProblem problem, IReadOnlyList<int> starts, LayoutBans bans)
    {
        var any = false;
        var blocks = problem.Blocks.Index().ToDictionary(b => b.Item.Id, b => b.Index, StringComparer.Ordinal);
        foreach (var finding in trial.Found.Findings.Where(f => IsOpen(f) && Rules.Contains(f.Rule)))
        {
            int[] named =
            [
                .. finding.Pointers.Select(p => CarrierOf(trial.Rack, p)).OfType<string>().Distinct().Where(blocks.ContainsKey).Select(id => blocks[id])
                    .OrderBy(i => starts[i]),
            ];
            any |= named switch
            {
                [] => false,

                // Side airflow in a narrow cabinet is the same at every position.
                [_] when finding.Rule == RuleChecks.IdOf<AirflowConflict>() => false,
                [var lower, var upper] when starts[lower] + problem.Blocks[lower].HeightU == starts[upper] =>
                    AddPair(bans, problem.Blocks[lower].Id, problem.Blocks[upper].Id),
                _ => problem.Blocks[named[0]].Starts.Count > 1 && AddTogether(bans, [.. named.Select(i => (problem.Blocks[i].Id, starts[i]))]),
            };
        }

        return any;
    }

    private static bool IsOpen(Finding finding) => finding is { Accepted: null, SignedOff: null, Severity: not Severity.Advice };

    private static bool AddPair(LayoutBans bans, string lower, string upper)
    {
        bans.Apart.Add((lower, upper));
        return true;
    }

    private static bool AddTogether(LayoutBans bans, (string Id, int U)[] placements)
    {
        bans.Together.Add(placements);
        return true;
    }

    // The item that a pointer names, or the shelf that carries it.
    private static string? CarrierOf(RackDescription rack, string pointer) =>
        pointer.Split('/') is [_, "items", var index, ..] && int.TryParse(index, out var i) && i < rack.Items.Count
            ? rack.Items[i].OnShelf ?? rack.Items[i].Id
            : null;
}
