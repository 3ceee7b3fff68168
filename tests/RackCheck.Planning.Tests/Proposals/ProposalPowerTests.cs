using RackCheck.Model;
using RackCheck.Testing;
using static RackCheck.Planning.Tests.Baskets.DemoCatalogue;
using static RackCheck.Planning.Tests.Proposals.SoundProposals;

namespace RackCheck.Planning.Tests.Proposals;

/// <summary>What the UPSs and PDUs of proposed racks feed.</summary>
public sealed class ProposalPowerTests
{
    private static readonly string[] Parts = ["UPS-30", "SRV-2", "SRV-110", "PC-210", "KVM-16", "SW-24", "PAT-24", "DRV-4", "AMP-2", "DAQ-3", "GEN-2"];

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

    // Two PDUs with BS1363 outlets and a supply each, for nothing.
    [Fact]
    public void No_pdu_to_order_is_without_a_cord()
    {
        var request = Request("SRV-220", "SRV-220", "UPS-30", "SW-48", "PAT-24") with { Site = new Site { Region = Region.Uk, AmbientMaxC = 27 } };
        AssertNoIdlePdu(Answer(request));
        AssertNoIdlePdu(Answer(request with { Prefer = CabinetPreference.LowestCost }));
    }

    [Fact]
    [Trait("Kind", "property")]
    public void No_pdu_to_order_is_without_a_cord_in_random_racks() => Parallel.For(0, Samples.Of(500), run =>
    {
        var random = new Random(run);
        AssertNoIdlePdu(Answer(Request([.. Enumerable.Range(0, random.Next(1, 16)).Select(_ => Parts[random.Next(Parts.Length)])]) with
        {
            Site = new Site { Region = (Region)random.Next(3), AmbientMaxC = 22 + random.Next(10) },
        }));
    });

    private static void AssertNoIdlePdu(ProposalAnswer answer)
    {
        foreach (var rack in answer.Alternatives.SelectMany(CheckedOf))
        {
            var used = (rack.Report.Figures.Power?.Assignment ?? []).Select(c => c.Pdu).ToHashSet();

            // A UPS has the PDU that it is to feed something through, though there may be nothing left for it yet.
            var waiting = rack.Rack.Items.SelectMany(i => i.Ups?.Feeds ?? []).ToHashSet();
            Assert.DoesNotContain(rack.Rack.Pdus ?? [], u => !used.Contains(u.Id) && !waiting.Contains(u.Id));
        }
    }

    private static IEnumerable<CheckedRack> CheckedOf(ProposedRack alternative) =>
        alternative.Racks ?? [new CheckedRack { Rack = alternative.Rack!, Report = alternative.Report! }];

    // Two drives are too many for an outlet group of 16 A: three PDUs with two groups each, or one of three phases with six for less.
    [Fact]
    public void No_more_PDUs_are_ordered_than_their_outlet_groups_need()
    {
        var request = Request("DRV-4", "DRV-4", "DRV-4", "DRV-4", "DRV-4", "VLV-3", "SW-24");
        var answer = Answer(request);
        AssertSound(request, answer);
        var first = answer.Alternatives[0];
        Assert.Equal(["QWL-DU-32-V3"], first.Rack!.Pdus!.Select(u => u.PartNumber).Order(StringComparer.Ordinal));
        Assert.DoesNotContain(first.Report!.Findings, f => f.Severity != Severity.Advice);
        Assert.Equal(1, first.AddedLines.Where(l => l.PartNumber.StartsWith("QWL-DU-", StringComparison.Ordinal)).Sum(l => l.Quantity));
    }
}
