using RackCheck.Model;
using static RackCheck.Planning.Tests.Baskets.DemoCatalogue;

namespace RackCheck.Planning.Tests.Baskets;

public sealed class MissingLineTests
{
    [Fact]
    public void Item_too_heavy_for_front_panel_misses_rails()
    {
        var report = Plan(Basket(("CAB-42-8-10", 1), ("DRV-4", 2)));
        var rails = Missing(report, "RUN-40", "RUN-60M");
        Assert.Equal(2, rails.Quantity);
        Assert.Equal(["layout.no-support"], rails.Rules);
        Assert.All(report.Rack!.Items, i => Assert.Equal(SupportStyle.Panel, i.Support!.Style));
    }

    [Fact]
    public void Rails_of_the_basket_are_used_where_suitable()
    {
        var report = Plan(Basket(("CAB-42-8-10", 1), ("DRV-4", 2), ("RUN-60M", 1), ("RUN-100M", 1)));
        Assert.DoesNotContain(report.MissingLines, m => m.PartNumber.StartsWith("QWL-RUN", StringComparison.Ordinal));
        Assert.Equal([60d, 100d], report.Rack!.Items.Select(i => i.Support!.RatedKg).Order());
        Assert.Empty(report.ExcessLines);
    }

    [Fact]
    public void Rails_too_short_or_too_weak_are_not_used()
    {
        // The drive has a mass of 46 kg; the upright spacing is 700 mm.
        var report = Plan(Basket(("CAB-42-8-10", 1), ("DRV-6", 1), ("RUN-60S", 1), ("SLD-60M", 1)));
        Assert.Equal(1, Missing(report, "RUN-60M").Quantity);
        Assert.Equal(["QWL-RUN-60S", "QWL-SLD-60M"], report.ExcessLines.Select(e => e.PartNumber));
    }

    [Fact]
    public void Items_without_a_shelf_miss_one_of_sufficient_depth()
    {
        var report = Plan(Basket(("CAB-42-6-8", 1), ("PC-D1", 2)));
        var shelf = Missing(report, "SH-450S");
        Assert.Equal(1, shelf.Quantity);
        Assert.Contains("layout.shelf-missing", shelf.Rules);
    }

    [Fact]
    public void Shelf_of_the_basket_takes_the_items_that_fit()
    {
        var report = Plan(Basket(("CAB-42-6-8", 1), ("PC-D1", 3), ("SH-450S", 1)));
        Assert.Equal(2, report.Rack!.Items.Count(i => i.OnShelf == "QWL-SH-450S-1"));
        Assert.Equal(1, Missing(report, "SH-450S").Quantity);
    }

    [Fact]
    public void Cords_without_outlet_miss_a_pdu()
    {
        var report = Plan(Basket(("CAB-42-8-10", 1), ("GEN-2", 9), ("DU-16-H", 1)));
        Assert.Equal(8, report.Report!.Figures.Power!.Assignment!.Count);
        var unit = Assert.Single(report.MissingLines, m => m.PartNumber.StartsWith("QWL-DU", StringComparison.Ordinal));
        Assert.Equal(["power.no-source"], unit.Rules);
    }

    [Fact]
    public void DualCordedItems_miss_a_pdu_on_a_second_supply()
    {
        var report = Plan(Basket(("CAB-42-8-10", 1), ("SW-48", 3), ("DU-16-VL", 1)));
        Assert.Contains(report.Report!.Findings, f => f.Rule == "power.redundancy");
        Assert.Equal(["power.redundancy"], Assert.Single(report.MissingLines, m => m.PartNumber.StartsWith("QWL-DU", StringComparison.Ordinal)).Rules);
    }

    [Fact]
    public void Second_supply_not_specified_is_not_proposed()
    {
        var request = Basket(("CAB-42-8-10", 1), ("SW-48", 1), ("DU-16-VL", 1)) with { Supplies = [Supply("A")] };
        var report = Plan(request);
        Assert.DoesNotContain(report.MissingLines, m => m.PartNumber.StartsWith("QWL-DU", StringComparison.Ordinal));
        Assert.Single(report.Unmet, u => u.What.Contains("second supply", StringComparison.Ordinal));
        Assert.Equal((Verdict.Hold, Verdict.Hold), (report.Verdict, report.CompletedVerdict));
    }

