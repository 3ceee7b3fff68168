using RackCheck.Model;
using RackCheck.Rules.Cooling;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.CoolRacks;

namespace RackCheck.Rules.Tests.Cooling;

public sealed class ItemRiseTests : RuleTests<ItemRise>
{
    // ASHRAE Fundamentals: 1000 W warm 297.2 m3/h of air at 20 C by 10 K, so 118.88 m3/h by 25 K.
    private static RackDescription Rack(double flow, double heat = 1000) =>
        Cool(Aired, Aired).With(Warm("wave-pc", 1, heat, AirflowDirection.FrontToRear, flow));

    [Fact]
    public void Item_with_too_little_air_is_a_warning()
    {
        var finding = Only(Rack(100));
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal(["/items/0/airflow/flowM3h", "/items/0"], finding.Pointers);
        Numbers(finding, 29.72, 25, "K"); // 10 x 297.2 / 100
        Assert.Equal("3600 x 1000 / (1.2041 x 1006 x 100) = 29.72 > 25", finding.Calculation);
    }

    [Fact]
    public void At_the_limit_it_passes()
    {
        Passes(Rack(118.88));
        Assert.Single(Findings(Rack(118.8)));
    }

    [Fact]
    public void One_item_is_not_hidden_in_the_sum()
    {
        var finding = Only(Rack(2000, 500).With(Warm("flume-daq", 9, 400, AirflowDirection.FrontToRear, 40)));
        Assert.Equal("flume-daq", finding.MessageData["item"].Text);
        Assert.Empty(finding.Remedies);
    }

    [Fact]
    public void Items_without_fans_or_with_an_unknown_airflow_are_not_judged()
    {
        Passes(Cool(Aired, Aired).With(Warm("a", 1, 1000), Warm("b", 5, 1000, AirflowDirection.None, 0), Warm("c", 9, 1000, AirflowDirection.FrontToRear)));
        ReportsMissing(Cool(Aired, Aired).With(Warm("a", 1, null, AirflowDirection.FrontToRear, 100)), "/items/0/heatW");
    }

    [Theory]
    [InlineData(30, 0)]
    [InlineData(29.7, 1)]
    public void A_policy_sets_the_rise(double limit, int count) => Assert.Equal(count, Findings(Rack(100).Limit(Id, "itemRiseK", limit)).Count);
}
