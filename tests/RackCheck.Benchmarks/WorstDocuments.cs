using System.Globalization;
using System.Text.Json;
using RackCheck.Documents.Drawings;
using RackCheck.Documents.Drawings.Elevations;
using RackCheck.Documents.Sheets;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Planning.Comparisons;
using RackCheck.Rules;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Benchmarks;

/// <summary>Drawings, sheets and comparisons of the dearest racks, each with its check, and of as many of them as one request may have.</summary>
internal static class WorstDocuments
{
    private const int MostRacks = 6;
    private const int MostBytes = 1024 * 1024;

    /// <summary>Prints processor time in ms, each the least of four after two, and the most live heap of any; the dearest rack first.</summary>
    public static void Print()
    {
        var checker = new RackChecker(RuleSet.Default, (rule, fault) => throw new InvalidOperationException(rule.Id, fault));
        Console.WriteLine("| rack | racks in a drawing | SVG, ms | PNG, ms | dearest sheet, HTML, ms | dearest sheet, PDF, ms | comparison with itself, ms "
            + "| live heap, MB |");
        Console.WriteLine("| --- | --- | --- | --- | --- | --- | --- | --- |");
        var rows = WorstRequests.All.Select(w => (w.Name, Count: CountOf(w.Rack), Times: Measure(checker, w.Rack)));
        foreach (var (name, count, times) in rows.OrderByDescending(r => r.Times[..^1].Max()))
        {
            Console.WriteLine($"| {name} | {count} | {string.Join(" | ", times.Select(t => t.ToString("0", CultureInfo.InvariantCulture)))} |");
        }
    }

    private static int CountOf(RackDescription rack) =>
        Math.Clamp(MostBytes / JsonSerializer.SerializeToUtf8Bytes(rack, ContractJson.Default.RackDescription).Length, 1, MostRacks);

    private static double[] Measure(RackChecker checker, RackDescription description)
    {
        var (rack, count) = (ResolvedRack.Plain(description), CountOf(description));
        DrawnRack[] Drawn() => [.. Enumerable.Range(0, count).Select(_ => DrawnRack.Of(rack, checker))];
        Action[] Each(Func<Sheet, object> write) =>
            [.. Enum.GetValues<SheetKind>().Select(kind => (Action)(() => write(OrderSheets.Of(rack, checker, kind, []).Sheet)))];
        ComparedRack Compared() => new(checker.Check(rack), rack.Posted, null);
        Action[][] documents =
        [
            [() => SvgWriter.Document(ElevationDrawing.Of(Drawn()))],
            [() => SkiaPainter.Png(ElevationDrawing.Of(Drawn()), 8000, 32_000_000)],
            Each(SheetHtml.Document),
            Each(SheetPdf.Document),
            [() => RackComparison.Of(Compared(), Compared())],
        ];
        return [.. documents.Select(d => d.Max(CostOf)), documents.Max(d => d.Max(WorstRequests.LiveHeapMb))];
    }

    // The least of four after two: in the first ones the runtime compiles beside, which the service does before it says that it is ready.
    private static double CostOf(Action work)
    {
        work();
        work();
        var least = double.MaxValue;
        for (var i = 0; i < 4; i++)
        {
            var before = Environment.CpuUsage.TotalTime;
            work();
            least = Math.Min(least, (Environment.CpuUsage.TotalTime - before).TotalMilliseconds);
        }

        return least;
    }
}
