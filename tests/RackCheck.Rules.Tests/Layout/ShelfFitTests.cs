using RackCheck.Model;
using RackCheck.Rules.Layout;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Layout;

public sealed class ShelfFitTests : RuleTests<ShelfFit>
{
    private static RackDescription Tray(params Item[] things) => EmptyRack().With([Shelf("tray", 4), .. things]);

    [Fact]
    public void Empty_shelf_passes() => Passes(EmptyRack().With(Shelf("tray", 4, depth: null)));

    [Theory]
    [InlineData(180, 260, null)] // 440 = 450 - 10
    [InlineData(180, 260.5, 440.5)]
    public void Total_width_is_limited_to_usable_width(double one, double other, double? found)
    {
        var rack = Tray(ShelfItem("desk-pc", "tray", one, 400, 300), ShelfItem("wave-psu", "tray", other, 400, 100));
        if (found is null)
        {
            Passes(rack);
            return;
        }

        var finding = Only(rack);
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Equal(["/items/2/body/widthMm", "/items/0"], finding.Pointers);
        Numbers(finding, found.Value, 440, "mm");
    }

    [Fact]
    public void Usable_width_uses_specified_opening() =>
        Numbers(Only(Tray(ShelfItem("desk-pc", "tray", 456, 400, 300)).Uprights(opening: 465)), 456, 455, "mm");

    [Fact]
    public void Surplus_items_do_not_depend_on_item_order()
    {
        Item[] things =
        [
            ShelfItem("c", "tray", 100, 400, 100), ShelfItem("a", "tray", 200, 400, 100), ShelfItem("b", "tray", 200, 400, 100),
            ShelfItem("d", "tray", 100, 400, 100),
        ];
        var finding = Only(Tray(things));

        // a and b are 400 wide in total. There is no space for c and d, 100 each.
        Assert.Equal("c, d", finding.MessageData["items"].ToString());
        Assert.Equal("/items/1/body/widthMm", finding.Pointers[0]);
        Assert.Equal(finding.Fingerprint, Only(Tray([.. things.Reverse()])).Fingerprint);
    }

    [Fact]
    public void Surplus_item_moves_to_another_shelf()
    {
        var rack = Tray(ShelfItem("desk-pc", "tray", 180, 400, 300), ShelfItem("wave-psu", "tray", 261, 400, 100)).With(Shelf("upper", 20));
        Assert.Equal("upper", Remedied(rack, Only(rack)).Items[2].OnShelf);
    }

    [Fact]
    public void Surplus_item_moves_to_new_shelf()
    {
        var rack = Tray(ShelfItem("desk-pc", "tray", 180, 400, 300), ShelfItem("wave-psu", "tray", 261, 400, 100));
        var remedied = Remedied(rack, Only(rack));
        Assert.Equal("shelf-for-wave-psu", remedied.Items[2].OnShelf);
        Assert.Equal(4, remedied.Items.Count);
    }

    [Theory]
    [InlineData(450, false)]
    [InlineData(450.1, true)]
    public void Item_depth_is_limited_to_shelf_depth(double depth, bool found)
    {
        var rack = Tray(ShelfItem("desk-pc", "tray", 180, depth, 300));
        if (!found)
        {
            Passes(rack);
            return;
        }

        var finding = Only(rack);
        Assert.Equal(["/items/1/body/depthMm", "/items/0"], finding.Pointers);
        Numbers(finding, depth, 450, "mm");
    }

    [Fact]
    public void Item_too_deep_gets_deeper_shelf()
    {
        var rack = Tray(ShelfItem("desk-pc", "tray", 180, 500, 300));
        Assert.Equal(500, Remedied(rack, Only(rack)).Items[0].Body!.DepthMm);
    }

    [Fact]
    public void Deeper_shelf_fouling_rear_door_is_not_offered()
    {
        // 65 + 690 + 25 just clears the door at 775; the cables of the shelf need 75.
        var tray = Shelf("tray", 4).Room(rear: 75);
        var rack = EmptyRack(depthMm: 800).Uprights(setback: 65).With(tray, ShelfItem("desk-pc", "tray", 180, 690, 300).Room(rear: 0));
        Assert.Equal(["tray"], Remedied(rack, Only(rack)).Items.Select(i => i.Id));
    }

    [Fact]
    public void Deeper_shelf_meeting_rear_item_is_not_offered()
    {
        var rack = EmptyRack().Uprights(spacing: 700).With(
            Shelf("tray", 4), ShelfItem("desk-pc", "tray", 180, 500, 100), Unit("gauge-amp", 2).At(4, Face.Rear).Body(depth: 200).Room(rear: 25));
        Assert.Equal(["tray", "gauge-amp"], Remedied(rack, Only(rack)).Items.Select(i => i.Id));
    }

