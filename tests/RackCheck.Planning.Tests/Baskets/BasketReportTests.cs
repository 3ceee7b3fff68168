using RackCheck.Model;
using RackCheck.Planning.Baskets;
using RackCheck.Rules;
using RackCheck.Testing;
using static RackCheck.Planning.Tests.Baskets.DemoCatalogue;

namespace RackCheck.Planning.Tests.Baskets;

public sealed class BasketReportTests
{
    [Fact]
    public void Heavy_items_go_low_and_consoles_at_working_height()
    {
        var report = Plan(Basket(("CAB-42-8-10", 1), ("DRV-6", 1), ("DSP-8", 1), ("KD-2", 1), ("GEN-2", 2)));
        Assert.Equal(1, report.Rack!.Items.Single(i => i.PartNumber == "QWL-DRV-6").Position!.U);
        Assert.DoesNotContain(report.Report!.Findings, f => f.Rule == "service.console-height");
    }

    [Fact]
    public void Item_without_space_has_no_position_and_is_unmet()
    {
        var report = Plan(Basket(("CAB-24-8-8", 1), ("GEN-2", 13)), WithoutCabinets);
        Assert.Single(report.Rack!.Items, i => i.Position is null);
        Assert.Single(report.Unmet, u => u.What.StartsWith("Room for ", StringComparison.Ordinal));
        Assert.Equal(Verdict.Hold, report.CompletedVerdict);
    }

    [Fact]
    public void Second_cabinet_and_unsuitable_door_are_excess()
    {
        var report = Plan(Basket(("DOR-24-6FG", 1), ("CAB-42-8-10", 1), ("CAB-42-6-8", 2), ("DOR-42-6FG", 2), ("GEN-2", 1)));
        Assert.Equal("QWL-CAB-42-6-8", report.Rack!.Cabinet!.PartNumber);
        Assert.Equal(DoorStyle.Glazed, report.Rack!.Cabinet.FrontDoor!.Style);
        Assert.Equal(
            [("/lines/0", "QWL-DOR-24-6FG", 1), ("/lines/1", "QWL-CAB-42-8-10", 1), ("/lines/2", "QWL-CAB-42-6-8", 1), ("/lines/3", "QWL-DOR-42-6FG", 1)],
            report.ExcessLines.Select(e => (e.Line, e.PartNumber, e.Quantity)));
    }

    [Fact]
    public void Product_out_of_stock_is_taken_only_where_no_other_serves()
    {
        var request = Basket(("CAB-42-8-10", 1), ("GEN-2", 1));
        var fixings = Assert.Single(Plan(request).MissingLines, m => ByNumber[m.PartNumber].Kind == ProductKind.Fixings).PartNumber;
        Product[] without = [.. Products.Select(p => p.PartNumber == fixings ? p with { InStock = false } : p)];
        Assert.NotEqual(fixings, Assert.Single(Plan(request, without).MissingLines, m => ByNumber[m.PartNumber].Kind == ProductKind.Fixings).PartNumber);
        Product[] none = [.. Products.Select(p => p.Kind == ProductKind.Fixings ? p with { InStock = false } : p)];
        Assert.Equal(fixings, Assert.Single(Plan(request, none).MissingLines, m => ByNumber[m.PartNumber].Kind == ProductKind.Fixings).PartNumber);
    }

    [Fact]
    public void Reason_is_its_wording_with_its_data()
    {
        var lines = Plan(Basket(("SRV-2", 2), ("UPS-30", 1), ("AMP-32", 1), ("PC-210", 3), ("KD-1", 1), ("PC-D1", 1))).MissingLines;
        Assert.True(lines.Select(l => l.MessageKey).Distinct().Count() > 5);
        foreach (var line in lines)
        {
            Assert.StartsWith("line.", line.MessageKey, StringComparison.Ordinal);
            foreach (var (_, value) in line.MessageData)
            {
                Assert.DoesNotContain(" ", value.List is { } list ? string.Concat(list) : value.ToString(), StringComparison.Ordinal);
            }
        }
    }

