using RackCheck.Model;
using RackCheck.Planning.Building;
using RackCheck.Rules;
using RackCheck.Rules.Earthing;
using RackCheck.Rules.Power;
using RackCheck.Survey;
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
    private readonly EquipmentParts parts;
    private readonly PartAssignment assignment;
    private readonly CabinetOffer[]? row;

    /// <summary>Prepares a division.</summary>
    /// <param name="task">The request.</param>
    /// <param name="offers">The cabinets, the preferred ones first.</param>
    /// <param name="checker">Checks each rack.</param>
    /// <param name="cancellation">Stops the search.</param>
    /// <param name="row">The cabinets to use, each once; null to choose.</param>
    /// <param name="together">Ids of items that stay together besides those of the request; null for none.</param>
    public RackDivision(
        ProposalTask task,
        CabinetOffer[] offers,
        RackChecker checker,
        CancellationToken cancellation,
        CabinetOffer[]? row = null,
        IReadOnlySet<string>? together = null)
    {
        this.row = row;
        (this.task, this.offers, this.checker, this.cancellation) = (task, offers, checker, cancellation);
        parts = EquipmentParts.Of(task, offers, cancellation, together);
        assignment = new PartAssignment(task, parts, offers, row);
        var highest = offers.Max(o => o.HeightU);
        Least = Math.Max(2, (task.WithGrowth(task.ItemsU) + highest - 1) / highest);
    }

    /// <summary>Fewer cabinets cannot take the equipment: one was tried, and the highest are too low for its height.</summary>
    public int Least { get; }

    /// <summary>What the supplies cannot feed together; null if they can or were not reached.</summary>
    public Finding? SupplyFinding { get; private set; }

    /// <summary>The last rack of a row that was not found, as its part of the request with its search; null if there is none.</summary>
    public (ProposalTask Task, CabinetSearch Search)? Failed { get; private set; }

    /// <summary>Divides the equipment.</summary>
    /// <returns>The racks in the order of their row; null if none were found.</returns>
    public IReadOnlyList<RowRack>? Find()
    {
        var most = task.Request.MaxCabinets ?? DefaultMost;
        if (row is not null)
        {
            return Divide(row.Length);
        }

        var highest = offers.Max(o => o.HeightU);
        for (var count = (int)Math.Max(Least, (parts.HeightsU.Sum() + highest - 1) / highest); count <= Math.Min(most, parts.Count); count++)
        {
            if (Divide(count) is { } racks)
            {
                return racks;
            }
        }

        return null;
    }

    /// <summary>Divides the equipment, then again over cabinets that were not used, as long as that gains something without a further cabinet.</summary>
    /// <param name="most">Number of alternatives wanted.</param>
    /// <returns>The racks of each, the preferred ones first; empty if none were found.</returns>
    public IReadOnlyList<IReadOnlyList<RowRack>> FindAlternatives(int most)
    {
        if (Find() is not { } first)
        {
            return [];
        }

        var found = new Alternatives<IReadOnlyList<RowRack>>(most, static racks => [.. racks.Select(r => r.Trial)]);
        IReadOnlyList<RowRack>[] divided = Together(first) is { } together ? [first, together] : [first];
        foreach (var racks in divided.OrderBy(DemandOf))
        {
            found.Add(racks);
        }

        var (left, used) = (offers, first);
        while (!found.IsFull && task.Budget.Allows())
        {
            left = [.. left.Where(o => !used.Any(r => r.Trial.Offer == o))];
            if (left.Length == 0 || new RackDivision(task, left, checker, cancellation).Find() is not { } others || others.Count > first.Count)
            {
                break;
            }

            used = others;
            if (!others.Any(r => r.Trial.HasIdleUnit))
            {
                found.Add(others);
            }
        }

        return [.. found.All];
    }

    /// <summary>The best of several rows: the fewest cabinets, then the better verdict, fewer warnings and fewer added parts.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="most">Number of alternatives wanted.</param>
    /// <returns>The best first, and others that each gain something over every other.</returns>
    public IReadOnlyList<IReadOnlyList<RowRack>> Best(IReadOnlyList<IReadOnlyList<RowRack>> rows, int most)
    {
        var found = new Alternatives<IReadOnlyList<RowRack>>(most, static racks => [.. racks.Select(r => r.Trial)]);
        foreach (var racks in rows.OrderBy(r => r.Count).ThenBy(DemandOf))
        {
            found.Add(racks);
        }

        return [.. found.All];
    }

    // Hosts with the console that they share, and a UPS with what it is for, where they go into one cabinet and fewer parts are needed by it. The first of the
    // sets that does is enough. The second has its turn though the first took the work that was left: all of both is often more than one pair of PDUs carries.
    private List<RowRack>? Together(IReadOnlyList<RowRack> first)
    {
        if (task.Request.Groups is not null)
        {
            return null;
        }

        string[] Where(Func<Item, bool> belongs) => [.. task.Items.Where(belongs).Select(i => i.Id)];
        var consoles = Where(Consoles.IsConsole);
        var hosts = Where(Consoles.IsHost);
        string[] desk = consoles.Length > 0 && hosts.Length > 0 ? [.. consoles, .. hosts] : [];
        var sources = Where(i => i.Ups is not null);
        string[] fed = sources.Length > 0
            ? [.. sources, .. Where(i => i.Category is ItemCategory.Server or ItemCategory.Computer or ItemCategory.Network)]
            : [];
        HashSet<string> all = [.. desk, .. fed];
        var isAllowed = task.Budget.Allows();
        foreach (var (index, ids) in ((HashSet<string>[])[all, [.. desk], [.. fed]]).Index())
        {
            if (ids.Count > 1 && (index == 0 || ids.Count < all.Count) && (index == 1 ? isAllowed : task.Budget.Allows())
                && new RackDivision(task, offers, checker, cancellation, together: ids).Divide(first.Count, isFirstAllowed: true) is { } racks
                && racks.TrueForAll(r => r.Trial.Faults.Errors == 0 && !r.Trial.HasIdleUnit)
                && UnitsOf(racks) < UnitsOf(first))
            {
                return racks;
            }
        }

        return null;
    }

    private (Verdict Product, int Warnings, int AddedUnits) DemandOf(IReadOnlyList<RowRack> racks) => (
        racks.Max(r => checker.Check(r.Trial.Resolved, cancellation).Verdicts.Product), racks.Sum(r => r.Trial.ProductWarnings), UnitsOf(racks));

    private static int UnitsOf(IReadOnlyList<RowRack> racks) => racks.Sum(r => AddedParts.Of(r.Trial).Sum(p => p.Quantity));

    private List<RowRack>? Divide(int count, bool isFirstAllowed = false)
    {
        var roomU = offers.Max(o => o.HeightU);
        var apart = new List<HashSet<int>>();
        List<RowRack>? faulty = null;
        for (var round = 0; round < MostRoundsOf(task) && (((task.IsBasket || isFirstAllowed) && round == 0) || task.Budget.Allows()); round++)
        {
            cancellation.ThrowIfCancellationRequested();
            if (assignment.Assign(count, roomU, apart, byHeightAlone: round > 0) is not { } cabinetOf)
            {
                break;
            }

            var sets = Enumerable.Range(0, count).Select(k => Enumerable.Range(0, parts.Count).Where(p => cabinetOf[p] == k).ToHashSet()).ToArray();
            var shares = Enumerable.Repeat(task.Ordered.Bare, count + 1).ToArray();
            var racks = Fill(sets, shares, null, apart, ref roomU);

            // Each rack gets the parts of the order that it needs, and its share of the others: first what is fitted, as small parts depend on it.
            OrderedParts[] kinds = [task.Ordered.Fitted, task.Ordered.Small];
            foreach (var kind in kinds.Where(k => k.Parts.Count > 0))
            {
                if (racks.Count == count)
                {
                    shares = [.. shares.Zip(kind.Divide([.. racks.Select(r => r.Trial.Completed.Added)]), (one, more) => one.With(more))];
                    racks = Fill(sets, shares, racks, apart, ref roomU, isSame: kind == kinds[^1]);
                }
            }

            // With small parts a rack may want what it did not before.
            if (racks.Count == count && racks.Exists(r => r.Trial.Completed.Added.Any(a => shares[^1].Parts.Any(p => p.Product == a.Product))))
            {
                var rest = shares[^1].Divide([.. racks.Select(r => r.Trial.Completed.Added)]);
                shares = [.. shares.SkipLast(1).Zip(rest, (one, more) => one.With(more)), rest[^1]];
                racks = Fill(sets, shares, racks, apart, ref roomU, isSame: true);
            }

            if (racks.Count == count)
            {
                SupplyFinding = task.Request.Supplies is null ? null : OverSupplies(racks);
                if (SupplyFinding is not null || racks.TrueForAll(r => r.Trial.Faults.Errors == 0))
                {
                    return SupplyFinding is null ? racks : null;
                }

                // A customer waits for another division as long as the last one gained something.
                if (task.IsBasket && faulty is not null && ErrorsOf(racks) >= ErrorsOf(faulty))
                {
                    break;
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
    // errors, rather than one that does not. With more parts no rack goes into a smaller cabinet than before; with small ones it stays where it is.
    private List<RowRack> Fill(
        HashSet<int>[] sets, OrderedParts[] shares, List<RowRack>? before, List<HashSet<int>> apart, ref int roomU, bool isSame = false)
    {
        List<RowRack> racks = [];
        var (supplies, left) = (0, task.Ordered.Bare);
        var loads = new Dictionary<string, double>(StringComparer.Ordinal);
        List<CabinetOffer> cabinets = [.. row ?? offers];
        foreach (var (k, members) in sets.Index())
        {

            // What no rack needs by its part number suits one or the other all the same, as a longer cord does: each leaves what it does not use to the next.
            var share = k == 0 ? shares[0].With(shares[^1]) : shares[k];
            HashSet<string> ids = [.. members.SelectMany(p => parts.Items[p]).Select(i => i.Id)];
            Func<CabinetOffer, bool>? passesOver = isSame ? offer => offer != before![k].Trial.Offer : TooSmallFor(members, before?[k].Trial);
            var own = TaskOf(ids, k, sets.Length, (supplies, loads), share.With(left), passesOver);
            var search = CabinetSearch.Run(own, [.. row is null ? offers : cabinets.DistinctBy(c => c.Product.PartNumber)], 1, checker, cancellation);
            if ((search.Found.FirstOrDefault() ?? (task.IsBasket ? search.LeastFaulty : null)) is not { } trial)
            {
                Failed = (own, search);
                apart.Add(members);
                roomU -= search.Failed.Exists(t => t.NotPlaced.Any() || !own.HasRoomToGrow(t)) ? 1 : 0;
                break;
            }

            supplies += task.Request.Supplies is null ? trial.Rack.Supplies?.Count ?? 0 : 0;
            AddLoads(loads, trial);
            left = own.Ordered.Without(trial.Completed.RackBuild.Stock);
            cabinets.Remove(trial.Offer);
            racks.Add(new RowRack(own, trial, search.OpenBeside(trial)));
        }

        return racks;
    }

    // What the supplies feed in a rack, so that the next one begins with the supply that has the most left.
    private static void AddLoads(Dictionary<string, double> loads, Trial trial)
    {
        foreach (var supply in RackSurvey.Lazily(trial.Resolved).Power.Figures?.Supplies ?? [])
        {
            loads[supply.Id] = loads.GetValueOrDefault(supply.Id) + (supply.LoadingPercent ?? 0);
        }
    }

    // Null where all cabinets are tried: for a proof.
    private Func<CabinetOffer, bool>? TooSmallFor(HashSet<int> members, Trial? before)
    {
        if (task.IsThorough)
        {
            return null;
        }

        var least = before?.Faults.Errors == 0 ? Array.IndexOf(offers, before.Offer) : 0;
        return offer => Array.IndexOf(offers, offer) < least || task.WithGrowth((int)parts.HeightIn(members, offer)) > offer.HeightU;
    }

    private ProposalTask TaskOf(
        HashSet<string> ids,
        int index,
        int count,
        (int Assumed, Dictionary<string, double> Loads) supplies,
        OrderedParts ordered,
        Func<CabinetOffer, bool>? passesOver) => new(
        task.Request with
        {
            Items = ItemsOf(ids),
            Keep = task.Request.Keep is { } keep ? [.. keep.Where(ids.Contains)] : null,
            Groups = null,
            Pdus = HasGiven(ids, index) ? task.Request.Pdus : null,
            Connections = HasGiven(ids, index) ? task.Request.Connections : null,
            Cooling = HasGiven(ids, index) ? task.Request.Cooling : null,
            Reference = task.Request.Reference is { Length: <= 60 } reference ? Invariant($"{reference} {index + 1}") : task.Request.Reference,
        },
        task.Products,
        task.Offered,
        index == 0 || index == count - 1 ? Placement.RowEnd : Placement.RowMiddle,
        supplies.Assumed,
        supplies.Loads,
        task.IsBasket ? ordered : null)
    {
        Budget = task.Budget,
        Layouts = task.Layouts,
        IsTest = task.IsTest,
        IsOfRow = true,
        PassesOver = passesOver,
    };

    // In an order, hosts beside no console are operated over the network, as those of an order without one are.
    private Item[] ItemsOf(HashSet<string> ids)
    {
        Item[] items = [.. task.Request.Items.Where(i => ids.Contains(i.Id))];
        return task.IsBasket && !Array.Exists(items, Consoles.IsConsole)
            ? Array.ConvertAll(items, i => i.Console == true ? i with { Console = false } : i)
            : items;
    }

    // What is there already is in one cabinet: that of the items that stay in it, else the first.
    private bool HasGiven(HashSet<string> ids, int index) => task.Standing.Count > 0 ? task.Standing.Overlaps(ids) : index == 0;

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
