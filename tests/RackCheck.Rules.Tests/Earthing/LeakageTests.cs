using RackCheck.Model;
using RackCheck.Rules.Earthing;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.EarthRacks;

namespace RackCheck.Rules.Tests.Earthing;

public sealed class LeakageTests : RuleTests<Leakage>
{
    private static RackDescription Rack(ConnectorCode? socket, ConnectorCode? plug, params double[] leakages) =>
        Earthed(main: 6).Fed(Mains(socket: socket, rated: 13)).Strips(Strip(plug: plug, rated: 13)).With(Leaking(leakages));

    private static RackDescription Loose(params double[] leakages) => Rack(ConnectorCode.Bs1363, ConnectorCode.Bs1363, leakages);

    // Industrial, with an earth conductor too thin for more than 10 mA.
    private static RackDescription Firm(params double[] leakages) => Industrial(ConnectorCode.Iec60309A16P1, 1.5, leakages);

    private static RackDescription Industrial(ConnectorCode? code, double? cable, params double[] leakages) => Rack(code, code, leakages)
        .Fed(Mains(socket: code, rated: 13, cable: cable));

    [Fact]
    public void Up_to_3_5_mA_any_plug_does() => Passes(Loose(0.7, 0.7, 0.7, 0.7, 0.7)); // BS 7671 543.7; the sum comes out a hair beside 3.5

    [Fact]
    public void Leakage_above_limit_needs_secured_pdu_and_supply()
    {
        var rack = Loose(1.9, 1.7);
        var findings = Findings(rack);
        Assert.Equal(["/pdus/0", "/supplies/0"], findings.Select(f => f.Pointers[0]).Order());
        Assert.All(findings, f => Numbers(f, 3.6, 3.5, "mA"));
        Assert.All(findings, f => Assert.Equal("1.9 + 1.7 = 3.6 > 3.5", f.Calculation));
        Assert.All(findings, f => Assert.Equal("BS1363", f.MessageData["connector"].Text));
        foreach (var finding in findings)
        {
            var remedied = Remedied(rack, finding);
            Assert.Equal((ConnectorCode.Iec60309A16P1, ConnectorCode.Iec60309A16P1), (remedied.Supplies![0].Socket, remedied.Pdus![0].Plug));
            Assert.Equal(ConnectorCode.Hardwired, Remedied(rack, finding, 1).Supplies![0].Socket);
        }
    }

    [Theory]
    [InlineData(ConnectorCode.Iec60309A16P1, 0)]
    [InlineData(ConnectorCode.Hardwired, 0)]
    [InlineData(ConnectorCode.NemaL620, 0)]
    [InlineData(ConnectorCode.Cee77, 1)]
    [InlineData(ConnectorCode.C20, 1)]
    public void Industrial_and_hard_wired_connections_are_secured(ConnectorCode plug, int count) =>
        Assert.Equal(count, Findings(Rack(ConnectorCode.Iec60309A16P1, plug, 1.9, 1.7)).Count);

    [Fact]
    public void Past_10_mA_high_integrity_earthing_is_asked_for()
    {
        Passes(Firm(5, 5)); // BS 7671 543.7
        var rack = Firm(5, 5.1);
        Assert.Equal(2, Findings(rack).Count);
        var finding = Findings(rack)[0];
        Numbers(finding, 10.1, 10, "mA");
        Assert.Equal("/earthing/mainConductorMm2", finding.Pointers[1]);
        Assert.Equal(10, Remedied(rack, finding).Earthing!.MainConductorMm2);
        Passes(rack.Earth(e => e with { MainConductorMm2 = 10 })); // BS 7671 543.7.1.203, value from memory
        Passes(rack.Earth(e => e with { SecondaryEarth = true }));
        Assert.Equal(2, Findings(rack.Earth(e => e with { SecondaryEarth = true }).WithoutBar()).Count);
    }

