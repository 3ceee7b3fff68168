using RackCheck.Model;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Survey.Tests.Power;

/// <summary>The search for outlets in the largest requests: it stops by its count, says so, and never leaves a socket empty that a cord could have.</summary>
public sealed class SearchAllowanceTests
{
    [Theory]
    [InlineData(200, 8, 0.5, false)] // far below every limit: the first assignment stands
    [InlineData(200, 8, 9, true)] // as much as the feeds have: only a search could tell
    [InlineData(200, 8, 90, false)] // far more current than the feeds have: proven by the sum
    public void Largest_request_stops_by_its_count(int items, int plugs, double amperes, bool isCutShort)
    {
        var rack = Largest(items, plugs, 3, amperes);
        var tree = CordRacks.Tree(rack);
        Assert.InRange(tree.SearchSteps, 1, 8_000_000);
        Assert.Equal(isCutShort, tree.IsSearchCutShort);
        Assert.Equal(tree.SearchSteps, CordRacks.Tree(rack).SearchSteps);
        Assert.Equal(isCutShort, Judge.Check(rack).Cautions.Contains(Rules.Cautions.SearchCutShort.Text));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Every_socket_is_taken_where_there_are_too_few(int outlets)
    {
        // 200 items with 8 cords each on 32 PDUs of 24 groups: 768 or 1536 sockets for 1600 plugs.
        var tree = CordRacks.Tree(Largest(200, 8, outlets, 0.1));
        Assert.Equal(32 * 24 * outlets, tree.Cords.Count(c => c.Group is not null));
    }

    private static RackDescription Largest(int items, int plugs, int outlets, double amperes) => EmptyRack(47) with
    {
        Items =
        [
            .. Enumerable.Range(0, items).Select(i => Unit($"i{i:000}", 1) with
            {
                Power = new ItemPower { RatedW = amperes * 230, Plugs = [.. Enumerable.Repeat(ConnectorCode.C14, plugs)] },
            }),
        ],
        Supplies = [.. Enumerable.Range(0, 4).Select(s => new Supply { Id = $"s{s}", VoltageV = 230, Phases = 1, RatedA = 500 })],
        Pdus =
        [
            .. Enumerable.Range(0, 32).Select(p => new Pdu
            {
                Id = $"p{p}", Supply = $"s{p % 4}", RatedA = 63,
                Groups =
                [
                    .. Enumerable.Range(0, 24).Select(g => new OutletGroup
                    {
                        Id = $"g{g}", BreakerA = 10, Outlets = [new OutletSet { Socket = ConnectorCode.C13, Count = outlets }],
                    }),
                ],
            }),
        ],
    };
}
