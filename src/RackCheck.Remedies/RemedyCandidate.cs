using RackCheck.Model;

namespace RackCheck.Remedies;

/// <summary>
/// A change of the rack that may clear a finding. The pipeline tests it first: only a change that clears the finding and causes no
/// new error becomes a remedy. A rule writes the usual changes, best first, and needs no knowledge of other rules.
/// </summary>
/// <param name="Title">Title of the change, in plain words.</param>
/// <param name="After">The description after the change.</param>
/// <param name="Kind">Candidates of one kind are one measure in growing size: only the first that works is offered. Null for a kind of its own.</param>
/// <param name="IsLastResort">Whether it is expensive or indirect and is tested only if no earlier candidate works.</param>
public sealed record RemedyCandidate(WordedText Title, RackDescription After, string? Kind = null, bool IsLastResort = false);

/// <summary>Puts candidates one after another.</summary>
public static class RemedyCandidates
{
    /// <summary>Candidates, and a last one that is made when it is reached: most are not, since trials and ranges read no candidates.</summary>
    /// <param name="first">Candidates, best first.</param>
    /// <param name="last">Makes the last one.</param>
    /// <returns>All of them.</returns>
    public static IEnumerable<RemedyCandidate> Then(this IEnumerable<RemedyCandidate> first, Func<RemedyCandidate> last)
    {
        foreach (var candidate in first)
        {
            yield return candidate;
        }

        yield return last();
    }
}
