using RackCheck.Model;
using RackCheck.Rules.Layout;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Layout;

public sealed class BodyTooHighTests : RuleTests<BodyTooHigh>
{
    private static Item Body(int units, double height) => Unit("wave-pc", units).At(10).Body(height: height);

    [Theory]
    [InlineData(1, 43.65)] // IEC 60297-3-100
    [InlineData(3, 132.55)] // IEC 60297-3-100
    [InlineData(4, 177)] // IEC 60297-3-100
    public void Body_at_panel_height_passes(int units, double height) => Passes(EmptyRack().With(Body(units, height)));

    [Theory]
    [InlineData(1, 43.66, 43.65)]
    [InlineData(4, 177.1, 177)]
    [InlineData(2, 300, 88.1)]
    public void Body_above_panel_height_is_error(int units, double height, double room)
    {
        var finding = Only(EmptyRack().With(Body(units, height)));
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Equal(["/items/0/body/heightMm", "/items/0"], finding.Pointers);
        Numbers(finding, height, room, "mm");
    }

    [Fact]
    public void Panel_gives_way_before_a_higher_cabinet()
    {
        var rack = EmptyRack(8).With(Unit("flume-daq", 2).At(7).Body(height: 90), Plate("plate", 6, 1));
        var remedied = Remedied(rack, Only(rack));
        Assert.Equal((8, 3), (remedied.Cabinet!.HeightU, remedied.Items[0].HeightU));
        Assert.Equal(5, remedied.Items.Skip(1).Sum(i => i.HeightU));
    }

    [Theory]
    [InlineData(4, 174, null, 0)] // IEC 60297-3-100: 4 x 44.45 - 0.8 = 177; a shelf plate is 3 thick, common practice
    [InlineData(4, 174.1, null, 1)]
    [InlineData(4, 177, null, 1)]
    [InlineData(4, 175, 2.0, 0)]
    [InlineData(4, 175.1, 2.0, 1)]
    public void Own_shelf_takes_its_thickness(int units, double height, double? thickness, int count) =>
        Assert.Equal(count, Findings(EmptyRack().With(Body(units, height).On(SupportStyle.Shelf, thickness))).Count);

    [Fact]
    public void Item_on_its_own_shelf_gets_runners_or_more_U()
    {
        var rack = EmptyRack().With(Body(4, 177).On(SupportStyle.Shelf));
        var finding = Only(rack);
        Numbers(finding, 180, 177, "mm");
        Assert.Equal(SupportStyle.Runners, Remedied(rack, finding).Items[0].Support!.Style);
        Assert.Equal(5, Remedied(rack, finding, 1).Items[0].HeightU);
        Assert.Equal(3, Report(rack).Assumed().Single(a => a.Pointer == "/items/0/support/thicknessMm").Value.Number);
    }

    [Fact]
    public void Stacked_bodies_are_not_offered_a_shelf_that_fails()
    {
        // Four bodies of 177 in 4 U each: neither runners without a free U nor shelves of their own fit.
        var rack = EmptyRack().With([.. Enumerable.Range(0, 4).Select(i => Unit($"pc-{i}", 4).At(1 + (4 * i)).Body(height: 177).On(SupportStyle.Runners))]);
        var stack = Judge.Check(rack).Findings.Single(f => f.Rule == "layout.runner-stack");
        Assert.NotEmpty(stack.Remedies);
        Assert.DoesNotContain(stack.Remedies, r => r.Title.Contains("shelf", StringComparison.Ordinal));
    }

    [Fact]
    public void Shelf_itself_has_no_plate() => Passes(EmptyRack().With(Shelf("tray", 4).Body(height: 43).On(SupportStyle.Shelf)));

    [Fact]
    public void Body_height_missing_passes() => Passes(EmptyRack().With(Unit("wave-pc", 4).At(10)));

    [Fact]
    public void Shelf_loads_and_items_without_U_are_not_checked() =>
        Passes(EmptyRack().With(Shelf("tray", 1), Unit("desk-pc", 1).Body(height: 300) with { OnShelf = "tray" }, ShelfItem("mouse", null, height: 300)));

    [Fact]
    public void Item_gets_U_height_at_same_U()
    {
        var rack = EmptyRack().With(Body(4, 177.1));
        var remedied = Remedied(rack, Only(rack));
        Assert.Equal((5, 10), (remedied.Items[0].HeightU, remedied.Items[0].Position!.U));
    }

    [Fact]
    public void Item_gets_U_height_at_nearest_free_U()
    {
        var rack = EmptyRack().With(Body(4, 177.1), Unit("gauge-amp", 2).At(14));
        var remedied = Remedied(rack, Only(rack));
        Assert.Equal((5, 9), (remedied.Items[0].HeightU, remedied.Items[0].Position!.U));
    }

    [Fact]
    public void TopDown_numbering_keeps_lowest_U()
    {
        var rack = EmptyRack(42).TopDown().With(Body(4, 177.1));
        var remedied = Remedied(rack, Only(rack));
        Assert.Equal((5, 10), (remedied.Items[0].HeightU, remedied.Items[0].Position!.U));
    }

    [Fact]
    public void Body_just_above_limit_gets_one_U_more()
    {
        var rack = EmptyRack().With(Body(4, 177.002));
        Assert.Equal(5, Remedied(rack, Only(rack)).Items[0].HeightU);
    }

    [Fact]
    public void Unplaced_item_gets_U_height_only()
    {
        var rack = EmptyRack().With(Body(4, 200) with { Position = null });
        var remedied = Remedied(rack, Only(rack));
        Assert.Equal(5, remedied.Items[0].HeightU);
        Assert.Null(remedied.Items[0].Position);
    }

    [Fact]
    public void Body_higher_than_any_cabinet_is_removed()
    {
        var rack = EmptyRack(60).With(Body(42, 2900));
        Assert.Empty(Remedied(rack, Only(rack)).Items);
    }

    [Fact]
    public void Full_tallest_cabinet_leaves_item_unplaced()
    {
        var rack = EmptyRack(60).With(Body(1, 60), Unit("wave-tank", 9).At(1), Unit("beach", 50).At(11));
        var remedied = Remedied(rack, Only(rack));
        Assert.Equal((2, null), (remedied.Items[0].HeightU, remedied.Items[0].Position));
    }

    [Fact]
    public void Full_rack_gets_taller_cabinet()
    {
        var rack = EmptyRack(12).With(Body(1, 60), Unit("wave-tank", 9).At(1), Unit("beach", 2).At(11));
        var remedied = Remedied(rack, Only(rack));
        Assert.Equal((15, 2, 13), (remedied.Cabinet!.HeightU, remedied.Items[0].HeightU, remedied.Items[0].Position!.U));
    }
}
