using RackCheck.Model;
using RackCheck.Rules.Power;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.PowerRacks;

namespace RackCheck.Rules.Tests.Power;

public sealed class NoSourceTests : RuleTests<NoSource>
{
    private static Item[] Loads(int count) => [.. Enumerable.Range(0, count).Select(i => Load($"gauge-{i:00}", 100, ConnectorCode.C14))];

    private static RackDescription Short(int cords, int outlets) => Rack([Feed("A")], [Strip("strip", "A", count: outlets)], Loads(cords));

    [Fact]
    public void Industrial_outlet_is_not_added_to_a_smaller_supply()
    {
        var rack = Rack([Feed("A", 16, socket: Blue16)], [Strip("strip", "A")], Load("ups", 1000, Blue32));
        Assert.Equal((2, 32), (Remedied(rack, Only(rack)).Supplies!.Count, Remedied(rack, Only(rack)).Supplies![1].RatedA));
    }

    [Fact]
    public void Six_cords_on_four_outlets_miss_two()
    {
        // Worked by hand: 6 - 4 = 2.
        var rack = Short(6, 4);
        var finding = Only(rack);
        Numbers(finding, 4, 6, "outlets");
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Equal(2, finding.Pointers.Count);
        Assert.Equal("C13", finding.MessageData["socket"].Text);
        Assert.Equal(2, finding.MessageData["missing"].Number);
        IsWhole(new NoSource().Descriptor, rack, finding);
        Assert.Equal(6, Remedied(rack, finding).Pdus!.Sum(u => u.Groups!.Sum(g => g.Outlets.Sum(o => o.Count))));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    [InlineData(20)]
    public void As_many_outlets_as_cords_pass(int cords)
    {
        Passes(Short(cords, cords));
        Numbers(Only(Short(cords + 1, cords)), cords, cords + 1, "outlets");
    }

    [Fact]
    public void Hot_inlet_gets_its_usual_cord()
    {
        // IEC 60320-1 (value from memory): a C16 inlet takes a C15 connector; the cord's plug at the outlet is a C14.
        var rack = Rack([Feed("A")], [Strip("strip", "A", count: 4)], Load("hot", 300, ConnectorCode.C16));
        Assert.Equal([ConnectorCode.C14], Remedied(rack, Only(rack)).Items[0].Power!.Plugs!);
    }

    [Fact]
    public void Named_item_is_independent_of_item_order()
    {
        var rack = Short(6, 4);
        var turned = rack with { Items = [.. rack.Items.Reverse()] };
        var (one, other) = (Only(rack), Only(turned));
        Assert.Equal(one.Fingerprint, other.Fingerprint);
        Assert.Equal(one.Message, other.Message);
    }

    [Fact]
    public void Each_plug_type_has_its_own_finding()
    {
        var rack = Rack([Feed("A")], [Strip("strip", "A", count: 1)], Load("a", 100, ConnectorCode.C14), Load("b", 100, ConnectorCode.C14),
            Load("c", 100, ConnectorCode.C20));
        var findings = Findings(rack);
        Assert.Equal(["C14 cords", "C20 cords"], findings.Select(f => f.Subject).Order());
        Numbers(findings.Single(f => f.Subject == "C20 cords"), 0, 1, "outlets");
        Assert.All(findings, f => Remedied(rack, f));
    }

    [Fact]
    public void Competing_plugs_are_matched_as_a_whole()
    {
        // IEC 60320-1: C14 goes into C13 and C15, C16 into C15 alone.
        var strip = Strip("strip", "A", ConnectorCode.C13, 1).With("hot", ConnectorCode.C15, 1);
        Passes(Rack([Feed("A")], [strip], Load("a", 100, ConnectorCode.C14), Load("b", 100, ConnectorCode.C16)));
        Assert.Single(Findings(Rack([Feed("A")], [strip], Load("a", 100, ConnectorCode.C14), Load("b", 100, ConnectorCode.C16),
            Load("c", 100, ConnectorCode.C16))));
    }

    [Fact]
    public void Rack_without_pdu_gets_supply_with_pdu()
    {
        var rack = Rack(null, [], Loads(3));
        var finding = Only(rack);
        Numbers(finding, 0, 3, "outlets");
        var remedied = Remedied(rack, finding);
        Assert.Equal((230, 16, Blue16), (remedied.Supplies!.Single().VoltageV, remedied.Supplies!.Single().RatedA, remedied.Supplies!.Single().Socket));
        Assert.Equal(PduMounting.Vertical, remedied.Pdus!.Single().Mounting);

        // North America: values from memory, 208 V and L6-20.
        var american = rack with { Site = new Site { Region = Region.Na } };
        remedied = Remedied(american, Only(american));
        Assert.Equal((208, 20, ConnectorCode.NemaL620),
            (remedied.Supplies!.Single().VoltageV, remedied.Supplies!.Single().RatedA, remedied.Supplies!.Single().Socket));
    }

    [Fact]
    public void A_redundant_item_gets_two_supplies()
    {
        var rack = Rack(null, [], Twin("wave-pc", 300, ConnectorCode.C14, ConnectorCode.C14));
        var remedied = Remedied(rack, Only(rack));
        Assert.Equal(2, remedied.Supplies!.Count);
    }

    [Fact]
    public void Supply_without_pdu_gets_pdu_with_matching_plug()
    {
        var rack = Rack([Feed("A", 32, socket: Blue32)], [], Loads(3));
        var unit = Remedied(rack, Only(rack)).Pdus!.Single();
        Assert.Equal(("A", Blue32, 32), (unit.Supply, unit.Plug, unit.RatedA));
    }

    [Fact]
    public void Three_phase_plug_needs_three_phases()
    {
        var one = Rack([Feed("A")], [Strip("strip", "A", Red16, 1)], Load("pump", 3000, Red16));
        var finding = Only(one);
        Assert.Contains("three-phase supply", finding.Message, StringComparison.Ordinal);
        IsWhole(new NoSource().Descriptor, one, finding);
        Assert.Contains(Remedied(one, finding).Supplies!, s => s.Phases == 3);
        Passes(Rack([Feed("A", phases: 3, socket: Red16)], [Strip("strip", "A", Red16, 1, plug: Red16)], Load("pump", 3000, Red16)));
    }

    [Theory]
    [InlineData(230, 240, true)]
    [InlineData(208, 240, true)]
    [InlineData(208, 260, true)]
    [InlineData(208, 260.1, false)]
    [InlineData(200, 160, true)]
    [InlineData(200, 159.9, false)]
    [InlineData(230, 120, false)]
    [InlineData(120, 230, false)]
    public void Voltage_ratio_from_0_8_to_1_25_passes(double mains, double own, bool served)
    {
        // Common practice, no source: 0.8 x 200 = 160, 1.25 x 208 = 260.
        var rack = Rack([Feed("A", volts: mains)], [Strip("strip", "A")], Load("gauge-amp", 100, own, ConnectorCode.C14));
        if (served)
        {
            Passes(rack);
            return;
        }

        var finding = Only(rack);
        Assert.Equal(own, finding.MessageData["voltageV"].Number);
        Assert.Contains("no outlet supplies that voltage", finding.Message, StringComparison.Ordinal);
        IsWhole(new NoSource().Descriptor, rack, finding);
        Assert.Contains(Remedied(rack, finding).Supplies!, s => s.VoltageV == own);
    }

    [Theory]
    [InlineData(ConnectorCode.C13, ConnectorCode.C14)]
    [InlineData(ConnectorCode.C19, ConnectorCode.C20)]
    [InlineData(ConnectorCode.C15, ConnectorCode.C16)]
    [InlineData(ConnectorCode.Cee73, ConnectorCode.Cee77)]
    public void Socket_given_as_plug_is_corrected(ConnectorCode given, ConnectorCode plug)
    {
        var rack = Rack([Feed("A")], [Strip("strip", "A", given)], Load("gauge-amp", 100, given));
        var finding = Only(rack);
        IsWhole(new NoSource().Descriptor, rack, finding);
        Assert.Equal([plug], Remedied(rack, finding).Items[0].Power!.Plugs!);
    }

    [Fact]
    public void Every_plug_gets_an_outlet_by_the_first_remedy()
    {
        foreach (var plug in Enum.GetValues<ConnectorCode>())
        {
            foreach (var region in Enum.GetValues<Region>())
            {
                var rack = Rack([], [], Load("gauge-amp", 100, plug)) with { Site = new Site { Region = region } };
                Remedied(rack, Only(rack));
            }
        }
    }

    [Theory]
    [InlineData(1000)]
    [InlineData(2000)]
    public void Outlets_are_not_added_to_a_fully_loaded_pdu(double watts)
    {
        // 18 cords that find no outlet, of 1000 W: 18000 / 230 = 78 A on a unit of 16 A; of 2000 W two are too much for it already.
        var rack = Rack([Feed("A")], [Strip("strip", "A", count: 2)],
            [.. Enumerable.Range(0, 20).Select(i => Load($"heater-{i:00}", watts, ConnectorCode.C14))]);
        var report = Judge.Checker.Check(rack);
        var finding = report.Findings.Single(f => f.Rule == "power.no-source");
        Assert.NotEmpty(finding.Remedies);
        for (var i = 0; i < finding.Remedies.Count; i++)
        {
            Assert.Equal(2, Remedied(rack, finding, i).Pdus![0].Groups![0].Outlets.Sum(o => o.Count));
        }
    }

    [Fact]
    public void Plugs_absent_are_missing_data_with_power_given()
    {
        var silent = Unit("gauge-amp", 2);
        ReportsMissing(Rack(null, null, Load("wave-pc", 100, ConnectorCode.C14)), "/pdus");
        ReportsMissing(Rack([Feed("A")], [Strip("strip", "A")], silent with { Power = new ItemPower { RatedW = 100 } }), "/items/0/power/plugs");
        ReportsMissing(Rack([Feed("A")], [Strip("strip", "A")], silent with { Category = ItemCategory.Instrument }), "/items/0/power");
        ReportsMissing(Rack([Feed("A")], [Strip("strip", "A")], silent with { Ups = new Ups() }), "/items/0/power");
        Passes(Rack([Feed("A")], [Strip("strip", "A")], silent));
        Passes(Rack([Feed("A")], [Strip("strip", "A")], silent with { Power = new ItemPower { RatedW = 0 } }));
        Passes(Rack([Feed("A")], [Strip("strip", "A")], Load("gauge-amp", 100)));
    }

    [Fact]
    public void Description_without_power_has_one_entry()
    {
        var rack = Rack(null, null, Unit("wave-pc", 2) with { Category = ItemCategory.Computer },
            Unit("gauge-amp", 2) with { Category = ItemCategory.Instrument });
        ReportsMissing(rack, "/pdus");
        Passes(Rack(null, null, Unit("wave-pc", 2)));
    }

    [Fact]
    public void Shortage_is_found_despite_missing_data()
    {
        var report = Report(Rack([Feed("A")], [Strip("strip", "A", count: 1)],
            [.. Loads(2), Unit("wave-pc", 2) with { Power = new ItemPower { RatedW = 100 } }]));
        Numbers(Assert.Single(report.Findings), 1, 2, "outlets");
        Assert.Equal(["/items/2/power/plugs"], Assert.Single(report.NotAssessed).Missing);
    }
}
