using RackCheck.Model;
using static System.FormattableString;

namespace RackCheck.Survey;

/// <summary>Ids: how sentences and titles list them, and new ones.</summary>
public static class Names
{
    // The contract allows 64 characters; a dash and a number follow.
    private const int MostStem = 56;

    /// <summary>Lists names for a sentence; a long list is cut.</summary>
    /// <param name="names">The names, at least one, in the order in which they are to appear.</param>
    /// <returns>"a", "a and b", "a, b and c", or "a, b, c and 3 more".</returns>
    public static string List(IReadOnlyList<string> names) => Lists.Short(names);

    /// <summary>Lists phrases for a sentence, all of them.</summary>
    /// <param name="phrases">The phrases, at least one.</param>
    /// <returns>"a", "a and b" or "a, b and c".</returns>
    public static string And(IReadOnlyList<string> phrases) => Lists.All(phrases);

    /// <summary>The ids of a message or a title, 2 before 10.</summary>
    /// <param name="ids">The ids, in any order.</param>
    public static Scalar Ids(IEnumerable<string> ids) => Scalar.Ids(ids.Order(IdOrder.Instance));

    /// <summary>An id that is not used yet.</summary>
    /// <param name="wanted">The preferred id.</param>
    /// <param name="used">Ids in use.</param>
    /// <returns>The preferred id, or the id with the first free number from 2, within the length that the contract allows.</returns>
    public static string FreeId(string wanted, IEnumerable<string> used)
    {
        var taken = new HashSet<string>(used, StringComparer.Ordinal);
        var stem = wanted.Length > MostStem ? wanted[..MostStem] : wanted;
        var id = wanted;
        for (var number = 2; taken.Contains(id); number++)
        {
            id = Invariant($"{stem}-{number}");
        }

        return id;
    }
}
