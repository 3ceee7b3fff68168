using RackCheck.Model;
using RackCheck.Remedies.Patches;
using RackCheck.Rules.Layout;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Layout;

public sealed class OverlapTests : RuleTests<Overlap>
{
    private static readonly Item Deep = Unit("wave-pc", 4).At(10).Body(depth: 450).Room(rear: 75);

    [Fact]
    public void Neighbours_pass() => Passes(EmptyRack().With(Unit("wave-pc", 4).At(1), Unit("gauge-amp", 2).At(5)));

    [Theory]
    [InlineData(9, 1)]
    [InlineData(10, 2)]
    [InlineData(12, 2)]
    [InlineData(13, 1)]
    public void Shared_U_on_one_face_is_error(int unit, double shared)
    {
        var finding = Only(EmptyRack().With(Unit("wave-pc", 4).At(10), Unit("gauge-amp", 2).At(unit)));
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Equal(["/items/1/position", "/items/0/position"], finding.Pointers);
        Numbers(finding, shared, 0, "U");
    }

    [Fact]
    public void Three_items_at_one_U_are_three_pairs() =>
        Assert.Equal(3, Findings(EmptyRack().With(Unit("a", 2).At(10), Unit("b", 2).At(11), Unit("c", 3).At(10))).Count);

    [Theory]
    [InlineData(6, 15)] // 6 x 5 / 2
    [InlineData(7, 1)] // 21 pairs
    public void More_than_twenty_pairs_at_one_U_are_one_finding(int count, int findings)
    {
        var rack = EmptyRack().With([.. Enumerable.Range(0, count).Select(i => Unit($"u{i}", 1).At(10))]);
        Assert.Equal(findings, Findings(rack).Count);
    }

    [Fact]
    public void Many_items_at_one_U_are_named_and_spread()
    {
        var rack = EmptyRack().With([.. Enumerable.Range(0, 12).Select(i => Unit($"u{i:00}", 1 + (i % 2)).At(10)), Unit("stays", 4).At(1)]);
        var finding = Only(rack);
        Assert.Equal(12, finding.Pointers.Count);
        Assert.Equal(12, finding.MessageData["items"].List!.Count);
        Assert.EndsWith("u00, u01, u02 and 9 more.", finding.Message, StringComparison.Ordinal);
        Numbers(finding, 12, 1, "items");
        Assert.Equal(4, Remedied(rack, finding).Items[^1].HeightU);
        Assert.Empty(Findings(Remedied(rack, finding)));
    }

    [Fact]
    public void TopDown_numbering_changes_shared_U()
    {
        // Top-down, wave-pc occupies U10 to U13. The amplifier occupies U14 and U15.
        Passes(EmptyRack().TopDown().With(Unit("wave-pc", 4).At(13), Unit("gauge-amp", 2).At(15)));
        var finding = Only(EmptyRack().TopDown().With(Unit("wave-pc", 4).At(13), Unit("gauge-amp", 2).At(14)));
        Assert.Equal("13, 13", finding.MessageData["units"].ToString());
    }

    [Theory]
    [InlineData(100, false)] // 450 + 75 + 100 + 75 = 700
    [InlineData(100.5, true)]
    public void Opposite_faces_conflict_where_depths_exceed_spacing(double depth, bool meet)
    {
        var rack = EmptyRack().Uprights(spacing: 700).With(Deep, Unit("gauge-amp", 2).At(12, Face.Rear).Body(depth: depth).Room(rear: 75));
        if (!meet)
        {
            Passes(rack);
            return;
        }

        Numbers(Only(rack), 700.5, 700, "mm");
    }

    [Fact]
    public void Opposite_faces_at_different_U_pass() =>
        Passes(EmptyRack().Uprights(spacing: 300).With(Deep, Unit("gauge-amp", 2).At(14, Face.Rear).Body(depth: 450)));

    [Fact]
    public void Full_depth_item_conflicts_with_item_of_unknown_depth()
    {
        // 601 + 75 + 25 = 701: the connectors of the other item need at least 25.
        var finding = Only(EmptyRack().Uprights(spacing: 700).With(Deep.Body(depth: 601), Unit("gauge-amp", 2).At(12, Face.Rear)));
        Numbers(finding, 701, 700, "mm");
    }

    [Fact]
    public void Depth_missing_is_not_assessed()
    {
        ReportsMissing(EmptyRack().Uprights(spacing: 700).With(Deep, Unit("gauge-amp", 2).At(12, Face.Rear)), "/items/1/body/depthMm");
        ReportsMissing(
            EmptyRack().Uprights(spacing: 700).With(Unit("wave-pc", 4).At(10), Unit("gauge-amp", 2).At(12, Face.Rear)),
            "/items/0/body/depthMm",
            "/items/1/body/depthMm");
    }

    [Theory]
    [InlineData(270, false)] // 450 + 75 + 270 + 75 = 870 = 1000 - 25 - 25, less 40 before each plane
    [InlineData(271, true)]
    public void Spacing_missing_is_limited_by_depth_between_doors(double depth, bool meet)
    {
        var rack = EmptyRack().With(Deep, Unit("gauge-amp", 2).At(12, Face.Rear).Body(depth: depth).Room(rear: 75));
        if (meet)
        {
            Numbers(Only(rack), 871, 870, "mm");
        }
        else
        {
            ReportsMissing(rack, "/cabinet/uprights/spacingMm");
        }
    }

