using RackCheck.Model;
using RackCheck.Rules.Loads;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.LoadRacks;

namespace RackCheck.Rules.Tests.Loads;

public sealed class FloorDistributedTests : RuleTests<FloorDistributed>
{
    private static RackDescription Standing(double? limit, double? kilograms = 700) =>
        Weighed().Floor(limit, 10).With(Heavy("wave-pc", 1, kilograms).Carried(SupportStyle.Shelf, 1000));

    [Fact]
    public void Check_value_9_02_is_a_warning_on_12()
    {
        // 800 kg on 0.6 x 1.0: 13.0755 kN/m2.
        var rack = Standing(12);
        var finding = Only(rack);
        Assert.Equal(Severity.Warning, finding.Severity);
        Numbers(finding, 13.076, 12, "kN/m2");
        Assert.Equal(["/site/floor/distributedKnM2"], finding.Pointers);
        Assert.Equal("800 x 9.80665 / 1000 / (0.6 x 1) = 13.076 > 12", finding.Calculation);
        Assert.Equal(13.076, Report(rack).Figures.Mass!.FloorKnM2);

        // 600 x 1200, about 120 kg: 820 x 9.80665 / 720 = 11.17.
        Assert.Equal((600, 1200, 120),
            (Remedied(rack, finding).Cabinet!.WidthMm, Remedied(rack, finding).Cabinet!.DepthMm, Remedied(rack, finding).Cabinet!.MassKg));
    }

    [Fact]
    public void Load_at_rating_passes() => Passes(Standing(13.076));

    [Theory]
    [InlineData(6.538, Severity.Warning)] // common practice: a slab spreads up to twice its rating, 13.0755 / 2 = 6.538
    [InlineData(6.537, Severity.Error)]
    public void More_than_twice_the_rating_is_error(double limit, Severity severity) => Assert.Equal(severity, Only(Standing(limit)).Severity);

    [Fact]
    public void Policy_lowers_the_overload() =>
        Assert.Equal(Severity.Error, Only(Standing(12).Limit(Id, "overloadRatio", 1)).Severity);

    [Fact]
    public void Wall_hung_rack_needs_no_floor() => Passes(Standing(null).Base(BaseStyle.Wall));

    [Fact]
    public void Floor_too_weak_for_empty_cabinet_needs_higher_rating()
    {
        // 100 kg on 0.6 m2: 1.634.
        var rack = Standing(1, 30);
        Assert.Contains("does not carry the empty cabinet", Report(rack).Findings[0].Remedies[^1].Title, StringComparison.Ordinal);
        Assert.NotNull(Remedied(rack, Only(rack)).Site);
    }

    [Fact]
    public void Equipment_is_removed_where_no_footprint_suffices()
    {
        var rack = Standing(5);
        Assert.Empty(Remedied(rack, Only(rack)).Items);
    }

    [Fact]
    public void Known_masses_above_rating_are_error()
    {
        var report = Report(Standing(10).Cabinet(c => c with { MassKg = null }));
        Assert.Contains("at least 700 kg", Assert.Single(report.Findings).Message, StringComparison.Ordinal);
        Assert.Equal(["/cabinet/massKg"], Assert.Single(report.NotAssessed).Missing);
    }

    [Fact]
    public void Floor_rating_and_masses_missing_are_not_assessed()
    {
        ReportsMissing(Standing(null), "/site/floor/distributedKnM2");
        ReportsMissing(Standing(null) with { Site = null }, "/site/floor/distributedKnM2");
        ReportsMissing(Standing(13, null), "/items/0/massKg");
        ReportsMissing(EmptyRack().Floor(5, 5).With(Unit("wave-pc", 4).At(1)), "/cabinet/massKg", "/items/0/massKg");
        ReportsMissing(EmptyRack().Floor(5, 5), "/cabinet/massKg");
    }
}
