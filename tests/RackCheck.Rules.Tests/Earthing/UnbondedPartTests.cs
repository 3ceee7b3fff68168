using RackCheck.Model;
using RackCheck.Rules.Earthing;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.EarthRacks;

namespace RackCheck.Rules.Tests.Earthing;

public sealed class UnbondedPartTests : RuleTests<UnbondedPart>
{
    private static RackDescription Joined(params BondedPart[] parts) => Earthed().Earth(e => e with { Bonded = parts });

    private static RackDescription Door(RackDescription rack, bool? bonded) =>
        rack.Cabinet(c => c with { FrontDoor = new Door { Style = DoorStyle.Solid, Bonded = bonded } });

    [Fact]
    public void All_parts_bonded_pass() => Passes(Joined(AllParts));

    [Theory]
    [InlineData(BondedPart.Frame, "frame")]
    [InlineData(BondedPart.FrontDoor, "front door")]
    [InlineData(BondedPart.RearDoor, "rear door")]
    [InlineData(BondedPart.SidePanels, "side panels")]
    public void Each_part_that_is_not_is_an_error(BondedPart part, string name)
    {
        // Practice: bonding: frame, each door, side panels.
        var rack = Joined([.. AllParts.Where(p => p != part)]);
        var finding = Only(rack);
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Equal(Scalar.CodeOf(name), finding.MessageData["part"].Text);
        Assert.Equal("/earthing/bonded", finding.Pointers[0]);
        Assert.StartsWith("/cabinet", finding.Pointers[1], StringComparison.Ordinal);
        Assert.Contains(part, Remedied(rack, finding).Earthing!.Bonded!);
    }

    [Fact]
    public void All_parts_can_be_bonded_at_once()
    {
        var rack = Joined(BondedPart.Base, BondedPart.Base);
        Assert.Equal(4, Findings(rack).Count);
        Assert.Equal([BondedPart.Base, .. AllParts], Remedied(rack, Findings(rack)[0], 1).Earthing!.Bonded!);
    }

    [Fact]
    public void A_roof_with_fans_is_a_part_too()
    {
        var rack = Joined(AllParts).Cabinet(c => c with { Roof = new Roof { Style = RoofStyle.Vented } }) with
        {
            Cooling = new Model.Cooling { RoofFans = [new FanSet { Count = 2, FreeFlowM3h = 160 }] },
        };
        Assert.Equal("roof", Only(rack).Subject);
        Passes(rack.Earth(e => e with { Bonded = [.. AllParts, BondedPart.Roof] }));
        Passes(rack.Cabinet(c => c with { Roof = new Roof { Style = RoofStyle.Solid } }));
    }

    [Fact]
    public void Door_member_overrides_list()
    {
        Passes(Door(Joined(BondedPart.Frame, BondedPart.RearDoor, BondedPart.SidePanels), true));
        var rack = Door(Joined(AllParts), false);
        Assert.Equal(["/cabinet/frontDoor/bonded", "/cabinet/frontDoor"], Only(rack).Pointers);
        Assert.True(Remedied(rack, Only(rack)).Cabinet!.FrontDoor!.Bonded);
    }

    [Fact]
    public void Absent_doors_and_panels_need_no_bonding() =>
        Passes(Joined(BondedPart.Frame).Doors(DoorStyle.None, DoorStyle.None).Cabinet(c => c with { SidePanels = false }));

    [Fact]
    public void Bonded_list_absent_is_missing_with_electrical_equipment()
    {
        ReportsMissing(EmptyRack().With(Unit("wave-pc", 2).At(1).Plugs(1)), "/earthing/bonded");
        ReportsMissing(EmptyRack().Fed(Mains()), "/earthing/bonded");
        ReportsMissing(Earthed().Earth(e => e with { Bonded = null }), "/earthing/bonded");
        Passes(EmptyRack().With(Unit("drawer", 2).At(1)));
    }

    [Fact]
    public void Unbonded_door_without_list_keeps_list_absent()
    {
        var rack = Door(EmptyRack().With(Unit("wave-pc", 2).At(1).Plugs(1)), false);
        var finding = Only(rack);
        Assert.Equal("front door", finding.Subject);
        Assert.Equal(["/earthing/bonded"], Assert.Single(Report(rack).NotAssessed).Missing);
        Assert.Null(Remedied(rack, finding).Earthing);
    }
}
