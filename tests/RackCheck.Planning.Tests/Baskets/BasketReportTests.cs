using RackCheck.Model;
using RackCheck.Planning.Baskets;
using RackCheck.Rules;
using RackCheck.Testing;
using static RackCheck.Planning.Tests.Baskets.DemoCatalogue;

namespace RackCheck.Planning.Tests.Baskets;

public sealed class BasketReportTests
{
    [Fact]
    public void Heavy_goes_low_and_consoles_where_one_works()
    {
        var report = Plan(Basket(("CAB-42-8-10", 1), ("DRV-6", 1), ("DSP-8", 1), ("KD-2", 1), ("GEN-2", 2)));
        Assert.Equal(1, report.Rack.Items.Single(i => i.PartNumber == "QWL-DRV-6").Position!.U);
        Assert.DoesNotContain(report.Report.Findings, f => f.Rule == "service.console-height");
    }

    [Fact]
    public void What_fits_nowhere_stays_outside_and_is_said()
    {
        var report = Plan(Basket(("CAB-24-8-8", 1), ("GEN-2", 13)));
        Assert.Single(report.Rack.Items, i => i.Position is null);
        Assert.Single(report.Unmet, u => u.What.StartsWith("Room for ", StringComparison.Ordinal));
        Assert.Equal(Verdict.Hold, report.CompletedVerdict);
    }

    [Fact]
    public void A_second_cabinet_and_a_door_of_another_size_are_too_much()
    {
        var report = Plan(Basket(("DOR-24-6FG", 1), ("CAB-42-8-10", 1), ("CAB-42-6-8", 2), ("DOR-42-6FG", 2)));
        Assert.Equal("QWL-CAB-42-6-8", report.Rack.Cabinet!.PartNumber);
        Assert.Equal(DoorStyle.Glazed, report.Rack.Cabinet.FrontDoor!.Style);
        Assert.Equal(
            [("/lines/0", "QWL-DOR-24-6FG", 1), ("/lines/1", "QWL-CAB-42-8-10", 1), ("/lines/2", "QWL-CAB-42-6-8", 1), ("/lines/3", "QWL-DOR-42-6FG", 1)],
            report.ExcessLines.Select(e => (e.Line, e.PartNumber, e.Quantity)));
    }

    [Fact]
    public void Of_two_cabinets_that_which_takes_everything_is_the_rack()
    {
        // By part number the low one comes first.
        var report = Plan(Basket(("CAB-24-8-8", 1), ("CAB-42-8-10", 1), ("GEN-2", 14)));
        Assert.Equal("QWL-CAB-42-8-10", report.Rack.Cabinet!.PartNumber);
        Assert.Equal("QWL-CAB-24-8-8", Assert.Single(report.ExcessLines).PartNumber);
        Assert.Equal("QWL-CAB-24-8-8", Plan(Basket(("CAB-24-8-8", 1), ("CAB-42-8-10", 1), ("GEN-2", 2))).Rack.Cabinet!.PartNumber);
    }

    [Theory]
    [InlineData(1, 1000)]
    [InlineData(2, 2000)]
    public void Of_two_coolers_the_smallest_that_does_is_fitted(int drives, double capacityW)
    {
        // 900 W a drive, and a room that takes nothing off the cabinet's surface; the split cooler has no outside wall.
        var request = Basket(("CAB-42-8-10-S", 1), ("DRV-4", drives), ("COL-10", 1), ("COL-20", 1), ("COL-40S", 1)) with { Site = new Site { AmbientMaxC = 35, OutsideWall = false } };
        Assert.Equal(capacityW, Plan(request).Rack.Cooling!.AirConditioner!.CapacityW);
    }

    [Fact]
    public void Where_not_all_find_room_those_with_the_last_numbers_stay_outside()
    {
        var report = Plan(Basket(("CAB-24-8-8", 1), ("GEN-2", 13)));
        Assert.Equal("QWL-GEN-2-13", Assert.Single(report.Rack.Items, i => i.Position is null).Id);
        Assert.Equal("Room for QWL-GEN-2-13", Assert.Single(report.Unmet).What);
    }

