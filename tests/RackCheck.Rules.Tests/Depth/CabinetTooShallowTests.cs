using RackCheck.Model;
using RackCheck.Rules.Depth;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.Bays;

namespace RackCheck.Rules.Tests.Depth;

public sealed class CabinetTooShallowTests : RuleTests<CabinetTooShallow>
{
    private static Item Pc(double? depth = 450) => Unit("wave-pc", 4).At(10).Body(depth: depth).Room(40, 75);

    [Theory]
    [InlineData(615)] // 25 + 40 + 450 + 75 + 25
    [InlineData(800)]
    public void Deep_enough_passes(double depth) => Passes(Bay(depthMm: depth).With(Pc()));

    [Theory]
    [InlineData(600, 615)] // handbook H1: 450 deep does not work in 600 with doors
    [InlineData(614.9, 615)]
    public void Too_shallow_names_the_least_depth(double depth, double needed)
    {
        var finding = Only(Bay(depthMm: depth).With(Pc()));
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Equal(["/cabinet/depthMm", "/items/0"], finding.Pointers);
        Numbers(finding, depth, needed, "mm");
    }

    [Fact]
    public void The_item_with_the_longest_handles_and_the_deepest_one_add_up()
    {
        // 25 + 76 + 600 + 75 + 25
        var finding = Only(Bay(depthMm: 800).With(Pc(600), Unit("gauge-amp", 3).At(20).Body(depth: 300).Room(76, 75)));
        Assert.Equal(["/cabinet/depthMm", "/items/0", "/items/1"], finding.Pointers);
        Numbers(finding, 800, 801, "mm");
    }

    [Fact]
    public void A_rear_item_counts_with_the_spacing()
    {
        // Front 65 at least; rear plane at 65 + 700, handles 40, door 25.
        var rear = Unit("gauge-amp", 2).At(10, Face.Rear).Body(depth: 100).Room(40, 25);
        Numbers(Only(Bay(depthMm: 800).Uprights(spacing: 700).With(Pc(100), rear)), 800, 830, "mm");
        Passes(Bay(depthMm: 830).Uprights(spacing: 700).With(Pc(100), rear));
    }

    [Fact]
    public void A_setback_given_does_not_make_a_cabinet_too_shallow() =>
        Passes(Bay(depthMm: 800).Uprights(setback: 700).With(Pc()));

    [Fact]
    public void The_least_usual_depth_is_the_first_remedy_and_no_front_door_another()
    {
        var rack = Bay(depthMm: 600).With(Pc());
        var finding = Only(rack);
        Assert.Equal(800, Cured(rack, finding).Cabinet!.DepthMm);
        Assert.Equal(DoorStyle.None, Cured(rack, finding, 1).Cabinet!.FrontDoor!.Style);
        Assert.Empty(Cured(rack, finding, 2).Items);
    }

    [Fact]
    public void No_front_door_is_none_where_it_does_not_suffice()
    {
        // 520 + 75 + 25 = 620 without handles.
        var rack = Bay(depthMm: 600).With(Pc(520));
        Assert.DoesNotContain(Only(rack).Remedies, r => r.Patch.Any(o => o.Path == "/cabinet/frontDoor"));
    }

    [Fact]
    public void Deeper_than_any_cabinet_it_is_taken_out()
    {
        var rack = Bay(depthMm: 600).With(Pc(1200), Unit("gauge-amp", 2).At(20).Body(depth: 200).Room(40, 75));
        Assert.Equal(["gauge-amp"], Cured(rack, Only(rack)).Items.Select(i => i.Id));
    }

    [Fact]
    public void What_stands_on_a_shelf_that_is_taken_out_goes_with_it()
    {
        var rack = Bay(depthMm: 600).With(Shelf("tray", 4, depth: 1200).Room(0, 0), Thing("desk-pc", "tray", 180, 400, 100));
        Assert.Empty(Cured(rack, Only(rack)).Items);
    }

    [Fact]
    public void A_setback_that_is_given_moves_with_the_deeper_cabinet_where_it_has_to()
    {
        var rack = Bay(depthMm: 600).Uprights(setback: 50).With(Pc());
        var cured = Cured(rack, Only(rack));
        Assert.Equal((800, 75), (cured.Cabinet!.DepthMm, cured.Cabinet.Uprights!.FrontSetbackMm));
    }

    [Fact]
    public void Depths_and_the_spacing_are_asked_for()
    {
        Lacks(Bay(depthMm: 600).With(Pc(null)), "/items/0/body/depthMm");
        Lacks(Bay(depthMm: 600).With(Pc() with { Position = new Position { U = 1, Face = Face.Rear } }), "/cabinet/uprights/spacingMm");
    }

    [Fact]
    public void What_is_known_to_be_too_deep_is_found_beside_what_is_not_known()
    {
        var report = Report(Bay(depthMm: 600).With(Pc(), Unit("gauge-amp", 2).At(20)));
        Numbers(Assert.Single(report.Findings), 600, 615, "mm");
        Assert.Equal(["/items/1/body/depthMm"], Assert.Single(report.NotAssessed).Missing);
    }
}
