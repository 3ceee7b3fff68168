using RackCheck.Model;
using RackCheck.Rules.Cooling;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.CoolRacks;

namespace RackCheck.Rules.Tests.Cooling;

public sealed class CondensationTests : RuleTests<Condensation>
{
    [Theory]
    [InlineData(25, 60, 16.69)] // WMO-No. 8
    [InlineData(35, 50, 23.02)] // WMO-No. 8
    [InlineData(24, 50, 12.93)] // WMO-No. 8
    public void A_setpoint_under_the_dew_point_is_a_warning(double ambient, double humidity, double dew)
    {
        var rack = Cool(Closed, Closed, ambient, humidity: humidity);
        var finding = Only(rack.Cooler(1000, dew - 0.01));
        Assert.Equal(Severity.Warning, finding.Severity);
        Numbers(finding, Math.Round(dew - 0.01, 3), dew, "C");
        Assert.Equal(["/cooling/airConditioner/setpointC", "/site/humidityMaxPercent"], finding.Pointers);
        Passes(rack.Cooler(1000, dew));
    }

    [Fact]
    public void Underfloor_air_is_checked_too()
    {
        var rack = Cool(Aired, Aired, 25, humidity: 60).Underfloor(400, 15);
        Assert.Equal("/cooling/underfloor/supplyC", Only(rack).Pointers[0]);
        Assert.Equal(17, Remedied(rack, Only(rack)).Cooling!.Underfloor!.SupplyC);
        Assert.Equal(53, Remedied(rack, Only(rack), 1).Site!.HumidityMaxPercent); // saturation 1704 Pa at 15 C, 3160 at 25: 53.9 %
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(3, 1)]
    public void A_policy_keeps_a_margin(double margin, int count) =>
        Assert.Equal(count, Findings(Cool(Closed, Closed, 25, humidity: 60).Cooler(1000, 18).Limit(Id, "marginK", margin)).Count);

    [Fact]
    public void What_is_absent_is_asked_for_where_something_is_cooled()
    {
        ReportsMissing(Cool(Closed, Closed).Cooler(1000), "/site/humidityMaxPercent");
        ReportsMissing(Cool(Closed, Closed, humidity: 50).Underfloor(100, null), "/cooling/underfloor/supplyC");
        Passes(Cool(Closed, Closed) with { Items = [Warm("wave-pc", 1, 100)] });
        Passes(Cool(Closed, Closed, humidity: 0).Cooler(1000, 5));
    }

    [Fact]
    public void Higher_setpoint_is_remedy()
    {
        var rack = Cool(Closed, Closed, 35, humidity: 50).Cooler(1000, 20);
        Assert.Equal(24, Remedied(rack, Only(rack)).Cooling!.AirConditioner!.SetpointC);
    }
}
