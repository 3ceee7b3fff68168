using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Rules.Loads;

/// <summary>The calculation of masses and moments, with numbers.</summary>
internal static class LoadText
{
    /// <summary>The sum of masses in kg, equal masses grouped, heaviest first, as "8 x 40 + 3".</summary>
    public static string Sum(IEnumerable<MountedItem> items, double? more = null)
    {
        var terms = items.Select(i => Quantities.Round(i.Item!.MassKg ?? 0)).Where(m => m > 0)
            .GroupBy(m => m).OrderByDescending(g => g.Key)
            .Select(g => g.Count() == 1 ? Invariant($"{g.Key:0.###}") : Invariant($"{g.Count()} x {g.Key:0.###}"));
        return string.Join(" + ", more is > 0 ? terms.Append(Invariant($"{more:0.###}")) : terms);
    }

    /// <summary>The name of an edge: front, rear, left or right.</summary>
    public static string Of(SupportSide side) => side switch
    {
        SupportSide.Front => "front",
        SupportSide.Rear => "rear",
        SupportSide.Left => "left",
        _ => "right",
    };
}
