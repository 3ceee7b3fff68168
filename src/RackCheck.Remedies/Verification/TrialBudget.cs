namespace RackCheck.Remedies.Verification;

/// <summary>The remaining trials of a request, counted in checks of a rack of the usual size.</summary>
/// <param name="trials">Trials at the start, 0 or more.</param>
public sealed class TrialBudget(double trials)
{
    private double left = trials;

    /// <summary>Work of the trials taken so far.</summary>
    public double Used { get; private set; }

    /// <summary>Whether a trial was refused.</summary>
    public bool IsExhausted { get; private set; }

    /// <summary>Takes a trial.</summary>
    /// <param name="cost">Its cost, by <see cref="RemedyTrials.CostOf"/>.</param>
    /// <returns>Whether it is permitted.</returns>
    public bool Spend(double cost)
    {
        left -= cost;
        IsExhausted |= left < 0;
        Used += left < 0 ? 0 : cost;
        return left >= 0;
    }
}
