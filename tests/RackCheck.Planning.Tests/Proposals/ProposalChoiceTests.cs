using RackCheck.Model;
using RackCheck.Planning.Proposals;
using RackCheck.Testing;
using static RackCheck.Planning.Tests.Baskets.DemoCatalogue;
using static RackCheck.Planning.Tests.Proposals.SoundProposals;

namespace RackCheck.Planning.Tests.Proposals;

/// <summary>What the caller prefers, what is there already, and what the alternatives differ in.</summary>
public sealed class ProposalChoiceTests
{
    private static readonly string[] Parts = ["SRV-2", "SRV-110", "PC-210", "KVM-16", "SW-24", "PAT-24", "AMP-2", "DAQ-3", "GEN-2", "DRV-4"];

    // A PDU that is there, with six outlets.
    private static Pdu Six => new()
    {
        Id = "PA", Supply = "A", RatedA = 16, Mounting = PduMounting.Vertical,
        Groups = [new OutletGroup { Id = "g1", Outlets = [new OutletSet { Socket = ConnectorCode.C13, Count = 6 }] }],
    };

    [Fact]
    [Trait("Kind", "property")]
    public void Lowest_cost_is_the_sum_of_the_lines_and_never_above_that_of_another_preference() => Parallel.For(0, Samples.Of(300), run =>
    {
        var random = new Random(run);
        var request = Request([.. Enumerable.Range(0, random.Next(1, 9)).Select(_ => Parts[random.Next(Parts.Length)])]) with
        {
            Site = new Site { Region = (Region)random.Next(3), AmbientMaxC = 24 },
        };
        var cheap = Answer(request with { Prefer = CabinetPreference.LowestCost });
        AssertSound(request, cheap);
        var cost = Assert.Single(cheap.Alternatives[0].Objective, o => o.Name == ObjectiveName.Cost);
        Assert.Equal(PriceOf(cheap.Alternatives[0]), cost.Value, 0.001);
        Assert.Equal([ObjectiveName.Cabinets, ObjectiveName.Cost], cheap.Alternatives[0].Objective.Take(2).Select(o => o.Name));
        foreach (var other in cheap.Alternatives.Skip(1).Concat(Answer(request).Alternatives).Where(a => WarningsOf(a) <= WarningsOf(cheap.Alternatives[0])))
        {
            Assert.True(cost.Value <= PriceOf(other) + 0.001, $"{run}: {cost.Value} > {PriceOf(other)}");
        }
    });

    // Common practice, no source: hosts are in the cabinet of the console that they share. Divided by their height alone they need a second KVM switch.
    [Fact]
    public void Hosts_stay_with_their_console_in_one_of_two_cabinets()
    {
        IEnumerable<string> Times(int count, string part) => Enumerable.Repeat(part, count);
        var request = Request(
            [.. Times(8, "SRV-110"), .. Times(8, "AMP-1"), .. Times(6, "PAT-24"), .. Times(4, "PC-210"), .. Times(3, "SW-24"), .. Times(3, "CBM-1"),
                "SYN-1", "SYN-1", "UPS-30", "UPS-30", "KVM-16", "KD-1", "GEN-2", "DAQ-3"]);
        var answer = Answer(request with { Site = new Site { Region = Region.Eu, AmbientMaxC = 28 } });
        AssertSound(request, answer);
        Assert.Contains(answer.Alternatives, a => a.Racks!.Count == 2 && !a.AddedLines.Any(l => l.PartNumber.StartsWith("QWL-KVM-", StringComparison.Ordinal)));
    }

    [Fact]
    public void Prices_are_no_objective_unless_they_are_preferred() =>
        Assert.DoesNotContain(Answer(Request("SRV-2")).Alternatives[0].Objective, o => o.Name == ObjectiveName.Cost);

    [Fact]
    public void Part_without_a_price_leaves_no_cost_to_compare()
    {
        Product[] products = [.. Products.Select(p => p.Kind == ProductKind.Fixings ? p with { Price = null } : p)];
        var answer = new ProposalPlanner(Judge.Checker).Plan(Request("SRV-2") with { Prefer = CabinetPreference.LowestCost }, ByNumber, products);
        Assert.DoesNotContain(answer.Alternatives[0].Objective, o => o.Name == ObjectiveName.Cost);
        Assert.All(answer.Alternatives, a => Assert.DoesNotContain(a.GainedKeys, k => k.MessageKey == "trade-off.cost"));
    }

    [Fact]
    public void Positions_are_counted_from_the_top_where_the_request_does()
    {
        var request = Request("SRV-2", "GEN-2", "GEN-2", "UPS-30") with { Cabinets = [new Cabinet { PartNumber = "QWL-CAB-42-8-10" }] };
        var up = Answer(request).Alternatives[0];
        var down = Answer(request with { UnitNumbering = UnitNumbering.TopDown });
        AssertSound(request, down);
        Assert.Equal(UnitNumbering.TopDown, down.Alternatives[0].Rack!.UnitNumbering);
        Assert.Equal(Bottoms(up.Rack!, u => u), Bottoms(down.Alternatives[0].Rack!, u => 43 - u));
        Assert.Equal(up.Report!.Figures.Mass!.CentreOfGravityMm, down.Alternatives[0].Report!.Figures.Mass!.CentreOfGravityMm);
        Assert.Equal(up.Objective, down.Alternatives[0].Objective);
    }

