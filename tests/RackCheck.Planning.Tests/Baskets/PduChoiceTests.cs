using RackCheck.Model;
using static RackCheck.Planning.Tests.Baskets.DemoCatalogue;

namespace RackCheck.Planning.Tests.Baskets;

/// <summary>PDUs that a shop adds to a basket.</summary>
public sealed class PduChoiceTests
{
    private static readonly Site Europe = new() { Region = Region.Eu, AmbientMaxC = 27 };

    private static string PdusOf(BasketReport report) => string.Join(
        ", ", report.MissingLines.Where(m => m.PartNumber.Contains("-DU-", StringComparison.Ordinal)).OrderBy(m => m.PartNumber, StringComparer.Ordinal)
            .Select(m => $"{m.Quantity} {m.PartNumber[4..]}"));

    /// <summary>Common practice, no source: a feed on either side, each with a PDU that carries everything alone.</summary>
    [Theory]
    [InlineData("SRV-110", 2, "DU-16-H", 2)]
    [InlineData("SRV-220", 10, "DU-16-V3", 2)]
    [InlineData("SRV-2", 10, "DU-16-V3", 2)]
    [InlineData("SRV-110", 40, "DU-16-V3", 4)]
    public void Dual_corded_servers_get_the_same_pdus_on_both_sides(string server, int servers, string pdu, int pdus)
    {
        var report = Plan(Basket((server, servers)) with { Site = new Site { Region = Region.Eu } });
        var added = Assert.Single(report.MissingLines, m => m.PartNumber.Contains("-DU-", StringComparison.Ordinal));
        Assert.Equal(("QWL-" + pdu, pdus), (added.PartNumber, added.Quantity));
        Assert.DoesNotContain(report.CompletedReport!.Findings, f => f.Severity == Severity.Error);
    }

    /// <summary>Common practice, no source: the UPS feeds one side of the servers, the mains or a second UPS on another feed the other.</summary>
    [Theory]
    [InlineData("SRV-110", 4, 1, "1 DU-16-H, 1 DU-16-HM, 1 DU-16-HU")]
    [InlineData("SRV-2", 2, 2, "2 DU-16-HM, 2 DU-16-HU")]
    [InlineData("SRV-2", 6, 2, "2 DU-16-HU, 2 DU-32-H")]
    [InlineData("PC-210", 4, 1, "1 DU-16-HM, 1 DU-16-HU")]
    public void Ups_feeds_one_side_of_servers(string server, int servers, int upses, string pdus)
    {
        var report = Plan(Basket((server, servers), ("UPS-30", upses)) with { Site = new Site { Region = Region.Eu } });
        Assert.Equal(pdus, PdusOf(report));
        Assert.DoesNotContain(report.CompletedReport!.Findings, f => f.Severity == Severity.Error);

        // Each UPS feeds something, within its rating, and the UPSs of two sides are on two supplies.
        var rack = Plan(report.CompletedBasket).Rack!;
        Assert.All(rack.Items.Where(i => i.Ups is not null), u => Assert.Contains(rack.Connections!, c => c.Pdu == Assert.Single(u.Ups!.Feeds!)));
        var units = rack.Pdus!.ToDictionary(u => u.Id, u => u.Supply, StringComparer.Ordinal);
        Assert.Equal(upses, rack.Connections!.Where(c => c.Item.StartsWith("QWL-UPS", StringComparison.Ordinal)).Select(c => units[c.Pdu]).Distinct().Count());
    }

    // On given supplies each of the two PDUs has one of its own.
    [Fact]
    public void Dual_corded_servers_get_a_pdu_on_each_of_two_supplies()
    {
        Supply[] feeds = [Feed("A"), Feed("B")];
        var report = Plan(Basket(("SRV-110", 4)) with { Supplies = feeds });
        Assert.Equal(2, Assert.Single(report.MissingLines, m => m.PartNumber.Contains("-DU-", StringComparison.Ordinal)).Quantity);
        Assert.Equal(["A", "B"], Plan(report.CompletedBasket).Rack!.Pdus!.Select(u => u.Supply).Order(StringComparer.Ordinal));

        static Supply Feed(string id) => new() { Id = id, VoltageV = 230, Phases = 1, RatedA = 16, Socket = ConnectorCode.Iec60309A16P1 };
    }

