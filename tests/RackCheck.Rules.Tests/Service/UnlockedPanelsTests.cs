using RackCheck.Model;
using RackCheck.Rules.Service;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Service;

public sealed class UnlockedPanelsTests : RuleTests<UnlockedPanels>
{
    private static RackDescription Public(bool? lockable) =>
        EmptyRack().Cabinet(c => c with { Lockable = lockable }) with { Site = new Site { PublicAccess = true } };

    // Common practice, no source.
    [Fact]
    public void Locked_rack_passes() => Passes(Public(true));

    [Fact]
    public void Rack_without_locks_is_warning()
    {
        var rack = Public(false);
        var finding = Only(rack);
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal(["/cabinet/lockable", "/site/publicAccess"], finding.Pointers);
        Assert.True(Remedied(rack, finding).Cabinet!.Lockable);
    }

    [Fact]
    public void Open_frame_has_nothing_to_lock()
    {
        var rack = Public(false).Doors(DoorStyle.None, DoorStyle.None).Cabinet(c => c with { SidePanels = false });
        Assert.DoesNotContain("/cabinet/lockable", Findings(rack).Select(f => f.Pointers[0]));
        Assert.Contains("/cabinet/lockable", Findings(rack.Cabinet(c => c with { SidePanels = true })).Select(f => f.Pointers[0]));
    }

    [Fact]
    public void Missing_doors_and_panels_are_separate_findings()
    {
        var rack = Public(true).Doors(DoorStyle.None, DoorStyle.None).Cabinet(c => c with { SidePanels = false });
        var findings = Findings(rack);
        Assert.Equal(["/cabinet/frontDoor", "/cabinet/rearDoor", "/cabinet/sidePanels"], findings.Select(f => f.Pointers[0]).Order(StringComparer.Ordinal));
        Assert.Equal(3, findings.Select(f => f.Fingerprint).Distinct().Count());
        Assert.Equal(DoorStyle.Perforated, Remedied(rack, findings.Single(f => f.Pointers[0] == "/cabinet/frontDoor")).Cabinet!.FrontDoor!.Style);
        Assert.Equal(DoorStyle.Perforated, Remedied(rack, findings.Single(f => f.Pointers[0] == "/cabinet/rearDoor")).Cabinet!.RearDoor!.Style);
        Assert.True(Remedied(rack, findings.Single(f => f.Pointers[0] == "/cabinet/sidePanels")).Cabinet!.SidePanels);
    }

    [Fact]
    public void Fitted_door_and_panels_are_bonded()
    {
        var open = Public(true).Doors(DoorStyle.Solid, DoorStyle.None)
            .Cabinet(c => c with { SidePanels = false, EarthBar = new EarthBar { Terminals = 12 } });
        var rack = open with
        {
            Earthing = new Model.Earthing { MainConductorMm2 = 16, Bonded = [BondedPart.Frame, BondedPart.FrontDoor] },
        };
        var findings = Findings(rack);
        Assert.True(Remedied(rack, findings.Single(f => f.Pointers[0] == "/cabinet/rearDoor")).Cabinet!.RearDoor!.Bonded);
        Assert.Contains(BondedPart.SidePanels, Remedied(rack, findings.Single(f => f.Pointers[0] == "/cabinet/sidePanels")).Earthing!.Bonded!);
    }

    [Fact]
    public void Locks_missing_are_not_assessed() => ReportsMissing(Public(null), "/cabinet/lockable");

    [Theory]
    [InlineData(null)]
    [InlineData(false)]
    public void Rack_without_public_access_is_not_checked(bool? access) =>
        Passes(Public(false).Doors(DoorStyle.None, DoorStyle.None) with { Site = new Site { PublicAccess = access } });
}