    [Fact]
    public void Proposed_pdu_fits_the_specified_supplies()
    {
        var request = Basket(("CAB-42-8-10", 1), ("GEN-2", 3)) with
        {
            Supplies = [Supply("A") with { Socket = ConnectorCode.Iec60309A32P1, RatedA = 32, Breaker = null }],
        };
        var line = Assert.Single(Plan(request).MissingLines, m => m.PartNumber.StartsWith("QWL-DU", StringComparison.Ordinal));
        Assert.StartsWith("QWL-DU-32", line.PartNumber, StringComparison.Ordinal);
    }

    [Fact]
    public void NorthAmerica_gets_a_pdu_with_its_plug() =>
        Assert.Equal(1, Missing(Plan(Basket(("CAB-42-8-10", 1), ("GEN-2", 3)) with { Site = new Site { Region = Region.Na } }), "DU-30-VN").Quantity);

    [Fact]
    public void EarthStuds_miss_leads_and_earth_bar()
    {
        var report = Plan(Basket(("CAB-42-6-8", 1), ("AMP-2", 4), ("DU-16-VL", 1)));
        Assert.Contains("earthing.bar-missing", Missing(report, "EBR-16").Rules);
        var leads = report.MissingLines.Where(m => m.PartNumber.StartsWith("QWL-ELD", StringComparison.Ordinal)).ToArray();
        Assert.Equal(4, leads.Sum(l => l.Quantity * (ByNumber[l.PartNumber].Pieces ?? 1)));

        // The lowest is 44 mm above U1: 44 + 225 + 350 + 200 mm.
        Assert.Contains(leads, l => ByNumber[l.PartNumber].EarthLead!.LengthM == 1.5);
        Assert.All(leads, l => Assert.Contains("earthing.lead-length", l.Rules));
    }

    [Fact]
    public void EarthBar_with_too_few_terminals_becomes_excess()
    {
        var report = Plan(Basket(("CAB-42-6-8", 1), ("AMP-2", 4), ("DU-16-VL", 1), ("EBR-8", 1)));
        Assert.Equal(8, report.Rack!.Cabinet!.EarthBar!.Terminals);
        Assert.Equal(1, Missing(report, "EBR-16").Quantity);
        Assert.Equal("/lines/3", Assert.Single(report.ExcessLines).Line);
    }

    [Fact]
    public void EarthLead_follows_the_cord_of_its_item_not_the_supply_cable()
    {
        var request = Basket(("CAB-42-8-10", 1), ("AMP-2", 1), ("DU-16-VL", 1)) with
        {
            Supplies = [Supply("A") with { Cable = new SupplyCable { LengthM = 10, CrossSectionMm2 = 10 } }],
        };
        var line = Assert.Single(Plan(request).MissingLines, m => m.PartNumber.StartsWith("QWL-ELD", StringComparison.Ordinal));
        Assert.Equal(4, ByNumber[line.PartNumber].EarthLead!.CrossSectionMm2);
    }

    [Fact]
    public void Inlet_without_cord_misses_one()
    {
        var report = Plan(Basket(("CAB-42-8-10", 1), ("GEN-2", 3), ("PSU-3", 1), ("DU-16-VL", 1), ("CRD-13-20", 1)));
        Assert.Equal(2, CordsOf(report, ConnectorCode.C14));
        Assert.Equal(1, CordsOf(report, ConnectorCode.C20));
    }

    [Fact]
    public void Cord_reaches_with_extended_slides()
    {
        // 225 + 250 + 550 + 300 mm past the side of the opening.
        var report = Plan(Basket(("CAB-42-8-10", 1), ("PC-410", 1), ("SLD-60M", 1), ("DU-16-VL", 1), ("CRD-13-10", 1)));
        Assert.Equal(1, Missing(report, "CRD-13-20").Quantity);
        Assert.Equal("QWL-CRD-13-10", Assert.Single(report.ExcessLines).PartNumber);
    }

    [Fact]
    public void Open_positions_beside_airflow_miss_blanking_panels()
    {
        var report = Plan(Basket(("CAB-24-8-8", 1), ("DAQ-3", 1), ("DU-16-VL", 1)));
        var panels = PanelsOf(report);
        Assert.Equal(24 - 3, HeightOf(panels));
        Assert.All(panels, p => Assert.Equal(["layout.blanking"], p.Rules));
    }

    [Fact]
    public void Half_closed_gap_misses_the_rest()
    {
        var report = Plan(Basket(("CAB-24-8-8", 1), ("DAQ-3", 1), ("DU-16-VL", 1), ("BP-2", 1)));
        Assert.Equal(24 - 3 - 2, HeightOf(PanelsOf(report)));
        Assert.Equal(4, Assert.Single(report.Rack!.Items, i => i.Category == ItemCategory.BlankingPanel).Position!.U);
    }

