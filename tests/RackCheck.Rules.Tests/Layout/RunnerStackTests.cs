using RackCheck.Model;
using RackCheck.Rules.Layout;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.Bays;

namespace RackCheck.Rules.Tests.Layout;

public sealed class RunnerStackTests : RuleTests<RunnerStack>
{
    // 175.8 + 2 = 177.8 = 4 x 44.45: a set that just keeps to its units.
    private const double Exact = 175.8;

    private static Item Set(string id, int unit, double? height = null, double? thickness = null) =>
        Unit(id, 4).At(unit).Body(height: height).On(SupportStyle.Runners, thickness);

    // Sets one on the other from unit 1 on.
    private static Item[] Stack(params double?[] heights) => [.. heights.Select((h, i) => Set($"set-{i}", 1 + (4 * i), h))];

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Two_sets_of_unknown_height_pass(int sets) => Passes(Bay().With(Stack(new double?[sets])));

    [Theory]
    [InlineData(3, Severity.Warning, 2)]
    [InlineData(4, Severity.Error, 3)]
    [InlineData(6, Severity.Error, 3)]
    public void Three_are_a_warning_and_more_an_error(int sets, Severity severity, double limit)
    {
        var finding = Only(Bay().With(Stack(new double?[sets])));
        Assert.Equal(severity, finding.Severity);
        Assert.Equal("/items/2", finding.Pointers[0]);
        Assert.Equal(sets, finding.Pointers.Count);
        Numbers(finding, sets, limit, "sets");
    }

    [Fact]
    public void A_free_unit_ends_a_run() => Passes(Bay().With([.. Stack(null, null), Set("above", 10), Set("on-top", 14)]));

    [Fact]
    public void So_does_a_unit_on_another_support() =>
        Passes(Bay().With([.. Stack(null, null), Unit("gauge-amp", 2).At(9).On(SupportStyle.Slides), Set("above", 11), Set("on-top", 15)]));

    [Fact]
    public void Sets_on_opposite_faces_do_not_stack() =>
        Passes(Bay().With([.. Stack(null, null), Unit("rear", 4).At(9, Face.Rear).On(SupportStyle.Runners), Unit("rear-2", 4).At(13, Face.Rear).On(SupportStyle.Runners)]));

    [Fact]
    public void Each_face_has_runs_of_its_own() =>
        Assert.Equal("/items/2", Only(Bay().With(
            Unit("a", 4).At(1, Face.Rear).On(SupportStyle.Runners), Unit("b", 4).At(5, Face.Rear).On(SupportStyle.Runners), Unit("c", 4).At(9, Face.Rear).On(SupportStyle.Runners))).Pointers[0]);

    [Fact]
    public void What_claims_a_unit_of_the_run_does_not_break_it() =>
        Assert.Equal(Severity.Error, Only(Bay().With([.. Stack(null, null, null, null), Unit("patch", 1).At(4)])).Severity);

    [Fact]
    public void Known_heights_that_keep_to_their_units_pass_however_many_they_are() =>
        Passes(Bay(60).With(Stack(Exact, Exact, Exact, Exact, Exact, Exact, Exact, Exact)));

    [Theory]
    [InlineData(new[] { 175.7, 176.0 }, "/items/1", 355.7, 355.6)]
    [InlineData(new[] { 176.0, 170.0 }, "/items/0", 178, 177.8)] // it enters the unit of the set right on it
    [InlineData(new[] { 175.8, 175.8, 176.0 }, "/items/2", 533.6, 533.4)]
    [InlineData(new[] { 177.0, 177.0, 177.0 }, "/items/0", 179, 177.8)]
    public void The_first_set_that_does_not_fit_is_the_culprit(double[] heights, string culprit, double stack, double room)
    {
        var finding = Only(Bay().With(Stack([.. heights])));
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Equal(culprit, finding.Pointers[0]);
        Assert.Equal(heights.Length, finding.Pointers.Count);
        Numbers(finding, stack, room, "mm");
    }

    [Fact]
    public void A_set_alone_may_rise_into_the_free_unit_above_it() => Passes(Bay().With(Stack(177)));

