using RackCheck.Model;
using RackCheck.Rules.Layout;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Layout;

public sealed class ShelfMissingTests : RuleTests<ShelfMissing>
{
    [Fact]
    public void Items_on_shelf_pass() =>
        Passes(EmptyRack().With(Shelf("tray", 4), ShelfItem("desk-pc", "tray"), Unit("gauge-amp", 2) with { OnShelf = "tray" }));

    [Fact]
    public void Item_on_unplaced_shelf_passes() =>
        Passes(EmptyRack().With(Shelf("tray", 4) with { Position = null }, ShelfItem("desk-pc", "tray")));

    [Fact]
    public void Item_without_U_and_shelf_is_error()
    {
        var finding = Only(EmptyRack().With(ShelfItem("desk-pc", null)));
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Equal(["/items/0"], finding.Pointers);
    }

    [Fact]
    public void Item_without_U_needs_shelf_despite_position() =>
        Assert.Equal(["/items/0"], Only(EmptyRack().With(ShelfItem("desk-pc", null).At(4))).Pointers);

    [Fact]
    public void Item_assigned_to_other_category_is_error()
    {
        var finding = Only(EmptyRack().With(Unit("wave-pc", 4).At(1), ShelfItem("desk-pc", "wave-pc")));
        Assert.Equal(["/items/1/onShelf"], finding.Pointers);
        Assert.Equal(("desk-pc", "wave-pc"), (finding.MessageData["item"].Text, finding.MessageData["shelf"].Text));
    }

    [Fact]
    public void Shelf_on_shelf_is_no_shelf()
    {
        var findings = Findings(
            EmptyRack().With(Shelf("tray", 4), Shelf("upper", 9) with { OnShelf = "tray", Position = null }, ShelfItem("desk-pc", "upper")));
        Assert.Equal(["/items/2/onShelf"], findings.Single().Pointers);
    }

    [Fact]
    public void Shelf_without_U_is_no_shelf() =>
        Assert.Equal(
            ["/items/0", "/items/1/onShelf"],
            Findings(EmptyRack().With(ShelfItem("board", null) with { Category = ItemCategory.Shelf }, ShelfItem("desk-pc", "board"))).Select(
                f => f.Pointers[0]));

    [Fact]
    public void Item_on_itself_is_error() =>
        Assert.Equal(["/items/0/onShelf"], Only(EmptyRack().With(ShelfItem("desk-pc", "desk-pc"))).Pointers);

    [Fact]
    public void Item_moves_to_shelf_with_space()
    {
        var rack = EmptyRack().With(
            Shelf("short", 2, depth: 300), Shelf("full", 10), ShelfItem("wave-psu", "full", 300, 400, 100), Shelf("tray", 20),
            ShelfItem("desk-pc", null, 180, 400, 360));
        Assert.Equal("tray", Remedied(rack, Only(rack)).Items[4].OnShelf);
    }

    [Fact]
    public void Item_moves_to_new_shelf_of_its_depth()
    {
        var rack = EmptyRack(12).With(Unit("wave-pc", 3).At(1), ShelfItem("desk-pc", null, 180, 400, 8 * 44.45));
        var remedied = Remedied(rack, Only(rack));
        var shelf = remedied.Items[2];
        Assert.Equal(("shelf-for-desk-pc", 4, 400.0), (shelf.Id, shelf.Position!.U, shelf.Body!.DepthMm));
        Assert.Equal(shelf.Id, remedied.Items[1].OnShelf);
    }

    [Fact]
    public void New_shelf_gets_free_id()
    {
        var rack = EmptyRack().With(ShelfItem("desk-pc", null), Unit("shelf-for-desk-pc", 1).At(40), Unit("shelf-for-desk-pc-2", 1).At(42));
        Assert.Equal("shelf-for-desk-pc-3", Remedied(rack, Only(rack)).Items[0].OnShelf);
    }

    [Fact]
    public void New_shelf_id_is_cut_between_characters()
    {
        var id = "y" + string.Concat(Enumerable.Repeat("x\U0001F30A", 21));
        Assert.Equal(64, id.Length);
        var rack = EmptyRack().With(ShelfItem(id, null));
        Assert.StartsWith("shelf-for-yx", Remedied(rack, Only(rack)).Items[0].OnShelf, StringComparison.Ordinal);
        Assert.DoesNotContain('\uFFFD', Remedied(rack, Only(rack)).Items[0].OnShelf!);
    }

    [Theory]
    [InlineData(441, 100)] // wider than any shelf
    [InlineData(180, 135)] // more than three units: with the shelf's own five in all, where four are free
    public void Item_without_possible_shelf_is_removed(double width, double height)
    {
        var rack = EmptyRack(42).With(Unit("tower", 38).At(1), ShelfItem("desk-pc", null, width, 400, height));
        Assert.Equal(["tower"], Remedied(rack, Only(rack)).Items.Select(i => i.Id));
    }

    [Fact]
    public void Item_limit_of_request_prevents_shelf()
    {
        var rack = EmptyRack(12).With([ShelfItem("desk-pc", null), .. Enumerable.Range(0, 199).Select(i => Unit($"u{i}", 1))]);
        Assert.Equal(199, Remedied(rack, Only(rack)).Items.Count);
    }

    [Fact]
    public void Dependent_item_is_removed_too()
    {
        // A request must not name an item that does not exist.
        var rack = EmptyRack(6).With(Unit("tower", 6).At(1), ShelfItem("desk-pc", null), ShelfItem("mouse", "desk-pc"));
        Assert.Equal(["tower"], Remedied(rack, Findings(rack)[0]).Items.Select(i => i.Id));
    }

    [Fact]
    public void Shelf_fouling_door_is_not_offered()
    {
        var rack = EmptyRack(12, depthMm: 600).Uprights(setback: 65).With(ShelfItem("desk-pc", null, 180, 560, 100));
        Assert.Empty(Remedied(rack, Only(rack)).Items);
    }
}
