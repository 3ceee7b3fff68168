using CsCheck;
using RackCheck.Model;
using RackCheck.Testing;
using static RackCheck.Testing.Wiring;

namespace RackCheck.Rules.Tests.Delivery;

/// <summary>Properties of all cabling, service and delivery rules, with random racks.</summary>
public sealed class RouteRackTests
{
    private static readonly Gen<Item[]> Items =
        Gen.Select(
            Gen.Select(
                Any(ItemCategory.Computer, ItemCategory.KvmSwitch, ItemCategory.KeyboardDrawer, ItemCategory.Display, ItemCategory.BlankingPanel),
                Gen.Int[1, 5], Any<double?>(null, 200, 450, 700)),
            Gen.Select(Any<double?>(null, 0.1, 6, 8, 25), Gen.Int[0, 90], Any<double?>(null, 5, 60)),
            Gen.Select(Any<bool?>(null, true, false), Any<int?>(null, 0, 1, 8), Any<bool?>(null, true), Any<bool?>(null, true)),
            Gen.Select(Any<SupportStyle?>(null, SupportStyle.Slides, SupportStyle.Runners), Any<double?>(null, 450, 900), Gen.Int[0, 2], Gen.Int[0, 5]))
            .Select((body, cables, console, support) => new Item
            {
                Id = "", Category = body.Item1, HeightU = body.Item2, Body = body.Item3 is { } depth ? new Body { DepthMm = depth } : null,
                Cables = cables.Item1 is { } d ? [new CableBundle { DiameterMm = d, Count = cables.Item2 }] : null, MassKg = cables.Item3,
                Console = console.Item1, KvmPorts = console.Item2, RemotePowerCycle = console.Item3, Spare = console.Item4,
                Support = support.Item1 is null ? null : new Support { Style = support.Item1, ExtensionMm = support.Item2 },
                Power = support.Item3 == 0
                    ? null
                    : new ItemPower
                    {
                        RatedW = 100, PowerFactor = 1, LeakageMa = 0.1, InrushA = 1,
                        Plugs = [.. Enumerable.Repeat(ConnectorCode.C14, support.Item3 - 1)],
                    },
                Position = support.Item4 == 0 ? null : new Position { U = 0, Face = support.Item4 == 1 ? Face.Rear : Face.Front },
            })
            .Array[0, 6].Select(Stacked);

    private static readonly Gen<Model.Delivery?> Deliveries =
        Gen.Select(
            Gen.Select(Any<double?>(null, 0, 144), Any<double?>(null, 800), Any<double?>(null, 1200), Any<double?>(null, 25)),
            Gen.Select(Any<double?>(null, 40, 100, 300), Any<bool?>(null, true, false), Any<bool?>(null, true, false)),
            Gen.Select(Any("dock", "", "hatch"), Any(500.0, 621, 830, 1300), Any(900.0, 1500, 1780, 2015, 2200)).Array[0, 4],
            Gen.Select(Any(300.0, 650, 800, 1200), Any(500.0, 800, 1200)).Array[0, 3],
            Gen.Select(Any<double?>(null, 500, 830), Any<double?>(null, 900, 1300), Any<double?>(null, 1500, 2100), Any<double?>(null, 1, 100, 300)),
            Gen.Int[0, 3])
            .Select((pallet, means, openings, corners, lift, given) => given == 0 ? null : new Model.Delivery
            {
                PalletHeightMm = pallet.Item1, PalletWidthMm = pallet.Item2, PalletDepthMm = pallet.Item3, PalletKg = pallet.Item4,
                LiftingKg = means.Item1, MayTilt = means.Item2, ReceiverArranged = means.Item3,
                Openings = given == 1
                    ? null
                    : [.. openings.Select(o => new Opening { Name = o.Item1.Length == 0 ? null : o.Item1, WidthMm = o.Item2, HeightMm = o.Item3 })],
                Corridors = given == 1 ? null : [.. corners.Select(c => new Corridor { WidthMm = c.Item1, TurnIntoMm = c.Item2 })],
                Lift = given == 3 ? null : new Lift { WidthMm = lift.Item1, DepthMm = lift.Item2, HeightMm = lift.Item3, RatedKg = lift.Item4 },
            });

