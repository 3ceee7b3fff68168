using RackCheck.Model;
using RackCheck.Rules.Power;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.Feeds;

namespace RackCheck.Rules.Tests.Power;

/// <summary>Ib &lt;= In &lt;= Iz: IEC 60364-4-43 433.1, value from memory; capacities: BS 7671 table 4D2A, values from memory.</summary>
public sealed class BreakerCoordinationTests : RuleTests<BreakerCoordination>
{
    private static RackDescription Rack(double breaker, Pdu unit, double? mm2 = 16, double? rated = null, int phases = 1) =>
        Fed(Mains(ratedA: rated ?? breaker, breakerA: breaker, mm2: mm2, phases: phases), unit).With(Load("wave-pc", 1150));

    [Fact]
    public void Pdu_rated_as_its_breaker_passes() => Passes(Rack(16, Board("strip", 16)));

    [Fact]
    public void Pdu_rated_above_its_breaker_is_advice_and_no_breaker_is_raised()
    {
        var rack = Rack(16, Board("strip", 32), rated: 32);
        var finding = Only(rack);
        Assert.Equal(["/pdus/0/ratedA", "/supplies/0/breaker/ratedA"], finding.Pointers);
        Numbers(finding, 32, 16, "A");
        Assert.Equal(Severity.Advice, finding.Severity);
        Assert.Equal(16, Remedied(rack, finding).Pdus![0].RatedA);
        Assert.Single(Judge.Checker.Check(rack).Findings.Single(f => f.Rule == Id).Remedies);
    }

    // BS 7671 tables 4D2A, 4B1 and 4C1 (values from memory): 27 x 0.87 x 0.8 = 18.79 A.
    [Theory]
    [InlineData(null, null, 25, 0)] // 27 A
    [InlineData(40.0, null, 25, 1)] // 23.49 A
    [InlineData(40.0, null, 20, 0)]
    [InlineData(40.0, 2, 20, 1)] // 18.79 A
    [InlineData(40.0, 2, 16, 0)]
    public void Heat_and_bunching_reduce_the_capacity(double? ambient, int? grouped, double breaker, int count)
    {
        var rack = Rack(breaker, Board("strip", breaker), mm2: 2.5);
        rack = rack with { Supplies = [rack.Supplies![0] with { Cable = rack.Supplies[0].Cable! with { AmbientC = ambient, Grouped = grouped } }] };
        Assert.Equal(count, Findings(rack).Count);
    }

    // BS 7671 433.1.204 (value from memory): a ring of 2.5 mm2 at 32 A; the 13 A fuse of the plug protects a 13 A PDU.
    [Fact]
    public void Ring_final_circuit_and_plug_fuse_pass()
    {
        var rack = Rack(32, Board("strip", 13) with { Plug = ConnectorCode.Bs1363 }, mm2: 2.5);
        Assert.Single(Findings(rack));
        Passes(rack with
        {
            Supplies = [rack.Supplies![0] with { Socket = ConnectorCode.Bs1363, Cable = rack.Supplies[0].Cable! with { Ring = true } }],
        });
    }

    [Fact]
    public void Supply_at_its_rating_gets_smaller_pdu()
    {
        var rack = Rack(16, Board("strip", 32));
        Assert.Equal(16, Remedied(rack, Only(rack)).Pdus![0].RatedA);
    }

    [Theory]
    [InlineData(16.0, 0)]
    [InlineData(16.1, 1)]
    [InlineData(20.0, 1)]
    [InlineData(null, 1)]
    public void Pdu_rated_below_its_breaker_needs_group_breakers(double? group, int count)
    {
        var rack = Rack(32, Board("strip", 16, "A", Outlets("g1", breakerA: 16), Outlets("g2", breakerA: group)));
        var findings = Findings(rack);
        Assert.Equal(count, findings.Count);
        Assert.All(findings, f =>
        {
            Assert.Equal(["/pdus/0", "/pdus/0/groups/1/breakerA", "/supplies/0/breaker/ratedA"], f.Pointers);
            Numbers(f, group ?? 32, 16, "A");
            Assert.Equal("g2", f.MessageData["groups"].ToString());
            Assert.Equal(16, Remedied(rack, f).Pdus![0].Groups![1].BreakerA);
        });
    }

    [Fact]
    public void Pdu_mismatch_of_either_kind_has_one_fingerprint() =>
        Assert.Equal(Only(Rack(16, Board("strip", 32))).Fingerprint, Only(Rack(32, Board("strip", 16))).Fingerprint);

    [Fact]
    public void North_american_pdu_at_80_percent_of_breaker_passes()
    {
        var rack = Fed(Mains(ratedA: 30, volts: 208, mm2: 6) with { Socket = ConnectorCode.NemaL630 }, Board("strip", 24)).With(Load("wave-pc", 1150));
        Passes(rack.In(Region.Na)); // NEC 210.20(A): a 30 A breaker permits a continuous load of 24 A
        Numbers(Only(rack.In(Region.Eu)), 30, 24, "A");
        Numbers(Only(Fed(Mains(ratedA: 40, volts: 208, mm2: 10), Board("strip", 24)).With(Load("wave-pc", 1150)).In(Region.Na)), 40, 30, "A");
    }

