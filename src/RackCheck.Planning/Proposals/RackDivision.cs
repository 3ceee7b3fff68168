using Google.OrTools.Sat;
using RackCheck.Model;
using RackCheck.Planning.Building;
using RackCheck.Rules;
using RackCheck.Rules.Earthing;
using RackCheck.Rules.Power;
using RackCheck.Survey.Catalogue;
using static System.FormattableString;

namespace RackCheck.Planning.Proposals;

/// <summary>A rack of a row.</summary>
/// <param name="Task">Its part of the request.</param>
/// <param name="Trial">The rack.</param>
/// <param name="Open">The cabinets that its proof is about.</param>
internal sealed record RowRack(ProposalTask Task, Trial Trial, IReadOnlyList<CabinetOffer> Open);

/// <summary>
/// Divides equipment that does not go into one cabinet over as few as possible. Groups and kept items stay together. Each rack is searched for as
/// one cabinet is; what does not go into a cabinet together is not put together again.
/// </summary>
internal sealed class RackDivision
{
    /// <summary>Default maximum number of cabinets.</summary>
    public const int DefaultMost = 4;

    private const int MostRounds = 6;
    private const int MostRoundsInTest = 2;
    private const int MostRoundsOfBasket = 3;
    private const double Work = 0.1;
    private const double CostOfPlace = 0.05;

    // Rules of the supplies, over all racks that they feed.
    private static readonly HashSet<string> SupplyRules =
    [
        RuleChecks.IdOf<SupplyLoading>(), RuleChecks.IdOf<RcdTrip>(), RuleChecks.IdOf<Leakage>(), RuleChecks.IdOf<VoltageDrop>(),
    ];

    private static readonly RackChecker SupplyChecker =
        new(RuleSet.Of(RuleSet.Default.All.Where(r => SupplyRules.Contains(r.Descriptor.Id))), static (_, _) => { });

    private readonly ProposalTask task;
    private readonly CabinetOffer[] offers;
    private readonly RackChecker checker;
    private readonly CancellationToken cancellation;
    private readonly List<IReadOnlyList<Item>> parts;
    private readonly long[] heights;
    private readonly CabinetOffer[]? row;

    /// <summary>Prepares a division.</summary>
    /// <param name="task">The request.</param>
    /// <param name="offers">The cabinets, the preferred ones first.</param>
    /// <param name="checker">Checks each rack.</param>
    /// <param name="cancellation">Stops the search.</param>
    /// <param name="row">The cabinets to use, each once; null to choose.</param>
    public RackDivision(ProposalTask task, CabinetOffer[] offers, RackChecker checker, CancellationToken cancellation, CabinetOffer[]? row = null)
    {
        this.row = row;
        (this.task, this.offers, this.checker, this.cancellation) = (task, offers, checker, cancellation);
        parts = PartsOf(task);
        heights = HeightsOf(task, parts, offers, cancellation);
        var highest = offers.Max(o => o.HeightU);
        Least = Math.Max(2, (task.WithGrowth(task.ItemsU) + highest - 1) / highest);
    }

    /// <summary>Fewer cabinets cannot take the equipment: one was tried, and the highest are too low for its height.</summary>
    public int Least { get; }

    /// <summary>What the supplies cannot feed together; null if they can or were not reached.</summary>
    public Finding? SupplyFinding { get; private set; }

    /// <summary>Divides the equipment.</summary>
    /// <returns>The racks in the order of their row; null if none were found.</returns>
    public IReadOnlyList<RowRack>? Find()
    {
        var most = task.Request.MaxCabinets ?? DefaultMost;
        if (task.Request.Pdus is { Count: > 0 } || task.Request.Connections is { Count: > 0 } || task.Request.Cooling is not null)
        {
            return null;
        }

        if (row is not null)
        {
            return Divide(row.Length);
        }

        var highest = offers.Max(o => o.HeightU);
        for (var count = (int)Math.Max(Least, (heights.Sum() + highest - 1) / highest); count <= Math.Min(most, parts.Count); count++)
        {
            if (Divide(count) is { } racks)
            {
                return racks;
            }
        }

        return null;
    }

