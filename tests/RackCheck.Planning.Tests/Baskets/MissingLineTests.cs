using RackCheck.Model;
using static RackCheck.Planning.Tests.Baskets.DemoCatalogue;

namespace RackCheck.Planning.Tests.Baskets;

public sealed class MissingLineTests
{
    [Fact]
    public void Equipment_that_its_front_panel_cannot_carry_lacks_rails()
    {
        var report = Plan(Basket(("CAB-42-8-10", 1), ("DRV-4", 2)));
        var rails = Missing(report, "RUN-40", "RUN-60M");
        Assert.Equal(2, rails.Quantity);
        Assert.Equal(["layout.no-support"], rails.Rules);
        Assert.All(report.Rack.Items, i => Assert.Equal(SupportStyle.Panel, i.Support!.Style));
    }

    [Fact]
    public void Rails_in_the_basket_are_used_where_they_carry()
    {
        var report = Plan(Basket(("CAB-42-8-10", 1), ("DRV-4", 2), ("RUN-60M", 1), ("RUN-100M", 1)));
        Assert.DoesNotContain(report.MissingLines, m => m.PartNumber.StartsWith("QWL-RUN", StringComparison.Ordinal));
        Assert.Equal([60d, 100d], report.Rack.Items.Select(i => i.Support!.RatedKg).Order());
        Assert.Empty(report.ExcessLines);
    }

    [Fact]
    public void Rails_that_do_not_reach_or_are_too_weak_are_not()
    {
        // The drive weighs 46 kg, and the uprights stand 700 mm apart.
        var report = Plan(Basket(("CAB-42-8-10", 1), ("DRV-6", 1), ("RUN-60S", 1), ("SLD-60M", 1)));
        Assert.Equal(1, Missing(report, "RUN-60M").Quantity);
        Assert.Equal(["QWL-RUN-60S", "QWL-SLD-60M"], report.ExcessLines.Select(e => e.PartNumber));
    }

    [Fact]
    public void Things_without_a_shelf_lack_one_that_is_deep_enough()
    {
        var report = Plan(Basket(("CAB-42-6-8", 1), ("PC-D1", 2)));
        var shelf = Missing(report, "SH-450S");
        Assert.Equal(1, shelf.Quantity);
        Assert.Contains("layout.shelf-missing", shelf.Rules);
    }

    [Fact]
    public void A_shelf_in_the_basket_takes_what_goes_on_it()
    {
        var report = Plan(Basket(("CAB-42-6-8", 1), ("PC-D1", 3), ("SH-450S", 1)));
        Assert.Equal(2, report.Rack.Items.Count(i => i.OnShelf == "QWL-SH-450S-1"));
        Assert.Equal(1, Missing(report, "SH-450S").Quantity);
    }

    [Fact]
    public void Cords_without_an_outlet_lack_a_distribution_unit()
    {
        var report = Plan(Basket(("CAB-42-8-10", 1), ("GEN-2", 9), ("DU-16-H", 1)));
        Assert.Equal(8, report.Report.Figures.Power!.Assignment!.Count);
        var unit = Assert.Single(report.MissingLines, m => m.PartNumber.StartsWith("QWL-DU", StringComparison.Ordinal));
        Assert.Equal(["power.no-source"], unit.Rules);
    }

    [Fact]
    public void Redundant_items_lack_a_second_supply_with_a_distribution_unit()
    {
        var report = Plan(Basket(("CAB-42-8-10", 1), ("SW-48", 3), ("DU-16-VL", 1)));
        Assert.Contains(report.Report.Findings, f => f.Rule == "power.redundancy");
        Assert.Equal(["power.redundancy"], Assert.Single(report.MissingLines, m => m.PartNumber.StartsWith("QWL-DU", StringComparison.Ordinal)).Rules);
    }

    [Fact]
    public void A_second_supply_that_is_not_there_is_not_proposed()
    {
        var request = Basket(("CAB-42-8-10", 1), ("SW-48", 1), ("DU-16-VL", 1)) with { Supplies = [Supply("A")] };
        var report = Plan(request);
        Assert.DoesNotContain(report.MissingLines, m => m.PartNumber.StartsWith("QWL-DU", StringComparison.Ordinal));
        Assert.Single(report.Unmet, u => u.What.Contains("second supply", StringComparison.Ordinal));
        Assert.Equal((Verdict.Hold, Verdict.Hold), (report.Verdict, report.CompletedVerdict));
    }