    internal static readonly Gen<RackDescription> Racks =
        Gen.Select(
            Items,
            Deliveries,
            Gen.Select(Any(12, 24, 42), Any(500.0, 600, 800), Any(600.0, 800, 1000), Any<double?>(null, 1200, 2000, 2200), Any<double?>(null, 50, 120)),
            Gen.Select(Any<double?>(null, 0, 100), Any<double?>(null, 75, 150), Any<double?>(null, 500), Any<bool?>(null, true, false), Gen.Int[0, 8]),
            Gen.Select(Any<bool?>(null, true), Any<bool?>(null, true), Any<double?>(null, 0, 600, 1200), Gen.Int[0, 3]),
            Gen.Select(Gen.Bool, Gen.Bool, Any<bool?>(null, true, false)))
            .Select((items, delivery, size, cabinet, site, flags) => new RackDescription
            {
                UnitNumbering = flags.Item2 ? UnitNumbering.TopDown : null,
                Cabinet = new Cabinet
                {
                    HeightU = size.Item1, WidthMm = size.Item2, DepthMm = size.Item3, HeightMm = size.Item4, MassKg = size.Item5, Lockable = cabinet.Item4,
                    Base = cabinet.Item1 is { } foot ? new CabinetBase { HeightMm = foot } : null,
                    Uprights = new Uprights { FrontSetbackMm = cabinet.Item2, SpacingMm = cabinet.Item3 },
                    FrontDoor = (cabinet.Item5 % 3) switch { 0 => null, 1 => new Door { Style = DoorStyle.None }, _ => new Door { Style = DoorStyle.Solid } },
                    RearDoor = (cabinet.Item5 / 3) switch { 0 => null, 1 => new Door { Style = DoorStyle.None }, _ => new Door { Style = DoorStyle.Solid } },
                    SidePanels = flags.Item3,
                },
                Items = [.. items.Select(i => i.Position is { } at && flags.Item2 ? i with { Position = at with { U = size.Item1 + 1 - at.U } } : i)],
                Supplies = [Mains("A", 32)],
                Pdus = flags.Item1
                    ? [Pdu("strip", "A", 32, Outlets("g1", null, count: 8), Outlets("g2", null, count: 4)) with { RemoteSwitched = flags.Item3 }]
                    : null,
                Site = site.Item4 == 0 && delivery is null
                    ? null
                    : new Site { Remote = site.Item1, PublicAccess = site.Item2, AisleFrontMm = site.Item3, Delivery = delivery },
            });

    [Fact]
    [Trait("Kind", "property")]
    public void Larger_openings_and_corridors_never_add_finding() =>
        Gen.Select(Racks, Any(1.0, 37, 400), Any(0.0, 25, 900)).Sample(
            (rack, wider, higher) =>
            {
                if (rack.Site?.Delivery is { } route)
                {
                    var eased = rack with
                    {
                        Site = rack.Site with
                        {
                            Delivery = route with
                            {
                                Openings = route.Openings?.Select(o => o with { WidthMm = o.WidthMm + wider, HeightMm = o.HeightMm + higher }).ToArray(),
                                Corridors = route.Corridors?.Select(c => c with { WidthMm = c.WidthMm + wider, TurnIntoMm = c.TurnIntoMm + higher }).ToArray(),
                            },
                        },
                    };
                    var (before, after) = (Weights(rack), Weights(eased));
                    Assert.True(after.All(a => before.GetValueOrDefault(a.Key) >= a.Value), string.Join(", ", after));
                }
            },
            iter: Samples.Of(300));

    [Fact]
    [Trait("Kind", "property")]
    public void Fewer_cables_never_raise_the_fill() =>
        Racks.Sample(
            rack =>
            {
                var fewer = rack with
                {
                    Items = [.. rack.Items.Select(i => i with { Cables = i.Cables?.Select(c => c with { Count = c.Count / 2 }).ToArray() })],
                };
                var (before, after) = (Judge.Checker.Check(rack), Judge.Checker.Check(fewer));
                Assert.True((after.Figures.Cabling?.FillPercent ?? 0) <= (before.Figures.Cabling?.FillPercent ?? double.PositiveInfinity));
                Assert.True(CablingFindings(after) <= CablingFindings(before));
            },
            iter: Samples.Of(300),
            print: Wording.Of);

    private static Gen<T> Any<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);

    private static int CablingFindings(CheckReport report) => report.Findings.Count(f => f.Rule.StartsWith("cabling.", StringComparison.Ordinal));

    private static Item[] Stacked(Item[] items)
    {
        var next = 1;
        var placed = new Item[items.Length];
        for (var i = 0; i < items.Length; i++)
        {
            placed[i] = items[i] with { Id = $"item-{i}", Position = items[i].Position is { } at ? at with { U = next } : null };
            next += (items[i].HeightU ?? 0) + (i % 2);
        }

        return placed;
    }

    // Findings by pointer and severity. A warning instead of an error is not a new finding.
    private static Dictionary<string, int> Weights(RackDescription rack) => Judge.Checker.Check(rack).Findings
        .Where(f => f.Rule is "delivery.opening" or "delivery.corridor-turn")
        .ToDictionary(f => f.Pointers[0], f => f.Severity == Severity.Error ? 2 : 1, StringComparer.Ordinal);
}
