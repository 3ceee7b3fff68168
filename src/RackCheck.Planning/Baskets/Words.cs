using static System.FormattableString;

namespace RackCheck.Planning.Baskets;

/// <summary>Parts of sentences.</summary>
internal static class Words
{
    private const int MostNames = 4;

    /// <summary>Names in a sentence; of many the first few.</summary>
    /// <param name="names">The names, one at least.</param>
    /// <returns>As "a, b and 3 more", in order of names.</returns>
    public static string List(IEnumerable<string> names)
    {
        string[] all = [.. names.Distinct().Order(StringComparer.Ordinal)];
        return all.Length switch
        {
            1 => all[0],
            <= MostNames => string.Join(", ", all[..^1]) + " and " + all[^1],
            _ => Invariant($"{string.Join(", ", all[..(MostNames - 1)])} and {all.Length - MostNames + 1} more"),
        };
    }

    /// <summary>The verb for one or for several.</summary>
    /// <param name="count">How many.</param>
    /// <param name="one">The verb for one.</param>
    /// <param name="several">The verb for several.</param>
    /// <returns>The one that agrees.</returns>
    public static string Verb(int count, string one, string several) => count == 1 ? one : several;
}