    // BS 7671 543.7.1.202 and .203, values from memory.
    [Theory]
    [InlineData(ConnectorCode.Iec60309A16P1, 2.5, 0)]
    [InlineData(ConnectorCode.Iec60309A16P1, 1.5, 2)]
    [InlineData(ConnectorCode.Iec60309A16P3, 2.5, 0)]
    [InlineData(ConnectorCode.Iec60309A32P1, 4, 0)]
    [InlineData(ConnectorCode.Iec60309A32P1, 2.5, 2)]
    [InlineData(ConnectorCode.Iec60309A63P1, 4, 0)]
    [InlineData(ConnectorCode.Hardwired, 10, 0)]
    [InlineData(ConnectorCode.Hardwired, 6, 2)]
    [InlineData(ConnectorCode.Hardwired, 25, 0)] // its earth conductor has 16 mm2, IEC 60364-5-54 table 54.2
    [InlineData(ConnectorCode.Bs1363, 2.5, 2)]
    public void Cable_and_industrial_connection_are_high_integrity(ConnectorCode code, double cable, int count) =>
        Assert.Equal(count, Findings(Industrial(code, cable, 5, 5.1)).Count);

    [Fact]
    public void Earth_conductor_of_cable_is_an_assumption_where_it_decides()
    {
        Assert.Equal(2.5, Assert.Single(Report(Industrial(ConnectorCode.Iec60309A16P1, 2.5, 5, 5.1)).Assumptions, IsEarth).Value!.Value.Number);
        Assert.DoesNotContain(Report(Industrial(ConnectorCode.Iec60309A16P1, 2.5, 5, 5)).Assumptions, IsEarth);

        static bool IsEarth(Assumption a) => a.Pointers[0] == "/supplies/0/cable";
    }

    [Fact]
    public void Cable_is_asked_for_where_it_decides()
    {
        ReportsMissing(Industrial(ConnectorCode.Iec60309A16P1, null, 5, 5.1), "/supplies/0/cable/crossSectionMm2");
        Assert.Equal(2, Findings(Industrial(ConnectorCode.Bs1363, null, 5, 5.1)).Count);
        Passes(Industrial(ConnectorCode.Iec60309A16P1, null, 5, 5));
    }

    [Fact]
    public void Cord_of_pdu_behind_ups_is_not_the_cable_of_the_supply()
    {
        var ups = Leaking("ups", 10, 1) with { Ups = new Ups { RatedW = 2000, Feeds = ["strip"] } };
        ups = ups with { Power = ups.Power! with { Plugs = [ConnectorCode.C20] } };
        var raw = Strip("raw") with { Groups = [new OutletGroup { Id = "g1", Outlets = [new OutletSet { Socket = ConnectorCode.C19, Count = 1 }] }] };
        var rack = Industrial(ConnectorCode.Iec60309A16P1, 4, 5, 5.1);
        rack = rack with { Items = [.. rack.Items, ups], Pdus = [.. rack.Pdus!, raw] };
        Assert.Equal("/pdus/0", Assert.Single(Findings(rack)).Pointers[0]);
    }

    [Fact]
    public void Thicker_cable_is_a_remedy_of_an_industrial_connection()
    {
        var rack = Firm(5, 5.1);
        Assert.Equal(2.5, Remedied(rack, Findings(rack)[0], 1).Supplies![0].Cable!.CrossSectionMm2);
    }

    [Fact]
    public void Both_wants_are_one_finding_with_one_fingerprint()
    {
        var findings = Findings(Loose(5, 5.1));
        Assert.All(findings, f => Numbers(f, 10.1, 10, "mA"));
        Assert.Equal(Findings(Loose(1.9, 1.7)).Select(f => f.Fingerprint), findings.Select(f => f.Fingerprint));
        var remedied = Remedied(Loose(5, 5.1), findings[0]);
        Assert.Equal((6, ConnectorCode.Iec60309A16P1), (remedied.Earthing!.MainConductorMm2, remedied.Pdus![0].Plug));
        var thin = Industrial(ConnectorCode.Bs1363, 1.5, 5, 5.1);
        remedied = Remedied(thin, Findings(thin)[0]);
        Assert.Equal((10, ConnectorCode.Iec60309A16P1), (remedied.Earthing!.MainConductorMm2, remedied.Pdus![0].Plug));
    }

