using RackCheck.Model;
using RackCheck.Planning.Baskets;
using static RackCheck.Planning.Tests.Baskets.DemoCatalogue;

namespace RackCheck.Planning.Tests.Baskets;

/// <summary>What a shop shows beside a line: what it is for, what it costs, what was meant.</summary>
public sealed class LineAnswerTests
{
    private static BasketLine Own(string id, int quantity) => new() { Item = new Item { Id = id, HeightU = 1, MassKg = 4 }, Quantity = quantity };

    private static BasketRequest Plus(BasketRequest basket, params BasketLine[] more) => basket with { Lines = [.. basket.Lines, .. more] };

    [Theory]
    [InlineData("a", 2, "a-2", 1)]
    [InlineData("a-2", 1, "a", 3)]
    [InlineData("a-2", 2, "a", 2)]
    [InlineData("QWL-SRV-2-1", 2, "QWL-SRV-2", 3)]
    public void Pieces_of_own_equipment_have_ids_of_their_own(string one, int count, string other, int further)
    {
        var report = Plan(Plus(Basket(("SRV-2", 2)), Own(one, count), Own(other, further)));
        var ids = report.Rack!.Items.Select(i => i.Id).ToArray();
        Assert.Equal(ids.Distinct(), ids);
        Assert.Equal([2, count, further], report.LineItems.Select(l => l.Items.Count));
        Assert.Contains(one, report.LineItems[1].Items);
        Assert.Contains(other, report.LineItems[2].Items);
    }

    [Fact]
    public void What_no_ups_can_feed_although_it_is_wanted_is_unmet()
    {
        BasketRequest WithUps(int servers, int ups) => Basket(("UPS-30", ups), ("SRV-2", servers)) with
        {
            Lines =
            [
                .. Basket(("UPS-30", ups)).Lines.Where(_ => ups > 0),
                new BasketLine { PartNumber = "QWL-SRV-2", Quantity = servers, Options = new LineOptions { OnUps = true } },
            ],
        };
        UnmetNeed? Left(BasketRequest request) => Plan(request).Unmet.SingleOrDefault(u => u.WhatKey == "need.ups-power");

        Assert.Null(Left(WithUps(1, 1)));
        var many = Left(WithUps(8, 1))!;
        Assert.StartsWith("unmet.ups-power.power", many.MessageKey, StringComparison.Ordinal);
        Assert.InRange(many.WhatData["items"].List!.Count, 3, 7);
        var none = Left(WithUps(2, 0))!;
        Assert.Equal("The order has no UPS.", none.Reason);
        Assert.Equal(2, none.WhatData["items"].List!.Count);
    }

    [Theory]
    [InlineData("qwl-srv-2", "QWL-SRV-2")]
    [InlineData("SRV-2", "QWL-SRV-2")]
    [InlineData("QWL SRV 2", "QWL-SRV-2")]
    [InlineData("QWL-SVR-2", "QWL-SRV-2")]
    [InlineData("crd-13-30", "QWL-CRD-13-30")]
    [InlineData("U-2", null)]
    [InlineData("something else", null)]
    public void Mistyped_part_number_has_a_suggestion(string typed, string? meant)
    {
        var lines = (BasketLine[])[new() { PartNumber = typed, Quantity = 1 }, new() { Item = new Item { Id = "x", PartNumber = typed }, Quantity = 1 }];
        foreach (var status in lines.Select(l => Plan(Plus(Basket(("CAB-42-8-10", 1)), l)).LineStatus[1]))
        {
            Assert.Equal((LineState.Unknown, meant), (status.Status, status.DidYouMean));
            Assert.Equal(meant is not null, status.Message!.Contains("Did you mean", StringComparison.Ordinal));
        }
    }

    // Each guess compares with all products; a basket of a thousand unknown numbers gets guesses for the first of them.
    [Fact]
    public void Thousand_unknown_part_numbers_have_few_guesses()
    {
        var basket = new BasketRequest { Lines = [.. Enumerable.Range(0, 1000).Select(i => new BasketLine { PartNumber = $"QWL-SRV-{i}X", Quantity = 1 })] };
        var lines = Plan(basket with { Options = new BasketOptions { Cabinet = new BasketCabinet() } }).LineStatus;
        Assert.All(lines, l => Assert.Equal(LineState.Unknown, l.Status));
        Assert.InRange(lines.Count(l => l.DidYouMean is not null), 1, 50);
    }

    [Fact]
    public void Lines_of_fixings_state_one_need_counted_in_the_completed_rack()
    {
        foreach (var request in (BasketRequest[])[Basket(("UPS-30", 2), ("SRV-2", 2)), Basket(("CAB-42-6-6", 1), ("SRV-2", 8), ("FIX-CN20", 1))])
        {
            var report = Plan(request);
            MissingLine[] fixings = [.. report.MissingLines.Where(m => ByNumber[m.PartNumber].Kind == ProductKind.Fixings)];
            var data = Assert.Single(fixings.Select(f => (f.MessageData["needed"].Number, f.MessageData["missing"].Number)).Distinct());
            var ordered = request.Lines.Sum(l => ByNumber[l.PartNumber!] is { Kind: ProductKind.Fixings } p ? l.Quantity * (p.Pieces ?? 1) : 0);
            Assert.Equal(data.Item1 - ordered, data.Item2);

            // Packs: enough, and not a whole small pack more.
            var bought = fixings.Sum(f => f.Quantity * (ByNumber[f.PartNumber].Pieces ?? 1));
            Assert.InRange(bought - data.Item2!.Value, 0, 49);
        }
    }

    [Fact]
    public void Missing_lines_name_price_and_lines_that_need_them()
    {
        var report = Plan(Basket(("SRV-2", 2), ("SW-24", 1)));
        foreach (var line in report.MissingLines)
        {
            Assert.Equal((ByNumber[line.PartNumber].Price, ByNumber[line.PartNumber].Currency), (line.Price, line.Currency));
        }

        var rails = Assert.Single(report.MissingLines, m => ByNumber[m.PartNumber].Kind == ProductKind.Support);
        Assert.Equal(["/lines/0"], rails.ForLines);
        Assert.Empty(Assert.Single(report.MissingLines, m => ByNumber[m.PartNumber].Kind == ProductKind.Cabinet).ForLines);
        Assert.Contains("/lines/1", report.MissingLines.Where(m => ByNumber[m.PartNumber].Kind == ProductKind.Cord).SelectMany(m => m.ForLines));
    }

    [Fact]
    public void Existing_cabinet_that_the_catalogue_does_not_have_is_named()
    {
        var answer = Answer(Basket(("SRV-2", 1)) with
        {
            Options = new BasketOptions { Cabinet = new BasketCabinet { Existing = new Cabinet { PartNumber = "QWL-NOPE" } } },
        });
        var fault = Assert.Single(answer.Faults);
        Assert.Equal(("/options/cabinet/existing/partNumber", BasketPlanner.NoCabinet), (fault.Pointer, fault.Code));
    }
}
