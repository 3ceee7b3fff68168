using System.Text.Json;
using RackCheck.Model;
using RackCheck.Model.Json;
using RackCheck.Planning.Proposals;
using RackCheck.Survey.Catalogue;
using RackCheck.Testing;
using static RackCheck.Planning.Tests.Baskets.DemoCatalogue;

namespace RackCheck.Planning.Tests.Proposals;

/// <summary>Answers to requests for proposals, and what all of them have to be.</summary>
internal static class SoundProposals
{
    /// <summary>The answer to a request with the demo catalogue.</summary>
    public static ProposalAnswer Answer(ProposalRequest request) => new ProposalPlanner(Judge.Checker).Plan(request, ByNumber, Products);

    /// <summary>An answer as text.</summary>
    public static string TextOf(ProposalAnswer answer) => JsonSerializer.Serialize(answer, ContractJson.Default.ProposalAnswer);

    /// <summary>Each rack, posted again, has no open error and holds the equipment.</summary>
    public static void AssertSound(ProposalRequest request, ProposalAnswer answer)
    {
        Assert.InRange(answer.Alternatives.Count, 0, ProposalPlanner.MostAlternatives);
        foreach (var alternative in answer.Alternatives)
        {
            var racks = RacksOf(alternative);
            foreach (var rack in racks)
            {
                var report = Judge.Checker.Check(ResolvedRack.Of(rack, ByNumber));
                Assert.DoesNotContain(report.Findings, f => f is { Severity: Severity.Error, Accepted: null });
                Assert.DoesNotContain(report.Findings, f => f.Rule == "layout.not-placed");
            }

            Assert.Equal(
                request.Items.Select(i => i.Id).Order(StringComparer.Ordinal),
                racks.SelectMany(r => r.Items).Select(i => i.Id).Where(id => request.Items.Any(i => i.Id == id)).Order(StringComparer.Ordinal));
            Assert.All(alternative.Objective, o => Assert.True(o.Name == ObjectiveName.FreeU ? o.Value <= o.Bound : o.Value >= o.Bound));
            Assert.All(alternative.Objective, o => Assert.True(!o.Proven || o.Value == o.Bound));
            Assert.All(alternative.AddedLines, l => Assert.True(l.Quantity > 0 && ByNumber.ContainsKey(l.PartNumber)));
        }
    }

    /// <summary>The racks of an alternative.</summary>
    public static RackDescription[] RacksOf(ProposedRack alternative) => alternative.Racks?.Select(r => r.Rack).ToArray() ?? [alternative.Rack!];
}
