using RackCheck.Model;
using RackCheck.Rules.Layout;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Layout;

public sealed class NotPlacedTests : RuleTests<NotPlaced>
{
    [Fact]
    public void Item_without_position_is_warning()
    {
        var finding = Only(EmptyRack().With(Unit("wave-pc", 4)));
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal(["/items/0"], finding.Pointers);
        Assert.Equal(4, finding.MessageData["heightU"].Number);
    }

    [Fact]
    public void Placed_items_shelf_loads_and_items_without_U_pass() =>
        Passes(EmptyRack().With(Shelf("tray", 1), Unit("wave-pc", 4).At(10), Unit("desk-pc", 4) with { OnShelf = "tray" }, ShelfItem("mouse", null)));

    [Fact]
    public void Unplaced_panel_and_shelf_are_warnings() =>
        Assert.Equal(2, Findings(EmptyRack().With(Plate("plate", 1, 1) with { Position = null }, Shelf("tray", 1) with { Position = null })).Count);

    [Fact]
    public void Item_moves_to_lowest_free_U()
    {
        var rack = EmptyRack().With(Unit("gauge-amp", 2).At(1), Unit("flume-daq", 2).At(6), Unit("wave-pc", 4));
        Assert.Equal(8, Remedied(rack, Only(rack)).Items[2].Position!.U);
    }

    [Fact]
    public void TopDown_item_moves_to_lowest_free_U()
    {
        var rack = EmptyRack(42).TopDown().With(Unit("wave-pc", 4));
        Assert.Equal(42, Remedied(rack, Only(rack)).Items[0].Position!.U);
    }

    [Fact]
    public void Item_on_runners_keeps_free_U_to_next()
    {
        var rack = EmptyRack().With(Unit("gauge-pc", 4).At(1).On(SupportStyle.Runners), Unit("wave-pc", 4).On(SupportStyle.Runners));
        Assert.Equal(6, Remedied(rack, Only(rack)).Items[1].Position!.U);
    }

    [Fact]
    public void Taller_cabinet_keeps_free_U_between_runners()
    {
        // A 47U cabinet has space for the 5U, but directly above the runners below; so 52U, from U44 on.
        var rack = EmptyRack(42).With(
            Unit("tower", 38).At(1), Unit("gauge-pc", 4).At(39).On(SupportStyle.Runners), Unit("wave-pc", 5).On(SupportStyle.Runners));
        var remedied = Remedied(rack, Only(rack));
        Assert.Equal((52, 44), (remedied.Cabinet!.HeightU, remedied.Items[2].Position!.U));
    }

    [Fact]
    public void Full_rack_offers_taller_cabinet_then_another_rack()
    {
        var rack = EmptyRack(42).With(Unit("tower", 42).At(1), Unit("wave-pc", 4));
        var finding = Only(rack);
        Assert.Equal(47, Remedied(rack, finding).Cabinet!.HeightU);
        Assert.Equal(["tower"], Remedied(rack, finding, 1).Items.Select(i => i.Id));
    }
}