    // A body of 500 mm with 75 mm for its cables, and a PDU of 60 mm with as much for its own, need 710 mm (common practice, no source); the uprights are
    // 700 mm apart. Without its cables a server seems to leave room.
    [Theory]
    [InlineData("PAT-24", 8, "AMP-1", 3, 5)]
    [InlineData("PD-6", 3, "GEN-2", 0, 8)]
    public void Horizontal_pdu_is_clear_of_the_cables_behind_equipment(string part, int parts, string other, int others, int servers)
    {
        (string, int)[] lines = [("CAB-42-6-10", 1), ("SRV-2", servers), (part, parts), ("UPS-15", 1), (other, others)];
        var report = Plan(Basket([.. lines.Where(l => l.Item2 > 0)]) with { Site = new Site { Region = Region.Eu, AmbientMaxC = 24 } });
        Assert.Contains(report.CompletedRack!.Pdus!, u => u.Mounting == PduMounting.Horizontal);
        Assert.DoesNotContain(report.CompletedReport!.Findings, f => f.Severity == Severity.Error);
        Assert.Empty(report.Unmet);
    }

    [Fact]
    public void Pdu_of_another_region_is_in_excess_and_others_are_added()
    {
        var report = Plan(Basket(("SRV-2", 4), ("DU-30-VN", 1)) with { Site = new Site { Region = Region.Eu } });
        var excess = Assert.Single(report.ExcessLines);
        Assert.Equal(("QWL-DU-30-VN", "excess.pdu-region"), (excess.PartNumber, excess.MessageKey));
        Assert.Contains(report.MissingLines, m => m.PartNumber.Contains("-DU-", StringComparison.Ordinal));
        Assert.NotEqual(Verdict.Hold, report.CompletedVerdicts.Product);

        // It is the right one in North America.
        Assert.Empty(Plan(Basket(("SRV-2", 4), ("DU-30-VN", 1)) with { Site = new Site { Region = Region.Na } }).ExcessLines);
    }

    // Pulses of unknown width seldom trip a breaker, so neither sequenced outlets nor a larger supply are sold for them; 20 ms are another matter. Three PCs of
    // 60 A each are above the peak of 5 x 16 A.
    [Theory]
    [InlineData(null, "QWL-DU-16-H")]
    [InlineData(20.0, "QWL-DU-16-HS")]
    public void Sequenced_outlets_are_sold_only_for_inrush_that_lasts(double? inrushMs, string pdu)
    {
        var own = new Item
        {
            Id = "logger",
            HeightU = 2,
            MassKg = 10,
            Body = new Body { WidthMm = 440, HeightMm = 86, DepthMm = 300 },
            Power = new ItemPower { RatedW = 200, InrushA = 60, InrushMs = inrushMs, LeakageMa = 0.5, Plugs = [ConnectorCode.C14], Redundant = false },
        };
        var report = Plan(Basket() with { Lines = [new BasketLine { Item = own, Quantity = 3 }], Site = new Site { Region = Region.Eu } });
        Assert.Equal(pdu, Assert.Single(report.MissingLines, m => m.PartNumber.Contains("-DU-", StringComparison.Ordinal)).PartNumber);
    }