    private List<RowRack>? Divide(int count)
    {
        var roomU = offers.Max(o => o.HeightU);
        var apart = new List<HashSet<int>>();
        List<RowRack>? faulty = null;
        for (var round = 0; round < MostRoundsOf(task) && ((task.IsBasket && round == 0) || task.Budget.Allows()); round++)
        {
            cancellation.ThrowIfCancellationRequested();
            if (Assign(count, roomU, apart) is not { } cabinetOf)
            {
                break;
            }

            var sets = Enumerable.Range(0, count).Select(k => Enumerable.Range(0, parts.Count).Where(p => cabinetOf[p] == k).ToHashSet()).ToArray();
            var shares = Enumerable.Repeat(task.Ordered.Bare, count + 1).ToArray();
            var racks = Fill(sets, shares, apart, ref roomU);

            // Each rack gets the parts of the order that it needs, and its share of the others: first what is fitted, as small parts depend on it.
            OrderedParts[] kinds = [task.Ordered.Fitted, task.Ordered.Small];
            foreach (var kind in kinds.Where(k => k.Parts.Count > 0))
            {
                if (racks.Count == count)
                {
                    shares = [.. shares.Zip(kind.Divide([.. racks.Select(r => r.Trial.Completed.Added)]), (one, more) => one.With(more))];
                    racks = Fill(sets, shares, apart, ref roomU);
                }
            }

            if (racks.Count == count)
            {
                SupplyFinding = task.Request.Supplies is null ? null : OverSupplies(racks);
                if (SupplyFinding is not null || racks.TrueForAll(r => r.Trial.Faults.Errors == 0))
                {
                    return SupplyFinding is null ? racks : null;
                }

                faulty = faulty is null || ErrorsOf(racks) < ErrorsOf(faulty) ? racks : faulty;
                apart.AddRange(sets.Where((_, k) => racks[k].Trial.Errors.Any(e => !FailedRacks.IsOfAnyCabinet(e))));
                if (apart.Count == 0)
                {
                    break;
                }
            }
        }

        return faulty;
    }

    private static int ErrorsOf(List<RowRack> racks) => racks.Sum(r => r.Trial.Faults.Errors);

    private static int MostRoundsOf(ProposalTask task) => task.IsTest ? MostRoundsInTest : task.IsBasket ? MostRoundsOfBasket : MostRounds;

    // The racks as far as they are found. What does not go into a cabinet together is not put together again. A shop gets racks that hold everything, if with
    // errors, rather than one that does not.
    private List<RowRack> Fill(HashSet<int>[] sets, OrderedParts[] shares, List<HashSet<int>> apart, ref int roomU)
    {
        List<RowRack> racks = [];
        var (supplies, left) = (0, task.Ordered.Bare);
        List<CabinetOffer> cabinets = [.. row ?? offers];
        foreach (var (k, members) in sets.Index())
        {
            var share = k < sets.Length - 1 ? shares[k] : shares[k].With(shares[^1]);
            var own = TaskOf([.. members.SelectMany(p => parts[p]).Select(i => i.Id)], k, sets.Length, supplies, share.With(left));
            var search = CabinetSearch.Run(own, [.. row is null ? offers : cabinets.DistinctBy(c => c.Product.PartNumber)], 1, checker, cancellation);
            if ((search.Found.FirstOrDefault() ?? (task.IsBasket ? search.LeastFaulty : null)) is not { } trial)
            {
                apart.Add(members);
                roomU -= search.Failed.Exists(t => t.NotPlaced.Any()) ? 1 : 0;
                break;
            }

            supplies += task.Request.Supplies is null ? trial.Rack.Supplies?.Count ?? 0 : 0;
            left = own.Ordered.Without(trial.Completed.RackBuild.Stock);
            cabinets.Remove(trial.Offer);
            racks.Add(new RowRack(own, trial, [.. search.Open.Where(o => o.Warnings <= trial.ProductWarnings).Select(o => o.Offer)]));
        }

        return racks;
    }

