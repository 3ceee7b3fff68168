using RackCheck.Model;
using RackCheck.Rules.Depth;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.Bays;

namespace RackCheck.Rules.Tests.Depth;

public sealed class FrontClearanceTests : RuleTests<FrontClearance>
{
    private static Item Pc(double? front = 40) => Unit("wave-pc", 4).At(10).Body(depth: 450).Room(front, 75);

    [Theory]
    [InlineData(65)] // 25 + 40
    [InlineData(250)]
    public void Handles_clear_of_the_door_pass(double setback) => Passes(Bay(depthMm: 800).Uprights(setback: setback).With(Pc()));

    [Theory]
    [InlineData(64.9)]
    [InlineData(0)]
    public void Handles_in_the_door_are_an_error(double setback)
    {
        var finding = Only(Bay(depthMm: 800).Uprights(setback: setback).With(Pc()));
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Equal(["/items/0", "/cabinet/uprights/frontSetbackMm"], finding.Pointers);
        Numbers(finding, setback, 65, "mm");
    }

    [Fact]
    public void Uprights_that_are_not_set_yet_foul_nothing() => Passes(Bay(depthMm: 800).Uprights(spacing: 600).With(Pc(300)));

    [Theory]
    [InlineData(0, 40)]
    [InlineData(60, 100)]
    public void The_depth_of_the_door_is_taken_where_it_is_given(double door, double needed)
    {
        var rack = Bay(depthMm: 800).Uprights(setback: 39).Cabinet(c => c with { FrontDoor = new Door { Style = DoorStyle.Glazed, DepthMm = door } }).With(Pc());
        Numbers(Only(rack), 39, needed, "mm");
    }

    [Fact]
    public void Without_a_front_door_handles_may_stand_out_of_the_cabinet() =>
        Passes(Bay(depthMm: 800).Uprights(setback: 0).Doors(DoorStyle.None, DoorStyle.Solid).With(Pc(120)));

    [Fact]
    public void A_projection_that_is_not_given_is_forty_and_said_to_be_assumed()
    {
        var rack = Bay(depthMm: 800).Uprights(setback: 64).With(Pc(null));
        Numbers(Only(rack), 64, 65, "mm");
        var assumption = Assert.Single(Report(rack).Assumptions, a => a.Pointer == "/items/0/frontProjectionMm");
        Assert.Equal((40.0, "mm"), (assumption.Value.Number, assumption.Unit));
    }

    [Fact]
    public void A_plate_has_nothing_before_it() =>
        Passes(Bay(depthMm: 800).Uprights(setback: 25).With(Plate("plate", 1, 1)));

    [Theory]
    [InlineData(400, null)] // 200 + 300 - 400 - 75 = 25
    [InlineData(401, 201.0)]
    public void On_the_rear_uprights_it_is_the_body_that_reaches_forward(double depth, double? needed)
    {
        var rack = Bay(depthMm: 800).Uprights(setback: 200, spacing: 300).With(Unit("gauge-amp", 2).At(10, Face.Rear).Body(depth: depth).Room(0, 75));
        if (needed is null)
        {
            Passes(rack);
        }
        else
        {
            Numbers(Only(rack), 200, needed.Value, "mm");
        }
    }

    [Fact]
    public void What_decides_on_the_rear_uprights_is_asked_for()
    {
        var rear = Unit("gauge-amp", 2).At(10, Face.Rear);
        Lacks(Bay(depthMm: 800).Uprights(setback: 200).With(rear), "/cabinet/uprights/spacingMm", "/items/0/body/depthMm");
        Lacks(Bay(depthMm: 800).Uprights(setback: 200, spacing: 300).With(rear), "/items/0/body/depthMm");
        Lacks(Bay(depthMm: 800).Uprights(setback: 200).With(rear.Body(depth: 100)), "/cabinet/uprights/spacingMm");
    }

    [Fact]
    public void On_the_front_uprights_the_body_does_not_matter() =>
        Passes(Bay(depthMm: 800).Uprights(setback: 65).With(Unit("wave-pc", 4).At(10).Room(40)));

    [Fact]
    public void What_stands_on_a_shelf_stands_on_its_uprights()
    {
        var rack = Bay(depthMm: 800).Uprights(setback: 64).With(Shelf("tray", 4).Room(0, 0), Thing("desk-pc", "tray", 180, 400, 100).Room(40));
        Assert.Equal("/items/1", Only(rack).Pointers[0]);
    }

    [Fact]
    public void Each_item_is_a_finding_and_one_setback_cures_them_all()
    {
        var rack = Bay(depthMm: 800).Uprights(setback: 50).With(Pc(), Unit("gauge-amp", 2).At(20).Body(depth: 300).Room(60, 75));
        var findings = Findings(rack);
        Assert.Equal(2, findings.Count);

        // 85 at least; the holes lie at 50, 75, 100.
        Assert.Equal(100, Cured(rack, findings[0]).Cabinet!.Uprights!.FrontSetbackMm);
        Assert.Equal(100, Cured(rack, findings[1]).Cabinet!.Uprights!.FrontSetbackMm);
    }
}
