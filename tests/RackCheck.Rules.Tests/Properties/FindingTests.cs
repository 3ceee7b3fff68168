using System.Text.Json;
using System.Text.Json.Nodes;
using CsCheck;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Testing;

namespace RackCheck.Rules.Tests.Properties;

public sealed class FindingTests
{
    [Fact]
    public void Every_finding_of_every_rack_is_whole() =>
        RackGenerator.AllRacks.Sample(
            rack =>
            {
                var request = JsonSerializer.SerializeToNode(rack, ContractJson.Default.RackDescription)!;
                Assert.All(Judge.Checker.Check(rack).Findings, f => FindingShape.Check(f, RuleSet.Default.Find(f.Rule)!, request));
            },
            iter: 1_500,
            print: Wording.Of);

    [Fact]
    public void No_two_findings_of_a_rack_have_the_same_fingerprint() =>
        RackGenerator.AllRacks.Sample(
            rack =>
            {
                var findings = Judge.Checker.Check(rack).Findings;
                Assert.Equal(findings.Count, findings.Select(f => (f.Rule, f.Fingerprint)).Distinct().Count());

                // Nor the same places: a client that goes by pointers could not tell which of them a remedy cleared.
                Assert.Equal(findings.Count, findings.Select(f => (f.Rule, string.Join(' ', f.Pointers))).Distinct().Count());
            },
            iter: 3_000,
            print: Wording.Of);

    [Fact]
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
                Assert.Equal(report.Assumptions.Select(a => a.Pointer).Order(PointerOrder.Instance), report.Assumptions.Select(a => a.Pointer));
                Assert.Equal(report.Assumptions.Count, report.Assumptions.Select(a => a.Pointer).Distinct().Count());
            },
            iter: 1_500,
            print: Wording.Of);

    [Fact]
    public void What_is_lacking_is_not_there() =>
        RackGenerator.AllRacks.Sample(
            rack =>
            {
                var request = JsonSerializer.SerializeToNode(rack, ContractJson.Default.RackDescription)!;
                Assert.All(Judge.Checker.Check(rack).NotAssessed.SelectMany(n => n.Missing), p => Assert.False(JsonPlaces.Stands(request, p), p));
            },
            iter: 1_500,
            print: Wording.Of);
}
