using RackCheck.Model;
using RackCheck.Rules.Delivery;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Rules.Tests.Delivery.Ways;
using static RackCheck.Testing.Bays;

namespace RackCheck.Rules.Tests.Delivery;

public sealed class LiftingEquipmentTests : RuleTests<LiftingEquipment>
{
    private static RackDescription Heavy(double? lifting, double? pc = 200, double? cabinet = 100) =>
        OnTheWay(cabinetKg: cabinet).Way(d => d with { LiftingKg = lifting }).With(Unit("wave-pc", 2).At(1) with { MassKg = pc });

    // 100 + 200 + 25 = 325 kg
    [Fact]
    public void At_its_rating_it_passes() => Passes(Heavy(325));

    [Fact]
    public void Over_its_rating_is_a_warning()
    {
        var rack = Heavy(324.5);
        var finding = Only(rack);
        Assert.Equal((Severity.Warning, true), (finding.Severity, finding.Safety));
        Assert.Equal(["/site/delivery/liftingKg"], finding.Pointers);
        Numbers(finding, 325, 324.5, "kg");
        Assert.Equal("100 + 200 + 25 = 325 > 324.5", finding.Calculation);
        Assert.Equal(400, Cured(rack, finding).Site!.Delivery!.LiftingKg);
        Assert.Empty(Cured(rack, finding, 1).Items);
    }

    // 50 kg without lifting equipment: common practice, no source.
    [Theory]
    [InlineData(5, 0)]
    [InlineData(5.1, 1)]
    public void None_named_does_up_to_fifty_kilograms(double pc, int count)
    {
        var findings = Findings(Heavy(null, pc, 20));
        Assert.Equal(count, findings.Count);
        Assert.All(findings, f => Assert.Contains("no lifting equipment is named", f.Message, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(49, 1)]
    [InlineData(50, 0)]
    public void A_policy_sets_what_does_without(double limit, int count) => Assert.Equal(count, Findings(Heavy(null, 5, 20).Limit(Id, "massKg", limit)).Count);

    [Fact]
    public void Masses_are_asked_for_where_they_decide()
    {
        Lacks(Heavy(500, null, null), "/cabinet/massKg", "/items/0/massKg");
        Assert.Contains("325 kg at least", Only(Heavy(null, 200).With(Unit("gauge-amp", 1).At(9))).Message, StringComparison.Ordinal);
        Passes(Bay().With(Unit("wave-pc", 2).At(1)));
    }

    [Fact]
    public void Without_a_pallet_none_is_weighed() => Passes(Heavy(300).Way(d => d with { PalletHeightMm = 0, PalletKg = null }));
}
