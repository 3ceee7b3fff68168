using RackCheck.Model;
using RackCheck.Rules.Cooling;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.CoolRacks;

namespace RackCheck.Rules.Tests.Cooling;

// A usual opening is IP20, fans with filters go up to IP54 (practice); digits by IEC 60529 (value from memory).
public sealed class IpConflictTests : RuleTests<IpConflict>
{
    private static RackDescription Rack(string? required, Door? front = null, Door? rear = null, string? code = null) =>
        Cool(front ?? Closed, rear ?? Closed, ip: required).Cabinet(c => c with { IpCode = code });

    [Theory]
    [InlineData("IP20", 0)]
    [InlineData("IP2X", 0)]
    [InlineData("IP30", 2)]
    [InlineData("IP21", 2)]
    public void Perforated_doors_have_IP20(string required, int count) => Assert.Equal(count, Findings(Rack(required, Aired, Aired)).Count);

    [Fact]
    public void Cabinet_ip_code_overrides_default()
    {
        Passes(Rack("IP30", Aired, Aired, "IP31"));
        var finding = Findings(Rack("IP30", Aired, Aired, "IP10"))[0];
        Assert.Equal(("IP10", "/cabinet/frontDoor/style"), (finding.MessageData["ipCode"].Text, finding.Pointers[0]));
    }

    [Fact]
    public void Openings_lose_the_degree_of_the_closed_cabinet()
    {
        var findings = Findings(Rack("IP54", Aired, Aired, "IP54").Cabinet(c => c with { Roof = new Roof { Style = RoofStyle.Vented } }));
        Assert.Equal(["/cabinet/frontDoor/style", "/cabinet/rearDoor/style", "/cabinet/roof/style"], findings.Select(f => f.Pointers[0]).Order());
        Assert.All(findings, f => Assert.Equal("IP20", f.MessageData["ipCode"].Text));

        // IEC 60529: a hole of 1 mm or more admits the 1 mm wire, so no perforated door has a first digit of 4.
        Assert.Equal(2, Findings(Rack("IP40", Aired, Aired, "IP40")).Count);
        Assert.Equal(2, Findings(Rack("IP32", Aired, Aired, "IP32")).Count);
    }

    [Fact]
    public void Open_sides_are_IP00()
    {
        var rack = Rack("IP20", Open, Closed, "IP54").Cabinet(c => c with { SidePanels = false });
        Assert.Equal(["/cabinet/frontDoor/style", "/cabinet/sidePanels"], Findings(rack).Select(f => f.Pointers[0]));
        Passes(Rack("IP00", Open, Open));
        Passes(Rack(null, Open, Open));
    }

    [Theory]
    [InlineData(Placement.RowMiddle, null, 0)]
    [InlineData(Placement.RowMiddleWall, "IP20", 0)]
    [InlineData(Placement.RowMiddleWallCovered, "IP10", 1)]
    [InlineData(Placement.RowEnd, "IP20", 1)]
    [InlineData(null, "IP20", 1)]
    public void Neighbours_close_the_sides_in_the_middle_of_a_row(Placement? placement, string? code, int count)
    {
        var rack = Rack("IP20", Closed, Closed).Cabinet(c => c with { SidePanels = false, Placement = placement, IpCode = code });
        Assert.Equal(count, Findings(rack).Count(f => f.Pointers[0] == "/cabinet/sidePanels"));
    }

    [Fact]
    public void Vented_roof_with_fans_counts_by_fans()
    {
        var vented = Rack("IP44", code: null).Cabinet(c => c with { Roof = new Roof { Style = RoofStyle.Vented }, IpCode = "IP43" });
        Assert.Equal(["/cabinet/ipCode", "/cabinet/roof/style"], Findings(vented).Select(f => f.Pointers[0]).Order());
        var fans = Rack("IP44", code: "IP54").RoofFans(Curved(2)).Cooled(c => c with { IntakeAreaCm2 = 500 });
        ReportsMissing(fans, "/cooling/filters");
        Assert.Equal(["/cooling/intakeAreaCm2", "/cooling/roofFans"], Findings(fans.Cooled(c => c with { Filters = false })).Select(f => f.Pointers[0])
            .Order());
        Passes(fans.Cooled(c => c with { Filters = true }));
        Assert.Equal(2, Findings(fans.At(s => s with { RequiredIp = "IP55" }).Cabinet(c => c with { IpCode = "IP55" })).Count);
        Passes(fans.At(s => s with { RequiredIp = "IP20" }));
    }

    [Fact]
    public void A_closed_cabinet_has_what_it_is_rated_for()
    {
        Assert.Equal("/cabinet/ipCode", Only(Rack("IP54", code: "IP44")).Pointers[0]);
        ReportsMissing(Rack("IP54"), "/cabinet/ipCode");
        Passes(Rack("IP20"));
        Passes(Rack("IP54", code: "IP54"));
        ReportsMissing(EmptyRack() with { Site = new Site { RequiredIp = "IP54" } }, "/cabinet/frontDoor/style", "/cabinet/rearDoor/style");
    }

    [Fact]
    public void Filters_are_remedy_for_fans_and_intake()
    {
        var rack = Rack("IP54", code: "IP54").RoofFans(Curved(2)).Cooled(c => c with { IntakeAreaCm2 = 500, Filters = false });
        Assert.True(Remedied(rack, Findings(rack)[0]).Cooling!.Filters);
    }

    [Fact]
    public void Open_doors_get_filtered_fans_or_air_conditioner()
    {
        var rack = Rack("IP54", Aired, Aired).With(Warm("wave-pc", 1, 2000, AirflowDirection.FrontToRear, 800, 40));
        var finding = Findings(rack)[0];
        var fans = Remedied(rack, finding);
        Assert.Equal((DoorStyle.Solid, true, "IP54"), (fans.Cabinet!.FrontDoor!.Style, fans.Cooling!.Filters, fans.Cabinet.IpCode));
        Assert.NotNull(Remedied(rack, finding, 1).Cooling!.AirConditioner);
        Assert.Equal("IP20", Remedied(rack, finding, 2).Site!.RequiredIp);
    }

    [Fact]
    public void Finger_protection_passes_with_perforated_door()
    {
        var rack = Rack("IP20", Open, Closed);
        Assert.Equal(DoorStyle.Perforated, Remedied(rack, Only(rack)).Cabinet!.FrontDoor!.Style);
    }
}
