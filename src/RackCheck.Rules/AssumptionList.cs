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
            var at = groups.FindIndex(g => IsSameKind(g.Value, value));
            if (at < 0)
            {
                groups.Add((value, [value.Pointer]));
            }
            else
            {
                groups[at].Pointers.Add(value.Pointer);
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

    private static bool IsSameKind(in AssumedValue one, in AssumedValue other) =>
        one.Unit == other.Unit && one.Value == other.Value && MemberOf(one.Pointer).SequenceEqual(MemberOf(other.Pointer)) && one.Basis.IsSame(other.Basis);

    private static ReadOnlySpan<char> MemberOf(string pointer) => pointer.AsSpan(pointer.LastIndexOf('/'));
}
