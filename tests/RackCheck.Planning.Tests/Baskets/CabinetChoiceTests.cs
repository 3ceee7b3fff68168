using RackCheck.Model;
using static RackCheck.Planning.Tests.Baskets.DemoCatalogue;

namespace RackCheck.Planning.Tests.Baskets;

/// <summary>Cabinets that a shop adds to a basket without one.</summary>
public sealed class CabinetChoiceTests
{
    [Fact]
    public void Cabinet_is_as_high_as_shelves_and_equipment_need()
    {
        // 22 U of equipment, and shelves for it: none of the six cabinets of 24 U takes them.
        var report = Plan(Basket(("VLV-3", 1), ("PC-D1", 1), ("KD-1", 2), ("DSP-D22", 2)));
        Assert.Equal(42, report.Rack!.Cabinet!.HeightU ?? ByNumber[report.Rack.Cabinet.PartNumber!].Cabinet!.HeightU);
        Assert.Empty(report.Unmet);
        Assert.Equal(Verdict.Release, report.CompletedVerdicts.Product);
    }

    [Fact]
    public void Ordered_air_conditioner_gets_a_closed_cabinet()
    {
        var report = Plan(Basket(("PC-210", 1), ("SRV-2", 2), ("COL-20", 1), ("DAQ-3", 1), ("PSU-24", 2)));
        Assert.DoesNotContain(report.CompletedReport!.Findings, f => f.Severity == Severity.Error);
        var cabinet = Assert.Single(report.MissingLines, m => m.PartNumber.Contains("-CAB-", StringComparison.Ordinal));
        Assert.EndsWith("-S", cabinet.PartNumber, StringComparison.Ordinal);
        Assert.Empty(report.ExcessLines);
    }

    // Two North American PDUs without a region: their error stands in every cabinet and is no reason to leave equipment out.
    [Fact]
    public void Equipment_is_divided_over_racks_though_an_error_stays()
    {
        var report = Plan(Basket(("GEN-2", 30), ("DU-30-VN", 2)));
        Assert.Equal(2, report.Racks.Count);
        Assert.Empty(report.Unmet);
        Assert.Equal(30, report.Racks.Sum(r => r.Rack.Items.Count(i => i.PartNumber == "QWL-GEN-2" && i.Position is not null)));
        Assert.All(
            report.Racks.SelectMany(r => r.Report.Findings).Where(f => f.Severity == Severity.Error && f.Rule != "power.no-source"),
            f => Assert.Equal("power.outlet-protection", f.Rule));
    }

    // Towers, oscilloscopes and displays stand on shelves and take more height than these. Counting the shelves alone, cabinets were too low again and again
    // until the work was spent, and most of the equipment was left without a place.
    [Fact]
    public void Height_of_what_stands_on_shelves_counts_when_equipment_is_divided()
    {
        var basket = Basket(("PC-M1", 6), ("OSC-0", 8), ("GEN-2", 10), ("PC-410", 4), ("DSP-D22", 2), ("SW-48", 2));
        var report = Plan(basket with { Site = new Site { Region = Region.Eu } });
        Assert.Empty(report.Unmet);
        Assert.InRange(report.Racks.Count, 2, 3);
        Assert.Equal(Verdict.Review, report.CompletedVerdicts.Product);
        var again = Plan(report.CompletedBasket);
        Assert.Empty(again.MissingLines);
        Assert.All(again.Racks.SelectMany(r => r.Rack.Items), i => Assert.NotNull(i.Position ?? (object?)i.OnShelf));
    }

    /// <summary>Common practice, no source: a feed on either side, each with a PDU that carries everything alone.</summary>
    [Theory]
    [InlineData("SRV-110", 2, "DU-16-H", 2)]
    [InlineData("SRV-220", 10, "DU-16-V3", 2)]
    [InlineData("SRV-2", 10, "DU-16-V3", 2)]
    [InlineData("SRV-110", 40, "DU-32-V3", 4)]
    public void Dual_corded_servers_get_the_same_pdus_on_both_sides(string server, int servers, string pdu, int pdus)
    {
        var report = Plan(Basket((server, servers)) with { Site = new Site { Region = Region.Eu } });
        var added = Assert.Single(report.MissingLines, m => m.PartNumber.Contains("-DU-", StringComparison.Ordinal));
        Assert.Equal(("QWL-" + pdu, pdus), (added.PartNumber, added.Quantity));
        Assert.DoesNotContain(report.CompletedReport!.Findings, f => f.Severity == Severity.Error);
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
}