    [Theory]
    [InlineData(355.6, false)] // 8 free units
    [InlineData(355.7, true)]
    public void Item_height_is_limited_to_free_U_above_shelf(double height, bool found)
    {
        var rack = Tray(ShelfItem("desk-pc", "tray", 180, 400, height)).With(Unit("wave-pc", 4).At(13));
        if (!found)
        {
            Passes(rack);
            return;
        }

        var finding = Only(rack);
        Assert.Equal(["/items/1/body/heightMm", "/items/0"], finding.Pointers);
        Numbers(finding, height, 355.6, "mm");
    }

    [Fact]
    public void Free_U_end_at_top_of_cabinet() =>
        Numbers(Only(EmptyRack(12).With(Shelf("tray", 11), ShelfItem("desk-pc", "tray", 180, 400, 50))), 50, 44.45, "mm");

    [Fact]
    public void Shelf_above_top_U_has_no_free_U()
    {
        var finding = Only(EmptyRack(12).With(Shelf("tray", 14), ShelfItem("desk-pc", "tray", 180, 400, 50)));
        Numbers(finding, 50, 0, "mm");
        Assert.Null(finding.UtilisationPercent);
    }

    [Fact]
    public void TopDown_numbering_checks_U_above_shelf() =>
        Numbers(Only(EmptyRack(12).TopDown().With(Shelf("tray", 9), ShelfItem("desk-pc", "tray", 180, 400, 50), Unit("wave-pc", 4).At(7))), 50, 44.45, "mm");

    [Fact]
    public void Rear_item_reaching_shelf_limits_height()
    {
        Item[] load = [Shelf("tray", 4).Room(rear: 0), ShelfItem("desk-pc", "tray", 180, 400, 300)];
        Passes(EmptyRack().Uprights(spacing: 700).With([.. load, Unit("gauge-amp", 2).At(5, Face.Rear).Body(depth: 225).Room(rear: 25)]));
        Numbers(Only(EmptyRack().Uprights(spacing: 700).With([.. load, Unit("gauge-amp", 2).At(5, Face.Rear).Body(depth: 226).Room(rear: 25)])), 300, 0, "mm");
    }

    [Fact]
    public void Item_without_body_height_counts_its_U_height()
    {
        var finding = Only(Tray(Unit("gauge-amp", 2).Body(width: 400, depth: 300) with { OnShelf = "tray" }).With(Unit("wave-pc", 4).At(6)));
        Numbers(finding, 88.9, 44.45, "mm");
    }

    [Fact]
    public void Item_without_body_height_points_to_heightU()
    {
        var report = Report(Tray(Unit("gauge-amp", 2) with { OnShelf = "tray" }).With(Unit("wave-pc", 4).At(6)));
        Assert.Equal(["/items/1/heightU", "/items/0"], Assert.Single(report.Findings).Pointers);
        Assert.Equal(["/items/1/body/depthMm", "/items/1/body/widthMm"], Assert.Single(report.NotAssessed).Missing);
    }

    [Fact]
    public void Shelf_moves_to_U_with_free_U_above()
    {
        var rack = Tray(ShelfItem("desk-pc", "tray", 180, 400, 300)).With(Unit("wave-pc", 4).At(6));
        Assert.Equal(10, Remedied(rack, Only(rack)).Items[0].Position!.U);
    }

    [Fact]
    public void Item_is_removed_where_no_U_suits_the_shelf()
    {
        var rack = EmptyRack(60).With(Shelf("tray", 4), ShelfItem("desk-pc", "tray", 180, 400, 100), Unit("a", 3).At(1), Unit("b", 56).At(5));
        Assert.Equal(["tray", "a", "b"], Remedied(rack, Only(rack)).Items.Select(i => i.Id));
    }

    [Fact]
    public void Body_sizes_missing_are_not_assessed()
    {
        ReportsMissing(Tray(ShelfItem("desk-pc", "tray")), "/items/1/body/depthMm", "/items/1/body/heightMm", "/items/1/body/widthMm");
        ReportsMissing(EmptyRack().With(Shelf("tray", 4, depth: null), ShelfItem("desk-pc", "tray", 180, 400, 300)), "/items/0/body/depthMm");
    }

    [Fact]
    public void Unplaced_shelf_checks_width_and_depth()
    {
        var rack = EmptyRack().With(Shelf("tray", 4) with { Position = null }, ShelfItem("desk-pc", "tray", 441, 451, 3000));
        Assert.Equal(["/items/1/body/depthMm", "/items/1/body/widthMm"], Findings(rack).Select(f => f.Pointers[0]));
    }
}
