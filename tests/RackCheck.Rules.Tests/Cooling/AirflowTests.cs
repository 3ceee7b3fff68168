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
    public void Fans_too_weak_on_any_path_are_error_though_the_path_is_unknown()
    {
        // 2 x 360 m3/h on an open path; 5000 W at 15 K need more than 900 m3/h.
        var rack = Cool(Closed, Closed).RoofFans(Curved(2)).With(Warm("wave-pc", 1, 5000));
        var finding = Only(rack);
        Assert.Equal(2 * Curved(1).FreeFlowM3h, finding.Actual!.Value);
        Assert.StartsWith("Even on an open path", finding.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(Report(rack).NotAssessed, n => n.Rule == Id);
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
        var rack = Cool(Aired, Aired).Cooled(c => c);
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
        Passes(rack with { Items = [Warm("wave-pc", 1, 941)] }); // 289.384 m3/h of air at 30 C: 973.7 x 293.15/303.15 = 941.6 W
    }

    [Fact]
    public void Fan_without_curve_delivers_60_percent_of_free_flow()
    {
        var fans = new FanSet { Count = 1, FreeFlowM3h = 500 };
        var rack = Cool(new Door { Style = DoorStyle.Perforated }, Closed).RoofFans(fans).With(Warm("wave-pc", 1, 1010));
        Assert.Equal(300, Only(rack).Actual!.Value);
        Passes(rack with { Items = [Warm("wave-pc", 1, 976)] }); // 300 m3/h of air at 30 C: 1009.4 x 293.15/303.15 = 976.1 W
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
        ReportsMissing(Cool(Aired, Aired).Cooled(c => c).With(pc, Warm("flume-daq", 5, null) with { Category = ItemCategory.Instrument }), "/items/1/heatW");
        ReportsMissing(Cool(Aired, Aired).Cooled(c => c).With(Warm("wave-pc", 1, 1000, AirflowDirection.None)), "/items/0/airflow/flowM3h");
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
    public void Items_without_a_stated_airflow_have_fans_that_suit_their_heat()
    {
        var daq = Warm("flume-daq", 5, 100, AirflowDirection.FrontToRear);
        Passes(Own(297.2).With(daq));
        Passes(Cool(Aired, Aired).Cooled(c => c).With(daq));
        Assert.Contains(Report(Own(297.2).With(daq)).Assumed(), a => a.Pointer == "/items");

        // ASHRAE Fundamentals: 100 W at 10 K need 29.72 m3/h.
        Assert.Equal(229.72, Only(Own(200).With(daq)).Actual!.Value, 0.001);
    }

    [Fact]
    public void Equipment_sets_the_rise_through_doors_unless_given()
    {
        var rack = Own(100) with { Cooling = null };
        Passes(rack);
        Assert.Null(Report(rack).Figures.Cooling!.AirflowNeededM3h);
        Assert.DoesNotContain(Report(rack).Assumed(), a => a.Pointer == "/cooling/riseK");
    }

    [Fact]
    public void Forced_air_may_rise_by_15_K()
    {
        // ASHRAE Fundamentals: 297.195 m3/h x 10/15 = 198.13 m3/h.
        var rack = Cool(Closed, Closed).Underfloor(198.2, 18).Cooled(c => c with { RiseK = null }).With(Warm("wave-pc", 1, 1000));
        Passes(rack);
        Assert.Equal(198.13, Only(rack.Underfloor(198, 18)).Limit!.Value, 0.001);
        Assert.Contains(Report(rack).Assumed(), a => a.Pointer == "/cooling/riseK" && a.Value.Number == 15);
    }

    [Theory]
    [InlineData(null, 64.5, true)] // fan laws, sharp-edged orifice, mats as common practice: 64.5 m3/h, clean 107.0 at 1.17 kg/m3
    [InlineData(400.0, 64.1, true)] // a roof opening counts as well
    [InlineData(null, 306.9, false)]
    public void Filter_mat_lowers_the_airflow(double? roof, double flow, bool hasFilters)
    {
        var rack = Cool(Closed, Closed).RoofFans(new FanSet { Count = 2, FreeFlowM3h = 160, MaxPressurePa = 45 })
            .Cooled(c => c with { IntakeAreaCm2 = 800, Filters = hasFilters }).Cabinet(c => c with { Roof = c.Roof! with { OpenAreaCm2 = roof } })
            .With(Warm("wave-pc", 1, 1200));
        var finding = Only(rack);
        Assert.Equal(flow, finding.Actual!.Value, 0.4);
        Assert.Equal(hasFilters, finding.Calculation!.Contains("with a clean filter", StringComparison.Ordinal));
        Assert.Equal(hasFilters, Report(rack).Assumed().Any(a => a.Pointer == "/cooling/filter/areaCm2" && a.Value.Number == 800));
        Assert.Equal(hasFilters, Report(rack).Assumed().Any(a => a.Pointer == "/cooling/filter/lossPa" && a.Value.Number == 80));
    }

    [Fact]
    public void Filter_data_replace_the_assumption()
    {
        // 80 Pa at 144 m3/h is what a mat of 800 cm2 loses before it is changed: the same working point, without a clean one.
        var rack = Cool(Closed, Closed).RoofFans(new FanSet { Count = 2, FreeFlowM3h = 160, MaxPressurePa = 45 })
            .Cooled(c => c with { IntakeAreaCm2 = 800, Filter = new AirFilter { LossPa = 80, AtM3h = 144 } }).With(Warm("wave-pc", 1, 1200));
        Assert.Equal(64.5, Only(rack).Actual!.Value, 0.3);
        Assert.DoesNotContain("clean", Only(rack).Calculation, StringComparison.Ordinal);
        Assert.DoesNotContain(Report(rack).Assumed(), a => a.Pointer.StartsWith("/cooling/filter", StringComparison.Ordinal));
        Assert.True(Only(rack.Cooled(c => c with { Filter = new AirFilter { AreaCm2 = 1600 } })).Actual!.Value > 100);
    }

    [Fact]
    public void Roof_fans_move_hot_air()
    {
        // Ideal gas: air at 20 + 10 C is 293.15/303.15 as dense, so 1000 W need 297.195 x 303.15/293.15 = 307.33 m3/h.
        var rack = Cool(Open, Closed).RoofFans(new FanSet { Count = 1, FreeFlowM3h = 500 }).With(Warm("wave-pc", 1, 1000));
        Assert.Equal(307.33, Only(rack).Limit!.Value, 0.01);
        Assert.StartsWith("1.2041 x (20 + 273.15) / (30 + 273.15) = 1.1644; ", Only(rack).Calculation, StringComparison.Ordinal);
        Passes(rack with { Cooling = rack.Cooling! with { RoofFans = [new FanSet { Count = 1, FreeFlowM3h = 513 }] } });
    }

    [Fact]
    public void Natural_draught_is_an_estimate_and_a_warning()
    {
        // Stack effect: roof of 400 cm2, 300 W at U1-U4, from 0.155 m to 2 m (1.845 m) at 15 K and 35 C inside:
        // 3600 x 0.6 x 0.04 x sqrt(2 x 9.80665 x 1.845 x 15/308.15) = 114.67 m3/h.
        RackDescription Vented(double heat, double? area = 400) => Cool(Aired, Closed).Cabinet(c => c with
        {
            Roof = new Roof { Style = RoofStyle.Vented, OpenAreaCm2 = area },
        }).With(Warm("gauge-amp", 1, heat, maxInlet: 40));
        var finding = Only(Vented(700));
        Assert.Equal((Severity.Warning, "/cabinet/roof"), (finding.Severity, finding.Pointers[0]));
        Assert.Equal(114.67, finding.Actual!.Value, 0.02);
        Passes(Vented(300));
        ReportsMissing(Vented(300, null), "/cabinet/roof/openAreaCm2");
        Assert.Equal(DoorStyle.Perforated, Remedied(Vented(700), finding).Cabinet!.RearDoor!.Style);

        // The smaller opening counts: an intake of 100 cm2 moves a quarter.
        var small = Vented(300).Cabinet(c => c with { FrontDoor = Closed }).Cooled(c => c with { IntakeAreaCm2 = 100, RiseK = 15 });
        Assert.Equal(28.67, Only(small).Actual!.Value, 0.02);
    }

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
        var rack = Cool(Closed, Closed).Underfloor(200, 18).With(Warm("wave-pc", 1, 1000));
        var remedied = Remedied(rack, Only(rack));
        Assert.Equal((DoorStyle.Perforated, DoorStyle.Solid), (remedied.Cabinet!.FrontDoor!.Style, remedied.Cabinet.RearDoor!.Style));
        var fans = Assert.Single(remedied.Cooling!.RoofFans!);
        Assert.Equal(2, fans.Count);
        Assert.DoesNotContain(Judge.Checker.Check(remedied).Findings, f => f.Rule == "cooling.fan-redundancy");
    }

    [Fact]
    public void More_fan_trays_are_remedy()
    {
        var rack = Cool(Aired, Aired).Trays(new FanSet { Count = 1, FreeFlowM3h = 300 }).With(Warm("wave-pc", 1, 1000));
        Assert.Equal(2, Remedied(rack, Only(rack)).Cooling!.FanTrays!.Count);
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
