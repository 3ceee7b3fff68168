using System.Runtime.InteropServices;
using RackCheck.Model;
using RackCheck.Survey.Assumed;

namespace RackCheck.Rules;

/// <summary>Merges assumed values of one kind into one assumption with several pointers.</summary>
internal static class AssumptionList
{
    /// <summary>The assumptions of a report: by their first pointer, then the ranges.</summary>
    /// <param name="values">The assumed values, by pointer.</param>
    /// <param name="ranges">The ranges over which rules were assessed.</param>
    public static IReadOnlyList<Assumption> Merge(IReadOnlyList<AssumedValue> values, IEnumerable<Assumption> ranges)
    {
        var groups = new List<(AssumedValue Value, List<string> Pointers)>();
        foreach (var value in values)
        {
            if (PointersLike(groups, value) is { } pointers)
            {
                pointers.Add(value.Pointer);
            }
            else
            {
                groups.Add((value, [value.Pointer]));
            }
        }

        return
        [
            .. groups.Select(g => new Assumption
            {
                Pointers = g.Pointers, Value = g.Value.Value, ValueKey = g.Value.ValueWording?.Key, ValueData = g.Value.ValueWording?.Values,
                Unit = g.Value.Unit, Basis = g.Value.Basis.Text, BasisKey = g.Value.Basis.Key, BasisData = g.Value.Basis.Values,
            }),
            .. ranges,
        ];
    }

    private static List<string>? PointersLike(List<(AssumedValue Value, List<string> Pointers)> groups, in AssumedValue value)
    {
        foreach (ref readonly var group in CollectionsMarshal.AsSpan(groups))
        {
            if (IsSameKind(group.Value, value))
            {
                return group.Pointers;
            }
        }

        return null;
    }

    private static bool IsSameKind(in AssumedValue one, in AssumedValue other) =>
        MemberOf(one.Pointer).SequenceEqual(MemberOf(other.Pointer)) && one.Unit == other.Unit && one.Value == other.Value && one.Basis.IsSame(other.Basis);

    private static ReadOnlySpan<char> MemberOf(string pointer) => pointer.AsSpan(pointer.LastIndexOf('/'));
}
