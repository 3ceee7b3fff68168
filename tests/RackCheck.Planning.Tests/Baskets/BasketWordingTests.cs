using System.Text.Json;
using System.Text.Json.Nodes;
using CsCheck;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Planning.Baskets;
using RackCheck.Planning.Proposals;
using RackCheck.Survey.Catalogue;
using RackCheck.Testing;
using static RackCheck.Planning.Tests.Baskets.DemoCatalogue;

namespace RackCheck.Planning.Tests.Baskets;

/// <summary>A shop can word every line of a report in its own language from key and data.</summary>
public sealed class BasketWordingTests
{
    private static readonly HashSet<string> OfProposals =
    [
        .. new[] { typeof(ProposalWordings), typeof(RemedyLoop) }.SelectMany(MessageWording.DeclaredIn).Select(w => w.Key),
        "assumption.factory-bonds", "assumed-value.bonded-parts",
    ];

    private static readonly string[] RareKinds =
    [
        // The completed order has fewer of a part than was ordered, and no rack gives a reason: NetChange takes care of it, no order here is like that.
        "excess.not-needed",

        // Roof fans are added only where those of the order move too little air and others clear that without a new finding: no order here is like that.
        "line.roof-fans",
    ];

    private readonly WordingKeys keys = ServedKeys.Make();

    [Fact]
    [Trait("Kind", "property")]
    public void Every_text_about_a_line_is_made_from_its_key_and_data() =>
        BasketPropertyTests.Baskets.Sample(request => Check(request, Plan(request)), iter: Samples.Of(300), print: r => Text(r));

