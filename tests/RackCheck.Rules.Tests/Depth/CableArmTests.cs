using RackCheck.Model;
using RackCheck.Rules.Depth;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.Bays;

namespace RackCheck.Rules.Tests.Depth;

public sealed class CableArmTests : RuleTests<CableArm>
{
    private static Item Pulled(double? depth = 600, bool? arm = true, bool? extended = true) => Unit("wave-pc", 4).At(10).Body(depth: depth).Room(40, 75) with
    {
        Support = new Support { Style = SupportStyle.Slides, UsedExtended = extended, CableArm = arm },
    };

    private static RackDescription Set800(Item item) => Bay(depthMm: 800).Uprights(setback: 75).With(item);

    [Fact]
    public void An_arm_with_room_behind_the_body_passes() => Passes(Set800(Pulled())); // 775 - 75 - 600 = 100

    [Fact]
    public void An_arm_without_room_is_a_warning()
    {
        var finding = Only(Set800(Pulled(601)));
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal(["/items/0/support/cableArm", "/items/0"], finding.Pointers);
        Numbers(finding, 99, 100, "mm");
    }

    [Theory]
    [InlineData(null)]
    [InlineData(false)]
    public void No_arm_is_a_warning(bool? arm)
    {
        var finding = Only(Set800(Pulled(arm: arm)));
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Null(finding.Actual);
    }

    [Theory]
    [InlineData(null)]
    [InlineData(false)]
    public void What_stays_in_its_place_while_it_works_needs_none(bool? extended) => Passes(Set800(Pulled(700, arm: null, extended: extended)));

    [Fact]
    public void Room_on_the_rear_uprights_lies_towards_the_front_door()
    {
        // 75 + 700 - 650 - 25 = 100
        var rack = Bay(depthMm: 1000).Uprights(setback: 75, spacing: 700);
        Passes(rack.With(Pulled(650) with { Position = new Position { U = 10, Face = Face.Rear } }));
        var finding = Only(rack.With(Pulled(651) with { Position = new Position { U = 10, Face = Face.Rear } }));
        Numbers(finding, 99, 100, "mm");
        Assert.Empty(finding.Remedies);
    }

    [Fact]
    public void Uprights_that_are_not_set_yet_are_taken_at_the_least_hole_that_serves_all_and_it_is_said()
    {
        // 65 at least, so 75 on the pitch of 25: 775 - 75 - 601 = 99.
        var rack = Bay(depthMm: 800).With(Pulled(601).Room(40, 25));
        Numbers(Only(rack), 99, 100, "mm");
        Assert.Equal(75, Assert.Single(Report(rack).Assumptions, a => a.Pointer == "/cabinet/uprights/frontSetbackMm").Value.Number);
    }

    [Fact]
    public void Where_no_setback_serves_the_room_is_not_known()
    {
        Lacks(Bay(depthMm: 600).With(Pulled()), "/cabinet/uprights/frontSetbackMm");
        Lacks(Set800(Pulled(null)), "/items/0/body/depthMm");
        Lacks(Set800(Pulled() with { Position = new Position { U = 10, Face = Face.Rear } }), "/cabinet/uprights/spacingMm");
    }

    [Theory]
    [InlineData(99, 0)]
    [InlineData(101, 1)]
    public void A_policy_sets_the_depth_of_the_arm(double arm, int count) => Assert.Equal(count, Findings(Set800(Pulled()).Limit(Id, "armDepthMm", arm)).Count);

    [Fact]
    public void An_arm_is_fitted_where_there_is_room()
    {
        var rack = Set800(Pulled(500, arm: null));
        var cured = Cured(rack, Only(rack));
        Assert.Equal(rack.Items[0].Support! with { CableArm = true }, cured.Items[0].Support);
        Assert.Equal(800, cured.Cabinet!.DepthMm);
    }

    [Fact]
    public void And_with_a_deeper_cabinet_where_there_is_not()
    {
        var rack = Set800(Pulled(620, arm: null));
        var cured = Cured(rack, Only(rack));
        Assert.Equal((true, 1000), (cured.Items[0].Support!.CableArm, cured.Cabinet!.DepthMm));
    }

    [Fact]
    public void Uprights_that_stand_elsewhere_in_the_deeper_cabinet_are_reckoned_with()
    {
        // In 800 only 65 to 70 serve, which no hole of 25 hits; in 1000 the uprights go to 75: 975 - 75 - 630 is room enough.
        var rack = Bay(depthMm: 800).With(Pulled(630));
        Numbers(Only(rack), 80, 100, "mm");
        Assert.Equal(1000, Cured(rack, Only(rack)).Cabinet!.DepthMm);

        // With an arm of 271 it is not, at 75; at 65 it would have been.
        var longArm = rack.Limit(Id, "armDepthMm", 271);
        Assert.Equal(1200, Cured(longArm, Only(longArm)).Cabinet!.DepthMm);
    }

    [Fact]
    public void In_the_deepest_cabinet_there_is_no_remedy() =>
        Assert.Empty(Only(Bay(depthMm: 1200).Uprights(setback: 75).With(Pulled(1050).Room(40, 25))).Remedies);
}