    // One basket has a horizontal PDU that no rack uses; without it, the racks want it. Found by the fuzz.
    [Fact]
    public void Baskets_that_lead_to_each_other_end_at_the_one_that_lacks_nothing()
    {
        var request = Basket(
            ("CAB-42-8-10", 1), ("PC-410", 2), ("AMP-32", 1), ("SW-24", 1), ("UPS-30", 1), ("KD-1", 1), ("KVM-8", 1), ("SLD-60M", 3), ("CRD-13-10", 2),
            ("CRD-13-20", 4), ("CRD-19-10", 1), ("DU-16-V", 60), ("ELD-4-15", 2), ("ELD-4-25", 1), ("FIX-CN50", 1), ("RUN-60M", 1)) with
        {
            Site = new Site { Region = Region.Uk, AmbientMaxC = 28, AltitudeM = 30 },
        };
        var report = Plan(request);
        Assert.NotEmpty(report.MissingLines);
        Assert.Empty(Plan(Completed(request, report)).MissingLines);
    }

    [Fact]
    public void Two_cabinets_are_two_racks()
    {
        var report = Plan(Basket(("CAB-24-8-8", 1), ("CAB-42-8-10", 1), ("GEN-2", 14)));
        Assert.Equal(["QWL-CAB-24-8-8", "QWL-CAB-42-8-10"], report.Racks.Select(r => r.Rack.Cabinet!.PartNumber!).Order(StringComparer.Ordinal));
        Assert.Equal(14, report.Racks.Sum(r => r.Rack.Items.Count(i => i.PartNumber == "QWL-GEN-2")));
        Assert.Empty(report.ExcessLines);
        Assert.Empty(report.ReplaceLines);
        Assert.NotEqual(Verdict.Hold, report.CompletedVerdict);
    }

    [Fact]
    public void Cabinet_that_does_not_take_the_equipment_is_exchanged()
    {
        // A server 700 mm deep in a cabinet 600 mm deep.
        var request = Basket(("CAB-42-6-6", 1), ("SRV-220", 1));
        var report = Plan(request);
        var exchange = Assert.Single(report.ReplaceLines);
        Assert.Equal(("/lines/0", 1), (exchange.Line, exchange.Quantity));
        Assert.True(ByNumber[exchange.PartNumber].Cabinet!.DepthMm >= 1000);
        Assert.Equal(Verdict.Hold, report.Verdict);
        Assert.NotEqual(Verdict.Hold, report.CompletedVerdict);
        Assert.Equal(LineState.Replace, report.LineStatus[0].Status);
        Assert.DoesNotContain(report.CompletedBasket.Lines, l => l.PartNumber == "QWL-CAB-42-6-6");
        Assert.Contains(report.FindingLines, f => f.Rule == "depth.rear-clearance" && f.ClearedBy!.SequenceEqual(["/replaceLines/0"]));
    }

    [Fact]
    public void Equipment_for_two_cabinets_gets_two()
    {
        var report = Plan(Basket(("GEN-2", 40)));
        Assert.Equal(2, report.Racks.Count);
        Assert.Equal(2, report.MissingLines.Where(m => ByNumber[m.PartNumber].Kind == ProductKind.Cabinet).Sum(m => m.Quantity));
        Assert.NotEqual(Verdict.Hold, report.CompletedVerdict);
    }

    [Fact]
    public void Order_without_equipment_asks_for_nothing()
    {
        var report = Plan(Basket(("CRD-13-20", 5), ("BP-1", 3)));
        Assert.Empty(report.Racks);
        Assert.Null(report.Report);
        Assert.Empty(report.MissingLines);
        Assert.Equal(Verdict.Release, report.Verdict);
        Assert.All(report.LineStatus, s => Assert.Equal(LineState.NotAssessed, s.Status));
        var none = Plan(Basket(("SRV-110", 1)) with { Options = new BasketOptions { Cabinet = new BasketCabinet() } });
        Assert.Empty(none.Racks);
        Assert.Equal(Verdict.Release, none.Verdict);
    }

    [Fact]
    public void Existing_cabinet_is_used_and_not_sold()
    {
        var cabinet = ByNumber["QWL-CAB-42-8-10"].Cabinet!;
        var report = Plan(Basket(("SRV-110", 2)) with { Options = new BasketOptions { Cabinet = new BasketCabinet { Existing = cabinet } } });
        Assert.DoesNotContain(report.MissingLines, m => ByNumber[m.PartNumber].Kind == ProductKind.Cabinet);
        Assert.Equal(42, report.Rack!.Cabinet!.HeightU);
        Assert.Empty(report.ReplaceLines);
    }

