using CsCheck;
using RackCheck.Model;
using RackCheck.Testing;

namespace RackCheck.Rules.Tests.Properties;

/// <summary>A search compares racks by their findings alone: they must be those of the report that is answered in the end.</summary>
public sealed class RackFindingsTests
{
    [Fact]
    [Trait("Kind", "property")]
    public void Findings_alone_are_those_of_the_report() =>
        AnyRack.WithPolicy.Sample(
            rack =>
            {
                var resolved = Judge.Resolve(rack);
                var (report, found) = (Judge.Checker.Recheck(resolved), Judge.Checker.Find(resolved));
                Assert.Equal(report.Findings.Select(Of), found.Findings.Select(Of));
                Assert.Equal(report.Figures.Power?.Assignment ?? [], found.Assignment ?? []);
            },
            iter: Samples.Of(10_000),
            print: Wording.Of);

    private static (string Rule, string Fingerprint, Severity Severity, string Message, bool IsSettled) Of(Finding finding) =>
        (finding.Rule, finding.Fingerprint, finding.Severity, finding.Message, finding is { Accepted: null, SignedOff: null });
}
