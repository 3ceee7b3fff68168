using RackCheck.Model;
using RackCheck.Rules.Cooling;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.CoolRacks;

namespace RackCheck.Rules.Tests.Cooling;

// Practice: no source beyond it.
public sealed class SolidDoorTests : RuleTests<SolidDoor>
{
    private static Item Pc(AirflowDirection direction = AirflowDirection.FrontToRear, string id = "wave-pc", int unit = 1) =>
        Warm(id, unit, 300, direction, 100);

    [Theory]
    [InlineData(AirflowDirection.FrontToRear)]
    [InlineData(AirflowDirection.RearToFront)]
    public void Closed_doors_are_an_error_each(AirflowDirection direction)
    {
        var findings = Findings(Cool(Closed, new Door { Style = DoorStyle.Glazed }).With(Pc(direction)));
        Assert.Equal([["/cabinet/frontDoor/style", "/items/0"], ["/cabinet/rearDoor/style", "/items/0"]], findings.Select(f => f.Pointers));
        Assert.All(findings, f => Assert.Equal(Severity.Error, f.Severity));
    }

    [Fact]
    public void First_item_is_named_and_all_have_pointers()
    {
        var finding = Only(Cool(Closed, Aired).With(Pc(), Pc(id: "gauge-pc", unit: 5)));
        Assert.Equal(("gauge-pc", 2.0), (finding.MessageData["item"].Text, finding.MessageData["count"].Number));
        Assert.Equal(["/cabinet/frontDoor/style", "/items/1", "/items/0"], finding.Pointers);
    }

    [Fact]
    public void Open_doors_and_other_airflow_directions_pass()
    {
        Passes(Cool(Aired, Open).With(Pc()));
        Passes(Cool(Closed, Closed).With(Pc(AirflowDirection.Side), Pc(AirflowDirection.Upward, "b", 5), Pc(AirflowDirection.None, "c", 9)));
    }

    [Fact]
    public void Closed_cabinet_whose_temperature_is_checked_passes()
    {
        // The closed cabinet is judged by its temperature; equipment with fans may recirculate the air inside.
        Passes(Cool(Closed, Closed).With(Pc() with { MaxInletC = 40 }));
        Assert.Equal(2, Findings(Cool(Closed, Closed).With(Pc() with { MaxInletC = 40, HeatW = null, Category = ItemCategory.Server })).Count);
    }

    [Fact]
    public void Closed_cabinet_that_known_heat_makes_too_hot_passes()
    {
        // H4: 3000 W on at most 9 m2 of 5.5 W/(m2 K) rises over 60 K, whatever the UPS gives off: cooling.sealed-rise finds it.
        var ups = Unit("ups", 3).At(30) with { Category = ItemCategory.Ups };
        var hot = Cool(Closed, Closed).With(Pc() with { MaxInletC = 40, HeatW = 3000 }, ups);
        Assert.Empty(Findings(hot));
        var finding = Assert.Single(Judge.Checker.Check(hot).Findings, f => f.Rule == "cooling.sealed-rise");
        Assert.Contains("at least 3000 W", finding.Message, StringComparison.Ordinal);
        Assert.Equal(2, Findings(Cool(Closed, Closed).With(Pc() with { MaxInletC = 40, HeatW = 30 }, ups)).Count);
    }

    [Fact]
    public void Other_airflow_path_passes()
    {
        Passes(Cool(Closed, Closed).RoofFans(Curved(2)).With(Pc()));
        Passes(Cool(Closed, Aired).Trays(Curved(2)).With(Pc()));
        Passes(Cool(Closed, Closed).Underfloor(400, 18).With(Pc()));
        Passes(Cool(Closed, Closed).Cooler(500).With(Pc()));
        Passes(Cool(Closed, Closed).Cabinet(c => c with { SidePanels = false }).With(Pc()));
    }

    [Fact]
    public void Natural_draught_is_an_airflow_path()
    {
        // Free convection through a vented roof needs an opening below: a perforated front door or an intake.
        var vented = Cool(Aired, Closed).Cabinet(c => c with { Roof = new Roof { Style = RoofStyle.Vented, OpenAreaCm2 = 600 } }).With(Pc());
        Passes(vented);
        Assert.Single(Findings(Cool(Aired, Closed).With(Pc())));
        Assert.Equal(2, Findings(vented.Cabinet(c => c with { FrontDoor = Closed })).Count);
    }

    [Fact]
    public void Trays_without_outlet_are_no_airflow_path() => Assert.Equal(2, Findings(Cool(Closed, Closed).Trays(Curved(2)).With(Pc())).Count);

    [Fact]
    public void The_style_is_asked_for()
    {
        ReportsMissing(Cool(null, Aired).With(Pc()), "/cabinet/frontDoor/style");
        Passes(Cool(null, null).With(Pc(AirflowDirection.None)));
    }

    [Fact]
    public void Perforated_doors_are_remedy()
    {
        var rack = Cool(Closed, Closed).With(Pc());
        var remedied = Remedied(rack, Findings(rack)[0]).Cabinet!;
        Assert.Equal((DoorStyle.Perforated, DoorStyle.Perforated, 64.0),
            (remedied.FrontDoor!.Style, remedied.RearDoor!.Style, remedied.FrontDoor.OpenAreaPercent));
    }

    [Fact]
    public void Closed_doors_get_filtered_fans_then_air_conditioner()
    {
        var rack = Cool(Closed, Closed, ip: "IP54").Cabinet(c => c with { IpCode = "IP54" }).With(Pc());
        Assert.True(Remedied(rack, Findings(rack)[0]).Cooling!.Filters);
        Assert.NotNull(Remedied(rack, Findings(rack)[0], 1).Cooling!.AirConditioner);
        Assert.Empty(Remedied(rack, Findings(rack)[0], 2).Items);
    }

    [Fact]
    public void Roof_with_new_fans_is_added_to_bonded_list()
    {
        var rack = Cool(Closed, Aired).With(Pc()) with
        {
            Earthing = new Model.Earthing { MainConductorMm2 = 16, Bonded = [BondedPart.Frame, BondedPart.FrontDoor, BondedPart.RearDoor,
                BondedPart.SidePanels] },
        };
        rack = rack.Cabinet(c => c with { EarthBar = new EarthBar { Terminals = 6 } });
        var remedied = Remedied(rack, Only(rack), 1);
        Assert.Contains(BondedPart.Roof, remedied.Earthing!.Bonded!);
        Assert.Equal(7, remedied.Cabinet!.EarthBar!.Terminals);
    }
}
