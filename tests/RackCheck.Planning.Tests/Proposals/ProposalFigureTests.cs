using System.Globalization;
using RackCheck.Model;
using RackCheck.Planning.Proposals;
using RackCheck.Rules;
using RackCheck.Testing;
using static RackCheck.Planning.Tests.Baskets.DemoCatalogue;
using static RackCheck.Planning.Tests.Proposals.SoundProposals;

namespace RackCheck.Planning.Tests.Proposals;

/// <summary>The figures of an answer agree with each other and with the reports in it.</summary>
public sealed class ProposalFigureTests
{
    private static readonly string[] Parts = ["UPS-30", "SRV-2", "SRV-110", "PC-210", "KVM-16", "SW-24", "PAT-24", "DRV-4", "AMP-2", "DAQ-3", "GEN-2", "OSC-0"];

    [Fact]
    [Trait("Kind", "property")]
    public void Proven_value_is_the_least_of_all_alternatives() => Parallel.For(0, Samples.Of(500), run =>
    {
        var random = new Random(run);
        AssertProofsHold(Answer(RandomRequest(random) with { Prefer = random.Next(2) == 0 ? CabinetPreference.LowestCost : null }));
    });

    [Fact]
    public void Height_to_keep_free_is_free_in_the_report()
    {
        string[] parts = ["UPS-30", .. Enumerable.Repeat("SRV-110", 10), "SW-48", "PAT-24", "PAT-24", "KVM-16"];
        var request = Request(parts) with { GrowthPercent = 40 };
        var shelved = Request([.. parts, "OSC-0"]) with { GrowthPercent = 30 };
        var low = Answer(shelved with { MaxCabinets = 1, Cabinets = [new Cabinet { PartNumber = "QWL-CAB-24-8-8" }] });
        Assert.Empty(low.Alternatives);
        Assert.Equal(["/growthPercent", "/cabinets", "/maxCabinets"], Assert.Single(low.Conflict!.Requirements).Pointers);
        var high = Answer(request);
        Assert.NotEmpty(high.Alternatives);
        Assert.All(high.Alternatives, a => Assert.True(a.Report!.Figures.Space!.UnitsFree >= 7));
    }

    [Fact]
    [Trait("Kind", "property")]
    public void Free_height_is_that_of_the_reports() => Parallel.For(0, Samples.Of(300), run =>
    {
        foreach (var alternative in Answer(RandomRequest(new Random(run))).Alternatives)
        {
            var free = (alternative.Racks?.Select(r => r.Report) ?? [alternative.Report!]).Sum(r => r.Figures.Space!.UnitsFree);
            Assert.Equal(free, alternative.Objective.Single(o => o.Name == ObjectiveName.FreeU).Value);
        }
    });

    // The contract says which: cabinets, panels, fixings, parts for earthing, cords, leads and cable arms are not.
    [Fact]
    public void Added_parts_are_shelves_rails_switches_fans_and_pdus()
    {
        static bool IsCounted(Product product) => product is
            { Kind: ProductKind.Shelf or ProductKind.Support or ProductKind.RoofFans or ProductKind.Pdu } or { Item.Category: ItemCategory.KvmSwitch };
        var answer = Answer(Request([.. Enumerable.Repeat("DRV-6", 4), "SRV-110", "SRV-2", "PC-410", "OSC-0", "SW-24"]) with
        {
            Cabinets = [new Cabinet { PartNumber = "QWL-CAB-42-8-10" }],
        });
        Assert.NotEmpty(answer.Alternatives);
        foreach (var alternative in answer.Alternatives)
        {
            var counted = alternative.AddedLines.Where(l => IsCounted(ByNumber[l.PartNumber])).Sum(l => l.Quantity);
            Assert.Equal(counted, alternative.Objective.Single(o => o.Name == ObjectiveName.AddedParts).Value);
            Assert.True(counted < alternative.AddedLines.Sum(l => l.Quantity));
        }
    }

    [Theory]
    [InlineData("QWL-CAB-42-6-10")]
    [InlineData("QWL-CAB-24-6-8")]
    public void Cost_is_that_of_the_added_lines_in_a_cabinet_of_the_request(string cabinet)
    {
        var request = Request("PC-210", "AMP-2", "SW-24", "GEN-2") with
        {
            Prefer = CabinetPreference.LowestCost, Cabinets = [new Cabinet { PartNumber = cabinet }],
        };
        var answer = Answer(request);
        Assert.NotEmpty(answer.Alternatives);
        Assert.All(answer.Alternatives, a => Assert.Equal(a.Cost!.Value, a.Objective.Single(o => o.Name == ObjectiveName.Cost).Value, 0.001));
        foreach (var alternative in Answer(request with { Prefer = null }).Alternatives)
        {
            Assert.All(
                alternative.GainedKeys.Concat(alternative.GivenUpKeys).Where(k => k.MessageKey == "trade-off.cost"),
                k => Assert.Equal(alternative.Cost!.Value.ToString(CultureInfo.InvariantCulture), k.MessageData["value"].ToString()));
        }
    }

    // Fewer packs are no reason, and no alternative is worse than another in all.
    [Fact]
    [Trait("Kind", "property")]
    public void Each_alternative_gains_something_over_each_other() => Parallel.For(0, Samples.Of(300), run =>
    {
        var answer = Answer(RandomRequest(new Random(run)));
        foreach (var alternative in answer.Alternatives.Skip(1))
        {
            Assert.Contains(alternative.GainedKeys, k => k.MessageKey != "trade-off.added-units");
        }

        foreach (var (one, other) in answer.Alternatives.Skip(1).SelectMany(a => answer.Alternatives.Skip(1).Where(b => a != b), (a, b) => (a, b)))
        {
            Assert.True(one.Report is null || other.Report is null || GainsOver(one, other), $"{run}");
        }
    });

