using RackCheck.Model;
using RackCheck.Remedies.Patches;
using RackCheck.Remedies.Verification;
using RackCheck.Rules;

namespace RackCheck.Planning.Proposals;

/// <summary>
/// Applies the remedies that a report offers for errors and warnings, as long as they leave the request, the cabinet and the catalogue as they
/// are: positions, connections, what a UPS feeds, the place of the uprights.
/// </summary>
internal static class RemedyChoice
{
    private const int MostSteps = 12;
    private const double WorkOfFew = 300;

    /// <summary>Applies remedies one after the other. Each reduces the number of errors, or of warnings without a further error.</summary>
    public static Trial Apply(ProposalTask task, Trial trial, RackChecker checker, CancellationToken cancellation)
    {
        for (var step = 0; step < MostSteps && (task.IsTest ? trial.Faults.Errors > 0 : trial.Faults != (0, 0)) && task.Budget.Allows(); step++)
        {
            if (Next(task, trial, checker, cancellation) is not { } better)
            {
                break;
            }

            trial = better;
        }

        return trial;
    }

    private static Trial? Next(ProposalTask task, Trial trial, RackChecker checker, CancellationToken cancellation)
    {
        var trials = new TrialBudget(task.IsTest || task.IsBrief ? WorkOfFew : RemedyTrials.MostWork);
        var report = checker.CheckWithin(trial.Resolved, trials, after => IsFree(task, trial, after), cancellation);
        var size = SearchBudget.SizeOf(trial.Rack);
        task.Budget.Spend(SearchBudget.CostOfRemedies(trials.Used) + SearchBudget.CostOfCheck(size));
        foreach (var remedy in report.Findings.Where(f => f is { Accepted: null, SignedOff: null, Severity: not Severity.Advice }).SelectMany(f => f.Remedies))
        {
            if (!task.Budget.Allows())
            {
                return null;
            }

            var next = trial.Resolved.With(RackPatch.Apply(trial.Resolved.Posted, remedy));
            var after = trial with { Resolved = next, Found = checker.Find(next, cancellation) };
            task.Budget.Spend(SearchBudget.CostOfCheck(size));
            if (task.FaultsOf(after).CompareTo(task.FaultsOf(trial)) < 0)
            {
                return after;
            }
        }

        return null;
    }

    // Whether a change leaves the request, the cabinet and the catalogue as they are. Its lists and records that did not change are those of the rack.
    private static bool IsFree(ProposalTask task, Trial trial, RackDescription after)
    {
        var before = trial.Rack;
        if (after.Items.Count != before.Items.Count || Rest(after) != Rest(before) || !task.IsKeptIn(after))
        {
            return false;
        }

        for (var i = 0; i < before.Items.Count; i++)
        {
            if (!ReferenceEquals(after.Items[i], before.Items[i]) && Fixed(after.Items[i]) != Fixed(before.Items[i]))
            {
                return false;
            }
        }

        return AreUnits(before.Pdus ?? [], after.Pdus ?? []);

        RackDescription Rest(RackDescription rack) => rack with
        {
            Items = [],
            Pdus = null,
            Connections = task.Request.Connections is null ? null : rack.Connections,
            Cabinet = WithoutPlace(rack.Cabinet!),
        };

        // Of a cabinet of the catalogue only the place of the uprights is free.
        Cabinet WithoutPlace(Cabinet cabinet) => !task.MaySetUprights(cabinet.PartNumber) ? cabinet
            : cabinet with
            {
                Uprights = cabinet is { PartNumber: not null, Uprights: { } own } ? own with { FrontSetbackMm = null, SpacingMm = null } : null,
            };

        Item Fixed(Item item) => item with
        {
            Position = null,
            OnShelf = null,
            Support = HasOpenSupport(trial, item) ? null : item.Support,
            Ups = item.Ups is { } ups ? ups with { Feeds = null } : null,
        };

        bool AreUnits(IReadOnlyList<Pdu> ours, IReadOnlyList<Pdu> theirs) => task.Request.Pdus is null
            ? ours.Select(u => u with { Supply = "", Position = null }).SequenceEqual(theirs.Select(u => u with { Supply = "", Position = null }))
            : ours.SequenceEqual(theirs);
    }

    // Slides of the customer, of which no data is known yet.
    private static bool HasOpenSupport(Trial trial, Item item) =>
        item is { PartNumber: null, Support.RatedKg: null } && trial.Completed.RackBuild.Items.Exists(b => b.Id == item.Id && b.Rails is null);
}
