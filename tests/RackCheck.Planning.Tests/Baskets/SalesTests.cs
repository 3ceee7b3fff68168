using System.Globalization;
using RackCheck.Model;
using RackCheck.Planning.Baskets;
using RackCheck.Planning.Building;
using static RackCheck.Planning.Tests.Baskets.DemoCatalogue;

namespace RackCheck.Planning.Tests.Baskets;

/// <summary>Orders of which a sales engineer knows at once what belongs to them.</summary>
public sealed class SalesTests
{
    private static readonly Site England = new() { Region = Region.Uk, AmbientMaxC = 25 };

    private static BasketRequest Optioned(string part, int quantity, LineOptions options, params (string Part, int Quantity)[] more) => new()
    {
        Lines = [new BasketLine { PartNumber = "QWL-" + part, Quantity = quantity, Options = options }, .. Basket(more).Lines],
    };

    private static BasketRequest InOwn(Cabinet cabinet, params (string Part, int Quantity)[] lines) =>
        Basket(lines) with { Options = new BasketOptions { Cabinet = new BasketCabinet { Existing = cabinet } } };

    private static string[] Missing(BasketReport report) => [.. report.MissingLines.Select(m => m.PartNumber["QWL-".Length..])];

    // An inlet takes a cord with the plug of the country: nothing else is to be sold.
    [Fact]
    public void Order_with_thirteen_ampere_outlets_and_cords_is_complete()
    {
        var report = Plan(Basket(("CAB-24-6-6", 1), ("AMP-1", 1), ("DU-13-HB", 1), ("CRD-B13-20", 1), ("FIX-CN20", 1)) with { Site = England });
        Assert.Empty(report.MissingLines);
        Assert.Empty(report.ExcessLines);
        Assert.Equal(Verdict.Release, report.Verdicts.Product);
        Assert.Equal([ConnectorCode.Bs1363], report.Rack!.Items[0].Power!.Plugs);
    }

    [Fact]
    public void Supply_with_thirteen_ampere_sockets_gets_such_cords()
    {
        var supply = new Supply
        {
            Id = "ring", VoltageV = 230, Phases = 1, RatedA = 13, Socket = ConnectorCode.Bs1363,
            Breaker = new Breaker { Curve = BreakerCurve.B, RatedA = 32, BreakingKa = 6 },
        };
        var report = Plan(Basket(("PC-210", 1), ("SW-24", 1)) with { Site = England, Supplies = [supply] });
        Assert.Empty(report.Unmet);
        Assert.Contains("CRD-B13-20", Missing(report));
        Assert.Contains("DU-13-HB", Missing(report));
        Assert.Equal(Verdict.Release, report.CompletedVerdicts.Product);
    }

    // Handbook H6: a C16 inlet usually comes with a C15-to-C14 cord.
    [Fact]
    public void Hot_inlet_gets_a_cord_for_the_usual_outlet()
    {
        var hot = new Item
        {
            Id = "poe", HeightU = 1, Category = ItemCategory.Network, MassKg = 6, Body = new Body { WidthMm = 440, HeightMm = 43, DepthMm = 300 },
            Power = new ItemPower { RatedW = 700, Plugs = [ConnectorCode.C16] },
        };
        var report = Plan(new BasketRequest { Lines = [new BasketLine { Item = hot, Quantity = 1 }] });
        Assert.Empty(report.Unmet);
        Assert.Contains("CRD-15-20", Missing(report));
    }