    [Fact]
    public void Kept_position_counted_from_the_top_stays()
    {
        var request = Request("SRV-2", "GEN-2", "GEN-2") with { UnitNumbering = UnitNumbering.TopDown };
        request = request with { Items = [.. request.Items.Select((i, n) => n == 1 ? i with { Position = new Position { U = 7 } } : i)], Keep = ["gen-2-1"] };
        var answer = Answer(request);
        AssertSound(request, answer);
        Assert.NotEmpty(answer.Alternatives);
        Assert.All(answer.Alternatives, a => Assert.Equal(7, a.Rack!.Items[1].Position!.U));
    }

    [Fact]
    public void Row_of_cabinets_has_alternatives_that_gain_something()
    {
        var request = Request([.. Enumerable.Repeat("DRV-6", 10), "SRV-2", "SW-24"]);
        var answer = Answer(request);
        AssertSound(request, answer);
        Assert.True(answer.Alternatives.Count > 1);
        Assert.All(answer.Alternatives, a => Assert.NotEmpty(a.Gained));
        Assert.All(answer.Alternatives, a => Assert.Equal(2, a.Racks!.Count));
        Assert.Equal(
            answer.Alternatives.Count,
            answer.Alternatives.Select(a => string.Join(' ', a.Racks!.Select(r => r.Rack.Cabinet!.PartNumber))).Distinct().Count());
    }

    [Fact]
    public void What_is_there_already_stays_in_the_cabinet_of_the_items_that_do()
    {
        var request = Request([.. Enumerable.Repeat("GEN-2", 26)]) with
        {
            Pdus = [Six],
            Supplies =
            [
                .. new[] { "A", "B", "C", "D" }.Select(id => new Supply { Id = id, VoltageV = 230, RatedA = 16, Socket = ConnectorCode.Iec60309A16P1 }),
            ],
            Connections = [new Connection { Item = "gen-2-1", Plug = 0, Pdu = "PA", Group = "g1" }],
            Cooling = new Cooling { RoofFans = [new FanSet { Count = 2, FreeFlowM3h = 160 }] },
        };
        var answer = Answer(request);
        AssertSound(request, answer);
        foreach (var racks in answer.Alternatives.Select(RacksOf))
        {
            var own = Assert.Single(racks, r => r.Pdus!.Any(u => u.Id == "PA"));
            Assert.Contains(own.Items, i => i.Id == "gen-2-1");
            Assert.Contains(own.Connections!, c => c is { Item: "gen-2-1", Pdu: "PA" });
            Assert.Equal(2, own.Cooling!.RoofFans![0].Count);
            Assert.All(racks.Where(r => r != own), r => Assert.Null(r.Connections));
        }

        Assert.True(answer.Alternatives.Count > 0, TextOf(answer));
    }

    [Fact]
    public void One_cabinet_has_alternatives_with_other_pdus()
    {
        var request = Request("SRV-2", "SRV-2", "SW-24") with { Cabinets = [new Cabinet { PartNumber = "QWL-CAB-42-8-10" }] };
        var answer = Answer(request);
        AssertSound(request, answer);
        Assert.True(answer.Alternatives.Count > 1);
        Assert.Equal(
            answer.Alternatives.Count,
            answer.Alternatives
                .Select(a => string.Join(' ', a.AddedLines.Select(l => l.PartNumber).Where(p => ByNumber[p].Kind == ProductKind.Pdu)))
                .Distinct().Count());
        Assert.All(answer.Alternatives, a => Assert.NotEmpty(a.Gained));
    }

    [Fact]
    public void Conflict_of_a_request_with_pdus_keeps_their_supply()
    {
        var request = Request([.. Enumerable.Repeat("DRV-6", 10)]) with
        {
            Pdus = [Six], Supplies = [new Supply { Id = "A", VoltageV = 230, RatedA = 16 }],
        };
        var conflict = Answer(request).Conflict!;
        Assert.DoesNotContain(conflict.Requirements, r => r.Pointers.Contains("/supplies"));
    }

    // Drives can be switched remotely; sold for them, a PDU with switched outlets took four times the price.
    [Fact]
    public void Switched_outlets_are_for_remote_sites_and_for_those_who_ask()
    {
        var request = Request("DRV-4", "SRV-2", "SRV-2", "SW-24");
        Assert.DoesNotContain(Answer(request).Alternatives[0].AddedLines, l => ByNumber[l.PartNumber].Pdu?.RemoteSwitched == true);
        var remote = Answer(request with { Site = new Site { Region = Region.Eu, AmbientMaxC = 25, Remote = true } });
        Assert.Contains(remote.Alternatives[0].AddedLines, l => ByNumber[l.PartNumber].Pdu?.RemoteSwitched == true);
        var asked = Answer(request with { Items = [.. request.Items.Select(i => i.Id == "sw-24-1" ? i with { RemotePowerCycle = true } : i)] });
        Assert.Contains(asked.Alternatives[0].AddedLines, l => ByNumber[l.PartNumber].Pdu?.RemoteSwitched == true);
    }

    private static double PriceOf(ProposedRack alternative) => alternative.AddedLines.Sum(l => l.Quantity * ByNumber[l.PartNumber].Price!.Value);

    private static int WarningsOf(ProposedRack alternative) =>
        alternative.Report!.Findings.Count(f => f is { Severity: Severity.Warning, Accepted: null, SignedOff: null });

    private static IEnumerable<(string, int)> Bottoms(RackDescription rack, Func<int, int> fromBottom) =>
        rack.Items.Where(i => i.Position is not null).Select(i => (i.Id, fromBottom(i.Position!.U)));
}
