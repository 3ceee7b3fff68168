using RackCheck.Model;
using RackCheck.Planning.Building;
using RackCheck.Planning.Proposals;
using RackCheck.Rules;

namespace RackCheck.Planning.Baskets;

/// <summary>A completed rack of a basket.</summary>
/// <param name="Task">What was searched.</param>
/// <param name="Maker">Makes racks of the same task.</param>
/// <param name="Trial">The rack with all parts.</param>
internal sealed record BasketRack(ProposalTask Task, TrialMaker Maker, Trial Trial);

/// <summary>The completed racks of a basket.</summary>
internal sealed record BasketPlan
{
    /// <summary>The racks, in the order of their row.</summary>
    public required IReadOnlyList<BasketRack> Racks { get; init; }

    /// <summary>The best rack in a cabinet of the basket, if its cabinets do not suffice.</summary>
    public Trial? InOwn { get; init; }

    /// <summary>What stands against every cabinet, whatever else is chosen; empty if some cabinet takes the equipment or that is open.</summary>
    public IReadOnlyList<Finding> Against { get; init; } = [];

    /// <summary>Parts needed that are not on offer.</summary>
    public IEnumerable<OpenNeed> Unmet => Racks.SelectMany(r => r.Trial.Unmet);

    /// <summary>Errors, unmet needs and warnings: the smaller the better.</summary>
    public (int Errors, int Unmet, int Warnings) Faults =>
        (Racks.Sum(r => r.Trial.Faults.Errors), Unmet.Count(), Racks.Sum(r => r.Trial.Faults.Warnings));

    /// <summary>Order units of a part of the basket, or of one added, that no rack uses.</summary>
    public OrderedParts Spare => Racks[^1].Task.Ordered.Without(Racks[^1].Trial.Completed.RackBuild.Stock);
}

/// <summary>
/// Finds the best completed racks of a basket with the planner of the proposals: in the cabinets of the basket, else in those on offer. Every rack is judged by
/// all rules.
/// </summary>
/// <param name="offered">The products that may be added, in any order.</param>
/// <param name="checker">Checks the racks.</param>
/// <param name="layouts">The layouts solved so far for the basket.</param>
/// <param name="cancellation">Stops the search.</param>
internal sealed class BasketSearch(IReadOnlyList<Product> offered, RackChecker checker, SolvedLayouts layouts, CancellationToken cancellation)
{
    /// <summary>Maximum number of racks of one order.</summary>
    public const int MostRacks = 6;

    // The nearest cabinet that takes everything takes a share of it as well, as a rule.
    private const int MostExchanges = 2;

    /// <summary>Finds the racks.</summary>
    /// <param name="lines">The basket.</param>
    /// <returns>The racks; null if there is no cabinet, neither in the basket nor on offer.</returns>
    public BasketPlan? Find(BasketLines lines)
    {
        var basket = lines.Request;
        var request = new ProposalRequest
        {
            Reference = basket.Reference,
            Items = lines.Items,
            Cabinets = basket.Options?.Cabinet?.Existing is { } existing ? [existing] : null,
            Keep = lines.Standing.Count > 0 ? lines.Standing : null,
            Supplies = basket.Supplies is { Count: > 0 } supplies ? supplies : null,
            Earthing = basket.Earthing,
            Site = basket.Site,
            Policy = basket.Policy,
            Acceptances = basket.Acceptances,
            SignOffs = basket.SignOffs,
            AsOf = basket.AsOf,
            MaxCabinets = MostRacks,
        };
        var task = new ProposalTask(request, lines.Products, offered, basket.Options?.Placement, ordered: lines.Ordered) { Layouts = layouts };
        CabinetOffer[] all = [.. CabinetOffer.Of(request, task.Products, offered).OrderBy(o => o.Product.InStock == false)];
        var own = request.Cabinets is not null
            ? all
            : CabinetOffer.Sorted(
                request, lines.Cabinets.SelectMany(c => Enumerable.Repeat(new CabinetOffer(c.Product, null), Math.Min(c.Quantity, MostRacks))));
        var others = request.Cabinets is null ? all : [];
        var plan = Empty(task, own, lines.CabinetCount, basket.Options?.Placement)
            ?? Divided(task, own) ?? DividedInOthers(task, own, others) ?? Single(task, [.. own.DistinctBy(o => o.Product.PartNumber)], others);
        layouts.Work += task.Budget.Spent - task.Budget.Known;
        return plan;
    }

