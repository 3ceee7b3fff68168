using RackCheck.Model;
using RackCheck.Remedies.Patches;
using RackCheck.Remedies.Verification;
using RackCheck.Rules;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Planning;

/// <summary>
/// Applies remedies of errors, one at a time, until no error is open or no remaining remedy improves the rack. It is deterministic: it always
/// takes the first error in report order that has a valid remedy. Each step reduces the number of errors, so the loop ends.
/// </summary>
/// <param name="checker">Checks the description after each step.</param>
/// <remarks>
/// Remedies of warnings and advice are never applied, nor such as take items out of the rack. The caller decides whether they are worth a change.
/// </remarks>
public sealed class RemedyLoop(RackChecker checker)
{
    /// <summary>Default maximum number of steps. A rack of 200 items has fewer independent errors.</summary>
    public const int DefaultMostSteps = 200;

    /// <summary>Work of all steps together, in checks of a rack of the usual size.</summary>
    public const double StepsWork = 900;

    /// <summary>Work of the remedies of the final rack, in the same unit.</summary>
    public const double FinalWork = 300;

    /// <summary>Caution of a report whose run stopped at a limit.</summary>
    public static readonly WordedText CutShort = new(
        "caution.correction-cut-short",
        "Correction stopped at the limit for one request; errors with remedies remain. Post the returned rack again to continue.");

    /// <summary>Runs the loop.</summary>
    /// <param name="rack">A valid rack.</param>
    /// <param name="mostSteps">Maximum number of remedies to apply, 0 or more.</param>
    /// <param name="cancellation">Stops the loop between two rules of a check.</param>
    /// <returns>The final rack and the steps applied.</returns>
    /// <exception cref="ArgumentException">The cabinet, its height, width or depth, or the height of an item is missing.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The number of steps is negative.</exception>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    public RemedyRun Run(ResolvedRack rack, int mostSteps = DefaultMostSteps, CancellationToken cancellation = default)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(mostSteps);
        var steps = new List<RemedyStep>();
        var budget = new TrialBudget(StepsWork);
        var now = rack;
        var (report, next) = checker.CheckForNext(now, budget, cancellation);
        while (next is not null && steps.Count < mostSteps)
        {
            steps.Add(next);
            now = now.With(RackPatch.Apply(now.Posted, next.Remedy));
            (report, next) = checker.CheckForNext(now, budget, cancellation);
        }

        // All remedies are searched only for the final rack.
        report = checker.CheckWithin(now, new TrialBudget(FinalWork), cancellation: cancellation);
        var isCutShort = (budget.IsExhausted || steps.Count == mostSteps)
            && report.Findings.Any(f => f is { Severity: Severity.Error, Accepted: null, Remedies: [{ RemovesItems.Count: 0 }, ..] });
        return new RemedyRun
        {
            Rack = now,
            Report = isCutShort ? report with
            {
                Cautions = [.. report.Cautions, CutShort.Text],
                CautionKeys = [.. report.CautionKeys ?? [], CutShort.Keyed],
            } : report,
            Steps = steps,
        };
    }

    /// <summary>Runs the loop on a description without looking up part numbers.</summary>
    /// <param name="description">A valid description with a cabinet and all heights.</param>
    /// <param name="mostSteps">Maximum number of remedies to apply, 0 or more.</param>
    /// <param name="cancellation">Stops the loop between two rules of a check.</param>
    /// <returns>The final rack and the steps applied.</returns>
    public RemedyRun Run(RackDescription description, int mostSteps = DefaultMostSteps, CancellationToken cancellation = default) =>
        Run(ResolvedRack.Plain(description), mostSteps, cancellation);
}

/// <summary>Result of applying remedies.</summary>
public sealed record RemedyRun
{
    /// <summary>The rack with all steps applied.</summary>
    public required ResolvedRack Rack { get; init; }

    /// <summary>Its description, ready to post.</summary>
    public RackDescription Description => Rack.Posted;

    /// <summary>The report on that rack.</summary>
    public required CheckReport Report { get; init; }

    /// <summary>The remedies applied, in order.</summary>
    public required IReadOnlyList<RemedyStep> Steps { get; init; }
}
