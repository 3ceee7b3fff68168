using System.Numerics;
using CsCheck;
using RackCheck.Model;
using RackCheck.Survey.Layout;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Survey.Tests.Layout;

public sealed class OccupancyTests
{
    [Theory]
    [InlineData(1, 1, 0b1)]
    [InlineData(1, 4, 0b1111)]
    [InlineData(3, 4, 0b1100)]
    [InlineData(-3, 2, 0b11)]
    [InlineData(5, 4, 0)]
    [InlineData(-9, 0, 0)]
    [InlineData(61, 70, 0)]
    public void A_mask_has_a_bit_a_unit_clipped_to_what_a_rack_can_have(int bottom, int top, ulong mask) => Assert.Equal(mask, Occupancy.Mask(bottom, top));

    [Fact]
    public void The_mask_of_the_highest_rack_has_sixty_bits()
    {
        Assert.Equal(60, BitOperations.PopCount(Occupancy.Mask(1, 60)));
        Assert.Equal(Occupancy.Mask(1, 60), Occupancy.Mask(-5, 99));
    }

    [Fact]
    [Trait("Kind", "property")]
    public void Figures_are_those_that_a_count_unit_by_unit_gives() =>
        RackGenerator.Racks.Sample(
            rack =>
            {
                var survey = new RackSurvey(rack);
                var figures = survey.Occupancy.Figures;
                bool[] taken = [.. Enumerable.Range(1, rack.Cabinet!.HeightU!.Value).Select(u => survey.Occupancy.ByPlace.Any(m =>
                    m.Category != ItemCategory.BlankingPanel && u >= m.Bottom && u <= m.ClaimTop))];
                Assert.Equal(taken.Length, figures.UnitsTotal);
                Assert.Equal(taken.Count(t => t), figures.UnitsUsed);
                Assert.Equal(taken.Count(t => !t), figures.UnitsFree);
                Assert.Equal(string.Concat(taken.Select(t => t ? ' ' : 'x')).Split(' ').Max(run => run.Length), figures.LargestGapU);
            },
            iter: Samples.Of(2_000),
            print: Wording.Of);

    [Fact]
    [Trait("Kind", "property")]
    public void A_place_found_is_the_nearest_where_it_could_go() =>
        RackGenerator.Racks.Sample(
            rack =>
            {
                var survey = new RackSurvey(rack);
                var roof = survey.Cabinet.HeightU;
                foreach (var what in survey.Occupancy.ByPlace)
                {
                    var found = survey.Occupancy.FindPlace(what, what.HeightU, what.Bottom!.Value, roof);
                    var last = roof - what.HeightU - what.LoadHeightU + 1;
                    var could = Enumerable.Range(1, Math.Max(0, last)).Where(u => survey.Occupancy.CanGo(what, what.HeightU, u));
                    var wanted = Math.Clamp(what.Bottom.Value, 1, Math.Max(1, last));
                    Assert.Equal(could.OrderBy(u => Math.Abs(u - wanted)).ThenBy(u => u).Cast<int?>().FirstOrDefault(), found);
                }
            },
            iter: Samples.Of(2_000),
            print: Wording.Of);

    [Fact]
    public void Free_units_above_a_shelf_end_at_what_hangs_next()
    {
        var survey = new RackSurvey(EmptyRack(20).With(Shelf("tray", 4), Unit("wave-pc", 4).At(9), Unit("gauge-amp", 2).At(15)));
        Assert.Equal(4, survey.Occupancy.FreeAbove(survey.Items[0]));
        var alone = new RackSurvey(EmptyRack(20).With(Shelf("tray", 4)));
        Assert.Equal(16, alone.Occupancy.FreeAbove(alone.Items[0]));
    }

    [Theory]
    [InlineData(600.0, 300, 300, Meeting.No)]
    [InlineData(600.0, 301, 300, Meeting.Yes)]
    [InlineData(600.0, null, 300, Meeting.Unknown)]
    [InlineData(600.0, null, 601, Meeting.Yes)]
    [InlineData(null, 300, 300, Meeting.Unknown)]
    [InlineData(null, 500, 451, Meeting.Yes)] // 950 between the doors
    public void Two_meet_where_their_reaches_exceed_the_room(double? spacing, int? front, int? rear, Meeting meeting)
    {
        var survey = new RackSurvey(EmptyRack().Uprights(spacing: spacing).With(
            Unit("a", 1).At(1).Body(depth: front).Room(0, 0), Unit("b", 1).At(1, Face.Rear).Body(depth: rear).Room(0, 0)));
        Assert.Equal(meeting, survey.Occupancy.Meet(survey.Items[0], survey.Items[1]));
        Assert.Equal(meeting, survey.Occupancy.Meet(survey.Items[1], survey.Items[0]));
    }

    [Fact]
    public void What_is_placed_comes_from_below_front_before_rear_then_by_id()
    {
        var survey = new RackSurvey(
            EmptyRack().With(Unit("c", 1).At(5), Unit("b", 1).At(2, Face.Rear), Unit("z", 1).At(2), Unit("a", 1).At(2, Face.Rear), Unit("loose", 1))
                .With(Strip("a", PduMounting.Horizontal, 2, Face.Rear)));
        Assert.Equal(["z", "a", "a", "b", "c"], survey.Occupancy.ByPlace.Select(m => m.Id));
        Assert.Null(survey.Occupancy.ByPlace[2].Item);
    }
}
