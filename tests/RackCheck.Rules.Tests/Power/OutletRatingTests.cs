using RackCheck.Model;
using RackCheck.Rules.Power;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Survey.Power;
using static RackCheck.Testing.PowerRacks;

namespace RackCheck.Rules.Tests.Power;

public sealed class OutletRatingTests : RuleTests<OutletRating>
{
    private static readonly RuleDescriptor Facts = new OutletRating().Descriptor;

    private static RackDescription One(Item item, Region? region = null, double volts = 230, Pdu? unit = null) =>
        Rack([Feed("A", 32, volts, socket: Blue32)], [unit ?? Strip("strip", "A", amperes: 32, plug: Blue32)], item)
            with { Site = new Site { Region = region } };

    [Fact]
    public void C14_passes_at_10_A_and_fails_above()
    {
        // IEC 60320-1: C13 and C14 10 A. 2300 / 230 = 10, 2400 / 230 = 10.435.
        Passes(One(Load("heater", 2300, ConnectorCode.C14)));
        var rack = One(Load("heater", 2400, ConnectorCode.C14));
        var finding = Only(rack);
        Numbers(finding, 10.435, 10, "A");
        Assert.True(finding.Safety);
        Assert.Equal("/items/0/power/plugs/0", finding.Pointers[0]);
        Assert.Equal("2400 / (230 x 1) = 10.435 > 10", finding.Calculation);
        IsWhole(Facts, rack, finding);
        Assert.Equal([ConnectorCode.C20], Remedied(rack, finding).Items[0].Power!.Plugs!);
        Assert.Equal([ConnectorCode.C14, ConnectorCode.C14], Remedied(rack, finding, 1).Items[0].Power!.Plugs!);
    }

    [Fact]
    public void Current_within_the_tolerance_of_10_A_passes()
    {
        // 2300.2 / 230 = 10.0009; 2300.3 / 230 = 10.0013, shown as 10.001.
        Passes(One(Load("heater", 2300.2, ConnectorCode.C14)));
        Numbers(Only(One(Load("heater", 2300.3, ConnectorCode.C14))), 10.001, 10, "A");
    }

    [Theory]
    [InlineData(Region.Uk, 10)]
    [InlineData(Region.Eu, 10)]
    [InlineData(Region.Na, 15)]
    public void In_North_America_a_C14_is_rated_for_more(Region region, double rated)
    {
        // IEC 60320-1: 15 A in region na.
        Passes(One(Load("heater", rated * 208, ConnectorCode.C14), region, 208));
        Numbers(Only(One(Load("heater", (rated + 1) * 208, ConnectorCode.C14), region, 208)), rated + 1, rated, "A");
    }

    [Fact]
    public void Every_plug_passes_at_its_rating_in_every_region()
    {
        foreach (var region in Enum.GetValues<Region>())
        {
            foreach (var plug in Enum.GetValues<ConnectorCode>().Where(p => p != ConnectorCode.Hardwired && PlugFit.Fits(p, PlugFit.SocketFor(p))))
            {
                var lines = PlugFit.IsThreePhase(plug) ? 3 : 1;
                var rated = PlugFit.RatedA(plug, region == Region.Na);
                RackDescription Of(double amperes) =>
                    Rack(
                        [Feed("A", 200, phases: lines, socket: ConnectorCode.Hardwired)],
                        [Strip("strip", "A", PlugFit.SocketFor(plug), 8, 200, ConnectorCode.Hardwired)],
                        Load("heater", amperes * 230 * lines, plug)) with { Site = new Site { Region = region } };
                Passes(Of(rated));
                var over = Of(rated * 1.01);
                Assert.Equal(rated, Only(over).Limit!.Value);
                Remedied(over, Only(over));
                var far = Of(Math.Min(rated * 5, 100_000d / 230 / lines));
                Remedied(far, Only(far));
            }
        }
    }

    [Fact]
    public void Three_phases_share_the_load()
    {
        // 12000 W on three lines: 12000 / 3 / 230 = 17.391 A a line, over 16.
        var rack = Rack([Feed("A", 32, phases: 3, socket: ConnectorCode.Iec60309A32P3)], [Strip("strip", "A", Red16, 1, 32, ConnectorCode.Iec60309A32P3)],
            Load("pump", 12000, Red16));
        var finding = Only(rack);
        Numbers(finding, 17.391, 16, "A");
        IsWhole(Facts, rack, finding);
        Assert.Equal([ConnectorCode.Iec60309A32P3], Remedied(rack, finding).Items[0].Power!.Plugs!);
    }

    [Fact]
    public void Dual_fed_cord_carries_all_with_supply_lost()
    {
        // 2400 W: 5.217 A through each of two cords, 10.435 A through the one that is left.
        RackDescription Of(double watts) => Rack(
            [Feed("A"), Feed("B")], [Strip("strip-a", "A"), Strip("strip-b", "B")], Twin("wave-pc", watts, ConnectorCode.C14, ConnectorCode.C14));
        Passes(Of(2300));
        var finding = Only(Of(2400));
        Numbers(finding, 10.435, 10, "A");
        Assert.Contains("with a supply lost", finding.Message, StringComparison.Ordinal);
        Assert.EndsWith(", with a supply lost", finding.Calculation, StringComparison.Ordinal);
        IsWhole(Facts, Of(2400), finding);
        Assert.Equal([ConnectorCode.C20, ConnectorCode.C20], Remedied(Of(2400), finding).Items[0].Power!.Plugs!);
    }

    [Fact]
    public void Lower_rating_of_plug_and_socket_counts()
    {
        // A NEMA 5-15 plug goes into a 5-20 socket; value from memory.
        RackDescription Of(double amperes) => One(Load("heater", amperes * 120, ConnectorCode.Nema515), Region.Na, 120,
            Strip("strip", "A", ConnectorCode.Nema520, 2, 20, ConnectorCode.NemaL620));
        Passes(Of(15));
        Numbers(Only(Of(16)), 16, 15, "A");
        Assert.Equal([ConnectorCode.Nema520], Remedied(Of(16), Only(Of(16))).Items[0].Power!.Plugs!);
    }

    [Fact]
    public void Finding_keeps_fingerprint_when_values_change()
    {
        var (two, more) = (One(Load("heater", 5000, ConnectorCode.C14, ConnectorCode.C14)), One(Load("heater", 6000, ConnectorCode.C14, ConnectorCode.C14)));
        Assert.Equal(Only(two).Fingerprint, Only(more).Fingerprint);
    }

    [Fact]
    public void Rated_power_absent_is_missing_data()
    {
        ReportsMissing(One(Load("heater", null, ConnectorCode.C14)), "/items/0/power/ratedW");
        var item = Load("heater", null, ConnectorCode.C14);
        var report = Report(One(item with { Power = item.Power! with { TypicalW = 2400 } }));
        Numbers(Assert.Single(report.Findings), 10.435, 10, "A");
        Assert.Equal(["/items/0/power/ratedW"], Assert.Single(report.NotAssessed).Missing);
    }

    [Fact]
    public void Cord_without_outlet_is_not_checked() => Passes(One(Load("heater", 9000, ConnectorCode.C20)));

    [Fact]
    public void Current_above_every_plug_removes_item()
    {
        var rack = One(Load("furnace", 300 * 230, ConnectorCode.C14));
        Assert.Empty(Remedied(rack, Only(rack)).Items);
    }
}