    [Fact]
    public void Solid_door_needs_no_blanking_panel() =>
        Assert.DoesNotContain(Plan(Basket(("CAB-42-6-8-S", 1), ("DAQ-3", 1))).MissingLines, m => m.PartNumber.StartsWith("QWL-BP", StringComparison.Ordinal));

    [Fact]
    public void Policy_changes_missing_lines()
    {
        // The generator has a mass of 6.8 kg, below the default limit of 12 kg for front-panel mounting.
        var request = Basket(("CAB-24-8-8", 1), ("GEN-2", 1));
        var limits = new Dictionary<string, double> { ["panelMassKg"] = 6 };
        var stricter = Plan(request with { Policy = PolicyOf("layout.no-support", new RulePolicy { Limits = limits }) });
        Assert.Contains(stricter.MissingLines, m => ByNumber[m.PartNumber].Kind == ProductKind.Support);
        Assert.DoesNotContain(Plan(request).MissingLines, m => ByNumber[m.PartNumber].Kind == ProductKind.Support);

        Assert.NotEmpty(PanelsOf(Plan(request)));
        Assert.Empty(PanelsOf(Plan(request with { Policy = PolicyOf("layout.blanking", new RulePolicy { Severity = PolicySeverity.Off }) })));
    }

    [Theory]
    [InlineData("CAB-42-6-8", "FIX-CN")]
    [InlineData("CAB-42-6-10-G", "FIX-CL")]
    [InlineData("CAB-42-6-8-S", "FIX-SC")]
    public void Fixings_suit_the_holes_and_come_in_whole_packs(string cabinet, string pack)
    {
        // Six front panels with four sets each.
        var report = Plan(Basket((cabinet, 1), ("CBM-1", 6)));
        var fixings = Assert.Single(report.MissingLines);
        Assert.StartsWith("QWL-" + pack, fixings.PartNumber, StringComparison.Ordinal);
        Assert.Equal(40, fixings.Quantity * ByNumber[fixings.PartNumber].Pieces);
    }

    [Fact]
    public void FixingOption_overrides_the_holes()
    {
        var request = Basket(("CAB-42-6-8", 1), ("CBM-1", 1), ("FIX-SC20", 1)) with
        {
            Options = new BasketOptions { Fixing = Fixing.Screw, Placement = Placement.RowEnd },
        };
        var report = Plan(request);
        Assert.Empty(report.MissingLines);
        Assert.Equal(Fixing.Screw, Assert.Single(report.Rack!.Items).Fixing);
        Assert.Equal(Placement.RowEnd, report.Rack!.Cabinet!.Placement);
    }

    [Fact]
    public void Basket_without_cabinet_misses_the_smallest_that_takes_all()
    {
        var report = Plan(Basket(("DAQ-3", 1), ("GEN-2", 1)));
        Assert.Equal(1, Missing(report, "CAB-24-6-6").Quantity);
        Assert.Equal("QWL-CAB-24-6-6", report.Rack!.Cabinet!.PartNumber);
        Assert.Equal(Verdict.Hold, report.Verdict);
        Assert.NotEqual(Verdict.Hold, report.CompletedVerdict);
    }

    [Fact]
    public void Deep_server_needs_a_deep_cabinet() =>
        Assert.True(Plan(Basket(("SRV-220", 1))).Rack!.Cabinet!.DepthMm >= 1000);

    [Fact]
    public void Equipment_higher_than_low_cabinet_needs_a_high_one() => Assert.Equal(42, Plan(Basket(("GEN-2", 15))).Rack!.Cabinet!.HeightU);

    [Fact]
    public void Needs_without_suitable_offer_are_unmet_and_hold_the_order()
    {
        var report = Plan(Basket(("CAB-42-8-10", 1), ("DRV-6", 1), ("PC-D1", 1)), []);
        Assert.Empty(report.MissingLines);
        Assert.Equal(
            [
                "A shelf for QWL-PC-D1-1",
                "Runners for QWL-DRV-6-1",
                "Outlets for C14 and C20 plugs",
                "An earth lead for QWL-DRV-6-1",
                "Blanking panels for 36 U",
                "4 cage nuts",
            ],
            report.Unmet.Select(u => u.What));
        Assert.Equal((Verdict.Hold, Verdict.Hold), (report.Verdict, report.CompletedVerdict));
    }

