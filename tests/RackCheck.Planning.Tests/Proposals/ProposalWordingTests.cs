using System.Text.Json;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Planning.Proposals;
using RackCheck.Testing;
using static RackCheck.Planning.Tests.Baskets.DemoCatalogue;

namespace RackCheck.Planning.Tests.Proposals;

/// <summary>A client can word every text of a proposal in its own language from key and data.</summary>
public sealed class ProposalWordingTests
{
    private static readonly string[] Parts =
    [
        "UPS-30", "SRV-2", "SRV-110", "PC-210", "PC-410", "KVM-16", "KD-2", "SW-24", "PAT-24", "DRV-4", "DRV-6", "AMP-2", "DAQ-3", "GEN-2", "OSC-0",
    ];

    private static readonly string[] Rare =
    [
        // The endpoint says so where the catalogue does not answer: AvailabilityTests.
        "given-up.no-catalogue",
    ];

    private readonly WordingKeys keys = ServedKeys.Make();

    // Most of these lists conflict: in the height, the room, the supplies or the cabinets.
    [Fact]
    [Trait("Kind", "property")]
    public void Every_text_of_a_proposal_is_made_from_its_key_and_data()
    {
        var conflicts = 0;
        Parallel.For(0, Samples.Of(400, least: 40), run =>
        {
            var random = new Random(run);
            bool Often() => random.Next(2) == 0;
            var request = Request([.. Enumerable.Range(0, random.Next(2, 14)).Select(_ => Parts[random.Next(Parts.Length)])]);
            var first = request.Items[0].Id;
            request = request with
            {
                Items = [request.Items[0] with { Position = new Position { U = random.Next(1, 30) } }, .. request.Items.Skip(1)],
                GrowthPercent = random.Next(3) * 30,
                Cabinets = Often() ? [Low, .. Often() ? [Low with { HeightU = 9, HeightMm = 520 }] : Array.Empty<Cabinet>()] : null,
                MaxCabinets = Often() ? random.Next(1, 3) : null,
                Keep = Often() ? [first] : null,
                Groups = Often() ? [new ItemGroup { Id = "the pair", Items = [first, request.Items[1].Id] }] : null,
                Supplies = Often() ? [.. Enumerable.Range(0, random.Next(1, 3)).Select(i => SupplyOf(i, 2 + random.Next(30)))] : null,
                Site = new Site { Region = (Region)random.Next(3), AmbientMaxC = 22 + random.Next(25), RequiredIp = Often() ? "IP54" : null },
            };
            var answer = Answer(request);
            Check(request, answer);
            Interlocked.Add(ref conflicts, answer.Conflict is null ? 0 : 1);
        });
        Assert.True(conflicts >= 10, $"{conflicts} conflicts");
    }

    [Fact]
    public void Kinds_of_texts_of_proposals_are_reached()
    {
        foreach (var (request, offered, work) in Cases)
        {
            var answer = new ProposalPlanner(Judge.Checker).Plan(request, ByNumber, offered, new SearchBudget(work));
            Check(request, answer);
        }

        var own = MessageWording.DeclaredIn(typeof(ProposalWordings)).Select(w => w.Key);
        string[] unreached = [.. own.Intersect(keys.Unreached).Order(StringComparer.Ordinal)];
        Assert.Equal(Rare, unreached);
    }

    [Fact]
    public void Examples_are_worded_from_key_and_data()
    {
        foreach (var file in Directory.GetFiles(Repository.PathOf("openapi", "examples"), "proposal-*.json"))
        {
            var request = JsonSerializer.Deserialize(File.ReadAllText(file), ContractJson.Default.ProposalRequest)!;
            Check(request, Answer(request));
        }
    }

    private static Cabinet Low => new() { HeightU = 12, WidthMm = 600, DepthMm = 600, HeightMm = 640 };

