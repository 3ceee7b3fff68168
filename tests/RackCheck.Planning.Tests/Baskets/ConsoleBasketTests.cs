using RackCheck.Model;
using static RackCheck.Planning.Tests.Baskets.DemoCatalogue;

namespace RackCheck.Planning.Tests.Baskets;

/// <summary>Consoles of an order for several cabinets. Common practice, no source.</summary>
public sealed class ConsoleBasketTests
{
    private static string[][] Racks(BasketReport report) => [.. report.Racks.Select(r => r.Rack.Items.Select(i => i.PartNumber!["QWL-".Length..]).ToArray())];

    // The hosts share the console; the second cabinet is for the rest.
    [Fact]
    public void Hosts_and_their_console_are_in_one_of_two_cabinets()
    {
        var report = Plan(Basket(("CAB-42-6-8", 2), ("PC-210", 3), ("KVM-8", 1), ("KD-1", 1), ("SW-48", 1)));
        Assert.Contains(Racks(report), r => r.Order().SequenceEqual(["KD-1", "KVM-8", "PC-210", "PC-210", "PC-210"]));
        Assert.Equal(3, report.MissingLines.Single(m => m.PartNumber == "QWL-KVL-18").Quantity);
        Assert.Empty(report.Cautions);
        AssertStays(report);
    }

    // Nothing would be left for the second cabinet. A KVM switch without a console serves nobody: none is sold.
    [Fact]
    public void Hosts_beside_no_console_get_no_kvm_switch_and_are_named()
    {
        var report = Plan(Basket(("CAB-42-6-8", 2), ("PC-210", 4), ("UPS-15", 1), ("KVM-8", 1), ("KD-1", 1)));
        var desk = Assert.Single(Racks(report), r => r.Contains("KD-1"));
        Assert.Contains("KVM-8", desk);
        Assert.Contains("PC-210", desk);
        Assert.DoesNotContain(report.MissingLines, m => m.PartNumber.StartsWith("QWL-KVM-", StringComparison.Ordinal));
        Assert.Contains(report.CautionKeys, k => k.MessageKey == "caution.basket-no-console");
        AssertStays(report);
    }

    [Fact]
    public void Two_consoles_go_into_two_cabinets_with_hosts()
    {
        var report = Plan(Basket(("CAB-42-6-8", 2), ("PC-210", 8), ("KVM-8", 2), ("KD-1", 2), ("SW-24", 2)));
        Assert.All(Racks(report), r => Assert.Equal((1, 1, 4), (r.Count(p => p == "KVM-8"), r.Count(p => p == "KD-1"), r.Count(p => p == "PC-210"))));
        AssertStays(report);
    }

    private static void AssertStays(BasketReport report)
    {
        var again = Plan(report.CompletedBasket);
        Assert.Empty(again.MissingLines);
        Assert.Empty(again.ExcessLines);
        Assert.Equal(report.CompletedVerdicts.Product, again.Verdicts.Product);
    }
}
