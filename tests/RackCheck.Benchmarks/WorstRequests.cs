using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Planning;
using RackCheck.Rules;
using RackCheck.Survey.Catalogue;

namespace RackCheck.Benchmarks;

/// <summary>
/// The dearest valid requests found: as many items, cords, PDUs and defects as the limits allow. Measures processor time and allocation of a check and of
/// a check that applies remedies.
/// </summary>
internal static class WorstRequests
{
    private const int Items = 200;

    /// <summary>The requests by name.</summary>
    public static IReadOnlyList<(string Name, RackDescription Rack)> All { get; } =
    [
        ("all items at U1", Crowd(i => At(Plain(i), 1))),
        ("all items at U1, every defect, 8 cords each", Crowd(i => At(Wrong(i, 8), 1), Feeds(16, 32, 24))),
        ("no item placed", Crowd(Plain)),
        ("no item placed, every defect, 8 cords each", Crowd(i => Wrong(i, 8), Feeds(16, 32, 24))),
        ("one item a U, every defect, one cord", Crowd(i => At(Wrong(i, 1), 1 + (i % 60), i >= 60), Feeds(2, 4, 6))),
        ("one item a U, every defect, 8 cords", Crowd(i => At(Wrong(i, 8), 1 + (i % 60), i >= 60), Feeds(16, 32, 24))),
        ("1600 cords, too few outlets", Crowd(i => At(Plain(i) with { Power = Power(8, 40) }, 1 + (i % 60), i >= 60), Feeds(16, 32, 24, 1))),
        ("1600 cords that just fit", Crowd(i => At(Plain(i) with { Power = Power(8, 40) }, 1 + (i % 60), i >= 60), Feeds(16, 32, 24, 3))),
        ("400 cords that just fit by load, three types", Crowd(i => At(Plain(i) with { Power = Mixed(i) }, 1 + (i % 60), i >= 60), Feeds(4, 32, 24, 2))),
        ("redundant pairs, three phases",
            Crowd(i => At(Plain(i) with { Power = Power(2, 90 + i) with { Redundant = true } }, 1 + (i % 60), i >= 60), Feeds(2, 16, 24, 2, 3))),
        ("100 shelves with an item too large on each", Crowd(OnShelves)),
        ("199 items on one shelf",
            Crowd(i => i == 0
                ? At(Shelf(0), 1)
                : Plain(i) with { HeightU = 0, OnShelf = "i0", MassKg = 9, Body = new Body { WidthMm = 300, HeightMm = 300, DepthMm = 900 } })),
        ("items pulled out, heavy and high", Crowd(i => At(Slid(i), 1 + (i % 60), i >= 60))),
        ("800 connections to one group", Connected()),
        ("200 acceptances that fit nothing",
            Crowd(i => At(Wrong(i, 1), 1), Feeds(2, 4, 6)) with { Acceptances = [.. Enumerable.Range(0, 200).Select(Accept)] }),
        ("hosts, studs, cables and batteries",
            Crowd(i => At(Studs(i), 1 + (i % 60), i >= 60), Feeds(2, 8, 12)) with { Earthing = new Earthing { SecondaryEarth = true } }),
    ];

