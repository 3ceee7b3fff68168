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
        Assert.StartsWith("unmet.error+power.outlet-protection", Assert.Single(report.Unmet).MessageKey, StringComparison.Ordinal);
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
}