    // Cabinets that are ordered without equipment are as many racks, alike as a rule, each with its share of the parts. Beyond the most, none is built.
    private BasketPlan? Empty(ProposalTask task, CabinetOffer[] cabinets, int count, Placement? placement)
    {
        if (task.Items.Count > 0 || cabinets.Length < 2)
        {
            return null;
        }

        // One of each comes first.
        CabinetOffer[] row =
        [
            .. cabinets.GroupBy(o => o.Product.PartNumber, StringComparer.Ordinal).SelectMany(g => g.Index()).OrderBy(o => o.Index).Select(o => o.Item)
                .Take(MostRacks),
        ];
        var shares = task.Ordered.Divide([.. Enumerable.Repeat<IReadOnlyList<MissingPiece>>([], row.Length)], count);
        var (left, supplies) = (shares[^1].Small, 0);
        List<BasketRack> racks = [];
        foreach (var (offer, share) in row.Zip(shares))
        {
            var own = new ProposalTask(task.Request, task.Products, offered, placement, supplies, ordered: share.With(left)) { Layouts = layouts };
            var maker = new TrialMaker(own, checker, cancellation);
            var trial = CabinetSearch.Run(own, [offer], 1, checker, cancellation).Found.FirstOrDefault() ?? maker.Make(offer);
            left = own.Ordered.Without(trial.Completed.RackBuild.Stock);
            supplies += task.Request.Supplies is null ? trial.Rack.Supplies?.Count ?? 0 : 0;
            racks.Add(new BasketRack(own, maker, trial));
        }

        return new BasketPlan { Racks = racks };
    }

    // Every cabinet of the basket is a rack, as far as there is equipment for it: with the hosts in that of their console, where there is one, and beside
    // a UPS for them.
    private BasketPlan? Divided(ProposalTask task, CabinetOffer[] own)
    {
        var count = Math.Min(Math.Min(own.Length, MostRacks), task.Items.Count);
        if (count < 2)
        {
            return null;
        }

        CabinetOffer[] row = [.. own.TakeLast(count)];
        var desk = task.Items.Where(i => Consoles.IsConsole(i) || Consoles.IsHost(i) || i.Ups is not null).Select(i => i.Id).ToHashSet(StringComparer.Ordinal);
        var isOneDesk = task.Items.Any(Consoles.IsConsole) && task.Items.Where(Consoles.IsConsole).GroupBy(i => i.Category).All(g => g.Count() == 1);
        return isOneDesk && task.Items.Count - desk.Count >= count - 1
            && Divided(desk) is { Faults.Errors: 0 } plan ? plan : Divided(null);

        BasketPlan? Divided(HashSet<string>? together) =>
            PlanOf(new RackDivision(task, own, checker, cancellation, row: row, together: together).Find());
    }

    // Where none of several cabinets of the basket takes the equipment, all of them are exchanged: what was ordered as several racks stays several racks.
    private BasketPlan? DividedInOthers(ProposalTask task, CabinetOffer[] own, CabinetOffer[] all)
    {
        var count = Math.Min(Math.Min(own.Length, MostRacks), task.Items.Count);
        if (count < 2 || !Array.TrueForAll(own, IsRefuted))
        {
            return null;
        }

        foreach (var offer in Nearest([.. all.Where(o => !IsRefuted(o))], own).Take(MostExchanges))
        {
            if (PlanOf(new RackDivision(task, [offer], checker, cancellation, row: [.. Enumerable.Repeat(offer, count)]).Find()) is { Faults.Errors: 0 } plan)
            {
                return plan with { InOwn = new TrialMaker(task, checker, cancellation).Make(own[0]) };
            }
        }

        return null;

        bool IsRefuted(CabinetOffer offer) => Refutation.Against(task, offer).Any(f => f.Severity == Severity.Error);
    }

    private BasketPlan? PlanOf(IReadOnlyList<RowRack>? racks) => racks is null ? null : new BasketPlan
    {
        Racks = [.. racks.Select(r => new BasketRack(r.Task, new TrialMaker(r.Task, checker, cancellation), r.Trial))],
    };

