using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Rules.Power;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.Feeds;

namespace RackCheck.Rules.Tests.Power;

public sealed class PhaseBalanceTests : RuleTests<PhaseBalance>
{
    private static readonly Pdu Three = Board("strip", 32, "A", Outlets("g1"), Outlets("g2", Phase.L2), Outlets("g3", Phase.L3));

    private static RackDescription Lines(double l1, double l2, double l3, double pf1 = 1, double pf2 = 1, double pf3 = 1, double rated = 32)
    {
        double[] amperes = [l1, l2, l3];
        double[] factors = [pf1, pf2, pf3];
        var rack = Fed(Mains(ratedA: rated, phases: 3, mm2: 16), Three with { RatedA = rated });
        for (var i = 0; i < 3; i++)
        {
            rack = amperes[i] == 0 ? rack : rack.With(Load($"load-{i + 1}", amperes[i] * 230 * factors[i], pf: factors[i]))
                .Plugged($"load-{i + 1}", "strip", $"g{i + 1}");
        }

        return rack;
    }

    [Fact]
    public void Phase_20_percent_above_mean_passes_and_more_warns()
    {
        Passes(Lines(12, 9, 9)); // mean 10; practice, no source
        var finding = Only(Lines(12.6, 9, 8.4));
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal(["/supplies/0"], finding.Pointers);
        Numbers(finding, 26, 20, "%");
        Assert.Equal("(12.6 + 9 + 8.4) / 3 = 10; 100 x (12.6 / 10 - 1) = 26 > 20", finding.Calculation);
        Assert.Equal("L1", finding.MessageData["line"].Text);
    }

    [Fact]
    public void Line_of_loaded_group_is_asked_for()
    {
        RackDescription Without(int group, double l3) => Lines(12.6, 9, l3).EditGroup(0, group, g => g with { Phase = null });
        ReportsMissing(Without(0, 8.4), "/pdus/0/groups/0/phase");
        ReportsMissing(Without(1, 8.4), "/pdus/0/groups/1/phase");
        Numbers(Only(Without(2, 0)), 75, 20, "%");
    }

    [Fact]
    public void Supply_with_low_load_is_not_checked()
    {
        Passes(Lines(3.1, 0, 0));
        Numbers(Only(Lines(3.2, 0, 0)), 200, 20, "%");
        Passes(Lines(3.2, 0, 0).Limit(Id, "leastSharePercent", 20));
        Passes(Lines(0, 0, 0));
    }

    [Fact]
    public void A_policy_sets_the_share() => Numbers(Only(Lines(12, 9, 9).Limit(Id, "unbalancePercent", 10)), 20, 10, "%");

    [Fact]
    public void One_phase_has_nothing_to_balance() => Passes(Fed(Mains(), Board("strip")).With(Load("wave-pc", 2300)));

    [Fact]
    public void Load_on_three_lines_alike_is_even() =>
        Passes(Fed(Mains(ratedA: 32, phases: 3), Board("strip", 32, "A",
            Outlets("g1") with { Outlets = [new OutletSet { Socket = ConnectorCode.Iec60309A16P3, Count = 1 }] }))
            .With(Load("paddle-drive", 9000, plug: ConnectorCode.Iec60309A16P3)));

    [Fact]
    public void Neutral_with_different_power_factors_can_exceed_phases()
    {
        // 16 A at 1 on L1 and 16 A lagging by 60 degrees on L3: 60 degrees apart, 2 x 16 x cos 30.
        var findings = Findings(Lines(16, 0, 16, pf3: 0.5, rated: 16)).Where(f => f.MessageData.ContainsKey("currentA")).ToArray();
        var finding = Assert.Single(findings);
        Numbers(finding, 27.713, 16, "A");
        Assert.Equal("sqrt((16 - (0 + 8) / 2 + 0.8660254 x (13.856406 - 0))^2 + (0 - (0 + 13.856406) / 2 + 0.8660254 x (0 - 8))^2) = 27.713 > 16",
            finding.Calculation);
    }

    [Fact]
    public void Neutral_with_equal_power_factors_stays_below_worst_phase() // circuit theory: 16 and 9.64 A
    {
        Assert.DoesNotContain(Findings(Lines(16, 0, 0, rated: 16)), f => f.Limit!.Unit == "A");
        Assert.DoesNotContain(Findings(Lines(16, 12, 5, rated: 16)), f => f.Limit!.Unit == "A");
    }

    [Fact]
    public void With_a_supply_lost_the_neutral_is_judged_too()
    {
        var rack = EmptyRack(widthMm: 800).Fed([Mains(phases: 3), Mains("B", phases: 3)], Three with { RatedA = 16 },
            Three with { Id = "other", Supply = "B", RatedA = 16 })
            .With(Load("load-1", 2300, 2, true), Load("load-3", 1150, 2, true, pf: 0.5))
            .Plugged("load-1", "strip", "g1").Plugged("load-1", "other", "g1", 1).Plugged("load-3", "strip", "g3").Plugged("load-3", "other", "g3", 1);
        var findings = Findings(rack).Where(f => f.MessageData.ContainsKey("lost")).ToArray();
        Assert.Equal(["A", "B"], findings.Select(f => f.MessageData["supply"].Text));
        Assert.All(findings, f => Numbers(f, 17.321, 16, "A")); // 10 and 10 A, 60 degrees apart
    }

    [Fact]
    public void Unknown_power_gives_no_balance_finding() =>
        ReportsMissing(Lines(20, 0, 0).With(Load("wave-pc", null)), "/items/1/power/ratedW");

    [Fact]
    public void Single_phase_power_absent_is_not_reported()
    {
        var rack = EmptyRack(widthMm: 800).Fed([Mains(phases: 3), Mains("B")], Three with { RatedA = 16 }, Board("single", supply: "B"));
        Passes(rack.With(Load("wave-pc", null)).Plugged("wave-pc", "single", "g1"));
    }

    [Fact]
    public void A_cord_goes_to_another_line()
    {
        var rack = Lines(12, 9, 6).With(Load("flume-switch", 690)).Plugged("flume-switch", "strip", "g1");
        var after = Remedied(rack, Only(rack));
        Assert.Equal("g3", after.Connections!.Single(c => c.Item == "flume-switch").Group);
    }

    [Fact]
    public void Chosen_outlets_move_group_to_another_phase()
    {
        var rack = Fed(Mains(ratedA: 32, phases: 3, mm2: 16), Board("strip", 32, "A", Outlets("g1", breakerA: 16), Outlets("g2", breakerA: 16),
            Outlets("g3", breakerA: 16)))
            .With(Load("load-1", 1840), Load("load-2", 1840), Load("load-3", 1840));
        var after = Remedied(rack, Only(rack));
        Assert.Equal(["L1", "L2", "L3"], after.Pdus![0].Groups!.Select(g => g.Phase.ToString()).Order());
    }
}
