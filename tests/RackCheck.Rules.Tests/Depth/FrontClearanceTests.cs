using RackCheck.Model;
using RackCheck.Rules.Depth;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Depth;

public sealed class FrontClearanceTests : RuleTests<FrontClearance>
{
    private static Item Pc(double? front = 40) => Unit("wave-pc", 4).At(10).Body(depth: 450).Room(front, 75);

    [Theory]
    [InlineData(65)] // 25 + 40
    [InlineData(250)]
    public void Handles_clear_of_the_door_pass(double setback) => Passes(EmptyRack(depthMm: 800).Uprights(setback: setback).With(Pc()));

    [Theory]
    [InlineData(64.9)]
    [InlineData(0)]
    public void Handles_fouling_front_door_are_error(double setback)
    {
        var finding = Only(EmptyRack(depthMm: 800).Uprights(setback: setback).With(Pc()));
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Equal(["/items/0", "/cabinet/uprights/frontSetbackMm"], finding.Pointers);
        Numbers(finding, setback, 65, "mm");
    }

    [Fact]
    public void Setback_missing_passes() => Passes(EmptyRack(depthMm: 800).Uprights(spacing: 600).With(Pc(300)));

    [Theory]
    [InlineData(0, 40)]
    [InlineData(60, 100)]
    public void Door_depth_is_used_where_specified(double door, double needed)
    {
        var rack = EmptyRack(depthMm: 800).Uprights(setback: 39).Cabinet(
            c => c with { FrontDoor = new Door { Style = DoorStyle.Glazed, DepthMm = door } }).With(Pc());
        Numbers(Only(rack), 39, needed, "mm");
    }

    [Fact]
    public void No_front_door_allows_protruding_handles() =>
        Passes(EmptyRack(depthMm: 800).Uprights(setback: 0).Doors(DoorStyle.None, DoorStyle.Solid).With(Pc(120)));

    [Fact]
    public void Default_front_projection_is_40_mm_and_reported()
    {
        var rack = EmptyRack(depthMm: 800).Uprights(setback: 64).With(Pc(null));
        Numbers(Only(rack), 64, 65, "mm");
        var assumption = Assert.Single(Report(rack).Assumed(), a => a.Pointer == "/items/0/frontProjectionMm");
        Assert.Equal((40.0, "mm"), (assumption.Value.Number, assumption.Unit));
    }

    [Fact]
    public void Blanking_panel_has_no_front_projection() =>
        Passes(EmptyRack(depthMm: 800).Uprights(setback: 25).With(Plate("plate", 1, 1)));

    [Theory]
    [InlineData(400, null)] // 200 + 300 - 400 - 75 = 25
    [InlineData(401, 201.0)]
    public void Rear_item_is_checked_by_its_body(double depth, double? needed)
    {
        var rack = EmptyRack(depthMm: 800).Uprights(setback: 200, spacing: 300).With(Unit("gauge-amp", 2).At(10, Face.Rear).Body(depth: depth).Room(0, 75));
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
    public void Rear_item_data_missing_are_not_assessed()
    {
        var rear = Unit("gauge-amp", 2).At(10, Face.Rear);
        ReportsMissing(EmptyRack(depthMm: 800).Uprights(setback: 200).With(rear), "/cabinet/uprights/spacingMm", "/items/0/body/depthMm");
        ReportsMissing(EmptyRack(depthMm: 800).Uprights(setback: 200, spacing: 300).With(rear), "/items/0/body/depthMm");
        ReportsMissing(EmptyRack(depthMm: 800).Uprights(setback: 200).With(rear.Body(depth: 100)), "/cabinet/uprights/spacingMm");
    }

    [Fact]
    public void Front_item_needs_no_body_depth() =>
        Passes(EmptyRack(depthMm: 800).Uprights(setback: 65).With(Unit("wave-pc", 4).At(10).Room(40)));

    [Fact]
    public void Shelf_load_is_checked()
    {
        var rack = EmptyRack(depthMm: 800).Uprights(setback: 64).With(Shelf("tray", 4).Room(0, 0), ShelfItem("desk-pc", "tray", 180, 400, 100).Room(40));
        Assert.Equal("/items/1", Only(rack).Pointers[0]);
    }

    [Fact]
    public void One_setback_is_remedy_for_all_findings()
    {
        var rack = EmptyRack(depthMm: 800).Uprights(setback: 50).With(Pc(), Unit("gauge-amp", 2).At(20).Body(depth: 300).Room(60, 75));
        var findings = Findings(rack);
        Assert.Equal(2, findings.Count);

        // At least 85; the holes are at 50, 75 and 100.
        Assert.Equal(100, Remedied(rack, findings[0]).Cabinet!.Uprights!.FrontSetbackMm);
        Assert.Equal(100, Remedied(rack, findings[1]).Cabinet!.Uprights!.FrontSetbackMm);
    }
}
