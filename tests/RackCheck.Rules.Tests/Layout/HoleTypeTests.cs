using RackCheck.Model;
using RackCheck.Rules.Layout;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Layout;

public sealed class HoleTypeTests : RuleTests<HoleType>
{
    private static Item Nuts(Fixing? fixing) => Unit("wave-pc", 4).At(10) with { Fixing = fixing };

    [Fact]
    public void CageNut_in_square_hole_passes() => Passes(EmptyRack().Uprights(hole: UprightHole.Square).With(Nuts(Fixing.CageNut)));

    [Theory]
    [InlineData(UprightHole.Round, Fixing.ClipNut)]
    [InlineData(UprightHole.Threaded, Fixing.Screw)]
    public void CageNut_in_other_hole_is_warning_with_remedy(UprightHole hole, Fixing instead)
    {
        var rack = EmptyRack().Uprights(hole: hole).With(Unit("gauge-amp", 2).At(1), Nuts(Fixing.CageNut));
        var finding = Only(rack);
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal(["/items/1/fixing", "/cabinet/uprights/hole"], finding.Pointers);
        Assert.Equal(instead, Remedied(rack, finding).Items[1].Fixing);
    }

    [Theory]
    [InlineData(Fixing.ClipNut)]
    [InlineData(Fixing.Screw)]
    [InlineData(null)]
    public void Other_fixing_passes(Fixing? fixing) => Passes(EmptyRack().Uprights(hole: UprightHole.Round).With(Nuts(fixing)));

    [Fact]
    public void Hole_type_missing_is_not_assessed_for_cage_nuts()
    {
        ReportsMissing(EmptyRack().With(Nuts(Fixing.CageNut)), "/cabinet/uprights/hole");
        ReportsMissing(EmptyRack().Uprights(setback: 75).With(Nuts(Fixing.CageNut)), "/cabinet/uprights/hole");
        Passes(EmptyRack().With(Nuts(null)));
    }

    [Fact]
    public void Each_item_is_a_finding() =>
        Assert.Equal(
            2,
            Findings(EmptyRack().Uprights(hole: UprightHole.Round).With(
                Nuts(Fixing.CageNut), Nuts(Fixing.CageNut) with { Id = "gauge-pc", Position = null })).Count);
}
