using RackCheck.Model;
using RackCheck.Rules.Delivery;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Rules.Tests.Delivery.Routes;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Delivery;

public sealed class LiftingEquipmentTests : RuleTests<LiftingEquipment>
{
    private static RackDescription Heavy(double? lifting, double? pc = 200, double? cabinet = 100) =>
        OnRoute(cabinetKg: cabinet).Route(d => d with { LiftingKg = lifting }).With(Unit("wave-pc", 2).At(1) with { MassKg = pc });

    // 100 + 200 + 25 = 325 kg
    [Fact]
    public void Mass_at_rating_passes() => Passes(Heavy(325));

    [Fact]
    public void Mass_above_rating_is_warning()
    {
        var rack = Heavy(324.5);
        var finding = Only(rack);
        Assert.Equal((Severity.Warning, true), (finding.Severity, finding.Safety));
        Assert.Equal(["/site/delivery/liftingKg", "/items/0/massKg"], finding.Pointers);
        Numbers(finding, 325, 324.5, "kg");
        Assert.Equal("100 + 200 + 25 = 325 > 324.5", finding.Calculation);
        Assert.Equal(400, Remedied(rack, finding).Site!.Delivery!.LiftingKg);
        Assert.False(Remedied(rack, finding, 1).Site!.Delivery!.Loaded);
        Assert.Empty(Remedied(rack, finding, 2).Items);
    }

    [Fact]
    public void Cabinet_delivered_empty_weighs_no_equipment()
    {
        Passes(Heavy(125).Route(d => d with { Loaded = false }));
        var finding = Only(Heavy(124).Route(d => d with { Loaded = false }));
        Numbers(finding, 125, 124, "kg");
        Assert.StartsWith("Cabinet and pallet weigh 125 kg", finding.Message, StringComparison.Ordinal);
    }

    // 50 kg without lifting equipment: common practice, no source.
    [Theory]
    [InlineData(5, 0)]
    [InlineData(5.1, 1)]
    public void No_equipment_passes_up_to_50_kg(double pc, int count)
    {
        var findings = Findings(Heavy(null, pc, 20));
        Assert.Equal(count, findings.Count);
        Assert.All(findings, f => Assert.Contains("no lifting equipment is specified", f.Message, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(49, 1)]
    [InlineData(50, 0)]
    public void Policy_sets_mass_limit(double limit, int count) => Assert.Equal(count, Findings(Heavy(null, 5, 20).Limit(Id, "massKg", limit)).Count);

    [Fact]
    public void Masses_missing_are_not_assessed()
    {
        ReportsMissing(Heavy(500, null, null), "/cabinet/massKg", "/items/0/massKg");
        Assert.Contains("at least 325 kg", Only(Heavy(null, 200).With(Unit("gauge-amp", 1).At(9))).Message, StringComparison.Ordinal);
        Passes(EmptyRack().With(Unit("wave-pc", 2).At(1)));
    }

    [Fact]
    public void No_pallet_counts_no_pallet_mass() => Passes(Heavy(300).Route(d => d with { PalletHeightMm = 0, PalletKg = null }));
}
