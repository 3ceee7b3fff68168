using RackCheck.Model;
using RackCheck.Rules.Cooling;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.CoolRacks;

namespace RackCheck.Rules.Tests.Cooling;

// Practice: no source beyond it.
public sealed class CoolerAvoidableTests : RuleTests<CoolerAvoidable>
{
    private static RackDescription Rack(double flow = 500, double ambient = 25, string? ip = null, double? limit = 35) =>
        Cool(Closed, Closed, ambient, ip: ip).Cooler(1500).With(Warm("wave-pc", 1, 1500, AirflowDirection.FrontToRear, flow, limit));

    [Fact]
    public void Perforated_doors_enough_is_advice()
    {
        var rack = Rack();
        var finding = Only(rack);
        Assert.Equal(Severity.Advice, finding.Severity);
        Assert.Equal(["/cooling/airConditioner"], finding.Pointers);
        var remedied = Remedied(rack, finding);
        Assert.Equal((null, DoorStyle.Perforated), (remedied.Cooling!.AirConditioner, remedied.Cabinet!.FrontDoor!.Style));
    }

    [Fact]
    public void Roof_fans_enough_names_their_number()
    {
        // 1500 W at 10 K and 1.1839 kg/m3: 453.4 m3/h.
        var rack = Rack(400);
        Assert.Equal(2, Only(rack).MessageData["fans"].Number);
        Assert.Equal(2, Remedied(rack, Only(rack)).Cooling!.RoofFans!.Single().Count);
    }

    [Fact]
    public void Hot_or_dusty_room_justifies_air_conditioner()
    {
        Passes(Rack(ambient: 35.1));
        Assert.Single(Findings(Rack(ambient: 35)));
        Passes(Rack(ip: "IP54"));
        Assert.Single(Findings(Rack(ip: "IP20")));
    }

    [Fact]
    public void Limits_and_heat_are_asked_for()
    {
        ReportsMissing(Rack(limit: null), "/items/0/maxInletC");
        ReportsMissing(Rack() with { Items = [.. Rack().Items, Warm("flume-daq", 9, null) with { Category = ItemCategory.Server }] }, "/items/1/heatW");
        Passes(Cool(Closed, Closed).Cooler(1500));
        Passes(Cool(Closed, Closed) with { Items = Rack().Items });
    }
}