    [Fact]
    public void Uprights_of_the_cabinet_that_is_there_can_be_moved()
    {
        var cabinet = new Cabinet
        {
            HeightU = 20, WidthMm = 600, DepthMm = 800, MassKg = 60, FrontDoor = new Door { Style = DoorStyle.Perforated },
            RearDoor = new Door { Style = DoorStyle.Perforated }, Uprights = new Uprights { Hole = UprightHole.Square, FrontSetbackMm = 60, SpacingMm = 600 },
        };
        var report = Plan(InOwn(cabinet, ("AMP-1", 1)));
        Assert.Empty(report.Unmet);
        Assert.True(report.CompletedRack!.Cabinet!.Uprights!.FrontSetbackMm >= 65);
        var moved = Assert.Single(report.Assumptions, a => a.BasisKey == "assumption.moved-uprights");
        Assert.Equal(60, moved.BasisData!["setbackMm"].Number);

        var shallow = Plan(InOwn(cabinet with { DepthMm = 600, Uprights = null }, ("SRV-2", 1)));
        var unmet = Assert.Single(shallow.Unmet);
        Assert.True(unmet.Proven);
        Assert.StartsWith(
            "The cabinet that is there does not take it, whatever else is chosen: QWL-SRV-2-1 needs a cabinet ", unmet.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Equipment_to_be_pulled_out_gets_slides_or_says_why_not()
    {
        Assert.Contains("SLD-25S", Missing(Plan(Optioned("PC-305", 1, new LineOptions { Extended = true }))));
        var wide = Plan(Optioned("AMP-2", 1, new LineOptions { Extended = true }));
        Assert.Contains(wide.Unmet, u => u.Reason.StartsWith("It is pulled out in use; no slides on offer suit its width", StringComparison.Ordinal));
    }

    [Fact]
    public void Equipment_for_two_feeds_can_be_fed_once()
    {
        var report = Plan(Optioned("SRV-110", 1, new LineOptions { DualFed = false }));
        Assert.DoesNotContain(report.Report!.Findings, f => f.Rule == "catalogue.contradiction");
        Assert.Equal(Verdict.Release, report.CompletedVerdicts.Product);
    }

    [Fact]
    public void Cooler_that_nothing_needs_is_in_excess_and_the_cabinet_stays()
    {
        var report = Plan(Basket(("CAB-42-6-10", 1), ("AMP-1", 1), ("COL-10", 1)));
        Assert.Empty(report.ReplaceLines);
        Assert.Equal(["/lines/2"], report.ExcessLines.Select(e => e.Line));
        Assert.Equal(Verdict.Release, report.CompletedVerdicts.Product);
    }

    // Where nothing takes it, the deepest comes closest.
    [Fact]
    public void Equipment_too_deep_for_all_gets_the_deepest()
    {
        var array = new Item { Id = "array", HeightU = 4, MassKg = 40, Body = new Body { WidthMm = 430, HeightMm = 175, DepthMm = 1150 } };
        var report = Plan(new BasketRequest { Lines = [new BasketLine { Item = array, Quantity = 1 }] });
        Assert.Contains(Missing(report), m => m.StartsWith("CAB-", StringComparison.Ordinal) && m.EndsWith("-12", StringComparison.Ordinal));
        Assert.True(Assert.Single(report.Unmet).Proven);
    }

    [Theory]
    [InlineData("CAB-24-6-8", "GEN-2", 15, "CAB-42-6-8")]
    [InlineData("CAB-42-6-6", "SRV-2", 1, "CAB-42-6-8")]
    public void Exchanged_cabinet_is_the_one_most_like_it(string ordered, string part, int count, string instead) =>
        Assert.Equal(["QWL-" + instead], Plan(Basket((ordered, 1), (part, count))).ReplaceLines.Select(r => r.PartNumber));

    [Fact]
    public void Ups_that_does_not_suffice_says_what_it_lacks()
    {
        string Reason(BasketRequest request) => Plan(request).Unmet.Single(u => u.WhatKey == "need.ups-power").Reason;

        var onUps = new LineOptions { OnUps = true };
        var own = new BasketLine { Item = OwnUps, Quantity = 1 };
        var drive = Optioned("DRV-6", 1, onUps);
        Assert.Equal(
            "The UPS of the order supplies 1350 W; everything that is to be on it takes 2400 W. UPS 3000 VA, 3 U supplies 2700 W.",
            Reason(drive with { Lines = [.. drive.Lines, own] }));
        Assert.Equal(
            "The UPS of the order supplies 1350 W; everything that is to be on it takes 4800 W.",
            Reason(Optioned("DRV-6", 2, onUps, ("UPS-15", 1))));
        Assert.Equal(
            "With this equipment on it the UPS of the order does not last 30 minutes.",
            Reason(Optioned("SRV-110", 2, onUps, ("UPS-15", 1)) with { Site = new Site { UpsMinutes = 30, Region = Region.Eu } }));
        Assert.Empty(Plan(Optioned("PAT-24", 1, onUps, ("UPS-15", 1))).Unmet);
    }

    // 1350 W are too few for 2400 W, 2700 W are enough. What the smaller one needed is not left over.
    [Fact]
    public void Ups_with_too_little_power_is_exchanged()
    {
        var report = Plan(Optioned("DRV-6", 1, new LineOptions { OnUps = true }, ("UPS-15", 1)));
        var exchange = Assert.Single(report.ReplaceLines);
        Assert.Equal(("/lines/1", "QWL-UPS-30", 1, "replace.ups"), (exchange.Line, exchange.PartNumber, exchange.Quantity, exchange.MessageKey));
        Assert.Equal((1350, 2400), (exchange.MessageData["ratedW"].Number, exchange.MessageData["neededW"].Number));
        Assert.Empty(report.Unmet);
        Assert.Empty(report.ExcessLines);
        Assert.Equal(LineState.Replace, report.LineStatus[1].Status);
        Assert.DoesNotContain(report.CompletedBasket.Lines, l => l.PartNumber == "QWL-UPS-15");
        AssertWhole(report);
    }

    // Servers 785 mm deep. What was ordered as two racks stays two racks.
    [Fact]
    public void Cabinets_that_are_all_too_shallow_are_all_exchanged()
    {
        var report = Plan(Basket(("CAB-42-6-6", 2), ("SRV-220", 10)) with { Site = England });
        var exchange = Assert.Single(report.ReplaceLines);
        Assert.Equal(("/lines/0", "QWL-CAB-42-6-10", 2, "replace.cabinet"), (exchange.Line, exchange.PartNumber, exchange.Quantity, exchange.MessageKey[..15]));
        Assert.Empty(report.ExcessLines);
        Assert.Equal(2, report.Racks.Count);
        AssertWhole(report);
    }

    [Fact]
    public void Host_at_a_remote_site_gets_a_switched_outlet()
    {
        var report = Plan(Basket(("PC-305", 1)) with { Site = new Site { Remote = true } });
        Assert.DoesNotContain(report.CompletedReport!.Findings, f => f.Rule == "service.remote-power");
        Assert.Equal(Verdict.Release, report.CompletedVerdicts.Product);
    }

    [Fact]
    public void Pdu_is_near_what_it_feeds()
    {
        var report = Plan(Basket(("CAB-42-6-8", 1), ("SRV-110", 1), ("CRD-13-20", 2), ("DU-16-H", 2)));
        Assert.Empty(report.ExcessLines);
        Assert.DoesNotContain(Missing(report), m => m.StartsWith("CRD-", StringComparison.Ordinal));
    }

    [Fact]
    public void Rack_as_ordered_has_all_equipment_though_rails_are_missing()
    {
        var report = Plan(Basket(("CAB-24-6-8", 1), ("SRV-2", 2)));
        Assert.DoesNotContain(report.Report!.Findings, f => f.Rule == "layout.not-placed");
    }

    [Fact]
    public void Errors_that_no_part_clears_are_among_what_is_unmet()
    {
        var supply = new Supply { Id = "A", VoltageV = 230, Phases = 1, RatedA = 16, Socket = ConnectorCode.Iec60309A16P1 };
        var report = Plan(Basket(("DRV-4", 8)) with { Supplies = [supply] });
        Assert.Equal(Verdict.Hold, report.CompletedVerdicts.Product);
        Assert.Contains(report.Unmet, u => u.WhatKey == "need.sound-rack" && u.Reason.Contains("Supply A carries", StringComparison.Ordinal) && !u.Proven);
    }

    // Two verdicts: a floor that is too weak holds the site, not what is ordered.
    [Fact]
    public void Error_of_the_site_is_no_unmet_need()
    {
        var report = Plan(Basket(("CAB-42-6-8", 1), ("GEN-2", 4)) with { Site = new Site { AmbientMaxC = 25, Floor = new Floor { PointKn = 0.05 } } });
        Assert.Equal(Verdict.Hold, report.CompletedVerdicts.Site);
        Assert.Equal(Verdict.Release, report.CompletedVerdicts.Product);
        Assert.Empty(report.Unmet);
    }

    [Fact]
    public void Missing_cooler_names_the_rules_that_want_it()
    {
        var report = Plan(Basket(("CAB-42-6-8-S", 1), ("SRV-2", 2)) with { Site = new Site { RequiredIp = "IP54", AmbientMaxC = 25 } });
        Assert.NotEmpty(report.MissingLines.Single(m => m.PartNumber.StartsWith("QWL-COL-", StringComparison.Ordinal)).Rules);
    }

    [Theory]
    [InlineData(56, "3 x 20")]
    [InlineData(44, "1 x 50")]
    [InlineData(70, "1 x 50, 1 x 20")]
    [InlineData(60, "3 x 20")]
    [InlineData(121, "1 x 50, 4 x 20")]
    [InlineData(1, "1 x 20")]
    public void Packs_have_the_fewest_excess_pieces(int pieces, string expected)
    {
        Product Pack(int size) => new() { PartNumber = $"P{size}", Name = "", Kind = ProductKind.Fixings, Pieces = size };
        var packs = Packs.Choose([Pack(20), Pack(50)], pieces);
        Assert.Equal(expected, string.Join(", ", packs.Select(p => FormattableString.Invariant($"{p.Units} x {p.Product.Pieces}"))));
    }

    // However many sizes a catalogue has, and whatever the number.
    [Fact]
    public void Packs_of_a_hundred_sizes_are_chosen_at_once()
    {
        Product[] all = [.. Enumerable.Range(1, 100).Select(n => new Product { PartNumber = $"P{n}", Name = "", Kind = ProductKind.Fixings, Pieces = n })];
        foreach (var pieces in (long[])[1, 99, 12_345, 1_000_000_007])
        {
            Assert.Equal(pieces, Packs.Choose(all, pieces).Sum(p => p.Units * p.Product.Pieces!.Value));
        }
    }

    // Longer rails and cords than the cheapest that would do are in each cabinet as good as in the last.
    [Fact]
    public void Parts_of_the_order_suit_every_cabinet_of_it()
    {
        var report = Plan(Basket(("CAB-42-6-10", 2), ("SRV-220", 20), ("SLD-60M", 20), ("CRD-13-30", 40)));
        Assert.Equal(2, report.Racks.Count);
        Assert.DoesNotContain(Missing(report), m => m.StartsWith("SLD", StringComparison.Ordinal) || m.StartsWith("CRD-13", StringComparison.Ordinal));
        Assert.Empty(report.ExcessLines);
        AssertWhole(report);
    }

    // Fixings are shared by the racks of an order: a pack that one leaves open serves the next.
    [Fact]
    public void Panels_and_fixings_for_two_cabinets_are_enough_when_posted_again() =>
        AssertWhole(Plan(Basket(("CAB-42-8-10", 2), ("SRV-110", 18), ("BP-1", 100))));

    // Desk equipment takes no U by itself: the shelves that it needs do.
    [Fact]
    public void Desk_equipment_goes_into_one_higher_cabinet()
    {
        var report = Plan(Basket(("OSC-0", 3), ("DSP-D22", 1)));
        Assert.Single(report.Racks);
        Assert.Contains("CAB-42-6-6", Missing(report));
    }

    // The rule of coolers that can be avoided calls them the last resort.
    [Theory]
    [InlineData("CAB-42-6-8", "SRV-2", 3)]
    [InlineData("CAB-42-6-10", "SRV-110", 4)]
    public void Solid_door_ordered_by_mistake_is_in_excess(string cabinet, string equipment, int quantity)
    {
        var report = Plan(Basket((cabinet, 1), (equipment, quantity), ("DOR-42-6RS", 1)));
        Assert.Equal(["QWL-DOR-42-6RS"], report.ExcessLines.Select(e => e.PartNumber));
        Assert.Equal("excess.unsound-door", report.ExcessLines[0].MessageKey);
        Assert.Empty(report.ReplaceLines);
        Assert.DoesNotContain(Missing(report), m => m.StartsWith("COL", StringComparison.Ordinal) || m.StartsWith("DOR", StringComparison.Ordinal));
        Assert.NotEqual(Verdict.Hold, report.CompletedVerdicts.Product);
    }

    // Handbook H13: 9 min at 1000 W are 13.6 min at 700 W and 8.5 min at 1050 W.
    [Fact]
    public void Ups_feeds_as_much_as_it_lasts_for()
    {
        var request = Optioned("PC-410", 3, new LineOptions { OnUps = true }, ("UPS-15", 1)) with
        {
            Site = new Site { Region = Region.Eu, UpsMinutes = 10, AmbientMaxC = 25 },
        };
        var report = Plan(request, [.. Products.Where(p => p.PartNumber != "QWL-UPS-30")]);
        var unmet = Assert.Single(report.Unmet);
        Assert.Contains("QWL-PC-410-3", unmet.What, StringComparison.Ordinal);
        Assert.DoesNotContain("QWL-PC-410-1", unmet.What, StringComparison.Ordinal);
        Assert.Contains("does not last 10 minutes", unmet.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Several_ups_share_the_load()
    {
        var report = Plan(Basket(("PC-410", 6), ("UPS-15", 3)));
        Assert.DoesNotContain(report.CompletedReport!.Findings, f => f.Rule == "power.ups-idle");
    }

    [Fact]
    public void Equipment_of_the_customers_cabinet_stays_where_it_is()
    {
        var own = new Item
        {
            Id = "old", HeightU = 1, Position = new Position { U = 20 }, Category = ItemCategory.Network, MassKg = 4,
            Body = new Body { WidthMm = 440, HeightMm = 43, DepthMm = 250 },
        };
        var basket = InOwn(new Cabinet { PartNumber = "QWL-CAB-24-6-10" }, ("SRV-220", 2));
        var report = Plan(basket with { Lines = [new BasketLine { Item = own, Quantity = 1 }, .. basket.Lines] });
        Assert.Equal(20, report.Rack!.Items.Single(i => i.Id == "old").Position!.U);
        Assert.Equal(20, report.CompletedRack!.Items.Single(i => i.Id == "old").Position!.U);
        AssertWhole(report);
    }

    // Rails of another line do not hold this one.
    [Fact]
    public void Finding_is_cleared_by_the_parts_for_its_own_equipment()
    {
        var report = Plan(Basket(("DRV-4", 2), ("SRV-220", 3)));
        var ofDrives = report.FindingLines.Where(f => f.Rule == "layout.no-support" && f.Lines.SequenceEqual(["/lines/0"])).ToArray();
        Assert.Equal(2, ofDrives.Length);
        string PartOf(string pointer) => report.MissingLines[int.Parse(pointer.Split('/')[2], CultureInfo.InvariantCulture)].PartNumber;
        Assert.All(ofDrives, f => Assert.All(f.ClearedBy!, c => Assert.StartsWith("QWL-RUN", PartOf(c), StringComparison.Ordinal)));
    }

    // The limits of the contract hold for the completed basket too, which can be posted.
    [Fact]
    public void Shelves_that_bring_a_basket_over_its_limit_are_said()
    {
        var fault = Assert.Single(Answer(Basket(("OSC-0", 101)), Products).Faults);
        Assert.Equal(BasketPlanner.TooManyItems, fault.Code);
        Assert.Contains("202 items", fault.Detail, StringComparison.Ordinal);
    }

    // A pack that costs less than single cords is no worse for the cord that it leaves over.
    [Fact]
    public void Cheapest_packs_are_chosen() =>
        Assert.Equal([("QWL-CRD-13-20-P10", 1L)], Packs.Choose(
            [ByNumber["QWL-CRD-13-20"], ByNumber["QWL-CRD-13-20-P10"]], 9).Select(p => (p.Product.PartNumber, p.Units)));

    // One PDU on a side lacks outlets, and each supply carries two.
    [Fact]
    public void Given_supplies_are_shared_by_several_pdus()
    {
        Supply Of(string id) => new() { Id = id, VoltageV = 230, Phases = 3, RatedA = 32, Socket = ConnectorCode.Iec60309A32P3 };
        var report = Plan(Basket(("SRV-110", 40)) with { Supplies = [Of("A"), Of("B")], Earthing = new Earthing { MainConductorMm2 = 16 } });
        Assert.Empty(report.Unmet);
        Assert.Equal(4, report.MissingLines.Single(m => m.PartNumber == "QWL-DU-32-V3").Quantity);
    }

    private static void AssertWhole(BasketReport report)
    {
        var again = Plan(report.CompletedBasket);
        Assert.Empty(again.MissingLines);
        Assert.Empty(again.ExcessLines);
        Assert.Equal(report.CompletedVerdict, again.Verdict);
    }

    // All of them were in excess, and the completed basket had no line.
    [Fact]
    public void Spare_cords_for_a_cabinet_that_is_there_stay_in_the_basket()
    {
        var request = Basket(("CRD-13-20", 5), ("FIX-CN20", 1));
        var report = Plan(request with
        {
            Options = new BasketOptions { Cabinet = new BasketCabinet { Existing = new Cabinet { PartNumber = "QWL-CAB-42-6-8" } } },
        });
        Assert.Equal(2, report.CompletedBasket.Lines.Count);
        Assert.Empty(report.ExcessLines);
        Assert.All(report.LineStatus, s => Assert.Equal(LineState.NotAssessed, s.Status));
    }
}