    [Fact]
    public void Blanking_panel_in_front_of_rear_item_passes() =>
        Passes(EmptyRack().Uprights(spacing: 700).With(Plate("plate", 4, 10), Unit("wave-pc", 4).At(10, Face.Rear).Body(depth: 625).Room(rear: 75)));

    [Fact]
    public void Horizontal_pdu_occupies_one_U_and_60_mm()
    {
        var rack = EmptyRack().Uprights(spacing: 700).With(Deep.Body(depth: 490).Room(rear: 76)).With(Strip("strip", PduMounting.Horizontal, 11, Face.Rear));

        // 490 + 76 + 60 + 75 = 701
        var finding = Only(rack);
        Numbers(finding, 701, 700, "mm");
        Assert.Equal(["/pdus/0/position", "/items/0/position"], finding.Pointers);
        Passes(EmptyRack().Uprights(spacing: 700).With(Deep.Body(depth: 490).Room(rear: 75)).With(Strip("strip", PduMounting.Horizontal, 11, Face.Rear)));
    }

    [Fact]
    public void Item_and_pdu_of_same_id_are_separate_findings()
    {
        var rack = EmptyRack().With(Unit("a", 4).At(10), Unit("b", 4).At(10)).With(Strip("b", PduMounting.Horizontal, 10));
        Assert.Equal(3, Findings(rack).Select(f => f.Fingerprint).Distinct().Count());
    }

    [Theory]
    [InlineData(4, 5.0, 3, 99.0, "b")] // fewer units first
    [InlineData(4, 5.0, 4, 3.0, "b")] // then the lighter one
    [InlineData(4, 5.0, 4, 8.0, "a")]
    [InlineData(4, 5.0, 4, 5.0, "b")] // then the later id
    public void Item_easier_to_move_is_named_first(int firstU, double firstKg, int secondU, double secondKg, string culprit)
    {
        var finding = Only(EmptyRack().With(Unit("a", firstU).At(10).Weighs(firstKg), Unit("b", secondU).At(10).Weighs(secondKg)));
        Assert.Equal(culprit, finding.MessageData["item"].Text);
    }

    [Fact]
    public void Blanking_panel_is_removed()
    {
        var rack = EmptyRack().With(Unit("gauge-amp", 1).At(10), Plate("plate", 4, 8));
        Assert.Equal(["gauge-amp"], Remedied(rack, Only(rack)).Items.Select(i => i.Id));
    }

    [Fact]
    public void Item_moves_to_nearest_free_U()
    {
        var rack = EmptyRack().With(Unit("wave-pc", 4).At(10), Unit("gauge-amp", 2).At(12), Unit("flume-daq", 3).At(14));
        Assert.Equal(8, Remedied(rack, Only(rack)).Items[1].Position!.U);
    }

    [Fact]
    public void Move_avoids_shelf_load()
    {
        // The item on the tray reaches up to U9, and U11 and U12 are the nearest free U positions.
        var rack = EmptyRack().With(
            Shelf("tray", 1), ShelfItem("desk-pc", "tray", width: 180, height: 8 * 44.45, depth: 400), Unit("wave-pc", 30).At(13), Unit("gauge-amp", 2).At(13));
        Assert.Equal(11, Remedied(rack, Only(rack)).Items[3].Position!.U);
    }

    [Fact]
    public void Move_keeps_free_U_between_runners()
    {
        var rack = EmptyRack().With(
            Unit("wave-pc", 4).At(10),
            Unit("gauge-pc", 2).At(12).On(SupportStyle.Runners),
            Unit("flume-daq", 3).At(5).On(SupportStyle.Runners));

        // U8 and U9 are the nearest free U positions, but U8 is directly above the runners of U5 to U7.
        Assert.Equal(14, Remedied(rack, Only(rack)).Items[1].Position!.U);
    }

    [Fact]
    public void Runner_run_behind_conflict_is_no_new_error()
    {
        // The panel occupies U4 between two stacked sets. Without it, the cumulative height error is the same.
        var rack = EmptyRack().With(
            Unit("wave-pc", 4).At(1).Body(height: 177).On(SupportStyle.Runners),
            Unit("gauge-pc", 4).At(5).Body(height: 177).On(SupportStyle.Runners),
            Unit("patch", 1).At(4));
        Remedied(rack, Only(rack));
    }

    [Fact]
    public void Pdu_in_full_rack_gets_taller_cabinet_only()
    {
        var rack = EmptyRack(6).With(Unit("wave-pc", 6).At(1)).With(Strip("strip", PduMounting.Horizontal, 3));
        var remedy = Assert.Single(Only(rack).Remedies);
        Assert.Equal(9, Remedied(rack, Only(rack)).Cabinet!.HeightU);
        Assert.DoesNotContain(remedy.Patch, o => o.Op == "remove");
    }

    [Fact]
    public void Shelf_in_full_rack_is_unplaced_or_removed_with_its_load()
    {
        var rack = EmptyRack(60).With(Unit("wave-pc", 60).At(1), Shelf("tray", 30), ShelfItem("desk-pc", "tray", width: 180, height: 40, depth: 400));
        var finding = Only(rack);
        Assert.Null(Remedied(rack, finding).Items[1].Position);
        Assert.Equal(["wave-pc"], RackPatch.Apply(rack, finding.Remedies[1]).Items.Select(i => i.Id));
    }
}
