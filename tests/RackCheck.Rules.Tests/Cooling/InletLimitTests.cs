using RackCheck.Model;
using RackCheck.Rules.Cooling;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.CoolRacks;

namespace RackCheck.Rules.Tests.Cooling;

public sealed class InletLimitTests : RuleTests<InletLimit>
{
    private static RackDescription Rack(double ambient, double altitude = 0, double? limit = 35) =>
        Cool(Aired, Aired, ambient, altitude).With(Warm("wave-pc", 1, 100, maxInlet: limit));

    [Fact]
    public void Room_above_inlet_limit_is_error()
    {
        var finding = Only(Rack(35.1));
        Assert.Equal(["/items/0/maxInletC", "/site/ambientMaxC"], finding.Pointers);
        Numbers(finding, 35.1, 35, "C");
        Passes(Rack(35));
    }

    [Theory]
    [InlineData(32, 1500, 30)] // ASHRAE TC 9.9: A1 at 1500 m
    [InlineData(35, 1800, 32)] // ASHRAE TC 9.9: A2 at 1800 m
    [InlineData(35, 3050, 27.833)] // ASHRAE TC 9.9
    [InlineData(35, 900, 35)]
    [InlineData(40, 1800, 34.857)] // ASHRAE TC 9.9: A3 at 1800 m, 40 - 900/175
    [InlineData(45, 2500, 32.2)] // ASHRAE TC 9.9: A4 at 2500 m, 45 - 1600/125
    public void The_limit_falls_with_the_altitude(double limit, double altitude, double atSite)
    {
        Passes(Rack(atSite, altitude, limit));
        Numbers(Only(Rack(atSite + 0.1, altitude, limit)), Math.Round(atSite + 0.1, 3), atSite, "C");
    }

    [Fact]
    public void Above_the_classes_nothing_is_claimed()
    {
        ReportsMissing(Rack(60, 3051));
        Assert.Single(Findings(Rack(60, 3050)));
    }

    [Fact]
    public void Derating_above_45_C_is_a_warning_only()
    {
        Assert.Equal(Severity.Warning, Only(Rack(45, 2500, 55)).Severity); // 55 - 1600/125 = 42.2
        Assert.Equal(Severity.Error, Only(Rack(56, 2500, 55)).Severity);
        Assert.Equal(Severity.Error, Only(Rack(45, 2500, 45)).Severity);
    }

    [Fact]
    public void Room_absent_uses_defaults()
    {
        var rack = EmptyRack().With(Warm("wave-pc", 1, null, maxInlet: 34));
        Numbers(Only(rack), 35, 34, "C");
        Assert.Equal([("/site/altitudeM", 0.0), ("/site/ambientMaxC", 35.0)], Report(rack)
            .Assumed().Where(a => a.Pointer.StartsWith("/site", StringComparison.Ordinal)).Select(a => (a.Pointer, a.Value.Number!.Value)));
    }

    [Fact]
    public void Underfloor_and_conditioned_air_replace_room_air()
    {
        Passes(Rack(45).Underfloor(500, 20));
        Assert.Equal("/cooling/underfloor/supplyC", Only(Rack(30).Underfloor(500, 36)).Pointers[1]);
        ReportsMissing(Rack(45).Underfloor(500, null), "/cooling/underfloor/supplyC");
        Passes(Rack(45).Cooler(500));
        Assert.Equal("/cooling/airConditioner/setpointC", Only(Rack(20).Cooler(500, 36)).Pointers[1]);
    }

    [Fact]
    public void Each_item_is_a_finding_and_without_limits_there_is_none()
    {
        Assert.Equal(2, Findings(Rack(40).With(Warm("a", 9, 1, maxInlet: 38), Warm("b", 13, 1, maxInlet: 41))).Count);
        ReportsMissing(Rack(60, limit: null), "/items/0/maxInletC");
    }

    [Fact]
    public void Inlet_remedies_are_room_air_conditioner_or_removal()
    {
        var rack = Rack(33, 1800);
        Assert.Equal(32, Remedied(rack, Only(rack)).Site!.AmbientMaxC);
        Assert.Equal(32, Remedied(rack, Only(rack), 1).Cooling!.AirConditioner!.SetpointC);
        Assert.Empty(Remedied(rack, Only(rack), 2).Items);
        var floor = Rack(30).Underfloor(500, 36);
        Assert.Equal(35, Remedied(floor, Only(floor)).Cooling!.Underfloor!.SupplyC);
        var cooler = Cool(Closed, Closed, 20).Cooler(2000, 36).With(Warm("wave-pc", 1, 100, maxInlet: 35));
        Assert.Equal(35, Remedied(cooler, Only(cooler)).Cooling!.AirConditioner!.SetpointC);
    }

    // ASHRAE Fundamentals: at 30 C and 1.1644 kg/m3, 1000 W warm 200 m3/h by 3600 x 1000 / (1.1644 x 1006 x 200) = 15.366 K.
    private static RackDescription Reversed(double limit, Door? rear = null, double altitude = 0) => Cool(Aired, rear ?? Aired, 30, altitude).With(
        Warm("wave-pc", 1, 1000, AirflowDirection.FrontToRear, 200, 60), Warm("switch", 10, 50, AirflowDirection.RearToFront, 30, limit));

    [Fact]
    public void Item_with_airflow_rear_to_front_takes_in_exhaust_air()
    {
        var finding = Only(Reversed(45));
        Assert.Equal(["/items/1/airflow/direction", "/items/1/maxInletC"], finding.Pointers);
        Numbers(finding, 45.366, 45, "C");
        Assert.Equal("3600 x 1000 / (1.1644 x 1006 x 200) = 15.366; 30 + 15.366 = 45.366 > 45", finding.Calculation);
        Assert.Equal(Severity.Error, finding.Severity);
        Passes(Reversed(45.366));
        Passes(Reversed(45, Closed));
    }

    [Fact]
    public void Front_to_rear_item_and_reversed_item_alone_take_in_room_air()
    {
        var (server, reversed) = (Reversed(45).Items[0], Reversed(45).Items[1]);
        Passes(Reversed(45) with { Items = [server, reversed with { Airflow = new Model.Airflow { Direction = AirflowDirection.FrontToRear } }] });
        Passes(Reversed(45) with { Items = [reversed] });
    }

    [Fact]
    public void Room_above_the_limit_is_reported_once_for_a_reversed_item() =>
        Assert.Contains("The room reaches", Only(Reversed(29)).Message, StringComparison.Ordinal);

    [Fact]
    public void Cooler_room_is_remedy_for_exhaust_air() => Assert.Equal(29, Remedied(Reversed(45), Only(Reversed(45))).Site!.AmbientMaxC);
}
