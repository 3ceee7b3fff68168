using CsCheck;
using RackCheck.Model;
using RackCheck.Remedies.Patches;
using RackCheck.Testing;

namespace RackCheck.Planning.Tests;

public sealed class RemedyLoopPropertyTests
{
    private static readonly RemedyLoop Loop = new(Judge.Checker);

    [Fact]
    [Trait("Kind", "property")]
    public void Loop_reduces_errors_at_each_step_and_is_idempotent() =>
        RackGenerator.AllRacks.Sample(
            rack =>
            {
                var errors = Judge.Errors(Judge.Checker.Check(rack)).Count();
                var run = Loop.Run(rack);
                Assert.True(run.Steps.Count < RemedyLoop.DefaultMostSteps);
                Assert.True(Judge.Errors(run.Report).Count() <= errors - run.Steps.Count);
                Assert.Empty(Judge.Unsound(run.Description));
                Assert.Subset(
                    run.Description.Items.Select(i => i.Id).ToHashSet(),
                    rack.Items.Where(i => i.Category != ItemCategory.BlankingPanel).Select(i => i.Id).ToHashSet());
                Assert.Empty(Loop.Run(run.Description).Steps);
            },
            iter: Samples.Of(300),
            print: Wording.Of);

    [Fact]
    [Trait("Kind", "property")]
    public void Errors_left_by_the_loop_have_no_valid_remedy_that_keeps_all_items() =>
        RackGenerator.AllRacks.Sample(
            rack =>
            {
                var run = Loop.Run(rack);
                foreach (var error in Judge.Errors(run.Report).Where(e => e.Remedies is [{ RemovesItems.Count: 0 }, ..]))
                {
                    var after = Judge.Checker.Check(RackPatch.Apply(run.Description, error.Remedies[0]));
                    var brought = Judge.Errors(after).Where(e => Judge.IsNew(e, run.Report));
                    Assert.True(brought.Any() || after.Findings.Any(f => Judge.IsSame(f, error)), error.Message);
                }
            },
            iter: Samples.Of(300),
            print: Wording.Of);
}
