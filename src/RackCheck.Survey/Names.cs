using System.Globalization;

namespace RackCheck.Survey;

/// <summary>Ids as sentences and titles list them.</summary>
public static class Names
{
    private const int MostNamed = 4;

    /// <summary>Lists ids.</summary>
    /// <param name="ids">The ids, one at least, in the order in which they are to stand.</param>
    /// <param name="others">What they are, in the plural, where not all are named.</param>
    /// <returns>As "a", "a and b", "a, b and c", or the first and how many more.</returns>
    public static string List(IReadOnlyList<string> ids, string others = "items") =>
        ids.Count == 1 ? ids[0]
        : ids.Count <= MostNamed ? $"{string.Join(", ", ids.Take(ids.Count - 1))} and {ids[^1]}"
        : string.Create(CultureInfo.InvariantCulture, $"{ids[0]} and {ids.Count - 1} other {others}");

    /// <summary>A word with its article.</summary>
    /// <param name="word">A word or a code, as "IEC60309-16A-1P".</param>
    /// <returns>As "an IEC60309-16A-1P" or "a C14".</returns>
    public static string WithArticle(string word) => (word[0] is 'I' ? "an " : "a ") + word;

    /// <summary>The title of a cure that gives items to another rack.</summary>
    /// <param name="ids">Ids of the items, one at least.</param>
    /// <returns>The title.</returns>
    public static string ToAnotherRack(IReadOnlyList<string> ids) => $"Move {List(ids)} to another rack";
}
