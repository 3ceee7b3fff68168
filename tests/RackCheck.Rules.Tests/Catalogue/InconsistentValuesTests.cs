using RackCheck.Model;
using RackCheck.Rules.Catalogue;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Catalogue;

public sealed class InconsistentValuesTests : RuleTests<InconsistentValues>
{
    private static RackDescription With(Func<Item, Item> change) => EmptyRack().With(Unit("gauge-amp", 2).At(1), change(Unit("wave-pc", 4).At(10)));

    [Fact]
    public void Lowest_room_temperature_above_highest_is_warning()
    {
        var finding = Only(EmptyRack() with { Site = new Site { AmbientMinC = 30, AmbientMaxC = 24 } });
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal(["/site/ambientMinC", "/site/ambientMaxC"], finding.Pointers);
        Numbers(finding, 30, 24, "C");
        Passes(EmptyRack() with { Site = new Site { AmbientMinC = 24, AmbientMaxC = 24 } });
        Passes(EmptyRack() with { Site = new Site { AmbientMinC = 30 } });
    }

    [Fact]
    public void Minimum_inlet_above_maximum_is_warning()
    {
        var finding = Only(With(i => i with { MinInletC = 41, MaxInletC = 40 }));
        Assert.Equal(["/items/1/minInletC", "/items/1/maxInletC"], finding.Pointers);
        Numbers(finding, 41, 40, "C");
        Passes(With(i => i with { MinInletC = 40, MaxInletC = 40 }));
    }

    [Fact]
    public void Typical_power_above_rated_is_warning()
    {
        var finding = Only(With(i => i with { Power = new ItemPower { TypicalW = 310, RatedW = 300 } }));
        Assert.Equal(["/items/1/power/typicalW", "/items/1/power/ratedW"], finding.Pointers);
        Numbers(finding, 310, 300, "W");
        Passes(With(i => i with { Power = new ItemPower { TypicalW = 300, RatedW = 300 } }));
        Passes(With(i => i with { Power = new ItemPower { TypicalW = 300 } }));
    }

    [Fact]
    public void Ups_with_more_watts_than_volt_amperes_is_warning()
    {
        var finding = Only(With(i => i with { Ups = new Ups { RatedW = 3000, RatedVa = 2700 } }));
        Assert.Equal(["/items/1/ups/ratedW", "/items/1/ups/ratedVa"], finding.Pointers);
        Numbers(finding, 3000, 2700, "VA");
        Passes(With(i => i with { Ups = new Ups { RatedW = 3000, RatedVa = 3000 } }));
    }

    [Theory]
    [InlineData(ConnectorCode.Iec60309A32P3, 1, 1)]
    [InlineData(ConnectorCode.Iec60309A32P3, 3, 0)]
    [InlineData(ConnectorCode.Iec60309A32P1, 1, 0)]
    [InlineData(ConnectorCode.Iec60309A32P1, 3, 0)]
    [InlineData(ConnectorCode.Hardwired, 1, 0)]
    public void Three_phase_socket_on_single_phase_supply_is_warning(ConnectorCode socket, int phases, int count)
    {
        var supply = new Supply { Id = "A", VoltageV = 230, Phases = phases, RatedA = 32, Socket = socket };
        var findings = Findings(EmptyRack() with { Supplies = [supply] });
        Assert.Equal(count, findings.Count);
        Assert.All(findings, f => Assert.Equal(["/supplies/0/phases", "/supplies/0/socket"], f.Pointers));
    }

    [Fact]
    public void Each_pair_is_a_finding() => Assert.Equal(
        2, Findings(With(i => i with { MinInletC = 41, MaxInletC = 40, Power = new ItemPower { TypicalW = 310, RatedW = 300 } })).Count);
}
