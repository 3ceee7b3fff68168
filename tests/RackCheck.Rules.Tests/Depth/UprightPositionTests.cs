using RackCheck.Model;
using RackCheck.Rules.Depth;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Depth;

public sealed class UprightPositionTests : RuleTests<UprightPosition>
{
    private static Item Deep(double depth = 600) => Unit("wave-pc", 4).At(10).Body(depth: depth).Room(40, 75);

    private static Item Handled(double front = 76) => Unit("gauge-amp", 3).At(20).Body(depth: 300).Room(front, 75);

    [Fact]
    public void Common_setback_passes() => Passes(EmptyRack(depthMm: 800).With(Deep(), Handled(75)));

    [Fact]
    public void Conflict_names_both_items()
    {
        var rack = EmptyRack(depthMm: 800).With(Deep(), Handled());
        var finding = Only(rack);
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Equal(["/items/1", "/items/0", "/cabinet/depthMm"], finding.Pointers);
        Numbers(finding, 100, 101, "mm");
        Assert.Equal((101, 100), (finding.MessageData["leastMm"].Number, finding.MessageData["greatestMm"].Number));
    }

    [Fact]
    public void Conflict_does_not_depend_on_specified_setback() =>
        Assert.Contains(
            Only(EmptyRack(depthMm: 800).With(Deep(), Handled())).Fingerprint,
            Findings(EmptyRack(depthMm: 800).Uprights(setback: 75).With(Deep(), Handled())).Select(f => f.Fingerprint));

    [Fact]
    public void Rear_uprights_in_rear_door_move_forward()
    {
        // 65 + 711 = 776 > 800 - 25.
        Passes(EmptyRack(depthMm: 800).Uprights(spacing: 710).With(Handled(40)));
        var rack = EmptyRack(depthMm: 800).Uprights(spacing: 711).With(Handled(40));
        var finding = Only(rack);
        Numbers(finding, 776, 775, "mm");
        Assert.Equal(["/cabinet/uprights/spacingMm"], finding.Pointers);
        Assert.Equal(686, Remedied(rack, finding).Cabinet!.Uprights!.SpacingMm);
    }

    [Fact]
    public void Item_of_unknown_depth_is_checked_by_projections()
    {
        // 25 + 400 before the plane, 25 behind: no setback suits it in 400 mm with any body depth.
        Assert.Contains(
            Judge.Geometry.Check(EmptyRack(depthMm: 400).Uprights(setback: 300).With(Unit("wave-pc", 4).At(10).Room(400, 25))).Findings,
            f => f.Rule == "depth.cabinet-too-shallow");
        Assert.Equal("/items/0", Only(EmptyRack(depthMm: 800).Uprights(setback: 900).With(Unit("wave-pc", 4).At(10).Room(40, 25))).Pointers[1]);
    }

    [Fact]
    public void Single_item_too_deep_is_not_in_conflict() =>
        Passes(EmptyRack(depthMm: 600).With(Deep(450), Handled(40)));

    [Fact]
    public void Items_on_opposite_faces_can_be_in_conflict()
    {
        // Front item: 65 to 500. Rear item: at least 25 + 600 + 75 - 100 = 600.
        var rear = Unit("gauge-amp", 3).At(20, Face.Rear).Body(depth: 600).Room(0, 75);
        var finding = Only(EmptyRack(depthMm: 1000).Uprights(spacing: 100).With(Unit("wave-pc", 4).At(10).Body(depth: 400).Room(40, 75), rear));
        Numbers(finding, 500, 600, "mm");
    }

    [Theory]
    [InlineData(65)]
    [InlineData(250)]
    [InlineData(111.1)]
    public void Setback_in_range_passes(double setback) =>
        Passes(EmptyRack(depthMm: 800).Uprights(setback: setback).With(Deep(450)));

    [Theory]
    [InlineData(50, 65, 75)]
    [InlineData(275, 250, 250)]
    [InlineData(276, 250, 226)] // 251 is still out
    public void Setback_out_of_range_moves_to_next_hole(double setback, double limit, double hole)
    {
        var rack = EmptyRack(depthMm: 800).Uprights(setback: setback).With(Deep(450));
        var finding = Only(rack);
        Assert.Equal(["/cabinet/uprights/frontSetbackMm", "/items/0"], finding.Pointers);
        Numbers(finding, setback, limit, "mm");
        Assert.Equal(hole, Remedied(rack, finding).Cabinet!.Uprights!.FrontSetbackMm);
    }

