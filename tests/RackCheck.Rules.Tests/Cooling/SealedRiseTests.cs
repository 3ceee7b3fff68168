using RackCheck.Model;
using RackCheck.Rules.Cooling;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.CoolRacks;

namespace RackCheck.Rules.Tests.Cooling;

public sealed class SealedRiseTests : RuleTests<SealedRise>
{
    // Sheet steel: 300 W, 5.5, 4.38 m2: 12.4533 K; nothing stirs: 300 W, 3.4, 4.38 m2: 20.1451 K (IEC TR 60890). 2000 x 600 x 500, free.
    private static RackDescription Rack(double heat = 300, double limit = 35, Placement placement = Placement.Free, double ambient = 25, double altitude = 0) =>
        Cool(Closed, Closed, ambient, altitude).Cabinet(c => c with { DepthMm = 500, Placement = placement }).With(Warm("gauge-amp", 1, heat, maxInlet: limit));

    private static RackDescription Stirred(double heat = 300, double limit = 35, double altitude = 0) =>
        Rack(heat, limit, altitude: altitude).Trays(Curved(1));

    [Fact]
    public void Closed_cabinet_too_hot_is_error()
    {
        var finding = Only(Rack());
        Numbers(finding, 45.15, 35, "C");
        Assert.Equal(["/cabinet", "/items/0/maxInletC"], finding.Pointers);
        Assert.Equal("300 / (3.4 x 4.38) = 20.145; 25 + 20.15 = 45.15 > 35; stirred: 300 / (5.5 x 4.38) = 12.453", finding.Calculation);
    }

    [Fact]
    public void Fans_that_stir_the_air_lower_the_rise()
    {
        var finding = Only(Stirred());
        Numbers(finding, 37.45, 35, "C");
        Assert.Equal("300 / (5.5 x 4.38) = 12.453; 25 + 12.45 = 37.45 > 35", finding.Calculation);
        Assert.Equal(37.45, Only(Rack().With(Warm("fan", 9, 0, AirflowDirection.Upward, 20))).Actual!.Value);
        Assert.Equal(37.45, Only(Rack().With(Unit("fan", 1).At(9) with { Category = ItemCategory.FanTray })).Actual!.Value);
        Assert.Equal(45.15, Only(Rack().With(Warm("still", 9, 0, AirflowDirection.None, 0))).Actual!.Value);
    }

    [Fact]
    public void Upper_half_of_a_still_cabinet_is_hotter()
    {
        // IEC TR 60890 example: 250 W on 5.98 m2 in 30 C: stirred 37.6, still 42.3, top 47.7.
        RackDescription At(int unit) => Cool(Closed, Closed, 30).Cabinet(c => c with { WidthMm = 800, HeightMm = 1995, Placement = Placement.RowMiddle })
            .With(Warm("gauge-amp", unit, 250, maxInlet: 37));
        Assert.Equal(42.3, Only(At(20)).Actual!.Value, 0.05); // U20-U23 of 42: the middle
        Assert.Equal(47.7, Only(At(21)).Actual!.Value, 0.05);
        Assert.Equal(37.6, Only(At(21).Trays(Curved(1))).Actual!.Value, 0.05);
        Assert.Equal(42.3, Only(At(21) with { Items = [At(21).Items[0] with { Position = null }] }).Actual!.Value, 0.05);
        var figures = Report(At(21)).Figures.Cooling!;
        Assert.Equal((12.3, 47.7), (Math.Round(figures.RiseK!.Value, 1), Math.Round(figures.HottestInletC!.Value, 1)));
    }

    [Fact]
    public void The_item_most_over_its_limit_is_named()
    {
        var rack = Rack().With(Warm("low", 9, 0, maxInlet: 34), Warm("high", 30, 0, maxInlet: 40));
        Assert.Equal("high", Only(rack).MessageData["item"].Text); // 25 + 1.44 x 20.15 is 14 K over 40; 45.15 is 11 K over 34
    }

    [Fact]
    public void At_the_limit_it_passes()
    {
        Passes(Stirred(240.9)); // sheet steel: 240.9 W at 10 K
        Assert.Single(Findings(Stirred(242)));
        Passes(Rack(148.9)); // IEC TR 60890 example: 3.4 x 4.38 x 10 = 148.92 W
        Assert.Single(Findings(Rack(149.1)));
    }

    [Theory]
    [InlineData(Placement.Wall, 3.9)] // IEC TR 60890
    [InlineData(Placement.RowEnd, 3.98)]
    [InlineData(Placement.RowEndWall, 3.5)]
    [InlineData(Placement.RowMiddle, 3.58)]
    [InlineData(Placement.RowMiddleWall, 3.1)]
    [InlineData(Placement.RowMiddleWallCovered, 2.89)]
    public void Surface_follows_placement(Placement placement, double surface)
    {
        var report = Report(Rack(300, placement: placement));
        Assert.Equal(surface, report.Figures.Cooling!.SurfaceM2);
        Assert.Equal(25 + Math.Round(300 / (3.4 * surface), 2), Assert.Single(report.Findings).Actual!.Value, 1e-9);
    }

    [Theory]
    [InlineData(6.9, 0)] // 300 / (6.9 x 4.38) = 9.93
    [InlineData(6.8, 1)]
    public void A_policy_sets_the_heat_transfer(double transfer, int count) =>
        Assert.Equal(count, Findings(Stirred().Limit(Id, "heatTransferWM2K", transfer)).Count);

