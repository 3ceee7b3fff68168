using RackCheck.Model;
using RackCheck.Rules.Cooling;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.CoolRacks;

namespace RackCheck.Rules.Tests.Cooling;

public sealed class ExhaustTemperatureTests : RuleTests<ExhaustTemperature>
{
    // ASHRAE Fundamentals: at 35 C and 1.1455 kg/m3, 1000 W warm 130 m3/h by 3600 x 1000 / (1.1455 x 1006 x 130) = 24.031 K.
    private static RackDescription Rack(double? bears, double flow = 130, double ambient = 35) =>
        Cool(Aired, Aired, ambient).With(Warm("wave-pc", 1, 1000, AirflowDirection.FrontToRear, flow)) with
        {
            Supplies = [Wiring.Mains()],
            Pdus = [Wiring.Pdu("pdu-a", "A", 16, Wiring.Outlets("g1", null)) with { MaxAmbientC = bears }],
        };

    [Fact]
    public void Hot_exhaust_air_at_a_PDU_is_a_warning()
    {
        var finding = Only(Rack(50));
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal(["/pdus/0", "/items"], finding.Pointers);
        Numbers(finding, 59.031, 50, "C");
        Assert.Equal("3600 x 1000 / (1.1455 x 1006 x 130) = 24.031; 35 + 24.031 = 59.031 > 50", finding.Calculation);
    }

    [Fact]
    public void At_the_limit_it_passes()
    {
        Passes(Rack(59.031));
        Assert.Single(Findings(Rack(59.02)));
    }

    [Fact]
    public void The_default_is_60_C_and_listed()
    {
        Passes(Rack(null));
        Assert.Single(Findings(Rack(null, 120)));
        Assert.Contains(Report(Rack(null)).Assumed(), a => a.Pointer == "/pdus/0/maxAmbientC" && a.Value.Number == 60);
    }

    [Fact]
    public void The_permitted_rise_does_not_count() => Passes(Rack(59.031).Cooled(c => c with { RiseK = 60 }));

    [Fact]
    public void Items_without_a_known_airflow_are_left_out()
    {
        Passes(Rack(59.031).With(Warm("flume-daq", 9, 5000, AirflowDirection.FrontToRear)));
        Passes(Rack(50) with { Items = [Warm("wave-pc", 1, 1000, AirflowDirection.RearToFront, 130)] });
    }

    [Fact]
    public void PDU_on_the_front_uprights_is_not_in_the_exhaust_air()
    {
        var rack = Rack(50);
        Passes(rack with { Pdus = [At(Face.Front)] });
        Assert.Single(Findings(rack with { Pdus = [At(Face.Rear)] }));

        Pdu At(Face face) => rack.Pdus![0] with { Mounting = PduMounting.Horizontal, Position = new Position { U = 20, Face = face } };
    }

    [Fact]
    public void A_closed_cabinet_adds_its_own_rise() =>

        // IEC TR 60890, sheet steel: 1000 / (5.5 x 6.6) = 27.55 K above 20 C, and 22.84 K through the item at 20 C.
        Assert.Equal(70.41, Only(Rack(60, ambient: 20).Cabinet(c => c with { FrontDoor = Closed, RearDoor = Closed })).Actual!.Value, 0.01);

    [Fact]
    public void Closed_cabinet_over_an_inlet_limit_is_left_to_sealed_rise()
    {
        // 47.55 C at the inlet, as above.
        var rack = Rack(60, ambient: 20).Cabinet(c => c with { FrontDoor = Closed, RearDoor = Closed });
        Passes(rack with { Items = [rack.Items[0] with { MaxInletC = 47 }] });
        Assert.Single(Findings(rack with { Items = [rack.Items[0] with { MaxInletC = 48 }] }));
    }

    [Fact]
    public void Where_sealed_rise_is_switched_off_the_exhaust_is_judged()
    {
        var rack = Rack(60, ambient: 20).Cabinet(c => c with { FrontDoor = Closed, RearDoor = Closed });
        Assert.Single(Findings(rack with
        {
            Items = [rack.Items[0] with { MaxInletC = 47 }],
            Policy = new Policy { Rules = new Dictionary<string, RulePolicy> { ["cooling.sealed-rise"] = new() { Severity = PolicySeverity.Off } } },
        }));
    }

    [Fact]
    public void A_cooler_room_is_a_remedy()
    {
        var rack = Rack(50);
        Assert.Equal(25, Remedied(rack, Only(rack)).Site!.AmbientMaxC); // 35 - 9.03, rounded down
    }

    // IEC 60320-1 (values from memory): cords with C13 for cold conditions, 70 C; with C15 for hot conditions, 120 C.
    private static RackDescription Corded(double ambient, double flow, params ConnectorCode[] plugs)
    {
        var rack = Rack(null, flow, ambient) with { Supplies = null, Pdus = null };
        return rack with { Items = [rack.Items[0] with { Power = new ItemPower { Plugs = plugs } }] };
    }

    [Fact]
    public void Cords_in_hot_exhaust_are_a_warning()
    {
        var finding = Only(Corded(45.5, 130, ConnectorCode.C14, ConnectorCode.C16));
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal(["/items/0/power/plugs"], finding.Pointers);
        Numbers(finding, 70.348, 70, "C"); // 3600 x 1000 / (1.1078 x 1006 x 130) = 24.848
        Passes(Corded(45.1, 130, ConnectorCode.C14)); // 69.917
    }

    [Fact]
    public void Cords_for_hot_conditions_bear_120_C()
    {
        Passes(Corded(60, 60, ConnectorCode.C16)); // 60 + 3600 x 1000 / (1.0595 x 1006 x 60) = 116.29
        Numbers(Only(Corded(60, 55, ConnectorCode.C16)), 121.41, 120, "C");
        Assert.Equal([70, 120], Findings(Corded(60, 55, ConnectorCode.C16, ConnectorCode.C20)).Select(f => f.Limit!.Value).Order());
        Passes(Corded(60, 55, ConnectorCode.Hardwired));
        Passes(Corded(60, 55));
    }

    // IEC TR 60890 values: 400 W on 6.6 m2, nothing stirs: 400 / (3.4 x 6.6) = 17.83 K, 1.44 times as much at the top.
    [Fact]
    public void PDU_in_a_still_closed_cabinet_is_in_the_air_at_its_top()
    {
        RackDescription Still(double? bears, AirflowDirection direction = AirflowDirection.None)
        {
            var rack = Rack(bears, ambient: 30).Cabinet(c => c with { FrontDoor = Closed, RearDoor = Closed });
            return rack with { Items = [Warm("probe-amp", 1, 400, direction)] };
        }

        var finding = Only(Still(55));
        Assert.StartsWith("The air in the closed cabinet reaches", finding.Message, StringComparison.Ordinal);
        Numbers(finding, 55.675, 55, "C");
        Passes(Still(55.675));
        Passes(Still(42, AirflowDirection.FrontToRear)); // stirred: 400 / (5.5 x 6.6) = 11.02 K
        Assert.Single(Findings(Still(41, AirflowDirection.FrontToRear)));
        Passes(Still(20) with { Cabinet = Rack(20).Cabinet });
    }
}
