using RackCheck.Model;
using RackCheck.Rules.Power;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.Feeds;

namespace RackCheck.Rules.Tests.Power;

public sealed class VoltageDropTests : RuleTests<VoltageDrop>
{
    private static RackDescription Rack(double mm2, double metres, double amperes, double volts = 230, double rated = 32) =>
        Fed(Mains(ratedA: rated, mm2: mm2, metres: metres, volts: volts), Board("strip", rated, "A", Outlets("g1", breakerA: rated)))
            .With(Load("paddle-drive", amperes * volts / 2), Load("wave-pc", amperes * volts / 2));

    [Theory]
    [InlineData(2.5, 18, 16, null, 0, 0)] // BS 7671 table 4D2B: 2.254 %
    [InlineData(4, 25, 20, null, 0, 0)] // BS 7671 table 4D2B: 2.391 %
    [InlineData(6, 30, 32, Severity.Warning, 3.047, 3)] // BS 7671 table 4D2B
    [InlineData(6, 50, 32, Severity.Error, 5.078, 5)] // the same, 50 m
    public void Drop_by_table_4D2B_is_held_to_its_limits(double mm2, double metres, double amperes, Severity? severity, double drop, double limit)
    {
        var findings = Findings(Rack(mm2, metres, amperes));
        Assert.Equal(severity is null ? 0 : 1, findings.Count);
        Assert.All(findings, f =>
        {
            Assert.Equal(severity, f.Severity);
            Assert.Equal(["/supplies/0/cable/crossSectionMm2", "/supplies/0/cable/lengthM"], f.Pointers);
            Numbers(f, drop, limit, "%");
        });
    }

    [Fact]
    public void At_either_limit_it_is_not_past_it()
    {
        Passes(Rack(4, 30, 20, 220)); // 11 x 30 x 20 / 1000 = 6.6 V, 3 % of 220 V
        Assert.Equal(Severity.Warning, Only(Rack(4, 50, 20, 220)).Severity); // 11 V, 5 %
        Assert.Equal(Severity.Error, Only(Rack(4, 50.1, 20, 220)).Severity);
    }

    [Fact]
    public void Calculation_is_shown_and_fingerprint_is_stable()
    {
        var finding = Only(Rack(4, 50, 20, 220));
        Assert.Equal("11 x 50 x 20 / 1000 = 11; 100 x 11 / 220 = 5 > 3", finding.Calculation);
        Assert.Equal(finding.Fingerprint, Only(Rack(4, 60, 20, 220)).Fingerprint);
    }

    // On-Site Guide to BS 7671, value from memory: a ring of 60 m has the drop of 15 m. 18 x 15 x 30 / 1000 = 8.1 V, 3.522 % of 230 V.
    [Fact]
    public void Ring_drops_over_a_quarter_of_its_length()
    {
        RackDescription Of(double metres, bool ring)
        {
            var rack = Rack(2.5, metres, 30);
            return rack with { Supplies = [rack.Supplies![0] with { Cable = rack.Supplies[0].Cable! with { Ring = ring } }] };
        }

        Numbers(Only(Of(60, true)), 3.522, 3, "%");
        Assert.Equal("18 x 60 / 4 x 30 / 1000 = 8.1; 100 x 8.1 / 230 = 3.522 > 3", Only(Of(60, true)).Calculation);
        Assert.Equal(3.522, Judge.Check(Of(60, true)).Figures.Power!.Supplies![0].VoltageDropPercent!.Value, 0.001);
        Passes(Of(51, true)); // 2.993 %
        Assert.Equal(Severity.Error, Only(Of(51, false)).Severity);
    }

    [Fact]
    public void Three_phases_alike_drop_half_and_one_alone_all()
    {
        var board = Board("strip", 32, "A", Outlets("g1"), Outlets("g2", Phase.L2), Outlets("g3", Phase.L3));
        var rack = Fed(Mains(ratedA: 32, phases: 3, mm2: 4, metres: 50, volts: 220), board).With(Load("load-1", 4400)).Plugged("load-1", "strip", "g1");
        Numbers(Only(rack), 5, 3, "%");
        Passes(rack.With(Load("load-2", 4400), Load("load-3", 4400)).Plugged("load-2", "strip", "g2").Plugged("load-3", "strip", "g3")); // 2.5 %
    }

    [Fact]
    public void Policies_set_both_limits()
    {
        Numbers(Only(Rack(4, 25, 20).Limit(Id, "dropWarningPercent", 2)), 2.391, 2, "%");
        Assert.Equal(Severity.Error, Only(Rack(6, 30, 32).Limit(Id, "dropErrorPercent", 3)).Severity);
    }

    [Fact]
    public void Length_section_and_power_are_asked_for()
    {
        var board = Board("strip");
        ReportsMissing(Fed(Mains(mm2: null), board), "/supplies/0/cable/crossSectionMm2");
        ReportsMissing(Fed(Mains(metres: null), board), "/supplies/0/cable/lengthM");
        ReportsMissing(Fed(Mains(mm2: null, metres: null), board), "/supplies/0/cable/crossSectionMm2", "/supplies/0/cable/lengthM");
        Passes(EmptyRack().Fed([Mains(mm2: null, metres: null)]));
        ReportsMissing(Fed(Mains(), board).With(Load("wave-pc", null)), "/items/0/power/ratedW");
    }

    [Fact]
    public void Known_load_alone_can_exceed_limit()
    {
        var report = Report(Rack(6, 50, 32).With(Load("gauge-amp", null)));
        Numbers(Assert.Single(report.Findings), 5.078, 5, "%");
        Assert.Single(report.NotAssessed);
    }

    [Fact]
    public void Thicker_cable_comes_with_its_earth_conductor()
    {
        var rack = Rack(6, 50, 32);
        rack = rack.Cabinet(c => c with { EarthBar = new EarthBar { Terminals = 12 } }) with { Earthing = new Model.Earthing { MainConductorMm2 = 6 } };
        var remedied = Remedied(rack, Only(rack));
        Assert.Equal((16, 16), (remedied.Supplies![0].Cable!.CrossSectionMm2, remedied.Earthing!.MainConductorMm2));
    }

    [Fact]
    public void Voltage_drop_remedies_are_cable_supply_or_less_load()
    {
        var rack = Rack(4, 50, 20);
        var finding = Only(rack);
        Assert.Equal(10, Remedied(rack, finding).Supplies![0].Cable!.CrossSectionMm2); // 6 mm2 would drop 3.17 %
        Assert.Equal(2, Remedied(rack, finding, 1).Supplies!.Count);
        Assert.Single(Remedied(rack, finding, 2).Items);
    }

    // Without the UPS, its equipment is fed from the supply.
    [Fact]
    public void No_cable_is_enough_moves_equipment_behind_ups()
    {
        var rack = Fed(Mains(ratedA: 16, mm2: 1.5, metres: 9000), Board("strip"), Board("behind"))
            .With(Load("bay-ups", 1000) with { Ups = new Ups { RatedVa = 1500, Feeds = ["behind"] } }, Load("wave-pc", 900))
            .Plugged("bay-ups", "strip", "g1").Plugged("wave-pc", "behind", "g1");
        Assert.Equal("bay-ups", Assert.Single(Remedied(rack, Only(rack)).Items).Id);
    }

    [Fact]
    public void Very_long_cable_has_a_remedy()
    {
        var rack = Rack(1.5, 9000, 10, rated: 16);
        Assert.Empty(Remedied(rack, Only(rack)).Items);
    }
}
