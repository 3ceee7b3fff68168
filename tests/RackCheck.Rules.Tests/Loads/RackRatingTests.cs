using RackCheck.Model;
using RackCheck.Rules.Loads;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.LoadRacks;

namespace RackCheck.Rules.Tests.Loads;

public sealed class RackRatingTests : RuleTests<RackRating>
{
    private static RackDescription Rated(double? rated, params double?[] masses) => Weighed().Cabinet(c => c with { RatedLoadKg = rated })
        .With([.. masses.Select((kg, at) => Heavy($"wave-pc-{at}", 1 + (4 * at), kg))]);

    [Fact]
    public void Equipment_above_rating_is_error()
    {
        // The shared case on ratings: 8 x 40 = 320 kg.
        var rack = Rated(300, [.. Enumerable.Repeat<double?>(40, 8)]);
        var finding = Only(rack);
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.True(finding.Safety);
        Numbers(finding, 320, 300, "kg");
        Assert.Equal("8 x 40 = 320 > 300", finding.Calculation);
        Assert.Equal(["/cabinet/ratedLoadKg"], finding.Pointers);
        Assert.Equal(
            new MassFigures { EquipmentKg = 320, TotalKg = 420 },
            Report(rack).Figures.Mass! with { CentreOfGravityMm = null, TipAngleDeg = null, FloorKnM2 = null, PointKn = null });

        // Planned for 80 %: 320 / 0.8 = 400 is just sufficient.
        Assert.Equal(400, Remedied(rack, finding).Cabinet!.RatedLoadKg);

        // Or two of 40 are removed, which leaves 240.
        Assert.Equal(6, Remedied(rack, finding, 1).Items.Count);
    }

    [Theory]
    [InlineData(79.9, null)]
    [InlineData(80, null)]
    [InlineData(80.1, Severity.Warning)]
    [InlineData(100, Severity.Warning)]
    [InlineData(100.1, Severity.Error)]
    public void Over_80_percent_is_a_warning(double kilograms, Severity? severity) =>
        Assert.Equal(severity, Findings(Rated(100, kilograms)).SingleOrDefault()?.Severity);

    [Fact]
    public void Warning_and_error_are_the_same_finding()
    {
        Numbers(Only(Rated(100, 90)), 90, 80, "kg");
        Assert.Equal(Only(Rated(100, 90)).Fingerprint, Only(Rated(100, 190)).Fingerprint);
    }

    [Fact]
    public void Policy_sets_planning_limit() => Numbers(Only(Rated(100, 60).Limit(Id, "warningPercent", 50)), 60, 50, "kg");

    [Fact]
    public void Sums_of_decimals_that_meet_the_limit_pass() => Passes(Rated(1, 0.1, 0.2, 0.3, 0.2));

    [Fact]
    public void Known_masses_above_rating_are_error()
    {
        var report = Report(Rated(100, 80, null, 40));
        Numbers(Assert.Single(report.Findings), 120, 100, "kg");
        Assert.Contains("at least 120 kg", report.Findings[0].Message, StringComparison.Ordinal);
        Assert.Equal(["/items/1/massKg"], Assert.Single(report.NotAssessed).Missing);
        Assert.Null(report.Figures.Mass);
    }

    [Fact]
    public void Masses_and_rating_missing_are_not_assessed()
    {
        ReportsMissing(Rated(100, 10, null), "/items/1/massKg");
        ReportsMissing(Rated(null, 10), "/cabinet/ratedLoadKg");
        ReportsMissing(Rated(null, [null]), "/cabinet/ratedLoadKg", "/items/0/massKg");
        Passes(Rated(100));
    }

    [Fact]
    public void A_blanking_panel_without_a_mass_counts_as_none() => Passes(Rated(100, 10).With(Plate("plate", 1, 20)));

    [Fact]
    public void Cabinet_of_very_low_rating_is_replaced() => Assert.Equal(400, Remedied(Rated(1, 10), Only(Rated(1, 10))).Cabinet!.RatedLoadKg);
}