    [Fact]
    public void Kinds_of_texts_about_lines_are_reached()
    {
        // Where nothing but cabinets and equipment is on offer, whatever the equipment needs stays unmet.
        Product[] few = [.. Products.Where(p => p.Kind is ProductKind.Cabinet or ProductKind.Equipment && p.Item?.KvmPorts is null)];
        Product[] fewer = [.. Products.Where(p => p.Kind is not (ProductKind.Pdu or ProductKind.EarthBar))];
        foreach (var request in Requests)
        {
            foreach (var offered in (IReadOnlyList<Product>[])[Products, few, WithoutCabinets, fewer])
            {
                if (Answer(request, offered).Report is { } report)
                {
                    Check(request, report);
                }
            }
        }

        foreach (var request in Directory.GetFiles(Repository.PathOf("tests", "acceptance", "baskets"), "*.json").Select(Case))
        {
            Check(request, Plan(request));
        }

        // More cabinets without equipment than racks of one answer.
        var empty = Basket(("CAB-42-6-8", 7));
        Check(empty, Plan(empty));

        // Hosts in another cabinet than the console.
        var apart = Basket(("CAB-42-6-8", 2), ("PC-210", 4), ("UPS-15", 1), ("KVM-8", 1), ("KD-1", 1));
        Check(apart, Plan(apart));

        // More PDUs behind a UPS than UPSs, and more equipment than it feeds, or none.
        var server = new BasketLine { PartNumber = "QWL-SRV-2", Quantity = 8, Options = new LineOptions { OnUps = true } };
        var spare = Basket(("UPS-30", 1), ("DU-16-HU", 2));
        Supply[] supplies = [new() { Id = "S0", VoltageV = 230, Phases = 1, RatedA = 32, Socket = ConnectorCode.Iec60309A32P1 }];
        foreach (var request in (BasketRequest[])[spare with { Lines = [.. spare.Lines, server] }, spare with { Supplies = supplies },
            spare with { Lines = [server] }])
        {
            Check(request, Plan(request));
        }

        // Too much for the cabinet, behind one supply: everything is tried until the work is spent.
        var spent = Basket(("CAB-42-6-12", 2), ("KVM-8R", 4), ("SH-450S", 1), ("DRV-4", 3), ("PSU-3", 3), ("DSP-D22", 3), ("DOR-42-6RS", 6)) with
        {
            Supplies = [new Supply { Id = "S0", VoltageV = 230, Phases = 1, RatedA = 32, Socket = ConnectorCode.Iec60309A16P1 }],
            Site = new Site { Region = Region.Eu },
        };
        Check(spent, Plan(spent));

        // The customer's own cabinet, with its uprights too far in front, and too shallow.
        var own = new Cabinet { HeightU = 20, WidthMm = 600, DepthMm = 800, MassKg = 60, FrontDoor = new Door { Style = DoorStyle.Perforated } };
        foreach (var existing in (Cabinet[])[own with { Uprights = new Uprights { FrontSetbackMm = 60, SpacingMm = 600 } }, own with { DepthMm = 400 }])
        {
            var owned = Basket(("AMP-1", 1), ("SRV-2", 1)) with { Options = new BasketOptions { Cabinet = new BasketCabinet { Existing = existing } } };
            Check(owned, Plan(owned));
        }

        // A full cabinet: horizontal PDUs find no U position.
        var full = Basket(("PC-210", 4)) with
        {
            Options = new BasketOptions
            {
                Cabinet = new BasketCabinet { Existing = own with { HeightU = 8, Uprights = new Uprights { FrontSetbackMm = 60, SpacingMm = 600 } } },
            },
        };
        Check(full, Plan(full, [.. Products.Where(p => p.Pdu?.Mounting != PduMounting.Vertical)]));
        var horizontal = full with { Lines = [.. full.Lines, .. Basket(("DU-16-H", 1)).Lines] };
        Check(horizontal, Plan(horizontal));

        // Parts that nothing needs; and the customer's own UPS that is too small.
        foreach (var needless in (BasketRequest[])[Basket(("CAB-42-8-8", 1), ("DU-16-VL", 3), ("PC-210", 2)),
            Basket(("UPS-15", 1)) with
            {
                Lines =
                [
                    new BasketLine { Item = OwnUps, Quantity = 1 },
                    new BasketLine { PartNumber = "QWL-DRV-6", Quantity = 1, Options = new LineOptions { OnUps = true } },
                ],
            }])
        {
            Check(needless, Plan(needless));
        }

        // A UPS that lasts for some of what it is for, one that is exchanged as it does not, and one with too little apparent power.
        foreach (var onUps in (bool?[])[null, true])
        {
            var computers = new BasketLine { PartNumber = "QWL-PC-410", Quantity = 3, Options = new LineOptions { OnUps = onUps } };
            var timed = Basket(("UPS-15", 1)) with { Lines = [.. Basket(("UPS-15", 1)).Lines, computers], Site = new Site { UpsMinutes = 10 } };
            Check(timed, Plan(timed));
        }

        var reactive = new Item
        {
            Id = "reactive", HeightU = 2, MassKg = 9, Category = ItemCategory.Server,
            Power = new ItemPower { RatedW = 1300, PowerFactor = 0.7, Plugs = [ConnectorCode.C14] },
        };
        var heavier = Basket(("UPS-15", 1)) with
        {
            Lines = [.. Basket(("UPS-15", 1)).Lines, new BasketLine { Item = reactive, Quantity = 1, Options = new LineOptions { OnUps = true } }],
        };
        Check(heavier, Plan(heavier));

        var column = Basket() with { Lines = [new BasketLine { Item = new Item { Id = "column", HeightU = 50, MassKg = 30 }, Quantity = 1 }] };
        Check(column, Plan(column));

        // One supply for far more than it has.
        var supply = new Supply { Id = "A", VoltageV = 230, Phases = 1, RatedA = 16, Socket = ConnectorCode.Iec60309A16P1 };
        var loaded = Basket(("DRV-4", 8)) with { Supplies = [supply] };
        Check(loaded, Plan(loaded));

        // Doors that let air through and an air conditioner; a door that shuts the air in; an earth bar and a UPS that are too small.
        var driven = new BasketLine { PartNumber = "QWL-DRV-6", Quantity = 1, Options = new LineOptions { OnUps = true } };
        foreach (var request in (BasketRequest[])[Basket(("CAB-42-6-10", 1), ("AMP-1", 1), ("COL-10", 1)),
            Basket(("CAB-42-6-8", 1), ("SRV-2", 3), ("DOR-42-6RS", 1)), Basket(("CAB-42-6-8", 1), ("AMP-32", 8), ("EBR-8", 1)),
            Basket(("UPS-15", 1)) with { Lines = [.. Basket(("UPS-15", 1)).Lines, driven] }])
        {
            Check(request, Plan(request));
        }

        var studs = Case(Repository.PathOf("tests", "acceptance", "baskets", "strain-amplifiers-with-earth-studs.json"));
        Check(studs, Plan(studs, fewer));

        var faulty = new ProductDictionary(
            ByNumber.Where(p => p.Key != "QWL-GEN-2").ToDictionary(),
            new Dictionary<string, Fault> { ["QWL-GEN-2"] = new() { Pointer = "/item/heightU", Code = "out-of-range", Detail = "" } });
        var order = Basket(("CAB-42-6-8", 1), ("GEN-2", 1), ("SRV-2", 1));
        Check(order, new BasketPlanner(Judge.Checker).Plan(order, faulty, Products).Report!);

        // A kind of text stands for its variants in number.
        string[] unreached = [.. OfBaskets.Select(w => KindOf(w.Key)).Distinct().Except(Reached).Order(StringComparer.Ordinal)];
        Assert.Equal(RareKinds, unreached);
    }

