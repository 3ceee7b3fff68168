namespace RackCheck.Survey.Power;

/// <summary>
/// The steps that the search for outlets may take: one for each outlet that it compares for a cord. It is a count, not a time, so that the same
/// description has the same assignment on every machine.
/// </summary>
/// <remarks>A rack of 30 cords takes some hundreds; one of 40 that only just fit 100,000. The largest request would take millions.</remarks>
internal sealed class SearchAllowance
{
    /// <summary>Steps for one rack. Comparing each cord with each outlet once is always done and takes at most 2.5 million for the largest request.</summary>
    public const long MostSteps = 2_000_000;

    /// <summary>Steps taken.</summary>
    public long Taken { get; private set; }

    /// <summary>Whether nothing is left, so that what there is stands.</summary>
    public bool IsSpent => Taken >= MostSteps;

    /// <summary>Takes steps.</summary>
    /// <param name="steps">Number of steps, 0 or more.</param>
    public void Take(int steps) => Taken += steps;
}
