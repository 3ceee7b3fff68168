using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.CoolRacks;

namespace RackCheck.Rules.Tests.Cooling;

public sealed class AirflowTests : RuleTests<Rules.Cooling.Airflow>
{
    // ASHRAE Fundamentals: 1000 W at 10 K, 20 C, by the sea need 297.196 m3/h; with the density to four digits 1.2041: 297.195.
    private static RackDescription Own(double flow, double heat = 1000) =>
        Cool(Aired, Aired).Cooled(c => c).With(Warm("wave-pc", 1, heat, AirflowDirection.FrontToRear, flow));

    [Fact]
    public void Airflow_below_heat_load_is_error()
    {
        var rack = Own(297);
        var finding = Only(rack);
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Equal(["/items", "/cooling"], finding.Pointers);
        Assert.Equal(297.196, finding.Limit!.Value, 1e-3 * 2);
        Assert.Equal((297, "m3/h"), (finding.Actual!.Value, finding.Actual.Unit));
        Assert.StartsWith("3600 x 1000 / (1.2041 x 1006 x 10) = 297.19", finding.Calculation, StringComparison.Ordinal);
    }

    [Fact]
    public void Airflow_at_heat_load_passes()
    {
        Passes(Own(297.2));
        Passes(Own(3600 * 1000 / (1.2041 * 1006 * 10)));
    }

    [Theory]
    [InlineData(35, 0, 1301.68)] // ASHRAE Fundamentals
    [InlineData(35, 1500, 1559.83)] // ASHRAE Fundamentals
    public void Thin_and_hot_air_needs_more_flow(double ambient, double altitude, double needed)
    {
        var rack = Cool(Aired, Aired, ambient, altitude).Cooled(c => c with { RiseK = 12 }).With(Warm("wave-pc", 1, 5000, flow: 100));
        Assert.InRange(Only(rack).Limit!.Value, needed * 0.9999, needed * 1.0001);
    }

    [Theory]
    [InlineData(ItemCategory.Server)]
    [InlineData(ItemCategory.Computer)]
    [InlineData(ItemCategory.Instrument)]
    public void Powered_item_without_heat_is_missing_data(ItemCategory kind)
    {
        var rack = Cool(Aired, Aired);
        ReportsMissing(rack.With(Unit("wave-pc", 4).At(1) with { Category = kind }), "/items/0/airflow/flowM3h", "/items/0/heatW");
        ReportsMissing(rack.With(Warm("wave-pc", 1, null, AirflowDirection.FrontToRear, 100)), "/items/0/heatW");
        Passes(rack.With(Unit("tray", 1).At(1) with { Category = ItemCategory.Shelf }, Unit("panel", 1).At(2)));
    }

    [Fact]
    public void Heat_is_given_else_typical_else_rated()
    {
        var item = Warm("wave-pc", 1, null, flow: 1) with { Power = new ItemPower { RatedW = 800, TypicalW = 500, Plugs = [ConnectorCode.C14] } };
        var rack = Cool(Aired, Aired).Cooled(c => c);
        Assert.Equal(500, Only(rack.With(item)).MessageData["heatW"].Number);
        Assert.Equal(800, Only(rack.With(item with { Power = item.Power! with { TypicalW = null } })).MessageData["heatW"].Number);
        Assert.Equal(650, Only(rack.With(item with { HeatW = 650 })).MessageData["heatW"].Number);
    }

    [Fact]
    public void Fans_run_at_working_point()
    {
        // Fan laws: two fans on K = 5e-4 at 1.2 kg/m3 move 289.384 m3/h. An intake of A has K = rho/2/(3600 x 0.6 A)^2, so A = sqrt(1.2/2/5e-4)/2160 m2.
        var area = 1e4 * Math.Sqrt(1.2 / 2 / 5e-4) / 2160;
        var rack = Cool(Closed, Closed).RoofFans(Curved(2)).Cooled(c => c with { IntakeAreaCm2 = area }).With(Warm("wave-pc", 1, 1200));
        var finding = Only(rack);
        Assert.Equal(289.384, finding.Actual!.Value, 0.001);
        Assert.Equal("/cooling/roofFans", finding.Pointers[0]);
        Assert.Contains("working point", finding.Calculation, StringComparison.Ordinal);
        Passes(rack with { Items = [Warm("wave-pc", 1, 973)] });
    }

    [Fact]
    public void Fan_without_curve_delivers_60_percent_of_free_flow()
    {
        var fans = new FanSet { Count = 1, FreeFlowM3h = 500 };
        var rack = Cool(new Door { Style = DoorStyle.Perforated }, Closed).RoofFans(fans).With(Warm("wave-pc", 1, 1010));
        Assert.Equal(300, Only(rack).Actual!.Value);
        Passes(rack with { Items = [Warm("wave-pc", 1, 1009)] });
    }

    [Fact]
    public void Air_from_the_floor_needs_no_doors()
    {
        var rack = Cool(Closed, Closed).Underfloor(250, 18).With(Warm("wave-pc", 1, 1000));
        Assert.Equal("/cooling/underfloor/supplyM3h", Only(rack).Pointers[0]);
        Passes(Cool(Closed, Closed).Underfloor(298, 18).With(Warm("wave-pc", 1, 1000)));
        ReportsMissing(Cool(Closed, Closed).Underfloor(null, 18).With(Warm("wave-pc", 1, 1000)), "/cooling/underfloor/supplyM3h");
    }

