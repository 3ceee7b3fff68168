using CsCheck;
using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.CoolRacks;

namespace RackCheck.Survey.Tests;

public sealed class HeatSurveyTests
{
    private static HeatSurvey Heat(RackDescription rack) => new RackSurvey(rack).Heat;

    private static string[] Assumed(RackDescription rack) =>
        [
            .. new RackSurvey(rack).Assumptions.Select(a => a.Pointer).Where(p =>
                p.StartsWith("/site", StringComparison.Ordinal) || p.StartsWith("/cooling", StringComparison.Ordinal)
                    || p is "/cabinet/heightMm" or "/cabinet/placement" or "/cabinet/roof/style" or "/cabinet/roof/openAreaCm2"
                    || p.EndsWith("perforatedAreaM2", StringComparison.Ordinal)),
        ];

    [Fact]
    public void Figures_of_a_rack_that_is_aired_through_its_doors()
    {
        // 2400 W at 12 K, 25 C, by the sea: 604.519 m3/h at 1.18393 kg/m3 (ASHRAE Fundamentals: 3.02265 x 2400 / 12 = 604.53); 2400 x 3.412142 = 8189.14 Btu/h.
        var figures = Heat(Cool(Aired, Aired, 25).Cooled(c => c with { RiseK = 12 }).With(Warm("a", 1, 2400, flow: 700))).Figures!;
        Assert.Equal((2400, 1.1839), (figures.HeatW, figures.AirDensityKgM3));
        Assert.Equal(8189.14, figures.HeatBtuH!.Value, 0.005);
        Assert.InRange(figures.AirflowNeededM3h!.Value, 604.51, 604.55);
        Assert.Equal((700, 25, null, null), (figures.AirflowAvailableM3h, figures.HottestInletC, figures.SurfaceM2, figures.CoolerNeededW));
        Assert.Equal(12 * 604.532 / 700, figures.RiseK!.Value, 0.001);
        Assert.InRange(figures.DoorPressureLossPa!.Value, 0.05, 0.2);
    }

    [Fact]
    public void Figures_of_a_cabinet_with_an_air_conditioner()
    {
        var rack = Cool(Closed, Closed, 25, humidity: 60).Cabinet(c => c with { WidthMm = 800, DepthMm = 600 }).Cooler(1200).With(Warm("a", 1, 1500));
        var figures = Heat(rack).Figures!;
        // IEC TR 60890, sheet steel, WMO-No. 8
        Assert.Equal((5.712, 1185.84, 35, 16.693), (figures.SurfaceM2, figures.CoolerNeededW, figures.HottestInletC, figures.DewPointC));
        Assert.Equal((null, null), (figures.AirflowAvailableM3h, figures.RiseK));
    }

    [Fact]
    public void What_hangs_on_heat_that_is_not_known_is_absent()
    {
        var figures = Heat(Cool(Aired, Aired).With(Warm("a", 1, 500, flow: 200), Warm("b", 5, null) with { Category = ItemCategory.Computer })).Figures!;
        Assert.Equal((null, null, null, null, null), (figures.HeatW, figures.HeatBtuH, figures.AirflowNeededM3h, figures.RiseK, figures.DoorPressureLossPa));
        Assert.Equal((200, 1.2041), (figures.AirflowAvailableM3h, figures.AirDensityKgM3));
    }

    [Fact]
    public void A_rack_without_a_word_on_heat_has_no_figures_and_no_assumptions_of_it()
    {
        var bare = EmptyRack().Doors(DoorStyle.Solid, DoorStyle.Perforated).With(Unit("a", 2).At(1) with { Category = ItemCategory.Computer });
        Assert.Null(Heat(bare).Figures);
        Assert.Empty(Assumed(bare));
        Assert.Empty(Assumed(EmptyRack().With(Warm("a", 1, 500))));
    }

