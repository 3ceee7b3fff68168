using RackCheck.Model;
using RackCheck.Rules.Cooling;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.CoolRacks;

namespace RackCheck.Rules.Tests.Cooling;

public sealed class BatteryVentilationTests : RuleTests<Rules.Cooling.BatteryVentilation>
{
    private static readonly Battery Cells = new() { Type = BatteryType.Vrla, Cells = 48, CapacityAh = 100, Boost = true };

    private static RackDescription Rack(Battery? cells, double? intake = null, double? roof = null, Door? front = null, Door? rear = null) =>
        Cool(front ?? Closed, rear ?? Closed, 25).Cabinet(c => c with
        {
            Roof = roof is null ? new Roof { Style = RoofStyle.Solid } : new Roof { Style = RoofStyle.Vented, OpenAreaCm2 = roof },
        }).Cooled(c => c with { IntakeAreaCm2 = intake }).With(Warm("tank-cells", 1, 20, maxInlet: 40) with { Battery = cells });

    [Fact]
    public void Batteries_in_a_closed_cabinet_are_a_safety_error()
    {
        // IEC 62485-2: 0.05 x 48 x 8 x 100/1000 = 1.92 m3/h and 28 x 1.92 = 53.76 cm2.
        var finding = Only(Rack(Cells));
        Assert.Equal((Severity.Error, true), (finding.Severity, finding.Safety));
        Numbers(finding, 0, 53.76, "cm2");
        Assert.Equal("0.05 x 48 x 8 x 100 / 1000 = 1.92; 28 x 1.92 = 53.76 > 0", finding.Calculation);
        Assert.Equal(["/items/0", "/cabinet"], finding.Pointers);
    }

    // 0.05 x 12 x 1 x 9/1000 = 0.0054 m3/h; 28 x 0.0054 = 0.1512 cm2, not 28 x 0.005.
    [Fact]
    public void Opening_follows_the_exact_airflow()
    {
        var finding = Only(Rack(new Battery { Type = BatteryType.Vrla, Cells = 12, CapacityAh = 9, Boost = false }));
        Numbers(finding, 0, 0.151, "cm2");
        Assert.Equal("0.05 x 12 x 1 x 9 / 1000 = 0.0054; 28 x 0.0054 = 0.151 > 0", finding.Calculation);
    }

    [Fact]
    public void At_the_limit_it_passes()
    {
        Passes(Rack(Cells, 53.76, 53.76));
        Assert.Single(Findings(Rack(Cells, 53.7, 60)));
        Assert.Single(Findings(Rack(Cells, 60, 53.7)));
    }

    [Theory]
    [InlineData(BatteryType.Vrla, false, 6.72)] // IEC 62485-2: 28 x 0.05 x 48 x 1 x 100/1000
    [InlineData(BatteryType.Vented, false, 33.6)] // 5 mA/Ah
    [InlineData(BatteryType.Vented, true, 134.4)] // 20 mA/Ah
    public void Gassing_follows_type_and_charge(BatteryType type, bool boost, double area) =>
        Numbers(Only(Rack(Cells with { Type = type, Boost = boost }, 1, 1)), 1, area, "cm2");

    [Fact]
    public void Batteries_of_several_items_add_up()
    {
        var rack = Rack(Cells).With(Warm("b", 9, 20) with { Battery = Cells with { Boost = null } });
        Assert.Equal(60.48, Only(rack).Limit!.Value); // 53.76 + 6.72
    }

    [Fact]
    public void Open_cabinets_lithium_and_unspecified_batteries_pass()
    {
        Passes(Rack(Cells, front: Aired, rear: Aired));
        Passes(Rack(Cells, front: Aired)); // half of 0.64 x 0.93 m2 each way
        Passes(Rack(Cells).Cabinet(c => c with { SidePanels = false }));
        Passes(Rack(Cells with { Type = BatteryType.Lithium }));
        Passes(Rack(null));
        Passes(Rack(Cells, 60).RoofFans(Curved(1)));
    }

    [Fact]
    public void An_air_conditioner_does_not_ventilate() => Assert.Single(Findings(Rack(Cells).Cooler(500)));

    [Fact]
    public void What_is_absent_is_asked_for()
    {
        ReportsMissing(Rack(new Battery()), "/items/0/battery/capacityAh", "/items/0/battery/cells", "/items/0/battery/type");
        ReportsMissing(Rack(Cells).Cabinet(c => c with { FrontDoor = null }), "/cabinet/frontDoor/style");
        ReportsMissing(Rack(Cells, 60).Cabinet(c => c with { Roof = new Roof { Style = RoofStyle.Vented } }), "/cabinet/roof/openAreaCm2");
        Passes(Rack(new Battery(), front: Aired, rear: Aired)); // no batteries of a rack need more
    }

    [Fact]
    public void Remedies_are_openings_doors_or_another_place()
    {
        var rack = Rack(Cells);
        var opened = Remedied(rack, Only(rack));
        Assert.Equal((100.0, 100.0), (opened.Cooling!.IntakeAreaCm2, opened.Cabinet!.Roof!.OpenAreaCm2));
        Assert.Equal(DoorStyle.Perforated, Remedied(rack, Only(rack), 1).Cabinet!.RearDoor!.Style);
        Assert.Empty(Remedied(rack, Only(rack), 2).Items);
    }
}
