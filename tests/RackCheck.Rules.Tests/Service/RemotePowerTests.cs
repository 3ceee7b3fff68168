using RackCheck.Model;
using RackCheck.Rules.Service;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.Wiring;

namespace RackCheck.Rules.Tests.Service;

public sealed class RemotePowerTests : RuleTests<RemotePower>
{
    private static readonly OutletGroup Half = new()
    {
        Id = "g2",
        Outlets =
        [
            new OutletSet { Socket = ConnectorCode.C13, Count = 1, Switched = true },
            new OutletSet { Socket = ConnectorCode.C13, Count = 7, Switched = false },
        ],
    };

    private static RackDescription Remote(bool? switched, params Item[] items) =>
        Wired(Mains()).Units(Pdu("strip", "A", 16, Outlets("g1", null)) with { RemoteSwitched = switched }).With(items)
            with { Site = new Site { Remote = true } };

    private static Item Daq(bool? cycle = true, bool? spare = null, string id = "flume-daq") => Load(id, 200) with { RemotePowerCycle = cycle, Spare = spare };

    // Common practice, no source.
    [Fact]
    public void Item_on_switched_outlet_passes() => Passes(Remote(true, Daq()));

    [Theory]
    [InlineData(true, null, "/items/0/remotePowerCycle")]
    [InlineData(null, true, "/items/0/spare")]
    [InlineData(true, true, "/items/0/remotePowerCycle")]
    public void Item_on_other_outlet_is_warning(bool? cycle, bool? spare, string pointer)
    {
        var rack = Remote(false, Daq(cycle, spare));
        var finding = Only(rack);
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal([pointer, "/pdus/0"], finding.Pointers);
        Assert.True(Remedied(rack, finding).Pdus![0].RemoteSwitched);
    }

    [Fact]
    public void Remedy_removes_connection_to_other_outlet()
    {
        var rack = Remote(false, Daq(), Load("gauge-amp", 100)).Units(Pdu("strip-2", "A", 16, Half));
        Passes(rack);
        var given = rack.Connect("flume-daq", "strip", "g1");
        Assert.Null(Remedied(given, Only(given)).Connections);
    }

    [Fact]
    public void Each_cord_of_dual_corded_item_counts()
    {
        var rack = Wired(Mains(), Mains("B")).Units(
            Pdu("a", "A", 16, Outlets("g1", null)) with { RemoteSwitched = true },
            Pdu("b", "B", 16, Half with { Outlets = [Half.Outlets[1]] }))
            .With(Load("flume-daq", 200, cords: 2, redundant: true) with { RemotePowerCycle = true }) with { Site = new Site { Remote = true } };
        var finding = Only(rack);
        Assert.Equal("b", finding.MessageData["pdu"].Text);
        Assert.All(Remedied(rack, finding).Pdus!, u => Assert.True(u.RemoteSwitched));
    }

    private static Item Kvm(bool? remote) => Unit("kvm-1", 1).At(9) with { Category = ItemCategory.KvmSwitch, KvmPorts = 8, RemoteAccess = remote };

    [Fact]
    public void Rack_with_neither_console_nor_power_is_warning()
    {
        var rack = Remote(null, Load("gauge-amp", 100));
        var finding = Only(rack);
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal(["/site/remote", "/items/0"], finding.Pointers);
        Assert.True(Remedied(rack, finding).Pdus![0].RemoteSwitched);
        Assert.True(Remedied(rack, finding, 1).Items[^1].RemoteAccess);
        Passes(rack.Units(Pdu("strip-2", "A", 16, Half)));
        Passes(Remote(null));
    }

    [Fact]
    public void Local_kvm_switch_is_no_remote_access()
    {
        var rack = Remote(false, Load("wave-pc", 100) with { Category = ItemCategory.Computer, Position = new Position { U = 1 } });
        var local = rack.With(Kvm(false));
        Assert.True(Remedied(local, Only(local), 1).Items[^1].RemoteAccess);
        Passes(rack.With(Kvm(true)));
        ReportsMissing(rack.With(Kvm(null)), "/items/1/remoteAccess");
    }

    [Fact]
    public void Remote_power_alone_is_enough() =>
        Passes(Remote(true, Load("wave-pc", 100) with { Category = ItemCategory.Computer }, Kvm(null)));

    [Fact]
    public void Item_finding_covers_the_rack() => Assert.Equal("/items/0/remotePowerCycle", Only(Remote(false, Daq(), Load("gauge-amp", 100))).Pointers[0]);

    [Fact]
    public void Pdus_and_plugs_missing_are_not_assessed()
    {
        ReportsMissing(Remote(true, Daq()) with { Pdus = null }, "/pdus");
        ReportsMissing(Remote(true, Daq() with { Power = null }), "/items/0/power/plugs");
        Passes(EmptyRack().With(Unit("gauge-amp", 2).At(1)) with { Site = new Site { Remote = true } });
    }

    [Theory]
    [InlineData(null)]
    [InlineData(false)]
    public void Attended_site_is_not_checked(bool? remote) => Passes(Remote(false, Daq()) with { Site = new Site { Remote = remote } });
}
