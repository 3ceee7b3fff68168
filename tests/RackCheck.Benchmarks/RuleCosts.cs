using System.Diagnostics;
using System.Globalization;
using RackCheck.Rules;
using RackCheck.Survey;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Benchmarks;

/// <summary>Prints what the survey and each rule cost on the dearest requests.</summary>
internal static class RuleCosts
{
    /// <summary>Prints the dearest rules of each request.</summary>
    public static void Print()
    {
        foreach (var (name, rack) in WorstRequests.All)
        {
            var resolved = ResolvedRack.Plain(rack);
            var all = new RackChecker(RuleSet.Default, (_, _) => { });
            var whole = Time(() => all.Recheck(resolved));
            var survey = Time(() => _ = new RackSurvey(resolved));
            var rules = RuleSet.Default.RackRules.Select(r =>
            {
                var checker = new RackChecker(RuleSet.Of(r), (_, _) => { });
                return (r.Descriptor.Id, Ms: Time(() => checker.Recheck(resolved)) - survey);
            }).OrderByDescending(r => r.Ms).Take(4);
            var dearest = string.Join(", ", rules.Select(r => FormattableString.Invariant($"{r.Id} {r.Ms:0.0}")));
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name}: whole {whole:0.0} ms, survey {survey:0.0} ms; {dearest}"));
        }
    }

    private static double Time(Action work)
    {
        for (var i = 0; i < 5; i++)
        {
            work();
        }

        var best = double.PositiveInfinity;
        for (var i = 0; i < 3; i++)
        {
            var watch = Stopwatch.StartNew();
            work();
            best = Math.Min(best, watch.Elapsed.TotalMilliseconds);
        }

        return best;
    }
}
