using RackCheck.Model;
using RackCheck.Remedies.Patches;
using RackCheck.Rules.Power;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.PowerRacks;

namespace RackCheck.Rules.Tests.Power;

public sealed class RedundancyTests : RuleTests<Redundancy>
{
    private const ConnectorCode C14 = ConnectorCode.C14;
    private static readonly RuleDescriptor Facts = new Redundancy().Descriptor;

    private static RackDescription Two(Item item, params Connection[] connections) =>
        Rack([Feed("A"), Feed("B")], [Strip("strip-a", "A"), Strip("strip-b", "B")], item) with { Connections = connections.Length == 0 ? null : connections };

    // Common practice, no source: behind one UPS both cords fail together, whatever supplies feed the UPS.
    [Fact]
    public void Both_cords_behind_one_ups_is_warning()
    {
        var ups = Load("ups", 3000, ConnectorCode.C20, ConnectorCode.C20) with
        {
            Ups = new Ups { RatedW = 2000, RatedVa = 2000, Feeds = ["safe-a", "safe-b"] },
        };
        var rack = Rack(
            [Feed("A"), Feed("B")],
            [Strip("raw-a", "A", ConnectorCode.C19), Strip("raw-b", "B", ConnectorCode.C19), Strip("safe-a", "A"), Strip("safe-b", "B")],
            ups, Twin("wave-pc", 300, C14, C14)) with
        {
            Connections = [To("wave-pc", 0, "safe-a"), To("wave-pc", 1, "safe-b"), To("ups", 0, "raw-a"), To("ups", 1, "raw-b")],
        };
        var finding = Only(rack);
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal("ups", finding.MessageData["ups"].Text);
    }

    [Fact]
    public void Both_cords_on_one_supply_moves_one()
    {
        // Common practice, no source: the cords of dual-fed equipment are fed from different supplies.
        var rack = Two(Twin("wave-pc", 300, C14, C14), To("wave-pc", 0, "strip-a"), To("wave-pc", 1, "strip-a"));
        var finding = Only(rack);
        Numbers(finding, 1, 2, "supplies");
        Assert.Equal(["/items/0/power", "/connections/0", "/connections/1", "/supplies/0"], finding.Pointers);
        IsWhole(Facts, rack, finding);
        Assert.Contains(Remedied(rack, finding).Connections!, c => c.Pdu == "strip-b");

        // There are outlets enough on the other supply: nothing is to be bought.
        Assert.Equal(
            ["Plug wave-pc into strip-b, group g", "Describe wave-pc as fed from one supply only"],
            Judge.Checker.Check(rack).Findings.Single(f => f.Rule == Facts.Id).Remedies.Select(r => r.Title));
    }

    // Common practice, no source: of two PDUs one belongs on each supply.
    [Fact]
    public void Pdu_on_the_wrong_supply_goes_to_the_other()
    {
        var rack = Rack([Feed("A"), Feed("B")], [Strip("strip-a", "A"), Strip("strip-b", "A")], Twin("wave-pc", 300, C14, C14), Twin("log-pc", 300, C14, C14));
        foreach (var finding in Judge.Checker.Check(rack).Findings.Where(f => f.Rule == Facts.Id))
        {
            Assert.Equal("Feed strip-b from supply B", finding.Remedies[0].Title);
            Assert.DoesNotContain(Judge.Checker.Check(RackPatch.Apply(rack, finding.Remedies[0])).Findings, f => f.Rule == Facts.Id);
        }
    }

    [Fact]
    public void Cords_on_two_supplies_pass_given_or_found()
    {
        Passes(Two(Twin("wave-pc", 300, C14, C14), To("wave-pc", 0, "strip-a"), To("wave-pc", 1, "strip-b")));
        Passes(Two(Twin("wave-pc", 300, C14, C14)));
        Passes(Two(Twin("wave-pc", 300, C14, C14), To("wave-pc", 0, "strip-a")));
        Passes(Two(Twin("wave-pc", 300, C14, C14, C14)));
    }

    [Fact]
    public void Two_pdus_on_one_supply_are_error()
    {
        var rack = Rack([Feed("A")], [Strip("one", "A"), Strip("two", "A")], Twin("wave-pc", 300, C14, C14));
        var finding = Only(rack);
        IsWhole(Facts, rack, finding);
        Assert.Equal(2, Remedied(rack, finding).Supplies!.Count);
    }