    [Fact]
    public void A_distribution_unit_is_proposed_for_the_supplies_that_are_there()
    {
        var request = Basket(("CAB-42-8-10", 1), ("GEN-2", 3)) with { Supplies = [Supply("A") with { Socket = ConnectorCode.Iec60309A32P1, RatedA = 32, Breaker = null }] };
        Assert.StartsWith("QWL-DU-32", Assert.Single(Plan(request).MissingLines, m => m.PartNumber.StartsWith("QWL-DU", StringComparison.Ordinal)).PartNumber, StringComparison.Ordinal);
    }

    [Fact]
    public void North_America_gets_a_unit_with_its_plug() =>
        Assert.Equal(1, Missing(Plan(Basket(("CAB-42-8-10", 1), ("GEN-2", 3)) with { Site = new Site { Region = Region.Na } }), "DU-30-VN").Quantity);

    [Fact]
    public void Studs_lack_leads_that_reach_the_bar_and_the_bar_itself()
    {
        var report = Plan(Basket(("CAB-42-6-8", 1), ("AMP-2", 4), ("DU-16-VL", 1)));
        Assert.Contains("earthing.bar-missing", Missing(report, "EBR-16").Rules);
        var leads = report.MissingLines.Where(m => m.PartNumber.StartsWith("QWL-ELD", StringComparison.Ordinal)).ToArray();
        Assert.Equal(4, leads.Sum(l => l.Quantity * (ByNumber[l.PartNumber].Pieces ?? 1)));

        // The lowest lies 44 mm above unit 1: 44 + 225 + 350 + 200 mm.
        Assert.Contains(leads, l => ByNumber[l.PartNumber].EarthLead!.LengthM == 1.5);
        Assert.All(leads, l => Assert.Contains("earthing.lead-length", l.Rules));
    }

    [Fact]
    public void A_bar_with_too_few_terminals_is_replaced_and_becomes_too_much()
    {
        var report = Plan(Basket(("CAB-42-6-8", 1), ("AMP-2", 4), ("DU-16-VL", 1), ("EBR-8", 1)));
        Assert.Equal(8, report.Rack.Cabinet!.EarthBar!.Terminals);
        Assert.Equal(1, Missing(report, "EBR-16").Quantity);
        Assert.Equal("/lines/3", Assert.Single(report.ExcessLines).Line);
    }

    [Fact]
    public void The_section_of_leads_follows_the_supply()
    {
        var request = Basket(("CAB-42-8-10", 1), ("AMP-2", 1), ("DU-16-VL", 1)) with { Supplies = [Supply("A") with { Cable = new SupplyCable { LengthM = 10, CrossSectionMm2 = 10 } }] };
        Assert.Equal(10, ByNumber[Assert.Single(Plan(request).MissingLines, m => m.PartNumber.StartsWith("QWL-ELD", StringComparison.Ordinal)).PartNumber].EarthLead!.CrossSectionMm2);
    }

    [Fact]
    public void Each_inlet_lacks_a_cord_of_its_own()
    {
        var report = Plan(Basket(("CAB-42-8-10", 1), ("GEN-2", 3), ("PSU-3", 1), ("DU-16-VL", 1), ("CRD-13-20", 1)));
        Assert.Equal(2, CordsOf(report, ConnectorCode.C14));
        Assert.Equal(1, CordsOf(report, ConnectorCode.C20));
    }

    [Fact]
    public void A_cord_reaches_also_when_slides_are_pulled_out()
    {
        // 225 + 250 + 550 + 300 mm past the side of the opening.
        var report = Plan(Basket(("CAB-42-8-10", 1), ("PC-410", 1), ("SLD-60M", 1), ("DU-16-VL", 1), ("CRD-13-10", 1)));
        Assert.Equal(1, Missing(report, "CRD-13-20").Quantity);
        Assert.Equal("QWL-CRD-13-10", Assert.Single(report.ExcessLines).PartNumber);
    }

    [Fact]
    public void Open_units_beside_equipment_that_breathes_lack_panels()
    {
        var report = Plan(Basket(("CAB-24-8-8", 1), ("DAQ-3", 1), ("DU-16-VL", 1)));
        var panels = PanelsOf(report);
        Assert.Equal(24 - 3, HeightOf(panels));
        Assert.All(panels, p => Assert.Equal(["layout.blanking"], p.Rules));
    }

