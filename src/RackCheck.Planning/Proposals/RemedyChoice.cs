using System.Text.Json;
using RackCheck.Model;
using RackCheck.Model.Json;
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
        var trials = new TrialBudget(task.IsTest || task.IsBasket ? WorkOfFew : RemedyTrials.MostWork);
        var report = checker.CheckWithin(trial.Resolved, trials, cancellation);
        var size = SearchBudget.SizeOf(trial.Rack);
        task.Budget.Spend(SearchBudget.CostOfRemedies(trials.Used) + SearchBudget.CostOfCheck(size));
        foreach (var remedy in report.Findings.Where(f => f is { Accepted: null, SignedOff: null, Severity: not Severity.Advice }).SelectMany(f => f.Remedies))
        {
            var next = trial.Resolved.With(RackPatch.Apply(trial.Resolved.Posted, remedy));
            if (task.IsKeptIn(next.Posted) && Frozen(task, trial, trial.Rack) == Frozen(task, trial, next.Posted))
            {
                if (!task.Budget.Allows())
                {
                    return null;
                }

                var after = trial with { Resolved = next, Found = checker.Find(next, cancellation) };
                task.Budget.Spend(SearchBudget.CostOfCheck(size));
                if (after.Faults.CompareTo(trial.Faults) < 0)
                {
                    return after;
                }
            }
        }

        return null;
    }

    // What a remedy may not change, as text.
    private static string Frozen(ProposalTask task, Trial trial, RackDescription rack) => JsonSerializer.Serialize(
        rack with
        {
            Items =
            [
                .. rack.Items.Select(i => i with
                {
                    Position = null,
                    OnShelf = null,
                    Support = HasOpenSupport(trial, i) ? null : i.Support,
                    Ups = i.Ups is { } ups ? ups with { Feeds = null } : null,
                }),
            ],
            Pdus = task.Request.Pdus is null ? [.. (rack.Pdus ?? []).Select(u => u with { Supply = "", Position = null })] : rack.Pdus,
            Connections = task.Request.Connections is null ? null : rack.Connections,
            Cabinet = rack.Cabinet!.PartNumber is null ? rack.Cabinet with { Uprights = null } : rack.Cabinet,
        },
        ContractJson.Default.RackDescription);

    // Slides of the customer, of which no data is known yet.
    private static bool HasOpenSupport(Trial trial, Item item) =>
        item is { PartNumber: null, Support.RatedKg: null } && trial.Completed.RackBuild.Items.Exists(b => b.Id == item.Id && b.Rails is null);
}
