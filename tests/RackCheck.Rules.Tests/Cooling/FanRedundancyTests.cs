using RackCheck.Model;
using RackCheck.Rules.Cooling;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.CoolRacks;

namespace RackCheck.Rules.Tests.Cooling;

// That one fan may fail is practice, no source; flows are worked by hand.
public sealed class FanRedundancyTests : RuleTests<FanRedundancy>
{
    private static FanSet Plain(int count, double flow = 260) => new() { Count = count, FreeFlowM3h = flow };

    // 1000 W at 10 K and 20 C: 297.195 m3/h, of hot air in the roof 297.195 x 303.15/293.15 = 307.33; a fan of 260 m3/h moves 156 built in.
    private static RackDescription Rack(params FanSet[] fans) => Cool(Open, Closed).RoofFans(fans).With(Warm("wave-pc", 1, 1000));

    [Fact]
    public void Fans_without_redundancy_are_advice()
    {
        var finding = Only(Rack(Plain(2)));
        Assert.Equal(Severity.Advice, finding.Severity);
        Assert.Equal((156, "/cooling/roofFans/0/count"), (finding.Actual!.Value, finding.Pointers[0]));
    }

    [Fact]
    public void Redundant_fan_passes() => Passes(Rack(Plain(3)));

    [Fact]
    public void Airflow_too_low_with_all_fans_is_left_to_another_rule() => Passes(Rack(Plain(1)));

    [Fact]
    public void Failed_fan_is_the_most_important_one()
    {
        // 60 + 60 + 192 = 312 without the largest: 120.
        var finding = Only(Rack(Plain(2, 100), Plain(0, 900), Plain(1, 320)));
        Assert.Equal((120, "/cooling/roofFans/2/count"), (finding.Actual!.Value, finding.Pointers[0]));
        Assert.Equal("/cooling/fanTrays/0/count", Only(Cool(Open, Open).Trays(Plain(2)).With(Warm("wave-pc", 1, 1000))).Pointers[0]);
    }

    [Fact]
    public void Fans_on_a_curve_move_more_than_their_share_with_one_out()
    {
        // Fan laws: one moves 244.7 m3/h, two 289.4 on K = 5e-4.
        var area = 1e4 * Math.Sqrt(1.2 / 2 / 5e-4) / 2160;
        var rack = Cool(Closed, Closed).RoofFans(Curved(2)).Cooled(c => c with { IntakeAreaCm2 = area });
        Passes(rack.With(Warm("wave-pc", 1, 795)));
        Assert.InRange(Only(rack.With(Warm("wave-pc", 1, 850))).Actual!.Value, 244.73, 244.74);
    }

    [Fact]
    public void What_is_absent_is_asked_for()
    {
        ReportsMissing(Cool(Closed, Closed).RoofFans(Curved(2)).With(Warm("wave-pc", 1, 100)), "/cooling/intakeAreaCm2");
        ReportsMissing(Rack(Plain(3)).With(Warm("flume-daq", 9, null) with { Category = ItemCategory.Server }), "/items/1/heatW");
        Passes(Cool(Closed, Closed).RoofFans(Curved(2)).With(Unit("drawer", 2).At(1)));
    }

    [Fact]
    public void One_more_fan_is_remedy()
    {
        var rack = Rack(Plain(2));
        Assert.Equal(3, Remedied(rack, Only(rack)).Cooling!.RoofFans![0].Count);
    }
}
