using RackCheck.Model;
using RackCheck.Planning.Comparisons;
using RackCheck.Testing;

namespace RackCheck.Planning.Tests.Comparisons;

public sealed class RackComparisonTests
{
    private static readonly RackDescription Before = new()
    {
        Cabinet = new Cabinet { HeightU = 24, WidthMm = 600, DepthMm = 800, PartNumber = "QWL-CAB-24-6-8" },
        Items =
        [
            new Item { Id = "pump", PartNumber = "QWL-GEN-2", HeightU = 2, MassKg = 7, Position = new Position { U = 1 } },
            new Item { Id = "gauge", HeightU = 2, MassKg = 5, Position = new Position { U = 2 } },
        ],
    };

    [Fact]
    public void Same_racks_have_no_changes()
    {
        var answer = Compare(Before, Before);
        Assert.Empty(answer.NewFindings);
        Assert.Empty(answer.GoneFindings);
        Assert.All(answer.SharedFindings, f => Assert.Equal(FindingChange.Same, f.Change));
        Assert.Empty(answer.Positions!);
        Assert.Empty(answer.PartsToAdd!);
        Assert.Empty(answer.PartsToReturn!);
        Assert.All(answer.Figures, f => Assert.Equal(0, f.Difference));
        Assert.Empty(answer.Content!.Changed);
        Assert.Empty(answer.Content.Members);
    }

    [Fact]
    public void Move_clears_the_overlap_and_is_listed()
    {
        var after = Before with { Items = [Before.Items[0], Before.Items[1] with { Position = new Position { U = 3 } }] };
        var answer = Compare(Before, after);
        Assert.Contains(answer.GoneFindings, f => f.Rule == "layout.overlap");
        Assert.Empty(answer.Content!.Changed);
        var move = Assert.Single(answer.Positions!);
        Assert.Equal(("gauge", 2, 3), (move.Id, move.Before!.U, move.After!.U));
        Assert.Equal(1, answer.Figures.Single(f => f.Figure == "/space/unitsUsed").Difference);
    }

    [Fact]
    public void New_and_changed_items_and_parts_are_listed()
    {
        var after = Before with
        {
            Cabinet = Before.Cabinet! with { PartNumber = "QWL-CAB-24-8-8", WidthMm = 800 },
            Items =
            [
                Before.Items[0] with { MassKg = 9 },
                new Item { Id = "scope", PartNumber = "QWL-GEN-2", HeightU = 2, Position = new Position { U = 5 } },
            ],
        };
        var answer = Compare(Before, after);
        Assert.Equal(["scope"], answer.Content!.Added);
        Assert.Equal(["gauge"], answer.Content.Removed);
        Assert.Equal(["massKg"], Assert.Single(answer.Content.Changed).Members);
        Assert.Equal(["cabinet"], answer.Content.Members);
        Assert.Equal([("QWL-CAB-24-8-8", 1), ("QWL-GEN-2", 1)], answer.PartsToAdd!.Select(p => (p.PartNumber, p.Quantity)));
        Assert.Equal([("QWL-CAB-24-6-8", 1)], answer.PartsToReturn!.Select(p => (p.PartNumber, p.Quantity)));
    }

    [Theory]
    [InlineData(420, FindingChange.Milder)]
    [InlineData(600, FindingChange.Worse)]
    public void Shared_finding_is_worse_or_milder_by_its_utilisation(double massKg, FindingChange change)
    {
        RackDescription Of(double kg) => Before with
        {
            Cabinet = Before.Cabinet! with { RatedLoadKg = 400 },
            Items = [new Item { Id = "press", HeightU = 4, MassKg = kg, Position = new Position { U = 1 } }],
        };
        var shared = Compare(Of(500), Of(massKg)).SharedFindings.Single(f => f.Finding.Rule == "load.rack-rating");
        Assert.Equal(change, shared.Change);
        Assert.Equal(125, shared.UtilisationBeforePercent!.Value, 1e-6);
    }

    [Fact]
    public void Report_alone_compares_findings_figures_and_verdicts()
    {
        var report = Judge.Checker.Check(Before);
        var answer = RackComparison.Of(new ComparedRack(report, null, null), new ComparedRack(report, Before, null));
        Assert.Null(answer.Positions);
        Assert.Null(answer.Content);
        Assert.Null(answer.PartsToAdd);
        Assert.NotEmpty(answer.Figures);
        Assert.Equal(report.Findings.Count, answer.SharedFindings.Count);
    }

    [Fact]
    public void Baskets_compare_their_lines()
    {
        var report = Judge.Checker.Check(Before);
        ComparedRack Of(params BasketLine[] lines) => new(report, Before, lines);
        var answer = RackComparison.Of(
            Of(new BasketLine { PartNumber = "QWL-GEN-2", Quantity = 3 }, new BasketLine { PartNumber = "QWL-KD-2", Quantity = 1 }),
            Of(new BasketLine { PartNumber = "QWL-GEN-2", Quantity = 5 }));
        Assert.Equal([("QWL-GEN-2", 2)], answer.PartsToAdd!.Select(p => (p.PartNumber, p.Quantity)));
        Assert.Equal([("QWL-KD-2", 1)], answer.PartsToReturn!.Select(p => (p.PartNumber, p.Quantity)));
    }

    private static ComparisonAnswer Compare(RackDescription before, RackDescription after) =>
        RackComparison.Of(new ComparedRack(Judge.Checker.Check(before), before, null), new ComparedRack(Judge.Checker.Check(after), after, null));
}
