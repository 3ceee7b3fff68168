using RackCheck.Model;
using RackCheck.Planning.Building;
using RackCheck.Rules;
using RackCheck.Rules.Service;

namespace RackCheck.Planning.Proposals;

/// <summary>What the search over the cabinets found.</summary>
internal sealed class CabinetSearch
{
    // Racks made besides those wanted while none is without a warning.
    private const int MostFurther = 3;

    // Racks with an open error after which a quick search ends.
    private const int MostFailed = 8;
    private const int MostFailedInBrief = 3;
    private const int MostFailedInTest = 2;

    /// <summary>Racks without an open error, the preferred one first.</summary>
    public List<Trial> Found { get; } = [];

    /// <summary>Racks with an open error.</summary>
    public List<Trial> Failed { get; } = [];

    /// <summary>Cabinets that cannot take the equipment, with the reasons.</summary>
    public List<(CabinetOffer Offer, IReadOnlyList<Finding> Findings)> Against { get; } = [];

    /// <summary>Cabinets that are not proven to be unsuitable, with the open warnings of the product that a rack in them has at least.</summary>
    public List<(CabinetOffer Offer, int Warnings)> Open { get; } = [];

    /// <summary>
    /// The cabinets that are not proven to be unsuitable or to have more open warnings than a rack: fewer warnings come before all that a proof is about.
    /// </summary>
    public IReadOnlyList<CabinetOffer> OpenBeside(Trial trial) => [.. Open.Where(o => o.Warnings <= trial.ProductWarnings).Select(o => o.Offer)];

    /// <summary>Searches the cabinets for racks with no open error and few warnings, the smallest cabinets first.</summary>
    /// <param name="task">The request.</param>
    /// <param name="offers">The cabinets, the preferred ones first.</param>
    /// <param name="most">Number of racks wanted.</param>
    /// <param name="checker">Checks each rack.</param>
    /// <param name="cancellation">Stops the search.</param>
    public static CabinetSearch Run(
        ProposalTask task, CabinetOffer[] offers, int most, RackChecker checker, CancellationToken cancellation)
    {
        var search = new CabinetSearch();
        List<(CabinetOffer Offer, int Warnings)> possible = [];

        // Cabinets with the same data are refuted by the same findings.
        var refuted = new Dictionary<Cabinet, IReadOnlyList<Finding>>();

        // A test begins with the largest: if it cannot take the equipment, a smaller one seldom can.
        var candidates = task.IsTest ? offers.OrderByDescending(o => o.HeightU * o.WidthMm * o.DepthMm) : offers.AsEnumerable();
        foreach (var offer in candidates.Where(o => task.WithGrowth(task.ItemsU) <= o.HeightU))
        {
            if (task.IsTest && possible.Count == MostFailedInTest)
            {
                break;
            }

            var standing = refuted.GetValueOrDefault(offer.Product.Cabinet!) ?? (refuted[offer.Product.Cabinet!] = Refutation.Against(task, offer));
            task.Budget.Spend(SearchBudget.CostOfRefutation(task.Items.Count));
            if (standing.Any(f => f.Severity == Severity.Error))
            {
                search.Against.Add((offer, standing));
            }
            else
            {
                possible.Add((offer, Trial.WarningsIn(standing)));
            }
        }

        var maker = new TrialMaker(task, checker, cancellation);
        List<Trial> found = [];
        var failed = new FailedRacks(task);

        // Cabinets in which a warning stands whatever is chosen come last.
        foreach (var (offer, warnings) in possible.OrderBy(p => p.Warnings))
        {
            cancellation.ThrowIfCancellationRequested();
            var isEnough = found.Count >= (task.IsTest ? 1 : most + (task.IsBrief ? 1 : MostFurther))
                || (found.Count >= most && found.Any(t => t.ProductWarnings <= warnings));
            if ((isEnough && !MayCostLess(task, found, offer))
                || search.Failed.Count >= MostFailures(task)
                || (task.IsBrief && search.Failed.Exists(FailedRacks.FitsCabinet))
                || (found.Count + search.Failed.Count > 0 && !IsFirstClosedOne(search.Failed, offer) && !task.Budget.Allows()))
            {
                search.Open.Add((offer, warnings));
                continue;
            }

            // Another cabinet of the same height leaves a console as high as it is.
            if (task.PassesOver?.Invoke(offer) == true
                || (task.IsBrief && found.Exists(t => t.Offer.HeightU == offer.HeightU && t.ProductWarnings > 0 && LacksHeight(t)))
                || (task is { IsTest: false, IsThorough: false } && failed.SpeakAgainst(offer)))
            {
                search.Open.Add((offer, warnings));
                continue;
            }

            var trial = maker.Make(offer);
            var isSound = IsSound(task, trial);
            if (!trial.IsRefuted)
            {
                search.Open.Add((offer, isSound ? trial.ProductWarnings : warnings));
            }

            (isSound ? found : search.Failed).Add(trial);
            if (!isSound)
            {
                failed.Add(trial);
            }
        }

        var variants = new Variants(task, maker);
        if (task is { IsTest: false, Context.SeeksLowestCost: true } && Cheapest(found) is { } cheapest)
        {
            found.AddRange(variants.Cheaper(cheapest));
        }

        var mayVary = most > 1 && task is { IsTest: false, IsBrief: false };

        // Where there is any other, no rack has a PDU to order that feeds nothing.
        var alternatives = new Alternatives<Trial>(most, static t => [t]);
        foreach (var trial in found.OrderBy(t => !task.IsBasket && t.HasIdleUnit).ThenBy(t => t.ProductWarnings)
            .ThenBy(t => task.Context.SeeksLowestCost ? RackCost.Of(t).Amount : 0)
            .ThenBy(t => Array.IndexOf(offers, t.Offer)))
        {
            if (!alternatives.IsFull && (!alternatives.All.Any() || task.IsBasket || !trial.HasIdleUnit))
            {
                alternatives.Add(mayVary ? variants.WithFewerUnits(trial) : trial);
            }
        }

        if (mayVary && !task.Context.SeeksLowestCost && alternatives.All.FirstOrDefault() is { } first)
        {
            variants.Add(first, alternatives);
        }

        search.Found.AddRange(alternatives.All);
        search.LowerWarnings(search.Found);
        return search;
    }

