using RackCheck.Model;
using RackCheck.Rules.Cooling;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.CoolRacks;

namespace RackCheck.Rules.Tests.Cooling;

public sealed class DoorRestrictionTests : RuleTests<DoorRestriction>
{
    private static Door Tight(double? open = 30, double? area = 0.2) => new() { Style = DoorStyle.Perforated, OpenAreaPercent = open, PerforatedAreaM2 = area };

    private static RackDescription Rack(Door front, Door rear, double heat = 3000) =>
        Cool(front, rear).Cooled(c => c).With(Warm("wave-pc", 1, heat, flow: 800));

    [Fact]
    public void A_tight_door_is_a_warning()
    {
        // 3000 W at 10 K and 1.2041 kg/m3: 891.586 m3/h; through 0.2 m2: 1.2383 m/s; zeta 19.3157 (Idelchik): 19.3157 x 1.2041 x 1.2383^2/2 = 17.832 Pa.
        var finding = Only(Rack(Tight(), Open));
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal("/cabinet/frontDoor", finding.Pointers[0]);
        Assert.Equal((17.832, 5), (finding.Actual!.Value, finding.Limit!.Value));
        Assert.Equal(30, finding.MessageData["uncertaintyPercent"].Number);
    }

    [Fact]
    public void The_larger_of_need_and_own_airflow_counts()
    {
        // Idelchik: 17.832 Pa at 891.586 m3/h are 89.72 Pa at 2000 m3/h.
        var rack = Cool(Tight(), Open).With(Warm("wave-pc", 1, 3000, flow: 2000));
        Assert.Equal(89.72, Only(rack).Actual!.Value, 0.05);
        Assert.Equal(89.72, Only(rack.Cooled(c => c with { RiseK = 10 })).Actual!.Value, 0.05);

        // Without airflow and riseK: 3000 W at 15 K: 594.39 m3/h, 17.832 x (10/15)^2 = 7.925 Pa.
        Assert.Equal(7.925, Only(Cool(Tight(), Open).With(Warm("wave-pc", 1, 3000))).Actual!.Value, 0.01);
    }

    [Fact]
    public void Each_door_is_a_finding() => Assert.Equal(["front door", "rear door"], Findings(Rack(Tight(), Tight())).Select(f => f.Subject));

    [Fact]
    public void At_the_limit_it_passes()
    {
        // 17.832 Pa on 0.2 m2 are 5 Pa on 0.2 sqrt(17.832/5) = 0.37770 m2.
        Passes(Rack(Tight(area: 0.3779), Open));
        Assert.Single(Findings(Rack(Tight(area: 0.3770), Open)));
    }

    [Fact]
    public void The_area_is_taken_from_the_cabinet_where_none_is_given()
    {
        Passes(Rack(Tight(area: null), Open)); // (600 - 100) x 44.45 x 42 = 0.933 m2
        Assert.Single(Findings(Rack(Tight(area: null), Open, 9000)));
        Assert.Contains(Report(Rack(Tight(area: null), Open)).Assumed(), a => a.Pointer == "/cabinet/frontDoor/perforatedAreaM2" && a.Value.Number == 0.933);
    }

    [Theory]
    [InlineData(17.9, 0)]
    [InlineData(17.8, 1)]
    public void A_policy_sets_the_loss(double limit, int count) => Assert.Equal(count, Findings(Rack(Tight(), Open).Limit(Id, "doorLossPa", limit)).Count);

    [Fact]
    public void Doors_off_the_airflow_path_are_not_checked()
    {
        Assert.Equal("front door", Only(Rack(Tight(), Closed).RoofFans(Curved(9))).Subject);

        // Between two perforated doors roof fans change nothing: the air of the equipment passes both doors.
        Assert.Equal(2, Findings(Rack(Tight(), Tight()).RoofFans(Curved(9))).Count);
        Passes(Rack(Closed, Closed));
        Passes(Rack(Tight(), Tight()).Cooler(4000));
        Passes(Rack(Tight(), Tight()).Cabinet(c => c with { SidePanels = false }));
    }

    [Fact]
    public void What_is_absent_is_asked_for()
    {
        ReportsMissing(Rack(Tight(null), Open), "/cabinet/frontDoor/openAreaPercent");
        ReportsMissing(Cool(null, Open).With(Warm("wave-pc", 1, 3000)), "/cabinet/frontDoor/style");
        ReportsMissing(Cool(Aired, Open).With(Warm("wave-pc", 1, null) with { Category = ItemCategory.Server }).Cooled(c => c), "/items/0/heatW");
        Passes(Cool(Tight(), Open).With(Unit("drawer", 2).At(1)));
    }

    [Fact]
    public void Larger_open_area_is_remedy()
    {
        var rack = Rack(Tight(area: 0.3), Open);
        Assert.Equal(64, Remedied(rack, Only(rack)).Cabinet!.FrontDoor!.OpenAreaPercent);
        var small = Rack(Tight(80, 0.05), Open);
        Assert.Equal(0.933, Remedied(small, Only(small)).Cabinet!.FrontDoor!.PerforatedAreaM2);
    }
}
