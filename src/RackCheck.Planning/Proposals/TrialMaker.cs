using RackCheck.Model;
using RackCheck.Planning.Building;
using RackCheck.Planning.Layouts;
using RackCheck.Rules;
using RackCheck.Rules.Power;
using RackCheck.Rules.Service;
using RackCheck.Survey.Catalogue;
using RackCheck.Survey.Layout;

namespace RackCheck.Planning.Proposals;

/// <summary>
/// Makes the best rack in one cabinet: completes its parts, has the solver place the items, checks the rack, forbids what the check finds
/// against positions and solves again; then cooling and remedies.
/// </summary>
/// <param name="task">What is to be built.</param>
/// <param name="checker">Checks the racks.</param>
/// <param name="cancellation">Stops the solver, or between two steps.</param>
internal sealed class TrialMaker(ProposalTask task, RackChecker checker, CancellationToken cancellation)
{
    // Rounds of check, forbid, solve again.
    private const int MostRounds = 4;

    // Work of the solver, of which an unsolved problem takes its share and a solved one a tenth.
    private double left = task.Work;

    private double Share => Math.Min(left, task.IsThorough ? 5 : task.Work / 4);

    private readonly Dictionary<string, Layout> solved = new(StringComparer.Ordinal);

    /// <summary>Makes the rack.</summary>
    public Trial Make(CabinetOffer offer)
    {
        IReadOnlyList<Product> parts = PowerOptions.BehindUps(task);
        task.Context.OnUps = task.Request.Connections is null && parts.Count + task.Ordered.UnitsForUps > 0 ? task.Ordered.OnUps : null;
        var best = Make(offer, parts);
        if (best.UsedU > offer.HeightU)
        {
            // Neither power nor cooling makes room.
            return best;
        }

        if (best.UnitsNotPlaced > 0 && PowerOptions.BehindUps(task, isVertical: true) is var vertical && !vertical.SequenceEqual(parts))
        {
            (best, parts) = Better(offer, best, parts, [vertical]);
        }

        Trial? plain = null;
        if (parts.Count + task.Ordered.UnitsForUps > 0 && (MayChangeWithLoads(best) || IsWrong(best)) && (task.IsBasket || task.Budget.Allows()))
        {
            (best, parts, plain) = WithOtherLoads(offer, best, parts);
        }

        if (!task.IsBasket && HasUnswitched(best)
            && PowerOptions.BehindUps(task, isSwitched: true) is { Count: > 0 } switched && !switched.SequenceEqual(parts))
        {
            (best, parts) = Better(offer, best, parts, [switched]);
        }

        (best, parts) = WithMoreUnits(offer, best, parts, plain is not null);
        if (plain is not null && task.Ordered.UnitsForUps == 0 && best.Errors.Any() && IsBetterWithoutUps(plain, best))
        {
            task.Context.OnUps = null;
            (best, parts) = WithMoreUnits(offer, plain, [], isLeaking: false);
        }

        if (best.Errors.Any(f => f.Rule.StartsWith("cooling.", StringComparison.Ordinal)) && !FailedRacks.WantsClosedCabinet(best))
        {
            (best, _) = Better(offer, best, parts, CoolingOptions.Of(task, offer, parts));
        }

        return best.NotPlaced.Any() ? best : RemedyChoice.Apply(task, best, checker, cancellation);
    }

    /// <summary>
    /// Makes a rack in the cabinet of another with certain parts, to which only what it lacks is added. Its UPSs feed what those of the other do.
    /// </summary>
    /// <param name="like">The other rack.</param>
    /// <param name="parts">PDUs and cooling.</param>
    public Trial MakeWith(Trial like, IReadOnlyList<Product> parts)
    {
        task.Context.OnUps = like.OnUps;
        var trial = Make(like.Offer, parts, withoutUps: false);
        return trial.NotPlaced.Any() ? trial : RemedyChoice.Apply(task, trial, checker, cancellation);
    }

