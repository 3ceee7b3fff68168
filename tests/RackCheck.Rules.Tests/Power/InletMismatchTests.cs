using RackCheck.Model;
using RackCheck.Remedies;
using RackCheck.Rules.Power;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Survey.Power;
using RackCheck.Testing;
using static RackCheck.Testing.PowerRacks;

namespace RackCheck.Rules.Tests.Power;

public sealed class InletMismatchTests : RuleTests<InletMismatch>
{
    private static readonly RuleDescriptor Facts = new InletMismatch().Descriptor;

    private static RackDescription One(ConnectorCode? plug, ConnectorCode? socket, double rated = 16, Region? region = null) =>
        Rack([Feed("A", rated, socket: socket)], [Strip("strip", "A", amperes: rated, plug: plug)]) with { Site = new Site { Region = region } };

    [Fact]
    public void Plug_that_does_not_fit_changes_plug_or_socket()
    {
        var rack = One(Blue16, Blue32);
        var finding = Only(rack);
        Assert.Equal(["/pdus/0/plug", "/supplies/0/socket"], finding.Pointers);
        Assert.True(finding.Safety);
        IsWhole(Facts, rack, finding);
        Assert.Equal(Blue32, Remedied(rack, finding).Pdus![0].Plug);
        Assert.Equal(Blue16, Remedied(rack, finding, 1).Supplies![0].Socket);
        Passes(One(Blue16, Blue16));
    }

    [Fact]
    public void Plug_rated_below_pdu_is_error()
    {
        // IEC 60309-2: 16 A.
        Passes(One(Blue16, Blue16, 16));
        var rack = One(Blue16, Blue16, 20);
        var finding = Only(rack);
        Numbers(finding, 16, 20, "A");
        Assert.Equal(["/pdus/0/plug", "/pdus/0/ratedA"], finding.Pointers);
        IsWhole(Facts, rack, finding);
        var remedied = Remedied(rack, finding);
        Assert.Equal((Blue32, Blue32), (remedied.Pdus![0].Plug, remedied.Supplies![0].Socket));

        // A unit of 16 A on a breaker of 20 A needs breakers of its own.
        var guarded = rack.EditGroup(0, 0, g => g with { BreakerA = 16 });
        Assert.Equal(16, Remedied(guarded, Only(guarded), 1).Pdus![0].RatedA);
    }

    [Theory]
    [InlineData(Region.Eu, 16)]
    [InlineData(Region.Na, 20)]
    public void Ratings_are_those_of_the_region(Region region, double rated)
    {
        // IEC 60320-1: C19 and C20 16 A, in North America 20 A.
        Passes(One(ConnectorCode.C20, ConnectorCode.C19, rated, region));
        Numbers(Only(One(ConnectorCode.C20, ConnectorCode.C19, rated + 1, region)), rated, rated + 1, "A");
    }

    [Fact]
    public void Single_phase_plug_with_several_phases_is_error()
    {
        var unit = Strip("strip", "A", count: 2).With("second", ConnectorCode.C13, 2, Phase.L2);
        var rack = Rack([Feed("A", phases: 3, socket: Blue16)], [unit]);
        var finding = Only(rack);
        Numbers(finding, 1, 2, "lines");
        IsWhole(Facts, rack, finding);
        var remedied = Remedied(rack, finding);
        Assert.Equal((Red16, Red16), (remedied.Pdus![0].Plug, remedied.Supplies![0].Socket));
        Passes(remedied);
    }

    [Fact]
    public void Several_defects_name_the_most_serious()
    {
        var (fit, rating) = (Only(One(Blue16, Blue32, 32)), Only(One(Blue16, Blue16, 32)));
        Assert.Null(fit.Actual);
        Assert.NotNull(rating.Actual);
        Assert.Equal(fit.Fingerprint, rating.Fingerprint);
    }

    [Fact]
    public void Pdus_of_one_supply_change_together()
    {
        var rack = Rack([Feed("A", 32, socket: Blue16)], [Strip("one", "A", amperes: 32), Strip("two", "A", amperes: 32)]);
        Assert.Equal(2, Findings(rack).Count);
        Assert.All(Remedied(rack, Findings(rack)[0]).Pdus!, u => Assert.Equal(Blue32, u.Plug));
    }

    [Fact]
    public void Pdu_behind_ups_checks_plug_only()
    {
        RackDescription Of(ConnectorCode? plug, double rated) => Rack(
            [Feed("A", 32, socket: Blue32)], [Strip("raw", "A", ConnectorCode.C19, 2, 32, Blue32), Strip("safe", "A", amperes: rated, plug: plug)],
            Load("ups", 100, ConnectorCode.C20) with { Ups = new Ups
                {
                    RatedW = 3000, RatedVa = 3000, Feeds = ["safe"],
                    Outlets = [new UpsOutlet { Socket = ConnectorCode.C13, Count = 1 }, new UpsOutlet { Socket = Blue16, Count = 1 }],
                },
            });
        Passes(Of(ConnectorCode.C14, 10));
        var finding = Only(Of(ConnectorCode.C14, 16));
        Numbers(finding, 10, 16, "A");
        Assert.Equal(Blue16, Remedied(Of(ConnectorCode.C14, 16), finding).Pdus![1].Plug);
        ReportsMissing(Of(null, 16), "/pdus/1/plug");
    }

