using System.Text.Json;
using CsCheck;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Rules;
using RackCheck.Testing;
using static RackCheck.Planning.Tests.Baskets.DemoCatalogue;

namespace RackCheck.Planning.Tests.Baskets;

/// <summary>A shop can word every line of a report in its own language from key and data.</summary>
public sealed class BasketWordingTests
{
    private static readonly string Catalogue = JsonSerializer.Serialize(new ProductList { Products = Products }, ContractJson.Default.ProductList);

    // These need parts or faults that no order here has; random baskets meet most of them.
    private static readonly string[] RareKinds =
    [
        "excess.cable-arm", "excess.earth-bar", "excess.earth-lead", "excess.filter", "excess.kvm-lead", "excess.no-fixings", "excess.not-needed",
        "excess.roof-fans", "line.cable-arms", "line.roof-fans", "line.shared-load", "need.earth-bar", "need.second-supply", "status.faulty",
        "unmet.earth-bar", "unmet.second-supply",
    ];

    private readonly WordingKeys keys = new([.. PlanningWordings.All, .. RuleSet.Default.All.SelectMany(r => r.Wordings)]);

    [Fact]
    [Trait("Kind", "property")]
    public void Every_text_about_a_line_is_made_from_its_key_and_data() =>
        BasketPropertyTests.Baskets.Sample(request => Check(request, Plan(request)), iter: Samples.Of(300), print: r => Text(r));

    [Fact]
    public void Kinds_of_texts_about_lines_are_reached()
    {
        // Where nothing but cabinets and equipment is on offer, whatever the equipment needs stays unmet.
        Product[] few = [.. Products.Where(p => p.Kind is ProductKind.Cabinet or ProductKind.Equipment && p.Item?.KvmPorts is null)];
        foreach (var request in Requests)
        {
            foreach (var offered in (IReadOnlyList<Product>[])[Products, few, WithoutCabinets])
            {
                if (Answer(request, offered).Report is { } report)
                {
                    Check(request, report);
                }
            }
        }

        // A kind of text stands for its variants in number.
        string[] unreached = [.. PlanningWordings.All.Select(w => KindOf(w.Key)).Distinct().Except(Reached).Order(StringComparer.Ordinal)];
        Assert.Equal(RareKinds, unreached);
    }

    private IEnumerable<string> Reached => PlanningWordings.All.Select(w => w.Key).Except(keys.Unreached).Select(KindOf);

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
                Basket(("DOR-24-6FG", 1), ("CAB-42-8-10", 1), ("CAB-42-6-8", 2), ("DOR-42-6FG", 2)),
                Basket(("CAB-42-8-10", 1), ("FAN-R2", 9), ("FAN-T3", 1), ("COL-10", 2)),
                Basket(("CAB-42-8-10-S", 1), ("DRV-4", 2), ("COL-10", 1)),
                Basket(("RUN-60M", 2), ("CAB-42-8-10", 1), ("DRV-4", 1), ("RUN-60M", 3)),
                Basket(("CAB-42-6-6", 1), ("SRV-220", 1)),
                Basket(("CAB-24-8-8", 1), ("GEN-2", 13)),
                Basket(("GEN-2", 40)),
                Basket(("CRD-13-20", 5), ("BP-1", 3)),
                Basket(("CAB-42-8-10", 1), ("SRV-11O", 1), ("NO-SUCH", 1), ("DU-16-VL", 40), ("CRD-13-20", 3), ("EBR-20", 2)),
                Basket(("CAB-42-8-10", 1), ("DU-32-V", 1), ("DU-16-VL", 1), ("DU-16-HU", 1), ("GEN-2", 12)) with { Supplies = [supply] },
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

    private void Check(BasketRequest request, BasketReport report)
    {
        var given = Text(request) + Catalogue;
        foreach (var line in report.MissingLines)
        {
            keys.Check(line.MessageKey, line.MessageData, line.Reason, given);
        }

        foreach (var line in report.ExcessLines)
        {
            keys.Check(line.MessageKey, line.MessageData, line.Reason, given);
        }

        foreach (var line in report.ReplaceLines)
        {
            keys.Check(line.MessageKey, line.MessageData, line.Reason, given);
        }

        foreach (var need in report.Unmet)
        {
            keys.Check(need.WhatKey, need.WhatData, need.What, given);
            keys.Check(need.MessageKey, need.MessageData, need.Reason, given);
        }

        foreach (var line in report.LineStatus.Where(l => l.Message is not null))
        {
            keys.Check(line.MessageKey!, line.MessageData!, line.Message!, given);
        }

        foreach (var assumption in report.Assumptions)
        {
            keys.Check(assumption, given);
        }
    }

    private static string Text(BasketRequest request) => JsonSerializer.Serialize(request, ContractJson.Default.BasketRequest);
}
