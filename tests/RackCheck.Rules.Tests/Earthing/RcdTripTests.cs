using RackCheck.Model;
using RackCheck.Rules.Earthing;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.EarthRacks;

namespace RackCheck.Rules.Tests.Earthing;

public sealed class RcdTripTests : RuleTests<RcdTrip>
{
    private static RackDescription Rack(double? rcd, params double[] leakages) => Earthed().Fed(Mains(rcd: rcd)).Strips(Strip()).With(Leaking(leakages));

    [Theory]
    [InlineData(30, 9)] // BS 7671 531.3.2
    [InlineData(100, 30)] // BS 7671 531.3.2
    [InlineData(300, 90)] // BS 7671 531.3.2
    public void Three_tenths_of_the_rating_pass_and_more_is_a_warning(double rcd, double limit)
    {
        Passes(Rack(rcd, limit / 2, limit / 2));
        var finding = Only(Rack(rcd, limit / 2, (limit / 2) + 0.1));
        Assert.Equal((Severity.Warning, true), (finding.Severity, finding.Safety));
        Numbers(finding, limit + 0.1, limit, "mA");
        Assert.Equal(["/supplies/0/rcdMa"], finding.Pointers);
    }

    [Theory]
    [InlineData(0.75, 12)] // BS 7671 531.3.2
    [InlineData(1, 9)] // BS 7671 531.3.2
    [InlineData(3.5, 2)] // BS 7671 531.3.2
    public void So_many_items_go_on_an_rcd_of_30_mA(double each, int items)
    {
        Passes(Rack(30, [.. Enumerable.Repeat(each, items)]));
        Assert.StartsWith(
            FormattableString.Invariant($"{items + 1} x {each} = "),
            Only(Rack(30, [.. Enumerable.Repeat(each, items + 1)]).Strips(Strip(outlets: 20))).Calculation, StringComparison.Ordinal);
    }

    [Fact]
    public void Before_an_rcd_that_protects_people_is_given_up_the_rack_is_split()
    {
        var rack = Rack(30, 4.6, 4.5);
        var finding = Only(rack);
        Assert.Equal("4.6 + 4.5 = 9.1 > 30 / 100 x 30 = 9", finding.Calculation);
        Assert.Equal([30, 30], Remedied(rack, finding).Supplies!.Select(s => s.RcdMa!.Value));
        Assert.Equal(100, Remedied(rack, finding, 1).Supplies![0].RcdMa);
        Assert.Equal(["gauge-amp-1"], Remedied(rack, finding, 2).Items.Select(i => i.Id));
    }

    [Fact]
    public void A_coarser_one_is_replaced_by_the_next()
    {
        var rack = Rack(100, 15, 80).Earth(e => e with { MainConductorMm2 = 16 });
        Assert.Equal(500, Remedied(rack, Only(rack)).Supplies![0].RcdMa); // 95 over 90, under 150
    }

    [Theory]
    [InlineData(20, 1)]
    [InlineData(30, 0)]
    public void A_policy_may_be_stricter(double share, int count) =>
        Assert.Equal(count, Findings(Rack(30, 4.5, 4.5).Limit(Id, "leakageSharePercent", share)).Count);

    [Fact]
    public void Without_an_rcd_there_is_nothing_to_trip() => Passes(Rack(null, 40, 40).With(Leaking("wave-pc", 9, null)));

    [Fact]
    public void Unknown_leakage_is_listed()
    {
        ReportsMissing(Rack(30, 1).With(Leaking("wave-pc", 9, null)), "/items/1/power/leakageMa");
        ReportsMissing(Rack(30, 1) with { Pdus = null }, "/pdus");
        Assert.Single(Findings(Rack(30, 9.1).With(Leaking("wave-pc", 9, null))));
    }
}