    [Theory]
    [InlineData(ConnectorCode.C19, ConnectorCode.C20, 16)]
    [InlineData(ConnectorCode.C13, ConnectorCode.C14, 10)]
    public void Pdu_behind_ups_gets_a_plug_for_an_outlet_of_the_ups(ConnectorCode outlet, ConnectorCode plug, double rated)
    {
        var rack = Rack(
            [Feed("A", 32, socket: Blue32)], [Strip("raw", "A", ConnectorCode.C19, 2, 32, Blue32), Strip("safe", "A", amperes: 16, plug: Blue16)],
            Load("ups", 100, ConnectorCode.C20) with
            {
                Ups = new Ups { RatedW = 3000, RatedVa = 3000, Feeds = ["safe"], Outlets = [new UpsOutlet { Socket = outlet, Count = 1 }] },
            });
        var unit = Remedied(rack, Only(rack)).Pdus![1];
        Assert.Equal((plug, rated), (unit.Plug, unit.RatedA));
    }

    [Fact]
    public void Pdu_plug_must_go_into_a_free_outlet_of_its_ups()
    {
        RackDescription Of(int count, params UpsOutlet[]? outlets) => Rack(
            [Feed("A", 32, socket: Blue32)],
            [
                Strip("raw", "A", ConnectorCode.C19, 2, 32, Blue32),
                .. Enumerable.Range(0, count).Select(i => Strip($"safe-{i}", "A", amperes: 16, plug: ConnectorCode.C20)),
            ],
            Load("ups", 100, ConnectorCode.C20) with
            {
                Ups = new Ups { RatedW = 3000, RatedVa = 3000, Feeds = [.. Enumerable.Range(0, count).Select(i => $"safe-{i}")], Outlets = outlets },
            });
        UpsOutlet[] one = [new() { Socket = ConnectorCode.C13, Count = 4 }, new() { Socket = ConnectorCode.C19, Count = 1 }];
        Passes(Of(1, one));
        Assert.Equal(["/pdus/2/plug", "/items/0/ups/outlets"], Only(Of(2, one)).Pointers);
        Assert.Equal("/pdus/1/plug", Only(Of(1, one[0])).Pointers[0]);
        ReportsMissing(Of(1, null), "/items/0/ups/outlets");
    }

    [Fact]
    public void Missing_data_is_listed_beside_certain_findings()
    {
        ReportsMissing(One(null, Blue16), "/pdus/0/plug");
        ReportsMissing(One(Blue16, null), "/supplies/0/socket");
        ReportsMissing(One(null, null), "/pdus/0/plug", "/supplies/0/socket");
        var report = Report(One(Blue16, null, 32));
        Numbers(Assert.Single(report.Findings), 16, 32, "A");
        Assert.Equal(["/supplies/0/socket"], Assert.Single(report.NotAssessed).Missing);
        Passes(Rack([Feed("A", socket: null)], []));
        Passes(Rack(null, null));
    }

    [Fact]
    public void Every_plug_and_socket_pair_follows_the_table()
    {
        foreach (var region in (Region[])[Region.Uk, Region.Na])
        {
            foreach (var plug in Enum.GetValues<ConnectorCode>())
            {
                foreach (var socket in Enum.GetValues<ConnectorCode>())
                {
                    var rack = One(plug, socket, 20, region);
                    rack = rack with { Pdus = [rack.Pdus![0] with { Groups = [.. rack.Pdus[0].Groups!.Select(g => g with { BreakerA = 16 })] }] };
                    if (PlugFit.Fits(plug, socket) && PlugFit.RatedA(plug, region == Region.Na) >= 20)
                    {
                        Passes(rack);
                    }
                    else
                    {
                        Remedied(rack, Only(rack));
                    }
                }
            }
        }
    }

    [Theory]
    [InlineData(1, Blue16, null, null)]
    [InlineData(2, Blue16, null, 2)]
    [InlineData(2, Blue16, "two", null)]
    [InlineData(2, ConnectorCode.Hardwired, null, null)]
    public void Several_pdus_on_one_supply_have_a_socket_each(int units, ConnectorCode plug, string? behindUps, int? sockets)
    {
        var ups = Load("ups", 100, ConnectorCode.C14) with { Ups = new Ups { RatedW = 3000, RatedVa = 3000, Feeds = behindUps is null ? null : [behindUps] } };
        var rack = Rack([Feed("A", socket: plug)], [.. new[] { Strip("one", "A", plug: plug), Strip("two", "A", plug: plug) }.Take(units)], ups);
        var assumed = Judge.Checker.Check(rack).Assumed().Where(a => a.Pointer == "/supplies/0/socket").Select(a => a.Value.Number);
        Assert.Equal((double?)sockets, assumed.SingleOrDefault());
    }
}