    [Fact]
    public void A_gap_that_is_half_closed_lacks_the_rest()
    {
        var report = Plan(Basket(("CAB-24-8-8", 1), ("DAQ-3", 1), ("DU-16-VL", 1), ("BP-2", 1)));
        Assert.Equal(24 - 3 - 2, HeightOf(PanelsOf(report)));
        Assert.Equal(4, Assert.Single(report.Rack.Items, i => i.Category == ItemCategory.BlankingPanel).Position!.U);
    }

    [Fact]
    public void Behind_a_solid_door_no_panel_lacks() =>
        Assert.DoesNotContain(Plan(Basket(("CAB-42-6-8-S", 1), ("DAQ-3", 1))).MissingLines, m => m.PartNumber.StartsWith("QWL-BP", StringComparison.Ordinal));

    [Fact]
    public void A_policy_asks_for_more_or_for_less()
    {
        // The generator weighs 6.8 kg, under the 12 kg that a front panel carries by default.
        var request = Basket(("CAB-24-8-8", 1), ("GEN-2", 1));
        var wished = Plan(request with { Policy = PolicyOf("layout.no-support", new RulePolicy { Limits = new Dictionary<string, double> { ["panelMassKg"] = 6 } }) });
        Assert.Contains(wished.MissingLines, m => ByNumber[m.PartNumber].Kind == ProductKind.Support);
        Assert.DoesNotContain(Plan(request).MissingLines, m => ByNumber[m.PartNumber].Kind == ProductKind.Support);

        Assert.NotEmpty(PanelsOf(Plan(request)));
        Assert.Empty(PanelsOf(Plan(request with { Policy = PolicyOf("layout.blanking", new RulePolicy { Severity = PolicySeverity.Off }) })));
    }

    [Theory]
    [InlineData("CAB-42-6-8", "FIX-CN")]
    [InlineData("CAB-42-6-10-G", "FIX-CL")]
    [InlineData("CAB-42-6-8-S", "FIX-SC")]
    public void Fixings_follow_the_holes_and_come_in_whole_packs(string cabinet, string pack)
    {
        // Six panels of four sets.
        var report = Plan(Basket((cabinet, 1), ("CBM-1", 6)));
        var fixings = Assert.Single(report.MissingLines);
        Assert.StartsWith("QWL-" + pack, fixings.PartNumber, StringComparison.Ordinal);
        Assert.Equal(40, fixings.Quantity * ByNumber[fixings.PartNumber].Pieces);
    }

    [Fact]
    public void A_wish_for_fixings_goes_before_the_holes()
    {
        var request = Basket(("CAB-42-6-8", 1), ("CBM-1", 1), ("FIX-SC20", 1)) with { Options = new BasketOptions { Fixing = Fixing.Screw, Placement = Placement.RowEnd } };
        var report = Plan(request);
        Assert.Empty(report.MissingLines);
        Assert.Equal(Fixing.Screw, Assert.Single(report.Rack.Items).Fixing);
        Assert.Equal(Placement.RowEnd, report.Rack.Cabinet!.Placement);
    }

    [Fact]
    public void Without_a_cabinet_the_smallest_that_takes_all_is_missing()
    {
        var report = Plan(Basket(("DAQ-3", 1), ("GEN-2", 1)));
        Assert.Equal(1, Missing(report, "CAB-24-6-6").Quantity);
        Assert.Equal("QWL-CAB-24-6-6", report.Rack.Cabinet!.PartNumber);
        Assert.Equal(Verdict.Hold, report.Verdict);
        Assert.NotEqual(Verdict.Hold, report.CompletedVerdict);
    }

    [Fact]
    public void A_deep_server_asks_for_a_deep_cabinet() =>
        Assert.True(Plan(Basket(("SRV-220", 1))).Rack.Cabinet!.DepthMm >= 1000);

    [Fact]
    public void More_units_than_a_low_cabinet_has_ask_for_a_high_one() => Assert.Equal(42, Plan(Basket(("GEN-2", 15))).Rack.Cabinet!.HeightU);

    [Fact]
    public void What_nothing_on_offer_fits_is_said_and_holds_the_order()
    {
        var report = Plan(Basket(("CAB-42-8-10", 1), ("DRV-6", 1), ("PC-D1", 1)), []);
        Assert.Empty(report.MissingLines);
        Assert.Equal(
            ["A shelf for QWL-PC-D1-1", "Runners for QWL-DRV-6-1", "Outlets for C14 and C20 plugs", "An earth lead for QWL-DRV-6-1", "Blanking panels for 36 U", "4 cage nuts"],
            report.Unmet.Select(u => u.What));
        Assert.Equal((Verdict.Hold, Verdict.Hold), (report.Verdict, report.CompletedVerdict));
    }

