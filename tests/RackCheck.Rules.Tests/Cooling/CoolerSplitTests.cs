using RackCheck.Model;
using RackCheck.Rules.Cooling;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.CoolRacks;

namespace RackCheck.Rules.Tests.Cooling;

// Practice: no source beyond it.
public sealed class CoolerSplitTests : RuleTests<CoolerSplit>
{
    private static RackDescription Rack(AirConditionerStyle? style, bool? wall) =>
        Cool(Closed, Closed).Cooler(1500, style: style).At(s => s with { OutsideWall = wall });

    [Fact]
    public void Without_an_outside_wall_a_split_one_is_an_error()
    {
        var rack = Rack(AirConditionerStyle.Split, false);
        Assert.Equal(["/cooling/airConditioner/style", "/site/outsideWall"], Only(rack).Pointers);
        Assert.Equal(AirConditionerStyle.Wall, Remedied(rack, Only(rack)).Cooling!.AirConditioner!.Style);
        Assert.Equal(AirConditionerStyle.Roof, Remedied(rack, Only(rack), 1).Cooling!.AirConditioner!.Style);
    }

    [Theory]
    [InlineData(AirConditionerStyle.Split, true)]
    [InlineData(AirConditionerStyle.Wall, false)]
    [InlineData(AirConditionerStyle.Roof, null)]
    [InlineData(null, true)]
    public void Any_other_passes(AirConditionerStyle? style, bool? wall) => Passes(Rack(style, wall));

    [Fact]
    public void Wall_and_style_are_asked_for()
    {
        ReportsMissing(Rack(AirConditionerStyle.Split, null), "/site/outsideWall");
        ReportsMissing(Rack(null, false), "/cooling/airConditioner/style");
        Passes(Cool(Closed, Closed));
    }
}