    [Fact]
    public void What_is_absent_is_asked_for()
    {
        var pc = Warm("wave-pc", 1, 1000, AirflowDirection.FrontToRear, 400);
        ReportsMissing(Cool(null, null).With(pc), "/cabinet/frontDoor/style", "/cabinet/rearDoor/style");
        ReportsMissing(Cool(Aired, Aired).With(pc, Warm("flume-daq", 5, null) with { Category = ItemCategory.Instrument }), "/items/1/heatW");
        ReportsMissing(Cool(Aired, Aired).With(Warm("wave-pc", 1, 1000)), "/items/0/airflow/flowM3h");
        ReportsMissing(Cool(Closed, Closed).RoofFans(Curved(2)).With(pc), "/cooling/intakeAreaCm2");
        ReportsMissing(Cool(new Door { Style = DoorStyle.Perforated }, Closed).RoofFans(Curved(2)).With(pc), "/cabinet/frontDoor/openAreaPercent");
        ReportsMissing(Cool(Aired, Closed).Cabinet(c => c with { Roof = new Roof { Style = RoofStyle.Vented } }).Trays(Curved(2)).With(pc),
            "/cabinet/roof/openAreaCm2");
    }

    [Fact]
    public void Known_heat_alone_can_be_error()
    {
        var report = Report(Own(200).With(Warm("flume-daq", 5, null, flow: 10) with { Category = ItemCategory.Instrument }));
        Assert.Single(report.Findings);
        Assert.Equal(["/items/1/heatW"], Assert.Single(report.NotAssessed).Missing);
        Assert.Null(report.Figures.Cooling!.HeatW);
    }

    [Fact]
    public void Unknown_flow_gives_no_finding() =>
        ReportsMissing(Own(200).With(Warm("flume-daq", 5, 100, AirflowDirection.FrontToRear)), "/items/1/airflow/flowM3h");

    [Fact]
    public void A_UPS_gives_off_its_losses_only()
    {
        var ups = Warm("tank-ups", 5, null) with { Category = ItemCategory.Ups, Power = new ItemPower { RatedW = 3000, Plugs = [ConnectorCode.C20] } };
        ReportsMissing(Own(400).With(ups), "/items/1/heatW");
        Passes(Own(400).With(ups with { HeatW = 120 }));
    }

    [Fact]
    public void No_heat_data_or_closed_cabinet_gives_no_finding()
    {
        Passes(Cool(Aired, Aired).With(Unit("wave-pc", 4).At(1)));
        Passes(Cool(Closed, Closed).With(Warm("wave-pc", 1, 1000)));
        Passes(Cool(Closed, Closed).Cooler(2000).With(Warm("wave-pc", 1, 1000)));
    }

    [Fact]
    public void Roof_fans_with_redundancy_are_remedy()
    {
        var rack = Own(200);
        var remedied = Remedied(rack, Only(rack));
        var fans = Assert.Single(remedied.Cooling!.RoofFans!);
        Assert.Equal(2, fans.Count);
        Assert.DoesNotContain(Judge.Checker.Check(remedied).Findings, f => f.Rule == "cooling.fan-redundancy");
    }

    [Fact]
    public void More_fan_trays_are_remedy()
    {
        var rack = Cool(Aired, Aired).Trays(new FanSet { Count = 1, FreeFlowM3h = 300 }).With(Warm("wave-pc", 1, 1000));
        Assert.Equal(2, Remedied(rack, Only(rack), 1).Cooling!.FanTrays!.Count);
    }

    [Fact]
    public void Dust_protection_adds_filters_to_fans()
    {
        var rack = Cool(Closed, Closed, ip: "IP54").Cabinet(c => c with { IpCode = "IP54" }).RoofFans(new FanSet { Count = 1, FreeFlowM3h = 300 })
            .Cooled(c => c with { IntakeAreaCm2 = 600, Filters = true }).With(Warm("wave-pc", 1, 1000));
        var remedied = Remedied(rack, Only(rack));
        Assert.Equal((true, DoorStyle.Solid), (remedied.Cooling!.Filters, remedied.Cabinet!.FrontDoor!.Style));
    }

    [Fact]
    public void Dust_tight_cabinet_gets_air_conditioner()
    {
        var rack = Cool(Closed, Closed, ip: "IP65").Cabinet(c => c with { IpCode = "IP65" }).Underfloor(100, 18).With(Warm("wave-pc", 1, 1000));
        var cooler = Remedied(rack, Only(rack)).Cooling!.AirConditioner!;

        // 1000 - 5.5 x 7.44 x (35 - 20) = 386.2, in steps of 100; A = 1.8 x 2 x 1.6 + 1.4 x 0.6 = 6.6 m2: 1000 - 544.5 = 455.5.
        Assert.Equal((500, 35), (cooler.CapacityW, cooler.SetpointC));
    }

    [Fact]
    public void Density_at_20_C_agrees_with_the_ideal_gas() => Assert.Equal(1.2041, Air.DensityKgM3(20, 0), 1e-4);
}