    [Fact]
    public void Air_that_does_not_suffice_lacks_fans_in_the_roof()
    {
        // The computers' own fans move 3 x 60 m3/h; 660 W at 10 K need 199 m3/h.
        var request = Basket(("CAB-42-6-8", 1), ("PC-410", 3));
        var first = Plan(request);
        var fans = Assert.Single(first.MissingLines, m => ByNumber[m.PartNumber].Kind == ProductKind.RoofFans);
        Assert.Equal((1, "cooling.airflow"), (fans.Quantity, Assert.Single(fans.Rules)));
        var second = Plan(Completed(request, first));
        Assert.DoesNotContain(second.Report.Findings, f => f.Rule.StartsWith("cooling.", StringComparison.Ordinal));
        Assert.NotEqual(Verdict.Hold, second.Verdict);
    }

    [Fact]
    public void Fans_whose_opening_the_site_does_not_allow_are_not_proposed()
    {
        var request = Basket(("CAB-42-6-8", 1), ("PC-410", 3)) with { Site = new Site { RequiredIp = "IP20" } };
        Assert.Contains(Plan(request).MissingLines, m => ByNumber[m.PartNumber].Kind == ProductKind.RoofFans);
        var strict = Plan(request with { Site = new Site { RequiredIp = "IP54" } });
        Assert.DoesNotContain(strict.MissingLines, m => ByNumber[m.PartNumber].Kind == ProductKind.RoofFans);
    }

    [Fact]
    public void Computers_that_want_a_console_lack_a_switch_with_ports_for_all()
    {
        var request = Basket(("CAB-42-8-10", 1), ("PC-210", 9));
        var first = Plan(request);
        Assert.Equal(["service.kvm-ports"], Missing(first, "KVM-16").Rules);
        Assert.DoesNotContain(Plan(Completed(request, first)).Report.Findings, f => f.Rule == "service.kvm-ports");
        Assert.Equal(1, Missing(Plan(Basket(("CAB-42-8-10", 1), ("PC-210", 9), ("KVM-8", 1))), "KVM-8").Quantity);
    }

    [Fact]
    public void A_rack_that_is_full_lacks_no_switch()
    {
        var report = Plan(Basket(("CAB-24-8-8", 1), ("PC-210", 12)));
        Assert.Contains(report.Report.Findings, f => f.Rule == "service.kvm-ports");
        Assert.DoesNotContain(report.MissingLines, m => m.PartNumber.StartsWith("QWL-KVM", StringComparison.Ordinal));
        Assert.DoesNotContain(report.Unmet, u => u.What.StartsWith("Room for ", StringComparison.Ordinal));
    }

    [Fact]
    public void Units_that_are_proposed_do_not_leak_too_much_through_one_earth()
    {
        // Six drives of 3.2 mA; one earth carries 10 mA, and one unit of three phases would take them all.
        var request = Basket(("CAB-42-8-12", 1), ("DRV-6", 6));
        var first = Plan(request);
        Assert.Equal(2, first.MissingLines.Where(m => ByNumber[m.PartNumber].Kind == ProductKind.Pdu).Sum(m => m.Quantity));
        Assert.DoesNotContain(Plan(Completed(request, first)).Report.Findings, f => f.Rule == "earthing.leakage");
    }

    [Fact]
    public void A_unit_that_is_proposed_does_not_trip_its_breaker_when_all_comes_on()
    {
        // Three computers of 30 A at once: 90 A, and curve C of 16 A may trip from 80 A on.
        var request = Basket(("CAB-42-6-8", 1), ("PC-410", 3));
        Assert.DoesNotContain(Plan(Completed(request, Plan(request))).Report.Findings, f => f.Rule == "power.inrush");
    }

    [Fact]
    public void Of_units_that_do_not_trip_that_is_proposed_which_asks_least_of_the_building()
    {
        // 2 x 30, 15 and 2 x 5 A at once are too much for outlets that come on together behind 16 A; switched ones do, and need neither 32 A nor three phases.
        var unit = Assert.Single(Plan(Basket(("CAB-42-8-10", 1), ("PC-410", 2), ("AMP-32", 1), ("KVM-8", 2))).MissingLines, m => ByNumber[m.PartNumber].Kind == ProductKind.Pdu);
        var facts = ByNumber[unit.PartNumber].Pdu!;
        Assert.Equal((16, true, ConnectorCode.Iec60309A16P1), (facts.RatedA!.Value, facts.RemoteSwitched!.Value, facts.Plug!.Value));
    }