    [Theory]
    [InlineData(6.9, 0)] // the same by its own limit
    [InlineData(6.8, 1)]
    public void A_policy_sets_the_still_heat_transfer(double transfer, int count) =>
        Assert.Equal(count, Findings(Rack().Limit(Id, "stillHeatTransferWM2K", transfer)).Count);

    [Fact]
    public void Limits_fall_with_the_altitude()
    {
        // ASHRAE TC 9.9: 40 C falls by 1 K per 175 m, 39 C by 1 K per 300 m: 40 - 600/175 = 36.571, 39 - 600/300 = 37.
        Passes(Stirred(limit: 40, altitude: 900));
        Numbers(Only(Stirred(limit: 40, altitude: 1500)), 37.45, 36.571, "C");
        Numbers(Only(Stirred(limit: 39, altitude: 1500)), 37.45, 37, "C");
        ReportsMissing(Stirred(limit: 39, altitude: 3051));
    }

    [Fact]
    public void Height_absent_is_assumed()
    {
        var report = Report(Rack().Cabinet(c => c with { HeightMm = null, Base = new CabinetBase { HeightMm = 100 } }));
        var assumed = Assert.Single(report.Assumed(), a => a.Pointer == "/cabinet/heightMm");
        Assert.Equal(2066.9, assumed.Value.Number);
        Assert.Equal(4.512, report.Figures.Cooling!.SurfaceM2); // 1.8 x 2.0669 x 1.1 + 1.4 x 0.3 = 4.5125
    }

    [Fact]
    public void Open_at_one_end_only_counts_as_closed() => Assert.Single(Findings(Rack().Cabinet(c => c with { RearDoor = Aired })));

    [Fact]
    public void Open_airflow_path_is_left_to_another_rule()
    {
        Passes(Rack().Cabinet(c => c with { FrontDoor = Aired, RearDoor = Aired }));
        Passes(Rack().Cabinet(c => c with { FrontDoor = Aired, Roof = new Roof { Style = RoofStyle.Vented } }));
        Passes(Rack().RoofFans(Curved(2)));
        Passes(Rack().Cooler(500));
        Passes(Rack().Underfloor(500, 18));
        Passes(Rack(0));
        Passes(Cool(Closed, Closed).With(Unit("drawer", 2).At(1)));
    }

    [Fact]
    public void What_is_absent_is_asked_for()
    {
        ReportsMissing(Cool(Closed, Closed).With(Warm("gauge-amp", 1, 300)), "/items/0/maxInletC");
        ReportsMissing(Cool(null, null).With(Warm("gauge-amp", 1, 300)), "/cabinet/frontDoor/style", "/cabinet/rearDoor/style");
        ReportsMissing(Rack(50).With(Warm("flume-daq", 9, null) with { Category = ItemCategory.Computer }), "/items/1/heatW");
    }

    [Fact]
    public void Known_heat_alone_can_be_too_much()
    {
        var report = Report(Rack().With(Warm("flume-daq", 9, null) with { Category = ItemCategory.Computer }));
        Assert.Single(report.Findings);
        Assert.Single(report.NotAssessed);
        Assert.Null(report.Figures.Cooling!.RiseK);
    }

    [Fact]
    public void Doors_come_first_then_fans_then_an_air_conditioner()
    {
        var rack = Rack();
        Assert.Equal(DoorStyle.Perforated, Remedied(rack, Only(rack)).Cabinet!.RearDoor!.Style);
        var mild = Rack(200); // 38.43 C still, 33.3 C stirred
        Assert.Single(Remedied(mild, Only(mild)).Cooling!.FanTrays!);
        Assert.Single(Remedied(rack, Only(rack), 1).Cooling!.RoofFans!);
        Assert.NotNull(Remedied(rack, Only(rack), 2).Cooling!.AirConditioner);
    }

    [Fact]
    public void Closed_site_gets_air_conditioner_or_removal()
    {
        var rack = Rack().At(s => s with { RequiredIp = "IP65" }).Cabinet(c => c with { IpCode = "IP65" });
        var cooler = Remedied(rack, Only(rack)).Cooling!.AirConditioner!;

        // 300 - 5.5 x 4.38 x (35 - 25) = 59.1
        Assert.Equal((100, 35), (cooler.CapacityW, cooler.SetpointC));
        Assert.Empty(Remedied(rack, Only(rack), 1).Items);
    }

    // 300 W, 5.5, 4.38 m2: 12.4533 K. Fans without a stated airflow stir as well; air can rise without fans.
    [Theory]
    [InlineData(AirflowDirection.FrontToRear, 37.45)]
    [InlineData(AirflowDirection.RearToFront, 37.45)]
    [InlineData(AirflowDirection.Side, 37.45)]
    [InlineData(AirflowDirection.Upward, 45.15)]
    [InlineData(AirflowDirection.None, 45.15)]
    public void Airflow_direction_without_a_flow_tells_of_fans(AirflowDirection direction, double inside)
    {
        var rack = Rack(300);
        rack = rack with { Items = [rack.Items[0] with { Airflow = new Model.Airflow { Direction = direction } }] };
        Assert.Equal(inside, Only(rack).Actual!.Value);
    }
}
