using RackCheck.Model;
using RackCheck.Rules.Layout;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Layout;

public sealed class NoSupportTests : RuleTests<NoSupport>
{
    private static Item Hung(int units = 3, double? kilograms = 12, double? depth = 400, SupportStyle? style = SupportStyle.Panel) =>
        (Unit("gauge-amp", units).At(10).Body(depth: depth) with { MassKg = kilograms }).On(style);

    [Fact]
    public void Item_at_limits_passes() => Passes(EmptyRack().With(Hung()));

    [Theory]
    [InlineData(4, 12.0, 400.0, 4, 3, "U")]
    [InlineData(3, 12.1, 400.0, 12.1, 12, "kg")]
    [InlineData(3, 12.0, 400.5, 400.5, 400, "mm")]
    [InlineData(4, 99.0, 900.0, 4, 3, "U")]
    [InlineData(1, null, 401.0, 401, 400, "mm")]
    public void Item_above_one_limit_is_warning(int units, double? kilograms, double? depth, double actual, double limit, string unit)
    {
        var finding = Only(EmptyRack().With(Hung(units, kilograms, depth)));
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal(["/items/0/support/style", "/items/0"], finding.Pointers);
        Numbers(finding, actual, limit, unit);
    }

    [Theory]
    [InlineData(SupportStyle.Slides)]
    [InlineData(SupportStyle.Runners)]
    [InlineData(SupportStyle.Shelf)]
    public void Item_on_any_support_passes(SupportStyle style) => Passes(EmptyRack().With(Hung(6, 60, 900, style)));

    [Fact]
    public void Mass_and_depth_missing_are_not_assessed() =>
        ReportsMissing(EmptyRack().With(Hung(3, null, null)), "/items/0/body/depthMm", "/items/0/massKg");

    [Fact]
    public void Support_style_missing_is_not_assessed()
    {
        ReportsMissing(EmptyRack().With(Hung(4, null, null, null)), "/items/0/support/style");
        ReportsMissing(EmptyRack().With(Hung(3, null, null, null)), "/items/0/support/style");
        Passes(EmptyRack().With(Hung(3, 12, 400, null)));
    }

    [Fact]
    public void Blanking_panels_and_shelf_loads_are_not_checked() =>
        Passes(
            EmptyRack().With(
                Plate("plate", 6, 1), Plate("screwed", 1, 20).On(SupportStyle.Panel), Shelf("tray", 10).On(SupportStyle.Runners),
                Unit("desk-pc", 4).Weighs(20) with { OnShelf = "tray" }));

    [Theory]
    [InlineData("panelHeightU", 2)]
    [InlineData("panelMassKg", 11.9)]
    [InlineData("panelDepthMm", 399)]
    public void Policy_can_be_stricter(string limit, double value) => Only(EmptyRack().With(Hung()).Limit(Id, limit, value));

    [Theory]
    [InlineData("panelHeightU", 4)]
    [InlineData("panelHeightU", 60)]
    public void Policy_can_be_milder(string limit, double value) => Passes(EmptyRack().With(Hung(4)).Limit(Id, limit, value));

    [Fact]
    public void Item_gets_runners()
    {
        var rack = EmptyRack().With(Hung(4));
        Assert.Equal(SupportStyle.Runners, Remedied(rack, Only(rack)).Items[0].Support!.Style);
    }

    [Theory]
    [InlineData(7, true)] // U7 to U9, right below
    [InlineData(14, true)] // right above
    [InlineData(6, false)]
    [InlineData(15, false)]
    public void Item_next_to_runners_gets_shelf(int unit, bool beside)
    {
        var rack = EmptyRack().With(Hung(4), Unit("wave-pc", 3).At(unit).On(SupportStyle.Runners));
        Assert.Equal(beside ? SupportStyle.Shelf : SupportStyle.Runners, Remedied(rack, Only(rack)).Items[0].Support!.Style);
    }
}
