using RackCheck.Model;
using RackCheck.Rules.Layout;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.Bays;

namespace RackCheck.Rules.Tests.Layout;

public sealed class BodyTooHighTests : RuleTests<BodyTooHigh>
{
    private static Item Body(int units, double height) => Unit("wave-pc", units).At(10).Body(height: height);

    [Theory]
    [InlineData(1, 43.65)] // checks.csv 1-01
    [InlineData(3, 132.55)] // checks.csv 1-03
    [InlineData(4, 177)] // checks.csv 1-04
    public void A_body_as_high_as_its_panel_passes(int units, double height) => Passes(Bay().With(Body(units, height)));

    [Theory]
    [InlineData(1, 43.66, 43.65)]
    [InlineData(4, 177.1, 177)]
    [InlineData(2, 300, 88.1)]
    public void A_higher_one_is_an_error(int units, double height, double room)
    {
        var finding = Only(Bay().With(Body(units, height)));
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Equal(["/items/0/body/heightMm", "/items/0"], finding.Pointers);
        Numbers(finding, height, room, "mm");
    }

    [Fact]
    public void Without_a_height_the_units_are_the_makers_word_for_it() => Passes(Bay().With(Unit("wave-pc", 4).At(10)));

    [Fact]
    public void What_stands_on_a_shelf_and_what_has_no_units_is_not_meant() =>
        Passes(Bay().With(Shelf("tray", 1), Unit("desk-pc", 1).Body(height: 300) with { OnShelf = "tray" }, Thing("mouse", null, height: 300)));

    [Fact]
    public void It_gets_the_units_that_it_needs_where_it_is()
    {
        var rack = Bay().With(Body(4, 177.1));
        var cured = Cured(rack, Only(rack));
        Assert.Equal((5, 10), (cured.Items[0].HeightU, cured.Items[0].Position!.U));
    }

    [Fact]
    public void Or_at_the_nearest_place_with_room_for_them()
    {
        var rack = Bay().With(Body(4, 177.1), Unit("gauge-amp", 2).At(14));
        var cured = Cured(rack, Only(rack));
        Assert.Equal((5, 9), (cured.Items[0].HeightU, cured.Items[0].Position!.U));
    }

    [Fact]
    public void Counted_from_the_top_the_lowest_unit_keeps_its_number()
    {
        var rack = Bay(42).TopDown().With(Body(4, 177.1));
        var cured = Cured(rack, Only(rack));
        Assert.Equal((5, 10), (cured.Items[0].HeightU, cured.Items[0].Position!.U));
    }

    [Fact]
    public void A_hair_over_the_limit_gets_one_unit_more()
    {
        var rack = Bay().With(Body(4, 177.002));
        Assert.Equal(5, Cured(rack, Only(rack)).Items[0].HeightU);
    }

    [Fact]
    public void Not_placed_yet_it_only_gets_the_units()
    {
        var rack = Bay().With(Body(4, 200) with { Position = null });
        var cured = Cured(rack, Only(rack));
        Assert.Equal(5, cured.Items[0].HeightU);
        Assert.Null(cured.Items[0].Position);
    }

    [Fact]
    public void Higher_than_any_rack_it_is_taken_out()
    {
        var rack = Bay(60).With(Body(42, 2900));
        Assert.Empty(Cured(rack, Only(rack)).Items);
    }

    [Fact]
    public void In_the_highest_rack_it_gets_its_units_and_waits_for_a_place()
    {
        var rack = Bay(60).With(Body(1, 60), Unit("wave-tank", 9).At(1), Unit("beach", 50).At(11));
        var cured = Cured(rack, Only(rack));
        Assert.Equal((2, null), (cured.Items[0].HeightU, cured.Items[0].Position));
    }

    [Fact]
    public void A_full_rack_is_made_higher()
    {
        var rack = Bay(12).With(Body(1, 60), Unit("wave-tank", 9).At(1), Unit("beach", 2).At(11));
        var cured = Cured(rack, Only(rack));
        Assert.Equal((15, 2, 13), (cured.Cabinet!.HeightU, cured.Items[0].HeightU, cured.Items[0].Position!.U));
    }
}
