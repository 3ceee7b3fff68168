using RackCheck.Model;
using RackCheck.Rules.Power;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.Wiring;

namespace RackCheck.Rules.Tests.Power;

public sealed class PduLoadingTests : RuleTests<PduLoading>
{
    private static RackDescription One(double watts, double factor = 1, double rated = 16, double? breaker = 16, double voltage = 230) =>
        Wired(Mains(rated: 32, voltage: voltage)).Units(Pdu("strip", "A", rated, Outlets("g", breaker))).With(Load("wave-pc", watts, factor));

    [Theory]
    [InlineData(2944, 1)] // 2944 / 230 = 12.8, the design share of 16
    [InlineData(2796.8, 0.95)]
    public void Load_at_design_share_passes(double watts, double factor) => Passes(One(watts, factor));

    [Theory]
    [InlineData(3000, 0.95, 13.73)] // circuit theory: P/(V pf)
    [InlineData(3680, 1, 16)]
    public void Over_it_is_a_warning(double watts, double factor, double amperes)
    {
        var finding = Only(One(watts, factor));
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal(["/pdus/0"], finding.Pointers);
        Numbers(finding, amperes, 12.8, "A");
    }

    [Theory]
    [InlineData(3681, 1, 230, 16.004)]
    [InlineData(1800, 0.9, 120, 16.667)] // I = P/(V pf): 1800 / 108
    public void Over_the_rating_is_an_error(double watts, double factor, double voltage, double amperes)
    {
        var finding = Only(One(watts, factor, voltage: voltage));
        Assert.Equal(Severity.Error, finding.Severity);
        Numbers(finding, amperes, 16, "A");
    }

    [Fact]
    public void The_calculation_can_be_redone_by_hand()
    {
        var rack = Wired(Mains(rated: 32)).Units(Pdu("strip", "A", 16, Outlets("g", 16)))
            .With([.. Enumerable.Range(0, 10).Select(i => Load($"pc{i}", 400, 0.95)), Load("amp", 60, 0.6)]);
        Assert.Equal("(10 x 400 / 0.95 + 60 / 0.6) / 230 = 18.741 > 16", Only(rack).Calculation);
    }

    [Fact]
    public void A_group_over_its_breaker_is_named_by_itself()
    {
        var rack = Wired(Mains(rated: 32)).Units(Pdu("strip", "A", 32, Outlets("g1", 10), Outlets("g2", 16))).With(Load("wave-pc", 2310))
            .Connect("wave-pc", "strip", "g1");
        var finding = Only(rack);
        Assert.Equal(["/pdus/0/groups/0"], finding.Pointers);
        Numbers(finding, 10.043, 10, "A");
        Assert.Equal("g1", finding.MessageData["group"].Text);
        Assert.Equal("g2", Assert.Single(Remedied(rack, finding).Connections!).Group);
    }

    [Fact]
    public void Group_breaker_below_pdu_rating_has_own_finding() =>
        Assert.Equal(["/pdus/0", "/pdus/0/groups/0"], Findings(One(3700, breaker: 10)).Select(f => f.Pointers[0]));

    [Fact]
    public void Plug_without_outlet_hides_no_overload_of_the_others()
    {
        // Two cords with half each: 8.7 A a unit; with B lost 17.4 A on the one at A. The heater's plug fits no outlet.
        var rack = Wired(Mains("A", 32), Mains("B", 32)).Units(Pdu("a", "A", 16, Outlets("g", null)), Pdu("b", "B", 16, Outlets("g", null)))
            .With(Load("wave-pc", 4000, cords: 2, redundant: true));
        var heater = Load("heater", 2000);
        var both = rack.With(heater with { Power = heater.Power! with { Plugs = [ConnectorCode.Cee77] } });
        Assert.Equal(Findings(rack).Select(f => f.Message), Findings(both).Select(f => f.Message));
        Assert.Equal(2, Findings(both).Count);
    }

