using RackCheck.Model;
using RackCheck.Rules.Service;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Survey;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Service;

public sealed class ConsoleHeightTests : RuleTests<ConsoleHeight>
{
    // z0 = 100 + (2000 - 100 - 42 x 44.45)/2 = 116.55 (IEC 60297-3-100); heights are common practice, no source.
    private static RackDescription Standing(double? height = 2000, double? foot = 100) =>
        EmptyRack().Cabinet(c => c with { HeightMm = height, Base = foot is null ? null : new CabinetBase { HeightMm = foot } });

    private static Item Keys(int unit) => Unit("console", 1).At(unit) with { Category = ItemCategory.KeyboardDrawer };

    private static Item Screen(int unit, int heightU = 8) => Unit("screen", heightU).At(unit) with { Category = ItemCategory.Display };

    [Theory]
    [InlineData(13)] // 116.55 + 44.45 x 12.5 = 672.175
    [InlineData(22)] // 116.55 + 44.45 x 21.5 = 1072.225
    public void Keyboard_in_range_passes(int unit) => Passes(Standing().With(Keys(unit)));

    [Theory]
    [InlineData(12, 627.725, 650, 13)]
    [InlineData(23, 1116.675, 1100, 22)]
    public void Keyboard_out_of_range_moves_to_nearest_U(int unit, double actual, double limit, int better)
    {
        var rack = Standing().With(Keys(unit));
        var finding = Only(rack);
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal(["/items/0/position"], finding.Pointers);
        Numbers(finding, actual, limit, "mm");
        Assert.Equal(better, Remedied(rack, finding).Items[0].Position!.U);
    }

    [Theory]
    [InlineData(18, 1)] // 116.55 + 44.45 x 21 = 1050
    [InlineData(20, 0)]
    [InlineData(32, 0)] // 116.55 + 44.45 x 35 = 1672.3
    [InlineData(33, 1)]
    public void Display_has_its_own_range(int unit, int count) => Assert.Equal(count, Findings(Standing().With(Screen(unit))).Count);

    [Fact]
    public void Blanking_panel_gives_way_and_open_rest_is_closed()
    {
        var rack = Standing().With(Keys(25), Plate("plate", 2, 21), Unit("wave-pc", 20).At(1), Unit("gauge-amp", 2).At(23));
        var remedied = Remedied(rack, Only(rack));
        Assert.Equal(["console", "wave-pc", "gauge-amp", "blanking-21", "blanking-25"], remedied.Items.Select(i => i.Id));
        Assert.Equal(22, remedied.Items[0].Position!.U);
    }

    [Fact]
    public void TopDown_numbering_gives_same_height()
    {
        var rack = Standing().TopDown().With(Keys(20)); // U23 from the bottom
        Numbers(Only(rack), 1116.675, 1100, "mm");
        Assert.Equal(21, Remedied(rack, Only(rack)).Items[0].Position!.U);
    }

    [Fact]
    public void Display_on_shelf_moves_with_shelf()
    {
        // 116.55 + 44.45 x 21 + 400 / 2 = 1250
        var rack = Standing().With(Shelf("shelf", 21), ShelfItem("screen", "shelf", 400, 200, 400) with { Category = ItemCategory.Display });
        Passes(rack);
        var low = Standing().With(Shelf("shelf", 10), ShelfItem("screen", "shelf", 400, 200, 400) with { Category = ItemCategory.Display });
        var finding = Only(low);
        Numbers(finding, 761.05, 1100, "mm");
        Assert.Equal(["/items/0/position", "/items/1"], finding.Pointers);
        Assert.Equal(18, Remedied(low, finding).Items[0].Position!.U);
        ReportsMissing(Standing().With(Shelf("shelf", 21), ShelfItem("screen", "shelf") with { Category = ItemCategory.Display }), "/items/1/body/heightMm");
    }

    [Fact]
    public void Height_not_given_is_assumed_with_base_and_roof()
    {
        // 100 mm for roof and floor and no base (common practice, no source): z0 = 50; 50 + 44.45 x 25.5 = 1183.475.
        Numbers(Only(Standing(height: null, foot: null).With(Keys(26))), 1183.475, 1100, "mm");
        Passes(Standing(height: null, foot: null).With(Keys(22)));
        var assumed = new RackSurvey(Standing(height: null, foot: null).With(Keys(22))).Assumptions;
        Assert.Equal(1966.9, Assert.Single(assumed, a => a.Pointer == "/cabinet/heightMm").Value.Number);
        Assert.Single(assumed, a => a.Pointer == "/cabinet/base/heightMm");
    }

    [Theory]
    [InlineData("keyboardMinMm", 673, 1)]
    [InlineData("keyboardMinMm", 672, 0)]
    [InlineData("keyboardMaxMm", 672, 1)]
    [InlineData("displayMinMm", 1300, 0)]
    public void Policy_sets_ranges(string name, double value, int count) =>
        Assert.Equal(count, Findings(Standing().With(Keys(13)).Limit(Id, name, value)).Count);

    [Fact]
    public void Other_and_unplaced_items_are_not_checked() =>
        Passes(Standing(height: null).With(Unit("wave-pc", 4).At(1), Keys(1) with { Position = null }));
}