    [Theory]
    [InlineData(27)]
    [InlineData(38)]
    public void Supplies_and_verdict_are_among_what_is_given_up(double ambientC)
    {
        var site = new Site { Region = Region.Uk, AmbientMaxC = ambientC };
        var answer = Answer(Request("SRV-220", "SRV-220", "UPS-30", "SW-48", "PAT-24") with { Site = site });
        var first = answer.Alternatives[0];
        foreach (var alternative in answer.Alternatives.Skip(1))
        {
            var keys = alternative.GainedKeys.Concat(alternative.GivenUpKeys).Select(k => k.MessageKey).ToArray();
            Assert.Equal(first.Rack!.Supplies!.Count != alternative.Rack!.Supplies!.Count, keys.Contains("trade-off.supplies"));
            Assert.Equal(first.Report!.Verdicts.Product != alternative.Report!.Verdicts.Product, keys.Contains("trade-off.verdict"));
        }
    }

    [Fact]
    public void Conflict_of_a_search_that_was_cut_is_not_proven()
    {
        var request = Request("SRV-2", "KD-2", "GEN-2", "GEN-2", "SW-24") with
        {
            Cabinets = [new Cabinet { HeightU = 12, WidthMm = 600, DepthMm = 600, HeightMm = 640 }],
            Site = new Site { Region = Region.Eu, AmbientMaxC = 25 },
        };
        foreach (var work in (double[])[0, 5, 10, 20, 40, 80, 160, 320])
        {
            var answer = new ProposalPlanner(Judge.Checker).Plan(request, ByNumber, Products, new SearchBudget(work));
            Assert.False(answer.Conflict!.Proven && answer.Cautions.Count > 0, $"{work}");
        }
    }

    [Fact]
    public void Ups_is_at_the_bottom()
    {
        var answer = Answer(Request("UPS-30", "UPS-30", "SRV-110", "SRV-110", "SW-24") with { Cabinets = [new Cabinet { PartNumber = "QWL-CAB-42-8-10" }] });
        var rack = answer.Alternatives[0].Rack!;
        Assert.Equal([1, 4], rack.Items.Where(i => i.Id.StartsWith("ups", StringComparison.Ordinal)).Select(i => i.Position!.U).Order());
    }

    [Fact]
    public void Perforated_door_lets_air_through()
    {
        var request = Request("PC-410", "AMP-32", "AMP-32", "SW-24", "DAQ-3", "PAT-24", "PC-410", "PC-410") with
        {
            Cabinets = [new Cabinet { PartNumber = "QWL-CAB-42-6-10-G" }],
            Site = new Site { Region = Region.Eu, AmbientMaxC = 30, HumidityMaxPercent = 70, OutsideWall = true },
        };
        var door = Answer(request).Alternatives.SelectMany(a => a.AddedLines).First(l => ByNumber[l.PartNumber].Kind == ProductKind.Door);
        Assert.Equal("It lets cooling air through.", door.Why);
    }

    private static bool GainsOver(ProposedRack one, ProposedRack other) =>
        Of(one).Zip(Of(other)).Any(f => f.First < f.Second);

    // What the answer says of an alternative, the less the better.
    private static double[] Of(ProposedRack alternative)
    {
        var power = alternative.Report!.Figures.Power;
        var rack = alternative.Rack!;
        var outlets = rack.Pdus!.Sum(u => ByNumber[u.PartNumber!].Pdu!.Groups!.Sum(g => g.Outlets.Sum(o => o.Count)));
        var cabinet = ByNumber[rack.Cabinet!.PartNumber!].Cabinet!;
        return
        [
            cabinet.HeightU!.Value, cabinet.DepthMm!.Value, cabinet.WidthMm!.Value,
            -alternative.Report.Figures.Space!.UnitsFree,
            alternative.Report.Findings.Count(f => f.Severity == Severity.Warning),
            rack.Supplies!.Count,
            (power?.Assignment?.Count ?? 0) - outlets,
            power is null ? 0 : power.Supplies!.Select(s => s.LoadingPercent).Concat(power.Pdus!.Select(u => u.LoadingPercent)).Max() ?? 0,
            alternative.Report.Figures.Cooling?.HottestInletC ?? 0,
            alternative.Cost ?? 0,
        ];
    }

    private static ProposalRequest RandomRequest(Random random) =>
        Request([.. Enumerable.Range(0, random.Next(1, 14)).Select(_ => Parts[random.Next(Parts.Length)])]) with
        {
            Site = new Site { Region = (Region)random.Next(3), AmbientMaxC = 22 + random.Next(10) },
        };

    private static int WarningsOf(ProposedRack rack) => rack.Report!.Findings.Count(f =>
        f is { Severity: Severity.Warning, Accepted: null, SignedOff: null } && RuleSet.Default.Find(f.Rule)!.Concern == Concern.Product);

    // Nothing that another alternative with no more open warnings shows to be wrong is proven: fewer warnings come before the sizes.
    private static void AssertProofsHold(ProposalAnswer answer)
    {
        foreach (var one in answer.Alternatives.Where(a => a.Rack is not null))
        {
            foreach (var other in answer.Alternatives.Where(a => a.Rack is not null && WarningsOf(a) <= WarningsOf(one)))
            {
                foreach (var (own, its) in one.Objective.Zip(other.Objective)
                    .TakeWhile(o => o.First.Name == o.Second.Name && o.First.Name <= ObjectiveName.Cost))
                {
                    Assert.True(own.Bound <= its.Value, $"{own.Name} {own.Bound} > {its.Value}");
                    if (own.Value != its.Value)
                    {
                        break;
                    }
                }
            }
        }
    }
}
