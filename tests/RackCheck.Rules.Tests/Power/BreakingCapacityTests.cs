using RackCheck.Model;
using RackCheck.Rules.Power;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.Wiring;

namespace RackCheck.Rules.Tests.Power;

public sealed class BreakingCapacityTests : RuleTests<BreakingCapacity>
{
    private static RackDescription Rack(double? fault, double? breaking) =>
        Wired(Mains() with { FaultCurrentA = fault, Breaker = new Breaker { Curve = BreakerCurve.C, RatedA = 16, BreakingKa = breaking } })
            .Units(Pdu("strip", "A", 16, Outlets("g1", null))).With(Load("wave-pc", 300));

    // BS 7671 434.5.1 (value from memory): breaking capacity at least the prospective fault current.
    [Theory]
    [InlineData(6000.0, 6.0, 0)]
    [InlineData(6001.0, 6.0, 1)]
    [InlineData(10_000.0, 10.0, 0)]
    [InlineData(3000.0, 1.5, 1)]
    [InlineData(null, 1.5, 0)]
    public void Fault_current_over_breaking_capacity_is_error(double? fault, double? breaking, int count) =>
        Assert.Equal(count, Findings(Rack(fault, breaking)).Count);

    [Fact]
    public void Next_size_clears()
    {
        var rack = Rack(6500, 6);
        var finding = Only(rack);
        Numbers(finding, 6500, 6000, "A");
        Assert.Equal(10, Remedied(rack, finding).Supplies![0].Breaker!.BreakingKa);
    }

    [Fact]
    public void Above_6_kA_the_breaking_capacity_is_asked_for()
    {
        Passes(Rack(6000, null));
        ReportsMissing(Rack(6001, null), "/supplies/0/breaker/breakingKa");
    }
}