    private BasketPlan? Single(ProposalTask task, CabinetOffer[] own, CabinetOffer[] all)
    {
        var maker = new TrialMaker(task, checker, cancellation);
        var first = own.Length > 0 ? CabinetSearch.Run(task, own, 1, checker, cancellation) : null;
        if (first is not null && WithoutParts(task, own, first) is { } without)
        {
            return One(without);
        }

        if (first?.Found is [var found, ..])
        {
            return One(found);
        }

        var others = Nearest([.. all.Where(o => !Array.Exists(own, c => c.Product.PartNumber == o.Product.PartNumber))], own);
        var second = others.Length > 0 ? CabinetSearch.Run(task, others, 1, checker, cancellation) : null;
        var inOwn = first is null ? null : first.Failed.MinBy(t => t.Faults) ?? maker.Make(own[0]);
        if (second?.Found is [var best, ..])
        {
            return One(best) with { InOwn = inOwn };
        }

        Trial[] failed = [.. first?.Failed ?? [], .. second?.Failed ?? []];
        if (all.Length > 0 && task.Items.Count > 1 && !Array.Exists(failed, t => t.Faults.Errors == 0 || !t.NotPlaced.Any())
            && PlanOf(new RackDivision(task, all, checker, cancellation).Find()) is { } several)
        {
            return several with { InOwn = inOwn };
        }

        // Nothing without an error: the least unsafe rack with the fewest, in the basket's own cabinet where that is no worse, else in the smallest.
        var fewest = (inOwn is null ? failed : failed.Prepend(inOwn)).MinBy(t => t.Unsoundness);
        if (fewest is null && (second?.Against.OrderBy(a => a.Findings.Count).ThenBy(Shortfall).FirstOrDefault().Offer ?? others.LastOrDefault()) is { } offer)
        {
            fewest = maker.Make(offer);
        }

        var isProven = failed.Length == 0 && first?.Open.Count is null or 0 && second?.Open.Count is null or 0;
        return fewest is null ? null : One(fewest) with
        {
            InOwn = inOwn,
            Against = isProven
                ? [.. (first?.Against ?? []).Concat(second?.Against ?? []).Where(a => a.Offer == fewest.Offer).SelectMany(a => a.Findings)]
                : [],
        };

        BasketPlan One(Trial trial) => new() { Racks = [new BasketRack(task, maker, trial)] };
    }

    // A cooler in a cabinet that lets air through, a door that shuts the air in, or PDUs that find no U position where others do without one: where the rack
    // is sound without it, it is in excess, not the cabinet. No cooler is sold for a door.
    private Trial? WithoutParts(ProposalTask task, CabinetOffer[] own, CabinetSearch first)
    {
        var kinds = first.Found is [var found, ..]
            ? found.Completed.Added.Any(p => p.Product.Kind == ProductKind.AirConditioner) ? (ReadOnlySpan<ProductKind>)[ProductKind.Door] : []
            : first.Failed.Exists(t => t.UnitsNotPlaced > 0) ? [ProductKind.AirConditioner, ProductKind.Door, ProductKind.Pdu]
            : [ProductKind.AirConditioner, ProductKind.Door];
        foreach (var kind in kinds)
        {
            if (task.Ordered.Parts.Any(p => p.Product.Kind == kind))
            {
                task.Context.Leaves = kind;
                if (CabinetSearch.Run(task, own, 1, checker, cancellation).Found is [var without, ..]
                    && !without.Completed.Added.Any(p => p.Product.Kind == ProductKind.AirConditioner))
                {
                    return without;
                }

                task.Context.Leaves = null;
            }
        }

        return null;
    }

    // In the place of an ordered cabinet the one that is most like it: of the same height, if it can be, then of nearly the same size, with the same doors.
    private static CabinetOffer[] Nearest(CabinetOffer[] offers, CabinetOffer[] own) => own.Length == 0 ? offers :
    [
        .. offers.OrderBy(o => o.Product.InStock == false).ThenBy(o => Math.Abs(o.HeightU - own[0].HeightU))
            .ThenBy(o => Math.Abs(o.WidthMm - own[0].WidthMm) + Math.Abs(o.DepthMm - own[0].DepthMm))
            .ThenBy(o => o.Product.Cabinet!.FrontDoor?.Style != own[0].Product.Cabinet!.FrontDoor?.Style),
    ];

    // How far a cabinet falls short of what the equipment needs, as a share of it, over all that stands against it.
    private static double Shortfall((CabinetOffer Offer, IReadOnlyList<Finding> Findings) against) => against.Findings.Sum(
        f => f is { Actual.Value: { } actual, Limit.Value: { } limit } && limit != 0 ? Math.Abs(actual - limit) / Math.Abs(limit) : 1);
}
