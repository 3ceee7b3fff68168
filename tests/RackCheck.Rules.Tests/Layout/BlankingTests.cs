using RackCheck.Model;
using RackCheck.Rules.Layout;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.Bays;

namespace RackCheck.Rules.Tests.Layout;

public sealed class BlankingTests : RuleTests<Blanking>
{
    private static RackDescription Aired(int heightU = 12) => Bay(heightU).Doors(DoorStyle.Perforated, DoorStyle.Perforated);

    private static Item Fan(string id, int units, int unit) => Unit(id, units).At(unit).Breathes(AirflowDirection.FrontToRear);

    [Fact]
    public void A_front_closed_from_end_to_end_passes() =>
        Passes(Aired(9).With(Fan("wave-pc", 4, 1), Plate("plate", 1, 5), Fan("gauge-pc", 4, 6)));

    [Fact]
    public void Each_gap_beside_a_breather_is_a_warning()
    {
        // Open: 1, then 6 to 7, then 12.
        var findings = Findings(Aired().With(Fan("wave-pc", 4, 2), Fan("gauge-pc", 4, 8)));
        Assert.Equal(["unit 1", "unit 12", "units 6-7"], findings.Select(f => f.MessageData["units"].Text!).Order(StringComparer.Ordinal));
        Assert.All(findings, f => Assert.Equal(Severity.Warning, f.Severity));
        Assert.Equal(["/items/0 /cabinet", "/items/1 /cabinet/heightU", "/items/1 /items/0 /items"], findings.Select(f => string.Join(" ", f.Pointers)));
        Assert.Equal([1, 1, 2], findings.Select(f => f.Actual!.Value).Order());
    }