    [Fact]
    public void A_unit_that_is_there_for_two_reasons_says_both()
    {
        var unit = Missing(Plan(Basket(("CAB-42-8-10", 1), ("UPS-30", 1), ("DU-16-HU", 1), ("SRV-2", 2))), "DU-16-VL");
        Assert.Equal(2, unit.Quantity);
        Assert.Contains("QWL-UPS-30-1 finds no outlet", unit.Reason, StringComparison.Ordinal);
        Assert.Contains("QWL-SRV-2-1 and QWL-SRV-2-2 find one supply only", unit.Reason, StringComparison.Ordinal);
        Assert.EndsWith("plugs, and want a second one.", unit.Reason, StringComparison.Ordinal);
        var one = Plan(Basket(("CAB-42-8-10", 1), ("PC-410", 1), ("SW-48", 1))).MissingLines.Single(m => m.Reason.Contains("one supply only", StringComparison.Ordinal));
        Assert.EndsWith("QWL-SW-48-1 finds one supply only for C14 plugs, and wants a second one.", one.Reason, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("IP54", "QWL-CAB-42-6-8-S")]
    [InlineData(null, "QWL-CAB-24-6-6")]
    public void The_cabinet_has_the_protection_that_the_site_asks_for(string? ip, string cabinet)
    {
        // The only low cabinets on offer are IP20.
        var report = Plan(Basket(("AMP-1", 1)) with { Site = new Site { RequiredIp = ip } });
        Assert.Equal(cabinet, report.Rack.Cabinet!.PartNumber);
        Assert.DoesNotContain(report.Report.Findings, f => f.Rule == "cooling.ip-conflict");
    }

    [Fact]
    public void What_breathes_at_its_sides_asks_for_a_wide_cabinet() => Assert.Equal(800, Plan(Basket(("SW-24", 2), ("AMP-32", 1))).Rack.Cabinet!.WidthMm);

    [Fact]
    public void A_low_way_in_asks_for_a_low_cabinet()
    {
        // 15 generators of 2 U fit a cabinet of 42 U only, 12 one of 24 U; the opening takes the low one.
        Site site = new() { Delivery = new Model.Delivery { Openings = [new Opening { Name = "hatch", WidthMm = 1000, HeightMm = 1500 }], MayTilt = false } };
        Assert.Equal(24, Plan(Basket(("GEN-2", 10)) with { Site = site }).Rack.Cabinet!.HeightU);
    }

    [Fact]
    public void A_cabinet_that_does_not_take_everything_is_not_said_to()
    {
        Assert.Contains("take everything", Missing(Plan(Basket(("GEN-2", 2))), "CAB-24-6-6").Reason, StringComparison.Ordinal);
        var full = Assert.Single(Plan(Basket(("GEN-2", 60))).MissingLines, m => ByNumber[m.PartNumber].Kind == ProductKind.Cabinet);
        Assert.Contains("none on offer takes everything", full.Reason, StringComparison.Ordinal);
    }

    private static MissingLine Missing(BasketReport report, params string[] anyOf) => Assert.Single(report.MissingLines, m => anyOf.Any(a => m.PartNumber == "QWL-" + a));

    private static Policy PolicyOf(string rule, RulePolicy policy) => new() { Rules = new Dictionary<string, RulePolicy> { [rule] = policy } };

    private static MissingLine[] PanelsOf(BasketReport report) => [.. report.MissingLines.Where(m => m.PartNumber.StartsWith("QWL-BP", StringComparison.Ordinal))];

    private static int HeightOf(IEnumerable<MissingLine> panels) => panels.Sum(p => p.Quantity * (ByNumber[p.PartNumber].Pieces ?? 1) * ByNumber[p.PartNumber].Item!.HeightU!.Value);

    private static int CordsOf(BasketReport report, ConnectorCode plug) =>
        report.MissingLines.Where(m => ByNumber[m.PartNumber].Cord?.Plug == plug).Sum(m => m.Quantity * (ByNumber[m.PartNumber].Pieces ?? 1));

    private static Supply Supply(string id) => new()
    {
        Id = id, VoltageV = 230, Phases = 1, RatedA = 16, Breaker = new Breaker { Curve = BreakerCurve.C, RatedA = 16 }, Socket = ConnectorCode.Iec60309A16P1,
    };
}