    // Those of proposals are ProposalWordingTests' matter.
    private static IEnumerable<MessageWording> OfBaskets => PlanningWordings.All.Where(w => !OfProposals.Contains(w.Key));

    private IEnumerable<string> Reached => OfBaskets.Select(w => w.Key).Except(keys.Unreached).Select(KindOf);

    private static string KindOf(string key) => string.Join('.', key.Split('.').Take(2));

    private static IEnumerable<BasketRequest> Requests
    {
        get
        {
            var supply = new Supply { Id = "A", VoltageV = 230, Phases = 1, RatedA = 16, Socket = ConnectorCode.Iec60309A16P1 };
            var own = new Item { Id = "recorder", HeightU = 3, MassKg = 9, Body = new Body { WidthMm = 440, HeightMm = 130, DepthMm = 380 } };
            return
            [
                Basket(("SRV-2", 2), ("UPS-30", 1), ("AMP-32", 1), ("PC-210", 3), ("KD-1", 1), ("PC-D1", 1)),
                Basket(("CAB-42-6-8", 1), ("DRV-4", 2), ("PC-D1", 1), ("SW-48", 1), ("AMP-2", 3)),
                Basket(("CAB-42-6-8", 1), ("GEN-2", 1), ("FIX-CN20", 9), ("FIX-SC20", 1), ("DU-16-HU", 1), ("CRD-E13-20", 1)),
                Basket(("CAB-42-6-8", 1), ("FIX-CN20", 1), ("BP-1", 50), ("SH-450S", 1)),
                Basket(("PC-210", 2)),
                Basket(("DOR-24-6FG", 1), ("CAB-42-8-10", 1), ("CAB-42-6-8", 2), ("DOR-42-6FG", 2), ("GEN-2", 1)),
                Basket(("CAB-42-8-10", 1), ("FAN-R2", 9), ("FAN-T3", 1), ("COL-10", 2)),
                Basket(("CAB-42-8-10-S", 1), ("DRV-4", 2), ("COL-10", 1)),
                Basket(("RUN-60M", 2), ("CAB-42-8-10", 1), ("DRV-4", 1), ("RUN-60M", 3)),
                Basket(("CAB-42-6-6", 1), ("SRV-220", 1)),
                Basket(("CAB-24-8-8", 1), ("GEN-2", 13)),
                Basket(("GEN-2", 40)),
                Basket(("CRD-13-20", 5), ("BP-1", 3)),
                Basket(("CAB-42-8-10", 1), ("SRV-11O", 1), ("NO-SUCH", 1), ("DU-16-VL", 40), ("CRD-13-20", 3), ("EBR-20", 2)),
                Basket(("CAB-42-8-10", 1), ("DU-32-V", 1), ("DU-16-VL", 1), ("DU-16-HU", 1), ("GEN-2", 12)) with { Supplies = [supply] },
                Basket(("CAB-42-8-10", 1), ("GEN-2", 1), ("CMA-1", 2), ("EBR-24", 3), ("ELD-6-15", 9), ("FLT-30", 2), ("KVL-18", 3), ("FAN-R4", 20)),
                Basket(("CAB-42-8-10", 1), ("FIX-CN20", 1), ("FAN-R4", 30)),
                Basket(("CAB-42-8-10", 1), ("DU-16-VL", 1), ("SRV-2", 1)) with { Supplies = [supply] },
                Basket(("CAB-42-8-10", 1), ("DU-30-VN", 1), ("SRV-2", 1)) with { Site = new Site { Region = Region.Eu } },
                Basket(("CAB-42-8-10", 1), ("DU-16-H", 1), ("SRV-2", 6)),
                Basket(("CAB-42-8-10", 1), ("FIX-CN20", 1)),
                Basket(("CAB-42-8-10", 1), ("AMP-32", 12)),
                Basket(("CAB-42-8-10", 1)) with
                {
                    Lines =
                    [
                        new BasketLine { PartNumber = "QWL-CAB-42-8-10", Quantity = 1 }, new BasketLine { Item = own, Quantity = 2 },
                        new BasketLine { Item = own with { Id = "probe", HeightU = null, PartNumber = "NO-SUCH" }, Quantity = 1 },
                    ],
                },
            ];
        }
    }

    private static BasketRequest Case(string file) =>
        JsonNode.Parse(File.ReadAllText(file))!["request"].Deserialize(ContractJson.Default.BasketRequest)!;

    private void Check(BasketRequest request, BasketReport report) => keys.CheckAnswer(TextOf(report), Text(request) + ServedKeys.Catalogue);

    private static string Text(BasketRequest request) => JsonSerializer.Serialize(request, ContractJson.Default.BasketRequest);
}
