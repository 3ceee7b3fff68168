using RackCheck.Model;
using RackCheck.Survey.Power;
using RackCheck.Testing;
using static RackCheck.Survey.Tests.Power.CordAssignmentTests;

namespace RackCheck.Survey.Tests.Power;

/// <summary>The assignment of cords where a UPS or cooling loads a supply: by what each carries, not by the least load alone.</summary>
public sealed class UpsCordTests
{
    [Fact]
    public void A_ups_stays_on_the_supply_that_its_pdu_is_described_on()
    {
        // The supply B has more room, so that the least loaded outlet for the UPS is there; the pair would then be fed from B with both cords.
        var rack = Rack(
            [Pair(1), Load("a", 1800, ConnectorCode.C14), Ups(2700, 3000)],
            Unit("pa", "A", Group("g", null, 16, (ConnectorCode.C13, 1), (ConnectorCode.C19, 1))),
            Unit("pb", "B", Group("g", null, 16, (ConnectorCode.C13, 1), (ConnectorCode.C19, 1))),
            Unit("pu", "A", Group("g", null, 16, (ConnectorCode.C13, 4))));
        var tree = CordRacks.Tree(rack);
        var ups = Assert.Single(tree.Cords, c => c.Item.Id == "ups");
        Assert.Equal("A", ups.Group!.Unit.Supply.Id);
        Assert.All(tree.Cords, c => Assert.NotNull(c.Group));
        Assert.Equal(["A", "B"], tree.Cords.Where(c => c.Item.Id == "i1").Select(c => c.Group!.Unit.Supply.Id).Order());
    }

    [Fact]
    public void A_ups_without_an_outlet_on_that_supply_takes_another()
    {
        var rack = Rack(
            [Ups(2700, 3000)],
            Unit("pb", "B", Group("g", null, 16, (ConnectorCode.C19, 1))), Unit("pu", "A", Group("g", null, 16, (ConnectorCode.C13, 4))));
        Assert.Equal("pb", Assert.Single(CordRacks.Tree(rack).Cords).Group!.Unit.Id);
    }

    [Fact]
    public void Redundant_cords_keep_apart_by_where_the_ups_is_connected()
    {
        // Described on A, connected to B: what it feeds is fed from B.
        var rack = Rack(
            [Pair(1), Ups(2700, 3000)],
            Unit("pa", "A", Group("g", null, 16, (ConnectorCode.C13, 1))),
            Unit("pb", "B", Group("g", null, 16, (ConnectorCode.C13, 1), (ConnectorCode.C19, 1))),
            Unit("pu", "A", Group("g", null, 16, (ConnectorCode.C13, 4)))) with
        {
            Connections = [new Connection { Item = "ups", Pdu = "pb", Group = "g" }],
        };
        Assert.Contains("pa", CordRacks.Tree(rack).Cords.Where(c => c.Item.Id == "i1").Select(c => c.Group!.Unit.Id));
    }

    [Theory]
    [InlineData(1000, 3000)]
    [InlineData(2700, 1100)]
    public void A_ups_gets_no_more_than_it_carries(double ratedW, double ratedVa)
    {
        // Three of 600 W: one behind the UPS, though outlets behind it are as many and as little loaded. Power factor 1, as those of Load.
        var rack = Rack(
            [.. Enumerable.Range(0, 3).Select(i => Load($"i{i}", 600, ConnectorCode.C14)), Ups(ratedW, ratedVa)],
            Unit("pa", "A", Group("g", null, 16, (ConnectorCode.C13, 2), (ConnectorCode.C19, 1))),
            Unit("pu", "A", Group("g", null, 16, (ConnectorCode.C13, 4))));
        var tree = CordRacks.Tree(rack);
        Assert.All(tree.Cords, c => Assert.NotNull(c.Group));
        Assert.Equal(600, Assert.Single(tree.Ups).LoadW, 1e-9);
    }

    [Fact]
    public void Cords_keep_off_a_supply_that_cooling_loads()
    {
        // 2,700 W at a power factor of 0.95 are 12.4 A of 16: of four cords of 2 A none goes there while the other supply has room.
        var rack = Rack(
            [.. Enumerable.Range(0, 4).Select(i => Load($"i{i}", 460, ConnectorCode.C14))],
            Unit("pa", "A", Group("g", null, 16, (ConnectorCode.C13, 4))), Unit("pb", "B", Group("g", null, 16, (ConnectorCode.C13, 4)))) with
        {
            Cooling = new Cooling { AirConditioner = new AirConditioner { CapacityW = 2000, InputW = 2700, Supply = "A" } },
        };
        rack = rack with { Supplies = [.. rack.Supplies!.Select(s => s with { RatedA = 16 })] };
        var tree = CordRacks.Tree(rack);
        Assert.All(tree.Cords, c => Assert.Equal("B", c.Group!.Unit.Supply.Id));
    }

    private static Item Ups(double ratedW, double ratedVa) => new()
    {
        Id = "ups", HeightU = 2, Power = new ItemPower { PowerFactor = 1, Plugs = [ConnectorCode.C20] },
        Ups = new Ups { RatedW = ratedW, RatedVa = ratedVa, Feeds = ["pu"] },
    };
}
