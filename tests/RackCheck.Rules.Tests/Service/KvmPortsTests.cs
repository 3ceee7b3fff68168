using RackCheck.Model;
using RackCheck.Rules.Service;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Service;

public sealed class KvmPortsTests : RuleTests<KvmPorts>
{
    private static Item Pc(string id, int unit) => Unit(id, 1).At(unit) with { Console = true };

    private static Item Switch(int? ports, string id = "kvm-1", int unit = 30, bool? console = null) =>
        Unit(id, 1).At(unit) with { Category = ItemCategory.KvmSwitch, KvmPorts = ports, Console = console };

    private static RackDescription Computers(int count) => EmptyRack().With([.. Enumerable.Range(1, count).Select(n => Pc($"pc-{n:00}", n))]);

    [Fact]
    public void Port_for_each_host_passes() => Passes(Computers(12).With(Switch(8), Switch(4, "kvm-2", 31)));

    [Fact]
    public void Too_few_ports_are_error_and_enlarge_largest_switch()
    {
        var rack = Computers(13).With(Switch(4, "kvm-2", 31), Switch(8));
        var finding = Only(rack);
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Equal(["/items/14/kvmPorts"], finding.Pointers);
        Numbers(finding, 12, 13, "ports");
        Assert.Equal(16, Remedied(rack, finding).Items[14].KvmPorts);
        var added = Remedied(rack, finding, 1);
        Assert.Equal((4, 21), (added.Items[^1].KvmPorts, added.Items[^1].Position!.U));
        Assert.Equal(["pc-13"], Remedied(rack, finding, 2).Items.Where(i => i.Console == false).Select(i => i.Id));
    }

    [Fact]
    public void Missing_switch_is_added_next_to_keyboard()
    {
        var rack = Computers(5).With(Unit("console", 1).At(19) with { Category = ItemCategory.KeyboardDrawer });
        var finding = Only(rack);
        Assert.Equal(["/items/0/console"], finding.Pointers);
        Numbers(finding, 0, 5, "ports");
        Assert.Equal((8, 20), (Remedied(rack, finding).Items[^1].KvmPorts, Remedied(rack, finding).Items[^1].Position!.U));
    }

    [Fact]
    public void Blanking_panel_is_replaced_by_switch()
    {
        var rack = EmptyRack(2).With(Pc("wave-pc", 1), Plate("plate", 1, 2));
        Assert.Equal(["wave-pc", "kvm-switch"], Remedied(rack, Only(rack)).Items.Select(i => i.Id));
    }

    [Fact]
    public void Full_rack_runs_hosts_without_console()
    {
        var rack = EmptyRack(2).With(Pc("wave-pc", 1), Pc("gauge-pc", 2));
        Assert.All(Remedied(rack, Only(rack)).Items, i => Assert.False(i.Console));
    }

    [Fact]
    public void More_hosts_than_any_switch_has_ports()
    {
        var rack = EmptyRack(60).With([.. Enumerable.Range(1, 40).Select(n => Pc($"pc-{n:00}", n))]);
        Assert.Equal(40, Remedied(rack, Only(rack)).Items.Count(i => i.Console == false));
    }

    [Fact]
    public void Switch_needs_no_port_itself() => Passes(Computers(4).With(Switch(4, console: true)));

    [Fact]
    public void Ports_of_switch_missing_are_not_assessed()
    {
        ReportsMissing(Computers(9).With(Switch(8), Switch(null, "kvm-2", 31)), "/items/10/kvmPorts");
        Passes(Computers(8).With(Switch(8), Switch(null, "kvm-2", 31)));
        Passes(EmptyRack().With(Unit("wave-pc", 4).At(1)));
    }

    [Theory]
    [InlineData(ItemCategory.KeyboardDrawer)]
    [InlineData(ItemCategory.Display)]
    public void Single_host_uses_the_drawer_or_display_directly(ItemCategory category)
    {
        var console = Unit("console", 1).At(19) with { Category = category };
        Passes(Computers(1).With(console));
        Assert.Single(Findings(Computers(2).With(console)));
        Passes(Computers(2).With(console, Unit("console-2", 1).At(20) with { Category = category }));
    }

    [Fact]
    public void Drawer_of_a_KVM_switch_serves_no_further_host() =>
        Assert.Single(Findings(Computers(9).With(Switch(8), Unit("console", 1).At(19) with { Category = ItemCategory.KeyboardDrawer })));
}