    /// <summary>A rack with the same positions and cords as another, of the parts of the basket and those given, without completion.</summary>
    /// <param name="like">The other rack.</param>
    /// <param name="parts">Parts besides those of the basket.</param>
    public Trial MakeLike(Trial like, IEnumerable<MissingPiece> parts)
    {
        var stock = task.Stock.With(parts.Select(p => (p.Product, p.OrderUnits)).Prepend((like.Offer.Product, 1)));
        var context = task.Context;
        context.OutletsGivenUp = false;
        context.OnUps = null;
        context.Positions = like.BottomsU.ToDictionary(b => b.Key, b => (int?)b.Value, StringComparer.Ordinal);
        var build = RackAssembler.Make(context, stock, like.Offer.Product);
        context.Positions = null;
        if (like.Offer.Index is not null)
        {
            // Uprights of a cabinet that is there are moved for good.
            build.Cabinet = build.Cabinet with { Uprights = like.Rack.Cabinet!.Uprights };
        }

        return Check(like.Offer, new Completed(build, []), [], like.Rack.Connections is { } given ? rack => Existing(given, rack) : null);
    }

    private static IReadOnlyList<Connection> Existing(IReadOnlyList<Connection> connections, ResolvedRack rack)
    {
        var ids = rack.Description.Items.Select(i => i.Id).Concat((rack.Description.Pdus ?? []).Select(u => u.Id)).ToHashSet(StringComparer.Ordinal);
        return [.. connections.Where(c => ids.Contains(c.Item) && ids.Contains(c.Pdu))];
    }

    // A UPS that feeds nothing serves nobody: a proposal gives its loads up only for an error fewer.
    private bool IsBetterWithoutUps(Trial plain, Trial trial) =>
        task.IsBasket ? plain.Faults.CompareTo(trial.Faults) < 0 : plain.Faults.Errors < trial.Faults.Errors;

    // Whether something that is to be switched off and on remotely has no outlet for it.
    private static bool HasUnswitched(Trial trial) => trial.Found.Findings.Any(f =>
        f is { Accepted: null, SignedOff: null, Severity: not Severity.Advice } && f.Rule == RuleChecks.IdOf<RemotePower>());

    private bool IsWrong(Trial trial) =>
        task.IsTest ? trial.Errors.Any(f => f.Rule.StartsWith("power.", StringComparison.Ordinal)) : trial.Has("power.");

    // What a UPS feeds, and the room that its PDU takes, are no matter for air and service: a customer does not wait for that.
    private bool MayChangeWithLoads(Trial trial) => !task.IsBasket
        ? trial.Errors.Any()
        : trial.NotPlaced.Any() || trial.Errors.Any(e =>
            !e.Rule.StartsWith("cooling.", StringComparison.Ordinal) && !e.Rule.StartsWith("service.", StringComparison.Ordinal));

    // Where what a UPS feeds leaves a fault: the cords as the check assigns them, unless the order names them; and the PDUs that carry everything without the
    // UPS, with its own. The rack without its PDU is the last resort.
    private (Trial Trial, IReadOnlyList<Product> Parts, Trial Plain) WithOtherLoads(CabinetOffer offer, Trial trial, IReadOnlyList<Product> parts)
    {
        var best = (Trial: trial, Parts: parts, OnUps: task.Context.OnUps);
        if (task.Context.OnUps is { Count: 0 })
        {
            if (!task.IsBasket && UpsFeeds.OnlyFirst(task.Items) is { Count: > 0 } others)
            {
                Try(parts, others);
            }

            Try(parts, null);
        }

        task.Context.OnUps = null;
        var plain = Make(offer, [], withoutUps: true);
        if (task.Request.Connections is null)
        {
            Try([.. PowerOptions.UnitsOf(task, plain), .. parts], task.Ordered.OnUps);
        }

        task.Context.OnUps = best.OnUps;
        return (best.Trial, best.Parts, plain);

        void Try(IReadOnlyList<Product> all, IReadOnlyDictionary<string, bool>? onUps)
        {
            task.Context.OnUps = onUps;
            var next = Make(offer, all);
            best = task.FaultsOf(next).CompareTo(task.FaultsOf(best.Trial)) < 0 ? (next, all, onUps) : best;
        }
    }

    private (Trial Trial, IReadOnlyList<Product> Parts) WithMoreUnits(CabinetOffer offer, Trial trial, IReadOnlyList<Product> parts, bool isLeaking) =>
        (IsWrong(trial) || (isLeaking && trial.Errors.Any(e => e.Rule.StartsWith("earthing.", StringComparison.Ordinal)))) && trial.Unmet.Count == 0
            ? Better(offer, trial, parts, PowerOptions.ForLoad(task, trial, parts))
            : (trial, parts);

