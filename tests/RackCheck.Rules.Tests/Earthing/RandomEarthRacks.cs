using CsCheck;
using RackCheck.Model;
using RackCheck.Testing;
using static RackCheck.Testing.EarthRacks;

namespace RackCheck.Rules.Tests.Earthing;

/// <summary>Random racks that break the rules on earth in many ways.</summary>
internal static class RandomEarthRacks
{
    private static readonly Gen<double?> Sections = Any<double?>(null, 0.1, 1, 2.5, 4, 6, 10, 35);

    private static readonly Gen<Item[]> Items =
        Gen.Select(Any<double?>(null, 0, 0.7, 2, 4.5, 12), Gen.Int[0, 2], Any<bool?>(null, true, false), Sections, Any<double?>(null, 0.01, 0.3, 1.5, 30, 90))
            .Select((leakage, cords, stud, section, length) => new Item
            {
                Id = "", HeightU = 2, EarthStud = stud, EarthLead = section is null && length is null ? null
                    : new EarthLead { CrossSectionMm2 = section, LengthM = length },
                Power = cords == 0 ? null : new ItemPower { RatedW = 100, LeakageMa = leakage, Redundant = cords > 1,
                    Plugs = [.. Enumerable.Repeat(ConnectorCode.C14, cords)] },
            })
            .Array[0, 6].Select(items => items.Select((item, at) => item with { Id = $"item-{at}", Position = new Position { U = 1 + (2 * at) } }).ToArray());

    private static readonly Gen<Supply[]> Supplies =
        Gen.Select(Sections, Any<double?>(null, 500, 3000, 100_000), Any<double?>(null, 0.02, 0.4, 5),
            Any<ConnectorCode?>(null, ConnectorCode.Bs1363, ConnectorCode.Iec60309A16P1, ConnectorCode.Hardwired), Any<double?>(null, 10, 30, 100, 500))
            .Select((cable, fault, seconds, socket, rcd) => Mains("", cable is 0.1 ? null : cable, fault, seconds, socket, rcd, 13))
            .Array[1, 2].Select(supplies => supplies.Select((supply, at) => supply with { Id = $"supply-{at}" }).ToArray());

    public static readonly Gen<RackDescription> Racks =
        Gen.Select(Items, Supplies, Any<int?>(null, 0, 5, 9, 20), Sections, Any<bool?>(null, true, false), Gen.Int[0, 31], Gen.Int[0, 26], Gen.Bool)
            .Select((items, supplies, bar, main, second, listed, cabinet, isFed) => new RackDescription
            {
                Cabinet = new Cabinet
                {
                    HeightU = 24, WidthMm = 800, DepthMm = 1000, SidePanels = (cabinet % 3) switch { 0 => null, 1 => true, _ => false },
                    FrontDoor = (cabinet / 3 % 3) switch { 0 => null, 1 => new Door { Style = DoorStyle.None },
                        _ => new Door { Style = DoorStyle.Solid, Bonded = cabinet > 13 } },
                    EarthBar = cabinet % 5 == 0 ? null : new EarthBar { Terminals = bar, LengthMm = 300 },
                },
                Items = items,
                Supplies = supplies,
                Pdus = isFed ? [.. supplies.Select(s => Strip($"strip-{s.Id}", s.Id, s.Socket, rated: 13))] : null,
                Earthing = listed == 31 ? null : new Model.Earthing
                {
                    MainConductorMm2 = main, SecondaryEarth = second, Bonded = listed == 30 ? null : [.. AllParts.Where((_, at) => (listed & (1 << at)) != 0)],
                },
            });

    private static Gen<T> Any<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);
}
