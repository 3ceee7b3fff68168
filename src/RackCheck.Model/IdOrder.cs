using System.Globalization;

namespace RackCheck.Model;

/// <summary>Orders ids as a person does: those of one name by their number, so that srv-2 comes before srv-10 and u2 before u10.</summary>
public sealed class IdOrder : IComparer<string>
{
    // What has more digits counts as a name: it may be greater than an int.
    private const int MostDigits = 9;

    private IdOrder()
    {
    }

    /// <summary>The one instance.</summary>
    public static IdOrder Instance { get; } = new();

    /// <inheritdoc/>
    public int Compare(string? x, string? y)
    {
        ReadOnlySpan<char> one = x, other = y;
        var ((stem, number), (otherStem, otherNumber)) = (Split(one), Split(other));
        var byStem = one[..stem].SequenceCompareTo(other[..otherStem]);
        return byStem != 0 ? byStem : number != otherNumber ? number.CompareTo(otherNumber) : one.SequenceCompareTo(other);
    }

    // Length of the name, and the number after it; -1 without one, so that it comes before those with one.
    private static (int Stem, int Number) Split(ReadOnlySpan<char> id)
    {
        var stem = id.TrimEnd("0123456789").Length;
        return id.Length - stem is > 0 and <= MostDigits
            ? (id[..stem].TrimEnd('-').Length, int.Parse(id[stem..], NumberStyles.None, CultureInfo.InvariantCulture))
            : (id.Length, -1);
    }
}