    // The cabinet of each part: heights and masses fit, and the tallest stack is as low as possible. The usual way, each in turn to the lowest stack, goes by
    // the equipment alone, so that a completed basket is divided as it was; the solver is for what it does not solve.
    private int[]? Assign(int count, int roomU, List<HashSet<int>> apart) => InTurn(count, roomU, apart) ?? Solve(count, roomU, apart);

    private int[]? InTurn(int count, int roomU, List<HashSet<int>> apart)
    {
        var stacks = Enumerable.Range(0, count).Select(_ => new Stack()).ToArray();
        foreach (var (part, heightU) in parts.Index().Select(p => (p.Index, FrontU(p.Item))).OrderByDescending(p => p.Item2).ThenBy(p => p.Index))
        {
            var stack = stacks.Where(s => !apart.Exists(set => set.Contains(part) && set.Count(s.Parts.Contains) == set.Count - 1)).MinBy(s => s.HeightU);
            if (stack is null)
            {
                return null;
            }

            stack.Parts.Add(part);
            stack.HeightU += heightU;
        }

        Stack[] sorted = [.. stacks.OrderByDescending(s => s.Parts.Sum(p => heights[p]))];
        var roomOf = row?.Select(c => c.HeightU).OrderDescending().ToArray() ?? [];
        var (most, rated) = (MostU(roomU), RatedG());
        var goes = sorted.Index().All(s => s.Item.Parts.Count > 0
            && s.Item.Parts.Sum(p => heights[p]) <= (row is null ? most : roomOf[s.Index])
            && s.Item.Parts.Sum(p => GramsOf(parts[p])) <= rated);
        return goes ? [.. Enumerable.Range(0, parts.Count).Select(p => Array.FindIndex(sorted, s => s.Parts.Contains(p)))] : null;
    }

    // Growth takes its share of every cabinet.
    private int MostU(int roomU) => Enumerable.Range(0, roomU + 1).Last(u => task.WithGrowth(u) <= roomU);

    private long RatedG() => Array.TrueForAll(offers, o => o.Product.Cabinet!.RatedLoadKg is not null)
        ? (long)Math.Floor(1000 * offers.Max(o => o.Product.Cabinet!.RatedLoadKg!.Value))
        : long.MaxValue;

    private static long GramsOf(IReadOnlyList<Item> part) => (long)Math.Ceiling(1000 * part.Sum(i => i.MassKg ?? 0));

    private long FrontU(IReadOnlyList<Item> part) => part.Where(i => !task.Context.AtRear!.Contains(i.Id)).Sum(i => i.HeightU ?? 0);