    [Fact]
    public void Unknown_part_gets_a_suggestion()
    {
        var status = Plan(Basket(("CAB-42-8-10", 1), ("SRV-11O", 1))).LineStatus[1];
        Assert.Equal((LineState.Unknown, "QWL-SRV-110"), (status.Status, status.DidYouMean));
    }

    [Fact]
    public void Own_equipment_is_a_line()
    {
        var own = new Item { Id = "recorder", HeightU = 3, MassKg = 9, Body = new Body { WidthMm = 440, HeightMm = 130, DepthMm = 380 } };
        var request = Basket(("CAB-42-8-10", 1)) with
        {
            Lines = [new BasketLine { PartNumber = "QWL-CAB-42-8-10", Quantity = 1 }, new BasketLine { Item = own, Quantity = 2 }],
        };
        var report = Plan(request);
        Assert.Equal(["recorder", "recorder-2"], report.LineItems[1].Items);
        Assert.All(report.Rack!.Items.Where(i => i.Id.StartsWith("recorder", StringComparison.Ordinal)), i => Assert.NotNull(i.Position));
    }

    [Fact]
    public void Host_without_a_console_in_the_order_needs_no_kvm_switch()
    {
        var report = Plan(Basket(("PC-210", 2)));
        Assert.DoesNotContain(report.MissingLines, m => ByNumber[m.PartNumber].Item?.Category == ItemCategory.KvmSwitch);
        Assert.Contains(report.Assumptions, a => a.Basis.Contains("no console", StringComparison.Ordinal));
        Assert.DoesNotContain(Plan(Basket(("PC-210", 1), ("KD-1", 1))).MissingLines, m => ByNumber[m.PartNumber].Item?.Category == ItemCategory.KvmSwitch);
    }

    [Theory]
    [InlineData(1, 1000)]
    [InlineData(2, 2000)]
    public void Smallest_sufficient_air_conditioner_is_fitted(int drives, double capacityW)
    {
        // 900 W per drive, and a room too warm for heat dissipation by the surface. There is no outside wall for the split unit.
        var request = Basket(("CAB-42-8-10-S", 1), ("DRV-4", drives), ("COL-10", 1), ("COL-20", 1), ("COL-40S", 1)) with
        {
            Site = new Site { AmbientMaxC = 35, OutsideWall = false },
        };
        Assert.Equal(capacityW, Plan(request).Rack!.Cooling!.AirConditioner!.CapacityW);
    }

    [Fact]
    public void Items_with_last_numbers_stay_without_position()
    {
        var report = Plan(Basket(("CAB-24-8-8", 1), ("GEN-2", 13)), WithoutCabinets);
        Assert.Equal("QWL-GEN-2-13", Assert.Single(report.Rack!.Items, i => i.Position is null).Id);
        Assert.Equal("Room for QWL-GEN-2-13", Assert.Single(report.Unmet).What);
    }

    [Fact]
    public void ExcessLine_has_a_reason()
    {
        var report = Plan(Basket(("CAB-42-6-8", 1), ("GEN-2", 1), ("FIX-CN20", 9), ("FIX-SC20", 1), ("DU-16-HU", 1), ("CRD-E13-20", 1)));
        Assert.Equal(
            [
                ("QWL-FIX-CN20", "The other fixings in the basket are enough."),
                ("QWL-FIX-SC20", "The equipment on the uprights uses another type of fixing."),
                ("QWL-DU-16-HU", "It is fed from a UPS, and the order has none."),
                ("QWL-CRD-E13-20", "Equipment is fed from appliance outlets of PDUs; the plug of this cord fits another type of outlet."),
            ],
            report.ExcessLines.Select(e => (e.PartNumber, e.Reason)));
        Assert.Equal("Nothing in the rack is left to fasten.", Assert.Single(Plan(Basket(("CAB-42-6-8", 1), ("FIX-CN20", 1))).ExcessLines).Reason);
    }

