using RackCheck.Model;
using static RackCheck.Planning.Tests.Baskets.DemoCatalogue;

namespace RackCheck.Planning.Tests.Baskets;

/// <summary>Orders of cabinets without equipment, as of a reseller: each is a rack, and none is in excess.</summary>
public sealed class EmptyCabinetTests
{
    [Fact]
    public void Each_cabinet_of_an_order_without_equipment_is_a_rack()
    {
        var report = Plan(Basket(("CAB-42-6-8", 2), ("CAB-24-6-6", 1), ("DU-16-V", 3), ("BP-2", 4)));
        Assert.Equal(["QWL-CAB-24-6-6", "QWL-CAB-42-6-8", "QWL-CAB-42-6-8"], report.Racks.Select(r => r.Rack.Cabinet!.PartNumber).Order());
        Assert.Empty(report.ReplaceLines);
        Assert.Empty(report.ExcessLines);
        Assert.Equal(Verdict.Release, report.CompletedVerdicts.Product);
        Assert.All(report.Racks, r => Assert.Single(r.Rack.Pdus!));
        Assert.Empty(report.Cautions);
        Assert.All(report.LineStatus, s => Assert.Equal(LineState.Ok, s.Status));

        var again = Plan(report.CompletedBasket);
        Assert.Empty(again.MissingLines);
        Assert.Empty(again.ExcessLines);
    }

    [Fact]
    public void Cabinets_beyond_those_of_one_answer_are_said_and_take_their_share_of_the_parts()
    {
        var report = Plan(Basket(("CAB-42-6-8", 20), ("DU-16-V", 40), ("SH-450S", 20), ("BP-6", 60)));
        Assert.Equal(6, report.Racks.Count);
        Assert.All(report.Racks, r => Assert.Equal(2, r.Rack.Pdus!.Count));
        Assert.Empty(report.ExcessLines);
        Assert.Equal(Verdict.Release, report.CompletedVerdicts.Product);
        Assert.Equal(
            "6 of the 20 cabinets were checked, each with its share of the parts. What the others lack is not among the missing lines.",
            Assert.Single(report.Cautions));
        Assert.Empty(Plan(report.CompletedBasket).MissingLines);
    }

    [Fact]
    public void Cabinets_that_equipment_does_not_need_are_in_excess()
    {
        var report = Plan(Basket(("CAB-42-6-8", 3), ("GEN-2", 1)));
        Assert.Equal(2, Assert.Single(report.ExcessLines).Quantity);
    }
}
