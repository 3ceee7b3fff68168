using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Rules.Earthing;

/// <summary>The calculation of leakage with its values.</summary>
internal static class LeakageText
{
    /// <summary>The sum over cords, as "10 x 0.7 + 0.5 = 7.5".</summary>
    public static string Sum(IEnumerable<Cord> cords, double leakageMa)
    {
        var terms = cords.Where(c => c.LeakageMa > 0)
            .GroupBy(c => Math.Round(c.LeakageMa!.Value, 6))
            .OrderByDescending(g => g.Key)
            .Select(g => g.Count() == 1 ? Invariant($"{g.Key:0.######}") : Invariant($"{g.Count()} x {g.Key:0.######}"))
            .ToArray();
        return terms.Length == 1 && !terms[0].Contains('x', StringComparison.Ordinal)
            ? terms[0]
            : Invariant($"{string.Join(" + ", terms)} = {leakageMa:0.###}");
    }
}
