using RackCheck.Model;
using RackCheck.Rules.Earthing;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.EarthRacks;

namespace RackCheck.Rules.Tests.Earthing;

public sealed class ConductorSizeTests : RuleTests<ConductorSize>
{
    private static RackDescription Rack(Supply supply, double? lead = 35, double? main = 35) =>
        Earthed(main: main).Fed(supply).With(Studded("paddle-drive", 1, lead));

    // IEC 60364-5-54 adiabatic, BS 7671 411.4.4 loop: 230 / (230 / 3000 + 1.2 x 2 x 0.017241 x 10 / 16) = 2243.286 A at the end of the cable.
    [Fact]
    public void Fault_of_3000_A_for_0_1_s_needs_more_than_4_mm2()
    {
        var rack = Rack(Mains(cable: 16, fault: 3000, seconds: 0.1), 4);
        var finding = Only(rack);
        Numbers(finding, 4, 4.961, "mm2");
        Assert.Equal(["/items/0/earthLead/crossSectionMm2", "/supplies/0/faultCurrentA", "/supplies/0/disconnectionTimeS"], finding.Pointers);
        Assert.Equal(
            "230 / (230 / 3000 + 1.2 x 2 x 0.017241 x 10 / 16) = 2243.286; sqrt(2243.286^2 x 0.1) / 143 = 4.961 > 4", finding.Calculation);
        Assert.Equal(6, Remedied(rack, finding).Items[0].EarthLead!.CrossSectionMm2);

        // (4 x 143 / 2243.286)^2 = 0.065 s is too short for the formula.
        Assert.Empty(Remedied(rack, finding, 1).Items);
        Passes(Rack(Mains(cable: 16, fault: 3000, seconds: 0.1), 4.97));
    }

    [Fact]
    public void Disconnection_time_is_shortened_to_what_the_lead_bears()
    {
        // (6 x 143 / 2243.286)^2 = 0.146 s
        var rack = Rack(Mains(cable: 16, fault: 3000, seconds: 0.4), 6);
        Assert.Equal(0.146, Remedied(rack, Only(rack), 1).Supplies![0].DisconnectionTimeS);
    }

    [Fact]
    public void Fault_current_is_that_at_the_end_of_the_cable()
    {
        // 5500 A at the origin would need 12.163 mm2. 230 / (230 / 5500 + 1.2 x 2 x 0.017241 x 15 / 6) = 1583.3 A, which needs 3.501 mm2.
        var far = Mains(cable: 6, fault: 5500, seconds: 0.1) with { Cable = new SupplyCable { LengthM = 15, CrossSectionMm2 = 6 } };
        Passes(Rack(far, 10, 10));
        Passes(Rack(far, 3.51, 10));
        Numbers(Only(Rack(far, 3.5, 10)), 3.5, 3.501, "mm2");

        // Without its length the current at the origin is the upper limit.
        Numbers(Only(Rack(far with { Cable = new SupplyCable { CrossSectionMm2 = 6 } }, 16, 10)), 10, 12.163, "mm2");
    }

    [Fact]
    public void Disconnection_time_under_0_1_s_is_not_assessed()
    {
        // The formula holds from 0.1 s (IEC 60364-5-54, value from memory); up to 32 A of curve C the let-through energy is limited.
        var unlimited = Mains(rated: 63, cable: 16, fault: 9900, seconds: 0.01);
        var report = Report(Rack(unlimited, 2.5, 16));
        Assert.Empty(report.Findings);
        Assert.Single(report.NotAssessed);
        Passes(Rack(Mains(fault: 9900, seconds: 0.01), 2.5, 16));
        Assert.Single(Findings(Rack(unlimited with { DisconnectionTimeS = 0.1 }, 2.5, 240)));
    }

    [Fact]
    public void Disconnection_time_over_5_s_is_stated() => Assert.Contains(
        "6 > 5, where the conductor also", Only(Rack(Mains(fault: 6000, seconds: 6), 2.5, main: 240)).Calculation, StringComparison.Ordinal);

    [Theory]
    [InlineData(6, 6, "6 <= 16, so equal to the line conductor: 6 > ")] // IEC 60364-5-54 table 54.2
    [InlineData(16, 16, "16 <= 16, so equal to the line conductor: 16 > ")]
    [InlineData(25, 16, "16 < 25 <= 35, so equal to the lower bound: 16 > ")]
    [InlineData(50, 25, "50 / 2 = 25 > ")]
    public void Line_conductor_sets_earth_conductor_size(double line, double least, string calculation)
    {
        var finding = Only(Rack(Mains(cable: line), main: least - 0.1));
        Numbers(finding, least - 0.1, least, "mm2");
        Assert.Equal(["/earthing/mainConductorMm2", "/supplies/0/cable/crossSectionMm2"], finding.Pointers);
        Assert.StartsWith(calculation, finding.Calculation, StringComparison.Ordinal);

        // A lead follows the item's own cord.
        Passes(Rack(Mains(cable: line), 6, least));
    }

    [Fact]
    public void Unprotected_conductor_needs_larger_size()
    {
        // IEC 60364-5-54: 2.5 protected, 4 unprotected.
        var closed = Rack(Mains(cable: 1.5), 2.5);
        Passes(closed);
        Numbers(Only(Rack(Mains(cable: 1.5), 2.4)), 2.4, 2.5, "mm2");
        foreach (var open in new[] { closed.Cabinet(c => c with { SidePanels = false }), closed.Doors(DoorStyle.None, DoorStyle.Solid),
            closed.Doors(DoorStyle.Solid, DoorStyle.None) })
        {
            Numbers(Only(open), 2.5, 4, "mm2");
            Assert.Equal(4, Remedied(open, Only(open)).Items[0].EarthLead!.CrossSectionMm2);
            Assert.Equal(["/items/0/earthLead/crossSectionMm2"], Only(open).Pointers);
        }
    }

