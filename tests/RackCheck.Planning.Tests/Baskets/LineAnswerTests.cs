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

    // The demo catalogue's highest cabinet has 47 U.
    [Theory]
    [InlineData(47, null, null)]
    [InlineData(48, null, "It takes 48 U; the highest cabinet on offer has 47 U.")]
    [InlineData(21, 20, "It takes 21 U; the cabinet has 20 U.")]
    public void Equipment_higher_than_every_cabinet_is_proven_to_have_no_room(int heightU, int? ownU, string? reason)
    {
        var column = new Item { Id = "column", HeightU = heightU, MassKg = 20, Category = ItemCategory.Other };
        var own = new Cabinet { HeightU = ownU, WidthMm = 600, DepthMm = 800, MassKg = 60 };
        var report = Plan(new BasketRequest
        {
            Lines = [new BasketLine { Item = column, Quantity = 1 }],
            Options = ownU is null ? null : new BasketOptions { Cabinet = new BasketCabinet { Existing = own } },
        });
        var room = report.Unmet.SingleOrDefault(u => u.WhatKey == "need.room");
        Assert.Equal((reason, reason is not null), (room?.Reason, room?.Proven ?? false));
    }

    // The connector C15 goes onto the inlets C14 and C16, C13 onto C14 alone: IEC 60320-1 (value from memory).
    [Fact]
    public void Cord_for_hot_conditions_serves_another_inlet_too()
    {
        var report = Plan(Basket(("CAB-42-6-8", 1), ("SRV-2", 2), ("CRD-15-20", 2)));
        Assert.Empty(report.ExcessLines);
        Assert.Equal(2, report.MissingLines.Where(m => m.PartNumber.StartsWith("QWL-CRD-13", StringComparison.Ordinal)).Sum(m => m.Quantity));
        var more = Plan(Basket(("CAB-42-6-8", 1), ("SRV-2", 1), ("CRD-15-20", 5)));
        Assert.Equal((3, "excess.cord"), (Assert.Single(more.ExcessLines).Quantity, more.ExcessLines[0].MessageKey));
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

    // Six outlets of the only PDU that suits the room feed three of four cords: the line of the fourth is the one to look at.
    [Fact]
    public void Line_is_to_be_checked_for_what_is_open_after_completion()
    {
        var supply = new Supply { Id = "A", VoltageV = 230, Phases = 1, RatedA = 16, Socket = ConnectorCode.Cee73 };
        var cabinet = new Cabinet
        {
            HeightU = 12, WidthMm = 600, DepthMm = 600, Base = new CabinetBase { Style = BaseStyle.Wall }, WallLoadKg = 60,
            FrontDoor = new Door { Style = DoorStyle.Glazed }, RearDoor = new Door { Style = DoorStyle.None },
            Uprights = new Uprights { Hole = UprightHole.Square, FrontSetbackMm = 80, SpacingMm = 400 },
        };
        var report = Plan(Basket(("SW-24", 1), ("PC-M1", 1), ("UPS-15", 1)) with
        {
            Supplies = [supply], Options = new BasketOptions { Cabinet = new BasketCabinet { Existing = cabinet } },
            Site = new Site { Region = Region.Eu, AmbientMaxC = 27 },
        });
        Assert.Contains(report.CompletedReport!.Findings, f => f.Rule == "power.no-source" && f.MessageData["item"].Text == "QWL-UPS-15-1");
        Assert.Equal(LineState.Ok, report.LineStatus[1].Status);
        Assert.Equal((LineState.Check, "power.no-source.one"), (report.LineStatus[2].Status, report.LineStatus[2].MessageKey));
    }

    // The height of the car is that of the cabinet's line; so is the mass, of which it has most.
    [Fact]
    public void Findings_of_the_lift_are_of_the_line_of_the_cabinet()
    {
        var report = Plan(Basket(("CAB-42-8-12", 1), ("SRV-110", 6)) with
        {
            Site = new Site
            {
                Region = Region.Eu, Delivery = new Delivery { Lift = new Lift { WidthMm = 1300, DepthMm = 1400, HeightMm = 2100, RatedKg = 100 } },
            },
        });
        var ofLift = report.FindingLines.Where(f => f.Rule == "delivery.lift").ToArray();
        Assert.Equal(2, ofLift.Length);
        Assert.All(ofLift, f => Assert.Equal(["/lines/0"], f.Lines));
    }

    /// <summary>
    /// Common practice, no source: a spare part is for the customer to decide. Two computers need one PDU, and no fans between perforated doors.
    /// </summary>
    [Theory]
    [InlineData("DU-16-VL", 3, "status.spare.pdu", 2)]
    [InlineData("DU-16-VL", 1, null, 0)]
    [InlineData("FAN-R4", 1, "status.spare.it", 1)]
    [InlineData("SH-450S", 2, "status.spare.shelf.all", 2)]
    public void Spare_part_stays_in_the_order_and_its_line_says_so(string part, int quantity, string? key, int spare)
    {
        (string, int)[] power = part.StartsWith("DU-", StringComparison.Ordinal) ? [] : [("DU-16-H", 1)];
        var basket = Basket([("CAB-42-8-8", 1), (part, quantity), ("PC-210", 2), .. power]);
        var report = Plan(basket with { Site = new Site { Region = Region.Eu, AmbientMaxC = 25 } });
        Assert.Empty(report.ExcessLines);
        Assert.Equal((LineState.Ok, key), (report.LineStatus[1].Status, report.LineStatus[1].MessageKey));
        Assert.Equal(spare, report.LineStatus[1].MessageData?["spare"].Number ?? 0);
    }

    // A second feed, and a fan that another replaces, are missed where they are absent.
    [Fact]
    public void Second_feed_of_dual_fed_equipment_is_not_spare()
    {
        var report = Plan(Basket(("CAB-42-8-10", 1), ("DU-16-VL", 2), ("SRV-110", 4)) with { Site = new Site { Region = Region.Eu, AmbientMaxC = 25 } });
        Assert.Equal((LineState.Ok, null), (report.LineStatus[1].Status, report.LineStatus[1].Message));
    }

    [Fact]
    public void Reason_of_several_racks_is_one_sentence()
    {
        var report = Plan(Basket(("CAB-42-6-8", 2), ("PC-210", 2), ("GEN-2", 2)) with { Site = new Site { Region = Region.Eu, AmbientMaxC = 25 } });
        Assert.Equal(2, report.Racks.Count);
        var slides = report.MissingLines.Single(m => m.PartNumber == "QWL-SLD-25S");
        Assert.Equal(
            "QWL-PC-210-1 and QWL-PC-210-2 are too heavy, high or deep for front-panel mounting alone and need slides.", slides.Reason);
        Assert.Equal("line.rails", slides.MessageKey);
        Assert.Equal(["/lines/1"], slides.ForLines);
        Assert.All(report.MissingLines, m => Assert.DoesNotContain('+', m.MessageKey));
    }
}
