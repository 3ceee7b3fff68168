using RackCheck.Model;
using RackCheck.Planning.Building;
using RackCheck.Rules;

namespace RackCheck.Planning.Proposals;

/// <summary>
/// Turns equipment into racks: tries the allowed cabinets from the preferred one on, completes a rack in each and keeps the racks without an
/// open error. What does not go into one cabinet is divided over several. The same request gives the same answer.
/// </summary>
/// <param name="checker">Checks each rack; only its report decides whether the rack is proposed.</param>
public sealed class ProposalPlanner(RackChecker checker)
{
    /// <summary>Maximum number of alternatives in an answer.</summary>
    public const int MostAlternatives = 3;

    /// <summary>Plans a request.</summary>
    /// <param name="request">A valid request.</param>
    /// <param name="products">Products of its part numbers.</param>
    /// <param name="offered">Products on offer.</param>
    /// <param name="cancellation">Stops the solver, or between two steps.</param>
    /// <returns>The racks, or the conflict.</returns>
    public ProposalAnswer Plan(
        ProposalRequest request, IReadOnlyDictionary<string, Product> products, IReadOnlyList<Product> offered, CancellationToken cancellation = default) =>
        Plan(request, products, offered, SearchBudget.Of(request.Effort == SearchEffort.Thorough), cancellation);

    /// <summary>Plans a request within a budget.</summary>
    /// <param name="request">A valid request.</param>
    /// <param name="products">Products of its part numbers.</param>
    /// <param name="offered">Products on offer.</param>
    /// <param name="budget">The work that the search may take. One rack is always tried.</param>
    /// <param name="cancellation">Stops the solver, or between two steps.</param>
    /// <returns>The racks, or the conflict.</returns>
    public ProposalAnswer Plan(
        ProposalRequest request,
        IReadOnlyDictionary<string, Product> products,
        IReadOnlyList<Product> offered,
        SearchBudget budget,
        CancellationToken cancellation = default)
    {
        var task = new ProposalTask(request, products, offered) { Budget = budget };
        var offers = CabinetOffer.Of(request, task.Products, offered);
        var conflict = ProposalConflicts.BeforeTrial(task, offers);
        ProposedRack[] found = [];
        if (conflict is null)
        {
            var search = CabinetSearch.Run(task, offers, MostAlternatives, checker, cancellation);
            var division = search.Found.Count > 0 || (request.MaxCabinets ?? RackDivision.DefaultMost) == 1
                ? null
                : new RackDivision(task, offers, checker, cancellation);
            var rows = division?.FindAlternatives(MostAlternatives) ?? [];
            if (division is not null && task.IsThorough)
            {
                // What a quick search finds is among what a thorough one answers, though that divides the equipment in another way.
                var quick = new ProposalTask(request with { Effort = null }, products, offered) { Budget = SearchBudget.Of(isThorough: false) };
                rows = division.Best([.. rows, .. new RackDivision(quick, offers, checker, cancellation).FindAlternatives(MostAlternatives)], MostAlternatives);
            }

            found = search.Found.Count > 0
                ? Written(
                    [.. search.Found.Select(t => new Judged([t], checker, cancellation))],
                    (r, i) => Objectives.Of(task, search.Found[i], search.OpenBeside(search.Found[i])))
                : Written(
                    [.. rows.Select(r => new Judged([.. r.Select(k => k.Trial)], checker, cancellation))],
                    (r, i) => Objectives.Sum([.. rows[i].Select(k => Objectives.Of(k.Task, k.Trial, k.Open))], division!.Least));
            conflict = found.Length > 0 ? null : Conflict(task, offers, search, division, cancellation);
        }

        WordedText[] cautions = [.. UnknownCabinets(request, offers), .. budget.IsCut ? [ProposalWordings.CutShort] : Array.Empty<WordedText>()];
        return new ProposalAnswer
        {
            Reference = request.Reference,
            Alternatives = found,
            Conflict = conflict,
            Effort = request.Effort ?? SearchEffort.Quick,
            Cautions = [.. cautions.Select(c => c.Text)],
            CautionKeys = [.. cautions.Select(c => c.Keyed)],
        };
    }

    // A cabinet without sizes of its own has those of its part number, if that is a cabinet.
    private static IEnumerable<WordedText> UnknownCabinets(ProposalRequest request, CabinetOffer[] offers)
    {
        string[] unknown =
        [
            .. (request.Cabinets ?? []).Index().Where(c => Array.TrueForAll(offers, o => o.Index != c.Index))
                .Select(c => c.Item.PartNumber).OfType<string>().Distinct(),
        ];
        if (unknown.Length > 0)
        {
            yield return new WordedText(ProposalWordings.UnknownCabinets.With(unknown.Length == 1 ? "one" : null), ("partNumbers", Scalar.Ids(unknown)));
        }
    }

    private static IEnumerable<WordedText> GivenUp(Trial trial) =>
        trial.Unmet.Select(u => u.What.QuotedIn(ProposalWordings.NotOnOffer).With(u.Reason)).Concat(NotOnUps(trial));

    // Where a rack has a UPS, what it would feed first and does not.
    private static IEnumerable<WordedText> NotOnUps(Trial trial)
    {
        var items = trial.Resolved.Description.Items;
        var fed = trial.FedByUps;
        string[] left = [.. items.Where(i => UpsFeeds.IsFirst(i) && !fed.Contains(i.Id)).Select(i => i.Id)];
        if (left.Length > 0 && items.Any(i => i.Ups is not null))
        {
            yield return UpsFeeds.NotFed(ProposalWordings.NotOnUps, left, trial.Rack.Site);
        }
    }

