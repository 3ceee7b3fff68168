using RackCheck.Model;
using RackCheck.Rules.Depth;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Depth;

public sealed class CabinetTooShallowTests : RuleTests<CabinetTooShallow>
{
    private static Item Pc(double? depth = 450) => Unit("wave-pc", 4).At(10).Body(depth: depth).Room(40, 75);

    [Theory]
    [InlineData(615)] // 25 + 40 + 450 + 75 + 25
    [InlineData(800)]
    public void Deep_enough_cabinet_passes(double depth) => Passes(EmptyRack(depthMm: depth).With(Pc()));

    [Theory]
    [InlineData(600, 615)] // practice: cabinet sizes: 450 deep does not work in 600 with doors
    [InlineData(614.9, 615)]
    public void Too_shallow_cabinet_names_minimum_depth(double depth, double needed)
    {
        var finding = Only(EmptyRack(depthMm: depth).With(Pc()));
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Equal(["/cabinet/depthMm", "/items/0"], finding.Pointers);
        Numbers(finding, depth, needed, "mm");
    }

    // 25 + 40 + 700 + 75 + 25 = 865 for the one item; the other projects 40 mm too.
    [Fact]
    public void Item_that_needs_the_depth_alone_is_named_alone()
    {
        var finding = Only(EmptyRack(depthMm: 800).With(Unit("amp", 3).At(20).Body(depth: 100).Room(40, 75), Pc(700)));
        Assert.Equal(["/cabinet/depthMm", "/items/1"], finding.Pointers);
        Numbers(finding, 800, 865, "mm");
    }

    [Fact]
    public void Longest_handles_and_deepest_body_add_up()
    {
        // 25 + 76 + 600 + 75 + 25
        var finding = Only(EmptyRack(depthMm: 800).With(Pc(600), Unit("gauge-amp", 3).At(20).Body(depth: 300).Room(76, 75)));
        Assert.Equal(["/cabinet/depthMm", "/items/0", "/items/1"], finding.Pointers);
        Numbers(finding, 800, 801, "mm");
    }

    [Fact]
    public void Rear_item_counts_with_spacing()
    {
        // Setback at least 65; rear plane at 65 + 700, handles 40, door 25.
        var rear = Unit("gauge-amp", 2).At(10, Face.Rear).Body(depth: 100).Room(40, 25);
        Numbers(Only(EmptyRack(depthMm: 800).Uprights(spacing: 700).With(Pc(100), rear)), 800, 830, "mm");
        Passes(EmptyRack(depthMm: 830).Uprights(spacing: 700).With(Pc(100), rear));
    }

    [Fact]
    public void Specified_setback_does_not_matter() =>
        Passes(EmptyRack(depthMm: 800).Uprights(setback: 700).With(Pc()));

    [Fact]
    public void Remedies_are_deeper_cabinet_then_no_front_door()
    {
        var rack = EmptyRack(depthMm: 600).With(Pc());
        var finding = Only(rack);
        Assert.Equal(800, Remedied(rack, finding).Cabinet!.DepthMm);
        Assert.Equal(DoorStyle.None, Remedied(rack, finding, 1).Cabinet!.FrontDoor!.Style);
        Assert.Empty(Remedied(rack, finding, 2).Items);
    }

    [Fact]
    public void Insufficient_door_removal_is_not_offered()
    {
        // 520 + 75 + 25 = 620 without handles.
        var rack = EmptyRack(depthMm: 600).With(Pc(520));
        Assert.DoesNotContain(Only(rack).Remedies, r => r.Patch.Any(o => o.Path == "/cabinet/frontDoor"));
    }

    [Fact]
    public void Item_deeper_than_any_cabinet_is_removed()
    {
        var rack = EmptyRack(depthMm: 600).With(Pc(1200), Unit("gauge-amp", 2).At(20).Body(depth: 200).Room(40, 75));
        Assert.Equal(["gauge-amp"], Remedied(rack, Only(rack)).Items.Select(i => i.Id));
    }

    [Fact]
    public void Shelf_load_is_removed_with_shelf()
    {
        var rack = EmptyRack(depthMm: 600).With(Shelf("tray", 4, depth: 1200).Room(0, 0), ShelfItem("desk-pc", "tray", 180, 400, 100));
        Assert.Empty(Remedied(rack, Only(rack)).Items);
    }

    [Fact]
    public void Deeper_cabinet_corrects_specified_setback()
    {
        var rack = EmptyRack(depthMm: 600).Uprights(setback: 50).With(Pc());
        var remedied = Remedied(rack, Only(rack));
        Assert.Equal((800, 75), (remedied.Cabinet!.DepthMm, remedied.Cabinet.Uprights!.FrontSetbackMm));
    }

    [Fact]
    public void Depths_and_spacing_missing_are_not_assessed()
    {
        ReportsMissing(EmptyRack(depthMm: 600).With(Pc(null)), "/items/0/body/depthMm");
        ReportsMissing(EmptyRack(depthMm: 600).With(Pc() with { Position = new Position { U = 1, Face = Face.Rear } }), "/cabinet/uprights/spacingMm");
    }

    [Fact]
    public void Known_depth_is_checked_despite_unknown_depth()
    {
        var report = Report(EmptyRack(depthMm: 600).With(Pc(), Unit("gauge-amp", 2).At(20)));
        Numbers(Assert.Single(report.Findings), 600, 615, "mm");
        Assert.Equal(["/items/1/body/depthMm"], Assert.Single(report.NotAssessed).Missing);
    }
}
