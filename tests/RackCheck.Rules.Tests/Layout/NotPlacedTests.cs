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
        // A 47U cabinet has space for 4 U on runners from U44, one free below.
        var rack = EmptyRack(42).With(
            Unit("tower", 38).At(1), Unit("gauge-pc", 4).At(39).On(SupportStyle.Runners), Unit("wave-pc", 4).On(SupportStyle.Runners));
        var remedied = Remedied(rack, Only(rack));
        Assert.Equal((47, 44), (remedied.Cabinet!.HeightU, remedied.Items[2].Position!.U));
    }

    [Fact]
    public void No_cabinet_above_47_U_is_offered()
    {
        var rack = EmptyRack(42).With(Unit("tower", 42).At(1), Unit("wave-pc", 6));
        var finding = Only(rack);
        Assert.Equal(["tower"], Remedied(rack, finding).Items.Select(i => i.Id));
    }

    [Fact]
    public void One_remedy_places_all_items_heavy_ones_low()
    {
        var rack = EmptyRack(24).With(
            Unit("flume-daq", 2).At(3), Unit("gauge-amp", 2).Weighs(4), Unit("wave-pc", 4).Weighs(20), Unit("spare", 2).Weighs(9));
        var findings = Findings(rack);
        Assert.Equal(3, findings.Count);
        Assert.All(findings, f => Assert.Equal([3, 9, 5, 1], Remedied(rack, f).Items.Select(i => i.Position!.U)));
        Assert.Single(Judge.Check(rack).Findings.Where(f => f.Rule == Id).Select(f => f.Remedies[0].Title).Distinct());
    }

    [Fact]
    public void Items_without_room_move_to_another_rack()
    {
        // 47 U hold the two, but not the third: the heavier two stay.
        var rack = EmptyRack(47).With(
            Unit("tower", 40).At(1), Unit("wave-pc", 4).Weighs(20), Unit("gauge-amp", 3).Weighs(4), Unit("spare", 2).Weighs(1));
        var remedied = Remedied(rack, Findings(rack)[0]);
        Assert.Equal(["tower", "wave-pc", "gauge-amp"], remedied.Items.Select(i => i.Id));
        Assert.Equal([1, 41, 45], remedied.Items.Select(i => i.Position!.U));
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
