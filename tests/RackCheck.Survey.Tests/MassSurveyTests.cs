using RackCheck.Model;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.LoadRacks;

namespace RackCheck.Survey.Tests;

public sealed class MassSurveyTests
{
    private static readonly string[] Stand = ["/cabinet/base/heightMm", "/cabinet/base/style", "/cabinet/heightMm"];

    private static MassSurvey Survey(RackDescription rack) => new RackSurvey(rack).Mass;

    private static IEnumerable<string> Assumed(RackDescription rack) => new RackSurvey(rack).Assumptions.Select(a => a.Pointer);

    [Fact]
    public void A_rack_without_a_word_on_masses_has_no_figures_and_no_assumptions_of_them()
    {
        var rack = EmptyRack().With(Heavy("wave-pc", 1, null).Slid(null));
        Assert.Null(Survey(rack).Figures);
        Assert.Empty(Assumed(rack).Intersect([.. Stand, "/items/0/support/extensionMm", "/cabinet/uprights/frontSetbackMm"]));
    }

    [Fact]
    public void What_is_taken_for_heights_base_and_slides_is_said_where_it_matters()
    {
        var heights = EmptyRack().With(Heavy("wave-pc", 1, 10));
        Assert.Equal(["/cabinet/base/heightMm", "/cabinet/heightMm"], Assumed(heights).Intersect(Stand).Order(StringComparer.Ordinal));
        var whole = heights.Cabinet(c => c with { MassKg = 100 });
        Assert.Equal(Stand, Assumed(whole).Intersect(Stand).Order(StringComparer.Ordinal));
        Assert.Contains("/cabinet/uprights/frontSetbackMm", Assumed(whole));
        Assert.Empty(Assumed(Weighed().With(Heavy("wave-pc", 1, 10).Slid(450))).Intersect([.. Stand, "/cabinet/uprights/frontSetbackMm"]));
    }

    [Theory]
    [InlineData(null, null, null, 50, 1966.9)]
    [InlineData(BaseStyle.Castors, null, null, 130, 2046.9)]
    [InlineData(BaseStyle.Plinth, null, null, 150, 2066.9)]
    [InlineData(BaseStyle.Bolted, null, null, 50, 1966.9)]
    [InlineData(null, null, 2000.0, 66.55, 2000)] // IEC 60297-3-100
    [InlineData(BaseStyle.Castors, 40.0, 2000.0, 86.55, 2000)]
    [InlineData(BaseStyle.Castors, null, 1900.0, 33.1, 1900)] // no more room for the base than the height leaves
    [InlineData(BaseStyle.Castors, 80.0, 1900.0, 80, 1946.9)] // base and units are higher than the height given
    public void Heights_above_the_floor(BaseStyle? style, double? baseMm, double? heightMm, double edge, double height)
    {
        var stand = Survey(Weighed(heightMm: heightMm).Base(style, baseMm)).Stand;
        Assert.Equal((edge, height), (Math.Round(stand.Heights.LowerEdgeMm, 6), Math.Round(stand.Heights.OverallMm, 6)));
    }

    [Fact]
    public void A_height_that_cannot_be_is_listed_as_the_one_taken() =>
        Assert.Equal(
            1946.9,
            new RackSurvey(
                Weighed(heightMm: 1900).Base(BaseStyle.Castors, 80)
                    .With(Heavy("wave-pc", 1, 10))).Assumptions.Single(a => a.Pointer == "/cabinet/heightMm").Value.Number);

    [Fact]
    public void Stabiliser_and_castors_move_the_edges()
    {
        // Doors 25, feet 50 inside the frame: common practice.
        Assert.Equal(new(-300, 925, -250, 250), Survey(Weighed().Base(BaseStyle.Feet, 0, 300)).Stand.Area);
        Assert.Equal(new(75, 925, -250, 250), Survey(Weighed().Base(BaseStyle.Castors, 0)).Stand.Area);
        Assert.Equal(new(75, 925, -250, 250), Survey(Weighed().Base(BaseStyle.Castors, 0, 300)).Stand.Feet);
        Assert.Equal(new(25, 975, -300, 300), Survey(Weighed().Base(BaseStyle.Plinth, 0)).Stand.Feet);
        Assert.Equal(new(0, 1000, -300, 300), Survey(Weighed().OnFaces()).Stand.Feet);
        var deep = Weighed(widthMm: 640).Doors(DoorStyle.None, DoorStyle.None).Inset(120);
        Assert.Equal(new(120, 880, -200, 200), Survey(deep).Stand.Feet);
    }

