using RackCheck.Model;
using RackCheck.Rules;

namespace RackCheck.Planning;

/// <summary>Leaves in a report only remedies that were tried: the finding is gone, and no new error is there.</summary>
/// <param name="checker">Checks each patched description.</param>
public sealed class RemedyVerifier(RackChecker checker)
{
    private readonly RemedyTrial trial = new(checker);

    /// <summary>Tries every remedy of a report.</summary>
    /// <param name="description">The description that the report is on.</param>
    /// <param name="report">The report.</param>
    /// <param name="cancellation">Stops between two rules of a check.</param>
    /// <returns>The report without the remedies that did not help.</returns>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public CheckReport Verify(RackDescription description, CheckReport report, CancellationToken cancellation = default) => report with
    {
        Findings = [.. report.Findings.Select(finding => finding with { Remedies = [.. finding.Remedies.Where(r => Helps(description, report, finding, r, cancellation))] })],
    };

    private bool Helps(RackDescription description, CheckReport report, Finding finding, Remedy remedy, CancellationToken cancellation) =>
        trial.Run(description, remedy, cancellation) is var (_, after) && RemedyTrial.Helps(finding, report, after);
}
