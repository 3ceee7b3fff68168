using RackCheck.Documents.Parts;
using RackCheck.Model;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Documents.Tests.Parts;

/// <summary>The arithmetic of each kind of part, worked out by hand.</summary>
public sealed class PartsListTests
{
    private static RackDescription Rack => EmptyRack().Uprights(spacing: 700, hole: UprightHole.Square);

    // Four per front panel and four per pair of rails: common practice, no source.
    [Theory]
    [InlineData(1, 0, 4)]
    [InlineData(3, 1, 16)]
    [InlineData(7, 2, 36)]
    public void Sets_of_nut_and_screw_are_four_a_panel_and_four_a_pair(int panels, int pairs, int sets)
    {
        var items = Enumerable.Range(0, panels).Select(i => Unit($"gauge-{i}", 2).At(1 + (2 * i)).On(i < pairs ? SupportStyle.Slides : null));
        var line = Assert.Single(Listed.Bare(Rack.With([.. items])).Of(PartKind.Fixing));
        Assert.Equal(sets, line.Quantity);
        Assert.Equal($"{panels} x 4 + {pairs} x 4 = {sets}", line.Calculation);
        Assert.Equal(PartUnit.Set, line.Unit);
        Assert.Null(line.PartNumber);
    }

    // IEC 60297-3-100: square hole 9.5 mm for a cage nut M6.
    [Theory]
    [InlineData(UprightHole.Square, Fixing.CageNut, "M6")]
    [InlineData(UprightHole.Round, Fixing.ClipNut, "M6")]
    [InlineData(UprightHole.Threaded, Fixing.Screw, null)]
    public void Fixing_suits_the_holes(UprightHole hole, Fixing fixing, string? thread)
    {
        var line = Assert.Single(Listed.Bare(Rack.Uprights(hole: hole).With(Unit("gauge", 2).At(1))).Of(PartKind.Fixing));
        Assert.Equal((fixing, thread), (line.Data.Fixing!.Value, line.Data.Thread));
    }

    [Fact]
    public void Fixing_of_an_item_has_priority_and_things_on_a_shelf_have_none()
    {
        var rack = Rack.With(Unit("gauge", 2).At(1), Unit("probe", 1).At(4) with { Fixing = Fixing.Screw }, Shelf("board", 6), ShelfItem("desk-pc", "board"));
        var lines = Listed.Bare(rack).Of(PartKind.Fixing);
        Assert.Equal(["board", "gauge"], lines.Single(l => l.Data.Fixing == Fixing.CageNut).Items!);
        Assert.Equal(["probe"], lines.Single(l => l.Data.Fixing == Fixing.Screw).Items!);
        Assert.Equal((0, "desk-pc"), lines.Where(l => l.Quantity == 0).Select(l => (l.Quantity, l.Items!.Single())).Single());
    }

    [Fact]
    public void Packs_on_offer_make_up_the_quantity()
    {
        var items = Enumerable.Range(0, 17).Select(i => Unit($"gauge-{i}", 1).At(1 + i)).ToArray();
        var lines = Listed.Offered(Rack.With(items)).Of(PartKind.Fixing);
        Assert.Equal([("QWL-FIX-CN50", 1, 50), ("QWL-FIX-CN20", 1, 18)], lines.Select(l => (l.PartNumber!, l.OrderQuantity!.Value, l.Quantity)));
    }

    // Spare cage nuts, four per U used: common practice, no source.
    [Theory]
    [InlineData(1, 4)]
    [InlineData(5, 20)]
    [InlineData(12, 48)]
    public void Spare_fixings_are_four_for_each_occupied_unit(int heightU, int sets) =>
        Assert.Equal(sets, Assert.Single(Listed.Bare(Rack.With(Unit("drive", heightU).At(3))).Of(PartKind.Spare)).Quantity);