    /// <summary>The least unsafe rack with the fewest errors of those that hold everything, in the preferred cabinet; null if there is none.</summary>
    public Trial? LeastFaulty => Failed.Where(t => !t.NotPlaced.Any()).MinBy(t => t.Unsoundness);

    /// <summary>Height of shelves and other parts on the front that the equipment needs, U: the least of the racks that did not take everything.</summary>
    public int LeastAddedU(ProposalTask task) =>
        Failed.Where(t => t.NotPlaced.Any()).Select(t => t.UsedU - task.ItemsU).DefaultIfEmpty().Min();

    // Where the only rack so far wants a closed cabinet, one is tried in any case.
    private static bool IsFirstClosedOne(List<Trial> failed, CabinetOffer offer) =>
        failed is [var only] && FailedRacks.WantsClosedCabinet(only) && !FailedRacks.LetsAirThrough(offer.Product.Cabinet!);

    // Other parts may have left fewer warnings than the first rack in a cabinet had.
    private void LowerWarnings(IEnumerable<Trial> trials)
    {
        foreach (var trial in trials)
        {
            var at = Open.FindIndex(o => o.Offer == trial.Offer);
            Open[at] = (trial.Offer, Math.Min(Open[at].Warnings, trial.ProductWarnings));
        }
    }

    private static Trial? Cheapest(List<Trial> found) => found.OrderBy(t => t.ProductWarnings).ThenBy(t => RackCost.Of(t).Amount).FirstOrDefault();

    // A cabinet may cost less than what was found with all its parts.
    private static bool MayCostLess(ProposalTask task, List<Trial> found, CabinetOffer offer) =>
        task is { IsTest: false, Context.SeeksLowestCost: true } && task.LeastCostOf(offer) < found.Min(t => RackCost.Of(t).Amount);

    private static bool LacksHeight(Trial trial) =>
        trial.Found.Findings.Where(Trial.IsProductWarning).All(f => f.Rule == RuleChecks.IdOf<ConsoleHeight>());

    private static int MostFailures(ProposalTask task) =>
        task.IsTest ? MostFailedInTest : task.IsBrief ? MostFailedInBrief : task.IsThorough ? int.MaxValue : MostFailed;

    /// <summary>Whether a rack may be proposed.</summary>
    public static bool IsSound(ProposalTask task, Trial trial) =>
        trial.Faults.Errors == 0 && task.IsKeptIn(trial.Rack) && task.HasRoomToGrow(trial);
}
