using RackCheck.Model;
using RackCheck.Rules;
using RackCheck.Rules.Catalogue;
using RackCheck.Rules.Remedies;

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
    /// <param name="rack">The rack that the remedy was given for.</param>
    /// <param name="remedy">The remedy.</param>
    /// <param name="cancellation">Stops the check between two rules.</param>
    /// <returns>The patched rack with its report, in which nobody looked for remedies; null where the patch does not apply, or no more trials are made.</returns>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public (ResolvedRack Patched, CheckReport Report)? Run(ResolvedRack rack, Remedy remedy, CancellationToken cancellation)
    {
        if (IsExhausted)
        {
            return null;
        }

        left--;
        ResolvedRack patched;
        try
        {
            patched = rack.With(RackPatch.Apply(rack.Posted, remedy));
        }
        catch (RackPatchException)
        {
            // A patch that does not apply is a fault of its rule, for its tests to find; here it is a remedy that does not help.
            return null;
        }

        return (patched, checker.Recheck(patched, cancellation));
    }

    /// <summary>Whether a change helps a finding: it is gone, and no error is new.</summary>
    public static bool Helps(Finding finding, CheckReport before, CheckReport after) =>
        CureTrials.Helps(finding, CureTrials.Errors(before.Findings), after.Findings, CureTrials.Errors(after.Findings));
}