    [Fact]
    public void Earthing_absent_counts_as_none_and_remedy_adds_it()
    {
        var rack = Firm(5, 5.1) with { Earthing = null };
        rack = rack.WithoutBar();
        var finding = Findings(rack)[0];
        Assert.Single(finding.Pointers);
        var remedied = Remedied(rack, finding);
        Assert.Equal((10, 6), (remedied.Earthing!.MainConductorMm2, remedied.Cabinet!.EarthBar!.Terminals));
    }

    [Fact]
    public void An_unknown_plug_or_socket_is_asked_for_once_it_matters()
    {
        Passes(Rack(null, null, 1, 1));
        ReportsMissing(Rack(null, ConnectorCode.Iec60309A16P1, 1.9, 1.7), "/supplies/0/socket");
        ReportsMissing(Rack(ConnectorCode.Iec60309A16P1, null, 1.9, 1.7), "/pdus/0/plug");
    }

    [Fact]
    public void What_leaks_unknown_is_asked_for_and_the_rest_still_counts()
    {
        ReportsMissing(Loose(1).With(Leaking("wave-pc", 5, null)), "/items/1/power/leakageMa");
        var rack = Loose(1.9, 1.7).With(Leaking("wave-pc", 5, null));
        Assert.Equal(2, Findings(rack).Count);
        Assert.Equal(["/items/2/power/leakageMa"], Assert.Single(Report(rack).NotAssessed).Missing);
        ReportsMissing(Loose(1) with { Pdus = null }, "/pdus");
    }

    [Fact]
    public void A_redundant_item_leaks_half_through_each_cord()
    {
        var rack = Earthed().Fed(Mains(), Mains("B", socket: ConnectorCode.Bs1363)).Strips(Strip(), Strip("other", "B", ConnectorCode.Bs1363));
        Passes(rack.With(Leaking("wave-pc", 1, 7, 2)));
        Assert.All(Findings(rack.With(Leaking("wave-pc", 1, 7.2, 2))), f => Numbers(f, 3.6, 3.5, "mA"));
        Assert.Equal(2, Findings(rack.With(Leaking("wave-pc", 1, 7.2, 2))).Count);
    }

    [Theory]
    [InlineData("leakageMa", 3.4, 2)]
    [InlineData("leakageMa", 3.5, 0)]
    [InlineData("highLeakageMa", 3.4, 2)] // the main conductor has 6
    [InlineData("highLeakageMa", 3.5, 0)]
    public void A_policy_may_be_stricter(string limit, double value, int count) => Assert.Equal(count, Findings(Loose(1.9, 1.6).Limit(Id, limit, value)).Count);

    // In North America a label is all that 3.5 mA asks for.
    [Fact]
    public void North_America_is_not_judged() => Passes(Loose(6, 6) with { Site = new Site { Region = Region.Na } });

    [Fact]
    public void Current_above_every_plug_is_hard_wired()
    {
        var rack = Loose(1.9, 1.7).Fed(Mains(socket: ConnectorCode.Bs1363, rated: 80, cable: 16));
        rack = rack with { Pdus = [.. rack.Pdus!.Select(u => u with { Groups = [.. u.Groups!.Select(g => g with { BreakerA = 10 })] })] };
        Assert.Equal(ConnectorCode.Hardwired, Remedied(rack, Findings(rack)[0]).Supplies![0].Socket);
    }

    [Fact]
    public void Earth_conductors_come_before_other_remedies()
    {
        var remedies = Judge.Checker.Check(Firm(5, 5.1)).Findings.First(f => f.Rule == Id).Remedies;
        Assert.Equal("Run a main earth conductor of 10 mm2 to the earth bar", remedies[0].Title);
        Assert.Equal("Use a 2.5 mm2 cable for supply A", remedies[1].Title);
        Assert.Equal("Add a supply like A with a PDU like strip", remedies[2].Title);
    }
}