    [Theory]
    [InlineData(27, 2.5, 1, 0)] // the capacity of the table
    [InlineData(28, 2.5, 1, 27)]
    [InlineData(32, 4, 3, 0)] // three loaded conductors carry less
    [InlineData(33, 4, 3, 32)]
    [InlineData(40, 5, 1, 36)] // between two rows the lesser
    [InlineData(63, 10, 1, 0)]
    [InlineData(63, 10, 3, 57)]
    [InlineData(10, 0.75, 1, 9.75)] // under the table in proportion
    [InlineData(85, 25, 1, 0)] // past the table at least its last row
    public void Cable_below_its_breaker_is_error(double breaker, double mm2, int phases, double limit)
    {
        var rack = Rack(breaker, Board("strip", breaker), mm2, phases: phases);
        var findings = Findings(rack);
        Assert.Equal(limit > 0 ? 1 : 0, findings.Count);
        Assert.All(findings, f =>
        {
            Assert.Equal(["/supplies/0/cable/crossSectionMm2", "/supplies/0/breaker/ratedA"], f.Pointers);
            Numbers(f, breaker, limit, "A");
            Assert.True(Remedied(rack, f).Supplies![0].Cable!.CrossSectionMm2 > mm2);
        });
    }

    [Fact]
    public void Cable_area_absent_or_beyond_table_is_missing_data()
    {
        ReportsMissing(Rack(16, Board("strip", 16), mm2: null), "/supplies/0/cable/crossSectionMm2");
        ReportsMissing(Rack(100, Board("strip", 100), mm2: 25), "/supplies/0/cable/crossSectionMm2", "/supplies/0/socket");
        Passes(EmptyRack().Fed([Mains(mm2: null, metres: null)]));
    }

    [Fact]
    public void Socket_absent_is_missing_data_where_the_breaker_could_be_too_large_for_it()
    {
        Passes(Rack(16, Board("strip", 16)));
        ReportsMissing(Rack(20, Board("strip", 20), mm2: 2.5), "/supplies/0/socket");
    }

    [Fact]
    public void Breaker_absent_defaults_to_supply_rating()
    {
        var rack = Rack(32, Board("strip", 32), 4) with { };
        rack = rack with { Supplies = [rack.Supplies![0] with { Breaker = null, RatedA = 40 }] };
        Assert.Equal("/supplies/0/ratedA", Findings(rack).Single(f => f.MessageData.ContainsKey("sectionMm2")).Pointers[1]);
    }

    [Fact]
    public void Pdu_behind_ups_ignores_supply_breaker()
    {
        var ups = Load("bay-ups", null) with { Ups = new Ups { Feeds = ["behind"] } };
        Passes(Fed(Mains(), Board("strip"), Board("behind", 32)).With(ups));
    }

    [Fact]
    public void Largest_cable_gets_smaller_supply_and_pdu()
    {
        var rack = Fed(Mains(ratedA: 125, mm2: 16), Board("strip", 125)).With(Load("wave-pc", 1150));
        Assert.Equal(80, Remedied(rack, Only(rack)).Supplies![0].Breaker!.RatedA);
    }

    [Fact]
    public void Load_above_smaller_supply_moves_to_another_rack()
    {
        var rack = Fed(Mains(ratedA: 200, mm2: 16), Board("strip", 200, "A", Outlets("g1", count: 8)))
            .With([.. Enumerable.Range(1, 8).Select(i => Load($"drive-{i}", 3500))]);
        var finding = Findings(rack).Single(f => f.MessageData.ContainsKey("sectionMm2"));
        Assert.InRange(Remedied(rack, finding).Items.Count, 1, 7);
    }

    // IEC 60364-4-43 433.1, BS 7671 433.1.204 and NEC 210.21(B), values from memory.
    [Theory]
    [InlineData(ConnectorCode.Iec60309A16P1, Region.Eu, 16, 20)]
    [InlineData(ConnectorCode.Cee73, Region.Eu, 16, 20)]
    [InlineData(ConnectorCode.C13, Region.Eu, 16, 20)]
    [InlineData(ConnectorCode.Bs1363, Region.Uk, 32, 40)]
    [InlineData(ConnectorCode.Nema515, Region.Na, 20, 25)]
    [InlineData(ConnectorCode.NemaL620, Region.Na, 20, 25)]
    [InlineData(ConnectorCode.C19, Region.Na, 20, 25)]
    public void Socket_limits_the_breaker(ConnectorCode socket, Region region, double most, double over)
    {
        RackDescription With(double breaker)
        {
            var rack = Rack(breaker, Board("strip", breaker)).Region(region);
            return rack with { Supplies = [rack.Supplies![0] with { Socket = socket }] };
        }

        Assert.DoesNotContain(Findings(With(most)), f => f.Subject == "socket of supply A");
        var finding = Assert.Single(Findings(With(over)), f => f.Subject == "socket of supply A");
        Assert.Equal(["/supplies/0/socket", "/supplies/0/breaker/ratedA"], finding.Pointers);
        Numbers(finding, over, most, "A");
        Assert.Equal(Severity.Error, finding.Severity);
    }

    [Fact]
    public void Breaker_of_the_socket_is_remedy()
    {
        var rack = Rack(32, Board("strip", 32));
        rack = rack with { Supplies = [rack.Supplies![0] with { Socket = ConnectorCode.Iec60309A16P1 }] };
        Assert.Equal(16, Remedied(rack, Only(rack)).Supplies![0].Breaker!.RatedA);
    }

    [Fact]
    public void Hard_wired_supply_has_no_socket_to_protect()
    {
        var rack = Rack(63, Board("strip", 63));
        Passes(rack with { Supplies = [rack.Supplies![0] with { Socket = ConnectorCode.Hardwired }] });
    }
}
