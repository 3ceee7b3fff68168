using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Survey.Tests;

public sealed class RackSurveyTests
{
    [Theory]
    [InlineData(false, 10, 10)]
    [InlineData(true, 10, 33)]
    [InlineData(true, 42, 1)]
    [InlineData(true, 43, 0)]
    public void Units_are_counted_from_below_inside_whatever_the_request_counts(bool topDown, int unit, int bottom)
    {
        var rack = EmptyRack(42).With(Unit("wave-pc", 4).At(unit));
        var survey = new RackSurvey(topDown ? rack.TopDown() : rack);
        Assert.Equal(bottom, survey.Items[0].Bottom);
        Assert.Equal(unit, survey.Cabinet.Renumber(bottom));
    }

    [Theory]
    [InlineData(false, 10, 13, "U10-U13")]
    [InlineData(true, 10, 13, "U30-U33")]
    [InlineData(true, 42, 42, "U1")]
    public void Units_are_shown_as_the_request_counts_them(bool topDown, int bottom, int top, string text) =>
        Assert.Equal(text, new RackSurvey(topDown ? EmptyRack(42).TopDown() : EmptyRack(42)).Cabinet.UnitsText(bottom, top));

    [Theory]
    [InlineData(null, null, 25, 25, false, false)]
    [InlineData(DoorStyle.None, DoorStyle.None, 0, 0, true, true)]
    [InlineData(DoorStyle.Glazed, DoorStyle.Perforated, 25, 25, false, false)]
    public void A_door_takes_25_unless_there_is_none(DoorStyle? front, DoorStyle? rear, double frontMm, double rearMm, bool frontOpen, bool rearOpen) =>
        Assert.Equal(new CabinetDepth(1000, frontMm, rearMm, frontOpen, rearOpen), new RackSurvey(EmptyRack().Doors(front, rear)).Cabinet.Depth);

    [Fact]
    public void A_door_that_is_none_takes_nothing_whatever_depth_it_is_said_to_have()
    {
        var rack = EmptyRack().Cabinet(c => c with
        {
            FrontDoor = new Door { Style = DoorStyle.None, DepthMm = 40 }, RearDoor = new Door { Style = DoorStyle.Solid, DepthMm = 0 },
        });
        Assert.Equal(new CabinetDepth(1000, 0, 0, FrontOpen: true, RearOpen: false), new RackSurvey(rack).Cabinet.Depth);
    }

    [Fact]
    public void A_shelf_bears_what_names_it_and_claims_whole_units_for_the_highest()
    {
        var survey = new RackSurvey(
            EmptyRack().With(
                ShelfItem("mouse", "tray", height: 44.45), Shelf("tray", 4) with { HeightU = 2 }, ShelfItem("desk-pc", "tray", height: 44.5),
                ShelfItem("board", "tray")));
        var tray = survey.Items[1];
        Assert.Equal(["mouse", "desk-pc", "board"], tray.Load.Select(t => t.Id));
        Assert.Equal((2, 5, 7), (tray.LoadHeightU, tray.Top, tray.ClaimTop));
        Assert.All(tray.Load, t => Assert.Same(tray, t.Shelf));
    }

    [Fact]
    public void A_thing_hangs_on_the_face_of_its_shelf_and_at_no_unit_of_its_own()
    {
        var rear = Shelf("tray", 4) with { Position = new Position { U = 4, Face = Face.Rear } };
        var thing = new RackSurvey(EmptyRack().With(rear, Unit("desk-pc", 4).At(9) with { OnShelf = "tray" })).Items[1];
        Assert.Equal((Face.Rear, null), (thing.Face, thing.Bottom));
    }

    [Fact]
    public void A_plate_has_neither_body_nor_room_before_or_behind_unless_they_are_given()
    {
        var survey = new RackSurvey(EmptyRack().With(Plate("plate", 1, 1), Plate("grip", 1, 2).Room(20)));
        Assert.Equal(new ItemDepth(0, 0, 0), survey.Items[0].Depth);
        Assert.Equal(new ItemDepth(20, 0, 0), survey.Items[1].Depth);
        Assert.DoesNotContain(survey.Assumptions, a => a.Pointer.StartsWith("/items", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(SupportStyle.Runners, null, 2)]
    [InlineData(SupportStyle.Slides, null, 9.5)]
    [InlineData(SupportStyle.Slides, 12.0, 12)]
    [InlineData(SupportStyle.Panel, null, 0)]
    [InlineData(SupportStyle.Shelf, 3.0, 3)]
    public void A_support_has_a_thickness(SupportStyle style, double? given, double thickness) =>
        Assert.Equal(thickness, new RackSurvey(EmptyRack().With(Unit("wave-pc", 4).At(1).On(style, given))).Items[0].SupportThicknessMm);

    [Fact]
    public void A_free_id_is_the_wanted_one_or_it_with_the_first_free_number()
    {
        var survey = new RackSurvey(EmptyRack().With(Unit("shelf", 1), Unit("shelf-3", 1)));
        Assert.Equal("plate", survey.FreeItemId("plate"));
        Assert.Equal("shelf-2", survey.FreeItemId("shelf"));
        Assert.Equal("shelf-3-2", survey.FreeItemId("shelf-3"));
    }

    [Fact]
    public void A_request_may_have_as_many_items_as_the_contract_says()
    {
        var most = typeof(RackDescription).GetProperty(nameof(RackDescription.Items))!.GetCustomAttributes(false)
            .OfType<System.ComponentModel.DataAnnotations.MaxLengthAttribute>().Single().Length;
        Assert.Equal(RackSurvey.MostItems, most);
        var survey = new RackSurvey(EmptyRack().With([.. Enumerable.Range(0, most - 2).Select(i => Unit($"u{i}", 1))]));
        Assert.True(survey.HasRoomFor(2));
        Assert.False(survey.HasRoomFor(3));
    }

    [Fact]
    public void A_distribution_unit_takes_room_only_where_it_is_horizontal_and_placed()
    {
        var survey = new RackSurvey(EmptyRack().With(
            Strip("a", PduMounting.Horizontal, 4, Face.Rear), Strip("b", PduMounting.Horizontal), Strip("c", PduMounting.Vertical, 7), Strip("d", null, 8)));
        var unit = Assert.Single(survey.Units);
        Assert.Equal(("a", 4, 1, Face.Rear), (unit.Id, unit.Bottom, unit.HeightU, unit.Face));
        Assert.Equal(new ItemDepth(40, 60, 75), unit.Depth);
    }

    [Fact]
    public void Ids_of_items_and_distribution_units_have_different_keys()
    {
        var survey = new RackSurvey(EmptyRack().With(Unit("a", 1).At(1)).With(Strip("a", PduMounting.Horizontal, 4)));
        Assert.NotEqual(survey.Items[0].Key, survey.Units[0].Key);
    }
}