    [Theory]
    [InlineData(BaseStyle.Feet, null, Face.Front, 75)]
    [InlineData(BaseStyle.Castors, null, Face.Front, 105)] // a castor swivelled inwards takes 30 more
    [InlineData(BaseStyle.Castors, null, Face.Rear, 105)]
    [InlineData(BaseStyle.Castors, 300.0, Face.Front, -300)]
    [InlineData(BaseStyle.Castors, 300.0, Face.Rear, 105)]
    [InlineData(BaseStyle.Plinth, null, Face.Rear, 25)]
    public void Pulled_out_items_tip_over_the_line_of_feet(BaseStyle style, double? stabiliser, Face face, double edge) =>
        Assert.Equal(edge, Survey(Weighed().Base(style, 0, stabiliser)).Stand.PulledEdgeMm(face));

    [Fact]
    public void Insets_that_leave_no_support_are_limited() =>
        Assert.Equal(new(450, 550, -30, 30), Survey(Weighed().Inset(500)).Stand.Feet);

    [Fact]
    public void Wall_hung_and_bolted_racks_cannot_tip()
    {
        var wall = Survey(Weighed().Base(BaseStyle.Wall).With(Heavy("wave-pc", 1, 10)));
        Assert.Equal((false, false), (wall.Stand.CanTip, wall.Stand.StandsOnFloor));
        Assert.Equal((null, null, null), (wall.Figures!.TipAngleDeg, wall.Figures.FloorKnM2, wall.Figures.PointKn));
        Assert.Equal((false, true), (Survey(Weighed().Base(BaseStyle.Bolted)).Stand.CanTip, Survey(Weighed().Base(BaseStyle.Bolted)).Stand.StandsOnFloor));
    }

    [Fact]
    public void Inset_is_listed_where_taken()
    {
        Assert.Contains("/cabinet/base/insetMm", Assumed(Weighed().With(Heavy("wave-pc", 1, 10))));
        Assert.DoesNotContain("/cabinet/base/insetMm", Assumed(Weighed().Inset(50).With(Heavy("wave-pc", 1, 10))));
        Assert.DoesNotContain("/cabinet/base/insetMm", Assumed(Weighed().Base(BaseStyle.Bolted).With(Heavy("wave-pc", 1, 10))));
    }

    [Theory]
    [InlineData(50, 40)]
    [InlineData(-3, 1)]
    public void Outside_the_rack_counts_where_the_nearest_unit_inside_would_be(int unit, int inside) =>
        Assert.Equal(
            Survey(Weighed().With(Heavy("wave-pc", inside - (inside == 40 ? 1 : 0), 10))).Figures!.CentreOfGravityMm,
            Survey(Weighed().With(Heavy("wave-pc", unit, 10))).Figures!.CentreOfGravityMm);

    [Fact]
    public void What_names_a_shelf_that_is_none_counts_at_its_own_position()
    {
        var wrong = Heavy("gauge-amp", 9, 10) with { OnShelf = "wave-pc" };
        Assert.Equal(
            Survey(Weighed().With(Heavy("wave-pc", 1, 10), Heavy("gauge-amp", 9, 10))).Figures, Survey(Weighed().With(Heavy("wave-pc", 1, 10), wrong)).Figures);
        Assert.Null(Survey(Weighed().With(Heavy("wave-pc", 1, 10), wrong with { Position = null })).Balance);
    }

    [Fact]
    public void Nothing_that_weighs_nothing_has_a_balance() => Assert.Null(Survey(Weighed(0).With(Heavy("wave-pc", 1, 0))).Balance);

    [Fact]
    public void A_figure_that_hangs_on_what_is_not_known_is_absent()
    {
        var figures = Survey(Weighed().With(Heavy("wave-pc", 1, 10), Heavy("gauge-amp", 9, 10) with { Position = null })).Figures!;
        Assert.Equal(new MassFigures { EquipmentKg = 20, TotalKg = 120, FloorKnM2 = 1.961 }, figures);
        Assert.Equal(new MassFigures { EquipmentKg = 10 }, Survey(Weighed(null).With(Heavy("wave-pc", 1, 10))).Figures);
    }
}
