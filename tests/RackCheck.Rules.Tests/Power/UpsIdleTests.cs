using RackCheck.Model;
using RackCheck.Rules.Power;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.Wiring;

namespace RackCheck.Rules.Tests.Power;

public sealed class UpsIdleTests : RuleTests<UpsIdle>
{
    private static RackDescription Rack(params string[]? feeds) => Wired(Mains(), Mains("B"))
        .Units(Pdu("strip", "A", 16, Outlets("g1", null)), Pdu("strip-b", "B", 16, Outlets("g1", null, ConnectorCode.C19)))
        .With(Load("wave-pc", 300, plug: ConnectorCode.C20), Load("ups", 1000) with { Category = ItemCategory.Ups, Ups = new Ups { Feeds = feeds } });

    [Fact]
    public void Ups_that_feeds_a_loaded_pdu_passes() => Passes(Rack("strip-b"));

    [Fact]
    public void Ups_without_load_is_warning_and_feeds_the_loaded_pdu()
    {
        var rack = Rack();
        var finding = Only(rack);
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal(["strip-b"], Remedied(rack, finding).Items[1].Ups!.Feeds);
        Only(Rack(null));
    }

    [Fact]
    public void Rack_without_described_PDUs_passes() => Passes(Rack() with { Pdus = null });
}
