using RackCheck.Model;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Rules.Tests.Delivery.Routes;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Delivery;

public sealed class OpeningTests : RuleTests<Rules.Delivery.Opening>
{
    [Fact]
    public void Clearance_of_20_mm_on_pallet_passes() => Passes(OnRoute().Through(("goods-in", 620, 2170)));

    // 2000 + 150 + 20 = 2170 > 2040, and 2020 without the pallet (clearance is common practice, no source).
    [Fact]
    public void Passage_without_pallet_only_is_warning()
    {
        var rack = OnRoute().Through(("goods-in", 926, 2040));
        var finding = Only(rack);
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal(["/site/delivery/openings/0", "/cabinet/heightMm"], finding.Pointers);
        Numbers(finding, 2170, 2040, "mm");
        Assert.Equal("2000 + 150 + 20 = 2170 > 2040", finding.Calculation);
        Assert.Contains("Without the pallet, the rack passes", finding.Message, StringComparison.Ordinal);
        Assert.Equal(0, Remedied(rack, finding).Site!.Delivery!.PalletHeightMm);
    }

    [Fact]
    public void Pallet_too_wide_points_to_width()
    {
        var finding = Only(OnRoute().Route(d => d with { PalletWidthMm = 800, PalletDepthMm = 1200 }).Through(("hatch", 819, 3000)));
        Numbers(finding, 820, 819, "mm");
        Assert.Equal(["/site/delivery/openings/0", "/cabinet/widthMm"], finding.Pointers);
    }

    // Geometry: 2100 x 800 under 2040 needs 45.653 degrees; with 20 clearance, the opening height is 2060.
    [Theory]
    [InlineData(46, Severity.Warning)]
    [InlineData(45, Severity.Error)]
    public void Passage_with_tilt_is_warning_up_to_limit(double most, Severity severity)
    {
        var rack = OnRoute(2100).Route(d => d with { MayTilt = true }).Through(("goods-in", 926, 2060)).Limit(Id, "tiltDeg", most);
        var finding = Only(rack);
        Assert.Equal(severity, finding.Severity);
        Numbers(finding, 2120, 2060, "mm");
        if (severity == Severity.Warning)
        {
            Assert.Equal(45.653, finding.MessageData["tiltDeg"].Number);
            Assert.Equal("2100 + 20 = 2120 > 2060; atan(800 / 2100) + acos(2040 / 2247.221) = 45.653 degrees", finding.Calculation);
        }
    }

    [Theory]
    [InlineData(null)]
    [InlineData(false)]
    public void Tilt_not_allowed_is_error(bool? mayTilt)
    {
        // 2100 x 600: atan(600 / 2100) + acos(2080 / 2184.033) = 33.7 degrees.
        var rack = OnRoute(2100, depth: 600).Route(d => d with { MayTilt = mayTilt }).Through(("goods-in", 926, 2100)).With(Unit("wave-pc", 4).At(1));
        var finding = Only(rack);
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Contains("tilting is not specified as allowed", finding.Message, StringComparison.Ordinal);
        Assert.Equal(36, Remedied(rack, finding).Cabinet!.HeightU);
    }

    [Fact]
    public void Severity_does_not_change_the_fingerprint()
    {
        var rack = OnRoute(2100, depth: 600).Through(("goods-in", 926, 2100));
        Assert.Equal(Only(rack).Fingerprint, Only(rack.Route(d => d with { MayTilt = true })).Fingerprint);
    }

