using RackCheck.Model;
using RackCheck.Rules.Cabling;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Cabling;

public sealed class SideSpaceTests : RuleTests<SideSpace>
{
    private static Item Patch(string id, int unit, int count, double diameter = 8) =>
        Unit(id, 2).At(unit) with { Cables = [new CableBundle { DiameterMm = diameter, Count = count }] };

    // EN 50174: 600 wide leave 2 x 100 x ((600 - 482.6)/2 - 20) = 7740 mm2, of which 40 % are 3096; 61 of 8 mm are 3066.2, 62 are 3116.5.
    [Fact]
    public void Fill_up_to_40_percent_passes() => Passes(EmptyRack().With(Patch("patch-1", 1, 31), Patch("patch-2", 4, 30)));

    [Fact]
    public void Fill_above_40_percent_gets_wider_cabinet()
    {
        var rack = EmptyRack().With(Patch("patch-1", 1, 30), Patch("patch-2", 4, 32));
        var finding = Only(rack);
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal(["/cabinet/widthMm", "/items/1/cables"], finding.Pointers);
        Numbers(finding, 3116.46, 3096, "mm2");
        Assert.Equal(800, Remedied(rack, finding).Cabinet!.WidthMm);
        Assert.Equal("patch-1", Assert.Single(Remedied(rack, finding, 1).Items).Id);
    }

    // Common practice, no source: on a frame without side panels cables run in managers beside the uprights.
    [Fact]
    public void Open_frame_is_not_checked()
    {
        var none = new Door { Style = DoorStyle.None };
        var rack = EmptyRack(widthMm: 515).With(Patch("patch-1", 1, 90));
        _ = Only(rack);
        _ = Only(rack with { Cabinet = rack.Cabinet! with { FrontDoor = none, RearDoor = none } });
        Passes(rack with { Cabinet = rack.Cabinet! with { FrontDoor = none, RearDoor = none, SidePanels = false } });
    }

    // Geometry: 100 of 8 mm are 5026.5 mm2; 800 wide leave 27740.
    [Fact]
    public void Figures_show_area_channels_and_fill()
    {
        var figures = Report(EmptyRack(widthMm: 800).With(Patch("patch-1", 1, 100))).Figures.Cabling!;
        Assert.Equal((5026.548, 27740), (figures.AreaMm2, figures.SideSpaceMm2));
        Assert.Equal(18.12, figures.FillPercent!.Value, 0.001);
        Assert.Null(Report(EmptyRack().With(Unit("wave-pc", 4).At(1))).Figures.Cabling);
    }

    [Theory]
    [InlineData(522.6)]
    [InlineData(500)]
    public void Cabinet_without_channels_is_warning(double width)
    {
        var rack = EmptyRack(widthMm: width).With(Patch("patch-1", 1, 1));
        var finding = Only(rack);
        Numbers(finding, 50.265, 0, "mm2");
        Assert.Equal(600, Remedied(rack, finding).Cabinet!.WidthMm);
        Assert.Null(Report(rack).Figures.Cabling!.FillPercent);
    }

    [Theory]
    [InlineData(39.6, 1)] // 3066.2 are 39.615 % of 7740
    [InlineData(39.7, 0)]
    public void Policy_sets_maximum_fill(double percent, int count) =>
        Assert.Equal(count, Findings(EmptyRack().With(Patch("patch-1", 1, 61)).Limit(Id, "fillPercent", percent)).Count);

    [Fact]
    public void Cables_missing_are_not_assessed()
    {
        var bare = Unit("wave-pc", 2).At(10).Plugs(1);
        ReportsMissing(EmptyRack().With(Patch("patch-1", 1, 10), bare), "/items/1/cables");
        Assert.Null(Report(EmptyRack().With(Patch("patch-1", 1, 10), bare)).Figures.Cabling!.FillPercent);
        Passes(EmptyRack().With(bare));
        Passes(EmptyRack().With(Patch("patch-1", 1, 10), bare with { Cables = [] }));
    }

    [Fact]
    public void Known_cables_above_limit_are_reported() =>
        Assert.Single(Findings(EmptyRack().With(Patch("patch-1", 1, 62), Unit("wave-pc", 2).At(10).Plugs(1))));
}
