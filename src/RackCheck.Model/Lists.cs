using System.Globalization;

namespace RackCheck.Model;

/// <summary>Lists in sentences.</summary>
public static class Lists
{
    private const int MostNamed = 4;

    /// <summary>Lists names; a long list is cut.</summary>
    /// <param name="names">The names, at least one, in the order in which they are to appear.</param>
    /// <returns>"a", "a and b", "a, b and c", or "a, b, c and 3 more".</returns>
    public static string Short(IReadOnlyList<string> names) => names.Count <= MostNamed
        ? All(names)
        : string.Create(CultureInfo.InvariantCulture, $"{string.Join(", ", names.Take(MostNamed - 1))} and {names.Count - MostNamed + 1} more");

    /// <summary>Lists phrases, all of them.</summary>
    /// <param name="phrases">The phrases, at least one.</param>
    /// <returns>"a", "a and b" or "a, b and c".</returns>
    public static string All(IReadOnlyList<string> phrases) =>
        phrases.Count == 1 ? phrases[0] : $"{string.Join(", ", phrases.Take(phrases.Count - 1))} and {phrases[^1]}";
}
