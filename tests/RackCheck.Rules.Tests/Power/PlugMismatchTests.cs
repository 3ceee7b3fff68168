using RackCheck.Model;
using RackCheck.Rules.Power;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Survey.Power;
using RackCheck.Testing;
using static RackCheck.Testing.PowerRacks;

namespace RackCheck.Rules.Tests.Power;

public sealed class PlugMismatchTests : RuleTests<PlugMismatch>
{
    private static readonly RuleDescriptor Facts = new PlugMismatch().Descriptor;

    private static RackDescription Given(Pdu unit, Item[] items, params Connection[] connections) =>
        Rack([Feed("A")], [unit], items) with { Connections = connections };

    [Fact]
    public void Plug_without_matching_outlet_moves()
    {
        var rack = Given(
            Strip("strip", "A").With("large", ConnectorCode.C19, 1), [Load("wave-pc", 300, ConnectorCode.C20)], To("wave-pc", 0, "strip"));
        var finding = Only(rack);
        Assert.Equal(["/connections/0", "/pdus/0/groups/0", "/items/0/power/plugs/0"], finding.Pointers);
        Assert.Null(finding.Actual);
        IsWhole(Facts, rack, finding);
        Assert.Equal("large", Remedied(rack, finding).Connections!.Single().Group);
    }

    [Fact]
    public void No_other_outlet_changes_plug_or_pdu()
    {
        var rack = Given(Strip("strip", "A"), [Load("wave-pc", 300, ConnectorCode.C20)], To("wave-pc", 0, "strip"));
        var finding = Only(rack);
        Assert.Equal([ConnectorCode.C14], Remedied(rack, finding).Items[0].Power!.Plugs!);
        Assert.Contains(Remedied(rack, finding, 1).Pdus![0].Groups![0].Outlets, o => o.Socket == ConnectorCode.C19);
    }

    [Fact]
    public void Plug_is_not_changed_to_lower_rating_than_load()
    {
        // 3000 / 230 = 13.04 A are over the 10 A of a C14 (IEC 60320-1).
        var rack = Given(Strip("strip", "A"), [Load("wave-pc", 3000, ConnectorCode.C20)], To("wave-pc", 0, "strip"));
        Assert.Equal([ConnectorCode.C20], Remedied(rack, Only(rack)).Items[0].Power!.Plugs!);
    }

    [Fact]
    public void Cords_up_to_outlet_count_pass()
    {
        Item[] items = [.. Enumerable.Range(0, 3).Select(i => Load($"gauge-{i}", 100, ConnectorCode.C14))];
        Passes(Given(Strip("strip", "A", count: 3), items, To("gauge-0", 0, "strip"), To("gauge-1", 0, "strip"), To("gauge-2", 0, "strip")));

        var rack = Given(Strip("strip", "A", count: 2).With("spare", ConnectorCode.C13, 1), items, To("gauge-0", 0, "strip"), To("gauge-1", 0, "strip"),
            To("gauge-2", 0, "strip"));
        var finding = Only(rack);
        Numbers(finding, 3, 2, "outlets");
        Assert.Equal("/connections/2", finding.Pointers[0]);
        IsWhole(Facts, rack, finding);
        Assert.Equal("spare", Remedied(rack, finding).Connections![2].Group);
    }

    [Fact]
    public void Outlet_used_by_another_plug_type_is_taken()
    {
        // C14 goes into C15 (IEC 60320-1), where it leaves none for the C16.
        var rack = Given(
            Strip("strip", "A", ConnectorCode.C15, 1), [Load("gauge-amp", 100, ConnectorCode.C14), Load("heater", 100, ConnectorCode.C16)],
            To("gauge-amp", 0, "strip"), To("heater", 0, "strip"));
        Numbers(Only(rack), 2, 1, "outlets");
    }

    [Fact]
    public void A_plug_given_two_outlets_keeps_one()
    {
        var rack = Given(
            Strip("strip", "A").With("other", ConnectorCode.C13, 1), [Load("wave-pc", 300, ConnectorCode.C14)], To("wave-pc", 0, "strip"),
                To("wave-pc", 0, "strip", "other"));
        var finding = Only(rack);
        Numbers(finding, 2, 1, "outlets");
        Assert.Equal(["/connections/1", "/connections/0"], finding.Pointers);
        IsWhole(Facts, rack, finding);
        Assert.Equal("g", Remedied(rack, finding).Connections!.Single().Group);
        Assert.Equal("other", Remedied(rack, finding, 1).Connections!.Single().Group);
        Passes(rack with { Connections = [rack.Connections![0]] });
    }

    [Fact]
    public void The_same_connection_written_twice_is_a_plug_with_two_outlets()
    {
        var rack = Given(Strip("strip", "A"), [Load("wave-pc", 300, ConnectorCode.C14)], To("wave-pc", 0, "strip"), To("wave-pc", 0, "strip"));
        Assert.Single(Remedied(rack, Only(rack)).Connections!);
    }

    [Fact]
    public void Three_phase_plug_on_single_phase_supply_is_error()
    {
        var rack = Given(Strip("strip", "A", Red16, 1), [Load("pump", 3000, Red16)], To("pump", 0, "strip"));
        var finding = Only(rack);
        IsWhole(Facts, rack, finding);
        Assert.Contains(Remedied(rack, finding).Supplies!, s => s.Phases == 3);
        Passes(Rack([Feed("A", phases: 3, socket: Red16)], [Strip("strip", "A", Red16, 1, plug: Red16)], Load("pump", 3000, Red16))
            with { Connections = [To("pump", 0, "strip")] });
    }

    [Theory]
    [InlineData(230, 120, false)]
    [InlineData(200, 160, true)]
    [InlineData(200, 250, true)]
    public void Outlet_voltage_must_suit_the_item(double mains, double own, bool served)
    {
        // Common practice, no source: 0.8 to 1.25 times.
        var rack = Rack([Feed("A", volts: mains)], [Strip("strip", "A")], Load("gauge-amp", 100, own, ConnectorCode.C14))
            with { Connections = [To("gauge-amp", 0, "strip")] };
        if (served)
        {
            Passes(rack);
            return;
        }

        var finding = Only(rack);
        Numbers(finding, mains, own, "V");
        IsWhole(Facts, rack, finding);
        Remedied(rack, finding);
    }

    [Fact]
    public void Every_plug_and_socket_pair_follows_the_table()
    {
        foreach (var plug in Enum.GetValues<ConnectorCode>())
        {
            foreach (var socket in Enum.GetValues<ConnectorCode>())
            {
                // Three phases serve single-phase plugs too.
                var rack = Rack([Feed("A", 63, phases: 3, socket: ConnectorCode.Iec60309A63P3)],
                    [Strip("strip", "A", socket, 2, 63, ConnectorCode.Iec60309A63P3)], Load("gauge-amp", 100, plug))
                    with { Connections = [To("gauge-amp", 0, "strip")] };
                if (PlugFit.Fits(plug, socket))
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

    [Fact]
    public void Without_connections_there_is_nothing_to_judge() =>
        Passes(Rack([Feed("A")], [Strip("strip", "A", count: 1)], Load("a", 100, ConnectorCode.C20)));
}
