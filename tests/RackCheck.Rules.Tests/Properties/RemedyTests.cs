using CsCheck;
using RackCheck.Model;
using RackCheck.Remedies.Patches;
using RackCheck.Testing;

namespace RackCheck.Rules.Tests.Properties;

public sealed class RemedyTests
{
    [Fact]
    [Trait("Kind", "property")]
    public void Every_remedy_clears_its_finding_and_brings_no_new_or_worse_error() =>
        RackGenerator.AllRacks.Sample(
            rack =>
            {
                var report = Judge.Checker.Check(rack);
                foreach (var (finding, remedy) in report.Findings.SelectMany(f => f.Remedies.Select(r => (f, r))))
                {
                    Assert.True(
                        Judge.Faults(rack, report, finding, remedy).FirstOrDefault() is var fault && fault is null,
                        $"{finding.Rule}, {finding.Subject}: \"{remedy.Title}\" {fault}");
                }
            },
            iter: Samples.Of(10_000),
            print: Wording.Of);

    [Fact]
    [Trait("Kind", "property")]
    public void Every_error_has_a_remedy_or_says_why_and_few_have_none()
    {
        var (errors, without) = (0, 0);
        var bare = new System.Collections.Concurrent.ConcurrentBag<string>();
        RackGenerator.AllRacks.Sample(
            rack =>
            {
                foreach (var error in Judge.Errors(Judge.Checker.Check(rack)).Where(e => !Judge.HoldsOverRanges(e)))
                {
                    Interlocked.Increment(ref errors);
                    if (error.Remedies.Count == 0)
                    {
                        Interlocked.Increment(ref without);
                        bare.Add(error.Rule);

                        // No remedy exists for a given setback or spacing that suits neither the holes, the rear items nor any usual depth: the
                        // description is wrong, and no change to the order corrects it. Otherwise each candidate causes another defect, or the work that
                        // a request may take is spent on the findings before.
                        Assert.True(
                            error.Subject == "rear uprights" || error.NoRemedy!.Contains("would clear it, but causes", StringComparison.Ordinal)
                                || error.NoRemedy.Contains("were not tried", StringComparison.Ordinal),
                            $"{error.Rule}, {error.Subject}: {error.NoRemedy}");
                    }
                }
            },
            iter: Samples.Of(3_000, least: 3_000),
            print: Wording.Of);
        Assert.True(
            without < errors / 50,
            $"{without} of {errors}: {string.Join(", ", bare.CountBy(b => b).OrderByDescending(c => c.Value).Select(c => $"{c.Key} {c.Value}"))}");
    }

    [Fact]
    [Trait("Kind", "property")]
    public void An_acceptance_by_pointer_means_the_same_item_after_any_remedy() =>
        RackGenerator.RacksWithPolicy.Sample(
            rack =>
            {
                foreach (var remedy in Judge.Checker.Check(rack).Findings.Where(f => f.Rule != "acceptance.unused").SelectMany(f => f.Remedies))
                {
                    var patched = RackPatch.Apply(rack, remedy);
                    var stay = Meant(rack).Where(m => m.Id is null || patched.Items.Any(i => i.Id == m.Id));
                    Assert.Equal(stay, Meant(patched).Select(m => m.Id is { } id && !rack.Items.Any(i => i.Id == id) ? (m.Rule, null) : m));
                }
            },
            iter: Samples.Of(400),
            print: Wording.Of);

    // The rule and the item that each acceptance means; no item where the index is past the end.
    private static IEnumerable<(string Rule, string? Id)> Meant(RackDescription rack) => rack.Acceptances!.Select(a =>
    {
        var index = int.Parse(a.Pointer!.Split('/')[2], System.Globalization.CultureInfo.InvariantCulture);
        return (a.Rule, index < rack.Items.Count ? rack.Items[index].Id : null);
    });
}