    [Fact]
    public void Supply_lost_loads_the_other_pdu()
    {
        // Two cords with half each: 8.7 A a unit; with B lost 17.4 A on the one at A.
        var rack = Wired(Mains("A", 32), Mains("B", 32)).Units(Pdu("a", "A", 16, Outlets("g", null)), Pdu("b", "B", 32, Outlets("g", null)))
            .With(Load("wave-pc", 4000, cords: 2, redundant: true));
        var finding = Only(rack);
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Equal("B", finding.MessageData["lost"].Text);
        Numbers(finding, 17.391, 16, "A");
        Assert.Equal("(4000 / 1) / 230 = 17.391 > 16", finding.Calculation);
        Passes(rack with { Items = [Load("wave-pc", 3680, cords: 2, redundant: true)] });
        Passes(rack with { Items = [Load("wave-pc", 4000, cords: 2)] });
    }

    [Fact]
    public void Three_phases_are_checked_one_by_one()
    {
        var rack = Wired(Mains(rated: 32, phases: 3)).Units(Pdu("strip", "A", 16, Outlets("g1", 32, phase: Phase.L1), Outlets("g2", 32, phase: Phase.L2)))
            .With(Load("wave-pc", 3900), Load("paddle-drive", 2000)).Connect("wave-pc", "strip", "g2").Connect("paddle-drive", "strip", "g1");
        var finding = Only(rack);
        Assert.Equal("L2", finding.MessageData["line"].Text);
        Numbers(finding, 16.957, 16, "A");
    }

    [Fact]
    public void North_american_load_is_limited_to_80_percent_of_breaker()
    {
        // NEC 210.20(A), check 6-21: 16 A of 20 A.
        var rack = Wired(Mains(rated: 20, voltage: 120)).Units(Pdu("strip", "A", 20, Outlets("g", 20))).With(Load("wave-pc", 1932)).Region(Region.Na);
        var finding = Only(rack);
        Assert.Equal(Severity.Error, finding.Severity);
        Numbers(finding, 16.1, 16, "A");
        Passes(rack with { Items = [Load("wave-pc", 1920)] });
        Assert.Equal(Severity.Warning, Only(rack.Region(Region.Eu)).Severity);
    }

    [Fact]
    public void A_policy_may_plan_for_less()
    {
        var rack = One(2200); // 9.57 A
        Passes(rack);
        Numbers(Only(rack.Limit(Id, "designSharePercent", 50)), 9.565, 8, "A");
    }

    [Fact]
    public void Rated_power_absent_is_listed_and_the_rest_checked()
    {
        ReportsMissing(One(0) with { Items = [Load("wave-pc", null)] }, "/items/0/power/ratedW");
        var rack = One(0) with { Items = [Load("wave-pc", null), Load("paddle-drive", 3700)] };
        Only(rack);
        Assert.Null(Report(rack).Figures.Power!.Pdus![0].LoadingPercent);
    }

    [Fact]
    public void Pdu_without_load_passes()
    {
        Passes(Wired(Mains()).Units(Pdu("strip", "A", 16, Outlets("g", 16))));
        Passes(EmptyRack().With(Load("wave-pc", 4000)));
    }

    [Fact]
    public void Pdu_on_full_supply_gets_second_supply()
    {
        var rack = Wired(Mains(rated: 16)).Units(Pdu("strip", "A", 16, Outlets("g", 16))).With([.. Enumerable.Range(0, 10).Select(i => Load($"pc{i}", 400))]);
        var remedied = Remedied(rack, Only(rack));
        Assert.True(remedied.Supplies!.Count == 2 || remedied.Supplies[0].RatedA == 32);
    }

    [Fact]
    public void Load_above_every_supply_moves_to_another_rack()
    {
        var rack = One(80_000);
        var finding = Only(rack);
        Assert.Empty(Remedied(rack, finding, finding.Remedies.Count - 1).Items);
    }
}
