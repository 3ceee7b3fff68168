using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Planning.Proposals;
using RackCheck.Rules;
using RackCheck.Testing;

namespace RackCheck.Benchmarks;

/// <summary>Times of proposals for random lists of catalogue equipment, with what was proven.</summary>
/// <remarks>
/// The time on the clock is what a caller waits. On a machine with other work the processor time of the process says more; it includes what the
/// runtime does beside, such as compiling.
/// </remarks>
internal static class ProposalTimes
{
    private const int Lists = 40;
    private const int ListsOfLongSearch = 4;
    private const int Rounds = 5;

    private static readonly string[] Parts =
    [
        "QWL-SRV-110", "QWL-SRV-110", "QWL-SRV-220", "QWL-SW-48", "QWL-PAT-24", "QWL-PAT-24", "QWL-AMP-1", "QWL-AMP-1", "QWL-SYN-1", "QWL-PC-305", "QWL-AMP-2",
    ];

    private static readonly string[] Low =
        ["QWL-SRV-110", "QWL-SRV-110", "QWL-SW-48", "QWL-PAT-24", "QWL-PAT-24", "QWL-AMP-1", "QWL-AMP-1", "QWL-SYN-1", "QWL-KVM-16"];

    private static readonly IReadOnlyList<Product> Products = JsonSerializer.Deserialize(
        File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "Catalogue/products.json")), ContractJson.Default.ProductList)!.Products;

    private static readonly Dictionary<string, Product> ByNumber = Products.ToDictionary(p => p.PartNumber, StringComparer.Ordinal);

    private static readonly ProposalPlanner Planner =
        new(new RackChecker(RuleSet.Default, (rule, fault) => throw new InvalidOperationException(rule.Id, fault)));

    /// <summary>Prints a table, and with a number of solves the memory after them.</summary>
    public static void Print(int solves)
    {
        // The service is compiled ahead of time and answers its examples before it is ready.
        for (var i = 0; i < 20; i++)
        {
            Plan(Request(new Random(i), 15, Parts, 1));
        }

        Console.WriteLine("| items | answered | p50, ms | p95, ms | max, ms "
            + "| processor p50, ms | p95, ms | max, ms | size proven | centre proven | median gap, % |");
        Console.WriteLine("| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        Row("5", 5, Parts, 1, SearchEffort.Quick);
        Row("15", 15, Parts, 1, SearchEffort.Quick);
        Row("40 low ones", 40, Low, 1, SearchEffort.Quick);
        Row("40 over two cabinets", 40, Parts, 2, SearchEffort.Quick);
        Row("15, thorough", 15, Parts, 1, SearchEffort.Thorough);
        Row("40 low ones, thorough", 40, Low, 1, SearchEffort.Thorough);
        for (var i = 1; i <= solves; i++)
        {
            Plan(Request(new Random(i), 15, Parts, 1));
            if (i % Math.Max(1, solves / 4) == 0)
            {
                GC.Collect();
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{i} solves: {Environment.WorkingSet >> 20} MB"));
            }
        }
    }

    /// <summary>Prints the work that the dearest requests take: what was counted, and the processor time of the process.</summary>
    public static void PrintDearest()
    {
        Console.WriteLine("| request | answered | work counted, ms | processor, ms | on the clock, ms | cut |");
        Console.WriteLine("| --- | --- | --- | --- | --- | --- |");

        // The first rounds compile as well, which the service has done ahead of time.
        var rounds = Enumerable.Range(0, Rounds).Select(_ => DearProposals.All.Values.Select(Measured).ToArray()).ToArray();
        foreach (var (index, name) in DearProposals.All.Keys.Index())
        {
            var (answer, spent, clock, processor) = rounds.Select(round => round[index]).MinBy(m => m.Processor);
            var found = answer.Conflict is { } conflict
                ? string.Create(CultureInfo.InvariantCulture, $"conflict of {conflict.Requirements.Count}{(conflict.Proven ? "" : ", not shown minimal")}")
                : string.Create(CultureInfo.InvariantCulture, $"{answer.Alternatives[0].Racks?.Count ?? 1} cabinets");
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"| {name} | {found} | {spent:0} | {processor:0} | {clock:0} | {(answer.Cautions.Count > 0 ? "yes" : "no")} |"));
        }
    }

    private static (ProposalAnswer Answer, double Spent, double Clock, double Processor) Measured(ProposalRequest request)
    {
        var budget = SearchBudget.Of(request.Effort == SearchEffort.Thorough);
        var (watch, before) = (Stopwatch.GetTimestamp(), Environment.CpuUsage.TotalTime);
        var answer = Planner.Plan(request, ByNumber, Products, budget);
        return (answer, budget.Spent, Stopwatch.GetElapsedTime(watch).TotalMilliseconds, (Environment.CpuUsage.TotalTime - before).TotalMilliseconds);
    }

    private static void Row(string name, int count, string[] parts, int most, SearchEffort effort)
    {
        List<double> times = [], processor = [], conflicts = [];
        List<ProposedRack> firsts = [];
        for (var i = 0; i < (effort == SearchEffort.Thorough ? ListsOfLongSearch : Lists); i++)
        {
            var request = Request(new Random(1000 + i), count, parts, most) with { Effort = effort };
            var (watch, before) = (Stopwatch.GetTimestamp(), Environment.CpuUsage.TotalTime);
            var answer = Plan(request);
            var (clock, used) = (Stopwatch.GetElapsedTime(watch).TotalMilliseconds, (Environment.CpuUsage.TotalTime - before).TotalMilliseconds);
            if (answer.Conflict is not null)
            {
                conflicts.Add(used);
                continue;
            }

            times.Add(clock);
            processor.Add(used);
            firsts.AddRange(answer.Alternatives.Take(1));
        }

        var sizes = firsts.Count(f => f.Objective.Where(o => o.Name is ObjectiveName.Cabinets or ObjectiveName.Height).All(o => o.Proven));
        ObjectiveValue[] centres = [.. firsts.SelectMany(f => f.Objective).Where(o => o.Name == ObjectiveName.CentreOfGravity)];
        double[] gaps = [.. centres.Select(GapPercent).Order()];
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"| {name} | {firsts.Count} of {firsts.Count + conflicts.Count} | {Figures(times)} | {Figures(processor)} | {sizes} of {firsts.Count} "
            + $"| {centres.Count(o => o.Proven)} of {centres.Length} "
            + $"| {(gaps.Length == 0 ? "" : gaps[gaps.Length / 2].ToString("0.00", CultureInfo.InvariantCulture))} |"));
        if (conflicts.Count > 0)
        {
            Console.WriteLine($"| {name}: conflicts | | | | | {Figures(conflicts)} | | | |");
        }
    }

    private static string Figures(List<double> times)
    {
        times.Sort();
        return string.Create(CultureInfo.InvariantCulture, $"{times[times.Count / 2]:0} | {times[(times.Count - 1) * 95 / 100]:0} | {times[^1]:0}");
    }

    private static ProposalAnswer Plan(ProposalRequest request) => Planner.Plan(request, ByNumber, Products);

    private static double GapPercent(ObjectiveValue centre) => 100 * (centre.Value - centre.Bound) / centre.Bound;

    private static ProposalRequest Request(Random random, int count, string[] parts, int most) => new()
    {
        Items =
        [
            .. Enumerable.Range(0, count)
                .Select(i => new Item { Id = FormattableString.Invariant($"item-{i}"), PartNumber = parts[random.Next(parts.Length)] }),
        ],
        Site = new Site { Region = Region.Eu, AmbientMaxC = 25 },
        MaxCabinets = most,
    };
}
