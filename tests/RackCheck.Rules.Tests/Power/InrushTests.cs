using RackCheck.Model;
using RackCheck.Rules.Power;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.Feeds;

namespace RackCheck.Rules.Tests.Power;

public sealed class InrushTests : RuleTests<Inrush>
{
    private static RackDescription Rack(BreakerCurve? curve, params double?[] inrush) =>
        Fed(Mains(curve: curve), Board("strip")).With([.. inrush.Select((a, i) => Load($"pc-{i}", 100, inrush: a, plug: ConnectorCode.C14))]);

    [Theory]
    [InlineData(BreakerCurve.B, 67.8, 0)] // IEC 60898-1: sqrt(2) x 3 x 16 = 67.882
    [InlineData(BreakerCurve.B, 68, 67.882)]
    [InlineData(BreakerCurve.C, 113, 0)] // IEC 60898-1: sqrt(2) x 5 x 16 = 113.137
    [InlineData(BreakerCurve.C, 114, 113.137)]
    [InlineData(BreakerCurve.D, 226, 0)] // IEC 60898-1: sqrt(2) x 10 x 16 = 226.274
    [InlineData(BreakerCurve.D, 227, 226.274)]
    public void Inrush_at_lowest_trip_current_passes_and_above_is_advice(BreakerCurve curve, double inrush, double limit)
    {
        var findings = Findings(Rack(curve, inrush));
        Assert.Equal(limit > 0 ? 1 : 0, findings.Count);
        Assert.All(findings, f =>
        {
            Assert.Equal(Severity.Advice, f.Severity);
            Assert.Equal(["/supplies/0", "/supplies/0/breaker/curve"], f.Pointers);
            Numbers(f, inrush, limit, "A");
        });
    }

    // Common practice, no source: pulses of 5 ms and more are compared for certain.
    [Theory]
    [InlineData(null, 5.0, Severity.Advice)] // 40 A known to last, below 67.9 A
    [InlineData(5.0, 5.0, Severity.Warning)]
    [InlineData(4.9, 4.9, Severity.Advice)]
    public void Long_pulse_is_a_warning(double? first, double? second, Severity severity)
    {
        var rack = Rack(BreakerCurve.B, 40, 40);
        rack = rack with
        {
            Items = [.. rack.Items.Zip([first, second], (i, ms) => i with { Power = i.Power! with { InrushMs = ms } })],
        };
        Assert.Equal(severity, Only(rack).Severity);
    }

    [Fact]
    public void Inrush_of_unsequenced_outlets_adds_up()
    {
        var finding = Only(Rack(BreakerCurve.B, 30, 30, 10));
        Numbers(finding, 70, 67.882, "A");
        Assert.Equal("2 x 30 + 10 = 70 > sqrt(2) x 3 x 16 = 67.882", finding.Calculation);
    }

    [Fact]
    public void Inrush_shared_by_cords_has_exact_calculation()
    {
        // 20 / 3 is 6.667, and 3 x 6.667 would be 20.001.
        var three = Load("drive", 100, inrush: 20);
        three = three with { Power = three.Power! with { Plugs = [ConnectorCode.C14, ConnectorCode.C14, ConnectorCode.C14] } };
        var finding = Only(Rack(BreakerCurve.B, 50).With(three));
        Numbers(finding, 70, 67.882, "A");
        Assert.Equal("50 + 3 x 6.666667 = 70 > sqrt(2) x 3 x 16 = 67.882", finding.Calculation);
    }

    [Fact]
    public void Switched_outlets_start_in_sequence()
    {
        var rack = Rack(BreakerCurve.B, 40, 40, 40);
        var switched = rack with { Pdus = [rack.Pdus![0] with { RemoteSwitched = true }] };
        Passes(switched);
        Numbers(Only(switched.With(Load("drive", 100, inrush: 70))), 70, 67.882, "A");
        Assert.Equal("70 > sqrt(2) x 3 x 16 = 67.882", Only(switched.With(Load("drive", 100, inrush: 70))).Calculation);
    }

    [Fact]
    public void Each_line_of_three_has_its_own()
    {
        var board = Board("strip", 16, "A", Outlets("g1"), Outlets("g2", Phase.L2));
        var rack = Fed(Mains(curve: BreakerCurve.B, phases: 3), board).With(Load("wave-pc", 100, inrush: 40), Load("paddle-drive", 100, inrush: 40));
        Passes(rack.Plugged("wave-pc", "strip", "g1").Plugged("paddle-drive", "strip", "g2"));
        var finding = Only(rack.Plugged("wave-pc", "strip", "g2").Plugged("paddle-drive", "strip", "g2"));
        Numbers(finding, 80, 67.882, "A");
        Assert.Equal("L2", finding.MessageData["line"].Text);
    }

    [Fact]
    public void Cords_of_one_item_share_its_inrush() =>
        Numbers(Only(Fed(Mains(curve: BreakerCurve.B), Board("strip")).With(Load("drive", 100, 2, inrush: 70))), 70, 67.882, "A");

    [Fact]
    public void Equipment_behind_ups_counts_ups_inrush()
    {
        var ups = Load("bay-ups", null, inrush: 70) with { Ups = new Ups { Feeds = ["behind"] } };
        var rack = Fed(Mains(curve: BreakerCurve.B), Board("strip"), Board("behind")).With(ups, Load("wave-pc", 100, inrush: 40))
            .Plugged("wave-pc", "behind", "g1");
        Numbers(Only(rack), 70, 67.882, "A");
    }

    [Fact]
    public void Curve_and_inrush_absent_are_missing_data()
    {
        ReportsMissing(Rack(null, 20), "/supplies/0/breaker/curve");
        ReportsMissing(Rack(BreakerCurve.B, 20, null), "/items/1/power/inrushA");
        var report = Report(Rack(BreakerCurve.B, 69, null));
        Numbers(Assert.Single(report.Findings), 69, 67.882, "A");
        Assert.Equal(["/items/1/power/inrushA"], Assert.Single(report.NotAssessed).Missing);
        Passes(Rack(null));
        Passes(Rack(null, 0));
    }

    [Fact]
    public void Inrush_remedies_are_sequence_curve_and_supply()
    {
        var rack = Rack(BreakerCurve.B, 40, 40);
        var finding = Only(rack);
        Assert.True(Remedied(rack, finding).Pdus![0].RemoteSwitched);
        Assert.Equal(BreakerCurve.C, Remedied(rack, finding, 1).Supplies![0].Breaker!.Curve);
        Assert.Equal(2, Remedied(rack, finding, 2).Supplies!.Count);
    }

    [Fact]
    public void Unswitched_outlets_stay_unswitched()
    {
        var rack = Fed(Mains(curve: BreakerCurve.B), Board("strip", 16, "A", Outlets("g1", switched: false)))
            .With(Load("wave-pc", 100, inrush: 40), Load("paddle-drive", 100, inrush: 40));
        Assert.Equal(BreakerCurve.C, Remedied(rack, Only(rack)).Supplies![0].Breaker!.Curve);
    }

    // Breakers of UL 489 have no curve letter.
    [Fact]
    public void North_American_breaker_without_a_curve_is_not_asked_for()
    {
        Passes(Rack(null, 500).Region(Region.Na));
        Passes(Rack(null, (double?)null).Region(Region.Na));
        Assert.Single(Findings(Rack(BreakerCurve.B, 500).Region(Region.Na)));
        ReportsMissing(Rack(null, 500), "/supplies/0/breaker/curve");
    }
}