    // The first set of parts that leaves no error and fewer faults, else the best.
    private (Trial Trial, IReadOnlyList<Product> Parts) Better(
        CabinetOffer offer, Trial trial, IReadOnlyList<Product> parts, IEnumerable<IReadOnlyList<Product>> options)
    {
        var best = (trial, parts);
        foreach (var option in options)
        {
            if (!task.Budget.Allows())
            {
                break;
            }

            var next = Make(offer, option);
            best = task.FaultsOf(next).CompareTo(task.FaultsOf(best.trial)) < 0 ? (next, option) : best;
            if (best.trial.Faults.Errors == 0 && best.trial != trial)
            {
                break;
            }
        }

        return best;
    }

    private Trial Make(CabinetOffer offer, IReadOnlyList<Product> parts, bool withoutUps = false)
    {
        cancellation.ThrowIfCancellationRequested();
        var stock = (withoutUps ? task.Stock.Without(p => p.Kind == ProductKind.Pdu && SupplyChoice.IsForUps(p)) : task.Stock)
            .With(parts.Select(p => (p, 1L)).Prepend((offer.Product, 1)));
        var context = task.Context;
        context.Positions = null;
        var mounted = BasketCompletion.Mount(context, stock, offer.Product, cancellation);
        var extra = parts.Select(p => ExtraOf(p)).ToArray();
        Trial? best = null;
        LayoutProblem? unsolved = null;
        var isRefuted = false;
        foreach (var practice in Enum.GetValues<LayoutPractice>().Where(p => p >= LayoutPractice.All || HasPatchField(mounted)))
        {
            // The last practice always has its turn: it is the one that shows whether everything fits.
            if (practice is not (LayoutPractice.All or LayoutPractice.None) && !task.Budget.Allows())
            {
                continue;
            }

            var (completed, bans) = (mounted, new LayoutBans());
            for (var round = 0; round < MostRounds; round++)
            {
                var problem = LayoutModel.Of(context, completed.RackBuild, practice, bans);
                var layout = Solve(problem);
                if (layout.Starts is not { } starts)
                {
                    unsolved = problem;
                    isRefuted |= practice == LayoutPractice.None && round == 0 && layout.IsImpossible && !problem.Blocks.Any(b => !task.IsOwn(b.Id));
                    break;
                }

                context.Positions = problem.Blocks.Index().ToDictionary(b => b.Item.Id, b => (int?)starts[b.Index], StringComparer.Ordinal);
                completed = BasketCompletion.Finish(context, stock, offer.Product, completed, cancellation);
                context.Positions = null;
                var trial = Check(offer, completed, extra) with { Problem = problem, Layout = layout };
                best = best is null || task.FaultsOf(trial).CompareTo(task.FaultsOf(best)) < 0 ? trial : best;
                if (!LayoutFindings.Forbid(trial, problem, starts, bans) || !task.Budget.Allows())
                {
                    break;
                }
            }

            // A patch field is no reason for a finding against positions.
            if (best is not null && (practice >= LayoutPractice.All || !LayoutFindings.AreIn(best)))
            {
                break;
            }
        }

        return best ?? Check(offer, BasketCompletion.Finish(context, stock, offer.Product, mounted, cancellation), extra) with
        {
            Problem = unsolved,
            IsRefuted = isRefuted,
        };
    }

    // Order lines are answered as they were before, and whether there is a rack does not depend on it.
    private bool HasPatchField(Completed mounted) => task is { IsBasket: false, IsTest: false } && LayoutModel.HasPatchField(mounted.RackBuild);

    // Cabinets of one height have the same layouts.
    private Layout Solve(LayoutProblem problem)
    {
        var key = problem.Key();
        if (!solved.TryGetValue(key, out var layout))
        {
            var share = Share;
            (layout, var isKnown) = task.Layouts.Solve(key, problem, share, cancellation);
            solved[key] = layout;
            var isProven = layout.IsProven(problem);
            left -= isProven ? share / 10 : layout.IsSearched ? share : 0;
            task.Budget.SpendOnLayout(key, layout.Work + (layout.IsSearched ? SearchBudget.CostOfSolver(share, isProven) : 0), isKnown);
        }

        return layout;
    }

