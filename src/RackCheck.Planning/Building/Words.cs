using System.Globalization;

namespace RackCheck.Planning.Building;

/// <summary>Order of ids in messages.</summary>
public static class Words
{
    /// <summary>Order of the ids of a rack. Ids of one product sort by number, so that 2 comes before 10.</summary>
    public static IComparer<string> ById { get; } = Comparer<string>.Create(static (one, other) =>
    {
        var (dash, number) = NumberOf(one);
        var (otherDash, otherNumber) = NumberOf(other);
        var stem = one.AsSpan(0, dash).SequenceCompareTo(other.AsSpan(0, otherDash));
        return stem != 0 ? stem : number != otherNumber ? number.CompareTo(otherNumber) : string.CompareOrdinal(one, other);
    });

    // RackBuild.IdFor makes ids: a part number, a dash, a number.
    private static (int Dash, int Number) NumberOf(string id)
    {
        var dash = id.LastIndexOf('-');
        return dash > 0 && int.TryParse(id.AsSpan(dash + 1), NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? (dash, number) : (id.Length, 0);
    }
}