    // Equipment behind that reaches through the front plane closes its units, and tells two gaps beside one item apart.
    [Fact]
    public void What_is_mounted_behind_and_bounds_a_gap_is_pointed_at()
    {
        var rack = Aired().Uprights(setback: 100, spacing: 400).With(Fan("wave-pc", 3, 5), Unit("low", 1).At(2, Face.Rear).Body(depth: 450), Unit("high", 1).At(10, Face.Rear).Body(depth: 450));
        var beside = Findings(rack).Where(f => f.Pointers.Contains("/items/0")).Select(f => string.Join(" ", f.Pointers));
        Assert.Equal(["/items/0 /items/1 /items", "/items/0 /items/2 /items"], beside.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_gap_beside_nothing_that_breathes_front_to_rear_is_none() =>
        Passes(Aired().With(Fan("wave-pc", 4, 1), Unit("gauge-amp", 4).At(5).Breathes(AirflowDirection.Side)));

    [Fact]
    public void A_rack_full_to_the_top_has_none() => Passes(Aired(60).With(Fan("wave-pc", 60, 1)));

    [Fact]
    public void The_gap_at_the_top_of_the_highest_rack_is_found() =>
        Assert.Equal("units 57-60", Only(Aired(60).With(Fan("wave-pc", 56, 1))).MessageData["units"].Text);

    [Fact]
    public void Counted_from_the_top_the_gap_has_the_callers_numbers()
    {
        var rack = Aired().TopDown().With(Fan("wave-pc", 10, 12));
        var finding = Only(rack);
        Assert.Equal("units 1-2", finding.MessageData["units"].Text);
        Assert.Equal(2, Cured(rack, finding).Items[1].Position!.U);
    }

    [Theory]
    [InlineData(DoorStyle.None, DoorStyle.None, 1)]
    [InlineData(DoorStyle.Perforated, DoorStyle.None, 1)]
    [InlineData(DoorStyle.Solid, DoorStyle.Perforated, 0)]
    [InlineData(DoorStyle.Perforated, DoorStyle.Glazed, 0)]
    [InlineData(null, DoorStyle.Solid, 0)]
    public void Only_air_through_both_doors_is_meant(DoorStyle? front, DoorStyle? rear, int count)
    {
        var report = Report(Bay(9).Doors(front, rear).With(Fan("wave-pc", 8, 1)));
        Assert.Equal(count, report.Findings.Count);
        Assert.Empty(report.NotAssessed);
    }

    [Fact]
    public void Doors_that_are_not_given_are_asked_for()
    {
        Lacks(Bay(9).With(Fan("wave-pc", 8, 1)), "/cabinet/frontDoor/style", "/cabinet/rearDoor/style");
        Lacks(Bay(9).Doors(DoorStyle.Perforated, null).With(Fan("wave-pc", 8, 1)), "/cabinet/rearDoor/style");
        Passes(Bay(8).With(Fan("wave-pc", 8, 1)));
    }

    [Fact]
    public void Equipment_that_takes_power_and_does_not_say_how_it_breathes_is_asked() =>
        Lacks(Aired().With(Unit("wave-pc", 4).At(1).Plugs(1), Unit("patch", 1).At(12), Unit("far", 1).At(11) with { HeatW = 40 }), "/items/0/airflow/direction", "/items/2/airflow/direction");

    [Fact]
    public void One_that_says_it_has_no_fans_is_not() =>
        Passes(Aired().With(Unit("wave-pc", 4).At(1).Plugs(1).Breathes(AirflowDirection.None)));

    [Fact]
    public void Things_on_shelves_close_the_front_and_breathe_there()
    {
        var rack = Aired().With(
            Shelf("tray", 1), Thing("desk-pc", "tray", 180, 400, 4 * 44.45).Breathes(AirflowDirection.FrontToRear), Plate("plate", 4, 9));
        Assert.Equal("units 6-8", Only(rack).MessageData["units"].Text);
        Lacks(Aired().With(Shelf("tray", 1), Thing("desk-pc", "tray", 180, 400, 100).Plugs(1)), "/items/1/airflow/direction");
    }

    [Fact]
    public void A_horizontal_distribution_unit_closes_its_unit() =>
        Passes(Aired(9).With(Fan("wave-pc", 8, 1)).With(Strip("strip", PduMounting.Horizontal, 9)));

    [Fact]
    public void On_the_rear_uprights_neither_breathers_nor_plates_count()
    {
        Passes(Aired().With(Unit("wave-pc", 4).At(1, Face.Rear).Body(depth: 300).Breathes(AirflowDirection.FrontToRear)));
        Only(Aired(9).With(Fan("wave-pc", 8, 1), Plate("plate", 1, 9) with { Position = new Position { U = 9, Face = Face.Rear } }));
    }

    [Fact]
    public void Where_a_body_from_behind_reaches_the_front_there_is_nothing_to_close() =>
        Passes(Aired(9).Uprights(spacing: 500).With(Fan("wave-pc", 8, 1), Unit("long", 1).At(9, Face.Rear).Body(depth: 500).Room(rear: 75)));

    [Theory]
    [InlineData(435, 1)] // 435 + 75 = 510, which is 600 less both doors and the handles behind
    [InlineData(436, 0)]
    public void Without_a_spacing_it_does_so_where_no_distance_leaves_room(double depth, int gaps) =>
        Assert.Equal(gaps, Findings(Bay(9, depthMm: 600).Doors(DoorStyle.Perforated, DoorStyle.Perforated).With(
            Fan("wave-pc", 8, 1), Unit("long", 1).At(9, Face.Rear).Body(depth: depth).Room(40, 75))).Count);

    [Fact]
    public void Plates_close_the_gap_six_units_at_most_each()
    {
        var rack = Aired(20).With(Fan("wave-pc", 4, 1));
        var cured = Cured(rack, Only(rack));
        Assert.Equal([(5, 6), (11, 6), (17, 4)], cured.Items.Skip(1).Select(i => (i.Position!.U, i.HeightU!.Value)));
        Assert.All(cured.Items.Skip(1), i => Assert.Equal(ItemCategory.BlankingPanel, i.Category));
    }

    [Fact]
    public void A_plate_gets_an_id_of_its_own()
    {
        var rack = Aired(9).With(Fan("blanking-9", 8, 1));
        Assert.Equal("blanking-9-2", Cured(rack, Only(rack)).Items[1].Id);
    }

    [Theory]
    [InlineData(197, 1)] // three plates are needed for the sixteen units
    [InlineData(198, 0)]
    public void Where_a_request_takes_no_more_items_no_plate_is_added(int items, int remedies) =>
        Assert.Equal(remedies, Only(Aired(20).With([Fan("wave-pc", 4, 1), .. Enumerable.Range(1, items - 1).Select(i => Unit($"u{i}", 1))])).Remedies.Count);

    [Fact]
    public void Uprights_in_the_way_of_the_door_take_no_plate() =>
        Assert.Empty(Only(Aired(9).Uprights(setback: 24).With(Fan("wave-pc", 8, 1))).Remedies);
}
