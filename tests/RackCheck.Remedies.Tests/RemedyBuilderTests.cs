using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Remedies.Tests;

public sealed class RemedyBuilderTests
{
    [Fact]
    public void Uprights_and_support_keep_what_is_not_changed()
    {
        var rack = EmptyRack().Uprights(setback: 75, spacing: 600, pitch: 20, opening: 465, hole: UprightHole.Round)
            .With(Unit("a", 1).At(1).On(SupportStyle.Slides, 9, 500, 700));
        var survey = new RackSurvey(rack);
        var patched = new RemedyBuilder(survey).SetUprights(u => u with { SpacingMm = 620 })
            .SetSupport(survey.Items[0], rack.Items[0].Support! with { MaxSpacingMm = 650 }).After;
        Assert.Equal(rack.Cabinet!.Uprights! with { SpacingMm = 620 }, patched.Cabinet!.Uprights);
        Assert.Equal(rack.Items[0].Support! with { MaxSpacingMm = 650 }, patched.Items[0].Support);
    }

    [Fact]
    public void Members_whose_parent_is_absent_come_with_it()
    {
        var rack = EmptyRack().With(Unit("a", 1));
        var survey = new RackSurvey(rack);
        var patched = new RemedyBuilder(survey).SetUprights(u => u with { FrontSetbackMm = 75 })
            .SetCabinet(c => c with { FrontDoor = new Door { Style = DoorStyle.None } }).Place(survey.Items[0], 4).After;
        Assert.Equal((75, DoorStyle.None, 4), (patched.Cabinet!.Uprights!.FrontSetbackMm, patched.Cabinet.FrontDoor!.Style, patched.Items[0].Position!.U));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_higher_cabinet_leaves_everything_where_it_hangs(bool topDown)
    {
        var rack = EmptyRack(12).Cabinet(c => c with { HeightMm = 700 }).With(Unit("a", 2).At(3), Unit("b", 1).At(5, Face.Rear))
            .With(Strip("strip", PduMounting.Horizontal, 8));
        rack = topDown ? rack.TopDown() : rack;
        var before = new RackSurvey(rack);
        var patched = new RemedyBuilder(before).Raise(15).After;
        Assert.Equal(
            before.Occupancy.ByPlace.Select(m => (m.Id, m.Bottom, m.Face)), new RackSurvey(patched).Occupancy.ByPlace.Select(m => (m.Id, m.Bottom, m.Face)));
        Assert.Equal((15, 833.35), (patched.Cabinet!.HeightU, patched.Cabinet.HeightMm));
    }
}
