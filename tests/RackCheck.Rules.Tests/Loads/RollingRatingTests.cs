using RackCheck.Model;
using RackCheck.Rules.Loads;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.LoadRacks;

namespace RackCheck.Rules.Tests.Loads;

public sealed class RollingRatingTests : RuleTests<RollingRating>
{
    private static RackDescription Rolling(double? rolling, double? kilograms, BaseStyle? style = BaseStyle.Castors) =>
        Weighed().Base(style, 80).Cabinet(c => c with { RollingLoadKg = rolling }).With(Heavy("wave-pc", 1, kilograms));

    [Fact]
    public void Exceeded_rating_is_error_with_three_remedies()
    {
        var rack = Rolling(150, 160);
        var finding = Only(rack);
        Assert.Equal(Severity.Error, finding.Severity);
        Numbers(finding, 160, 150, "kg");
        Assert.Equal(["/cabinet/rollingLoadKg", "/cabinet/base/style"], finding.Pointers);
        Assert.Equal(200, Remedied(rack, finding).Cabinet!.RollingLoadKg);
        Assert.Equal(BaseStyle.Feet, Remedied(rack, finding, 1).Cabinet!.Base!.Style);
        Assert.Empty(Remedied(rack, finding, 2).Items);
    }

    [Fact]
    public void Load_at_rating_passes() => Passes(Rolling(160, 160));

    [Theory]
    [InlineData(BaseStyle.Feet)]
    [InlineData(BaseStyle.Plinth)]
    [InlineData(BaseStyle.Bolted)]
    public void Base_without_castors_is_not_checked(BaseStyle style) => Passes(Rolling(10, 160, style));

    [Fact]
    public void Rating_style_and_masses_missing_are_not_assessed()
    {
        ReportsMissing(Rolling(null, 160), "/cabinet/rollingLoadKg");
        ReportsMissing(Rolling(150, 160, null), "/cabinet/base/style");
        ReportsMissing(Rolling(150, null), "/items/0/massKg");
        ReportsMissing(Rolling(null, null), "/cabinet/rollingLoadKg");
        Passes(Weighed().Base(BaseStyle.Castors, 80));
    }

    [Fact]
    public void Known_masses_above_rating_are_error()
    {
        var report = Report(Rolling(150, 160).With(Heavy("gauge-amp", 9, null)));
        Assert.Contains("at least 160 kg", Assert.Single(report.Findings).Message, StringComparison.Ordinal);
        Assert.Single(report.NotAssessed);
    }
}
