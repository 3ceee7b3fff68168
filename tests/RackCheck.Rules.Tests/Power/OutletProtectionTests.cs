using RackCheck.Model;
using RackCheck.Rules.Power;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.Wiring;

namespace RackCheck.Rules.Tests.Power;

public sealed class OutletProtectionTests : RuleTests<OutletProtection>
{
    private static RackDescription Rack(double breaker, double? group, ConnectorCode socket = ConnectorCode.C13, ConnectorCode? plug = null) =>
        Wired(Mains(rated: breaker)).Units(Pdu("strip", "A", breaker, Outlets("g1", group, socket)) with { Plug = plug }).With(Load("wave-pc", 300));

    // IEC 60364-4-43 433.1 and IEC 62368-1, values from memory: 16 A, and 20 A in North America.
    [Theory]
    [InlineData(16, null, null, 0)]
    [InlineData(20, null, null, 1)]
    [InlineData(32, 16.0, null, 0)]
    [InlineData(32, 20.0, null, 1)]
    [InlineData(32, null, ConnectorCode.Bs1363, 0)] // the 13 A fuse of the plug
    public void Breaker_upstream_of_outlets_is_limited(double breaker, double? group, ConnectorCode? plug, int count) =>
        Assert.Equal(count, Findings(Rack(breaker, group, plug: plug)).Count);

    [Theory]
    [InlineData(20, 0)]
    [InlineData(30, 1)]
    public void North_America_permits_20_A(double breaker, int count) =>
        Assert.Equal(count, Findings(Rack(breaker, null).Region(Region.Na)).Count);

    // A UPS limits the current to its rating, 6000 / 230 = 26.1 A and 3600 / 230 = 15.7 A; the breaker upstream may be less.
    [Theory]
    [InlineData(6000.0, 32, null, 26.087)]
    [InlineData(6000.0, 32, 16.0, null)]
    [InlineData(3600.0, 32, null, null)]
    [InlineData(6000.0, 16, null, null)]
    [InlineData(null, 32, null, null)]
    public void Outlets_behind_a_ups_have_what_it_supplies(double? ratedVa, double breaker, double? group, double? protectionA)
    {
        var ups = Load("bay-ups", 100) with { Category = ItemCategory.Ups, Ups = new Ups { RatedVa = ratedVa, Feeds = ["behind"] } };
        var rack = Wired(Mains(rated: breaker))
            .Units(Pdu("strip", "A", breaker, Outlets("g1", 16)), Pdu("behind", "A", breaker, Outlets("g1", group))).With(ups, Load("wave-pc", 300))
            .Connect("bay-ups", "strip", "g1").Connect("wave-pc", "behind", "g1");
        var findings = Findings(rack);
        Assert.Equal(protectionA is null ? 0 : 1, findings.Count);
        Assert.All(findings, f => Numbers(f, protectionA!.Value, 16, "A"));
        Assert.All(findings, f => Assert.Equal(16, Remedied(rack, f).Pdus![1].Groups![0].BreakerA));
    }

    [Fact]
    public void Other_outlets_pass() => Passes(Rack(32, null, ConnectorCode.Iec60309A32P1));

    [Fact]
    public void Group_breakers_clear_the_finding()
    {
        var rack = Rack(32, null);
        var finding = Only(rack);
        Numbers(finding, 32, 16, "A");
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Equal(16, Remedied(rack, finding).Pdus![0].Groups![0].BreakerA);
    }

    // 5200 W is 22.6 A, more than one breaker of 16 A carries: two, with 8 of the 16 outlets each.
    [Fact]
    public void Group_that_carries_more_than_a_breaker_is_divided()
    {
        var rack = Rack(32, null).With(Load("gauge-1", 1600), Load("gauge-2", 1600), Load("gauge-3", 1700));
        var changed = Remedied(rack, Only(rack));
        var groups = changed.Pdus![0].Groups!;
        Assert.Equal([16.0, 16.0], groups.Select(g => g.BreakerA!.Value));
        Assert.Equal(rack.Pdus![0].Groups![0].Outlets.Sum(o => o.Count), groups.Sum(g => g.Outlets.Sum(o => o.Count)));
        Passes(changed);
    }
}