    /// <summary>Prints a table, the dearest first.</summary>
    public static void Print()
    {
        var checker = new RackChecker(RuleSet.Default, (rule, fault) => throw new InvalidOperationException(rule.Id, fault));

        // Code that has not run often is slow: the first request of a process is measured by its start, not here.
        foreach (var (_, rack) in All)
        {
            for (var i = 0; i < 3; i++)
            {
                checker.Check(ResolvedRack.Plain(rack));
            }
        }

        var rows = new List<(string Name, double Recheck, double Check, double Apply, double Mb, double HeapMb, int Findings, int Bytes)>();
        foreach (var (name, rack) in All)
        {
            var bytes = JsonSerializer.SerializeToUtf8Bytes(rack, ContractJson.Default.RackDescription).Length;
            var resolved = ResolvedRack.Plain(rack);
            checker.Recheck(resolved);
            var recheck = Cost(() => { for (var i = 0; i < 5; i++) checker.Recheck(resolved); }) / 5;
            CheckReport? report = null;
            var before = GC.GetAllocatedBytesForCurrentThread();
            var check = Cost(() => report = checker.Check(resolved));
            var mb = (GC.GetAllocatedBytesForCurrentThread() - before) / 1e6;
            var apply = Cost(() => new RemedyLoop(checker).Run(resolved));
            var heap = LiveHeapMb(() => new RemedyLoop(checker).Run(resolved));
            rows.Add((name, recheck, check, apply, mb, heap, report!.Findings.Count, bytes));
        }

        Console.WriteLine("| request | body, KB | findings | rules alone, ms | check, ms | allocated, MB | apply=remedies, ms | its live heap, MB |");
        Console.WriteLine("| --- | --- | --- | --- | --- | --- | --- | --- |");
        foreach (var r in rows.OrderByDescending(r => r.Apply))
        {
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"| {r.Name} | {r.Bytes / 1000.0:0} | {r.Findings} | {r.Recheck:0} | {r.Check:0} | {r.Mb:0} | {r.Apply:0} | {r.HeapMb:0} |"));
        }
    }

    // The most that was alive at a full collection, above what was alive before.
    /// <summary>Live heap that work takes at most, as full collections leave it, MB.</summary>
    public static double LiveHeapMb(Action work)
    {
        var before = GC.GetTotalMemory(forceFullCollection: true);
        var most = before;
        var running = Task.Run(work);
        while (!running.Wait(TimeSpan.FromMilliseconds(5)))
        {
            most = Math.Max(most, GC.GetTotalMemory(forceFullCollection: true));
        }

        return (most - before) / 1e6;
    }

    private static double Cost(Action work)
    {
        var process = Process.GetCurrentProcess();
        process.Refresh();
        var start = process.TotalProcessorTime;
        work();
        process.Refresh();
        return (process.TotalProcessorTime - start).TotalMilliseconds;
    }

    private static RackDescription Crowd(Func<int, Item> item, (Supply[] Supplies, Pdu[] Pdus)? feeds = null) => new()
    {
        Cabinet = new Cabinet
        {
            HeightU = 60, WidthMm = 600, DepthMm = 800, MassKg = 100, RatedLoadKg = 300, RollingLoadKg = 200,
            FrontDoor = new Door { Style = DoorStyle.Solid }, RearDoor = new Door { Style = DoorStyle.Solid },
            Uprights = new Uprights { FrontSetbackMm = 90, SpacingMm = 500 },
        },
        Items = [.. Enumerable.Range(0, Items).Select(item)],
        Supplies = feeds?.Supplies,
        Pdus = feeds?.Pdus,
        Site = new Site
        {
            Region = Region.Uk, AmbientMaxC = 40, AmbientMinC = -5, HumidityMaxPercent = 95, AltitudeM = 2500,
            RequiredIp = "IP54", Remote = true, PublicAccess = true,
            AisleFrontMm = 700, AisleRearMm = 300, Floor = new Floor { DistributedKnM2 = 2, PointKn = 1 },
            Delivery = new Delivery
            {
                PalletHeightMm = 150, PalletWidthMm = 1200, PalletDepthMm = 1000, PalletKg = 30, Loaded = true,
                Openings = [.. Enumerable.Range(0, 50).Select(i => new Opening { WidthMm = 700 + i, HeightMm = 1900 + i })],
                Lift = new Lift { WidthMm = 900, DepthMm = 1000, HeightMm = 1900, RatedKg = 300 },
            },
        },
    };

    private static (Supply[] Supplies, Pdu[] Pdus) Feeds(int supplies, int pdus, int groups, int outlets = 2, int phases = 1) =>
    (
        [
            .. Enumerable.Range(0, supplies).Select(i => new Supply
            {
                Id = $"s{i}", VoltageV = 230, Phases = phases, RatedA = 16, Breaker = new Breaker { Curve = BreakerCurve.B, RatedA = 16, BreakingKa = 3 },
                Cable = new SupplyCable { LengthM = 90, CrossSectionMm2 = 1.5 }, FaultCurrentA = 4000, RcdMa = 30,
            }),
        ],
        [
            .. Enumerable.Range(0, pdus).Select(i => new Pdu
            {
                Id = $"p{i}", Supply = $"s{i % supplies}", RatedA = 16, Mounting = PduMounting.Vertical, Plug = ConnectorCode.Iec60309A16P1,
                Groups =
                [
                    .. Enumerable.Range(0, groups).Select(g => new OutletGroup
                    {
                        Id = $"g{g}", BreakerA = 10, Phase = phases == 3 ? (Phase)(g % 3) : null,
                        Outlets = [new OutletSet { Socket = ConnectorCode.C13, Count = outlets }, new OutletSet { Socket = ConnectorCode.C19, Count = 1 }],
                    }),
                ],
            }),
        ]);

    private static Item Plain(int i) => new()
    {
        Id = $"i{i}", HeightU = 1, MassKg = 5, Body = new Body { WidthMm = 430, HeightMm = 43, DepthMm = 400 }, Category = ItemCategory.Server,
    };

    private static Item At(Item item, int u, bool rear = false) => item with { Position = new Position { U = u, Face = rear ? Face.Rear : Face.Front } };

    private static ItemPower Power(int cords, double watts) => new()
    {
        RatedW = watts, TypicalW = watts, PowerFactor = 0.9, InrushA = 60, InrushMs = 6, LeakageMa = 3, VoltageV = 230,
        Plugs = [.. Enumerable.Repeat(ConnectorCode.C14, cords)],
    };

    private static ItemPower Mixed(int i) => Power(2, 100 + (i * 7 % 300))
        with { Plugs = i % 3 == 0 ? [ConnectorCode.C20, ConnectorCode.C14] : [ConnectorCode.C14, ConnectorCode.C14] };

    private static Item Wrong(int i, int cords) => Plain(i) with
    {
        MassKg = 60, Body = new Body { WidthMm = 460, HeightMm = 60, DepthMm = 900 }, Power = Power(cords, 900) with { Redundant = true },
        Airflow = new Airflow { Direction = i % 2 == 0 ? AirflowDirection.FrontToRear : AirflowDirection.RearToFront, FlowM3h = 20 },
        MaxInletC = 30, EarthStud = true, Console = true,
        Support = new Support
        {
            Style = i % 2 == 0 ? SupportStyle.Slides : SupportStyle.Runners, RatedKg = 30, ThicknessMm = 12, UsedExtended = true, MinSpacingMm = 600,
        },
        Cables = [.. Enumerable.Range(0, 50).Select(n => new CableBundle { DiameterMm = 10, Count = 10 })], RemotePowerCycle = true,
    };

    private static Item Slid(int i) => Plain(i) with
    {
        MassKg = 40, Support = new Support { Style = SupportStyle.Slides, RatedKg = 30, ExtensionMm = 800, UsedExtended = true },
    };

    private static Item Shelf(int i) => new() { Id = $"i{i}", HeightU = 1, Category = ItemCategory.Shelf, MassKg = 4, Body = new Body { DepthMm = 300 } };

    private static Item OnShelves(int i) => i < 100
        ? At(Shelf(i), 1 + (i % 60), i >= 60)
        : Plain(i) with { HeightU = 0, OnShelf = $"i{i - 100}", Body = new Body { WidthMm = 500, HeightMm = 300, DepthMm = 600 } };

    private static Item Studs(int i) => Plain(i) with
    {
        Console = true, EarthStud = true, EarthLead = new EarthLead { CrossSectionMm2 = 1, LengthM = 0.2 }, Power = Power(2, 400),
        Cables = [.. Enumerable.Range(0, 50).Select(n => new CableBundle { DiameterMm = 20, Count = 20 })],
        Battery = new Battery { Type = BatteryType.Vented, Cells = 24, CapacityAh = 100, Boost = true },
    };

    private static RackDescription Connected()
    {
        var rack = Crowd(i => At(Wrong(i, 4), 1 + (i % 60), i >= 60), Feeds(2, 8, 24));
        return rack with
        {
            Connections =
            [
                .. rack.Items.SelectMany(i => Enumerable.Range(0, 4).Select(p => new Connection { Item = i.Id, Plug = p, Pdu = "p0", Group = "g0" })),
            ],
        };
    }

    private static Acceptance Accept(int i) => new() { Rule = "layout.reserve", Pointer = $"/items/{i}", Reason = "none", AcceptedBy = "bench" };
}