    // Each compared with the first, the first with the second.
    private static ProposedRack[] Written(Judged[] all, Func<Judged, int, IReadOnlyList<ObjectiveValue>> objectiveOf) =>
        [.. all.Select((r, i) => Propose(r, i > 0 ? all[0] : all.ElementAtOrDefault(1), objectiveOf(r, i)))];

    private static ProposedRack Propose(Judged racks, Judged? other, IReadOnlyList<ObjectiveValue> objective)
    {
        var (gained, otherwise) = other is null ? ([], []) : TradeOffs.Of(racks.Figures, other.Figures, (racks.Verdict, other.Verdict));
        WordedText[] givenUp = [.. otherwise, .. racks.Trials.SelectMany(GivenUp).DistinctBy(t => t.Text)];
        var added = AddedParts.Merge(racks.Trials.SelectMany(AddedParts.Of));
        var isOne = racks.Trials.Count == 1;
        return new ProposedRack
        {
            Rack = isOne ? racks.Trials[0].Rack : null,
            Report = isOne ? racks.Reports[0] : null,
            Racks = isOne ? null : [.. racks.Trials.Zip(racks.Reports, (trial, report) => new CheckedRack { Rack = trial.Rack, Report = report })],
            Gained = [.. gained.Select(t => t.Text)],
            GainedKeys = [.. gained.Select(t => t.Keyed)],
            GivenUp = [.. givenUp.Select(t => t.Text)],
            GivenUpKeys = [.. givenUp.Select(t => t.Keyed)],
            AddedLines = AddedParts.Written(added),
            Cost = AddedParts.CostOf(added),
            Currency = AddedParts.CostOf(added) is null ? null : added[0].Product.Currency,
            Objective = objective,
            Assumptions = [.. racks.Trials.SelectMany(ProposalAssumptions.Of)],
        };
    }

    // An error of power may be one of the supply that was chosen for a PDU: not all choices were tried.
    private static bool LeavesSuppliesUntried(ProposalTask task, CabinetSearch search, Finding? supplies) =>
        task.Request.Supplies is { Count: > 1 }
        && (supplies is not null || search.Failed.Exists(t => t.Errors.Any(e =>
            e.Rule.StartsWith("power.", StringComparison.Ordinal) || e.Rule.StartsWith("earthing.", StringComparison.Ordinal))));

    // The requirements, and the errors of the rack that shows them best: of those that name most of the requirements the one with the fewest errors.
    private ProposalConflict Conflict(
        ProposalTask task, CabinetOffer[] offers, CabinetSearch search, RackDivision? division, CancellationToken cancellation)
    {
        var causes = ProposalConflicts.CausesOf(task, search, division);
        var errors = causes is [var first, ..] ? first : [];
        if (task.Request.MaxCabinets == 1 && ProposalConflicts.TooHigh(task, offers, search.LeastAddedU(task)) is { } height)
        {
            return height with { Reasons = errors };
        }

        var isCut = task.Budget.IsCut;
        if (ProposalConflicts.TooLittleGrowth(task, search, isCut) is { } growth)
        {
            return growth with { Reasons = errors };
        }

        var budget = task.Budget.OfConflict();
        var found = new ConflictSearch(task.Request, changed => IsMet(changed, task, budget, cancellation)).Find([.. causes.SelectMany(c => c)]);
        task.Budget.Spend(budget.Spent);

        // Where cabinets and parts were left untried, a rack may meet them all.
        return found with
        {
            Reasons = causes.MinBy(c => found.Requirements.Count(r => !IsOfItem(r) && !ProposalConflicts.IsNamed(r.Pointers, c))) ?? [],
            Proven = found.Proven && !isCut && !LeavesSuppliesUntried(task, search, division?.SupplyFinding),
        };
    }

    // Without items nothing is in conflict: they explain nothing.
    private static bool IsOfItem(ConflictingRequirement requirement) =>
        requirement.Pointers.All(p => p.StartsWith("/items/", StringComparison.Ordinal));

    // A few cabinets show whether a request can be met; those that cannot take the equipment cost nothing.
    private bool? IsMet(ProposalRequest changed, ProposalTask task, SearchBudget budget, CancellationToken cancellation)
    {
        if (!budget.Allows())
        {
            return null;
        }

        var quick = new ProposalTask(changed with { Effort = null }, task.Products, task.Offered) { Budget = budget, IsTest = true };
        var offers = CabinetOffer.Of(changed, task.Products, task.Offered);
        if (ProposalConflicts.BeforeTrial(quick, offers) is not null)
        {
            return false;
        }

        // Dividing helps where no cabinet takes the equipment by its size or mass.
        var search = CabinetSearch.Run(quick, offers, 1, checker, cancellation);
        var isMet = search.Found.Count > 0
            || (search.Failed.Count == 0
                && (changed.MaxCabinets ?? RackDivision.DefaultMost) > 1
                && new RackDivision(quick, offers, checker, cancellation).Find() is not null);
        return isMet || !budget.IsCut ? isMet : null;
    }

    // An alternative with the reports on its racks.
    private sealed class Judged(IReadOnlyList<Trial> trials, RackChecker checker, CancellationToken cancellation)
    {
        public IReadOnlyList<Trial> Trials => trials;

        public CheckReport[] Reports { get; } = [.. trials.Select(t => checker.Check(t.Resolved, cancellation))];

        public RackFigures Figures => field ??= new RackFigures(trials);

        public Verdict Verdict => Reports.Max(r => r.Verdicts.Product);
    }
}
