using RackCheck.Model;
using RackCheck.Rules.Power;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.Feeds;

namespace RackCheck.Rules.Tests.Power;

public sealed class SupplyLoadingTests : RuleTests<SupplyLoading>
{
    // Two units, so that each is within its own rating; at 230 V.
    private static RackDescription Two(double first, double second, Supply? supply = null) =>
        Fed(supply ?? Mains(), Board("left"), Board("right")).With(Load("wave-pc", first), Load("paddle-drive", second));

    [Fact]
    public void A_supply_over_its_rating_is_an_error()
    {
        var finding = Only(Two(2000, 1910)); // 3910 / 230, by hand
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Equal(["/supplies/0"], finding.Pointers);
        Numbers(finding, 17, 16, "A");
        Assert.Equal("(2000 / 1 + 1910 / 1) / 230 = 17 > 16", finding.Calculation);
    }

    [Fact]
    public void Load_above_design_share_warns()
    {
        Passes(Two(1472, 1472)); // 12.8 A, 80 % of 16: practice
        var finding = Only(Two(1472, 1495));
        Assert.Equal(Severity.Warning, finding.Severity);
        Numbers(finding, 12.9, 12.8, "A");
        Assert.Equal(Only(Two(2000, 1910)).Fingerprint, finding.Fingerprint);
    }

    [Fact]
    public void Lower_of_rating_and_breaker_counts() => Numbers(Only(Two(1150, 1265, Mains(breakerA: 10))), 10.5, 10, "A");

    [Theory]
    [InlineData(1920, null, 0)] // NEC 210.20(A): 20 A breaker, 16 A continuous
    [InlineData(1980, Severity.Error, 16)]
    public void North_american_limit_is_80_percent_of_breaker(double watts, Severity? severity, double limit)
    {
        var findings = Findings(Fed(Mains(ratedA: 20, volts: 120), Board("strip", 20)).With(Load("wave-pc", watts)).In(Region.Na));
        Assert.Equal(severity is null ? 0 : 1, findings.Count);
        Assert.All(findings, f => Assert.Equal((severity, limit), (f.Severity, f.Limit!.Value)));
    }

    [Fact]
    public void With_one_of_two_supplies_lost_the_other_carries_all()
    {
        var rack = EmptyRack(widthMm: 800).Fed([Mains(), Mains("B")], Board("left"), Board("right", supply: "B"))
            .With(Load("wave-pc", 2070, 2, true), Load("paddle-drive", 2070, 2, true));
        var findings = Findings(rack); // 4140 / 230 = 18, half of it in normal use
        Assert.Equal(["A", "B"], findings.Select(f => f.MessageData["supply"].Text));
        Assert.Equal(["B", "A"], findings.Select(f => f.MessageData["lost"].Text));
        Assert.All(findings, f => Numbers(f, 18, 16, "A"));
        Assert.Equal("(2 x 2070 / 1) / 230 = 18 > 16", findings[0].Calculation);
        Remedied(rack, findings[0]);
    }

    [Fact]
    public void The_worst_of_three_lines_is_named()
    {
        var rack = Fed(Mains(phases: 3), Board("strip", 16, "A", Outlets("g1"), Outlets("g2", Phase.L2), Outlets("g3", Phase.L3)),
            Board("other", 16, "A", Outlets("g2", Phase.L2)))
            .With(Load("wave-pc", 2300), Load("paddle-drive", 1610)).Plugged("wave-pc", "strip", "g2").Plugged("paddle-drive", "other", "g2");
        var finding = Only(rack);
        Numbers(finding, 17, 16, "A");
        Assert.Equal("L2", finding.MessageData["line"].Text);
        Assert.NotEqual(rack.Connections, Remedied(rack, finding).Connections);
    }

    [Fact]
    public void Phase_above_design_share_warns_beside_larger_outage_load()
    {
        // L1: 7 A, 14 A with B lost, within 16. L2: 13 A, past 12.8.
        var rack = EmptyRack(widthMm: 800).Fed(
                [Mains(phases: 3), Mains("B")],
                Board("strip", 16, "A", Outlets("g1"), Outlets("g2", Phase.L2)), Board("right", supply: "B"))
            .With(Load("wave-pc", 3220, 2, true), Load("paddle-drive", 2990))
            .Plugged("wave-pc", "strip", "g1").Plugged("wave-pc", "right", "g1", 1).Plugged("paddle-drive", "strip", "g2");
        var finding = Only(rack);
        Assert.Equal("L2", finding.MessageData["line"].Text);
        Numbers(finding, 13, 12.8, "A");
    }

    [Fact]
    public void Equipment_behind_ups_loads_supply_with_ups_losses()
    {
        var ups = Load("bay-ups", null) with { HeatW = 90, Ups = new Ups { RatedW = 5000, RatedVa = 5000, Feeds = ["behind"] } };
        var rack = Fed(Mains(), Board("strip"), Board("behind")).With(ups, Load("wave-pc", 1900), Load("paddle-drive", 1920))
            .Plugged("wave-pc", "behind", "g1").Plugged("paddle-drive", "behind", "g1");
        var finding = Only(rack);
        Numbers(finding, 17, 16, "A");
        Assert.Equal("(3910 / 1) / 230 = 17 > 16", finding.Calculation);
        Remedied(rack, finding);
    }

    [Fact]
    public void Policies_set_the_shares()
    {
        Numbers(Only(Two(1150, 1380).Limit(Id, "designSharePercent", 60)), 11, 9.6, "A");
        Numbers(Only(Fed(Mains(ratedA: 20, volts: 120), Board("strip", 20)).With(Load("wave-pc", 1860)).In(Region.Na).Limit(Id, "continuousSharePercent", 75)),
            15.5, 15, "A");
    }

    [Fact]
    public void Rated_power_absent_is_listed_and_the_rest_counts()
    {
        ReportsMissing(Fed(Mains(), Board("left")).With(Load("wave-pc", null)), "/items/0/power/ratedW");
        var report = Report(Fed(Mains(), Board("left"), Board("right")).With(Load("wave-pc", null), Load("paddle-drive", 2000), Load("wave-amp", 1910)));
        Numbers(Assert.Single(report.Findings), 17, 16, "A");
        Assert.Equal(["/items/0/power/ratedW"], Assert.Single(report.NotAssessed).Missing);
    }

    [Fact]
    public void Overload_remedies_are_larger_or_second_supply_or_less_load()
    {
        var rack = Two(2000, 1910);
        var finding = Only(rack);
        var titles = Judge.Checker.Check(rack).Findings.Single(f => Judge.IsSame(f, finding)).Remedies.Select(r => r.Title).ToArray();
        Assert.Equal(3, titles.Length);
        Assert.Equal(32, Remedied(rack, finding).Supplies![0].RatedA);
        Assert.Equal(2, Remedied(rack, finding, 1).Supplies!.Count);
        Assert.Equal("paddle-drive", Assert.Single(Remedied(rack, finding, 2).Items).Id);
    }

    [Fact]
    public void Very_large_load_has_a_remedy()
    {
        var rack = Two(90_000, 80_000);
        Remedied(rack, Only(rack));
    }

    [Fact]
    public void Passive_item_without_plugs_leaves_the_power_known()
    {
        var passive = Load("patch", null, cords: 0).Placed(9);
        var rack = Fed(Mains(), Board("strip")).With(Load("wave-pc", 800), passive);
        Assert.Equal(800, Judge.Check(rack).Figures.Power!.RatedW);
    }
}
