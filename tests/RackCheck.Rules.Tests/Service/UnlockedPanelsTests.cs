using RackCheck.Model;
using RackCheck.Rules.Service;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.Bays;

namespace RackCheck.Rules.Tests.Service;

public sealed class UnlockedPanelsTests : RuleTests<UnlockedPanels>
{
    private static RackDescription Public(bool? lockable) => Bay().Cabinet(c => c with { Lockable = lockable }) with { Site = new Site { PublicAccess = true } };

    // Common practice, no source.
    [Fact]
    public void Locked_on_all_sides_it_passes() => Passes(Public(true));

    [Fact]
    public void Without_locks_it_is_a_warning()
    {
        var rack = Public(false);
        var finding = Only(rack);
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal(["/cabinet/lockable", "/site/publicAccess"], finding.Pointers);
        Assert.True(Cured(rack, finding).Cabinet!.Lockable);
    }

    [Fact]
    public void Whatever_is_left_off_is_a_finding_of_its_own_and_is_fitted()
    {
        var rack = Public(true).Doors(DoorStyle.None, DoorStyle.None).Cabinet(c => c with { SidePanels = false });
        var findings = Findings(rack);
        Assert.Equal(["/cabinet/frontDoor", "/cabinet/rearDoor", "/cabinet/sidePanels"], findings.Select(f => f.Pointers[0]).Order(StringComparer.Ordinal));
        Assert.Equal(3, findings.Select(f => f.Fingerprint).Distinct().Count());
        Assert.Equal(DoorStyle.Perforated, Cured(rack, findings.Single(f => f.Pointers[0] == "/cabinet/frontDoor")).Cabinet!.FrontDoor!.Style);
        Assert.Equal(DoorStyle.Perforated, Cured(rack, findings.Single(f => f.Pointers[0] == "/cabinet/rearDoor")).Cabinet!.RearDoor!.Style);
        Assert.True(Cured(rack, findings.Single(f => f.Pointers[0] == "/cabinet/sidePanels")).Cabinet!.SidePanels);
    }

    [Fact]
    public void In_a_rack_with_earth_what_is_fitted_is_joined_to_it()
    {
        var rack = (Public(true).Doors(DoorStyle.Solid, DoorStyle.None).Cabinet(c => c with { SidePanels = false, EarthBar = new EarthBar { Terminals = 12 } })) with
        {
            Earthing = new Model.Earthing { MainConductorMm2 = 16, Bonded = [BondedPart.Frame, BondedPart.FrontDoor] },
        };
        var findings = Findings(rack);
        Assert.True(Cured(rack, findings.Single(f => f.Pointers[0] == "/cabinet/rearDoor")).Cabinet!.RearDoor!.Bonded);
        Assert.Contains(BondedPart.SidePanels, Cured(rack, findings.Single(f => f.Pointers[0] == "/cabinet/sidePanels")).Earthing!.Bonded!);
    }

    [Fact]
    public void Locks_are_asked_for() => Lacks(Public(null), "/cabinet/lockable");

    [Theory]
    [InlineData(null)]
    [InlineData(false)]
    public void Where_the_public_has_no_access_nothing_is_asked(bool? access) =>
        Passes(Public(false).Doors(DoorStyle.None, DoorStyle.None) with { Site = new Site { PublicAccess = access } });
}
