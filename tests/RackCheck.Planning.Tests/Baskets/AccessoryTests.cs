using RackCheck.Model;
using RackCheck.Planning.Baskets;
using RackCheck.Testing;
using static RackCheck.Planning.Tests.Baskets.DemoCatalogue;

namespace RackCheck.Planning.Tests.Baskets;

public sealed class AccessoryTests
{
    // A computer on slides that is pulled out while it works.
    private static readonly Product PulledOut = ByNumber["QWL-PC-410"] with
    {
        PartNumber = "QWL-PC-410X",
        Item = ByNumber["QWL-PC-410"].Item! with { Support = new Support { Style = SupportStyle.Slides, RatedKg = 60, UsedExtended = true } },
    };

    private static BasketReport PlanPulledOut(params (string Part, int Quantity)[] lines)
    {
        var products = new Dictionary<string, Product>(ByNumber, StringComparer.Ordinal) { [PulledOut.PartNumber] = PulledOut };
        return new BasketPlanner(Judge.Checker).Plan(Basket(lines), products, Products).Report!;
    }

    [Fact]
    public void Item_pulled_out_in_use_misses_a_cable_arm()
    {
        var arm = PlanPulledOut(("CAB-42-8-10", 1), ("PC-410X", 2)).MissingLines.Single(m => m.PartNumber == "QWL-CMA-1");
        Assert.Equal(2, arm.Quantity);
        Assert.Equal(["depth.cable-arm"], arm.Rules);
    }

    [Fact]
    public void Cable_arms_of_the_basket_are_fitted_and_the_rest_is_excess()
    {
        var report = PlanPulledOut(("CAB-42-8-10", 1), ("PC-410X", 2), ("CMA-1", 3));
        Assert.Equal(2, report.Rack!.Items.Count(i => i.Support?.CableArm == true));
        Assert.DoesNotContain(report.Report!.Findings, f => f.Rule == "depth.cable-arm");
        Assert.Equal(("QWL-CMA-1", 1), report.ExcessLines.Where(e => e.PartNumber == "QWL-CMA-1").Select(e => (e.PartNumber, e.Quantity)).Single());
    }

    [Fact]
    public void Hosts_on_a_kvm_switch_miss_leads_that_reach()
    {
        var report = Plan(Basket(("CAB-42-8-10", 1), ("PC-210", 3), ("KVM-8", 1)));
        Assert.Equal(3, report.MissingLines.Where(m => m.PartNumber.StartsWith("QWL-KVL", StringComparison.Ordinal)).Sum(m => m.Quantity));
        var own = Plan(Basket(("CAB-42-8-10", 1), ("PC-210", 3), ("KVM-8", 1), ("KVL-50", 4)));
        Assert.DoesNotContain(own.MissingLines, m => m.PartNumber.StartsWith("QWL-KVL", StringComparison.Ordinal));
        Assert.Equal(1, own.ExcessLines.Single(e => e.PartNumber == "QWL-KVL-50").Quantity);
    }

    [Fact]
    public void Rack_without_a_kvm_switch_needs_no_leads() =>
        Assert.Equal(1, Plan(Basket(("CAB-42-8-10", 1), ("SW-24", 3), ("KVL-18", 1))).ExcessLines.Single(e => e.PartNumber == "QWL-KVL-18").Quantity);

    [Fact]
    public void Filter_mat_of_the_basket_filters_the_intake_once()
    {
        var report = Plan(Basket(("CAB-42-8-10", 1), ("SRV-220", 2), ("FLT-30", 2)));
        Assert.True(report.Rack!.Cooling!.Filters);
        Assert.Equal(30, report.Rack!.Cooling.Filter!.LossPa);
        Assert.Equal(1, report.ExcessLines.Single(e => e.PartNumber == "QWL-FLT-30").Quantity);
    }

    [Fact]
    public void Batteries_and_remote_kvm_switches_are_equipment()
    {
        var report = Plan(Basket(("CAB-42-8-10", 1), ("BAT-48", 1), ("KVM-8R", 1)));
        Assert.Equal(BatteryType.Vrla, report.Rack!.Items.Single(i => i.Category == ItemCategory.Battery).Battery!.Type);
        Assert.True(report.Rack!.Items.Single(i => i.Category == ItemCategory.KvmSwitch).RemoteAccess);
    }
}
