using System.Globalization;
using CsCheck;
using RackCheck.Model;
using RackCheck.Testing;
using static RackCheck.Planning.Tests.Baskets.DemoCatalogue;
using static RackCheck.Testing.RackGenerator;

namespace RackCheck.Planning.Tests.Baskets;

/// <summary>Properties over random baskets of the demo catalogue.</summary>
public sealed class BasketPropertyTests
{
    // Rules whose findings missing lines remedy. Findings that remain in a completed rack are reported as unmet needs.
    private static readonly string[] Remedied =
    [
        "layout.no-support",
        "layout.shelf-missing",
        "layout.blanking",
        "power.no-source",
        "power.redundancy",
        "earthing.bar-missing",
        "earthing.lead-length",
        "earthing.conductor-size",
    ];

    private static readonly string[] Equipment = PartsOf(ProductKind.Equipment, ProductKind.Shelf, ProductKind.FanTray);

    private static readonly string[] Others = [.. Products.Where(p => p.Kind != ProductKind.Cabinet).Select(p => p.PartNumber[4..]).Except(Equipment)];

    private static readonly Gen<(string Part, int Quantity)[]> Lines =
        from cabinet in OneOf(PartsOf(ProductKind.Cabinet)).Select(Gen.Int[0, 9], (part, keep) => keep > 2 ? part : null)
        from first in OneOf(PartsOf(ProductKind.Equipment)).Select(Gen.Int[1, 3], (part, quantity) => (part, quantity))
        from more in OneOf(Equipment).Select(Gen.Int[1, 3], (part, quantity) => (part, quantity)).Array[0, 6]
        from others in OneOf(Others).Select(Gen.Int[1, 8], (part, quantity) => (part, quantity)).Array[0, 9]
        from doubled in Gen.Bool
        select (ValueTuple<string, int>[])
        [
            .. Enumerable.Repeat((cabinet ?? "", doubled ? 2 : 1), cabinet is null ? 0 : 1),
            first,
            .. more,
            .. others,
            .. Enumerable.Repeat(first, doubled ? 1 : 0),
        ];

    internal static readonly Gen<BasketRequest> Baskets =
        from lines in Lines
        from supplies in Gen.Int[0, 3]
        from region in OneOf<Region?>(null, Region.Uk, Region.Eu, Region.Na)
        from fixing in OneOf<Fixing?>(null, null, Fixing.Screw)
        select Basket(lines) with
        {
            Supplies = supplies == 0 ? null : [.. Enumerable.Range(0, supplies).Select(SupplyOf)],
            Site = region is null ? null : new Site { Region = region },
            Options = fixing is null ? null : new BasketOptions { Fixing = fixing },
        };

    private static Supply SupplyOf(int index) => new()
    {
        Id = $"S{index}",
        VoltageV = 230,
        Phases = 1,
        RatedA = 32,
        Socket = index == 2 ? ConnectorCode.Iec60309A32P1 : ConnectorCode.Iec60309A16P1,
    };

    [Fact]
    [Trait("Kind", "property")]
    public void CompletedBasket_misses_nothing_and_remedied_rules_are_clear()
    {
        var cut = 0;
        Baskets.Sample(
            request =>
            {
                var first = Plan(request);
                Assert.Empty(Judge.Unsound(first.Rack!));
                Assert.Equal(first.Verdict, first.VerdictReasons.Select(r => r.Makes).DefaultIfEmpty(Verdict.Release).Max());
                if (first.Cautions.Count > 0)
                {
                    Interlocked.Increment(ref cut);
                    return;
                }

                var second = Plan(Completed(request, first));
                Assert.Empty(second.MissingLines.Select(m => $"{m.Quantity} {m.PartNumber}: {m.Reason}"));
                Assert.Empty(second.ReplaceLines);
                Assert.Equal(Totals(Changed(request, first)), Totals(first.CompletedBasket.Lines));
                Assert.Empty(Excess(second));
                Assert.Equal(first.CompletedVerdict, second.Verdict);
                Assert.Equal(first.CompletedVerdict, second.CompletedVerdict);
                Assert.Equal(first.Unmet.Select(Words), second.Unmet.Select(Words));
                Assert.Equal(
                    first.CompletedReport!.Findings.Select(f => (f.Fingerprint, f.Message)),
                    second.Report!.Findings.Select(f => (f.Fingerprint, f.Message)));
                if (first.Unmet.Count == 0 && second.Verdicts.Product != Verdict.Hold)
                {
                    Assert.Empty(second.Report.Findings.Where(f => Remedied.Contains(f.Rule)).Select(f => f.Message));
                }
            },
            iter: Samples.Of(600),
            print: Text);

        // Where no product clears what is wrong, everything is tried, and the work may end before the second pass over the completed basket.
        Assert.True(cut <= 2 + (Samples.Of(600) / 40), $"{cut} cut short.");
    }

