using RackCheck.Model;
using RackCheck.Rules;
using RackCheck.Rules.Catalogue;

namespace RackCheck.Planning;

/// <summary>Leaves in a report only remedies that were tried: the finding is gone, and no new error is there.</summary>
/// <param name="checker">Checks each patched description.</param>
public sealed class RemedyVerifier(RackChecker checker)
{
    /// <summary>Said where a rack has more remedies than are tried for one request.</summary>
    public static readonly string NotAllTried = FormattableString.Invariant($"Only the first {RemedyTrial.Most} remedies were tried; the others are left out.");

    /// <summary>Said of a finding whose remedies were all left out.</summary>
    public const string NoneHeld = "What might mend it was tried, and did not clear it or brought another error.";

    /// <summary>Tries every remedy of a report.</summary>
    /// <param name="rack">The rack that the report is on.</param>
    /// <param name="report">The report.</param>
    /// <param name="cancellation">Stops between two rules of a check.</param>
    /// <returns>The report without the remedies that did not help.</returns>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public CheckReport Verify(ResolvedRack rack, CheckReport report, CancellationToken cancellation = default)
    {
        var trial = new RemedyTrial(checker);
        bool Helps(Finding finding, Remedy remedy) => trial.Run(rack, remedy, cancellation) is var (_, after) && RemedyTrial.Helps(finding, report, after);

        Finding Verified(Finding finding)
        {
            Remedy[] held = [.. finding.Remedies.Where(r => Helps(finding, r))];
            return finding with { Remedies = held, NoRemedy = held.Length == 0 ? finding.NoRemedy ?? NoneHeld : null };
        }

        Finding[] findings = [.. report.Findings.Select(Verified)];
        return report with
        {
            Findings = findings,
            Cautions = trial.IsExhausted ? [.. report.Cautions, NotAllTried] : report.Cautions,
        };
    }
}
