using RackCheck.Model;
using RackCheck.Rules.Loads;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.LoadRacks;

namespace RackCheck.Rules.Tests.Loads;

public sealed class SupportRatingTests : RuleTests<SupportRating>
{
    private static RackDescription On(SupportStyle? style, double? rated, double? kilograms) =>
        Weighed().With(Heavy("wave-pc", 1, kilograms).Carried(style, rated));

    private static RackDescription Tray(double? rated, params double?[] masses) => Weighed()
        .With(Shelf("tray", 4) with { MassKg = 5, Support = rated is null ? null : new Support { RatedKg = rated } })
        .With([.. masses.Select((kg, at) => ShelfItem($"probe-{at}", "tray", 100, 200, 100) with { MassKg = kg })]);

    [Theory]
    [InlineData(SupportStyle.Slides, "slides")]
    [InlineData(SupportStyle.Runners, "runners")]
    [InlineData(SupportStyle.Shelf, "shelf")]
    [InlineData(null, "support")]
    public void Load_above_rating_gets_next_rating(SupportStyle? style, string name)
    {
        var rack = On(style, 24, 24.5);
        var finding = Only(rack);
        Assert.Equal(Severity.Error, finding.Severity);
        Numbers(finding, 24.5, 24, "kg");
        Assert.Equal(["/items/0", "/items/0/support/ratedKg"], finding.Pointers);
        Assert.Contains(name, finding.Message, StringComparison.Ordinal);
        Assert.Equal(30, Remedied(rack, finding).Items[0].Support!.RatedKg);
        Assert.Empty(Remedied(rack, finding, 1).Items);
    }

    [Fact]
    public void Load_at_rating_passes() => Passes(On(SupportStyle.Slides, 24, 24));

    [Fact]
    public void Load_above_common_ratings_gets_special_rating()
    {
        var rack = On(SupportStyle.Runners, 200, 210);
        Assert.Equal(250, Remedied(rack, Only(rack)).Items[0].Support!.RatedKg);
    }

    [Fact]
    public void Rating_and_mass_missing_are_not_assessed()
    {
        ReportsMissing(On(SupportStyle.Slides, null, 24), "/items/0/support/ratedKg");
        ReportsMissing(On(SupportStyle.Slides, 24, null), "/items/0/massKg");
        ReportsMissing(On(SupportStyle.Slides, null, null), "/items/0/massKg", "/items/0/support/ratedKg");
        Passes(On(SupportStyle.Panel, null, 5));
    }

    [Fact]
    public void Shelf_load_is_sum_of_items()
    {
        var rack = Tray(20, 12, 9);
        var finding = Only(rack);
        Numbers(finding, 21, 20, "kg");
        Assert.Equal(["/items/0", "/items/0/support/ratedKg"], finding.Pointers);
        Assert.Equal("12 + 9 = 21 > 20", finding.Calculation);
        Assert.Equal(30, Remedied(rack, finding).Items[0].Support!.RatedKg);
        Assert.Equal(["tray", "probe-1"], Remedied(rack, finding, 1).Items.Select(i => i.Id));
        Passes(Tray(21, 12, 9));
    }

    [Fact]
    public void Known_shelf_masses_count_and_missing_are_reported()
    {
        var report = Report(Tray(20, 21, null));
        Assert.Contains("at least 21 kg", Assert.Single(report.Findings).Message, StringComparison.Ordinal);
        Assert.Equal(["/items/2/massKg"], Assert.Single(report.NotAssessed).Missing);
        ReportsMissing(Tray(null, 12), "/items/0/support/ratedKg");
        ReportsMissing(Tray(null, [null]), "/items/0/support/ratedKg", "/items/1/massKg");
    }
}