    private static IEnumerable<(ProposalRequest Request, IReadOnlyList<Product> Offered, double Work)> Cases
    {
        get
        {
            yield return (Request("SRV-2", "NOT-YET-LISTED"), Products, SearchBudget.Quick);
            yield return (Request("SRV-2"), WithoutCabinets, SearchBudget.Quick);

            // No cabinet is as high as that.
            yield return (Request([.. Enumerable.Repeat("PC-410", 16)]) with { MaxCabinets = 1 }, Products, SearchBudget.Quick);

            // Nor as high as one item.
            yield return (Request() with { Items = [new Item { Id = "column", HeightU = 50, MassKg = 30 }] }, Products, SearchBudget.Quick);

            // One cabinet that the catalogue does not have, and two.
            yield return (Request("SW-24") with { Cabinets = [Low, new Cabinet { PartNumber = "NOT-YET-LISTED" }] }, Products, SearchBudget.Quick);
            yield return (
                Request("SW-24") with { Cabinets = [new Cabinet { PartNumber = "NOT-YET-LISTED" }, new Cabinet { PartNumber = "QWL-SW-24" }] },
                Products, SearchBudget.Quick);

            // Uprights of a new cabinet are set for what projects.
            var projecting = new Item
            {
                Id = "projecting", HeightU = 3, MassKg = 8, FrontProjectionMm = 90, Body = new Body { WidthMm = 430, HeightMm = 130, DepthMm = 200 },
            };
            yield return (Request() with { Items = [projecting], Cabinets = [new Cabinet { PartNumber = "QWL-CAB-42-6-8" }] }, Products, SearchBudget.Quick);

            // Without work to search, every requirement stays in the conflict.
            var all = Request("SRV-2", "KD-2", "GEN-2", "GEN-2", "SW-24");
            all = all with
            {
                Items = [all.Items[0] with { Position = new Position { U = 1 } }, .. all.Items.Skip(1), new Item { Id = "probe", HeightU = 1 }],
                Cabinets = [Low],
                Keep = ["srv-2-1"],
                Groups = [new ItemGroup { Id = "pair", Items = ["srv-2-1", "kd-2-1"] }],
                GrowthPercent = 10,
                Supplies = [SupplyOf(0, 16)],
                Site = new Site
                {
                    Region = Region.Eu,
                    AmbientMaxC = 45,
                    RequiredIp = "IP55",
                    UpsMinutes = 10,
                    Floor = new Floor { DistributedKnM2 = 5 },
                    Delivery = new Delivery
                    {
                        Openings = [new Opening { WidthMm = 900, HeightMm = 2000 }],
                        Corridors = [new Corridor { WidthMm = 1500, TurnIntoMm = 1200 }],
                        Ramps = [new Ramp { SlopePercent = 5 }],
                        Lift = new Lift { RatedKg = 1000 },
                    },
                },
            };
            yield return (all, Products, 0);
            yield return (all with { Cabinets = [Low, Low], Supplies = [SupplyOf(0, 16), SupplyOf(1, 16)], MaxCabinets = 1 }, Products, 0);

            // No cabinet passes the route, or stands on the floor.
            yield return (
                Request("SRV-2") with { Site = new Site { Delivery = new Delivery { Openings = [new Opening { WidthMm = 900, HeightMm = 900 }] } } },
                Products, SearchBudget.Quick);
            yield return (Request("SRV-2") with { Site = new Site { Floor = new Floor { DistributedKnM2 = 0.5 } } }, Products, SearchBudget.Quick);

            // A UPS that carries one server, and none for as long as asked.
            yield return (Request("UPS-15", "SRV-2", "SRV-2"), Products, SearchBudget.Quick);
            yield return (
                Request("UPS-15", "SRV-2", "SRV-2") with { Site = new Site { Region = Region.Eu, AmbientMaxC = 27, UpsMinutes = 120 } },
                Products, SearchBudget.Quick);

            // Alternatives: other cabinets, other PDUs in the only cabinet, other cooling, and rows of other cabinets.
            yield return (Request("SRV-2", "SRV-2", "SW-24"), Products, SearchBudget.Quick);
            yield return (Request("SRV-2", "SRV-2", "SW-24") with { Prefer = CabinetPreference.SmallestFootprint }, Products, SearchBudget.Quick);
            yield return (
                Request("DRV-4", "SRV-2", "SW-24") with { Cabinets = [new Cabinet { PartNumber = "QWL-CAB-42-8-10" }] }, Products, SearchBudget.Quick);
            yield return (
                Request("SRV-2", "SRV-2", "PC-410", "PC-410") with
                {
                    Cabinets = [new Cabinet { PartNumber = "QWL-CAB-42-8-10-S" }], Site = new Site { Region = Region.Eu, AmbientMaxC = 30 },
                },
                Products, SearchBudget.Quick);
            yield return (Request([.. Enumerable.Repeat("GEN-2", 26)]), Products, SearchBudget.Quick);
            yield return (Request([.. Enumerable.Repeat("GEN-2", 26)]) with { Prefer = CabinetPreference.SmallestFootprint }, Products, SearchBudget.Quick);

            foreach (var request in OneTooMany)
            {
                yield return (request, Products, SearchBudget.Quick);
            }

            // Fixings are missed without an error.
            yield return (Request("GEN-2"), [.. Products.Where(p => p.Kind != ProductKind.Fixings)], SearchBudget.Quick);
            yield return (Request([.. Parts]), Products, SearchBudget.Quick);

            // A hot room: an alternative with cooler air and a graver verdict; and a row of narrower cabinets.
            yield return (
                Request("SRV-2", "SRV-2", "SW-24", "PC-410") with { Site = new Site { Region = Region.Eu, AmbientMaxC = 38 } }, Products, SearchBudget.Quick);
            yield return (
                Request([.. Enumerable.Repeat("DRV-6", 8), "SRV-2", "SRV-2", .. Enumerable.Repeat("GEN-2", 6)]), Products, SearchBudget.Quick);

            // Fewer warnings in a larger cabinet.
            yield return (
                Request("KVM-16", "DRV-6", "SW-24", "DAQ-3", "DRV-6") with
                {
                    GrowthPercent = 30, Site = new Site { Region = Region.Na, AmbientMaxC = 40, RequiredIp = "IP54" },
                },
                Products, SearchBudget.Quick);

            // More height than there is, for one cabinet and for several, with and without room for growth.
            var high = Request([.. Enumerable.Repeat("GEN-2", 7)]) with { Cabinets = [Low] };
            foreach (double? growth in (double?[])[null, 100])
            {
                yield return (high with { GrowthPercent = growth, MaxCabinets = 1 }, Products, SearchBudget.Quick);
                yield return (Request([.. Enumerable.Repeat("GEN-2", 25)]) with { Cabinets = [Low], GrowthPercent = growth }, Products, SearchBudget.Quick);
            }
        }
    }