    [Theory]
    [InlineData(5, "1, 6")]
    [InlineData(3, "3, 6")]
    [InlineData(9, "3")]
    public void Gap_beside_airflow_front_to_rear_is_closed_with_the_largest_panels(int heightU, string panels)
    {
        var rack = EmptyRack(12).Doors(DoorStyle.Perforated, DoorStyle.Perforated).With(Unit("daq", heightU).At(1).Airflow(AirflowDirection.FrontToRear));
        var lines = Listed.Bare(rack).Of(PartKind.BlankingPanel);
        Assert.Equal(panels, string.Join(", ", lines.Select(l => l.Data.HeightU)));
        Assert.All(lines, l => Assert.Equal((1, "layout.blanking"), (l.Quantity, l.Rule)));
        Assert.Equal(panels.Split(", ").Length, Listed.Offered(rack).Of(PartKind.BlankingPanel).Count(l => l.PartNumber is not null));
    }

    [Fact]
    public void Gap_that_the_airflow_does_not_mind_stays_open_and_is_named()
    {
        var rack = EmptyRack(12).Doors(DoorStyle.Solid, DoorStyle.Solid).With(Unit("daq", 4).At(1).Airflow(AirflowDirection.FrontToRear));
        var list = Listed.Bare(rack);
        Assert.Empty(list.Of(PartKind.BlankingPanel));
        Assert.Contains(list.Notes, n => n.Contains("U5-U12", StringComparison.Ordinal));
    }

    // Half the opening, the way from the body to the rear uprights, the extension of slides, 300 mm for both ends.
    [Theory]
    [InlineData(500, null, 0.725, 1.0, "QWL-CRD-13-10")]
    [InlineData(700, null, 0.525, 1.0, "QWL-CRD-13-10")]
    [InlineData(450, 420.0, 1.195, 1.5, "QWL-CRD-13-20")]
    public void Cord_reaches_its_outlet(double depth, double? pull, double needed, double rounded, string product)
    {
        var item = Unit("daq", 2).At(4).Body(depth: depth).Plugs(1);
        item = pull is null ? item : item with { Support = new Support { Style = SupportStyle.Slides, ExtensionMm = pull } };
        var rack = Rack.With(item).With(Strip("strip", PduMounting.Vertical));
        var line = Assert.Single(Listed.Bare(rack).Of(PartKind.Cord));
        Assert.Equal((needed, rounded), (line.Data.RequiredLengthM!.Value, line.Data.LengthM!.Value));
        Assert.Equal((ConnectorCode.C14, ConnectorCode.C13), (line.Data.Plug!.Value, line.Data.Connector!.Value));
        Assert.Equal(["strip"], line.Pdus!);
        Assert.Equal(product, Assert.Single(Listed.Offered(rack).Of(PartKind.Cord)).PartNumber);
    }

    // Down to the lower edge of U1, half the opening, body to rear uprights, 200 mm slack; 2.5 mm2 protected (BS 7671 543.1.1) in a closed cabinet.
    [Theory]
    [InlineData(5, 0.897, 1.0)]
    [InlineData(20, 1.564, 2.0)]
    [InlineData(40, 2.453, 2.5)]
    public void Earth_lead_reaches_the_bar(int unit, double needed, double rounded)
    {
        var rack = Rack.With(Unit("amp", 2).At(unit).Body(depth: 450) with { EarthStud = true });
        var line = Assert.Single(Listed.Bare(rack).Of(PartKind.EarthLead), l => l.Items is not null);
        Assert.Equal((needed, rounded, 2.5), (line.Data.RequiredLengthM!.Value, line.Data.LengthM!.Value, line.Data.CrossSectionMm2!.Value));
        Assert.EndsWith(FormattableString.Invariant($"= {needed}"), line.Calculation, StringComparison.Ordinal);
    }

    [Fact]
    public void Described_lead_is_listed_as_described()
    {
        var line = Assert.Single(Listed.Bare(EarthRacks.Earthed().With(EarthRacks.Studded("amp", 3))).Of(PartKind.EarthLead), l => l.Items is not null);
        Assert.Equal((2.0, 6.0), (line.Data.LengthM!.Value, line.Data.CrossSectionMm2!.Value));
        var offered = Listed.Offered(EarthRacks.Earthed().With(EarthRacks.Studded("amp", 3))).Of(PartKind.EarthLead);
        Assert.Equal("QWL-ELD-6-25", Assert.Single(offered, l => l.Items is not null).PartNumber);
    }