    [Fact]
    public void Defaults_are_said_where_heat_takes_that_way()
    {
        var item = Warm("a", 1, 500);
        Assert.Equal(
            ["/cabinet/frontDoor/perforatedAreaM2", "/site/altitudeM", "/site/ambientMaxC", "/site/humidityMaxPercent"],
            Assumed(EmptyRack().Cabinet(c => c with { FrontDoor = Aired, RearDoor = Open }).With(item)));
        Assert.Equal(
            ["/cabinet/heightMm", "/cabinet/placement", "/cabinet/roof/style", "/site/altitudeM", "/site/ambientMaxC", "/site/humidityMaxPercent"],
            Assumed(EmptyRack().Cabinet(c => c with { FrontDoor = Closed, RearDoor = Closed }).With(item)));
        Assert.Equal(
            ["/cooling/roofFans/0/maxPressurePa", "/site/humidityMaxPercent"],
            Assumed(Cool(Open, Closed).RoofFans(new FanSet { Count = 1, FreeFlowM3h = 100 }, Curved(1), new FanSet { Count = 0, FreeFlowM3h = 5 }).With(item)));

        Assert.Equal(
            ["/cooling/filter/areaCm2", "/cooling/filter/lossPa", "/cooling/riseK", "/site/humidityMaxPercent"],
            Assumed(Cool(Closed, Closed).RoofFans(Curved(1)).Cooled(c => c with { IntakeAreaCm2 = 500, Filters = true, RiseK = null }).With(item)));
        Assert.Contains(new RackSurvey(Cool(Aired, Aired).With(item)).Assumptions, a => a.Pointer == "/items");
    }

    [Theory]
    [InlineData(ItemCategory.Shelf, 0.0)]
    [InlineData(ItemCategory.BlankingPanel, 0.0)]
    [InlineData(ItemCategory.AirConditioner, 0.0)]
    [InlineData(ItemCategory.Network, 0.0)] // may be a patch panel
    [InlineData(ItemCategory.Computer, null)]
    [InlineData(ItemCategory.Ups, null)]
    [InlineData(ItemCategory.Instrument, null)]
    public void Heat_of_what_does_not_tell_it_goes_by_its_kind(ItemCategory category, double? heat) =>
        Assert.Equal(heat, HeatSurvey.HeatOf(new RackSurvey(EmptyRack().With(Unit("a", 1).At(1) with { Category = category })).Items[0]));

    [Fact]
    public void Things_with_cords_or_fans_give_off_something()
    {
        Assert.Null(HeatOf(i => i with { Power = new ItemPower { Plugs = [ConnectorCode.C14] } }));
        Assert.Null(HeatOf(i => i with { Airflow = new Airflow { FlowM3h = 20 } }));
        Assert.Equal(0, HeatOf(i => i with { Power = new ItemPower { Plugs = [] } }));
        Assert.Equal(0, HeatOf(i => i with { Airflow = new Airflow { Direction = AirflowDirection.None } }));

        static double? HeatOf(Func<Item, Item> change) => HeatSurvey.HeatOf(new RackSurvey(EmptyRack().With(change(Unit("a", 1).At(1)))).Items[0]);
    }

    [Fact]
    public void The_way_of_the_air_goes_by_what_is_fitted()
    {
        Assert.Equal(CoolingMode.Unknown, Mode(EmptyRack()));
        Assert.Equal(CoolingMode.Doors, Mode(Cool(Aired, Open)));
        Assert.Equal(CoolingMode.Doors, Mode(Cool(Closed, Aired).Cooled(c => c with { IntakeAreaCm2 = 100 })));
        Assert.Equal(CoolingMode.Draught, Mode(Cool(Aired, Closed).Cabinet(c => c with { Roof = new Roof { Style = RoofStyle.Vented } })));
        Assert.Equal(CoolingMode.Closed, Mode(Cool(Closed, null)));
        Assert.Equal(CoolingMode.Closed, Mode(Cool(Aired, Closed)));
        Assert.Equal(CoolingMode.Forced, Mode(Cool(null, null).RoofFans(Curved(1)).Underfloor(1, 1)));
        Assert.Equal(CoolingMode.Closed, Mode(Cool(Closed, Closed).RoofFans(Curved(0))));
        Assert.Equal(CoolingMode.Underfloor, Mode(Cool(null, null).Underfloor(1, 1)));
        Assert.Equal(CoolingMode.AirConditioner, Mode(Cool(Aired, Aired).RoofFans(Curved(1)).Cooler(1)));

        static CoolingMode Mode(RackDescription rack) => Heat(rack).AirPath.Mode;
    }

