using RackCheck.Model;
using RackCheck.Rules.Cabling;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Cabling;

public sealed class BendRadiusTests : RuleTests<BendRadius>
{
    private static Item Drive(double? depth, double diameter = 20, int count = 2) => Unit("paddle-drive", 4).At(1).Body(depth: depth).Room(40, 30) with
    {
        Cables = [new CableBundle { DiameterMm = 6, Count = 4 }, new CableBundle { DiameterMm = diameter, Count = count }],
    };

    private static RackDescription Deep(double? setback = 150, double depth = 800) => EmptyRack(depthMm: depth, widthMm: 800).Uprights(setback: setback);

    // ANSI/TIA-568.0: 4 x 20 = 80 behind the body; 800 - 25 - 150 - 545 = 80.
    [Fact]
    public void Space_of_four_diameters_passes() => Passes(Deep().With(Drive(545)));

    [Fact]
    public void Less_space_is_warning_and_moves_uprights()
    {
        var rack = Deep().With(Drive(546));
        var finding = Only(rack);
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal(["/items/0/cables", "/cabinet/depthMm"], finding.Pointers);
        Numbers(finding, 79, 80, "mm");
        Assert.Equal("800 - 25 - 150 - 546 = 79 < 4 x 20 = 80", finding.Calculation);
        Assert.Equal(125, Remedied(rack, finding).Cabinet!.Uprights!.FrontSetbackMm);
        Assert.Equal(1000, Remedied(rack, finding, 1).Cabinet!.DepthMm);
        Assert.Empty(Remedied(rack, finding, 2).Items);
    }

    [Fact]
    public void Setback_missing_uses_default_and_reports_it()
    {
        // The front door of 25 and handles of 40 need 65, which is 75 on the pitch: 800 - 25 - 75 - 630 = 70.
        var rack = Deep(setback: null).With(Drive(630));
        Numbers(Only(rack), 70, 80, "mm");
        Assert.Contains(Report(rack).Assumed(), a => a.Pointer == "/cabinet/uprights/frontSetbackMm" && a.Value.Number == 75);
        Assert.DoesNotContain(
            Report(Deep(setback: null).With(Unit("wave-pc", 4).At(1).Body(depth: 400))).Assumed(),
            a => a.Pointer == "/cabinet/uprights/frontSetbackMm");
        Assert.Equal(1000, Remedied(rack, Only(rack)).Cabinet!.DepthMm);
    }

    [Fact]
    public void Rear_item_has_space_towards_front_door()
    {
        // 100 + 600 - 596 - 25 = 79
        var rack = EmptyRack(depthMm: 1000, widthMm: 800).Uprights(setback: 100, spacing: 600);
        Numbers(Only(rack.With(Drive(596).At(1, Face.Rear))), 79, 80, "mm");
        Passes(rack.With(Drive(595).At(1, Face.Rear)));
        ReportsMissing(rack.Uprights(setback: 100).With(Drive(595).At(1, Face.Rear)), "/cabinet/uprights/spacingMm");
    }

    [Theory]
    [InlineData(3.95, 0)]
    [InlineData(4.1, 1)]
    public void Policy_sets_bend_factor(double factor, int count) =>
        Assert.Equal(count, Findings(Deep().With(Drive(546)).Limit(Id, "bendFactor", factor)).Count);

    [Fact]
    public void Depth_and_setback_missing_are_not_assessed()
    {
        ReportsMissing(Deep().With(Drive(null)), "/items/0/body/depthMm");
        ReportsMissing(Deep(setback: null, depth: 600).With(Drive(700)), "/cabinet/uprights/frontSetbackMm");
        Passes(Deep().With(Unit("wave-pc", 4).At(1)));
    }

    [Fact]
    public void Cable_count_of_zero_passes() => Passes(Deep().With(Drive(560, count: 0)));
}
