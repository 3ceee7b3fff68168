using System.Globalization;
using static System.FormattableString;

namespace RackCheck.Planning.Baskets;

/// <summary>Parts of sentences.</summary>
internal static class Words
{
    private const int MostNames = 4;

    /// <summary>Order of the ids of a rack: those of one product by their number, so that the second stands before the tenth.</summary>
    public static IComparer<string> ById { get; } = Comparer<string>.Create(static (one, other) =>
    {
        var (dash, number) = NumberOf(one);
        var (otherDash, otherNumber) = NumberOf(other);
        var stem = one.AsSpan(0, dash).SequenceCompareTo(other.AsSpan(0, otherDash));
        return stem != 0 ? stem : number != otherNumber ? number.CompareTo(otherNumber) : string.CompareOrdinal(one, other);
    });

    /// <summary>Names in a sentence; of many the first few.</summary>
    /// <param name="names">The names, one at least.</param>
    /// <returns>As "a, b and 3 more", in order of names.</returns>
    public static string List(IEnumerable<string> names)
    {
        string[] all = [.. names.Distinct().Order(ById)];
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

    /// <summary>Several things in a sentence.</summary>
    /// <param name="things">The things, one at least, in the order in which they are to stand.</param>
    /// <returns>As "a, b and c".</returns>
    public static string And(IReadOnlyList<string> things) => things.Count == 1 ? things[0] : $"{string.Join(", ", things.Take(things.Count - 1))} and {things[^1]}";

    // Bay.IdFor makes ids: a part number, a dash, a number.
    private static (int Dash, int Number) NumberOf(string id)
    {
        var dash = id.LastIndexOf('-');
        return dash > 0 && int.TryParse(id.AsSpan(dash + 1), NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? (dash, number) : (id.Length, 0);
    }
}
