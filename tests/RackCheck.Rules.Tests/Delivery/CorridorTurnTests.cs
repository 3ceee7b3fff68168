using RackCheck.Model;
using RackCheck.Rules.Delivery;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Rules.Tests.Delivery.Routes;

namespace RackCheck.Rules.Tests.Delivery;

public sealed class CorridorTurnTests : RuleTests<CorridorTurn>
{
    [Fact]
    public void Passage_without_turning_passes() => Passes(OnRoute(width: 800, depth: 1200).Round((800, 1200), (1200, 800)));

    [Fact]
    public void Corridor_1_mm_too_narrow_is_error()
    {
        var rack = OnRoute(width: 800, depth: 1200).Round((799, 1200));
        var finding = Only(rack);
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Equal(["/site/delivery/corridors/0", "/cabinet/widthMm", "/cabinet/depthMm"], finding.Pointers);
        Numbers(finding, 800, 799, "mm");
        Assert.Equal(600, Remedied(rack, finding).Cabinet!.WidthMm);
        Assert.Equal(600, Remedied(rack, finding, 1).Cabinet!.DepthMm);
        Assert.Empty(Remedied(rack, finding, 2).Site!.Delivery!.Corridors!);
    }

    // Geometry: from 900 into 1200 a length of 1600 turns up to 671.761 wide.
    [Theory]
    [InlineData(671.7, 0)]
    [InlineData(671.8, 1)]
    public void Long_footprint_is_checked_turning(double width, int count)
    {
        var findings = Findings(OnRoute(width: width, depth: 1600).Round((900, 1200)));
        Assert.Equal(count, findings.Count);
        Assert.All(findings, f => Numbers(f, width, 671.761, "mm"));
    }

    [Fact]
    public void Too_long_footprint_never_passes()
    {
        // From 400 into 400 nothing longer than 1131 turns (geometry, scaled).
        var finding = Only(OnRoute(width: 300, depth: 1200).Round((400, 400)));
        Numbers(finding, 300, 0, "mm");
        Assert.Contains("No rack of this length passes", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Remedy_without_pallet_comes_first()
    {
        var rack = OnRoute(width: 600, depth: 1000).Route(d => d with { PalletWidthMm = 800, PalletDepthMm = 1200 }).Round((1000, 700));
        Assert.Equal(0, Remedied(rack, Only(rack)).Site!.Delivery!.PalletHeightMm);

        // No smaller cabinet is offered where delivery without the pallet is sufficient.
        Assert.Equal(
            ["Deliver the rack off the pallet", "Choose an access route without that corner"],
            Judge.Checker.Check(rack).Findings.Single(f => f.Rule == "delivery.corridor-turn").Remedies.Select(r => r.Title));
    }

    [Fact]
    public void Repeated_corner_is_one_finding()
    {
        var rack = OnRoute(height: null).Round((300, 300), (1200, 1200), (300, 300));
        Assert.Equal(1200, Assert.Single(Remedied(rack, Only(rack)).Site!.Delivery!.Corridors!).WidthMm);
    }

    [Fact]
    public void Corridors_missing_are_not_assessed()
    {
        ReportsMissing(OnRoute(), "/site/delivery/corridors");
        Passes(OnRoute().Route(d => d with { Corridors = [] }));
    }
}
