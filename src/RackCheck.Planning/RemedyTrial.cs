using RackCheck.Model;
using RackCheck.Rules;

namespace RackCheck.Planning;

/// <summary>Tries a remedy: applies its patch to a copy and checks that. One for a request, since it counts: a trial costs a whole check.</summary>
/// <param name="checker">Checks the patched description.</param>
internal sealed class RemedyTrial(RackChecker checker)
{
    /// <summary>Trials of one request. A rack with ten errors takes some tens; only a rack that is wrong all over comes near.</summary>
    public const int Most = 1000;

    private int left = Most;

    /// <summary>Whether no more are made.</summary>
    public bool IsExhausted => left == 0;

    /// <summary>Tries a remedy.</summary>
    /// <param name="description">The description that the remedy was given for.</param>
    /// <param name="remedy">The remedy.</param>
    /// <param name="cancellation">Stops the check between two rules.</param>
    /// <returns>The patched description with its report; null where the patch does not apply, or no more trials are made.</returns>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public (RackDescription Patched, CheckReport Report)? Run(RackDescription description, Remedy remedy, CancellationToken cancellation)
    {
        if (IsExhausted)
        {
            return null;
        }

        left--;
        RackDescription patched;
        try
        {
            patched = RackPatch.Apply(description, remedy);
        }
        catch (RackPatchException)
        {
            // A patch that does not apply is a fault of its rule, for its tests to find; here it is a remedy that does not help.
            return null;
        }

        return (patched, checker.Check(patched, cancellation));
    }

    /// <summary>Whether a finding is gone after its remedy and no error is there that was not there before.</summary>
    /// <param name="finding">The finding.</param>
    /// <param name="before">The report that it is in.</param>
    /// <param name="after">The report after the remedy.</param>
    /// <returns>Whether the remedy helps.</returns>
    public static bool Helps(Finding finding, CheckReport before, CheckReport after) =>
        !after.Findings.Any(f => f.Rule == finding.Rule && f.Fingerprint == finding.Fingerprint)
        && Errors(after).IsSubsetOf(Errors(before));

    // Errors that are accepted count too: a step must not bring one that only happens to be accepted.
    private static HashSet<(string Rule, string Fingerprint)> Errors(CheckReport report) =>
        [.. report.Findings.Where(f => f.Severity == Severity.Error).Select(f => (f.Rule, f.Fingerprint))];
}
