using RackCheck.Model;
using RackCheck.Rules.Power;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.Wiring;

namespace RackCheck.Rules.Tests.Power;

public sealed class RcdAbsentTests : RuleTests<RcdAbsent>
{
    private static RackDescription Rack(double? rcd, ConnectorCode? socket = ConnectorCode.Iec60309A16P1, double rated = 16) =>
        Wired(Mains(rated: rated) with { RcdMa = rcd, Socket = socket }).Units(Pdu("strip", "A", 16, Outlets("g1", 16))).With(Load("wave-pc", 300));

    // BS 7671 411.3.3 (value from memory): 30 mA for socket outlets up to 32 A.
    [Theory]
    [InlineData(null, 16, 1)]
    [InlineData(100.0, 16, 1)]
    [InlineData(30.0, 16, 0)]
    [InlineData(null, 32, 1)]
    [InlineData(null, 63, 0)]
    public void Socket_up_to_32_A_without_30_mA_is_advice(double? rcd, double rated, int count)
    {
        var findings = Findings(Rack(rcd, rated: rated));
        Assert.Equal(count, findings.Count);
        Assert.All(findings, f => Assert.Equal(Severity.Advice, f.Severity));
    }

    [Fact]
    public void Rcd_clears() => Assert.Equal(30, Remedied(Rack(null), Only(Rack(null))).Supplies![0].RcdMa);

    [Fact]
    public void Rcd_that_would_trip_is_not_offered()
    {
        // BS 7671 531.3.2 (value from memory): 9.5 mA of leakage is over 30 % of 30 mA, a warning where there was advice.
        var load = Load("wave-pc", 300);
        var rack = Rack(null) with { Items = [load with { Power = load.Power! with { LeakageMa = 9.5 } }] };
        var finding = Assert.Single(Judge.Checker.Check(rack).Findings, f => f.Rule == Id);
        Assert.Empty(finding.Remedies);
        Assert.Contains("earthing.rcd-trip", finding.NoRemedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Hard_wired_and_North_American_supplies_pass()
    {
        Passes(Rack(null, ConnectorCode.Hardwired));
        Passes(Rack(null, ConnectorCode.NemaL620).Region(Region.Na));
    }
}