    [Fact]
    public void Single_cord_of_dual_fed_item_gets_second()
    {
        var rack = Two(Twin("wave-pc", 300, C14));
        var finding = Only(rack);
        Numbers(finding, 1, 2, "cords");
        IsWhole(Facts, rack, finding);
        Assert.Equal([C14, C14], Remedied(rack, finding).Items[0].Power!.Plugs!);

        var alone = Rack([Feed("A")], [Strip("strip", "A")], Twin("wave-pc", 300, C14));
        Assert.Equal(finding.Fingerprint, Only(alone).Fingerprint);
        Assert.Equal(2, Remedied(alone, Only(alone)).Supplies!.Count);
    }

    [Fact]
    public void Full_pdu_on_other_supply_gets_outlet()
    {
        var full = Rack(
            [Feed("A"), Feed("B")], [Strip("strip-a", "A"), Strip("strip-b", "B", count: 1)],
            Twin("wave-pc", 300, C14, C14), Load("gauge-amp", 100, C14)) with
        {
            Connections = [To("wave-pc", 0, "strip-a"), To("wave-pc", 1, "strip-a"), To("gauge-amp", 0, "strip-b")],
        };
        Assert.Equal(2, Remedied(full, Only(full)).Pdus![1].Groups![0].Outlets[0].Count);
    }

    [Fact]
    public void Supply_without_pdu_gets_one()
    {
        var rack = Rack([Feed("A"), Feed("B")], [Strip("strip", "A")], Twin("wave-pc", 300, C14, C14));
        Assert.Contains(Remedied(rack, Only(rack)).Pdus!, u => u.Supply == "B");
    }

    [Fact]
    public void Item_behind_ups_is_fed_from_ups_supplies()
    {
        RackDescription Of(string feed) => Rack(
            [Feed("A"), Feed("B")],
            [Strip("raw-a", "A", ConnectorCode.C19, 1), Strip("raw-b", "B").With("large", ConnectorCode.C19, 1), Strip("safe", "A", plug: ConnectorCode.C20)],
            Load("ups", 100, ConnectorCode.C20) with { Ups = new Ups { RatedW = 3000, RatedVa = 3000, Feeds = ["safe"] } },
            Twin("wave-pc", 300, C14, C14)) with
        {
            Connections = [To("ups", 0, feed, feed == "raw-a" ? "g" : "large"), To("wave-pc", 0, "safe"), To("wave-pc", 1, "raw-b")],
        };
        Passes(Of("raw-a"));
        Assert.Equal("B", Only(Of("raw-b")).MessageData["supply"].Text);
        Remedied(Of("raw-b"), Only(Of("raw-b")));
    }

    [Fact]
    public void Last_remedy_accepts_single_feed()
    {
        // As many supplies as the contract has, so that none can be added.
        var supplies = Enumerable.Range(1, 16).Select(i => Feed($"s{i:00}", volts: i == 1 ? 230 : 120)).ToArray();
        var item = Twin("wave-pc", 300, C14, C14);
        var rack = Rack(supplies, [Strip("strip", "s01")], item with { Power = item.Power! with { VoltageV = 230 } });
        Assert.False(Remedied(rack, Only(rack)).Items[0].Power!.Redundant);
    }

    [Fact]
    public void Plugs_or_pdus_absent_are_missing_data()
    {
        ReportsMissing(Rack(null, null, Twin("wave-pc", 300, C14, C14)), "/pdus");
        var item = Twin("wave-pc", 300);
        ReportsMissing(Two(item with { Power = item.Power! with { Plugs = null } }), "/items/0/power/plugs");
        Passes(Two(item));
        Passes(Rack(null, null, Load("wave-pc", 300, C14, C14)));
    }

    [Fact]
    public void Chosen_outlets_are_not_checked_while_outlets_are_short()
    {
        // Four cords, three outlets: wherever they go, one item has a cord on one supply only.
        Passes(Rack([Feed("A"), Feed("B")], [Strip("strip-a", "A", count: 2), Strip("strip-b", "B", count: 1)], Twin("wave-pc", 300, C14, C14),
            Twin("flume-daq", 300, C14, C14)));
    }

    [Fact]
    public void Items_with_same_defect_get_outlets_together()
    {
        // Six cords, one outlet on A and five on B: one item can be kept apart, the other two have both on B.
        var rack = Rack(
            [Feed("A"), Feed("B")], [Strip("strip-a", "A", count: 1), Strip("strip-b", "B", count: 5)],
            Twin("wave-pc", 300, C14, C14), Twin("flume-daq", 300, C14, C14), Twin("gauge-amp", 300, C14, C14));
        var findings = Findings(rack);
        Assert.Equal(2, findings.Count);
        Assert.All(findings, f => Passes(Remedied(rack, f)));
    }

    [Fact]
    public void Cords_without_outlet_are_left_to_another_rule() => Passes(Rack([Feed("A")], [], Twin("wave-pc", 300, C14, C14)));
}
