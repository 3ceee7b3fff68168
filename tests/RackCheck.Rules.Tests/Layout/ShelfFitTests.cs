using RackCheck.Model;
using RackCheck.Rules.Layout;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.Bays;

namespace RackCheck.Rules.Tests.Layout;

public sealed class ShelfFitTests : RuleTests<ShelfFit>
{
    private static RackDescription Tray(params Item[] things) => Bay().With([Shelf("tray", 4), .. things]);

    [Fact]
    public void A_shelf_with_nothing_on_it_passes() => Passes(Bay().With(Shelf("tray", 4, depth: null)));

    [Theory]
    [InlineData(180, 260, null)] // 440 = 450 - 10
    [InlineData(180, 260.5, 440.5)]
    public void Widths_add_up_to_the_usable_width(double one, double other, double? found)
    {
        var rack = Tray(Thing("desk-pc", "tray", one, 400, 300), Thing("wave-psu", "tray", other, 400, 100));
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
    public void The_opening_is_taken_where_it_is_given() =>
        Numbers(Only(Tray(Thing("desk-pc", "tray", 456, 400, 300)).Uprights(opening: 465)), 456, 455, "mm");

    [Fact]
    public void Of_several_things_those_past_the_width_are_too_much_by_id_whatever_their_order()
    {
        Item[] things = [Thing("c", "tray", 100, 400, 100), Thing("a", "tray", 200, 400, 100), Thing("b", "tray", 200, 400, 100), Thing("d", "tray", 100, 400, 100)];
        var finding = Only(Tray(things));

        // a and b fill 400; c and d of 100 each do not go beside them.
        Assert.Equal("c and d", finding.MessageData["item"].Text);
        Assert.Equal("/items/1/body/widthMm", finding.Pointers[0]);
        Assert.Equal(finding.Fingerprint, Only(Tray([.. things.Reverse()])).Fingerprint);
    }

    [Fact]
    public void What_is_too_much_goes_onto_another_shelf()
    {
        var rack = Tray(Thing("desk-pc", "tray", 180, 400, 300), Thing("wave-psu", "tray", 261, 400, 100)).With(Shelf("upper", 20));
        Assert.Equal("upper", Cured(rack, Only(rack)).Items[2].OnShelf);
    }

    [Fact]
    public void Or_onto_a_new_one()
    {
        var rack = Tray(Thing("desk-pc", "tray", 180, 400, 300), Thing("wave-psu", "tray", 261, 400, 100));
        var cured = Cured(rack, Only(rack));
        Assert.Equal("shelf-for-wave-psu", cured.Items[2].OnShelf);
        Assert.Equal(4, cured.Items.Count);
    }

    [Theory]
    [InlineData(450, false)]
    [InlineData(450.1, true)]
    public void A_thing_may_be_as_deep_as_its_shelf(double depth, bool found)
    {
        var rack = Tray(Thing("desk-pc", "tray", 180, depth, 300));
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
    public void A_deeper_shelf_is_the_remedy()
    {
        var rack = Tray(Thing("desk-pc", "tray", 180, 500, 300));
        Assert.Equal(500, Cured(rack, Only(rack)).Items[0].Body!.DepthMm);
    }

    [Fact]
    public void Unless_it_would_foul_the_rear_door()
    {
        // 65 + 690 + 25 just reaches the door at 775; the shelf's own cables need 75.
        var tray = Shelf("tray", 4).Room(rear: 75);
        var rack = Bay(depthMm: 800).Uprights(setback: 65).With(tray, Thing("desk-pc", "tray", 180, 690, 300).Room(rear: 0));
        Assert.Equal(["tray"], Cured(rack, Only(rack)).Items.Select(i => i.Id));
    }

    [Fact]
    public void Or_meet_what_hangs_behind_it()
    {
        var rack = Bay().Uprights(spacing: 700).With(
            Shelf("tray", 4), Thing("desk-pc", "tray", 180, 500, 100), Unit("gauge-amp", 2).At(4, Face.Rear).Body(depth: 200).Room(rear: 25));
        Assert.Equal(["tray", "gauge-amp"], Cured(rack, Only(rack)).Items.Select(i => i.Id));
    }

    [Theory]
    [InlineData(355.6, false)] // 8 free units
    [InlineData(355.7, true)]
    public void A_thing_may_be_as_high_as_the_free_units_above_its_shelf(double height, bool found)
    {
        var rack = Tray(Thing("desk-pc", "tray", 180, 400, height)).With(Unit("wave-pc", 4).At(13));
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
    public void The_roof_is_the_end_of_the_free_units() =>
        Numbers(Only(Bay(12).With(Shelf("tray", 11), Thing("desk-pc", "tray", 180, 400, 50))), 50, 44.45, "mm");

    [Fact]
    public void A_shelf_above_the_top_unit_has_no_room_at_all()
    {
        var finding = Only(Bay(12).With(Shelf("tray", 14), Thing("desk-pc", "tray", 180, 400, 50)));
        Numbers(finding, 50, 0, "mm");
        Assert.Null(finding.UtilisationPercent);
    }

    [Fact]
    public void Counted_from_the_top_above_is_still_above() =>
        Numbers(Only(Bay(12).TopDown().With(Shelf("tray", 9), Thing("desk-pc", "tray", 180, 400, 50), Unit("wave-pc", 4).At(7))), 50, 44.45, "mm");

    [Fact]
    public void Behind_the_shelf_only_what_reaches_it_takes_room()
    {
        Item[] load = [Shelf("tray", 4).Room(rear: 0), Thing("desk-pc", "tray", 180, 400, 300)];
        Passes(Bay().Uprights(spacing: 700).With([.. load, Unit("gauge-amp", 2).At(5, Face.Rear).Body(depth: 225).Room(rear: 25)]));
        Numbers(Only(Bay().Uprights(spacing: 700).With([.. load, Unit("gauge-amp", 2).At(5, Face.Rear).Body(depth: 226).Room(rear: 25)])), 300, 0, "mm");
    }

    [Fact]
    public void A_unit_on_a_shelf_is_as_high_as_its_units_where_its_body_is_not_known()
    {
        var finding = Only(Tray(Unit("gauge-amp", 2).Body(width: 400, depth: 300) with { OnShelf = "tray" }).With(Unit("wave-pc", 4).At(6)));
        Numbers(finding, 88.9, 44.45, "mm");
    }

    [Fact]
    public void A_unit_without_a_body_points_to_the_units_that_it_is_measured_by()
    {
        var report = Report(Tray(Unit("gauge-amp", 2) with { OnShelf = "tray" }).With(Unit("wave-pc", 4).At(6)));
        Assert.Equal(["/items/1/heightU", "/items/0"], Assert.Single(report.Findings).Pointers);
        Assert.Equal(["/items/1/body/depthMm", "/items/1/body/widthMm"], Assert.Single(report.NotAssessed).Missing);
    }

    [Fact]
    public void A_shelf_moves_to_where_there_is_room_above_it()
    {
        var rack = Tray(Thing("desk-pc", "tray", 180, 400, 300)).With(Unit("wave-pc", 4).At(6));
        Assert.Equal(10, Cured(rack, Only(rack)).Items[0].Position!.U);
    }

    [Fact]
    public void Where_there_is_none_the_thing_is_taken_out_and_the_shelf_stays()
    {
        var rack = Bay(60).With(Shelf("tray", 4), Thing("desk-pc", "tray", 180, 400, 100), Unit("a", 3).At(1), Unit("b", 56).At(5));
        Assert.Equal(["tray", "a", "b"], Cured(rack, Only(rack)).Items.Select(i => i.Id));
    }

    [Fact]
    public void What_is_not_given_is_asked_for()
    {
        Lacks(Tray(Thing("desk-pc", "tray")), "/items/1/body/depthMm", "/items/1/body/heightMm", "/items/1/body/widthMm");
        Lacks(Bay().With(Shelf("tray", 4, depth: null), Thing("desk-pc", "tray", 180, 400, 300)), "/items/0/body/depthMm");
    }

    [Fact]
    public void On_a_shelf_that_is_not_placed_yet_width_and_depth_are_looked_at()
    {
        var rack = Bay().With(Shelf("tray", 4) with { Position = null }, Thing("desk-pc", "tray", 441, 451, 3000));
        Assert.Equal(["/items/1/body/depthMm", "/items/1/body/widthMm"], Findings(rack).Select(f => f.Pointers[0]));
    }
}
