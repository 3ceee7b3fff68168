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
    public void Every_error_has_a_remedy_unless_for_a_reason() =>
        RackGenerator.Racks.Sample(
            rack =>
            {
                foreach (var error in Judge.Errors(Judge.Checker.Check(rack)).Where(e => e.Remedies.Count == 0))
                {
                    // A setback or distance given that neither the holes, nor what hangs on the rear uprights, nor any usual depth can cure:
                    // what is wrong is the description, and nothing that is ordered otherwise mends it.
                    Assert.True(error.Subject == "rear uprights", $"{error.Rule}, {error.Subject}");
                }
            },
            iter: 1_500,
            print: Wording.Of);
}
