using RackCheck.Model;
using RackCheck.Rules.Layout;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.Bays;

namespace RackCheck.Rules.Tests.Layout;

public sealed class ShelfMissingTests : RuleTests<ShelfMissing>
{
    [Fact]
    public void A_thing_on_a_shelf_passes_and_so_does_a_unit_on_one() =>
        Passes(Bay().With(Shelf("tray", 4), Thing("desk-pc", "tray"), Unit("gauge-amp", 2) with { OnShelf = "tray" }));

    [Fact]
    public void A_shelf_that_is_not_placed_yet_is_one_all_the_same() =>
        Passes(Bay().With(Shelf("tray", 4) with { Position = null }, Thing("desk-pc", "tray")));

    [Fact]
    public void A_thing_without_units_that_stands_nowhere_is_an_error()
    {
        var finding = Only(Bay().With(Thing("desk-pc", null)));
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Equal(["/items/0"], finding.Pointers);
    }

    [Fact]
    public void A_position_does_not_help_a_thing_without_units() =>
        Assert.Equal(["/items/0"], Only(Bay().With(Thing("desk-pc", null).At(4))).Pointers);

    [Fact]
    public void To_stand_on_what_is_no_shelf_is_an_error()
    {
        var finding = Only(Bay().With(Unit("wave-pc", 4).At(1), Thing("desk-pc", "wave-pc")));
        Assert.Equal(["/items/1/onShelf"], finding.Pointers);
        Assert.Equal(("desk-pc", "wave-pc"), (finding.MessageData["item"].Text, finding.MessageData["shelf"].Text));
    }

    [Fact]
    public void A_shelf_on_a_shelf_bears_nothing()
    {
        var findings = Findings(Bay().With(Shelf("tray", 4), Shelf("upper", 9) with { OnShelf = "tray", Position = null }, Thing("desk-pc", "upper")));
        Assert.Equal(["/items/2/onShelf"], findings.Single().Pointers);
    }

    [Fact]
    public void A_shelf_without_units_hangs_on_no_uprights_and_bears_nothing() =>
        Assert.Equal(
            ["/items/0", "/items/1/onShelf"],
            Findings(Bay().With(Thing("board", null) with { Category = ItemCategory.Shelf }, Thing("desk-pc", "board"))).Select(f => f.Pointers[0]));

    [Fact]
    public void A_thing_on_itself_stands_nowhere() =>
        Assert.Equal(["/items/0/onShelf"], Only(Bay().With(Thing("desk-pc", "desk-pc"))).Pointers);

    [Fact]
    public void It_goes_onto_a_shelf_that_has_room()
    {
        var rack = Bay().With(
            Shelf("short", 2, depth: 300), Shelf("full", 10), Thing("wave-psu", "full", 300, 400, 100), Shelf("tray", 20), Thing("desk-pc", null, 180, 400, 360));
        Assert.Equal("tray", Cured(rack, Only(rack)).Items[4].OnShelf);
    }

    [Fact]
    public void Or_onto_a_new_one_as_deep_as_itself_with_room_above()
    {
        var rack = Bay(12).With(Unit("wave-pc", 3).At(1), Thing("desk-pc", null, 180, 400, 8 * 44.45));
        var cured = Cured(rack, Only(rack));
        var shelf = cured.Items[2];
        Assert.Equal(("shelf-for-desk-pc", 4, 400.0), (shelf.Id, shelf.Position!.U, shelf.Body!.DepthMm));
        Assert.Equal(shelf.Id, cured.Items[1].OnShelf);
    }

    [Fact]
    public void The_new_one_has_an_id_of_its_own()
    {
        var rack = Bay().With(Thing("desk-pc", null), Unit("shelf-for-desk-pc", 1).At(40), Unit("shelf-for-desk-pc-2", 1).At(42));
        Assert.Equal("shelf-for-desk-pc-3", Cured(rack, Only(rack)).Items[0].OnShelf);
    }

    [Fact]
    public void An_id_of_full_length_is_cut_for_that_without_breaking_a_character()
    {
        var id = "y" + string.Concat(Enumerable.Repeat("x\U0001F30A", 21));
        Assert.Equal(64, id.Length);
        var rack = Bay().With(Thing(id, null));
        Assert.StartsWith("shelf-for-yx", Cured(rack, Only(rack)).Items[0].OnShelf, StringComparison.Ordinal);
        Assert.DoesNotContain('\uFFFD', Cured(rack, Only(rack)).Items[0].OnShelf!);
    }

    [Theory]
    [InlineData(441, 100)] // wider than any shelf
    [InlineData(180, 135)] // more than three units: with the shelf's own five in all, where four are free
    public void Where_no_shelf_can_be_had_it_is_taken_out(double width, double height)
    {
        var rack = Bay(42).With(Unit("tower", 38).At(1), Thing("desk-pc", null, width, 400, height));
        Assert.Equal(["tower"], Cured(rack, Only(rack)).Items.Select(i => i.Id));
    }

    [Fact]
    public void Where_a_request_takes_no_more_items_no_shelf_is_added()
    {
        var rack = Bay(12).With([Thing("desk-pc", null), .. Enumerable.Range(0, 199).Select(i => Unit($"u{i}", 1))]);
        Assert.Equal(199, Cured(rack, Only(rack)).Items.Count);
    }

    [Fact]
    public void What_is_to_stand_on_it_goes_with_it()
    {
        // No request may name what is not there.
        var rack = Bay(6).With(Unit("tower", 6).At(1), Thing("desk-pc", null), Thing("mouse", "desk-pc"));
        Assert.Equal(["tower"], Cured(rack, Findings(rack)[0]).Items.Select(i => i.Id));
    }

    [Fact]
    public void A_shelf_that_would_itself_foul_a_door_is_not_offered()
    {
        var rack = Bay(12, depthMm: 600).Uprights(setback: 65).With(Thing("desk-pc", null, 180, 560, 100));
        Assert.Empty(Cured(rack, Only(rack)).Items);
    }
}
