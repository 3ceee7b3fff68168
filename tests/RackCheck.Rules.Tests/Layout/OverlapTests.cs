using RackCheck.Model;
using RackCheck.Remedies.Patches;
using RackCheck.Rules.Layout;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.Bays;

namespace RackCheck.Rules.Tests.Layout;

public sealed class OverlapTests : RuleTests<Overlap>
{
    private static readonly Item Deep = Unit("wave-pc", 4).At(10).Body(depth: 450).Room(rear: 75);

    [Fact]
    public void Neighbours_pass() => Passes(Bay().With(Unit("wave-pc", 4).At(1), Unit("gauge-amp", 2).At(5)));

    [Theory]
    [InlineData(9, 1)]
    [InlineData(10, 2)]
    [InlineData(12, 2)]
    [InlineData(13, 1)]
    public void On_one_face_a_shared_unit_is_enough(int unit, double shared)
    {
        var finding = Only(Bay().With(Unit("wave-pc", 4).At(10), Unit("gauge-amp", 2).At(unit)));
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Equal(["/items/1/position", "/items/0/position"], finding.Pointers);
        Numbers(finding, shared, 0, "U");
    }

    [Fact]
    public void Three_in_one_place_are_three_pairs() =>
        Assert.Equal(3, Findings(Bay().With(Unit("a", 2).At(10), Unit("b", 2).At(11), Unit("c", 3).At(10))).Count);

    [Theory]
    [InlineData(6, 15)] // 6 x 5 / 2
    [InlineData(7, 1)] // 21 pairs
    public void More_than_twenty_pairs_at_one_U_are_one_finding(int count, int findings)
    {
        var rack = Bay().With([.. Enumerable.Range(0, count).Select(i => Unit($"u{i}", 1).At(10))]);
        Assert.Equal(findings, Findings(rack).Count);
    }

    [Fact]
    public void Heap_names_its_items_and_is_spread_over_free_places()
    {
        var rack = Bay().With([.. Enumerable.Range(0, 12).Select(i => Unit($"u{i:00}", 1 + (i % 2)).At(10)), Unit("stays", 4).At(1)]);
        var finding = Only(rack);
        Assert.Equal(12, finding.Pointers.Count);
        Assert.Equal(4, finding.MessageData["others"].Number);
        Numbers(finding, 12, 1, "items");
        Assert.Equal(4, Cured(rack, finding).Items[^1].HeightU);
        Assert.Empty(Findings(Cured(rack, finding)));
    }

    [Fact]
    public void Counted_from_the_top_the_same_numbers_are_other_units()
    {
        // From the top, 13 is the lowest unit of 10 to 13; the amplifier hangs on 14 and 15 and touches nothing.
        Passes(Bay().TopDown().With(Unit("wave-pc", 4).At(13), Unit("gauge-amp", 2).At(15)));
        var finding = Only(Bay().TopDown().With(Unit("wave-pc", 4).At(13), Unit("gauge-amp", 2).At(14)));
        Assert.Equal("unit 13", finding.MessageData["units"].Text);
    }

    [Theory]
    [InlineData(100, false)] // 450 + 75 + 100 + 75 = 700
    [InlineData(100.5, true)]
    public void On_opposite_faces_two_meet_where_their_depths_exceed_the_spacing(double depth, bool meet)
    {
        var rack = Bay().Uprights(spacing: 700).With(Deep, Unit("gauge-amp", 2).At(12, Face.Rear).Body(depth: depth).Room(rear: 75));
        if (!meet)
        {
            Passes(rack);
            return;
        }

        Numbers(Only(rack), 700.5, 700, "mm");
    }

    [Fact]
    public void On_opposite_faces_nothing_is_shared_where_the_units_differ() =>
        Passes(Bay().Uprights(spacing: 300).With(Deep, Unit("gauge-amp", 2).At(14, Face.Rear).Body(depth: 450)));

    [Fact]
    public void One_known_to_reach_through_the_rack_meets_whatever_is_behind_it()
    {
        // 601 + 75 + 25 = 701: however shallow the other is, its connectors take 25.
        var finding = Only(Bay().Uprights(spacing: 700).With(Deep.Body(depth: 601), Unit("gauge-amp", 2).At(12, Face.Rear)));
        Numbers(finding, 701, 700, "mm");
    }

    [Fact]
    public void A_depth_that_would_decide_is_asked_for()
    {
        Lacks(Bay().Uprights(spacing: 700).With(Deep, Unit("gauge-amp", 2).At(12, Face.Rear)), "/items/1/body/depthMm");
        Lacks(
            Bay().Uprights(spacing: 700).With(Unit("wave-pc", 4).At(10), Unit("gauge-amp", 2).At(12, Face.Rear)),
            "/items/0/body/depthMm",
            "/items/1/body/depthMm");
    }

    [Theory]
    [InlineData(270, false)] // 450 + 75 + 270 + 75 = 870 = 1000 - 25 - 25, less 40 before each plane
    [InlineData(271, true)]
    public void Without_a_spacing_what_lies_between_the_doors_and_the_planes_is_the_most_that_it_can_be(double depth, bool meet)
    {
        var rack = Bay().With(Deep, Unit("gauge-amp", 2).At(12, Face.Rear).Body(depth: depth).Room(rear: 75));
        if (meet)
        {
            Numbers(Only(rack), 871, 870, "mm");
        }
        else
        {
            Lacks(rack, "/cabinet/uprights/spacingMm");
        }
    }

