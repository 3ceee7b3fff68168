using Google.OrTools.Sat;
using RackCheck.Model;
using static System.FormattableString;

namespace RackCheck.Planning.Layouts;

/// <summary>
/// Finds the positions with the lowest centre of gravity and proves it, or gives the bound that it reached. The same problem gives the same
/// positions.
/// </summary>
public static class LayoutSolver
{
    // The bound of a sum of whole numbers, calculated in floating point.
    private const double RoundingSlack = 1e-3;

    // Thousandths of a second, measured.
    private const double CostOfPlacing = 0.0006;
    private const double CostOfLiteral = 0.02;

    private static readonly TimeSpan StopInterval = TimeSpan.FromMilliseconds(10);

    /// <summary>Loads the solver, which takes some ten times as long as a small problem, so that no request waits for it.</summary>
    /// <param name="cancellation">Stops the solver.</param>
    public static void Load(CancellationToken cancellation)
    {
        LayoutBlock Block(string id) => new() { Id = id, HeightU = 2, MassG = 1000, Face = Face.Front, Starts = [1, 2, 3, 4, 5], Kind = id };

        // With a free U between the blocks the bound is out of reach, so that the solver has to prove it.
        Solve(new LayoutProblem { HeightU = 6, Blocks = [Block("lower"), Block("upper")], Apart = [new ApartGroup([0, 1], [0, 1])] }, 1, cancellation);
    }

    /// <summary>Solves a problem.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="work">Maximum work, in seconds of the solver's own clock, which counts operations.</param>
    /// <param name="cancellation">Stops the solver.</param>
    /// <param name="enough">Moment with which positions are low enough, as a ratio to a bound that none can be below; 1 for the lowest.</param>
    /// <returns>The positions with the bound.</returns>
    /// <exception cref="OperationCanceledException">The search was cancelled.</exception>
    public static Layout Solve(LayoutProblem problem, double work, CancellationToken cancellation, double enough = 1)
    {
        cancellation.ThrowIfCancellationRequested();
        if (problem.Stacks.Count > 0)
        {
            return StackedBlocks.Of(problem) is { } stacked
                ? stacked.Unstacked(Solve(stacked.Problem, work, cancellation, enough))
                : new Layout { IsImpossible = true };
        }

        if (problem.Blocks.Any(b => b.Starts.Count == 0) || IsTooHigh(problem))
        {
            return new Layout { IsImpossible = true };
        }

        var least = problem.LeastMoment();
        var (first, placed) = LayoutHeuristic.Find(problem, least);
        var hint = first is null ? null : InOrder(problem, first);
        var cost = placed * CostOfPlacing;
        return hint is not null && (problem.MomentOf(hint) <= enough * least || work <= 0)
            ? new Layout { Starts = hint, LeastMoment = least, Work = cost }
            : Search(problem, hint, least, work, cancellation) with
            {
                IsSearched = true,
                Work = cost + (problem.Blocks.Sum(b => b.Starts.Count) * CostOfLiteral),
            };
    }

    private static bool IsTooHigh(LayoutProblem problem) => problem.Blocks.GroupBy(b => b.Face).Any(f => f.Sum(b => b.HeightU) > problem.HeightU);

    private static Layout Search(LayoutProblem problem, int[]? hint, long least, double work, CancellationToken cancellation)
    {
        var (model, at) = ModelOf(problem);
        var terms = problem.Blocks.Index().SelectMany(b => at[b.Index].Select(x => (x.Value, 2 * b.Item.MassG * (x.Key - 1)))).ToArray();
        var constant = problem.Blocks.Sum(b => b.MassG * b.HeightU);
        model.Minimize(LinearExpr.WeightedSum(terms.Select(t => t.Value), terms.Select(t => t.Item2)));
        foreach (var (index, block) in hint is null ? [] : problem.Blocks.Index())
        {
            foreach (var (start, literal) in at[index])
            {
                model.AddHint(literal, start == hint![index] ? 1 : 0);
            }
        }

        using var solver = new CpSolver();
        solver.StringParameters = Invariant($"num_workers:1,random_seed:42,linearization_level:2,max_deterministic_time:{work}");
        CpSolverStatus status;
        using (new Timer(_ => StopIf(solver, cancellation), null, StopInterval, StopInterval))
        {
            status = solver.Solve(model);
        }

        cancellation.ThrowIfCancellationRequested();
        if (status == CpSolverStatus.Infeasible)
        {
            return new Layout { IsImpossible = true };
        }

        if (status is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible))
        {
            return new Layout { Starts = hint, LeastMoment = least };
        }