    // Each is met without one requirement alone.
    private static IEnumerable<ProposalRequest> OneTooMany
    {
        get
        {
            var open = new Cabinet
            {
                HeightU = 42, WidthMm = 800, DepthMm = 1000, HeightMm = 2000, IpCode = "IP20", FrontDoor = new Door { Style = DoorStyle.Perforated },
                RearDoor = new Door { Style = DoorStyle.Perforated },
            };
            yield return Request("PAT-24", "KVM-16") is var kept
                ? kept with { Items = [kept.Items[0] with { Position = new Position { U = 25 } }, kept.Items[1]], Cabinets = [Low], Keep = ["pat-24-1"] }
                : null!;
            yield return Request("DRV-4", "SRV-2") with { Supplies = [SupplyOf(0, 10), SupplyOf(1, 9)] };
            yield return Request("DRV-6") with { Supplies = [SupplyOf(0, 2)] };
            yield return Request("SRV-2") with { Cabinets = [Low] };
            yield return Request("BAT-48") with { Site = new Site { Region = Region.Eu, AmbientMaxC = 36 } };
            yield return Request([.. Enumerable.Repeat("GEN-2", 9), "OSC-0"]) with
            {
                Cabinets = [new Cabinet { PartNumber = "QWL-CAB-24-8-10" }], GrowthPercent = 20, MaxCabinets = 1,
            };
            yield return Request([.. Enumerable.Repeat("DRV-6", 8)]) is var many
                ? many with { Groups = [new ItemGroup { Id = "all", Items = [.. many.Items.Select(i => i.Id)] }] }
                : null!;

            // Too heavy together for any cabinet on offer, though not too high.
            yield return Request() with
            {
                Items =
                [
                    .. Enumerable.Range(0, 5).Select(i => new Item
                    {
                        Id = $"press-{i}", HeightU = 4, MassKg = 250, Category = ItemCategory.Instrument, Body = new Body { DepthMm = 400 },
                        Support = new Support { Style = SupportStyle.Runners, RatedKg = 400 },
                    }),
                ],
                MaxCabinets = 1,
            };
            yield return Request("GEN-2") with { Cabinets = [open], Site = new Site { Region = Region.Eu, AmbientMaxC = 25, RequiredIp = "IP55" } };
            yield return Request("SRV-2") with
            {
                Site = new Site { Region = Region.Eu, AmbientMaxC = 25, UpsMinutes = 10 },
                Policy = new Policy { Rules = new Dictionary<string, RulePolicy> { ["power.ups-capacity"] = new() { Severity = PolicySeverity.Error } } },
            };
            yield return Request(
                "OSC-0", "SRV-110", "DRV-6", "SRV-2", "DAQ-3", "SRV-110", "AMP-2", "PC-210", "PAT-24", "AMP-2", "PC-210", "GEN-2", "PC-410") with
            {
                GrowthPercent = 30, Groups = [new ItemGroup { Id = "pair", Items = ["osc-0-1", "srv-110-1"] }],
                Site = new Site { Region = Region.Na, AmbientMaxC = 41 },
            };
            yield return Request("DRV-4", "SRV-2") with
            {
                GrowthPercent = 30, Groups = [new ItemGroup { Id = "pair", Items = ["drv-4-1", "srv-2-1"] }],
                Supplies = [SupplyOf(0, 10), SupplyOf(1, 9)], Site = new Site { Region = Region.Uk, AmbientMaxC = 36 },
            };
            yield return Request([.. Enumerable.Repeat("GEN-2", 12), "OSC-0"]) with
            {
                Cabinets = [new Cabinet { PartNumber = "QWL-CAB-24-8-10" }], MaxCabinets = 1,
            };
            yield return Request([.. Enumerable.Repeat("GEN-2", 11), "OSC-0"]) with
            {
                Cabinets = [new Cabinet { PartNumber = "QWL-CAB-24-8-10" }], MaxCabinets = 1, GrowthPercent = 5,
            };
        }
    }

    private static Supply SupplyOf(int index, double ratedA) => new()
    {
        Id = $"feed-{index}", VoltageV = 230, Phases = 1, RatedA = ratedA, Socket = ConnectorCode.Iec60309A16P1,
    };

    private static ProposalAnswer Answer(ProposalRequest request) => new ProposalPlanner(Judge.Checker).Plan(request, ByNumber, Products);

    private void Check(ProposalRequest request, ProposalAnswer answer) => keys.CheckAnswer(
        JsonSerializer.Serialize(answer, ContractJson.Default.ProposalAnswer),
        JsonSerializer.Serialize(request, ContractJson.Default.ProposalRequest) + ServedKeys.Catalogue);
}