    [Fact]
    public void Lower_cabinet_keeps_or_moves_items()
    {
        var rack = OnRoute().Through(("hatch", 700, 1600)).With(Unit("wave-pc", 4).At(30), Unit("gauge-amp", 2).At(1), Plate("plate", 2, 41));
        var remedied = Remedied(rack, Only(rack), 1);
        Assert.Equal((32, 2000 - (10 * 44.45)), (remedied.Cabinet!.HeightU, remedied.Cabinet.HeightMm));
        Assert.Equal(["gauge-amp"], remedied.Items.Select(i => i.Id));
        Assert.Contains(
            "move wave-pc to another rack", Judge.Checker.Check(rack).Findings.Single(f => f.Rule == Id).Remedies[1].Title,
            StringComparison.Ordinal);
        Assert.Equal(["wave-pc"], Judge.Checker.Check(rack).Findings.Single(f => f.Rule == Id).Remedies[1].RemovesItems);
    }

    [Fact]
    public void TopDown_items_keep_place_in_lower_cabinet()
    {
        var rack = OnRoute().TopDown().Through(("hatch", 700, 1800)).With(Unit("gauge-amp", 2).At(41));
        var remedied = Remedied(rack, Only(rack));
        Assert.Equal((36, 35), (remedied.Cabinet!.HeightU, remedied.Items[0].Position!.U));
    }

    [Fact]
    public void Another_route_is_last_remedy()
    {
        var rack = OnRoute().Through(("shaft", 500, 3000), ("gate", 3000, 3000), ("shaft", 500, 3000));
        var finding = Only(rack);
        Assert.Equal(Severity.Error, finding.Severity);
        Numbers(finding, 620, 500, "mm");
        Assert.Equal("gate", Assert.Single(Remedied(rack, finding).Site!.Delivery!.Openings!).Name);
    }

    [Fact]
    public void Openings_without_name_differ_by_size()
    {
        var findings = Findings(OnRoute().Through((null, 500, 3000), ("", 510, 3000), (null, 500, 3000), ("a", 500, 3000), ("a", 510, 3000)));
        Assert.Equal(4, findings.Select(f => f.Fingerprint).Distinct().Count());
        Assert.Equal(4, findings.Count);
    }

    [Theory]
    [InlineData(21, 1)]
    [InlineData(20, 0)]
    public void Policy_sets_clearance(double clearance, int count) =>
        Assert.Equal(count, Findings(OnRoute().Through(("goods-in", 620, 2170)).Limit(Id, "clearanceMm", clearance)).Count);

    [Fact]
    public void Height_missing_still_checks_width()
    {
        ReportsMissing(OnRoute(height: null).Through(("goods-in", 620, 2170)), "/cabinet/heightMm");
        Numbers(Only(OnRoute(height: null).Through(("goods-in", 619, 2170))), 620, 619, "mm");
        ReportsMissing(OnRoute(height: null), "/site/delivery/openings");
        Passes(OnRoute(height: null).Route(d => d with { Openings = [] }));
    }

    [Fact]
    public void Default_pallet_is_reported()
    {
        var report = Report(OnRoute().Route(_ => new Model.Delivery()).Through(("goods-in", 620, 2169)));
        Assert.Equal(
            ["/site/delivery/palletDepthMm", "/site/delivery/palletHeightMm", "/site/delivery/palletKg", "/site/delivery/palletWidthMm"],
            report.Assumed().Select(a => a.Pointer).Where(p => p.StartsWith("/site", StringComparison.Ordinal)));
        Assert.Equal(2170, Assert.Single(report.Findings).Actual!.Value);
        Assert.Equal((2150.0, 600.0, 800.0), (report.Figures.Delivery!.HeightOnPalletMm, report.Figures.Delivery.WidthMm, report.Figures.Delivery.DepthMm));
        Assert.DoesNotContain(Report(EmptyRack()).Assumed(), a => a.Pointer.StartsWith("/site", StringComparison.Ordinal));
    }

    [Fact]
    public void Figures_use_larger_sides_of_pallet_and_cabinet()
    {
        var figures = Report(OnRoute(width: 800, depth: 1000).Route(d => d with { PalletWidthMm = 1200, PalletDepthMm = 800 })).Figures.Delivery!;
        Assert.Equal((800.0, 1200.0, 125.0), (figures.WidthMm, figures.DepthMm, figures.GrossKg));
    }
}
