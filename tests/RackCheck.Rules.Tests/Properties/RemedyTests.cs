using CsCheck;
using RackCheck.Model;
using RackCheck.Rules.Tests.Harness;

namespace RackCheck.Rules.Tests.Properties;

public class RemedyTests
{
    [Fact]
    public void The_first_remedy_of_every_finding_clears_it_and_brings_no_error() =>
        RackGenerator.Racks.Sample(
            rack =>
            {
                var report = Judge.Checker.Check(rack);
                foreach (var finding in report.Findings.Where(f => f.Remedies.Count > 0))
                {
                    Assert.True(
                        Judge.Faults(rack, report, finding, finding.Remedies[0]).FirstOrDefault() is var fault && fault is null,
                        $"{finding.Rule}, {finding.Subject}: \"{finding.Remedies[0].Title}\" {fault}");
                }
            },
            iter: 1_000,
            print: Wording.Of);

    [Fact]
    public void Every_further_remedy_of_every_error_does_so_too() =>
        RackGenerator.Racks.Sample(
            rack =>
            {
                var report = Judge.Checker.Check(rack);
                foreach (var (finding, remedy) in Judge.Errors(report).SelectMany(f => f.Remedies.Skip(1).Select(r => (f, r))))
                {
                    Assert.True(
                        Judge.Faults(rack, report, finding, remedy).FirstOrDefault() is var fault && fault is null,
                        $"{finding.Rule}, {finding.Subject}: \"{remedy.Title}\" {fault}");
                }
            },
            iter: 250,
            print: Wording.Of);

    [Fact]
    public void Every_error_has_a_remedy_unless_a_distribution_unit_finds_no_room() =>
        RackGenerator.Racks.Sample(
            rack =>
            {
                foreach (var error in Judge.Errors(Judge.Checker.Check(rack)).Where(e => e.Remedies.Count == 0))
                {
                    // Its outlets are what the rest is plugged into: it is not taken out, and it has no higher cabinet to go to.
                    Assert.True(
                        error.Pointers[0].StartsWith("/distributionUnits/", StringComparison.Ordinal) && rack.Cabinet!.HeightU == 60,
                        $"{error.Rule}, {error.Subject}");
                }
            },
            iter: 1_500,
            print: Wording.Of);
}