    [Fact]
    public void Remedy_changes_setback_only()
    {
        var rack = EmptyRack(depthMm: 800).Uprights(setback: 50, spacing: 600, pitch: 20, opening: 465, hole: UprightHole.Round).With(Deep(450));
        Assert.Equal(rack.Cabinet!.Uprights! with { FrontSetbackMm = 70 }, Remedied(rack, Only(rack)).Cabinet!.Uprights);
    }

    [Fact]
    public void No_suitable_hole_needs_deeper_cabinet()
    {
        var rack = EmptyRack(depthMm: 800).Uprights(setback: 0, pitch: 40).With(Deep(625));
        Numbers(Only(rack), 0, 65, "mm");
        var remedied = Remedied(rack, Only(rack));
        Assert.Equal((1000, 80), (remedied.Cabinet!.DepthMm, remedied.Cabinet.Uprights!.FrontSetbackMm));
    }

    [Fact]
    public void Removing_front_door_is_further_remedy()
    {
        var rack = EmptyRack(depthMm: 800).With(Deep(), Handled());
        var finding = Only(rack);
        Assert.Equal(1000, Remedied(rack, finding).Cabinet!.DepthMm);
        Assert.Equal(DoorStyle.None, Remedied(rack, finding, 1).Cabinet!.FrontDoor!.Style);
        Assert.Single(Remedied(rack, finding, 2).Items);
    }

    [Fact]
    public void Equal_limits_name_lower_id()
    {
        var twin = Handled() with { Id = "a-twin", Position = new Position { U = 30 } };
        Assert.Equal("a-twin", Only(EmptyRack(depthMm: 800).With(Deep(), Handled(), twin)).MessageData["first"].Text);
        Assert.Equal("a-twin", Only(EmptyRack(depthMm: 800).With(Deep(), twin, Handled())).MessageData["first"].Text);
    }

    [Fact]
    public void Unplaced_items_are_checked() =>
        Only(EmptyRack(depthMm: 800).With(Deep(), Handled() with { Position = null }));

    [Fact]
    public void Depths_missing_are_not_assessed()
    {
        ReportsMissing(EmptyRack(depthMm: 800).With(Unit("wave-pc", 4).At(10)), "/items/0/body/depthMm");
        ReportsMissing(EmptyRack(depthMm: 800).With(Unit("wave-pc", 4).At(10, Face.Rear).Body(depth: 300)), "/cabinet/uprights/spacingMm");
        Passes(EmptyRack(depthMm: 800).With(Plate("plate", 1, 1)));
    }

    [Fact]
    public void Item_of_unknown_depth_needs_its_front_projection()
    {
        var report = Report(EmptyRack(depthMm: 800).Uprights(setback: 64).With(Unit("wave-pc", 4).At(10).Room(40)));
        Numbers(Assert.Single(report.Findings), 64, 65, "mm");
        Assert.Equal(["/items/0/body/depthMm"], Assert.Single(report.NotAssessed).Missing);
    }

    [Fact]
    public void Figures_show_known_limits()
    {
        var figures = Report(EmptyRack(depthMm: 800).With(Deep(450), Handled())).Figures.Depth!;
        Assert.Equal(
            (750, 565, 101, 250, 651),
            (figures.UsableMm, figures.DeepestStackMm, figures.FrontSetbackMinMm, figures.FrontSetbackMaxMm, figures.MinimumCabinetDepthMm));
        var unknown = Report(EmptyRack(depthMm: 800).With(Unit("wave-pc", 4).At(10))).Figures.Depth!;
        Assert.Equal(
            (750, null, 65, null, null),
            (unknown.UsableMm, unknown.DeepestStackMm, unknown.FrontSetbackMinMm, unknown.FrontSetbackMaxMm, unknown.MinimumCabinetDepthMm));
        Assert.Null(Report(EmptyRack(depthMm: 800)).Figures.Depth!.FrontSetbackMinMm);
    }
}