    [Fact]
    public void Fans_of_the_equipment_set_the_rise_through_doors()
    {
        // 220 W and 60 m3/h each: 11 K, which is what such computers are built for.
        var request = Basket(("CAB-42-6-8", 1), ("PC-410", 3));
        var first = Plan(request);
        Assert.DoesNotContain(first.MissingLines, m => ByNumber[m.PartNumber].Kind == ProductKind.RoofFans);
        var second = Plan(Completed(request, first));
        Assert.DoesNotContain(second.Report!.Findings, f => f.Rule.StartsWith("cooling.", StringComparison.Ordinal));
        Assert.NotEqual(Verdict.Hold, second.Verdict);
    }

    [Fact]
    public void Roof_fans_are_not_proposed_between_perforated_doors()
    {
        // Two fans of 160 m3/h beside 8 x 60 m3/h of the equipment's own, which set the rise. More of them would draw air past the equipment.
        var plan = Plan(Basket(("CAB-42-6-8", 1), ("FAN-R2", 1), ("PC-410", 8)));
        Assert.Contains(plan.Report!.Findings, f => f is { Rule: "cooling.fan-bypass", Severity: Severity.Advice });
        Assert.DoesNotContain(plan.Report!.Findings, f => f.Rule == "cooling.airflow");
        Assert.DoesNotContain(plan.MissingLines, m => ByNumber[m.PartNumber].Kind == ProductKind.RoofFans);
    }

    [Fact]
    public void Hosts_without_kvm_port_miss_a_switch_for_all()
    {
        var request = Basket(("CAB-42-8-10", 1), ("KD-1", 1), ("PC-210", 9));
        var first = Plan(request);
        Assert.Equal(["service.kvm-ports"], Missing(first, "KVM-16").Rules);
        Assert.DoesNotContain(Plan(Completed(request, first)).Report!.Findings, f => f.Rule == "service.kvm-ports");
        Assert.Equal(1, Missing(Plan(Basket(("CAB-42-8-10", 1), ("PC-210", 9), ("KD-1", 1), ("KVM-8", 1))), "KVM-8").Quantity);
    }

    [Fact]
    public void Full_rack_misses_no_kvm_switch()
    {
        var report = Plan(Basket(("CAB-24-8-8", 1), ("PC-210", 11), ("KD-1", 2)), WithoutCabinets);
        Assert.Contains(report.Report!.Findings, f => f.Rule == "service.kvm-ports");
        Assert.DoesNotContain(report.MissingLines, m => m.PartNumber.StartsWith("QWL-KVM", StringComparison.Ordinal));
        Assert.DoesNotContain(report.Unmet, u => u.What.StartsWith("Room for ", StringComparison.Ordinal));
    }

    [Fact]
    public void Proposed_pdus_keep_to_the_leakage_limit()
    {
        // Six drives of 3.2 mA each; the limit per protective conductor is 10 mA, and one three-phase PDU would take them all.
        var request = Basket(("CAB-42-8-12", 1), ("DRV-6", 6));
        var first = Plan(request);
        Assert.Equal(2, first.MissingLines.Where(m => ByNumber[m.PartNumber].Kind == ProductKind.Pdu).Sum(m => m.Quantity));
        Assert.DoesNotContain(Plan(Completed(request, first)).Report!.Findings, f => f.Rule == "earthing.leakage");
    }

    [Fact]
    public void Proposed_pdu_does_not_trip_on_inrush()
    {
        // Three computers of 30 A inrush each: 90 A at once. A C16 breaker may trip from 80 A.
        var request = Basket(("CAB-42-6-8", 1), ("PC-410", 3));
        Assert.DoesNotContain(Plan(Completed(request, Plan(request))).Report!.Findings, f => f.Rule == "power.inrush");
    }

    [Fact]
    public void Proposed_pdu_demands_least_of_the_supply()
    {
        // 2 x 30, 15 and 2 x 5 A at once, in pulses of unknown width: no reason for sequenced outlets, 32 A or three phases.
        var report = Plan(Basket(("CAB-42-8-10", 1), ("PC-410", 2), ("AMP-32", 1), ("KVM-8", 2)));
        var unit = Assert.Single(report.MissingLines, m => ByNumber[m.PartNumber].Kind == ProductKind.Pdu);
        var facts = ByNumber[unit.PartNumber].Pdu!;
        Assert.Equal((16, false, ConnectorCode.Iec60309A16P1), (facts.RatedA!.Value, facts.RemoteSwitched!.Value, facts.Plug!.Value));
    }

