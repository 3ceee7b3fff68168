using RackCheck.Model;
using RackCheck.Rules.Cooling;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.CoolRacks;

namespace RackCheck.Rules.Tests.Cooling;

public sealed class CoolerCapacityTests : RuleTests<CoolerCapacity>
{
    // 2000 x 800 x 600, free: 5.712 m2 (IEC TR 60890).
    private static RackDescription Rack(double capacity, double ambient = 25, double heat = 1500, double? setpoint = 35, double? rated = 35) =>
        Cool(Closed, Closed, ambient).Cabinet(c => c with { WidthMm = 800, DepthMm = 600 }).Cooler(capacity, setpoint, rated: rated)
            .With(Warm("paddle-drive", 1, heat, maxInlet: 40));

    [Fact]
    public void Capacity_below_net_heat_load_is_error()
    {
        var finding = Only(Rack(1185));
        Numbers(finding, 1185, 1185.84, "W"); // sheet steel
        Assert.Equal(["/cooling/airConditioner/capacityW"], finding.Pointers);
        Assert.Equal("1500 - 5.5 x 5.712 x (35 - 25) = 1185.84 > 1185", finding.Calculation);
        Passes(Rack(1185.84));
    }

    [Fact]
    public void Hot_room_lowers_capacity_and_raises_load()
    {
        // 1500 - 5.5 x 5.712 x (35 - 40) = 1657.08; 1750 x (1 - 0.015 x 5) = 1618.75.
        Numbers(Only(Rack(1750, 40)), 1618.75, 1657.08, "W");
        Passes(Rack(1792, 40)); // 1657.6
        Passes(Rack(1800, 40, rated: 40));
        Assert.Contains("60 - 35 = 25 > 20, above the operating range", Only(Rack(1800, 60)).Calculation, StringComparison.Ordinal);
    }

    [Fact]
    public void Surface_alone_enough_passes_any_capacity() => Passes(Rack(0, 20, 500, 40)); // sheet steel: under nothing

    [Fact]
    public void Setpoint_and_rating_default_to_35_C()
    {
        Passes(Rack(1185.84, setpoint: null, rated: null));
        Assert.Equal([35.0, 35], Report(Rack(1200, setpoint: null, rated: null))
            .Assumed().Where(a => a.Pointer.StartsWith("/cooling/airConditioner", StringComparison.Ordinal)).Select(a => a.Value.Number!.Value));
    }

    [Theory]
    [InlineData(4, 1)]
    [InlineData(6, 0)]
    public void A_policy_sets_the_heat_transfer(double transfer, int count) =>
        Assert.Equal(count, Findings(Rack(1185.84).Limit(Id, "heatTransferWM2K", transfer)).Count);

    [Fact]
    public void Heat_is_asked_for_where_there_is_a_cooler()
    {
        ReportsMissing(Rack(2000).With(Warm("flume-daq", 9, null) with { Category = ItemCategory.Server }), "/items/1/heatW");
        ReportsMissing(Cool(Closed, Closed).Cooler(0).With(Unit("drawer", 2).At(1)), "/items/0/heatW");
        Passes(Cool(Closed, Closed).Cooler(0).With(Unit("drawer", 2).At(1) with { HeatW = 0 }, Unit("plate", 1)
            .At(9) with { Category = ItemCategory.BlankingPanel }));
        Passes(Cool(Closed, Closed).With(Warm("wave-pc", 1, 1000)));
    }

    [Fact]
    public void Capacity_remedies_are_larger_unit_setpoint_or_less_heat()
    {
        var rack = Rack(1000, setpoint: 30);
        Assert.Equal(1400, Remedied(rack, Only(rack)).Cooling!.AirConditioner!.CapacityW); // 1500 - 157.08 = 1342.92
        var near = Rack(1200, setpoint: 30);
        Assert.Equal(35, Remedied(near, Only(near), 1).Cooling!.AirConditioner!.SetpointC);
        Assert.Empty(Remedied(near, Only(near), 2).Items);
    }
}