    private Trial Check(
        CabinetOffer offer, Completed completed, IReadOnlyList<MissingPiece> extra, Func<ResolvedRack, IReadOnlyList<Connection>>? cords = null)
    {
        var rack = ResolvedRack.Of(Describe(offer, completed.RackBuild), task.Products);
        rack = cords is null ? rack : rack.With(rack.Posted with { Connections = cords(rack) });
        var found = checker.Find(rack, cancellation);
        task.Budget.Spend(SearchBudget.CostOfRack(SearchBudget.SizeOf(rack.Description)));

        // Chosen cords may have found the outlets that were missing.
        if (cords is not null && !found.Findings.Any(f => f.Rule == RuleChecks.IdOf<Redundancy>()))
        {
            completed.RackBuild.Unmet.RemoveAll(u => ReferenceEquals(u.What, LineWordings.SecondSupplyPdu));
        }

        return new Trial
        {
            Offer = offer,
            IsCabinetThere = task.IsThere(offer),
            Resolved = rack,
            Found = found,
            OnUps = task.Context.OnUps,
            Completed = completed with { Added = BasketCompletion.Merged(completed.Added.Concat(extra)) },
        };
    }

    private static MissingPiece ExtraOf(Product product) => product.Kind != ProductKind.Pdu
        ? new MissingPiece(
            Stage.Cooling, product, 1, new WordedText(product.Kind == ProductKind.Door ? LineWordings.OpenDoor : LineWordings.Cooling))
        : new MissingPiece(
            Stage.Outlets,
            product,
            1,
            new WordedText(SupplyChoice.IsForUps(product) ? LineWordings.UpsUnit : LineWordings.SharedLoad));

    // The parts of a cabinet of the catalogue are bonded, unless its data say otherwise of a door.
    private static Earthing Bonded(RackBuild build, Earthing? given)
    {
        BondedPart[] parts = [.. build.Wired.Earth.Parts.Where(p => p.IsBonded is null).Select(p => p.Part)];
        var names = BuildBases.PartsOf(parts);
        build.Assumptions.Add(new Assumption
        {
            Pointers = [Pointers.Bonded],
            Value = names.Text,
            ValueKey = names.Key,
            ValueData = names.Values,
            Basis = BuildBases.FactoryBonds.Text,
            BasisKey = BuildBases.FactoryBonds.Key,
            BasisData = BuildBases.FactoryBonds.Values,
        });
        return (given ?? new Earthing()) with { Bonded = parts };
    }

    // The items of the request first, in its order, with their own data and what was decided on them.
    private RackDescription Describe(CabinetOffer offer, RackBuild build)
    {
        var made = build.Items.ToDictionary(i => i.Id, i => i.Item, StringComparer.Ordinal);
        var withOtherPlugs = build.Items.Where(i => i.Inlets is not null).Select(i => i.Id).ToHashSet(StringComparer.Ordinal);
        var own = task.Request.Items.Select(i => i with
        {
            Position = made[i.Id].Position,
            OnShelf = made[i.Id].OnShelf,
            Fixing = i.Fixing ?? made[i.Id].Fixing,
            Support = made[i.Id].Support,
            Power = withOtherPlugs.Contains(i.Id) ? (i.Power ?? new ItemPower()) with { Plugs = made[i.Id].Power!.Plugs } : i.Power,
            EarthLead = i.EarthLead ?? made[i.Id].EarthLead,
            Ups = made[i.Id].Ups is { } ups ? ups with { Feeds = i.Ups?.Feeds ?? ups.Feeds } : null,
        });
        var added = build.Items.Where(i => !task.IsOwn(i.Id)).Select(i => i.Item);
        var partNumber = offer.Index is { } index ? task.Request.Cabinets![index].PartNumber : offer.Product.PartNumber;
        var rack = build.Describe() with
        {
            Cabinet = build.Cabinet with { PartNumber = partNumber },
            Items = [.. own, .. added],
            Pdus = [.. build.Units.Select(u => u.Whole)],
            Connections = build.AllConnections,
        };
        var isMade = offer.Index is null || (partNumber is not null && task.Products.ContainsKey(partNumber));
        rack = isMade && task.Request.Earthing?.Bonded is null ? rack with { Earthing = Bonded(build, rack.Earthing) } : rack;
        return task.Request.UnitNumbering == UnitNumbering.TopDown ? UnitNumbers.Turned(rack) : rack;
    }
}
