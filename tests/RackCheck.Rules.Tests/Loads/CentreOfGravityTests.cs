using RackCheck.Model;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Survey;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.LoadRacks;

namespace RackCheck.Rules.Tests.Loads;

public sealed class CentreOfGravityTests : RuleTests<Rules.Loads.CentreOfGravity>
{
    // Two units at U21 are centred at 66.55 + 933.45 = 1000, half of 2000.
    private static RackDescription At(int unit, double kilograms = 20) => Weighed().With(Heavy("flume-daq", unit, kilograms, heightU: 2));

    [Fact]
    public void Centre_at_half_height_passes() => Passes(At(21));

    [Fact]
    public void Centre_above_half_height_is_advice()
    {
        // (100 x 1000 + 20 x 1222.25 + 2 x 1711.2) / 122 = 127867.4 / 122 = 1048.093, by hand.
        var rack = At(26).With(Heavy("gauge-amp", 37, 2, heightU: 2));
        var finding = Only(rack);
        Assert.Equal(Severity.Advice, finding.Severity);
        Numbers(finding, 1048.093, 1000, "mm");
        Assert.Equal(["/items/0", "/cabinet/heightMm"], finding.Pointers);
        Assert.Equal("127867.4 / 122 = 1048.093 > 1000", finding.Calculation);
        Assert.Equal(1, Remedied(rack, finding).Items[0].Position!.U);
    }

    [Fact]
    public void Panels_give_way_to_heavy_equipment_and_close_what_it_leaves()
    {
        var rack = At(26).With(Heavy("gauge-amp", 37, 2, heightU: 2), Plate("low", 25, 1));
        var remedied = Remedied(rack, Only(rack));
        Assert.Equal(1, remedied.Items[0].Position!.U);
        Assert.Equal(new RackSurvey(rack).Occupancy.OpenFront, new RackSurvey(remedied).Occupancy.OpenFront);
        Assert.Equal(25, remedied.Items.Where(i => i.Category == ItemCategory.BlankingPanel).Sum(i => i.HeightU));
    }

    [Fact]
    public void Remedies_keep_all_equipment()
    {
        var rack = At(42).With(Heavy("gauge-amp", 40, 20, heightU: 2));
        Assert.All(Only(rack).Remedies, r => Assert.Empty(r.RemovesItems));
    }

    [Theory]
    [InlineData(BaseStyle.Bolted)]
    [InlineData(BaseStyle.Wall)]
    public void Fixed_rack_is_not_checked(BaseStyle style) => Passes(At(26).With(Heavy("gauge-amp", 37, 2, heightU: 2)).Base(style));

    [Fact]
    public void Policy_sets_lower_limit() => Numbers(Only(At(21).Limit(Id, "heightPercent", 40)), 1000, 800, "mm");

    [Fact]
    public void Several_items_move_where_one_is_not_enough()
    {
        var rack = Weighed().With([.. Enumerable.Range(0, 4).Select(i => Heavy($"wave-pc-{i}", 26 + (4 * i), 30))]);
        Assert.True(Remedied(rack, Only(rack)).Items.Count(i => i.Position!.U < 20) >= 2);
    }

    [Fact]
    public void Masses_and_positions_missing_are_not_assessed()
    {
        ReportsMissing(At(26).Cabinet(c => c with { MassKg = null }), "/cabinet/massKg");
        ReportsMissing(At(26).With(Heavy("gauge-amp", 1, null)), "/items/1/massKg");
        ReportsMissing(At(26).With(Heavy("gauge-amp", 1, 4, depth: null) with { Position = null }), "/items/1/body/depthMm", "/items/1/position");
        ReportsMissing(At(26).Uprights(setback: 75).With(Heavy("gauge-amp", 1, 4, face: Face.Rear)), "/cabinet/uprights/spacingMm");
        ReportsMissing(EmptyRack().With(Unit("wave-pc", 4).At(30)), "/cabinet/massKg", "/items/0/massKg");
        Passes(EmptyRack());
    }
}