    [Fact]
    public void What_is_too_much_says_why()
    {
        var report = Plan(Basket(("CAB-42-6-8", 1), ("GEN-2", 1), ("FIX-CN20", 9), ("FIX-SC20", 1), ("DU-16-HU", 1), ("CRD-E13-20", 1)));
        Assert.Equal(
            [
                ("QWL-FIX-CN20", "The others in the basket are enough."),
                ("QWL-FIX-SC20", "What hangs on the uprights is fastened with another sort."),
                ("QWL-DU-16-HU", "It hangs behind a UPS, and no UPS is free for it."),
                ("QWL-CRD-E13-20", "Equipment hangs on the appliance outlets of PDUs; the plug of this cord goes into another sort of outlet."),
            ],
            report.ExcessLines.Select(e => (e.PartNumber, e.Reason)));
        Assert.Equal("Nothing in the rack is left to fasten with them.", Assert.Single(Plan(Basket(("CAB-42-6-8", 1), ("FIX-CN20", 1))).ExcessLines).Reason);
    }

    [Fact]
    public void Reasons_are_sentences_with_their_numbers_in_agreement()
    {
        var one = Plan(Basket(("CAB-42-6-8", 1), ("AMP-2", 1))).MissingLines.Single(m => m.PartNumber.StartsWith("QWL-EBR", StringComparison.Ordinal));
        Assert.Contains("for 1 earth lead, ", one.Reason, StringComparison.Ordinal);
        Assert.StartsWith("4 screws fasten ", Assert.Single(Plan(Basket(("CAB-42-6-8-S", 1), ("CBM-1", 1))).MissingLines).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_a_part_number_on_two_lines_the_last_is_too_much()
    {
        var report = Plan(Basket(("RUN-60M", 2), ("CAB-42-8-10", 1), ("DRV-4", 1), ("RUN-60M", 3)));
        Assert.Equal([("/lines/0", 1), ("/lines/3", 3)], report.ExcessLines.Select(e => (e.Line, e.Quantity)));
    }

    [Fact]
    public void A_pack_of_which_some_is_used_is_not_too_much()
    {
        var report = Plan(Basket(("CAB-42-8-10", 1), ("CBM-1", 1), ("FIX-CN50", 2)));
        Assert.Equal(1, Assert.Single(report.ExcessLines).Quantity);
    }

    [Fact]
    public void Cords_that_fit_nothing_are_too_much() =>
        Assert.Equal("QWL-CRD-E13-20", Assert.Single(Plan(Basket(("CAB-42-8-10", 1), ("GEN-2", 1), ("DU-16-VL", 1), ("CRD-13-20", 1), ("CRD-E13-20", 1))).ExcessLines).PartNumber);

    [Fact]
    public void A_unit_whose_plug_goes_into_no_supply_is_too_much()
    {
        var supply = new Supply { Id = "A", VoltageV = 230, Phases = 1, RatedA = 16, Socket = ConnectorCode.Iec60309A16P1 };
        var report = Plan(Basket(("CAB-42-8-10", 1), ("DU-32-V", 1), ("DU-16-VL", 1)) with { Supplies = [supply] });
        Assert.Equal("QWL-DU-16-VL", Assert.Single(report.Rack.Pdus!).PartNumber);
        Assert.Equal("QWL-DU-32-V", Assert.Single(report.ExcessLines).PartNumber);
    }

    [Fact]
    public void Each_line_says_what_it_became()
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
    public void An_unknown_part_is_left_out_and_holds_the_order()
    {
        var report = Plan(Basket(("CAB-42-8-10", 1), ("NO-SUCH", 3)));
        Assert.Equal(["/lines/1"], report.UnknownLines);
        Assert.Empty(report.Rack.Items);
        Assert.Equal((Verdict.Hold, Verdict.Hold), (report.Verdict, report.CompletedVerdict));
    }

    [Fact]
    public void A_finding_names_the_lines_that_it_comes_from()
    {
        // Too deep for the cabinet, on rails of the basket that carry it.
        var report = Plan(Basket(("GEN-2", 1), ("SRV-220", 1), ("CAB-42-6-6", 1)));
        var deep = Assert.Single(report.FindingLines, f => f.Rule == "depth.rear-clearance");
        Assert.Contains("/lines/1", deep.Lines);
        Assert.DoesNotContain("/lines/0", deep.Lines);
        Assert.Equal(report.Report.Findings.Select(f => (f.Rule, f.Fingerprint)), report.FindingLines.Select(f => (f.Rule, f.Fingerprint)));
    }

    [Fact]
    public void A_finding_of_rails_names_their_line_first()
    {
        var request = Basket(("CAB-42-8-10", 1), ("SLD-60M", 1), ("PC-410", 1)) with { Site = new Site { AisleFrontMm = 400 } };
        Assert.Equal(["/lines/1", "/lines/2"], Assert.Single(Plan(request).FindingLines, f => f.Rule == "service.aisle").Lines);
    }

    [Fact]
    public void Supplies_that_are_not_given_are_assumed_and_listed()
    {
        var report = Plan(Basket(("CAB-42-8-10", 1), ("DU-16-V3", 1), ("DU-32-V", 1)));
        Assert.Equal([("A", 3, 16d), ("B", 1, 32d)], report.Rack.Supplies!.Select(s => (s.Id, s.Phases!.Value, s.RatedA)));
        Assert.Equal(["/supplies/0", "/supplies/1"], report.Assumptions.Select(a => a.Pointer));
        Assert.DoesNotContain(report.Report.Findings, f => f.Rule.StartsWith("power.", StringComparison.Ordinal));
    }

    [Fact]
    public void A_unit_with_an_appliance_plug_hangs_on_the_ups()
    {
        var report = Plan(Basket(("CAB-42-8-10", 1), ("UPS-30", 1), ("DU-16-HU", 1), ("DU-16-VL", 1), ("GEN-2", 2)));
        Assert.Equal(["QWL-DU-16-HU-1"], report.Rack.Items.Single(i => i.Ups is not null).Ups!.Feeds);
        Assert.Equal("A", Assert.Single(report.Rack.Supplies!).Id);
        Assert.DoesNotContain(report.Report.Findings, f => f.Rule == "power.no-source");
    }

    [Fact]
    public void Fans_and_cooler_of_the_basket_are_fitted()
    {
        var report = Plan(Basket(("CAB-42-8-10", 1), ("FAN-R2", 2), ("FAN-T3", 1), ("COL-10", 2)));
        Assert.Equal(4, Assert.Single(report.Rack.Cooling!.RoofFans!).Count);
        Assert.Equal(3, Assert.Single(report.Rack.Cooling.FanTrays!).Count);
        Assert.Equal(1000, report.Rack.Cooling.AirConditioner!.CapacityW);
        Assert.Equal("QWL-COL-10", Assert.Single(report.ExcessLines).PartNumber);
    }

    [Fact]
    public void More_things_than_a_rack_takes_are_a_fault()
    {
        var fault = Assert.Single(Answer(Basket(("CAB-42-8-10", 1), ("CBM-1", 201))).Faults);
        Assert.Equal(("/lines", BasketPlanner.TooManyItems), (fault.Pointer, fault.Code));
        Assert.Empty(Answer(Basket(("CAB-42-8-10", 1), ("CBM-1", 200))).Faults);
    }

    [Fact]
    public void No_cabinet_and_none_on_offer_is_a_fault()
    {
        var fault = Assert.Single(Answer(Basket(("CBM-1", 1)), []).Faults);
        Assert.Equal(("/lines", BasketPlanner.NoCabinet), (fault.Pointer, fault.Code));
    }

    [Fact]
    public void A_complete_basket_is_released_with_nothing_to_add()
    {
        var request = Basket(("CAB-42-8-10", 1), ("CBM-1", 2), ("FIX-CN20", 1)) with { Earthing = new Model.Earthing { MainConductorMm2 = 16, Bonded = [BondedPart.Frame, BondedPart.SidePanels] } };
        var report = Plan(request);
        Assert.Empty(report.MissingLines);
        Assert.Empty(report.ExcessLines);
        Assert.Empty(report.Unmet);
        Assert.Equal(report.Verdict, report.CompletedVerdict);
    }

    [Fact]
    public void Rules_that_missing_lines_name_are_there()
    {
        var named = new[]
        {
            Basket(("CAB-42-6-8", 1), ("DRV-4", 2), ("PC-D1", 1), ("SW-48", 1), ("AMP-2", 3)), Basket(("CAB-42-6-8", 1), ("SW-48", 1), ("DU-16-VL", 1)),
        }.SelectMany(b => Plan(b).MissingLines).SelectMany(m => m.Rules).ToHashSet();
        Assert.True(named.Count > 5);
        Assert.All(named, r => Assert.NotNull(RuleSet.Default.Find(r)));
    }

    [Fact]
    public void The_rack_is_a_sound_request() =>
        Assert.Empty(Judge.Unsound(Plan(Basket(("CAB-42-8-10", 1), ("SRV-110", 4), ("PC-D1", 3), ("SH-450S", 2), ("BP-1-P10", 2), ("DU-16-H", 3), ("UPS-30", 1), ("DU-10-V", 1))).Rack));
}
