using RackCheck.Model;
using RackCheck.Rules.Depth;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Depth;

public sealed class CableArmTests : RuleTests<CableArm>
{
    private static Item Pulled(double? depth = 600, bool? arm = true, bool? extended = true) => Unit("wave-pc", 4).At(10).Body(depth: depth).Room(40, 75) with
    {
        Support = new Support { Style = SupportStyle.Slides, UsedExtended = extended, CableArm = arm },
    };

    private static RackDescription Set800(Item item) => EmptyRack(depthMm: 800).Uprights(setback: 75).With(item);

    [Fact]
    public void Arm_with_space_passes() => Passes(Set800(Pulled())); // 775 - 75 - 600 = 100

    [Fact]
    public void Arm_without_space_is_warning()
    {
        var finding = Only(Set800(Pulled(601)));
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal(["/items/0/support/cableArm", "/items/0"], finding.Pointers);
        Numbers(finding, 99, 100, "mm");
    }

    [Theory]
    [InlineData(null)]
    [InlineData(false)]
    public void Arm_missing_is_warning(bool? arm)
    {
        var finding = Only(Set800(Pulled(arm: arm)));
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Null(finding.Actual);
    }

    [Theory]
    [InlineData(null)]
    [InlineData(false)]
    public void Item_not_used_extended_needs_no_arm(bool? extended) => Passes(Set800(Pulled(700, arm: null, extended: extended)));

    [Fact]
    public void Rear_item_has_space_towards_front_door()
    {
        // 75 + 700 - 650 - 25 = 100
        var rack = EmptyRack(depthMm: 1000).Uprights(setback: 75, spacing: 700);
        Passes(rack.With(Pulled(650) with { Position = new Position { U = 10, Face = Face.Rear } }));
        var finding = Only(rack.With(Pulled(651) with { Position = new Position { U = 10, Face = Face.Rear } }));
        Numbers(finding, 99, 100, "mm");
        Assert.Empty(finding.Remedies);
    }

    [Fact]
    public void Setback_missing_uses_lowest_suitable_hole_and_reports_it()
    {
        // At least 65, so 75 on the pitch of 25: 775 - 75 - 601 = 99.
        var rack = EmptyRack(depthMm: 800).With(Pulled(601).Room(40, 25));
        Numbers(Only(rack), 99, 100, "mm");
        Assert.Equal(75, Assert.Single(Report(rack).Assumed(), a => a.Pointer == "/cabinet/uprights/frontSetbackMm").Value.Number);
    }

    [Fact]
    public void Unknown_space_is_not_assessed()
    {
        ReportsMissing(EmptyRack(depthMm: 600).With(Pulled()), "/cabinet/uprights/frontSetbackMm");
        ReportsMissing(Set800(Pulled(null)), "/items/0/body/depthMm");
        ReportsMissing(Set800(Pulled() with { Position = new Position { U = 10, Face = Face.Rear } }), "/cabinet/uprights/spacingMm");
    }

    [Theory]
    [InlineData(99, 0)]
    [InlineData(101, 1)]
    public void Policy_sets_arm_depth(double arm, int count) => Assert.Equal(count, Findings(Set800(Pulled()).Limit(Id, "armDepthMm", arm)).Count);

    [Fact]
    public void Arm_is_fitted_where_space_allows()
    {
        var rack = Set800(Pulled(500, arm: null));
        var remedied = Remedied(rack, Only(rack));
        Assert.Equal(rack.Items[0].Support! with { CableArm = true }, remedied.Items[0].Support);
        Assert.Equal(800, remedied.Cabinet!.DepthMm);
    }

    [Fact]
    public void Arm_is_fitted_with_deeper_cabinet()
    {
        var rack = Set800(Pulled(620, arm: null));
        var remedied = Remedied(rack, Only(rack));
        Assert.Equal((true, 1000), (remedied.Items[0].Support!.CableArm, remedied.Cabinet!.DepthMm));
    }

    [Fact]
    public void Deeper_cabinet_may_change_setback()
    {
        // In 800 only 65 to 70 is suitable, without a hole on the pitch of 25. In 1000 the setback is 75: 975 - 75 - 630 is sufficient.
        var rack = EmptyRack(depthMm: 800).With(Pulled(630));
        Numbers(Only(rack), 80, 100, "mm");
        Assert.Equal(1000, Remedied(rack, Only(rack)).Cabinet!.DepthMm);

        // For an arm of 271 it is not sufficient at 75; at 65 it would be.
        var longArm = rack.Limit(Id, "armDepthMm", 271);
        Assert.Equal(1200, Remedied(longArm, Only(longArm)).Cabinet!.DepthMm);
    }

    [Fact]
    public void Deepest_cabinet_has_no_remedy() =>
        Assert.Empty(Only(EmptyRack(depthMm: 1200).Uprights(setback: 75).With(Pulled(1050).Room(40, 25))).Remedies);
}