    [Fact]
    public void A_low_set_at_the_foot_lends_its_room_to_nobody()
    {
        // Each hangs on its own holes: the two above creep as they would without it.
        var finding = Only(Bay().With(Stack(100, 177, 177)));
        Assert.Equal(("/items/1", "set-1"), (finding.Pointers[0], finding.MessageData["first"].Text));
        Numbers(finding, 179, 177.8, "mm");
    }

    [Fact]
    public void Known_heights_count_in_a_run_where_another_is_unknown()
    {
        Assert.Equal(Severity.Error, Only(Bay().With(Stack(177, 177, null))).Severity);
        Assert.Equal(Severity.Error, Only(Bay().With(Stack(null, 177, 177))).Severity);
        Numbers(Only(Bay().With(Stack(Exact, Exact, null))), 3, 2, "sets");
    }

    [Fact]
    public void The_thickness_is_taken_where_it_is_given_and_assumed_where_not()
    {
        Passes(Bay().With(Set("a", 1, 176.8, 1), Set("b", 5, 176.8, 1)));
        Numbers(Only(Bay().With(Set("a", 1, Exact, 3), Set("b", 5, Exact, 2))), 178.8, 177.8, "mm");
        var assumption = Assert.Single(Report(Bay().With(Set("a", 1, Exact))).Assumptions, a => a.Pointer == "/items/0/support/thicknessMm");
        Assert.Equal((2.0, "mm"), (assumption.Value.Number, assumption.Unit));
    }

    [Fact]
    public void Sets_of_any_height_stack() =>
        Numbers(Only(Bay().With(Unit("a", 1).At(1).Body(height: 43).On(SupportStyle.Runners), Unit("b", 2).At(2).Body(height: 88).On(SupportStyle.Runners))), 45, 44.45, "mm");

    [Fact]
    public void Counted_from_the_top_the_run_still_grows_from_below() =>
        Assert.Equal("/items/0", Only(Bay(12).TopDown().With(Set("top", 4), Set("mid", 8), Set("low", 12))).Pointers[0]);

    [Theory]
    [InlineData(1, 1, 2, Severity.Error)]
    [InlineData(1, 3, 2, Severity.Warning)]
    [InlineData(5, 6, 5, null)]
    [InlineData(5, 4, 5, Severity.Error)]
    public void A_policy_sets_both_numbers(double warning, double error, int sets, Severity? severity)
    {
        var rack = Bay().With(Stack(new double?[sets])).Limit(Id, "runWarning", warning).Limit(Id, "runError", error);
        Assert.Equal(severity, Findings(rack).SingleOrDefault()?.Severity);
    }

    [Fact]
    public void A_free_unit_in_the_run_is_the_first_remedy()
    {
        var rack = Bay().With(Stack(null, null, null, null));
        Assert.Equal([1, 5, 10, 14], Cured(rack, Only(rack)).Items.Select(i => i.Position!.U));
    }

    [Fact]
    public void Where_the_run_cannot_move_up_the_culprits_get_shelves_of_their_own()
    {
        var rack = Bay(16).With(Stack(null, null, null, null));
        var cured = Cured(rack, Only(rack));
        Assert.Equal([SupportStyle.Runners, SupportStyle.Runners, SupportStyle.Shelf, SupportStyle.Runners], cured.Items.Select(i => i.Support!.Style!.Value));
    }

    [Fact]
    public void Moving_up_keeps_a_free_unit_to_the_run_above()
    {
        // Unit 14 is free, but with unit 13 to 17 taken by the moved set nothing would be left below unit 18.
        var rack = Bay().With([.. Stack(null, null, null), Set("next", 14), Set("last", 18)]);
        var cured = Cured(rack, Only(rack));
        Assert.Equal(rack.Items.Select(i => i.Position), cured.Items.Select(i => i.Position));
        Assert.Equal(SupportStyle.Shelf, cured.Items[2].Support!.Style);
    }

    [Fact]
    public void The_finding_outlives_a_reordering_of_its_sets()
    {
        var sets = Stack(null, null, null);
        Assert.Equal(Only(Bay().With(sets)).Fingerprint, Only(Bay().With([.. sets.Reverse()])).Fingerprint);
    }
}