        int[] found = [.. at.Select(starts => starts.First(s => solver.BooleanValue(s.Value)).Key)];
        var bound = status == CpSolverStatus.Optimal
            ? problem.MomentOf(found)
            : Math.Max(least, constant + (long)Math.Ceiling(solver.BestObjectiveBound - RoundingSlack));

        // Exchanged blocks of one kind are put back into the order of the items.
        found = InOrder(problem, found);
        return hint is not null && problem.MomentOf(hint) <= problem.MomentOf(found)
            ? new Layout { Starts = hint, LeastMoment = bound }
            : new Layout { Starts = found, LeastMoment = bound };
    }

    private static void StopIf(CpSolver solver, CancellationToken cancellation)
    {
        if (cancellation.IsCancellationRequested)
        {
            solver.StopSearch();
        }
    }

    private static (CpModel Model, SortedDictionary<int, BoolVar>[] At) ModelOf(LayoutProblem problem)
    {
        var model = new CpModel();
        var at = problem.Blocks.Select(b => new SortedDictionary<int, BoolVar>(
            b.Starts.ToDictionary(u => u, u => model.NewBoolVar(Invariant($"{b.Id}@{u}"))))).ToArray();
        foreach (var starts in at)
        {
            model.AddExactlyOne(starts.Values);
        }

        var meeting = MeetingOf(problem);
        for (var unit = 1; unit <= problem.HeightU; unit++)
        {
            foreach (var face in problem.Blocks.Index().GroupBy(b => b.Item.Face))
            {
                model.AddAtMostOne(face.SelectMany(b => Covering(b.Index, unit)));
            }

            // Blocks of one face exclude each other already, so that one constraint holds for all that meet the same ones.
            foreach (var (fronts, rears) in meeting)
            {
                model.AddAtMostOne(fronts.Concat(rears).SelectMany(b => Covering(b, unit)));
            }

            foreach (var group in problem.Apart)
            {
                var ending = group.Lower.SelectMany(i => Starting(i, unit - problem.Blocks[i].HeightU + 1));
                var beginning = group.Upper.SelectMany(i => Starting(i, unit + 1));
                model.AddAtMostOne(ending.Concat(beginning));
            }
        }

        foreach (var set in problem.Forbidden)
        {
            ILiteral[] literals = [.. set.SelectMany(p => Starting(p.Block, p.Start)).Select(x => x.Not())];
            if (literals.Length == set.Count)
            {
                model.AddBoolOr(literals);
            }
        }

        // Blocks of one kind keep their order.
        var forbidden = problem.Forbidden.SelectMany(f => f).Select(p => p.Block).ToHashSet();
        foreach (var alike in problem.Blocks.Index().Where(b => !forbidden.Contains(b.Index)).GroupBy(b => b.Item.Kind).Select(g => g.ToArray()))
        {
            foreach (var (lower, upper) in alike.Zip(alike.Skip(1)))
            {
                model.Add(Position(lower.Index) + 1 <= Position(upper.Index));
            }
        }

        return (model, at);

        LinearExpr Position(int block) => LinearExpr.WeightedSum(at[block].Values, at[block].Keys.Select(u => (long)u));

        IEnumerable<BoolVar> Starting(int block, int start) => at[block].TryGetValue(start, out var literal) ? [literal] : [];

        IEnumerable<BoolVar> Covering(int block, int unit) =>
            Enumerable.Range(unit - problem.Blocks[block].HeightU + 1, problem.Blocks[block].HeightU).SelectMany(u => Starting(block, u));
    }

    private static (int[] Fronts, int[] Rears)[] MeetingOf(LayoutProblem problem) =>
    [
        .. problem.Meeting.GroupBy(m => m.Rear, m => m.Front)
            .Select(g => (Rear: g.Key, Fronts: g.Order().ToArray()))
            .GroupBy(m => string.Join(' ', m.Fronts), StringComparer.Ordinal)
            .Select(g => (g.First().Fronts, g.Select(m => m.Rear).ToArray())),
    ];

    private static int[] InOrder(LayoutProblem problem, int[] starts)
    {
        var sorted = (int[])starts.Clone();
        var forbidden = problem.Forbidden.SelectMany(f => f).Select(p => p.Block).ToHashSet();
        foreach (var alike in problem.Blocks.Index().Where(b => !forbidden.Contains(b.Index)).GroupBy(b => b.Item.Kind))
        {
            foreach (var ((index, _), start) in alike.Zip(alike.Select(b => starts[b.Index]).Order()))
            {
                sorted[index] = start;
            }
        }

        return sorted;
    }
}