    private static string Words(UnmetNeed need) => $"{need.What}: {need.Reason} {need.Proven}";

    // A shop passes the rack to the ERP, which has it checked again by its part numbers. The report stays the same.
    [Fact]
    [Trait("Kind", "property")]
    public void Rack_of_basket_has_the_same_report_when_checked() =>
        Baskets.Sample(
            request =>
            {
                var report = Plan(request);
                var again = Judge.Check(report.Rack!);
                Assert.Equal(report.Report!.Findings.Select(f => (f.Fingerprint, f.Message)), again.Findings.Select(f => (f.Fingerprint, f.Message)));
                Assert.Equal(report.Report.Verdict, again.Verdict);
            },
            iter: Samples.Of(300),
            print: Text);

    [Fact]
    [Trait("Kind", "property")]
    public void Order_of_lines_changes_only_pointers() =>
        Gen.Select(Baskets, Gen.Int).Sample(
            (request, seed) =>
            {
                BasketLine[] lines = [.. request.Lines];
                new Random(seed).Shuffle(lines);
                var (one, other) = (Plan(request), Plan(request with { Lines = lines }));
                Assert.Equal(Excess(one), Excess(other));
                Assert.Equal(TextOf(WithoutLines(one)), TextOf(WithoutLines(other)));
                Assert.Equal(TextOf(one), TextOf(Plan(request)));
            },
            iter: Samples.Of(120),
            print: t => Text(t.Item1));

    [Fact]
    [Trait("Kind", "property")]
    public void Order_of_offered_products_changes_nothing() =>
        Baskets.Sample(request => Assert.Equal(TextOf(Plan(request)), TextOf(Plan(request, [.. Products.Reverse()]))), iter: Samples.Of(60), print: Text);

    [Fact]
    public void Basket_of_1000_lines_takes_limited_memory()
    {
        // Two hundred items with power, no cabinet, and an excess of all other products.
        string[] drawing = ["GEN-2", "AMP-2", "SW-48", "SRV-110", "PC-305"];
        var request = Basket(
        [
            .. Enumerable.Range(0, 200).Select(i => (drawing[i % drawing.Length], 1)),
            .. Enumerable.Range(0, 800).Select(i => (Others[i % Others.Length], 10000)),
        ]);
        var before = GC.GetAllocatedBytesForCurrentThread();
        var report = Plan(request);
        var allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        Assert.NotEmpty(report.Unmet);
        Assert.Equal(200, report.Rack!.Items.Count);

        // All work is on this thread and comes to about 300 MB; further checks or a longer search show there.
        Assert.InRange(allocated, 0, 600_000_000);
    }

    private static string[] PartsOf(params ProductKind[] kinds) => [.. Products.Where(p => kinds.Contains(p.Kind)).Select(p => p.PartNumber[4..])];

    // The lines of a basket with the changes that its report lists.
    private static IEnumerable<BasketLine> Changed(BasketRequest request, BasketReport report) =>
    [
        .. request.Lines,
        .. report.MissingLines.Select(m => new BasketLine { PartNumber = m.PartNumber, Quantity = m.Quantity }),
        .. report.ExcessLines.Select(e => new BasketLine { PartNumber = e.PartNumber, Quantity = -e.Quantity }),
        .. report.ReplaceLines.Select(r => new BasketLine { PartNumber = r.PartNumber, Quantity = r.Quantity }),
        .. report.ReplaceLines.Select(r => request.Lines[int.Parse(r.Line["/lines/".Length..], CultureInfo.InvariantCulture)] with { Quantity = -r.Quantity }),
    ];

    private static string[] Totals(IEnumerable<BasketLine> lines) =>
    [
        .. lines.GroupBy(l => l.PartNumber!, StringComparer.Ordinal)
            .OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => (g.Key, Sum: g.Sum(l => l.Quantity)))
            .Where(g => g.Sum != 0)
            .Select(g => $"{g.Key} {g.Sum}"),
    ];

    private static string[] Excess(BasketReport report) =>
    [
        .. report.ExcessLines
            .GroupBy(e => e.PartNumber)
            .OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => $"{g.Key} {g.Sum(e => e.Quantity)}"),
    ];

    private static BasketReport WithoutLines(BasketReport report) => report with
    {
        FindingLines = [],
        VerdictReasons = [],
        MissingLines = [.. report.MissingLines.Select(m => m with { ForLines = [] })],
        ExcessLines = [],
        ReplaceLines = [],
        LineItems = [],
        LineStatus = [],
        CompletedBasket = report.CompletedBasket with { Lines = [] },
    };

    private static string Text(BasketRequest request) =>
        $"{string.Join(", ", request.Lines.Select(l => $"(\"{l.PartNumber![4..]}\", {l.Quantity})"))} "
        + $"on {request.Supplies?.Count ?? 0} supplies in {request.Site?.Region}, {request.Options?.Fixing}";
}