    [Fact]
    public void A_plate_on_the_front_leaves_room_for_what_hangs_behind_it() =>
        Passes(Bay().Uprights(spacing: 700).With(Plate("plate", 4, 10), Unit("wave-pc", 4).At(10, Face.Rear).Body(depth: 625).Room(rear: 75)));

    [Fact]
    public void A_horizontal_distribution_unit_takes_one_unit_and_sixty_millimetres()
    {
        var rack = Bay().Uprights(spacing: 700).With(Deep.Body(depth: 490).Room(rear: 76)).With(Strip("strip", PduMounting.Horizontal, 11, Face.Rear));

        // 490 + 76 + 60 + 75 = 701
        var finding = Only(rack);
        Numbers(finding, 701, 700, "mm");
        Assert.Equal(["/pdus/0/position", "/items/0/position"], finding.Pointers);
        Passes(Bay().Uprights(spacing: 700).With(Deep.Body(depth: 490).Room(rear: 75)).With(Strip("strip", PduMounting.Horizontal, 11, Face.Rear)));
    }

    [Fact]
    public void An_item_and_a_distribution_unit_of_the_same_id_are_kept_apart()
    {
        var rack = Bay().With(Unit("a", 4).At(10), Unit("b", 4).At(10)).With(Strip("b", PduMounting.Horizontal, 10));
        Assert.Equal(3, Findings(rack).Select(f => f.Fingerprint).Distinct().Count());
    }

    [Theory]
    [InlineData(4, 5.0, 3, 99.0, "b")] // fewer units first
    [InlineData(4, 5.0, 4, 3.0, "b")] // then the lighter one
    [InlineData(4, 5.0, 4, 8.0, "a")]
    [InlineData(4, 5.0, 4, 5.0, "b")] // then the later id
    public void The_one_easier_to_move_is_the_culprit(int firstU, double firstKg, int secondU, double secondKg, string culprit)
    {
        var finding = Only(Bay().With(Unit("a", firstU).At(10).Weighs(firstKg), Unit("b", secondU).At(10).Weighs(secondKg)));
        Assert.Equal(culprit, finding.MessageData["item"].Text);
    }

    [Fact]
    public void A_plate_gives_way_and_is_taken_out()
    {
        var rack = Bay().With(Unit("gauge-amp", 1).At(10), Plate("plate", 4, 8));
        Assert.Equal(["gauge-amp"], Cured(rack, Only(rack)).Items.Select(i => i.Id));
    }

    [Fact]
    public void The_other_moves_to_the_nearest_free_place()
    {
        var rack = Bay().With(Unit("wave-pc", 4).At(10), Unit("gauge-amp", 2).At(12), Unit("flume-daq", 3).At(14));
        Assert.Equal(8, Cured(rack, Only(rack)).Items[1].Position!.U);
    }

    [Fact]
    public void A_move_keeps_clear_of_what_stands_on_a_shelf()
    {
        // The thing on the tray reaches up to unit 9, so 10 and 11 are the nearest free ones below.
        var rack = Bay().With(
            Shelf("tray", 1), Thing("desk-pc", "tray", width: 180, height: 8 * 44.45, depth: 400), Unit("wave-pc", 30).At(13), Unit("gauge-amp", 2).At(13));
        Assert.Equal(11, Cured(rack, Only(rack)).Items[3].Position!.U);
    }

    [Fact]
    public void A_move_does_not_put_a_set_on_runners_onto_another()
    {
        var rack = Bay().With(
            Unit("wave-pc", 4).At(10),
            Unit("gauge-pc", 2).At(12).On(SupportStyle.Runners),
            Unit("flume-daq", 3).At(5).On(SupportStyle.Runners));

        // Units 8 and 9 are free and nearest, but 8 stands on the runners of 5 to 7.
        Assert.Equal(14, Cured(rack, Only(rack)).Items[1].Position!.U);
    }

    [Fact]
    public void A_run_on_runners_that_hides_behind_the_conflict_is_no_new_error()
    {
        // Between two stacked sets the panel claims unit 4; once it is gone they still creep as they did.
        var rack = Bay().With(
            Unit("wave-pc", 4).At(1).Body(height: 177).On(SupportStyle.Runners),
            Unit("gauge-pc", 4).At(5).Body(height: 177).On(SupportStyle.Runners),
            Unit("patch", 1).At(4));
        Cured(rack, Only(rack));
    }

    [Fact]
    public void In_a_full_rack_a_distribution_unit_gets_a_higher_cabinet_but_is_never_taken_out()
    {
        var rack = Bay(6).With(Unit("wave-pc", 6).At(1)).With(Strip("strip", PduMounting.Horizontal, 3));
        var remedy = Assert.Single(Only(rack).Remedies);
        Assert.Equal(9, Cured(rack, Only(rack)).Cabinet!.HeightU);
        Assert.DoesNotContain(remedy.Patch, o => o.Op == "remove");
    }

    [Fact]
    public void A_loaded_shelf_that_finds_no_room_loses_its_place_or_is_taken_out_with_what_stands_on_it()
    {
        var rack = Bay(60).With(Unit("wave-pc", 60).At(1), Shelf("tray", 30), Thing("desk-pc", "tray", width: 180, height: 40, depth: 400));
        var finding = Only(rack);
        Assert.Null(Cured(rack, finding).Items[1].Position);
        Assert.Equal(["wave-pc"], RackPatch.Apply(rack, finding.Remedies[1]).Items.Select(i => i.Id));
    }
}
