using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Layout;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Survey.Tests;

public sealed class DepthSurveyTests
{
    private static Item Pc(double? depth = 450) => Unit("wave-pc", 4).At(10).Body(depth: depth).Room(40, 75);

    private static DepthSurvey Depth(RackDescription rack) => new RackSurvey(rack).Depth;

    [Fact]
    public void Without_items_any_setback_will_do()
    {
        var depth = Depth(EmptyRack(depthMm: 800));
        Assert.Equal(new SetbackInterval(0, double.PositiveInfinity), depth.All);
        Assert.Equal((null, null), (depth.LeastBy, depth.GreatestBy));
        Assert.Equal(0, depth.SetbackMm);
    }

    [Fact]
    public void The_setback_given_counts_even_where_it_serves_nobody() =>
        Assert.Equal(700, Depth(EmptyRack(depthMm: 800).Uprights(setback: 700).With(Pc())).SetbackMm);

    [Theory]
    [InlineData(450, 25, 75.0)] // the least hole in 65 to 250
    [InlineData(450, 65, 65.0)]
    [InlineData(630, 25, 65.0)] // no hole in 65 to 70: as near as can be
    [InlineData(700, 25, null)]
    public void Uprights_that_are_not_set_yet_stand_at_the_least_hole_that_serves(double depth, double pitch, double? setback) =>
        Assert.Equal(setback, Depth(EmptyRack(depthMm: 800).Uprights(pitch: pitch).With(Pc(depth))).SetbackMm);

    [Fact]
    public void An_item_alone_that_no_setback_serves_fits_nowhere()
    {
        var survey = new RackSurvey(EmptyRack(depthMm: 600).With(Pc(), Unit("gauge-amp", 2).At(20).Body(depth: 300).Room(40, 75)));
        Assert.True(survey.Depth.FitsNowhere(survey.Items[0]));
        Assert.False(survey.Depth.FitsNowhere(survey.Items[1]));
    }

    [Fact]
    public void Another_cabinet_and_items_taken_out_can_be_asked_for()
    {
        var survey = new RackSurvey(EmptyRack(depthMm: 600).With(Pc(), Unit("gauge-amp", 2).At(20).Body(depth: 300).Room(60, 75)));
        Assert.Equal(new SetbackInterval(85, 250), survey.Depth.AllIn(survey.Cabinet.Depth with { DepthMm = 800 }));
        Assert.Equal(new SetbackInterval(85, 200), survey.Depth.AllIn(survey.Cabinet.Depth, [survey.Items[0]]));
    }

    [Theory]
    [InlineData(null, 400, true)]
    [InlineData(null, 700, true)] // up to the door at 775, with the uprights at 65 to 75
    [InlineData(null, 711, false)]
    [InlineData(75.0, 700, true)]
    [InlineData(75.0, 701, false)]
    [InlineData(20.0, 100, false)] // the uprights themselves stand in the door
    public void More_can_be_taken_where_it_is_served_with_the_rest(double? setback, double depth, bool can)
    {
        var rack = EmptyRack(depthMm: 800).Uprights(setback: setback).With(Pc());
        Assert.Equal(can, Depth(rack).CanTake(new MountedItem { Index = -1, Id = "more", HeightU = 1, BodyDepthMm = depth }));
    }

    [Theory]
    [InlineData(100, true)]
    [InlineData(525, false)] // as deep as what sets the bound already
    [InlineData(600, false)]
    public void In_a_conflict_more_can_be_taken_only_where_it_sets_no_bound(double depth, bool can) =>
        Assert.Equal(can, Depth(EmptyRack(depthMm: 600).With(Pc())).CanTake(new MountedItem { Index = -1, Id = "more", HeightU = 1, BodyDepthMm = depth }));

    [Fact]
    public void In_another_cabinet_the_uprights_keep_a_setback_given_and_else_go_to_their_least_hole()
    {
        var deep = new CabinetDepth(1000, 25, 25, FrontOpen: false, RearOpen: false);
        Assert.Equal(75, Depth(EmptyRack(depthMm: 800).With(Pc(630))).SetbackIn(deep));
        Assert.Equal(70, Depth(EmptyRack(depthMm: 800).Uprights(setback: 70).With(Pc(630))).SetbackIn(deep));
        Assert.Null(Depth(EmptyRack(depthMm: 800).With(Pc(1200))).SetbackIn(deep));
        Assert.Null(Depth(EmptyRack(depthMm: 600).Uprights(setback: 20).With(Pc())).SetbackIn(deep));
    }
}
