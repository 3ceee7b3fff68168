using RackCheck.Model;
using RackCheck.Rules.Layout;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Layout;

public sealed class RunnerStackTests : RuleTests<RunnerStack>
{
    // 175.8 + 2 = 177.8 = 4 x 44.45: a set that just fits its U positions.
    private const double Exact = 175.8;

    private static Item Set(string id, int unit, double? height = null, double? thickness = null) =>
        Unit(id, 4).At(unit).Body(height: height).On(SupportStyle.Runners, thickness);

    // Sets stacked from U1 on.
    private static Item[] Stack(params double?[] heights) => [.. heights.Select((h, i) => Set($"set-{i}", 1 + (4 * i), h))];

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Two_sets_of_unknown_height_pass(int sets) => Passes(EmptyRack().With(Stack(new double?[sets])));

    [Theory]
    [InlineData(3, Severity.Warning, 2)]
    [InlineData(4, Severity.Error, 3)]
    [InlineData(6, Severity.Error, 3)]
    public void Three_sets_are_warning_and_four_are_error(int sets, Severity severity, double limit)
    {
        var finding = Only(EmptyRack().With(Stack(new double?[sets])));
        Assert.Equal(severity, finding.Severity);
        Assert.Equal("/items/2", finding.Pointers[0]);
        Assert.Equal(sets, finding.Pointers.Count);
        Numbers(finding, sets, limit, "sets");
    }

    [Fact]
    public void Free_U_ends_run() => Passes(EmptyRack().With([.. Stack(null, null), Set("above", 10), Set("on-top", 14)]));

    [Fact]
    public void Item_on_slides_ends_run() =>
        Passes(EmptyRack().With([.. Stack(null, null), Unit("gauge-amp", 2).At(9).On(SupportStyle.Slides), Set("above", 11), Set("on-top", 15)]));

    [Fact]
    public void Sets_on_opposite_faces_do_not_stack() =>
        Passes(EmptyRack().With(
            [
                .. Stack(null, null), Unit("rear", 4).At(9, Face.Rear).On(SupportStyle.Runners),
                Unit("rear-2", 4).At(13, Face.Rear).On(SupportStyle.Runners),
            ]));

    [Fact]
    public void Each_face_has_its_own_runs() =>
        Assert.Equal("/items/2", Only(EmptyRack().With(
            Unit("a", 4).At(1, Face.Rear).On(SupportStyle.Runners), Unit("b", 4).At(5, Face.Rear).On(SupportStyle.Runners),
            Unit("c", 4).At(9, Face.Rear).On(SupportStyle.Runners))).Pointers[0]);

    [Fact]
    public void Overlapping_item_does_not_break_run() =>
        Assert.Equal(Severity.Error, Only(EmptyRack().With([.. Stack(null, null, null, null), Unit("patch", 1).At(4)])).Severity);

    [Fact]
    public void Known_heights_within_U_pass() =>
        Passes(EmptyRack(60).With(Stack(Exact, Exact, Exact, Exact, Exact, Exact, Exact, Exact)));

    [Theory]
    [InlineData(new[] { 175.7, 176.0 }, "/items/1", 355.7, 355.6)]
    [InlineData(new[] { 176.0, 170.0 }, "/items/0", 178, 177.8)] // it enters the unit of the set right on it
    [InlineData(new[] { 175.8, 175.8, 176.0 }, "/items/2", 533.6, 533.4)]
    [InlineData(new[] { 177.0, 177.0, 177.0 }, "/items/0", 179, 177.8)]
    public void First_set_that_does_not_fit_is_named(double[] heights, string culprit, double stack, double room)
    {
        var finding = Only(EmptyRack().With(Stack([.. heights])));
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Equal(culprit, finding.Pointers[0]);
        Assert.Equal(heights.Length, finding.Pointers.Count);
        Numbers(finding, stack, room, "mm");
    }

    [Fact]
    public void Single_set_may_use_free_U_above() => Passes(EmptyRack().With(Stack(177)));

