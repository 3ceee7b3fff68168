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
    [InlineData(3, 12.1, 400.0, 12)] // common practice: over 12 kg, or over 6 kg and deeper than 400 mm
    [InlineData(3, 12.1, null, 12)]
    [InlineData(1, 6.1, 400.1, 6)]
    [InlineData(4, 99.0, 900.0, 12)]
    public void Heavy_or_deep_item_is_warning(int units, double kilograms, double? depth, double limit)
    {
        var finding = Only(EmptyRack().With(Hung(units, kilograms, depth)));
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal(["/items/0/support/style", "/items/0"], finding.Pointers);
        Numbers(finding, kilograms, limit, "kg");
    }

    [Theory]
    [InlineData(8, 5, 120)] // a light display
    [InlineData(8, 6, 900)]
    [InlineData(12, 12, 400)]
    public void Light_item_passes_whatever_its_height(int units, double kilograms, double depth) =>
        Passes(EmptyRack().With(Hung(units, kilograms, depth)));

    [Theory]
    [InlineData(SupportStyle.Slides)]
    [InlineData(SupportStyle.Runners)]
    [InlineData(SupportStyle.Shelf)]
    public void Item_on_any_support_passes(SupportStyle style) => Passes(EmptyRack().With(Hung(6, 60, 900, style)));

    [Fact]
    public void Mass_and_depth_missing_are_not_assessed()
    {
        ReportsMissing(EmptyRack().With(Hung(3, null, null)), "/items/0/massKg");
        ReportsMissing(EmptyRack().With(Hung(3, 7, null)), "/items/0/body/depthMm");
        Passes(EmptyRack().With(Hung(3, 6, null)));
    }

    [Fact]
    public void Support_style_missing_is_not_assessed()
    {
        ReportsMissing(EmptyRack().With(Hung(4, null, null, null)), "/items/0/support/style");
        ReportsMissing(EmptyRack().With(Hung(3, 7, null, null)), "/items/0/support/style");
        Passes(EmptyRack().With(Hung(8, 5, null, null)));
        Passes(EmptyRack().With(Hung(3, 12, 400, null)));
    }

    [Fact]
    public void Blanking_panels_and_shelf_loads_are_not_checked() =>
        Passes(
            EmptyRack().With(
                Plate("plate", 6, 1), Plate("screwed", 1, 20).On(SupportStyle.Panel), Shelf("tray", 10).On(SupportStyle.Runners),
                Unit("desk-pc", 4).Weighs(20) with { OnShelf = "tray" }));

    [Theory]
    [InlineData("panelMassKg", 11.9)]
    [InlineData("panelDepthMm", 399)]
    public void Policy_can_be_stricter(string limit, double value) => Only(EmptyRack().With(Hung()).Limit(Id, limit, value));

    [Fact]
    public void Policy_sets_the_mass_of_deep_items()
    {
        Only(EmptyRack().With(Hung(3, 5, 500)).Limit(Id, "deepMassKg", 4));
        Passes(EmptyRack().With(Hung(3, 8, 500)).Limit(Id, "deepMassKg", 9));
    }

    [Fact]
    public void Item_gets_runners()
    {
        var rack = EmptyRack().With(Hung(4, 13));
        Assert.Equal(SupportStyle.Runners, Remedied(rack, Only(rack)).Items[0].Support!.Style);
    }

    [Theory]
    [InlineData(7, true)] // U7 to U9, right below
    [InlineData(14, true)] // right above
    [InlineData(6, false)]
    [InlineData(15, false)]
    public void Item_next_to_runners_gets_shelf(int unit, bool beside)
    {
        var rack = EmptyRack().With(Hung(4, 13), Unit("wave-pc", 3).At(unit).On(SupportStyle.Runners));
        Assert.Equal(beside ? SupportStyle.Shelf : SupportStyle.Runners, Remedied(rack, Only(rack)).Items[0].Support!.Style);
    }
}