    /// <summary>
    /// Arithmetic: 1500 W / 0.92 / 230 V = 7.1 A. A group of 16 A takes one drive within its 12.8 A, so four drives need four groups. Three phases carry
    /// four drives with one phase 50 % above the mean.
    /// </summary>
    [Fact]
    public void Drives_get_the_fewest_pdus_that_balance_their_phases()
    {
        var report = Plan(Basket(("CAB-42-6-8", 1), ("DRV-4", 4)) with { Site = Europe });
        Assert.Equal("2 DU-32-H", PdusOf(report));
        Assert.DoesNotContain(report.CompletedReport!.Findings, f => f.Severity != Severity.Advice && f.Rule.StartsWith("power.", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(1, "1 DU-16-H")]
    [InlineData(8, "1 DU-16-H")]
    [InlineData(9, "1 DU-16-VL")]
    public void Wide_cabinet_gets_a_pdu_of_the_size_needed(int switches, string pdus) =>
        Assert.Equal(pdus, PdusOf(Plan(Basket(("CAB-42-8-10", 1), ("SW-24", switches)) with { Site = Europe })));

    // Both take the cord; of equal ratings the preferred one comes before the one with fewer outlets.
    [Fact]
    public void Preferred_pdu_is_chosen_of_those_that_suit()
    {
        Product[] offered =
        [
            .. Products.Where(p => p.PartNumber != "QWL-DU-16-H"),
            ByNumber["QWL-DU-16-H"] with { Preferred = null },
            ByNumber["QWL-DU-16-H"] with
            {
                PartNumber = "QWL-DU-16-H12", Preferred = true,
                Pdu = ByNumber["QWL-DU-16-H"].Pdu! with
                {
                    Groups = [new OutletGroup { Id = "g1", Outlets = [new OutletSet { Socket = ConnectorCode.C13, Count = 12 }] }],
                },
            },
        ];
        Assert.Equal("1 DU-16-H12", PdusOf(Plan(Basket(("CAB-42-6-8", 1), ("AMP-1", 2)) with { Site = Europe }, offered)));
    }

    // The equipment takes all 24 U and both faces.
    [Theory]
    [InlineData("UPS-15", 3, "PC-210", 9, "3 DU-10-V, 1 DU-32-V")]
    [InlineData("UPS-15", 2, "PC-210", 10, "2 DU-10-V, 1 DU-32-V")]
    public void Full_cabinet_gets_pdus_that_take_no_u_position(string ups, int upses, string part, int parts, string pdus)
    {
        var supply = new Supply { Id = "A", VoltageV = 230, Phases = 1, RatedA = 32, Socket = ConnectorCode.Iec60309A32P1 };
        var report = Plan(Basket((ups, upses), (part, parts)) with { Supplies = [supply], Site = Europe });
        Assert.Equal(pdus, PdusOf(report));
        Assert.DoesNotContain(report.CompletedReport!.NotAssessed, n => n.Missing.Any(m => m.StartsWith("/pdus/", StringComparison.Ordinal)));
        Assert.Empty(report.Unmet);
    }

    // Nothing else is on offer: a cabinet with room for them is another one than the lowest and least deep.
    [Fact]
    public void Horizontal_pdus_without_a_u_position_need_another_cabinet()
    {
        Product[] offered = [.. Products.Where(p => p.Pdu?.Mounting != PduMounting.Vertical)];
        var supply = new Supply { Id = "A", VoltageV = 230, Phases = 1, RatedA = 32, Socket = ConnectorCode.Iec60309A32P1 };
        var report = Plan(Basket(("UPS-15", 3), ("PC-210", 9)) with { Supplies = [supply], Site = Europe }, offered);
        Assert.NotEqual("QWL-CAB-24-6-8", report.CompletedRack!.Cabinet!.PartNumber);
        Assert.All(report.CompletedRack.Pdus!, u => Assert.NotNull(u.Position));
    }

    private static BasketRequest InFullCabinet(params (string Part, int Quantity)[] pdus) => Basket([("PC-210", 4), .. pdus]) with
    {
        Site = Europe,
        Options = new BasketOptions
        {
            Cabinet = new BasketCabinet
            {
                Existing = new Cabinet
                {
                    HeightU = 8, WidthMm = 600, DepthMm = 800, MassKg = 40, FrontDoor = new Door { Style = DoorStyle.Perforated },
                    RearDoor = new Door { Style = DoorStyle.Perforated },
                    Uprights = new Uprights { Hole = UprightHole.Square, FrontSetbackMm = 60, SpacingMm = 600 },
                },
            },
        },
    };

    [Fact]
    public void Ordered_pdu_without_a_u_position_gives_way_to_a_vertical_one()
    {
        var report = Plan(InFullCabinet(("DU-16-H", 1)));
        var excess = Assert.Single(report.ExcessLines);
        Assert.Equal(("/lines/1", "excess.pdu-room"), (excess.Line, excess.MessageKey));
        Assert.Equal("1 DU-16-VL", PdusOf(report));
        Assert.Empty(report.Unmet);
    }

    [Fact]
    public void Pdu_that_finds_no_u_position_anywhere_is_an_unmet_need()
    {
        Product[] offered = [.. Products.Where(p => p.Pdu?.Mounting != PduMounting.Vertical)];
        var report = Plan(InFullCabinet(), offered);
        var unmet = Assert.Single(report.Unmet);
        Assert.Equal(("need.pdu-room", "unmet.pdu-room.one+unmet.not-proven"), (unmet.WhatKey, unmet.MessageKey));
        Assert.Equal(Verdict.Hold, report.CompletedVerdicts.Product);
    }
}
