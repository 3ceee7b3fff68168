using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Remedies.Patches;
using RackCheck.Remedies.Verification;
using RackCheck.Rules;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Planning;

/// <summary>
/// Applies remedies of errors, one at a time, until no error is open or none of the remedies left makes it better. Deterministic: it always
/// takes the first error in the report's order for which a remedy holds. Each step leaves fewer errors than it found, so it ends.
/// </summary>
/// <param name="checker">Checks the description after each step.</param>
/// <remarks>A remedy of a warning or of advice is never applied: whether those are worth a change is the caller's decision.</remarks>
public sealed class RemedyLoop(RackChecker checker)
{
    /// <summary>Most steps taken unless told. A rack of 200 items has fewer errors that stand apart.</summary>
    public const int DefaultMostSteps = 200;

    /// <summary>
    /// Trials of one run, counted in those of a rack of the usual size. Each step takes some; only a rack of hundreds of things that is wrong all
    /// over comes to the end of them.
    /// </summary>
    public const double MostTrials = 2000;

    /// <summary>Said where a run stopped before its end.</summary>
    public const string CutShort = "There is more to mend than is tried for one request: what came of it can be posted again, to go on from there.";

    /// <summary>Runs the loop.</summary>
    /// <param name="rack">The rack, sound.</param>
    /// <param name="mostSteps">Most remedies applied, 0 or more.</param>
    /// <param name="cancellation">Stops the loop between two rules of a check.</param>
    /// <returns>Where it came to rest and what was done.</returns>
    /// <exception cref="ArgumentException">The cabinet, its height, width or depth, or the height of an item is absent.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Negative number of steps.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public RemedyRun Run(ResolvedRack rack, int mostSteps = DefaultMostSteps, CancellationToken cancellation = default)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(mostSteps);
        var steps = new List<RemedyStep>();
        var budget = new TrialBudget(MostTrials);
        var now = rack;
        var (report, next) = checker.CheckForNext(now, budget, cancellation);
        while (next is not null && steps.Count < mostSteps)
        {
            steps.Add(next);
            now = now.With(RackPatch.Apply(now.Posted, next.Remedy));

            // The check of what came of the step.
            if (!budget.Spend(CureTrials.CostOf(now.Description, report.Findings.Count)))
            {
                break;
            }

            (report, next) = checker.CheckForNext(now, budget, cancellation);
        }

        // All remedies are looked for only where it comes to rest.
        report = checker.Check(now, cancellation);
        return new RemedyRun
        {
            Rack = now,
            Report = (budget.IsExhausted || steps.Count == mostSteps) && report.Findings.Any(f => f is { Severity: Severity.Error, Accepted: null, Remedies.Count: > 0 }) ? report with { Cautions = [.. report.Cautions, CutShort] } : report,
            Steps = steps,
        };
    }

    /// <summary>Runs the loop on a description whose part numbers are not looked up.</summary>
    /// <param name="description">The description, sound, with a cabinet and all heights.</param>
    /// <param name="mostSteps">Most remedies applied, 0 or more.</param>
    /// <param name="cancellation">Stops the loop between two rules of a check.</param>
    /// <returns>Where it came to rest and what was done.</returns>
    public RemedyRun Run(RackDescription description, int mostSteps = DefaultMostSteps, CancellationToken cancellation = default) =>
        Run(ResolvedRack.Plain(description), mostSteps, cancellation);
}

/// <summary>Where the remedies came to rest.</summary>
public sealed record RemedyRun
{
    /// <summary>The rack with all steps applied.</summary>
    public required ResolvedRack Rack { get; init; }

    /// <summary>Its description, as it is to be posted.</summary>
    public RackDescription Description => Rack.Posted;

    /// <summary>Its report.</summary>
    public required CheckReport Report { get; init; }

    /// <summary>What was done, in order.</summary>
    public required IReadOnlyList<RemedyStep> Steps { get; init; }
}
