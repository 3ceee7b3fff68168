using RackCheck.Model;
using RackCheck.Rules.Depth;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Depth;

public sealed class RearClearanceTests : RuleTests<RearClearance>
{
    private static Item Pc(double? depth = 450, double? rear = 75) => Unit("wave-pc", 4).At(10).Body(depth: depth).Room(0, rear);

    [Fact]
    public void Body_and_cables_clear_of_rear_door_pass() => Passes(EmptyRack(depthMm: 800).Uprights(setback: 250).With(Pc()));

    [Theory]
    [InlineData(251, 776)]
    [InlineData(300, 825)]
    public void Body_and_cables_fouling_rear_door_are_error(double setback, double reach)
    {
        var finding = Only(EmptyRack(depthMm: 800).Uprights(setback: setback).With(Pc()));
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Equal(["/items/0", "/cabinet/uprights/frontSetbackMm"], finding.Pointers);
        Numbers(finding, reach, 775, "mm");
    }

    [Theory]
    [InlineData(1, 0, 75)] // a plug
    [InlineData(0, 1, 75)] // a cable
    [InlineData(0, 0, 25)]
    public void Default_rear_projection_depends_on_cables(int plugs, int cables, double room)
    {
        var item = Pc(rear: null).Plugs(plugs) with { Cables = cables == 0 ? null : [new CableBundle { DiameterMm = 6, Count = 4 }] };
        var rack = EmptyRack(depthMm: 800).Uprights(setback: 326 - room).With(item);
        Numbers(Only(rack), 776, 775, "mm");
        Assert.Equal(room, Assert.Single(Report(rack).Assumed(), a => a.Pointer == "/items/0/rearProjectionMm").Value.Number);
    }

    [Fact]
    public void No_rear_door_does_not_allow_protruding_body()
    {
        Passes(EmptyRack(depthMm: 800).Uprights(setback: 275).Doors(DoorStyle.Solid, DoorStyle.None).With(Pc()));
        Numbers(Only(EmptyRack(depthMm: 800).Uprights(setback: 276).Doors(DoorStyle.Solid, DoorStyle.None).With(Pc())), 801, 800, "mm");
    }

    [Theory]
    [InlineData(635, false)] // 100 + 635 + 40 = 775
    [InlineData(636, true)]
    public void Rear_item_is_checked_by_its_handles(double spacing, bool found)
    {
        var rack = EmptyRack(depthMm: 800).Uprights(setback: 100, spacing: spacing).With(Unit("gauge-amp", 2).At(10, Face.Rear).Body(depth: 100).Room(40, 25));
        if (found)
        {
            Numbers(Only(rack), 776, 775, "mm");
        }
        else
        {
            Passes(rack);
        }
    }

    [Fact]
    public void No_rear_door_allows_protruding_handles()
    {
        var open = EmptyRack(depthMm: 800).Doors(DoorStyle.Solid, DoorStyle.None).With(Unit("gauge-amp", 2).At(10, Face.Rear).Body(depth: 100).Room(40, 25));
        Passes(open.Uprights(setback: 100, spacing: 700));
        Only(open.Uprights(setback: 100, spacing: 701));
    }

    [Fact]
    public void Data_missing_are_not_assessed()
    {
        ReportsMissing(EmptyRack(depthMm: 800).Uprights(setback: 100).With(Pc(depth: null)), "/items/0/body/depthMm");
        ReportsMissing(EmptyRack(depthMm: 800).With(Pc(depth: null)), "/items/0/body/depthMm");
        ReportsMissing(EmptyRack(depthMm: 800).Uprights(setback: 100).With(Pc() with { Position = new Position { U = 10, Face = Face.Rear } }),
            "/cabinet/uprights/spacingMm");
    }

    [Fact]
    public void Setback_missing_passes() => Passes(EmptyRack(depthMm: 800).With(Pc()));

    [Fact]
    public void Uprights_move_forward_to_next_hole()
    {
        var rack = EmptyRack(depthMm: 800).Uprights(setback: 260, pitch: 50).With(Pc());
        Assert.Equal(210, Remedied(rack, Only(rack)).Cabinet!.Uprights!.FrontSetbackMm);
    }

    [Fact]
    public void No_suitable_hole_needs_deeper_cabinet()
    {
        // The holes at 30 and 230 are outside 65 to 75. In a cabinet 1000 deep the setback stays.
        var rack = EmptyRack(depthMm: 800).Uprights(setback: 230, pitch: 200).With(Pc(depth: 625).Room(40, 75));
        var remedied = Remedied(rack, Only(rack));
        Assert.Equal((1000, 230), (remedied.Cabinet!.DepthMm, remedied.Cabinet.Uprights!.FrontSetbackMm));
    }
}