    [Fact]
    public void Low_set_leaves_no_space_to_sets_above()
    {
        // Each set is fixed to its own holes: the height error of the two sets above does not depend on the low set.
        var finding = Only(EmptyRack().With(Stack(100, 177, 177)));
        Assert.Equal(("/items/1", "set-1"), (finding.Pointers[0], finding.MessageData["first"].Text));
        Numbers(finding, 179, 177.8, "mm");
    }

    [Fact]
    public void Known_heights_count_in_run_with_unknown_height()
    {
        Assert.Equal(Severity.Error, Only(EmptyRack().With(Stack(177, 177, null))).Severity);
        Assert.Equal(Severity.Error, Only(EmptyRack().With(Stack(null, 177, 177))).Severity);
        Numbers(Only(EmptyRack().With(Stack(Exact, Exact, null))), 3, 2, "sets");
    }

    [Fact]
    public void Runner_thickness_is_specified_or_default()
    {
        Passes(EmptyRack().With(Set("a", 1, 176.8, 1), Set("b", 5, 176.8, 1)));
        Numbers(Only(EmptyRack().With(Set("a", 1, Exact, 3), Set("b", 5, Exact, 2))), 178.8, 177.8, "mm");
        var assumption = Assert.Single(Report(EmptyRack().With(Set("a", 1, Exact))).Assumed(), a => a.Pointer == "/items/0/support/thicknessMm");
        Assert.Equal((2.0, "mm"), (assumption.Value.Number, assumption.Unit));
    }

    [Fact]
    public void Sets_of_any_height_stack() =>
        Numbers(
            Only(EmptyRack().With(Unit("a", 1).At(1).Body(height: 43).On(SupportStyle.Runners), Unit("b", 2).At(2).Body(height: 88).On(SupportStyle.Runners))),
            45, 44.45, "mm");

    [Fact]
    public void TopDown_run_starts_at_bottom() =>
        Assert.Equal("/items/0", Only(EmptyRack(12).TopDown().With(Set("top", 4), Set("mid", 8), Set("low", 12))).Pointers[0]);

    [Theory]
    [InlineData(1, 1, 2, Severity.Error)]
    [InlineData(1, 3, 2, Severity.Warning)]
    [InlineData(5, 6, 5, null)]
    [InlineData(5, 4, 5, Severity.Error)]
    public void Policy_sets_both_limits(double warning, double error, int sets, Severity? severity)
    {
        var rack = EmptyRack().With(Stack(new double?[sets])).Limit(Id, "runWarning", warning).Limit(Id, "runError", error);
        Assert.Equal(severity, Findings(rack).SingleOrDefault()?.Severity);
    }

    [Fact]
    public void Run_gets_free_U()
    {
        var rack = EmptyRack().With(Stack(null, null, null, null));
        Assert.Equal([1, 5, 10, 14], Remedied(rack, Only(rack)).Items.Select(i => i.Position!.U));
    }

    [Fact]
    public void Run_that_cannot_move_gets_shelf()
    {
        var rack = EmptyRack(16).With(Stack(null, null, null, null));
        var remedied = Remedied(rack, Only(rack));
        Assert.Equal([SupportStyle.Runners, SupportStyle.Runners, SupportStyle.Shelf, SupportStyle.Runners],
            remedied.Items.Select(i => i.Support!.Style!.Value));
    }

    [Fact]
    public void Move_keeps_free_U_below_next_run()
    {
        // U13 is free, but the moved set would then occupy the free U position below U14.
        var rack = EmptyRack().With([.. Stack(null, null, null), Set("next", 14), Set("last", 18)]);
        var remedied = Remedied(rack, Only(rack));
        Assert.Equal(rack.Items.Select(i => i.Position), remedied.Items.Select(i => i.Position));
        Assert.Equal(SupportStyle.Shelf, remedied.Items[2].Support!.Style);
    }

    [Fact]
    public void Fingerprint_does_not_depend_on_item_order()
    {
        var sets = Stack(null, null, null);
        Assert.Equal(Only(EmptyRack().With(sets)).Fingerprint, Only(EmptyRack().With([.. sets.Reverse()])).Fingerprint);
    }
}
