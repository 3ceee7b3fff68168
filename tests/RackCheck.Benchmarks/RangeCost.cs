using System.Diagnostics;
using RackCheck.Rules;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Benchmarks;

/// <summary>Time of the pipeline with and without the ranges of missing facts, in turn in one run, so that a busy machine slows both.</summary>
internal static class RangeCost
{
    private const int Rounds = 400;
    private const int Checks = 20;

    /// <summary>Prints the shortest times: those of rounds that nothing else on the machine interrupted.</summary>
    public static void Print()
    {
        RackChecker with = new(RuleSet.Default, static (_, _) => { }), without = new(RuleSet.Default, static (_, _) => { }) { AssessesRanges = false };
        foreach (var (name, rack) in new[] { ("described in full", Racks.Sound30), ("data sheets only", Racks.Sheet30) })
        {
            var resolved = ResolvedRack.Plain(rack);
            Compare($"{name}, remedies aside", () => with.Recheck(resolved), () => without.Recheck(resolved));
            Compare($"{name}, with remedies", () => with.Check(resolved), () => without.Check(resolved));
            var report = with.Check(rack);
            Console.WriteLine(FormattableString.Invariant($"  {report.Questions.Count} questions, {report.Findings.Count} findings, {report.Verdict}"));
            Console.WriteLine("  " + string.Join(", ", report.VerdictReasons.Select(r => r.Rule ?? r.Question)));
        }
    }

    private static void Compare(string name, Action with, Action without)
    {
        var (ranges, given) = (new double[Rounds], new double[Rounds]);
        for (var i = 0; i < Rounds; i++)
        {
            (ranges[i], given[i]) = (MicrosecondsOf(with), MicrosecondsOf(without));
        }

        var (one, other) = (ranges.Min(), given.Min());
        Console.WriteLine(FormattableString.Invariant($"{name}: {one:0} us with ranges, {other:0} us without, ratio {one / other:0.00}"));
    }

    private static double MicrosecondsOf(Action check)
    {
        var start = Stopwatch.GetTimestamp();
        for (var i = 0; i < Checks; i++)
        {
            check();
        }

        return Stopwatch.GetElapsedTime(start).TotalMicroseconds / Checks;
    }
}
