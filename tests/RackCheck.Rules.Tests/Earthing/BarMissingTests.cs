using RackCheck.Model;
using RackCheck.Rules.Earthing;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.EarthRacks;

namespace RackCheck.Rules.Tests.Earthing;

public sealed class BarMissingTests : RuleTests<BarMissing>
{
    private static RackDescription Bare => Earthed().WithoutBar();

    [Fact]
    public void Second_earth_requires_bar()
    {
        // Practice: bonding: three studs, four parts, the main conductor.
        var rack = Bare.Earth(e => e with { SecondaryEarth = true }).With(Studded("wave-pc", 1), Studded("gauge-amp", 3), Studded("flume-daq", 5));
        var finding = Only(rack);
        Numbers(finding, 0, 8, "terminals");
        Assert.Equal(["/cabinet/earthBar", "/earthing/secondaryEarth"], finding.Pointers);
        Assert.Equal("3 + 4 + 1 = 8 > 0", finding.Calculation);
        Assert.True(finding.Safety);
        Assert.Equal(new EarthBar { Terminals = 9, CrossSectionMm2 = 50 }, Remedied(rack, finding).Cabinet!.EarthBar);
    }

    [Fact]
    public void Earth_stud_requires_bar()
    {
        var finding = Only(Bare.With(Studded("wave-pc", 1), Studded("gauge-amp", 3)));
        Assert.Equal("gauge-amp", finding.MessageData["item"].Text);
        Assert.Equal(["/cabinet/earthBar", "/items/1/earthStud"], finding.Pointers);
    }

    [Theory]
    [InlineData(1.0, 0)] // bookkeeping: 10 x 1.0 = 10 mA
    [InlineData(1.01, 1)]
    public void Supply_leakage_above_10_mA_requires_bar(double each, int count)
    {
        var rack = Bare.Fed(Mains()).Strips(Strip()).With(Leaking([.. Enumerable.Repeat(each, 10)]));
        Assert.Equal(count, Findings(rack).Count);
        Assert.All(Findings(rack), f => Assert.Equal(("A", 10.1), (f.MessageData["supply"].Text, f.MessageData["leakageMa"].Number)));
        Assert.Equal(count, Findings(rack.Limit(Id, "highLeakageMa", 10.05)).Count);
        Assert.Single(Findings(rack.Limit(Id, "highLeakageMa", 9.9)));
    }

    [Fact]
    public void Bar_without_details_passes() => Passes(Earthed(null).With(Studded("wave-pc", 1)));

    [Fact]
    public void Rack_without_earthing_needs_no_bar() => Passes(Bare.With(Unit("wave-pc", 2).At(1) with { EarthStud = false }));

    [Fact]
    public void Unknown_leakage_is_missing_data()
    {
        var rack = Bare.Fed(Mains()).Strips(Strip()).With(Leaking("wave-pc", 1, null), Leaking("gauge-pc", 2, 1));
        ReportsMissing(rack, "/items/0/power/leakageMa");
        Assert.Empty(Report(rack.With(Studded("gauge-amp", 5))).NotAssessed);
    }

    [Fact]
    public void The_bar_is_no_thinner_than_the_main_conductor()
    {
        var rack = Bare.Earth(e => e with { MainConductorMm2 = 70 }).With(Studded("wave-pc", 1));
        Assert.Equal(70, Remedied(rack, Only(rack)).Cabinet!.EarthBar!.CrossSectionMm2);
    }
}
