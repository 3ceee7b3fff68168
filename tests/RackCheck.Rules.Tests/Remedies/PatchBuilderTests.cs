using RackCheck.Model;
using RackCheck.Planning;
using RackCheck.Rules.Remedies;
using RackCheck.Rules.Survey;
using RackCheck.Rules.Tests.Harness;
using static RackCheck.Rules.Tests.Harness.Bays;

namespace RackCheck.Rules.Tests.Remedies;

public sealed class PatchBuilderTests
{
    [Fact]
    public void What_is_taken_out_goes_with_its_connections_and_acceptances_and_the_rest_keeps_its_own()
    {
        var rack = Bay().With(Unit("a", 1).At(1).Plugs(1), Unit("b", 1).At(2).Plugs(2), Unit("c", 1).At(3).Plugs(1), Unit("d", 1).At(4)).With(Strip("strip", UnitMounting.Vertical)) with
        {
            Connections = [.. new[] { "b", "a", "b", "c" }.Select(i => new Connection { Item = i, Unit = "strip", Group = "g1" })],
        };
        rack = rack
            .Accept("layout.overlap", pointer: "/items/0/position")
            .Accept("layout.overlap", pointer: "/items/1/position")
            .Accept("layout.overlap", pointer: "/items/2/position")
            .Accept("layout.no-support", pointer: "/items/3")
            .Accept("layout.no-support", fingerprint: "0123456789abcdef")
            .Accept("layout.reserve", pointer: "/cabinet/heightU")
            .Accept("layout.blanking", pointer: "/items");
        var survey = new RackSurvey(rack);
        var patched = RackPatch.Apply(rack, new PatchBuilder(survey).TakeOut([survey.Items[1], survey.Items[2]]).Titled("out"));
        Assert.Equal(["a", "d"], patched.Items.Select(i => i.Id));
        Assert.Equal(["a"], patched.Connections!.Select(c => c.Item));
        Assert.Equal(["/items/0/position", "/items/1", null, "/cabinet/heightU", "/items"], patched.Acceptances!.Select(a => a.Pointer));
    }

    [Fact]
    public void Uprights_and_support_keep_what_is_not_changed()
    {
        var rack = Bay().Uprights(setback: 75, spacing: 600, pitch: 20, opening: 465, hole: UprightHole.Round).With(Unit("a", 1).At(1).On(SupportStyle.Slides, 9, 500, 700));
        var survey = new RackSurvey(rack);
        var patched = RackPatch.Apply(rack, new PatchBuilder(survey).SetUprights(u => u with { SpacingMm = 620 }).SetSupport(survey.Items[0], rack.Items[0].Support! with { MaxSpacingMm = 650 }).Titled("x"));
        Assert.Equal(rack.Cabinet!.Uprights! with { SpacingMm = 620 }, patched.Cabinet!.Uprights);
        Assert.Equal(rack.Items[0].Support! with { MaxSpacingMm = 650 }, patched.Items[0].Support);
    }

    [Fact]
    public void Members_whose_parent_is_absent_come_with_it()
    {
        var rack = Bay().With(Unit("a", 1));
        var survey = new RackSurvey(rack);
        var patched = RackPatch.Apply(rack, new PatchBuilder(survey).SetUprights(u => u with { FrontSetbackMm = 75 }).SetFrontDoor(new Door { Style = DoorStyle.None }).Place(survey.Items[0], 4).Titled("x"));
        Assert.Equal((75, DoorStyle.None, 4), (patched.Cabinet!.Uprights!.FrontSetbackMm, patched.Cabinet.FrontDoor!.Style, patched.Items[0].Position!.Unit));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_higher_cabinet_leaves_everything_where_it_hangs(bool topDown)
    {
        var rack = Bay(12).Cabinet(c => c with { HeightMm = 700 }).With(Unit("a", 2).At(3), Unit("b", 1).At(5, Face.Rear)).With(Strip("strip", UnitMounting.Horizontal, 8));
        rack = topDown ? rack.TopDown() : rack;
        var before = new RackSurvey(rack);
        var patched = RackPatch.Apply(rack, new PatchBuilder(before).Raise(15).Titled("x"));
        Assert.Equal(before.Occupancy.ByPlace.Select(m => (m.Id, m.Bottom, m.Face)), new RackSurvey(patched).Occupancy.ByPlace.Select(m => (m.Id, m.Bottom, m.Face)));
        Assert.Equal((15, 833.35), (patched.Cabinet!.HeightU, patched.Cabinet.HeightMm));
    }
}