    private int[]? Solve(int count, int roomU, List<HashSet<int>> apart)
    {
        var model = new CpModel();
        BoolVar[][] at = [.. parts.Select((_, p) => Enumerable.Range(0, count).Select(k => model.NewBoolVar(Invariant($"{p}@{k}"))).ToArray())];
        long[] grams = [.. parts.Select(GramsOf)];
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
            model.Add(LinearExpr.WeightedSum(own, heights) <= tallest);
            if (row is not null)
            {
                model.Add(LinearExpr.WeightedSum(own, heights) <= roomOf[k]);
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
                model.Add(LinearExpr.WeightedSum(own, heights) <= LinearExpr.WeightedSum(at.Select(p => p[k - 1]), heights));
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

    // What each part takes on the front, with the shelf below its first item if it stands on one: the least over the depths that there are, as slides that
    // suit one depth do not suit another.
    private static long[] HeightsOf(ProposalTask task, List<IReadOnlyList<Item>> parts, CabinetOffer[] offers, CancellationToken cancellation)
    {
        task.Context.Positions = null;
        long[][] all = [.. offers.GroupBy(o => o.DepthMm).Select(depth => HeightsIn(task, parts, depth.MaxBy(o => o.HeightU)!, cancellation))];
        return [.. parts.Select((_, part) => all.Min(heights => heights[part]))];
    }

    private static long[] HeightsIn(ProposalTask task, List<IReadOnlyList<Item>> parts, CabinetOffer offer, CancellationToken cancellation)
    {
        var mounted = BasketCompletion.Mount(task.Context, task.Stock.With([(offer.Product, 1)]), offer.Product, cancellation).RackBuild.Items;
        var shelves = mounted.Where(i => i.Item.Category == ItemCategory.Shelf).ToDictionary(i => i.Id, i => i.HeightU, StringComparer.Ordinal);
        var added = mounted.Where(i => i.Item.OnShelf is not null && task.IsOwn(i.Id))
            .DistinctBy(i => i.Item.OnShelf)
            .ToDictionary(i => i.Id, i => shelves.GetValueOrDefault(i.Item.OnShelf!), StringComparer.Ordinal);
        return [.. parts.Select(p => p.Where(i => !task.Context.AtRear!.Contains(i.Id)).Sum(i => (long)(i.HeightU ?? 0) + added.GetValueOrDefault(i.Id)))];
    }

    private sealed class Stack
    {
        public HashSet<int> Parts { get; } = [];

        public long HeightU { get; set; }
    }

    private ProposalTask TaskOf(HashSet<string> ids, int index, int count, int supplies, OrderedParts ordered) => new(
        task.Request with
        {
            Items = [.. task.Request.Items.Where(i => ids.Contains(i.Id))],
            Keep = task.Request.Keep is { } keep ? [.. keep.Where(ids.Contains)] : null,
            Groups = null,
            Reference = task.Request.Reference is { Length: <= 60 } reference ? Invariant($"{reference} {index + 1}") : task.Request.Reference,
        },
        task.Products,
        task.Offered,
        index == 0 || index == count - 1 ? Placement.RowEnd : Placement.RowMiddle,
        supplies,
        ordered)
    {
        Budget = task.Budget,
        Layouts = task.Layouts,
        IsTest = task.IsTest,
    };

    private static List<IReadOnlyList<Item>> PartsOf(ProposalTask task)
    {
        var groups = (task.Request.Groups ?? [])
            .SelectMany(g => g.Items.Select(item => (Item: item, g.Id)))
            .ToDictionary(p => p.Item, p => "\n" + p.Id, StringComparer.Ordinal);
        var keptGroups = task.Context.Kept!.Keys.Select(k => groups.GetValueOrDefault(k)).OfType<string>().ToHashSet(StringComparer.Ordinal);
        return
        [
            .. task.Items.GroupBy(i =>
            {
                var group = groups.GetValueOrDefault(i.Id);
                return task.Context.Kept.ContainsKey(i.Id) || (group is not null && keptGroups.Contains(group)) ? "\n" : group ?? i.Id;
            }).Select(g => g.ToArray()),
        ];
    }

    // One description of everything that the supplies feed, with the cords as each rack has them.
    private static Finding? OverSupplies(List<RowRack> racks)
    {
        var first = racks[0].Trial;
        List<Item> items = [];
        List<Pdu> units = [];
        List<Connection> connections = [];
        foreach (var (index, rack) in racks.Index())
        {
            var resolved = rack.Trial.Resolved.Description;
            string Named(string id) => Invariant($"{index + 1}\n{id}");
            items.AddRange(resolved.Items.Select(i => i with
            {
                Id = Named(i.Id),
                Position = null,
                OnShelf = null,
                Ups = i.Ups is { Feeds: { } feeds } ups ? ups with { Feeds = [.. feeds.Select(Named)] } : i.Ups,
            }));
            units.AddRange((resolved.Pdus ?? []).Select(u => u with { Id = Named(u.Id), Position = null }));
            connections.AddRange((rack.Trial.Found.Assignment ?? []).Select(c => c with { Item = Named(c.Item), Pdu = Named(c.Pdu) }));
        }

        return SupplyChecker.Find(ResolvedRack.Plain(first.Resolved.Description with { Items = items, Pdus = units, Connections = connections }))
            .Findings.FirstOrDefault(f => f is { Severity: Severity.Error, Accepted: null });
    }
}