    // The workshop does not build what a finding calls too short or too thin: 2.5 mm2 protected (BS 7671 543.1.1) in a closed cabinet.
    [Fact]
    public void Lead_described_too_small_is_listed_by_the_rules()
    {
        var item = Unit("amp", 2).At(20).Body(depth: 450) with { EarthStud = true, EarthLead = new EarthLead { LengthM = 0.5, CrossSectionMm2 = 1 } };
        var line = Assert.Single(Listed.Bare(Rack.With(item)).Of(PartKind.EarthLead), l => l.Items is not null);
        Assert.Equal((2.0, 2.5), (line.Data.LengthM!.Value, line.Data.CrossSectionMm2!.Value));
        Assert.Contains("too short or too thin", line.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Conductors_of_the_cabinet_have_an_area_and_no_length()
    {
        var rack = EarthRacks.Earthed() with { Earthing = new Model.Earthing { Bonded = [BondedPart.Frame], MainConductorMm2 = 16 } };
        var lines = Listed.Bare(rack).Of(PartKind.EarthLead);
        Assert.Equal([(3, 6.0), (1, 16.0)], lines.Select(l => (l.Quantity, l.Data.CrossSectionMm2!.Value)));
        Assert.All(lines, l => Assert.Null(l.Data.LengthM));
    }

    // 16 mm2 to the bar is common practice, no source; a line of 50 mm2 needs half, 25 mm2 (IEC 60364-5-54 table 54.2, value from memory).
    [Theory]
    [InlineData(null, 16)]
    [InlineData(4.0, 16)]
    [InlineData(50.0, 25)]
    public void Main_conductor_is_that_of_practice_or_of_the_rules(double? lineMm2, double mainMm2)
    {
        var rack = EarthRacks.Earthed();
        rack = rack with
        {
            Earthing = new Model.Earthing { Bonded = [.. Enum.GetValues<BondedPart>()] },
            Supplies =
            [
                .. (rack.Supplies ?? [new Supply { Id = "A", VoltageV = 230, Phases = 1, RatedA = 16 }])
                    .Select(s => s with { Cable = lineMm2 is { } line ? new SupplyCable { CrossSectionMm2 = line } : null }),
            ],
        };
        Assert.Equal(mainMm2, Assert.Single(Listed.Bare(rack).Of(PartKind.EarthLead), l => l.Items is null).Data.CrossSectionMm2);
    }

    [Fact]
    public void Items_cords_and_outlets_have_labels()
    {
        var rack = Rack.With(Unit("daq", 2).At(4).Plugs(1), Unit("amp", 1).At(8).Plugs(2)).With(Strip("strip", PduMounting.Vertical));
        var list = Listed.Bare(rack);
        Assert.Equal(
            [
                "daq, U4-U5, front", "amp, U8, front", "PDU strip, supply A",
                "amp cord 1 > strip/g1/1 C13", "strip/g1/1 C13 > amp cord 1", "amp cord 2 > strip/g1/2 C13", "strip/g1/2 C13 > amp cord 2",
                "daq > strip/g1/3 C13", "strip/g1/3 C13 > daq",
                "strip/g1/4 C13", "strip/g1/5 C13", "strip/g1/6 C13", "strip/g1/7 C13", "strip/g1/8 C13",
            ],
            list.Texts());
        Assert.All(list.Of(PartKind.Label), l => Assert.Equal(l.Description == "Label of a cord" ? 2 : 1, l.Quantity));
    }

    [Fact]
    public void Labels_of_free_outlets_are_bounded_and_the_rest_is_counted()
    {
        var group = new OutletGroup { Id = "g1", Outlets = [.. Enumerable.Repeat(new OutletSet { Socket = ConnectorCode.C13, Count = 100 }, 12)] };
        var list = Listed.Bare(Rack.With(Strip("strip", PduMounting.Vertical) with { Groups = [group] }));
        Assert.Equal(LabelLines.MostFreeOutlets, list.Of(PartKind.Label).Count(l => l.Description == "Label of an outlet"));
        Assert.Contains(list.Notes, n => n.StartsWith("200 outlets", StringComparison.Ordinal));
    }

    [Fact]
    public void Cords_and_rails_in_the_box_are_not_ordered()
    {
        var own = new Product
        {
            PartNumber = "QWL-X", Name = "Gauge computer", Kind = ProductKind.Equipment, CordIncluded = true, RailsIncluded = true,
            Item = new ProductItem { HeightU = 2, Support = new Support { Style = SupportStyle.Slides },
                Power = new ItemPower { Plugs = [ConnectorCode.C14] } },
        };
        var rack = Rack.With(new Item { Id = "daq", PartNumber = "QWL-X" }.At(3)).With(Strip("strip", PduMounting.Vertical));
        var resolved = Survey.Catalogue.ResolvedRack.Of(rack, new Dictionary<string, Product> { ["QWL-X"] = own });
        var list = PartsLists.Of(resolved, Judge.Checker, DemoProducts.All).List;
        Assert.All(list.Of(PartKind.Cord).Concat(list.Of(PartKind.Slides)), l => Assert.True(l is { Included: true, PartNumber: null, Quantity: 1 }));
        Assert.Equal(4, Assert.Single(list.Of(PartKind.Fixing)).Quantity);
    }

    [Fact]
    public void Mats_batteries_arms_and_fans_are_listed()
    {
        var rack = Rack.With(
            Unit("tray", 2).At(1) with { Battery = new Battery { Type = BatteryType.Vrla, Cells = 24, CapacityAh = 7 } },
            Unit("daq", 2).At(5) with { Support = new Support { Style = SupportStyle.Slides, UsedExtended = true } }) with
        {
            Cooling = new Model.Cooling
            {
                Filter = new AirFilter { AreaCm2 = 3000, LossPa = 70, AtM3h = 500 },
                RoofFans = [new FanSet { Count = 2, FreeFlowM3h = 160, MaxPressurePa = 60 }],
            },
        };
        var list = Listed.Offered(rack);
        Assert.Equal((24, "1 x 24 = 24"), list.Of(PartKind.Battery).Select(l => (l.Quantity, l.Calculation!)).Single());
        Assert.Equal("QWL-CMA-1", Assert.Single(list.Of(PartKind.CableArm)).PartNumber);
        Assert.Equal(3000, Assert.Single(list.Of(PartKind.Filter)).Data.AreaCm2);
        Assert.Contains("70 Pa", list.Of(PartKind.Spare).Single(l => l.Description == "Spare filter mat").Why, StringComparison.Ordinal);
        Assert.Equal((2, "QWL-FAN-R2", 1), list.Of(PartKind.Fan).Select(l => (l.Quantity, l.PartNumber!, l.OrderQuantity!.Value)).Single());
    }

    [Fact]
    public void Each_host_has_a_lead_to_a_free_port()
    {
        var rack = Rack.With(
            Unit("kvm", 1).At(20) with { KvmPorts = 1 }, Unit("a", 1).At(1) with { Console = true }, Unit("b", 1).At(2) with { Console = true });
        var list = Listed.Bare(rack);
        Assert.Equal(1, Assert.Single(list.Of(PartKind.KvmLead)).Quantity);
        Assert.Contains(list.Notes, n => n.Contains("No KVM lead for b", StringComparison.Ordinal));
    }

    [Fact]
    public void Rack_without_its_product_data_has_no_lines_and_says_why()
    {
        var rack = new RackDescription { Cabinet = new Cabinet { PartNumber = "QWL-NONE" }, Items = [] };
        var list = Listed.Bare(rack);
        Assert.Empty(list.Lines);
        Assert.Contains(list.Notes, n => n.Contains("/cabinet/heightU", StringComparison.Ordinal));
    }

    [Fact]
    public void Catalogue_that_is_down_leaves_part_numbers_out_and_is_named()
    {
        var list = PartsLists.Of(Judge.Resolve(Rack.With(Unit("daq", 2).At(1))), Judge.Checker, null).List;
        Assert.All(list.Lines, l => Assert.Null(l.PartNumber));
        Assert.Contains(list.Notes, n => n.Contains("could not be had", StringComparison.Ordinal));
    }
}
