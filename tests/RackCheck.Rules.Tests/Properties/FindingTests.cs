using System.Text.Json;
using CsCheck;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Rules.Tests.Power;
using RackCheck.Testing;

namespace RackCheck.Rules.Tests.Properties;

public sealed class FindingTests
{
    [Fact]
    [Trait("Kind", "property")]
    public void Every_finding_is_whole_and_what_is_lacking_is_not_there() =>
        AnyRack.Themed.Sample(
            themed =>
            {
                var (rack, isOwn) = themed;
                Assert.Empty(Judge.Unsound(rack));
                var report = Judge.Checker.Check(rack);
                var request = JsonSerializer.SerializeToNode(rack, ContractJson.Default.RackDescription)!;
                foreach (var finding in report.Findings)
                {
                    FindingShape.Check(finding, RuleSet.Default.Find(finding.Rule)!, request);
                    if (isOwn(finding.Rule))
                    {
                        Assert.Equal(finding.Remedies.Count, finding.Remedies.Select(r => r.Title).Distinct().Count());
                        Assert.True(
                            finding.Remedies.Count > 0 || !MustHaveRemedy(finding) || SaysWhy(finding),
                            $"{finding.Rule}, {finding.Subject} has no remedy: {finding.Message}");
                        Assert.All(finding.Remedies, r => Assert.Empty(Judge.Faults(rack, report, finding, r).Select(f => $"{finding.Rule}, {r.Title}: {f}")));
                    }
                }

                Assert.Equal(report.Findings.Count, report.Findings.Select(f => (f.Rule, f.Fingerprint)).Distinct().Count());
                Assert.All(report.NotAssessed.SelectMany(n => n.Missing), p => Assert.False(JsonPlaces.Stands(request, p), p));
                Assert.Equal(report.Assumed().Count(), report.Assumed().Select(a => a.Pointer).Distinct().Count());
            },
            iter: Samples.Of(12_000),
            print: t => Wording.Of(t.Rack));

    [Fact]
    [Trait("Kind", "property")]
    public void No_two_findings_of_a_rack_have_the_same_fingerprint() =>
        RackGenerator.AllRacks.Sample(
            rack =>
            {
                var findings = Judge.Checker.Check(rack).Findings;
                Assert.Equal(findings.Count, findings.Select(f => (f.Rule, f.Fingerprint)).Distinct().Count());

                // Nor the same places: a client that goes by pointers could not tell which of them a remedy cleared. What holds whatever is missing
                // points at the record that lacks the value, and two missing values can be members of one record.
                Assert.Empty(findings.Where(f => !Judge.HoldsOverRanges(f)).GroupBy(f => (f.Rule, string.Join(' ', f.Pointers))).Where(g => g.Count() > 1)
                    .Select(g => $"{g.Key}: {string.Join("; ", g.Select(f => f.Message))}"));
            },
            iter: Samples.Of(6_000),
            print: Wording.Of);

    [Fact]
    [Trait("Kind", "property")]
    public void Findings_and_what_is_lacking_are_in_their_order() =>
        RackGenerator.RacksWithPolicy.Sample(
            rack =>
            {
                var report = Judge.Checker.Check(rack);
                Assert.Equal(
                    report.Findings.Order(Comparer<Finding>.Create(FindingOrder.Compare)).Select(f => f.Fingerprint),
                    report.Findings.Select(f => f.Fingerprint));
                Assert.Equal(report.NotAssessed.Select(n => n.Rule).Order(StringComparer.Ordinal), report.NotAssessed.Select(n => n.Rule));
                Assert.All(report.NotAssessed, n => Assert.Equal(n.Missing.Distinct().Order(PointerOrder.Instance), n.Missing));
                Assert.All(report.Assumptions, a => Assert.Equal(a.Pointers.Order(PointerOrder.Instance), a.Pointers));
                Assert.Equal(report.Assumed().Count(), report.Assumed().Select(a => a.Pointer).Distinct().Count());
            },
            iter: Samples.Of(3_000),
            print: Wording.Of);

    // Plugs and outlets can always be put right; of other rules only errors are promised a remedy.
    // Where every candidate causes another defect, the finding names the first; few may be so, which RemedyTests holds.
    private static bool SaysWhy(Finding finding) =>
        Judge.HoldsOverRanges(finding) || finding.NoRemedy?.Contains("would clear it, but causes", StringComparison.Ordinal) == true;

    private static bool MustHaveRemedy(Finding finding) => finding.Severity == Severity.Error || OutletPropertyTests.Rules.Contains(finding.Rule);
}
