using RackCheck.Model;
using RackCheck.Rules.Loads;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.LoadRacks;

namespace RackCheck.Rules.Tests.Loads;

public sealed class HeavyHighTests : RuleTests<HeavyHigh>
{
    // Two units at unit u are centred at 66.55 + 44.45 u.
    private static RackDescription Lifted(int unit, double? kilograms) => Weighed().With(Heavy("wave-pc", unit, kilograms, heightU: 2));

    [Fact]
    public void Item_over_25_kg_above_1400_mm_moves_down()
    {
        var rack = Lifted(34, 30); // 66.55 + 1511.3 = 1577.85
        var finding = Only(rack);
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.True(finding.Safety);
        Numbers(finding, 30, 25, "kg");
        Assert.Equal(1577.85, finding.MessageData["heightMm"].Number);
        Assert.Equal(["/items/0"], finding.Pointers);
        Assert.Equal(1, Remedied(rack, finding).Items[0].Position!.U);
    }

    [Fact]
    public void Item_of_25_kg_exceeds_height_limit() => Numbers(Only(Lifted(34, 25)), 1577.85, 1400, "mm");

    [Theory]
    [InlineData(19, 25, false)] // 911.1: below the elbow nothing is judged
    [InlineData(19, 200, false)]
    [InlineData(20, 20, false)] // 955.55: 20 kg, HSE L23, value from memory
    [InlineData(20, 20.1, true)]
    [InlineData(28, 10, false)] // 1311.15: 10 kg
    [InlineData(28, 10.1, true)]
    [InlineData(40, 10, false)] // 1844.55: still within reach
    [InlineData(41, 5, false)] // 1889: above reach
    [InlineData(41, 5.1, true)]
    public void Lifting_limit_depends_on_height(int unit, double kilograms, bool isFound) =>
        Assert.Equal(isFound, Findings(Lifted(unit, kilograms)).Count > 0);

    [Fact]
    public void Policies_may_be_stricter()
    {
        Passes(Lifted(19, 12));
        Numbers(Only(Lifted(19, 13).Limit(Id, "massKg", 12).Limit(Id, "heightMm", 900)), 13, 12, "kg");
    }

    [Fact]
    public void Item_is_swapped_with_lighter_item()
    {
        var rack = Weighed(heightU: 24, heightMm: 2000).With(
            Heavy("gauge-amp", 1, 5, heightU: 12).Carried(SupportStyle.Shelf, 100), Heavy("wave-pc", 13, 30, heightU: 12).Carried(SupportStyle.Shelf, 100));
        var finding = Findings(rack).Single(f => f.Pointers[0] == "/items/1");
        Assert.Equal([13, 1], Remedied(rack, finding).Items.Select(i => i.Position!.U));
    }

    [Fact]
    public void Shelf_load_is_checked_at_its_height()
    {
        // On top of U30: 66.55 + 1333.5 + 300 / 2 = 1550.05.
        var rack = Weighed().With(Shelf("tray", 30), ShelfItem("probe", "tray", depth: 200, height: 300) with { MassKg = 12 });
        Assert.Equal(1550.05, Only(rack).MessageData["heightMm"].Number);
        ReportsMissing(Weighed().With(Shelf("tray", 30) with { MassKg = 2 }, ShelfItem("probe", "tray") with { MassKg = 12 }), "/items/1/body/heightMm");
    }

    [Fact]
    public void Position_and_mass_missing_are_not_assessed()
    {
        ReportsMissing(Weighed().With(Heavy("wave-pc", 1, 30) with { Position = null }), "/items/0/position");
        Passes(Weighed().With(Heavy("wave-pc", 1, 5) with { Position = null }));
        ReportsMissing(Weighed().With(Heavy("wave-pc", 1, 5), Heavy("gauge-amp", 30, null)), "/items/1/massKg");
        Passes(Weighed().With(Heavy("wave-pc", 1, 5), Heavy("gauge-amp", 9, null)));
        ReportsMissing(Weighed().With(Heavy("gauge-amp", 30, null)), "/items/0/massKg");
    }

    [Fact]
    public void Default_cabinet_height_is_reported()
    {
        var rack = Lifted(34, 30).Cabinet(c => c with { HeightMm = null, Base = null });
        var report = Report(rack);
        Assert.Equal(1561.3, Assert.Single(report.Findings).MessageData["heightMm"].Number); // 50 + 44.45 x 34
        Assert.Equal(1966.9, report.Assumptions.Single(a => a.Pointer == "/cabinet/heightMm").Value.Number);
    }
}
