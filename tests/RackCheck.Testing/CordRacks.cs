using CsCheck;
using RackCheck.Model;
using RackCheck.Survey.Power;
using static RackCheck.Testing.RackGenerator;

namespace RackCheck.Testing;

/// <summary>Small random racks whose cords only just find outlets, or just do not; and what has to hold of any assignment.</summary>
public static class CordRacks
{
    private static readonly ConnectorCode[] Sockets = [ConnectorCode.C13, ConnectorCode.C15, ConnectorCode.C19];
    private static readonly ConnectorCode[] Plugs = [ConnectorCode.C14, ConnectorCode.C14, ConnectorCode.C16, ConnectorCode.C20];

    private static readonly Gen<OutletGroup> Groups =
        from phase in Gen.Int[0, 2]
        from breaker in OneOf<double?>(2, 4, 5, 6, 10, null)
        from sockets in Gen.Int[0, 2].Array[1, 2]
        from counts in Gen.Int[1, 2].Array[2]
        select new OutletGroup
        {
            Id = "g", Phase = (Phase)phase, BreakerA = breaker,
            Outlets = [.. sockets.Distinct().Select((s, i) => new OutletSet { Socket = Sockets[s], Count = counts[i] })],
        };

    private static readonly Gen<Item> Items =
        from plug in Gen.Int[0, 3]
        from cords in Gen.Frequency((3, Gen.Const(1)), (2, Gen.Const(2)))
        from redundant in Gen.Bool
        from watts in OneOf(230.0, 345, 460, 575, 690, 920, 1150)
        select new Item
        {
            Id = "", HeightU = 1,
            Power = new ItemPower { RatedW = watts, PowerFactor = 1, Plugs = [.. Enumerable.Repeat(Plugs[plug], cords)], Redundant = cords == 2 && redundant },
        };

    public static Gen<RackDescription> Small { get; } =
        from phases in OneOf(1, 1, 3).Array[1, 3]
        from rated in OneOf(4.0, 6, 10, 16).Array[3]
        from groups in Groups.Array[1, 2].Array[1, 3]
        from unitRated in OneOf(4.0, 6, 10, 16).Array[3]
        from items in Items.Array[1, 4]
        select Make(phases, rated, groups, unitRated, items);

    public static PowerTree Tree(RackDescription rack) => new RackCheck.Survey.RackSurvey(rack).Power;

    /// <summary>What any assignment owes: a plug that goes in, an outlet used once, lines that the supply has.</summary>
    public static void CheckSound(RackDescription rack, PowerTree tree)
    {
        foreach (var cord in tree.Cords.Where(c => c.Group is not null && c.Connection is null))
        {
            Assert.True(PlugFit.Fits(cord.Code, cord.Socket!.Value));
        }

        foreach (var group in tree.Groups)
        {
            foreach (var used in tree.Cords.Where(c => ReferenceEquals(c.Group, group) && c.Socket is not null).GroupBy(c => c.Socket!.Value))
            {
                Assert.True(used.Count() <= group.Source.Outlets.Where(o => o.Socket == used.Key).Sum(o => o.Count));
            }
        }

        Assert.Equal(rack.Items.Sum(i => i.Power?.Plugs?.Count ?? 0), tree.Cords.Length);
    }

    private static RackDescription Make(int[] phases, double[] rated, OutletGroup[][] groups, double[] unitRated, Item[] items) => new()
    {
        Cabinet = new Cabinet { HeightU = 12, WidthMm = 800, DepthMm = 1000 },
        Items = [.. items.Select((item, i) => item with { Id = $"i{i}" })],
        Supplies = [.. phases.Select((p, i) => new Supply { Id = $"s{i}", VoltageV = 230, Phases = p, RatedA = rated[i] })],
        Pdus =
        [
            .. groups.Select((own, u) => new Pdu
            {
                Id = $"u{u}", Supply = $"s{u % phases.Length}", RatedA = unitRated[u],
                Groups = [.. own.Select((g, i) => g with { Id = $"g{i}", Phase = phases[u % phases.Length] == 3 ? g.Phase : null })],
            }),
        ],
    };
}