    [Fact]
    public void Policy_sets_minimum_size()
    {
        Numbers(Only(Rack(Mains(), 6).Limit(Id, "protectedMm2", 10)), 6, 10, "mm2");
        Passes(Rack(Mains(), 6).Limit(Id, "unprotectedMm2", 10));
    }

    [Fact]
    public void Main_conductor_is_checked_for_all_supplies()
    {
        var rack = Rack(Mains(cable: 25), 25, 10) with { Pdus = [Strip()] };
        rack = rack.Fed(Mains(), Mains("B", cable: 25));
        var finding = Only(rack.Earth(e => e with { MainConductorMm2 = 10 }));
        Assert.Equal(["/earthing/mainConductorMm2", "/supplies/1/cable/crossSectionMm2"], finding.Pointers);
        Numbers(finding, 10, 16, "mm2");
        Assert.Equal(16, Remedied(rack, finding).Earthing!.MainConductorMm2);
    }

    [Fact]
    public void Lead_is_checked_for_supplies_of_its_item()
    {
        var item = Studded("paddle-drive", 1, 4) with { Power = new ItemPower { RatedW = 100, LeakageMa = 1, InrushA = 1, Plugs = [ConnectorCode.C14] } };
        var rack = Earthed(main: 16).Fed(Mains(), Mains("B", cable: 16, fault: 3000, seconds: 0.1)).Strips(Strip(), Strip("spare", "B")).With(item);
        Passes(rack with { Connections = [new Connection { Item = "paddle-drive", Pdu = "strip", Group = "g1" }] });
        Assert.Single(Findings(rack with { Connections = [new Connection { Item = "paddle-drive", Pdu = "spare", Group = "g1" }] }));
        Assert.Single(Findings(rack with { Pdus = null }));
    }

    [Fact]
    public void What_is_absent_is_asked_for()
    {
        ReportsMissing(Rack(Mains(), null), "/items/0/earthLead/crossSectionMm2");
        ReportsMissing(Rack(Mains(), main: null), "/earthing/mainConductorMm2");
        ReportsMissing(Rack(Mains(rated: 63, cable: 16, fault: 1000)), "/supplies/0/disconnectionTimeS");
        ReportsMissing(Rack(Mains(rated: 63, cable: 16, seconds: 1)), "/supplies/0/faultCurrentA");
        Passes(Rack(Mains(fault: 1000)));
        ReportsMissing(Rack(Mains(cable: null)), "/supplies/0/cable/crossSectionMm2");
        Passes(Rack(Mains(cable: null, fault: 1000, seconds: 0.1)));
        ReportsMissing(Rack(Mains()) with { Supplies = null }, "/supplies");

        // IEC 60898-1 energy limitation class 3 (value from memory): sqrt(90 000) / 143 = 2.1 mm2 up to 32 A of curve B or C.
        var large = Mains(rated: 63, cable: 16);
        ReportsMissing(Rack(large), "/supplies/0/faultCurrentA");
        Passes(Rack(Mains(rated: 32)));

        // A curve that is not given may be D. 6 kA for 0.4 s need 26.5 mm2, 300 A for 0.4 s 1.3 mm2: sqrt(I^2 t) / 143.
        var uncurved = Mains(rated: 32) with { Breaker = new Breaker { RatedA = 32 } };
        ReportsMissing(Rack(uncurved, 16, 16), "/supplies/0/breaker/curve");
        ReportsMissing(Rack(uncurved with { Breaker = null }, 16, 16), "/supplies/0/breaker/curve");
        Passes(Rack(uncurved));
        Passes(Rack(uncurved with { FaultCurrentA = 300 }, 16, 16));
        Passes(Rack(uncurved with { FaultCurrentA = 1000, DisconnectionTimeS = 0.1 }, 16, 16));
    }

    // NEC 250.122 (value from memory): 15 A 2.1, 20 A 3.3, 30 to 60 A 5.3 mm2.
    [Theory]
    [InlineData(15, 2.5, 0)]
    [InlineData(20, 3.2, 1)]
    [InlineData(20, 3.3, 0)]
    [InlineData(60, 5.2, 1)]
    [InlineData(60, 5.3, 0)]
    public void Breaker_decides_in_North_America(double breaker, double lead, int count) =>
        Assert.Equal(count, Findings(Rack(Mains(rated: breaker), lead) with { Site = new Site { Region = Region.Na } }).Count);

    [Fact]
    public void Rack_without_earthing_is_not_checked() => Passes(Earthed(main: null).WithoutBar().Fed(Mains(cable: null)));

    [Fact]
    public void Fault_above_every_conductor_shortens_disconnection()
    {
        // 300 000 A for 5 s: sqrt(300000^2 x 5) / 143 = 4691 mm2; with 1000 mm2 (143000 / 300000)^2 = 0.227 s. The rack is at the origin of the cable.
        var rack = Earthed(main: 70).Fed(Mains(fault: 300_000, seconds: 5) with { Cable = new SupplyCable { LengthM = 0, CrossSectionMm2 = 2.5 } });
        var remedied = Remedied(rack, Only(rack));
        Assert.Equal((1000, 0.227), (remedied.Earthing!.MainConductorMm2, remedied.Supplies![0].DisconnectionTimeS));
    }
}