    [Fact]
    public void Roof_opening_counts_beside_the_fans_in_it()
    {
        var rack = Cool(Open, Closed).RoofFans(Curved(1)).With(Warm("a", 1, 500));
        Assert.Equal(0, Heat(rack).AirPath.LossK);
        var grille = rack.Cabinet(c => c with { Roof = c.Roof! with { OpenAreaCm2 = 400 } });
        Assert.Equal(Openings.OpeningK(0.04, 1.2041), Heat(grille).AirPath.LossK!.Value, 1e-12);
    }

    [Fact]
    public void Rise_with_roof_fans_is_that_of_hot_air()
    {
        // 360 m3/h at the roof; ASHRAE Fundamentals: 500 W at 20 C: 4.128 K at the inlet's density, 4.128/(1 - 4.128/293.15) = 4.187 K at the roof's.
        Assert.Equal(4.187, Heat(Cool(Open, Closed).RoofFans(Curved(1)).With(Warm("a", 1, 500))).Figures!.RiseK!.Value, 0.001);
    }

    [Fact]
    public void Openings_side_by_side_lose_less()
    {
        var one = Heat(Cool(Closed, Closed).RoofFans(Curved(1)).Cooled(c => c with { IntakeAreaCm2 = 200 }).With(Warm("a", 1, 500))).AirPath.LossK!.Value;
        Assert.Equal(Openings.OpeningK(0.02, 1.2041), one, 1e-12);
        var with = Heat(Cool(Aired, Closed).RoofFans(Curved(1)).Cooled(c => c with { IntakeAreaCm2 = 200 }).With(Warm("a", 1, 500))).AirPath.LossK!.Value;
        Assert.True(with < one);
        var none = Heat(Cool(Closed, Closed).RoofFans(Curved(1)).Cooled(c => c with { IntakeAreaCm2 = 0 }).With(Warm("a", 1, 500)));
        Assert.Equal((double.PositiveInfinity, 0), (none.AirPath.LossK, none.AvailableM3h));
    }

    [Fact]
    [Trait("Kind", "property")]
    public void More_heat_never_lowers_the_rise() =>
        Gen.Select(Gen.Double[1, 5000], Gen.Double[0, 3000], Gen.Bool).Sample((heat, more, isClosed) =>
        {
            var rack = isClosed ? Cool(Closed, Closed) : Cool(Aired, Aired);
            double Rise(double watts) => Heat(rack.With(Warm("a", 1, watts, flow: 300))).Figures!.RiseK!.Value;
            Assert.True(Rise(heat + more) >= Rise(heat));
        }, iter: Samples.Of(1_000));

    [Fact]
    [Trait("Kind", "property")]
    public void Thinner_air_never_lowers_the_flow_needed() =>
        Gen.Select(Gen.Double[-20, 60], Gen.Double[-500, 5000], Gen.Double[0, 1000]).Sample((ambient, altitude, higher) =>
            Assert.True(Needed(ambient, altitude + higher) >= Needed(ambient, altitude)), iter: Samples.Of(1_000));

    [Fact]
    [Trait("Kind", "property")]
    public void A_more_open_door_never_raises_the_loss() =>
        Gen.Select(Gen.Double[1, 100], Gen.Double[1, 100]).Sample((one, other) =>
            Assert.True(Loss(Math.Max(one, other)) <= Loss(Math.Min(one, other))), iter: Samples.Of(1_000));

    private static double Needed(double ambient, double altitude) => Heat(Cool(Aired, Aired, ambient, altitude).With(Warm("a", 1, 1000))).ForcedNeedM3h;

    private static double Loss(double open) =>
        Heat(Cool(Aired with { OpenAreaPercent = open }, Open).With(Warm("a", 1, 3000))).Figures!.DoorPressureLossPa!.Value;
}
