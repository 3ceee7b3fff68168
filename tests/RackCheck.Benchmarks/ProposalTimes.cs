using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Planning.Proposals;
using RackCheck.Rules;

namespace RackCheck.Benchmarks;

/// <summary>Times of proposals for random lists of catalogue equipment, with what was proven.</summary>
internal static class ProposalTimes
{
    private const int Lists = 40;

    private static readonly string[] Parts =
    [
        "QWL-SRV-110", "QWL-SRV-110", "QWL-SRV-220", "QWL-SW-48", "QWL-PAT-24", "QWL-PAT-24", "QWL-AMP-1", "QWL-AMP-1", "QWL-SYN-1", "QWL-PC-305", "QWL-AMP-2",
    ];

    private static readonly string[] Low =
        ["QWL-SRV-110", "QWL-SRV-110", "QWL-SW-48", "QWL-PAT-24", "QWL-PAT-24", "QWL-AMP-1", "QWL-AMP-1", "QWL-SYN-1", "QWL-KVM-16"];

    /// <summary>Prints a table, and with a number of solves the memory after them.</summary>
    public static void Print(int solves)
    {
        var products = JsonSerializer.Deserialize(
            File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "Catalogue/products.json")), ContractJson.Default.ProductList)!.Products;
        var byNumber = products.ToDictionary(p => p.PartNumber, StringComparer.Ordinal);
        var planner = new ProposalPlanner(new RackChecker(RuleSet.Default, (rule, fault) => throw new InvalidOperationException(rule.Id, fault)));
        ProposalAnswer Plan(ProposalRequest request) => planner.Plan(request, byNumber, products);
        for (var i = 0; i < 5; i++)
        {
            Plan(Request(new Random(i), 15, 42));
        }

        Console.WriteLine("| items | answered | p50, ms | p95, ms | height proven | centre proven | largest gap of the centre, % |");
        Console.WriteLine("| --- | --- | --- | --- | --- | --- | --- |");
        foreach (var (count, height) in (ReadOnlySpan<(int, int)>)[(5, 24), (15, 42), (40, 47), (60, 94)])
        {
            var (times, firsts) = (new List<double>(), new List<ProposedRack>());
            for (var i = 0; i < Lists; i++)
            {
                var request = Request(new Random(1000 + i), count, height);
                var watch = Stopwatch.StartNew();
                var answer = Plan(request);
                times.Add(watch.Elapsed.TotalMilliseconds);
                firsts.AddRange(answer.Alternatives.Take(1));
            }

            times.Sort();
            var centres = firsts.SelectMany(f => f.Objective).Where(o => o.Name == ObjectiveName.CentreOfGravity).ToArray();
            var heights = firsts.SelectMany(f => f.Objective).Where(o => o.Name is ObjectiveName.Height).ToArray();
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"| {count} | {firsts.Count} of {Lists} | {times[Lists / 2]:0} | {times[Lists * 95 / 100]:0} "
                + $"| {heights.Count(o => o.Proven)} of {heights.Length} | {centres.Count(o => o.Proven)} of {centres.Length} "
                + $"| {centres.Select(GapPercent).DefaultIfEmpty().Max():0.00} |"));
        }

        for (var i = 1; i <= solves; i++)
        {
            Plan(Request(new Random(i), 15, 42));
            if (i % Math.Max(1, solves / 4) == 0)
            {
                GC.Collect();
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{i} solves: {Environment.WorkingSet >> 20} MB"));
            }
        }
    }

    private static double GapPercent(ObjectiveValue centre) => 100 * (centre.Value - centre.Bound) / centre.Bound;

    // Low equipment for long lists, so that most of them fit.
    private static ProposalRequest Request(Random random, int count, int heightU) => new()
    {
        Items =
        [
            .. Enumerable.Range(0, count).Select(i => new Item
            {
                Id = FormattableString.Invariant($"item-{i}"),
                PartNumber = count > 20 ? Low[random.Next(Low.Length)] : Parts[random.Next(Parts.Length)],
            }),
        ],
        Site = new Site { Region = Region.Eu, AmbientMaxC = 25 },
        MaxCabinets = heightU > 47 ? 2 : 1,
    };
}
