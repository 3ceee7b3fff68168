using RackCheck.Model;
using RackCheck.Rules.Loads;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.LoadRacks;

namespace RackCheck.Rules.Tests.Loads;

public sealed class WallRatingTests : RuleTests<WallRating>
{
    // Addition: cabinet 25 kg, equipment 20 and 15 kg, 60 kg together.
    private static RackDescription Hung(double? limit, double? kilograms = 15, BaseStyle style = BaseStyle.Wall) =>
        Weighed(25, depthMm: 600, heightMm: 640, heightU: 12).Base(style, null).Uprights(setback: 65, spacing: 400).Cabinet(c => c with { WallLoadKg = limit })
            .With(Heavy("wave-pc", 1, 20, depth: 400), Heavy("gauge-amp", 6, kilograms, depth: 400, heightU: 2));

    [Fact]
    public void Mass_at_the_wall_load_passes() => Passes(Hung(60));

    [Fact]
    public void Mass_over_the_wall_load_is_error()
    {
        var rack = Hung(59.5);
        var finding = Only(rack);
        Assert.Equal((Severity.Error, true), (finding.Severity, finding.Safety));
        Numbers(finding, 60, 59.5, "kg");
        Assert.Equal("20 + 15 + 25 = 60 > 59.5", finding.Calculation);
        Assert.Equal(["/cabinet/wallLoadKg"], finding.Pointers);
        Assert.Equal(BaseStyle.Feet, Remedied(rack, finding).Cabinet!.Base!.Style);
        Assert.Single(Remedied(rack, finding, 1).Items);
    }

    [Fact]
    public void Known_masses_count_where_one_is_missing()
    {
        var report = Report(Hung(40, null));
        Assert.Contains("at least 45 kg", Assert.Single(report.Findings).Message, StringComparison.Ordinal);
        Assert.Equal(["/items/1/massKg"], Assert.Single(report.NotAssessed).Missing);
    }

    [Fact]
    public void Wall_load_missing_is_not_assessed() => ReportsMissing(Hung(null), "/cabinet/wallLoadKg");

    [Theory]
    [InlineData(BaseStyle.Feet)]
    [InlineData(BaseStyle.Bolted)]
    public void Standing_cabinet_is_not_checked(BaseStyle style) => Passes(Hung(10, style: style));
}