    [Fact]
    public void Reason_agrees_in_number()
    {
        var one = Plan(Basket(("CAB-42-6-8", 1), ("AMP-2", 1))).MissingLines.Single(m => m.PartNumber.StartsWith("QWL-EBR", StringComparison.Ordinal));
        Assert.Contains("for 1 earth lead, ", one.Reason, StringComparison.Ordinal);
        Assert.StartsWith("4 screws are needed ", Assert.Single(Plan(Basket(("CAB-42-6-8-S", 1), ("CBM-1", 1))).MissingLines).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void PartNumber_on_two_lines_is_excess_on_the_last()
    {
        var report = Plan(Basket(("RUN-60M", 2), ("CAB-42-8-10", 1), ("DRV-4", 1), ("RUN-60M", 3)));
        Assert.Equal([("/lines/0", 1), ("/lines/3", 3)], report.ExcessLines.Select(e => (e.Line, e.Quantity)));
    }

    [Fact]
    public void Partly_used_pack_is_not_excess()
    {
        var report = Plan(Basket(("CAB-42-8-10", 1), ("CBM-1", 1), ("FIX-CN50", 2)));
        Assert.Equal(1, Assert.Single(report.ExcessLines).Quantity);
    }

    [Fact]
    public void Cord_that_fits_nothing_is_excess()
    {
        var report = Plan(Basket(("CAB-42-8-10", 1), ("GEN-2", 1), ("DU-16-VL", 1), ("CRD-13-20", 1), ("CRD-E13-20", 1)));
        Assert.Equal("QWL-CRD-E13-20", Assert.Single(report.ExcessLines).PartNumber);
    }

    [Fact]
    public void Pdu_whose_plug_fits_no_supply_is_excess()
    {
        var supply = new Supply { Id = "A", VoltageV = 230, Phases = 1, RatedA = 16, Socket = ConnectorCode.Iec60309A16P1 };
        var report = Plan(Basket(("CAB-42-8-10", 1), ("DU-32-V", 1), ("DU-16-VL", 1)) with { Supplies = [supply] });
        Assert.Equal("QWL-DU-16-VL", Assert.Single(report.Rack!.Pdus!).PartNumber);
        Assert.Equal("QWL-DU-32-V", Assert.Single(report.ExcessLines).PartNumber);
    }

    [Fact]
    public void Line_lists_its_items()
    {
        var report = Plan(Basket(("GEN-2", 1), ("CAB-42-8-10", 1), ("GEN-2", 2), ("DU-16-VL", 2), ("NO-SUCH", 1)));
        Assert.Equal(["/lines/0", "/lines/1", "/lines/2", "/lines/3", "/lines/4"], report.LineItems.Select(l => l.Line));
        Assert.Equal(["QWL-GEN-2-1"], report.LineItems[0].Items);
        Assert.Equal(["QWL-GEN-2-2", "QWL-GEN-2-3"], report.LineItems[2].Items);
        Assert.Equal(["QWL-DU-16-VL-1", "QWL-DU-16-VL-2"], report.LineItems[3].Pdus);
        Assert.Empty(report.LineItems[1].Items);
        Assert.Empty(report.LineItems[4].Items);
    }

    [Fact]
    public void UnknownPart_is_left_out_and_holds_the_order()
    {
        var report = Plan(Basket(("CAB-42-8-10", 1), ("NO-SUCH", 3)));
        Assert.Equal(["/lines/1"], report.UnknownLines);
        Assert.Empty(report.Rack!.Items);
        Assert.Equal((Verdict.Hold, Verdict.Hold), (report.Verdict, report.CompletedVerdict));
    }

    [Fact]
    public void Finding_names_its_lines()
    {
        // Too deep for the cabinet, on suitable rails of the basket.
        var report = Plan(Basket(("GEN-2", 1), ("SRV-220", 1), ("CAB-42-6-6", 1)));
        var deep = Assert.Single(report.FindingLines, f => f.Rule == "depth.rear-clearance");
        Assert.Contains("/lines/1", deep.Lines);
        Assert.DoesNotContain("/lines/0", deep.Lines);
        Assert.Equal(report.Report!.Findings.Select(f => (f.Rule, f.Fingerprint)), report.FindingLines.Select(f => (f.Rule, f.Fingerprint)));
    }

    [Fact]
    public void Finding_of_rails_names_their_line_first()
    {
        var request = Basket(("CAB-42-8-10", 1), ("SLD-60M", 1), ("PC-410", 1)) with { Site = new Site { AisleFrontMm = 400 } };
        Assert.Equal(["/lines/1", "/lines/2"], Assert.Single(Plan(request).FindingLines, f => f is { Rule: "service.aisle", Lines.Count: 2 }).Lines);
    }

    [Fact]
    public void Supplies_not_specified_are_assumed_and_listed()
    {
        var report = Plan(Basket(("CAB-42-8-10", 1), ("DU-16-V3", 1), ("DU-32-V", 1)));
        Assert.Equal([("A", 3, 16d), ("B", 1, 32d)], report.Rack!.Supplies!.Select(s => (s.Id, s.Phases!.Value, s.RatedA)));
        Assert.Equal(["/supplies/0", "/supplies/1", "/earthing/bonded"], report.Assumptions.SelectMany(a => a.Pointers));
        Assert.DoesNotContain(report.Report!.Findings, f => f.Rule.StartsWith("power.", StringComparison.Ordinal) && f.Severity != Severity.Advice);
    }

    [Fact]
    public void Pdu_with_appliance_plug_is_fed_from_the_ups()
    {
        var report = Plan(Basket(("CAB-42-8-10", 1), ("UPS-30", 1), ("DU-16-HU", 1), ("DU-16-VL", 1), ("GEN-2", 2)));
        Assert.Equal(["QWL-DU-16-HU-1"], report.Rack!.Items.Single(i => i.Ups is not null).Ups!.Feeds);
        Assert.Equal("A", Assert.Single(report.Rack!.Supplies!).Id);
        Assert.DoesNotContain(report.Report!.Findings, f => f.Rule == "power.no-source");
    }

    [Fact]
    public void Fans_and_air_conditioner_are_fitted()
    {
        var report = Plan(Basket(("CAB-42-8-10", 1), ("FAN-R2", 2), ("FAN-T3", 1)));
        Assert.Equal(4, Assert.Single(report.Rack!.Cooling!.RoofFans!).Count);
        Assert.Equal(3, Assert.Single(report.Rack!.Cooling.FanTrays!).Count);
        var closed = Plan(Basket(("CAB-42-8-10-S", 1), ("COL-10", 2)));
        Assert.Equal(1000, closed.Rack!.Cooling!.AirConditioner!.CapacityW);
        Assert.Equal("QWL-COL-10", Assert.Single(closed.ExcessLines).PartNumber);
    }

    [Fact]
    public void TooManyItems_are_a_fault()
    {
        var fault = Assert.Single(Answer(Basket(("CAB-42-8-10", 1), ("CBM-1", 201))).Faults);
        Assert.Equal(("/lines", BasketPlanner.TooManyItems), (fault.Pointer, fault.Code));
        Assert.Empty(Answer(Basket(("CAB-42-8-10", 1), ("CBM-1", 200))).Faults);
    }

    [Fact]
    public void NoCabinet_and_none_on_offer_is_a_fault()
    {
        var fault = Assert.Single(Answer(Basket(("CBM-1", 1)), []).Faults);
        Assert.Equal(("/lines", BasketPlanner.NoCabinet), (fault.Pointer, fault.Code));
    }

    [Fact]
    public void CompleteBasket_is_released_without_missing_lines()
    {
        var request = Basket(("CAB-42-8-10", 1), ("CBM-1", 2), ("FIX-CN20", 1)) with
        {
            Earthing = new Model.Earthing { MainConductorMm2 = 16, Bonded = [BondedPart.Frame, BondedPart.SidePanels] },
        };
        var report = Plan(request);
        Assert.Empty(report.MissingLines);
        Assert.Empty(report.ExcessLines);
        Assert.Empty(report.Unmet);
        Assert.Equal(report.Verdict, report.CompletedVerdict);
    }

    [Fact]
    public void MissingLine_names_existing_rules()
    {
        var named = new[]
        {
            Basket(("CAB-42-6-8", 1), ("DRV-4", 2), ("PC-D1", 1), ("SW-48", 1), ("AMP-2", 3)), Basket(("CAB-42-6-8", 1), ("SW-48", 1), ("DU-16-VL", 1)),
        }.SelectMany(b => Plan(b).MissingLines).SelectMany(m => m.Rules).ToHashSet();
        Assert.True(named.Count > 5);
        Assert.All(named, r => Assert.NotNull(RuleSet.Default.Find(r)));
    }

    [Fact]
    public void Rack_of_report_is_a_valid_request()
    {
        var request = Basket(
            ("CAB-42-8-10", 1), ("SRV-110", 4), ("PC-D1", 3), ("SH-450S", 2), ("BP-1-P10", 2), ("DU-16-H", 3), ("UPS-30", 1), ("DU-10-V", 1));
        Assert.Empty(Judge.Unsound(Plan(request).Rack!));
    }
}
