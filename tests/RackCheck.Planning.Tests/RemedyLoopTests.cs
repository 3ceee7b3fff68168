using RackCheck.Model;
using RackCheck.Planning;
using RackCheck.Remedies;
using RackCheck.Remedies.Patches;
using RackCheck.Rules;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Planning.Tests;

public sealed class RemedyLoopTests
{
    private static readonly MessageWording Said = new("test", "It is wrong.");

    private static readonly RemedyLoop Loop = new(Judge.Geometry);

    // Bodies 3 below their panels: each stands on the plate of its own shelf.
    private static readonly RackDescription Broken = EmptyRack(12, depthMm: 600).With(
        Unit("wave-pc", 4).At(1).Body(430, 450, 174).Room(40, 75).On(SupportStyle.Shelf),
        Unit("gauge-amp", 2).At(4).Body(430, 300, 85).Room(40, 75).On(SupportStyle.Shelf),
        Unit("flume-daq", 3).At(11).Body(430, 300, 129).Room(40, 75).On(SupportStyle.Shelf));

    [Fact]
    public void Errors_are_corrected_one_at_a_time_in_report_order()
    {
        var run = Loop.Run(Broken);
        Assert.Equal(["depth.cabinet-too-shallow", "layout.outside-rack", "layout.overlap"], run.Steps.Select(s => s.Rule));
        Assert.Empty(Judge.Errors(run.Report));
        Assert.Equal(800, run.Description.Cabinet!.DepthMm);
        Assert.Equal([1, 5, 10], run.Description.Items.Select(i => i.Position!.U));
        Assert.Equal(Judge.Geometry.Check(run.Description).DescriptionDigest, run.Report.DescriptionDigest);
        Assert.DoesNotContain(RemedyLoop.CutShort.Text, run.Report.Cautions);
    }

    [Fact]
    public void Steps_applied_again_give_the_same_description()
    {
        var run = Loop.Run(Broken);
        var again = run.Steps.Aggregate(Broken, (rack, step) => RackPatch.Apply(rack, step.Remedy));
        Assert.Equal(Wording.Of(run.Description), Wording.Of(again));
        Assert.Equal(run.Steps.Select(s => s.Fingerprint), Loop.Run(Broken).Steps.Select(s => s.Fingerprint));
    }

    [Fact]
    public void Rack_without_errors_is_unchanged()
    {
        var rack = EmptyRack().With(Unit("wave-pc", 4).At(1));
        var run = Loop.Run(rack);
        Assert.Same(rack, run.Description);
        Assert.Empty(run.Steps);
    }

    [Fact]
    public void Warnings_and_advice_are_not_corrected()
    {
        var run = Loop.Run(EmptyRack().With(Unit("wave-pc", 4)));
        Assert.Empty(run.Steps);
        Assert.Equal(["layout.not-placed"], run.Report.Findings.Select(f => f.Rule));
    }

    [Fact]
    public void AcceptedError_is_not_corrected() =>
        Assert.Equal(
            ["layout.outside-rack", "layout.overlap"],
            Loop.Run(Broken.Accept("depth.cabinet-too-shallow", pointer: "/cabinet/depthMm")).Steps.Select(s => s.Rule));

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void Number_of_steps_is_limited(int steps)
    {
        var run = Loop.Run(Broken, steps);
        Assert.Equal(steps, run.Steps.Count);
        Assert.NotEmpty(Judge.Errors(run.Report));
        Assert.Contains(RemedyLoop.CutShort.Text, run.Report.Cautions);
    }

    // 19,900 overlapping pairs are one finding, and one remedy corrects it as far as space allows.
    [Fact]
    public void Stacked_items_are_spread_in_one_step()
    {
        var heap = EmptyRack().With([.. Enumerable.Range(0, 200).Select(i => Unit($"probe-{i}", 1).At(1))]);
        var run = Loop.Run(heap);
        Assert.Equal("layout.overlap", Assert.Single(run.Steps).Rule);
        Assert.DoesNotContain(run.Report.Findings, f => f.Rule == "layout.overlap");
        Assert.Equal(42, run.Report.Figures.Space!.UnitsUsed);
    }

    [Fact]
    public void Remedy_that_causes_another_error_is_skipped()
    {
        var checker = new RackChecker(RuleSet.Of(new Swapping("layout.a-first", "b"), new Swapping("layout.b-second", "a")), (_, _) => { });
        var run = new RemedyLoop(checker).Run(EmptyRack() with { Reference = "a" });
        Assert.Empty(run.Steps);
        Assert.Equal("a", run.Description.Reference);
    }

    [Fact]
    public void Remedy_without_effect_is_skipped()
    {
        var checker = new RackChecker(RuleSet.Of(new Stubborn()), (_, _) => { });
        Assert.Empty(new RemedyLoop(checker).Run(EmptyRack()).Steps);
    }

    [Fact]
    public void Negative_number_of_steps_throws() => Assert.Throws<ArgumentOutOfRangeException>(() => Loop.Run(Broken, -1));

    [Fact]
    public void Cancelled_loop_stops()
    {
        using var source = new CancellationTokenSource();
        source.Cancel();
        Assert.Throws<OperationCanceledException>(() => Loop.Run(Broken, cancellation: source.Token));
    }

    private static RuleDescriptor Facts(string id) => new()
    {
        Id = id, Title = id, Severity = Severity.Error, What = "-", Why = "-", Formula = "-", Sources = [Engineering.Sources.Geometry],
        Needs = [], Remedies = [],
    };

    private static FindingDraft Draft(RemedyCandidate candidate) =>
        new() { Message = Said, Data = [], Subject = Subjects.Rack, Identity = [], Pointers = ["/reference"], Candidates = [candidate] };

    // Each of the two rules accepts only what the other refuses.
    private sealed class Swapping(string id, string wanted) : Rule
    {
        public override RuleDescriptor Descriptor { get; } = Facts(id);

        public override void Check(RuleContext context)
        {
            if (context.Survey.Description.Reference != wanted)
            {
                context.Report(Draft(new RemedyCandidate(new("test", "Change it"), context.Survey.Description with { Reference = wanted })));
            }
        }
    }

    private sealed class Stubborn : Rule
    {
        public override RuleDescriptor Descriptor { get; } = Facts("layout.stubborn");

        public override void Check(RuleContext context) =>
            context.Report(Draft(new RemedyCandidate(new("test", "Change it"), context.Survey.Description with { Reference = "x" })));
    }
}
