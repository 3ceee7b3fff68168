using RackCheck.Model;
using RackCheck.Survey;
using RackCheck.Testing;
using static RackCheck.Testing.Wiring;

namespace RackCheck.Rules.Tests.Power;

/// <summary>Supplies that feed their outlets from line to line, over all power rules.</summary>
public sealed class LineToLineTests
{
    // Nine loads of 1090 W at 208 V, three on each pair: 3 x 1090 / 208 = 15.72 A a pair, sqrt(3) x 15.72 = 27.23 A a line (circuit theory).
    private static RackDescription Rack(int perPair = 3, double watts = 1090) =>
        Wired(Mains(rated: 30, phases: 3, voltage: 208))
            .Units(Pdu("strip", "A", 30, Pair("g1", Phase.L1L2), Pair("g2", Phase.L2L3), Pair("g3", Phase.L3L1)))
            .Region(Region.Na)
            .With([.. Enumerable.Range(0, 3 * perPair).Select(i => Load($"pc-{i}", watts))]);

    private static OutletGroup Pair(string id, Phase phase) => Outlets(id, 20, ConnectorCode.C13, 6, phase);

    [Fact]
    public void Each_line_carries_two_pairs()
    {
        var figures = Judge.Checker.Check(Rack()).Figures.Power!;
        Assert.Equal((27.23, 27.23, 27.23), (figures.Supplies![0].CurrentA!.L1, figures.Supplies[0].CurrentA!.L2, figures.Supplies[0].CurrentA!.L3));
        Assert.Null(figures.Supplies[0].CurrentA!.Neutral);
        Assert.All(figures.Pdus![0].Groups!, g => Assert.Equal(15.721, g.CurrentA));
    }

    [Fact]
    public void Line_above_the_continuous_share_is_error()
    {
        var finding = Assert.Single(Judge.Checker.Check(Rack()).Findings, f => f.Rule == "power.supply-loading");
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Equal((27.23, 24), (finding.Actual!.Value, finding.Limit!.Value));
        Assert.Contains("sqrt(", finding.Calculation, StringComparison.Ordinal);

        // 960 W: 3 x 960 / 208 x sqrt(3) = 23.98 A.
        Assert.DoesNotContain(Judge.Checker.Check(Rack(watts: 960)).Findings, f => f is { Rule: "power.supply-loading", Severity: Severity.Error });
    }

    [Fact]
    public void One_pair_alone_loads_two_lines()
    {
        var rack = Rack(1) with { Items = [Load("pc", 2080) with { Id = "pc" }] };
        rack = rack.Connect("pc", "strip", "g2");
        var current = Judge.Checker.Check(rack).Figures.Power!.Supplies![0].CurrentA!;
        Assert.Equal((0, 10, 10), (current.L1, current.L2, current.L3));
    }

    // 100 A-metres of 2.5 mm2: three equal pairs drop 0.866 of the single-phase value at the line current (BS 7671 table 4D2B, three-phase column).
    [Fact]
    public void Voltage_drop_of_equal_pairs_is_0_866_of_the_table()
    {
        var rack = Rack() with
        {
            Supplies = [Mains(rated: 30, phases: 3, voltage: 208) with { Cable = new SupplyCable { LengthM = 10, CrossSectionMm2 = 10 } }],
        };
        var drop = new RackSurvey(rack).Power.Supplies[0].VoltageDropPercent!.Value;
        Assert.Equal(100 * 0.8660254 * 4.4 * 10 * 27.22997 / 1000 / 208, drop, 1e-4);
    }

    [Fact]
    public void Cooling_on_a_supply_loads_its_least_loaded_line()
    {
        var rack = Wired(Mains()).Units(Pdu("strip", "A", 16, Outlets("g1", 16))).With(Load("pc", 1150)) with
        {
            Cooling = new Model.Cooling { AirConditioner = new AirConditioner { CapacityW = 1000, InputW = 437, Supply = "A" } },
        };

        // 1150 / 230 + 437 / 0.95 / 230 = 5 + 2 A.
        Assert.Equal(7, new RackSurvey(rack).Power.Supplies[0].Lines[0].NormalA, 1e-9);
    }
}
