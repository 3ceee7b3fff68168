using RackCheck.Model;
using RackCheck.Rules.Layout;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Survey.Layout;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Layout;

public sealed class BlankingTests : RuleTests<Blanking>
{
    private static RackDescription Aired(int heightU = 12) => EmptyRack(heightU).Doors(DoorStyle.Perforated, DoorStyle.Perforated);

    private static Item Fan(string id, int units, int unit) => Unit(id, units).At(unit).Airflow(AirflowDirection.FrontToRear);

    [Fact]
    public void Closed_front_passes() =>
        Passes(Aired(9).With(Fan("wave-pc", 4, 1), Plate("plate", 1, 5), Fan("gauge-pc", 4, 6)));

    [Fact]
    public void Open_frame_has_no_doors_to_be_cooled_through()
    {
        var rack = EmptyRack(12).Doors(DoorStyle.None, DoorStyle.None).With(Fan("wave-pc", 4, 1));
        Assert.Single(Findings(rack));
        Passes(rack.Cabinet(c => c with { SidePanels = false }));
    }

    [Fact]
    public void Gap_next_to_front_to_rear_airflow_is_warning()
    {
        // Open: U1, U6 to U7 and U12.
        var findings = Findings(Aired().With(Fan("wave-pc", 4, 2), Fan("gauge-pc", 4, 8)));
        Assert.Equal(["1, 1", "12, 12", "6, 7"], findings.Select(f => f.MessageData["units"].ToString()).Order(StringComparer.Ordinal));
        Assert.All(findings, f => Assert.Equal(Severity.Warning, f.Severity));
        Assert.Equal(["/items/0 /cabinet", "/items/1 /cabinet/heightU", "/items/1 /items/0 /items"], findings.Select(f => string.Join(" ", f.Pointers)));
        Assert.Equal([1, 1, 2], findings.Select(f => f.Actual!.Value).Order());
    }

