using RackCheck.Model;
using RackCheck.Rules.Layout;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.Bays;

namespace RackCheck.Rules.Tests.Layout;

public sealed class NotPlacedTests : RuleTests<NotPlaced>
{
    [Fact]
    public void An_item_without_a_position_is_a_warning()
    {
        var finding = Only(Bay().With(Unit("wave-pc", 4)));
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal(["/items/0"], finding.Pointers);
        Assert.Equal(4, finding.MessageData["heightU"].Number);
    }

    [Fact]
    public void Placed_items_things_on_shelves_and_things_without_units_pass() =>
        Passes(Bay().With(Shelf("tray", 1), Unit("wave-pc", 4).At(10), Unit("desk-pc", 4) with { OnShelf = "tray" }, Thing("mouse", null)));

    [Fact]
    public void A_plate_and_a_shelf_need_a_place_like_any_other() =>
        Assert.Equal(2, Findings(Bay().With(Plate("plate", 1, 1) with { Position = null }, Shelf("tray", 1) with { Position = null })).Count);

    [Fact]
    public void It_goes_to_the_lowest_free_place()
    {
        var rack = Bay().With(Unit("gauge-amp", 2).At(1), Unit("flume-daq", 2).At(6), Unit("wave-pc", 4));
        Assert.Equal(8, Cured(rack, Only(rack)).Items[2].Position!.U);
    }

    [Fact]
    public void Counted_from_the_top_it_still_goes_to_the_lowest_place()
    {
        var rack = Bay(42).TopDown().With(Unit("wave-pc", 4));
        Assert.Equal(42, Cured(rack, Only(rack)).Items[0].Position!.U);
    }

    [Fact]
    public void A_set_on_runners_keeps_a_free_unit_to_the_next()
    {
        var rack = Bay().With(Unit("gauge-pc", 4).At(1).On(SupportStyle.Runners), Unit("wave-pc", 4).On(SupportStyle.Runners));
        Assert.Equal(6, Cured(rack, Only(rack)).Items[1].Position!.U);
    }

    [Fact]
    public void In_a_higher_cabinet_too()
    {
        // 47 units would hold the five on top, but right on the runners below; so 52, from 44 on.
        var rack = Bay(42).With(Unit("tower", 38).At(1), Unit("gauge-pc", 4).At(39).On(SupportStyle.Runners), Unit("wave-pc", 5).On(SupportStyle.Runners));
        var cured = Cured(rack, Only(rack));
        Assert.Equal((52, 44), (cured.Cabinet!.HeightU, cured.Items[2].Position!.U));
    }

    [Fact]
    public void In_a_full_rack_a_higher_cabinet_is_the_first_remedy_and_another_rack_the_second()
    {
        var rack = Bay(42).With(Unit("tower", 42).At(1), Unit("wave-pc", 4));
        var finding = Only(rack);
        Assert.Equal(47, Cured(rack, finding).Cabinet!.HeightU);
        Assert.Equal(["tower"], Cured(rack, finding, 1).Items.Select(i => i.Id));
    }
}
