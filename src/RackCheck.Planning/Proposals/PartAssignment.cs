using Google.OrTools.Sat;
using RackCheck.Model;
using static System.FormattableString;

namespace RackCheck.Planning.Proposals;

/// <summary>Assigns the parts of the equipment to the cabinets of a row by their heights and masses.</summary>
/// <param name="task">The request.</param>
/// <param name="parts">The parts.</param>
/// <param name="offers">The cabinets to choose from.</param>
/// <param name="row">The cabinets to use, each once; null to choose.</param>
internal sealed class PartAssignment(ProposalTask task, EquipmentParts parts, CabinetOffer[] offers, CabinetOffer[]? row)
{
    private const double Work = 0.1;
    private const double CostOfPlace = 0.05;

    /// <summary>
    /// Assigns the parts: heights and masses fit, and the tallest stack is as low as possible. The usual way, each in turn to the lowest stack, goes by the
    /// equipment alone, so that a completed basket is divided as it was; the solver is for what it does not solve.
    /// </summary>
    /// <param name="count">Number of cabinets.</param>
    /// <param name="roomU">Height of a cabinet that equipment may take, U.</param>
    /// <param name="apart">Sets of parts that may not be together.</param>
    /// <param name="byHeightAlone">Whether drawers are divided by their height too, in place of following the hosts.</param>
    /// <returns>The cabinet of each part; null if it was not found.</returns>
    public int[]? Assign(int count, int roomU, List<HashSet<int>> apart, bool byHeightAlone = false) =>
        InTurn(count, roomU, apart, byHeightAlone) ?? Solve(count, roomU, apart);

    private int[]? InTurn(int count, int roomU, List<HashSet<int>> apart, bool byHeightAlone)
    {
        bool IsDrawer(int part) => !byHeightAlone && parts.IsLowConsole(part);
        var stacks = Enumerable.Range(0, count).Select(_ => new Stack()).ToArray();
        foreach (var part in Enumerable.Range(0, parts.Count)
            .OrderBy(p => parts.PortsOf(p) > 0).ThenBy(IsDrawer).ThenByDescending(p => parts.HeightsU[p]).ThenBy(p => p))
        {
            // A drawer follows the hosts, KVM switches follow both, and the division is the same with and without those that a completed basket has.
            var (isSwitch, isConsole) = (parts.PortsOf(part) > 0, IsDrawer(part));
            var stack = stacks.Where(s => !apart.Exists(set => set.Contains(part) && set.Count(s.Parts.Contains) == set.Count - 1))
                .OrderBy(s => isConsole && parts.ConsolesOf(part).Any(s.Consoles.Contains))
                .ThenByDescending(s => s.Hosts > 0 && (isSwitch || isConsole) ? s.Consoles.Count : 0)
                .ThenByDescending(s => isSwitch || isConsole ? Math.Max(0, s.Hosts) : 0)
                .ThenBy(s => s.HeightU).FirstOrDefault();
            if (stack is null)
            {
                return null;
            }

            stack.Parts.Add(part);
            stack.HeightU += isSwitch ? 0 : parts.HeightsU[part];
            stack.Hosts += parts.HostsOf(part) - parts.PortsOf(part);
            stack.Consoles.UnionWith(parts.ConsolesOf(part));
        }

        Stack[] sorted = [.. stacks.OrderByDescending(s => s.HeightU)];
        var roomOf = row?.Select(c => c.HeightU).OrderDescending().ToArray() ?? [];
        var (most, rated) = (MostU(roomU), RatedG());
        var goes = sorted.Index().All(s => s.Item.Parts.Count > 0
            && s.Item.Parts.Sum(p => parts.HeightsU[p]) <= (row is null ? most : roomOf[s.Index])
            && s.Item.Parts.Sum(p => parts.GramsOf(p)) <= rated);
        return goes ? [.. Enumerable.Range(0, parts.Count).Select(p => Array.FindIndex(sorted, s => s.Parts.Contains(p)))] : null;
    }

    // Growth takes its share of every cabinet.
    private int MostU(int roomU) => Enumerable.Range(0, roomU + 1).Last(u => task.WithGrowth(u) <= roomU);

    private long RatedG() => Array.TrueForAll(offers, o => o.Product.Cabinet!.RatedLoadKg is not null)
        ? (long)Math.Floor(1000 * offers.Max(o => o.Product.Cabinet!.RatedLoadKg!.Value))
        : long.MaxValue;

    private int[]? Solve(int count, int roomU, List<HashSet<int>> apart)
    {
        var model = new CpModel();
        int[] all = [.. Enumerable.Range(0, parts.Count)];
        BoolVar[][] at = [.. all.Select(p => Enumerable.Range(0, count).Select(k => model.NewBoolVar(Invariant($"{p}@{k}"))).ToArray())];
        long[] grams = [.. all.Select(parts.GramsOf)];
        long[] heightsU = [.. parts.HeightsU];
        var rated = RatedG();
        var roomOf = row?.Select(c => c.HeightU).OrderDescending().ToArray() ?? [];
        var tallest = model.NewIntVar(0, roomU, "tallest");
        foreach (var literals in at)
        {
            model.AddExactlyOne(literals);
        }

        for (var k = 0; k < count; k++)
        {
            var own = at.Select(p => p[k]).ToArray();
            model.Add(LinearExpr.WeightedSum(own, heightsU) <= tallest);
            if (row is not null)
            {
                model.Add(LinearExpr.WeightedSum(own, heightsU) <= roomOf[k]);
                model.Add(LinearExpr.Sum(own) >= 1);
            }

            if (rated < long.MaxValue)
            {
                model.Add(LinearExpr.WeightedSum(own, grams) <= rated);
            }

            foreach (var set in apart)
            {
                model.Add(LinearExpr.Sum(set.Select(p => own[p])) <= set.Count - 1);
            }

            if (k > 0)
            {
                model.Add(LinearExpr.WeightedSum(own, heightsU) <= LinearExpr.WeightedSum(at.Select(p => p[k - 1]), heightsU));
            }
        }

        model.Add(tallest <= MostU(roomU));
        model.Minimize(tallest);
        using var solver = new CpSolver();
        solver.StringParameters = Invariant($"num_workers:1,random_seed:42,max_deterministic_time:{Work}");
        var status = solver.Solve(model);
        task.Budget.Spend((CostOfPlace * parts.Count * count)
            + SearchBudget.CostOfSolver(Work, hasEnded: status is CpSolverStatus.Optimal or CpSolverStatus.Infeasible));
        return status is CpSolverStatus.Optimal or CpSolverStatus.Feasible
            ? [.. at.Select(p => Array.FindIndex(p, literal => solver.BooleanValue(literal)))]
            : null;
    }

    private sealed class Stack
    {
        public HashSet<int> Parts { get; } = [];

        // Without KVM switches, U.
        public long HeightU { get; set; }

        // Its keyboard drawer and its display.
        public HashSet<ItemCategory> Consoles { get; } = [];

        // Hosts that need a KVM port, less the ports that there are.
        public int Hosts { get; set; }
    }
}
