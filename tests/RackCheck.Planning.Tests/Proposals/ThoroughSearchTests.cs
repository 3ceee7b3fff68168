using RackCheck.Model;
using RackCheck.Rules;
using static RackCheck.Planning.Tests.Baskets.DemoCatalogue;
using static RackCheck.Planning.Tests.Proposals.SoundProposals;

namespace RackCheck.Planning.Tests.Proposals;

/// <summary>A thorough search answers nothing worse than a quick one.</summary>
public sealed class ThoroughSearchTests
{
    // It took three cabinets or sold more parts, as it divided these lists in another way.
    [Theory]
    [InlineData("SRV-220,PC-410,PC-210,PC-210,PC-210,PC-D1,PC-D1,DAQ-3,SW-48,CBM-1,DRV-4,DRV-4,DSP-D22,OSC-0,OSC-0,DSP-8,KVM-16")]
    [InlineData("SRV-2,PC-410,PC-410,PC-410,PC-210,PC-210,PC-D1,PC-D1,PC-D1,SW-24,SW-48,PAT-24,CBM-1,UPS-30,UPS-30,UPS-15,DRV-4,KD-2,KVM-16,KVM-16")]
    public void Rows_are_no_worse_than_those_of_a_quick_search(string parts)
    {
        var request = Request(parts.Split(',')) with { Site = new Site { Region = Region.Uk, AmbientMaxC = 27 } };
        var (quick, thorough) = (Answer(request), Answer(request with { Effort = SearchEffort.Thorough }));
        Assert.NotEmpty(quick.Alternatives);
        Assert.NotEmpty(thorough.Alternatives);
        Assert.True(
            DemandOf(thorough.Alternatives[0]).CompareTo(DemandOf(quick.Alternatives[0])) <= 0,
            $"{DemandOf(thorough.Alternatives[0])} after {DemandOf(quick.Alternatives[0])}");
    }

    private static (int Cabinets, Verdict Verdict, int Warnings, int Parts) DemandOf(ProposedRack row) => (
        RacksOf(row).Length,
        row.Racks!.Max(r => r.Report.Verdicts.Product),
        row.Racks!.Sum(r => r.Report.Findings.Count(f => f.Severity == Severity.Warning && RuleSet.Default.Find(f.Rule)!.Concern == Concern.Product)),
        row.AddedLines.Sum(l => l.Quantity));
}
