using RackCheck.Model;
using RackCheck.Rules;

namespace RackCheck.Planning.Proposals;

/// <summary>
/// Turns equipment into racks: tries the allowed cabinets from the preferred one on, completes a rack in each, applies remedies of errors and
/// keeps the racks without an open error. The same request gives the same answer.
/// </summary>
/// <param name="checker">Checks each rack; only its report decides whether the rack is proposed.</param>
public sealed class ProposalPlanner(RackChecker checker)
{
    /// <summary>Maximum number of racks in an answer.</summary>
    public const int MostAlternatives = 3;

    // Cabinets tried after the first rack was found.
    private const int MostFurther = 2;

    /// <summary>Plans a request.</summary>
    /// <param name="request">A valid request.</param>
    /// <param name="products">Products of its part numbers.</param>
    /// <param name="offered">Products on offer.</param>
    /// <param name="cancellation">Stops between two steps.</param>
    /// <returns>The racks, or the conflict.</returns>
    public ProposalAnswer Plan(
        ProposalRequest request, IReadOnlyDictionary<string, Product> products, IReadOnlyList<Product> offered, CancellationToken cancellation = default)
    {
        var task = new ProposalTask(request, products, offered);
        var offers = CabinetOffer.Of(request, task.Products, offered);
        if (ProposalConflicts.BeforeTrial(task, offers) is { } early)
        {
            return new ProposalAnswer { Reference = request.Reference, Alternatives = [], Conflict = early };
        }

        CabinetOffer[] high = [.. offers.Where(c => c.HeightU >= task.WithGrowth(task.ItemsU))];
        var (found, failed, further) = (new List<Trial>(), new List<Trial>(), 0);
        foreach (var offer in high)
        {
            cancellation.ThrowIfCancellationRequested();
            if (found.Count == MostAlternatives || further == MostFurther)
            {
                break;
            }

            further += found.Count > 0 ? 1 : 0;
            var trial = Trial.Make(task, offer, checker, cancellation);
            if (!IsSound(task, trial))
            {
                failed.Add(trial);
            }
            else if (found.Count == 0 || TradeOffs.Of(trial, found[0]).Gained.Count > 0)
            {
                found.Add(trial);
            }
        }

        return new ProposalAnswer
        {
            Reference = request.Reference,
            Alternatives =
            [
                .. found.Select((trial, index) => Propose(
                    task, high, trial, checker.Check(trial.Resolved, cancellation), index > 0 ? found[0] : found.ElementAtOrDefault(1))),
            ],
            Conflict = found.Count > 0 ? null : ProposalConflicts.AfterTrial(task, failed),
        };
    }

    private static bool IsSound(ProposalTask task, Trial trial) =>
        !trial.Errors.Any()
        && !trial.NotPlaced.Any()
        && task.IsKeptIn(trial.Rack)
        && task.WithGrowth(trial.Space.UsedU) <= trial.Offer.HeightU;

    private static ProposedRack Propose(ProposalTask task, CabinetOffer[] high, Trial trial, CheckReport report, Trial? other)
    {
        var (gained, givenUp) = other is null ? ([], []) : TradeOffs.Of(trial, other);
        return new ProposedRack
        {
            Rack = trial.Rack,
            Report = report,
            Gained = gained,
            GivenUp = [.. givenUp, .. trial.Unmet.Select(u => $"{u.What} is not on offer. {u.Reason}")],
            AddedLines = trial.Lines,
            Objective = Objectives.Of(trial.Offer, high, trial.Space, task.ItemsU, task.Request.Prefer ?? CabinetPreference.LowestHeight),
            Assumptions = trial.Assumptions,
        };
    }
}
