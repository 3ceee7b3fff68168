using RackCheck.Model;
using static RackCheck.Planning.Tests.Baskets.DemoCatalogue;
using static RackCheck.Planning.Tests.Proposals.SoundProposals;

namespace RackCheck.Planning.Tests.Proposals;

/// <summary>What the UPSs and PDUs of proposed racks feed.</summary>
public sealed class ProposalPowerTests
{
    // The leakage of a drive and of the servers together was over a limit, and the UPS was left to the drive.
    [Theory]
    [InlineData(8)]
    [InlineData(6)]
    public void Ups_feeds_servers_before_drives_in_a_row_of_cabinets(int drives)
    {
        var request = Request([.. Enumerable.Repeat("DRV-6", drives), "SRV-2", "SRV-2", "SW-24", "UPS-30", "PAT-24", "VLV-3", "VLV-3"]) with
        {
            Groups = [new ItemGroup { Id = "it", Items = ["srv-2-1", "srv-2-2", "sw-24-1", "ups-30-1"] }],
        };
        var answer = Answer(request);
        AssertSound(request, answer);
        Assert.NotEmpty(answer.Alternatives);
        foreach (var rack in answer.Alternatives.SelectMany(CheckedOf).Where(r => r.Rack.Items.Any(i => i.Id == "ups-30-1")))
        {
            var behind = rack.Rack.Items.Single(i => i.Id == "ups-30-1").Ups!.Feeds!;
            var fed = rack.Report.Figures.Power!.Assignment!.Where(c => behind.Contains(c.Pdu)).Select(c => c.Item).ToHashSet();
            Assert.Superset(new HashSet<string> { "srv-2-1", "srv-2-2", "sw-24-1" }, fed);
        }
    }

    private static IEnumerable<CheckedRack> CheckedOf(ProposedRack alternative) =>
        alternative.Racks ?? [new CheckedRack { Rack = alternative.Rack!, Report = alternative.Report! }];
}
