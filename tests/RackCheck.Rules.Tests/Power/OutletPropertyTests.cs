using CsCheck;
using RackCheck.Model;
using RackCheck.Testing;
using static RackCheck.Testing.PowerRacks;

namespace RackCheck.Rules.Tests.Power;

/// <summary>Random racks that break the rules on plugs and outlets in many ways.</summary>
public sealed class OutletPropertyTests
{
    internal static readonly string[] Rules = ["power.no-source", "power.plug-mismatch", "power.outlet-rating", "power.inlet-mismatch", "power.redundancy"];
    private static readonly ConnectorCode[] Plugs = Enum.GetValues<ConnectorCode>();
    private static readonly ConnectorCode[] Usual = [ConnectorCode.C14, ConnectorCode.C14, ConnectorCode.C20, ConnectorCode.C16, Red16];
    private static readonly ConnectorCode[] Sockets = [ConnectorCode.C13, ConnectorCode.C13, ConnectorCode.C15, ConnectorCode.C19, Red16];

    private const int Count = 60;

    internal static readonly Gen<RackDescription> Racks = Gen.Int[0, int.MaxValue].Select(Random);

    [Fact]
    public void Random_racks_break_every_rule()
    {
        var found = Enumerable.Range(0, Count).SelectMany(seed => Judge.Checker.Check(Random(seed)).Findings).Select(f => f.Rule).ToHashSet();
        Assert.Empty(Rules.Except(found));
    }

    private static RackDescription Random(int seed)
    {
        var random = new Random(seed);
        T Pick<T>(IReadOnlyList<T> list) => list[random.Next(list.Count)];
        var supplies = Enumerable.Range(0, random.Next(3)).Select(i => Feed(
            $"supply-{i}", Pick([16.0, 32]), Pick([230.0, 230, 120]), Pick([1, 3]), random.Next(5) == 0 ? null
                : Pick([Blue16, Blue32, Red16, ConnectorCode.NemaL620]))).ToArray();
        var units = Enumerable.Range(0, supplies.Length == 0 ? 0 : random.Next(4)).Select(i => Strip(
            $"strip-{i}", Pick(supplies).Id, Pick(Sockets), random.Next(1, 4), Pick([16.0, 20, 32]), random.Next(5) == 0 ? null
                : Pick([Blue16, Blue32, Red16, ConnectorCode.C20]))
            .With("second", Pick(Sockets), random.Next(1, 3), Pick([Phase.L1, Phase.L2]))).ToArray();
        var items = Enumerable.Range(0, random.Next(1, 7)).Select(i => Item(random, i)).ToArray();
        var connections = items.Where(_ => units.Length > 0 && random.Next(3) == 0)
            .Select(i => To(i.Id, random.Next(i.Power!.Plugs!.Count), Pick(units).Id, Pick(["g", "second"]))).ToArray();
        return Rack(supplies, units, items) with
        {
            Connections = connections.Length == 0 ? null : connections,
            Site = new Site { Region = Pick(Enum.GetValues<Region>()) },
        };
    }

    private static Item Item(Random random, int index)
    {
        ConnectorCode[] plugs = [.. Enumerable.Range(0, random.Next(1, 4))
            .Select(_ => random.Next(8) == 0 ? Plugs[random.Next(Plugs.Length)] : Usual[random.Next(Usual.Length)])];
        var item = Load($"gauge-{index}", random.Next(6) == 0 ? null : random.Next(1, 40) * 100, plugs);
        return item with
        {
            Power = item.Power! with { Redundant = random.Next(3) == 0, VoltageV = random.Next(5) == 0 ? 120 : null },
            Ups = random.Next(12) == 0 ? new Ups { RatedW = 3000, RatedVa = 3000 } : null,
        };
    }
}