    [Fact]
    public void Pdu_needed_for_two_reasons_names_both()
    {
        // Switched outlets, which the switches need at a remote site, are chosen one PDU at a time.
        var remote = new Site { Remote = true };
        var unit = Missing(Plan(Basket(("CAB-42-8-10", 1), ("SW-48", 2)) with { Site = remote }), "DU-16-V");
        Assert.Equal(2, unit.Quantity);
        Assert.StartsWith("QWL-SW-48-1 and QWL-SW-48-2 need PDU outlets", unit.Reason, StringComparison.Ordinal);
        Assert.Contains("QWL-SW-48-1 and QWL-SW-48-2 have outlets for ", unit.Reason, StringComparison.Ordinal);
        Assert.EndsWith("plugs on one supply only and need a second supply.", unit.Reason, StringComparison.Ordinal);
        var one = Plan(Basket(("CAB-42-8-10", 1), ("PC-410", 1), ("SW-48", 1)) with { Site = remote }).MissingLines
            .Single(m => m.Reason.Contains("one supply only", StringComparison.Ordinal));
        Assert.EndsWith("QWL-SW-48-1 has outlets for C14 plugs on one supply only and needs a second supply.", one.Reason, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("IP54", "QWL-CAB-42-6-8-S")]
    [InlineData(null, "QWL-CAB-24-6-6")]
    public void Cabinet_has_the_ip_code_of_the_site(string? ip, string cabinet)
    {
        // All low cabinets on offer are IP20.
        var report = Plan(Basket(("AMP-1", 1)) with { Site = new Site { RequiredIp = ip } });
        Assert.Equal(cabinet, report.Rack!.Cabinet!.PartNumber);
        Assert.DoesNotContain(report.Report!.Findings, f => f.Rule == "cooling.ip-conflict");
    }

    [Fact]
    public void Side_airflow_needs_a_wide_cabinet() => Assert.Equal(800, Plan(Basket(("SW-24", 2), ("AMP-32", 1))).Rack!.Cabinet!.WidthMm);

    [Fact]
    public void Low_delivery_route_needs_a_low_cabinet()
    {
        // 15 generators of 2 U need a 42 U cabinet, 12 fit in 24 U. The opening takes the low cabinet.
        Site site = new() { Delivery = new Model.Delivery { Openings = [new Opening { Name = "hatch", WidthMm = 1000, HeightMm = 1500 }], MayTilt = false } };
        Assert.Equal(24, Plan(Basket(("GEN-2", 10)) with { Site = site }).Rack!.Cabinet!.HeightU);
    }

    [Fact]
    public void Cabinet_that_does_not_take_everything_has_its_own_reason()
    {
        Assert.Contains("on offer that takes everything", Missing(Plan(Basket(("GEN-2", 2))), "CAB-24-6-6").Reason, StringComparison.Ordinal);
        var full = Assert.Single(Plan(Basket(("GEN-2", 150))).MissingLines, m => ByNumber[m.PartNumber].Kind == ProductKind.Cabinet);
        Assert.Contains("none on offer takes everything", full.Reason, StringComparison.Ordinal);
    }

    private static MissingLine Missing(BasketReport report, params string[] anyOf) =>
        Assert.Single(report.MissingLines, m => anyOf.Any(a => m.PartNumber == "QWL-" + a));

    private static Policy PolicyOf(string rule, RulePolicy policy) => new() { Rules = new Dictionary<string, RulePolicy> { [rule] = policy } };

    private static MissingLine[] PanelsOf(BasketReport report) =>
        [.. report.MissingLines.Where(m => m.PartNumber.StartsWith("QWL-BP", StringComparison.Ordinal))];

    private static int HeightOf(IEnumerable<MissingLine> panels) =>
        panels.Sum(p => p.Quantity * (ByNumber[p.PartNumber].Pieces ?? 1) * ByNumber[p.PartNumber].Item!.HeightU!.Value);

    private static int CordsOf(BasketReport report, ConnectorCode plug) =>
        report.MissingLines.Where(m => ByNumber[m.PartNumber].Cord?.Plug == plug).Sum(m => m.Quantity * (ByNumber[m.PartNumber].Pieces ?? 1));

    private static Supply Supply(string id) => new()
    {
        Id = id, VoltageV = 230, Phases = 1, RatedA = 16, Breaker = new Breaker { Curve = BreakerCurve.C, RatedA = 16 }, Socket = ConnectorCode.Iec60309A16P1,
    };
}
