using System.Buffers;
using System.Diagnostics;
using System.Globalization;
using RackCheck.Documents.Drawings;
using RackCheck.Documents.Drawings.Elevations;
using RackCheck.Documents.Sheets;
using RackCheck.Rules;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Benchmarks;

/// <summary>Times of drawings and sheets of the 42U rack: from description and report, in each form, and of a drawing with the check.</summary>
internal static class DrawingTimes
{
    private const int WarmUps = 300;
    private const int Runs = 200;

    /// <summary>Prints the median and the 95th percentile of each.</summary>
    public static void Print()
    {
        var checker = new RackChecker(RuleSet.Default, (rule, fault) => throw new InvalidOperationException(rule.Id, fault));
        var rack = ResolvedRack.Plain(Racks.Sound30);
        IReadOnlyList<DrawnRack> drawn = [DrawnRack.Of(rack, checker)];
        var buffer = new ArrayBufferWriter<byte>();
        int Svg(IReadOnlyList<DrawnRack> racks)
        {
            // As the service does, into a buffer that serves again.
            buffer.ResetWrittenCount();
            SvgWriter.Document(ElevationDrawing.Of(racks), buffer);
            return buffer.WrittenCount;
        }

        Report("SVG", WarmUps, Runs, () => Svg(drawn));
        Report("SVG with check", WarmUps, Runs, () => Svg([DrawnRack.Of(rack, checker)]));
        foreach (var kind in Enum.GetValues<SheetKind>())
        {
            Report($"{kind}, HTML", 20, Runs, () => SheetHtml.Document(OrderSheets.Of(rack, drawn[0], kind, [])).Length);
            Report($"{kind}, PDF", 10, Runs / 4, () => SheetPdf.Document(OrderSheets.Of(rack, drawn[0], kind, [])).Length);
        }

        Report("PNG, 1600 pixels wide", 20, Runs / 4, () => SkiaPainter.Png(ElevationDrawing.Of(drawn), 1600, 32_000_000).Length);
    }

    private static void Report(string name, int warmUps, int runs, Func<int> draw)
    {
        var bytes = 0;
        for (var i = 0; i < warmUps; i++)
        {
            bytes = draw();
        }

        double[] times = [.. Enumerable.Range(0, runs).Select(_ => TimeOf(draw)).Order()];
        var (median, most) = (times[times.Length / 2], times[(int)(0.95 * times.Length)]);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name}: median {median:F2} ms, p95 {most:F2} ms, {bytes / 1000.0:F0} KB"));
    }

    private static double TimeOf(Func<int> draw)
    {
        var clock = Stopwatch.StartNew();
        draw();
        return clock.Elapsed.TotalMilliseconds;
    }
}