    // A rear-mounted item that reaches the front closes its U positions and separates two gaps next to one item.
    [Fact]
    public void Rear_item_at_end_of_gap_is_in_pointers()
    {
        var rack = Aired().Uprights(setback: 100, spacing: 400).With(
            Fan("wave-pc", 3, 5), Unit("low", 1).At(2, Face.Rear).Body(depth: 450),
            Unit("high", 1).At(10, Face.Rear).Body(depth: 450));
        var beside = Findings(rack).Where(f => f.Pointers.Contains("/items/0")).Select(f => string.Join(" ", f.Pointers));
        Assert.Equal(["/items/0 /items/1 /items", "/items/0 /items/2 /items"], beside.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Gap_next_to_side_airflow_passes() =>
        Passes(Aired().With(Fan("wave-pc", 4, 1), Unit("gauge-amp", 4).At(5).Airflow(AirflowDirection.Side)));

    [Fact]
    public void Fingerprint_is_the_same_in_either_numbering()
    {
        var rack = Aired().With(Fan("wave-pc", 4, 2), Fan("gauge-pc", 4, 8));
        string[] Prints(RackDescription of) => [.. Findings(of).Select(f => f.Fingerprint).Order(StringComparer.Ordinal)];
        Assert.Equal(3, Prints(rack).Length);
        Assert.Equal(Prints(rack), Prints(UnitNumbers.Turned(rack)));
    }

    [Fact]
    public void Full_rack_passes() => Passes(Aired(60).With(Fan("wave-pc", 60, 1)));

    [Fact]
    public void Gap_at_top_of_60U_cabinet_is_found() =>
        Assert.Equal("57, 60", Only(Aired(60).With(Fan("wave-pc", 56, 1))).MessageData["units"].ToString());

    [Fact]
    public void TopDown_numbering_is_used_for_gap()
    {
        var rack = Aired().TopDown().With(Fan("wave-pc", 10, 12));
        var finding = Only(rack);
        Assert.Equal("1, 2", finding.MessageData["units"].ToString());
        Assert.Equal(2, Remedied(rack, finding).Items[1].Position!.U);
    }

    [Theory]
    [InlineData(DoorStyle.None, DoorStyle.None, 1)]
    [InlineData(DoorStyle.Perforated, DoorStyle.None, 1)]
    [InlineData(DoorStyle.Solid, DoorStyle.Perforated, 0)]
    [InlineData(DoorStyle.Perforated, DoorStyle.Glazed, 0)]
    [InlineData(null, DoorStyle.Solid, 0)]
    public void Closed_door_is_not_checked(DoorStyle? front, DoorStyle? rear, int count)
    {
        var report = Report(EmptyRack(9).Doors(front, rear).With(Fan("wave-pc", 8, 1)));
        Assert.Equal(count, report.Findings.Count);
        Assert.Empty(report.NotAssessed);
    }

    [Fact]
    public void Door_styles_missing_are_not_assessed()
    {
        ReportsMissing(EmptyRack(9).With(Fan("wave-pc", 8, 1)), "/cabinet/frontDoor/style", "/cabinet/rearDoor/style");
        ReportsMissing(EmptyRack(9).Doors(DoorStyle.Perforated, null).With(Fan("wave-pc", 8, 1)), "/cabinet/rearDoor/style");
        Passes(EmptyRack(8).With(Fan("wave-pc", 8, 1)));
    }

    [Fact]
    public void Powered_item_without_airflow_is_not_assessed() =>
        ReportsMissing(
            Aired().With(Unit("wave-pc", 4).At(1).Plugs(1), Unit("patch", 1).At(12), Unit("far", 1).At(11) with { HeatW = 40 }),
            "/items/0/airflow/direction", "/items/2/airflow/direction");

    [Fact]
    public void Powered_item_without_fans_passes() =>
        Passes(Aired().With(Unit("wave-pc", 4).At(1).Plugs(1).Airflow(AirflowDirection.None)));

    [Fact]
    public void Shelf_load_closes_front_and_counts_with_its_airflow()
    {
        var rack = Aired().With(
            Shelf("tray", 1), ShelfItem("desk-pc", "tray", 180, 400, 4 * 44.45).Airflow(AirflowDirection.FrontToRear), Plate("plate", 4, 9));
        Assert.Equal("6, 8", Only(rack).MessageData["units"].ToString());
        ReportsMissing(Aired().With(Shelf("tray", 1), ShelfItem("desk-pc", "tray", 180, 400, 100).Plugs(1)), "/items/1/airflow/direction");
    }

    [Fact]
    public void Horizontal_pdu_closes_its_U() =>
        Passes(Aired(9).With(Fan("wave-pc", 8, 1)).With(Strip("strip", PduMounting.Horizontal, 9)));

    [Fact]
    public void Rear_items_and_rear_panels_do_not_count()
    {
        Passes(Aired().With(Unit("wave-pc", 4).At(1, Face.Rear).Body(depth: 300).Airflow(AirflowDirection.FrontToRear)));
        Only(Aired(9).With(Fan("wave-pc", 8, 1), Plate("plate", 1, 9) with { Position = new Position { U = 9, Face = Face.Rear } }));
    }

    [Fact]
    public void Rear_body_reaching_front_closes_its_U() =>
        Passes(Aired(9).Uprights(spacing: 500).With(Fan("wave-pc", 8, 1), Unit("long", 1).At(9, Face.Rear).Body(depth: 500).Room(rear: 75)));

    [Theory]
    [InlineData(435, 1)] // 435 + 75 = 510, which is 600 less both doors and the handles behind
    [InlineData(436, 0)]
    public void Rear_body_closes_U_where_no_spacing_leaves_space(double depth, int gaps) =>
        Assert.Equal(gaps, Findings(EmptyRack(9, depthMm: 600).Doors(DoorStyle.Perforated, DoorStyle.Perforated).With(
            Fan("wave-pc", 8, 1), Unit("long", 1).At(9, Face.Rear).Body(depth: depth).Room(40, 75))).Count);

    [Fact]
    public void Blanking_panels_are_at_most_6U()
    {
        var rack = Aired(20).With(Fan("wave-pc", 4, 1));
        var remedied = Remedied(rack, Only(rack));
        Assert.Equal([(5, 6), (11, 6), (17, 4)], remedied.Items.Skip(1).Select(i => (i.Position!.U, i.HeightU!.Value)));
        Assert.All(remedied.Items.Skip(1), i => Assert.Equal(ItemCategory.BlankingPanel, i.Category));
    }

    [Fact]
    public void Blanking_panel_gets_free_id()
    {
        var rack = Aired(9).With(Fan("blanking-9", 8, 1));
        Assert.Equal("blanking-9-2", Remedied(rack, Only(rack)).Items[1].Id);
    }

    [Theory]
    [InlineData(197, 1)] // three plates are needed for the sixteen units
    [InlineData(198, 0)]
    public void Item_limit_of_request_prevents_panels(int items, int remedies) =>
        Assert.Equal(remedies, Only(Aired(20).With([Fan("wave-pc", 4, 1), .. Enumerable.Range(1, items - 1).Select(i => Unit($"u{i}", 1))])).Remedies.Count);

    [Fact]
    public void Uprights_too_close_to_door_prevent_panels() =>
        Assert.Empty(Only(Aired(9).Uprights(setback: 24).With(Fan("wave-pc", 8, 1))).Remedies);
}
