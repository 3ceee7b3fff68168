using RackCheck.Model;
using RackCheck.Rules.Power;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.Wiring;

namespace RackCheck.Rules.Tests.Power;

public sealed class FaultDisconnectionTests : RuleTests<FaultDisconnection>
{
    private static RackDescription Rack(
        double? fault, double length = 20, double section = 2.5, BreakerCurve? curve = BreakerCurve.C, double? rcd = null, double rated = 16)
    {
        var supply = Mains(rated: rated) with
        {
            Breaker = new Breaker { Curve = curve, RatedA = rated },
            Cable = new SupplyCable { LengthM = length, CrossSectionMm2 = section }, FaultCurrentA = fault, RcdMa = rcd,
        };
        return Wired(supply).Units(Pdu("strip", "A", rated, Outlets("g1", 16))).With(Load("wave-pc", 300));
    }

    // BS 7671 411.4.4 (value from memory): 230 / (230/200 + 1.2 x 2 x 0.017241 x 20/2.5) = 155.3; curve C trips from 10 x 16 = 160.
    [Theory]
    [InlineData(200.0, BreakerCurve.C, 1)]
    [InlineData(207.9, BreakerCurve.C, 0)]
    [InlineData(200.0, BreakerCurve.B, 0)] // 5 x 16 = 80
    [InlineData(600.0, BreakerCurve.D, 1)] // 230 / (230/600 + 0.33103) = 321.9... against 20 x 16 = 320 at 20 m
    public void Fault_current_at_the_end_must_trip(double fault, BreakerCurve curve, int count) =>
        Assert.Equal(count, Findings(Rack(fault, curve: curve, length: curve == BreakerCurve.D ? 21 : 20)).Count);

    // IEC 60364-4-41 clause 414 (value from memory): extra-low voltage, up to 50 V AC.
    [Theory]
    [InlineData(50, 0)]
    [InlineData(51, 1)]
    public void Extra_low_voltage_is_not_checked(double voltage, int count)
    {
        var rack = Rack(200);
        Assert.Equal(count, Findings(rack with { Supplies = [rack.Supplies![0] with { VoltageV = voltage }] }).Count);
    }

    [Fact]
    public void Finding_has_numbers_and_remedies()
    {
        var rack = Rack(200);
        var finding = Only(rack);
        Numbers(finding, 155.298, 160, "A");
        Assert.Equal(30, Remedied(rack, finding).Supplies![0].RcdMa);
        Assert.Equal(BreakerCurve.B, Remedied(rack, finding, 1).Supplies![0].Breaker!.Curve);
    }

    // 230 / (230/235 + 1.2 x 2 x 0.017241 x 30/2.5) = 155.9, under 5 x 32; round a ring of 30 m, a quarter of it: 230 / (0.97872 + 0.12414) = 208.5.
    [Fact]
    public void Ring_has_a_quarter_of_its_length()
    {
        RackDescription Of(bool ring, double fault)
        {
            var rack = Rack(fault, length: 30, curve: BreakerCurve.B, rated: 32);
            return rack with { Supplies = [rack.Supplies![0] with { Cable = rack.Supplies[0].Cable! with { Ring = ring } }] };
        }

        Numbers(Only(Of(false, 235)), 155.904, 160, "A");
        Passes(Of(true, 235));
        Numbers(Only(Of(true, 170)), 155.713, 160, "A"); // 230 / (1.35294 + 0.12414)
        Assert.Contains("x 30 / 4 / 2.5", Only(Of(true, 170)).Calculation, StringComparison.Ordinal);
    }

    [Fact]
    public void Rcd_disconnects() => Passes(Rack(100, rcd: 30));

    [Fact]
    public void North_America_is_not_judged() => Passes(Rack(100).Region(Region.Na));

    // 0.8 ohm is 287.5 A: 230 / (0.8 + 0.33103) = 203.4, above 160 and below 320.
    [Fact]
    public void Fault_current_is_asked_for_only_where_it_decides()
    {
        Passes(Rack(null));
        ReportsMissing(Rack(null, curve: BreakerCurve.D), "/supplies/0/faultCurrentA");
        ReportsMissing(Rack(null, curve: null), "/supplies/0/breaker/curve", "/supplies/0/faultCurrentA");
    }

    // Were the rack in North America, the rule would not apply: a supply of 120 V alone does not say so, and the cable decides elsewhere.
    [Fact]
    public void Cable_is_asked_for_where_the_region_is_not_known()
    {
        var rack = Rack(1500, length: 60, curve: BreakerCurve.D);
        rack = rack with { Supplies = [rack.Supplies![0] with { VoltageV = 120, Cable = new SupplyCable { LengthM = 60 } }] };
        var asked = Judge.Check(rack).Questions.SelectMany(q => q.Pointers).ToArray();
        Assert.Contains("/site/region", asked);
        Assert.Contains("/supplies/0/cable/crossSectionMm2", asked);
    }
}
