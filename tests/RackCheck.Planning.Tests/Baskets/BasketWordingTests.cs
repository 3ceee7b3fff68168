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

    private readonly WordingKeys keys = new([.. PlanningWordings.All, .. RuleSet.Default.All.SelectMany(r => r.Wordings)]);

    [Fact]
    [Trait("Kind", "property")]
    public void Every_text_about_a_line_is_made_from_its_key_and_data() =>
        BasketPropertyTests.Baskets.Sample(request => Check(request, Plan(request)), iter: Samples.Of(300), print: r => Text(r));

    [Fact]
    public void Every_key_of_a_line_is_reached()
    {
        // Nothing but cabinets on offer: whatever the equipment needs stays unmet.
        Product[] cabinets = [.. Products.Where(p => p.Kind is ProductKind.Cabinet or ProductKind.Equipment)];
        foreach (var request in Requests)
        {
            Check(request, Plan(request));
            Check(request, Plan(request, cabinets));
        }

        Assert.Empty(keys.Unreached.Where(k => PlanningWordings.All.Any(w => w.Key == k)));
    }

    private static IEnumerable<BasketRequest> Requests =>
    [
        Basket(("SRV-2", 2), ("UPS-30", 1), ("AMP-32", 1), ("PC-210", 3), ("KD-1", 1), ("PC-D1", 1)),
    ];

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
            keys.Check(assumption.BasisKey, assumption.BasisData, assumption.Basis, given);
        }
    }

    private static string Text(BasketRequest request) => JsonSerializer.Serialize(request, ContractJson.Default.BasketRequest);
}
