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
        Assert.Equal(1, report.Rack.Items.Single(i => i.PartNumber == "QWL-DRV-6").Position!.U);
        Assert.DoesNotContain(report.Report.Findings, f => f.Rule == "service.console-height");
    }

    [Fact]
    public void Item_without_space_has_no_position_and_is_unmet()
    {
        var report = Plan(Basket(("CAB-24-8-8", 1), ("GEN-2", 13)));
        Assert.Single(report.Rack.Items, i => i.Position is null);
        Assert.Single(report.Unmet, u => u.What.StartsWith("Room for ", StringComparison.Ordinal));
        Assert.Equal(Verdict.Hold, report.CompletedVerdict);
    }

    [Fact]
    public void Second_cabinet_and_unsuitable_door_are_excess()
    {
        var report = Plan(Basket(("DOR-24-6FG", 1), ("CAB-42-8-10", 1), ("CAB-42-6-8", 2), ("DOR-42-6FG", 2)));
        Assert.Equal("QWL-CAB-42-6-8", report.Rack.Cabinet!.PartNumber);
        Assert.Equal(DoorStyle.Glazed, report.Rack.Cabinet.FrontDoor!.Style);
        Assert.Equal(
            [("/lines/0", "QWL-DOR-24-6FG", 1), ("/lines/1", "QWL-CAB-42-8-10", 1), ("/lines/2", "QWL-CAB-42-6-8", 1), ("/lines/3", "QWL-DOR-42-6FG", 1)],
            report.ExcessLines.Select(e => (e.Line, e.PartNumber, e.Quantity)));
    }

    [Fact]
    public void Cabinet_that_takes_everything_is_chosen()
    {
        // The low cabinet comes first by part number.
        var report = Plan(Basket(("CAB-24-8-8", 1), ("CAB-42-8-10", 1), ("GEN-2", 14)));
        Assert.Equal("QWL-CAB-42-8-10", report.Rack.Cabinet!.PartNumber);
        Assert.Equal("QWL-CAB-24-8-8", Assert.Single(report.ExcessLines).PartNumber);
        Assert.Equal("QWL-CAB-24-8-8", Plan(Basket(("CAB-24-8-8", 1), ("CAB-42-8-10", 1), ("GEN-2", 2))).Rack.Cabinet!.PartNumber);
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
        Assert.Equal(capacityW, Plan(request).Rack.Cooling!.AirConditioner!.CapacityW);
    }

    [Fact]
    public void Items_with_last_numbers_stay_without_position()
    {
        var report = Plan(Basket(("CAB-24-8-8", 1), ("GEN-2", 13)));
        Assert.Equal("QWL-GEN-2-13", Assert.Single(report.Rack.Items, i => i.Position is null).Id);
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
                ("QWL-DU-16-HU", "It needs a UPS, but none is free."),
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
        Assert.Equal("QWL-DU-16-VL", Assert.Single(report.Rack.Pdus!).PartNumber);
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
        Assert.Empty(report.Rack.Items);
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
        Assert.Equal(report.Report.Findings.Select(f => (f.Rule, f.Fingerprint)), report.FindingLines.Select(f => (f.Rule, f.Fingerprint)));
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
        Assert.Equal([("A", 3, 16d), ("B", 1, 32d)], report.Rack.Supplies!.Select(s => (s.Id, s.Phases!.Value, s.RatedA)));
        Assert.Equal(["/supplies/0", "/supplies/1"], report.Assumptions.SelectMany(a => a.Pointers));
        Assert.DoesNotContain(report.Report.Findings, f => f.Rule.StartsWith("power.", StringComparison.Ordinal) && f.Severity != Severity.Advice);
    }

    [Fact]
    public void Pdu_with_appliance_plug_is_fed_from_the_ups()
    {
        var report = Plan(Basket(("CAB-42-8-10", 1), ("UPS-30", 1), ("DU-16-HU", 1), ("DU-16-VL", 1), ("GEN-2", 2)));
        Assert.Equal(["QWL-DU-16-HU-1"], report.Rack.Items.Single(i => i.Ups is not null).Ups!.Feeds);
        Assert.Equal("A", Assert.Single(report.Rack.Supplies!).Id);
        Assert.DoesNotContain(report.Report.Findings, f => f.Rule == "power.no-source");
    }

    [Fact]
    public void Fans_and_air_conditioner_are_fitted()
    {
        var report = Plan(Basket(("CAB-42-8-10", 1), ("FAN-R2", 2), ("FAN-T3", 1), ("COL-10", 2)));
        Assert.Equal(4, Assert.Single(report.Rack.Cooling!.RoofFans!).Count);
        Assert.Equal(3, Assert.Single(report.Rack.Cooling.FanTrays!).Count);
        Assert.Equal(1000, report.Rack.Cooling.AirConditioner!.CapacityW);
        Assert.Equal("QWL-COL-10", Assert.Single(report.ExcessLines).PartNumber);
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
        Assert.Empty(Judge.Unsound(Plan(request).Rack));
    }
}
