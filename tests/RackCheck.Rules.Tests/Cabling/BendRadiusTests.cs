using RackCheck.Model;
using RackCheck.Rules.Cabling;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.Bays;

namespace RackCheck.Rules.Tests.Cabling;

public sealed class BendRadiusTests : RuleTests<BendRadius>
{
    private static Item Drive(double? depth, double diameter = 20, int count = 2) => Unit("paddle-drive", 4).At(1).Body(depth: depth).Room(40, 30) with
    {
        Cables = [new CableBundle { DiameterMm = 6, Count = 4 }, new CableBundle { DiameterMm = diameter, Count = count }],
    };

    private static RackDescription Deep(double? setback = 150, double depth = 800) => Bay(depthMm: depth, widthMm: 800).Uprights(setback: setback);

    // handbook H12: 4 x 20 = 80 behind the body; 800 - 25 - 150 - 545 = 80.
    [Fact]
    public void Four_diameters_behind_the_body_pass() => Passes(Deep().With(Drive(545)));

    [Fact]
    public void Less_is_a_warning_and_the_uprights_go_forward()
    {
        var rack = Deep().With(Drive(546));
        var finding = Only(rack);
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal(["/items/0/cables", "/cabinet/depthMm"], finding.Pointers);
        Numbers(finding, 79, 80, "mm");
        Assert.Equal("800 - 25 - 150 - 546 = 79 < 4 x 20 = 80", finding.Calculation);
        Assert.Equal(125, Cured(rack, finding).Cabinet!.Uprights!.FrontSetbackMm);
        Assert.Equal(1000, Cured(rack, finding, 1).Cabinet!.DepthMm);
        Assert.Empty(Cured(rack, finding, 2).Items);
    }

    [Fact]
    public void Movable_uprights_are_taken_as_far_forward_as_serves_all_and_that_is_said()
    {
        // The front door of 25 and handles of 40 ask for 65, on the pitch 75: 800 - 25 - 75 - 630 = 70.
        var rack = Deep(setback: null).With(Drive(630));
        Numbers(Only(rack), 70, 80, "mm");
        Assert.Contains(Report(rack).Assumptions, a => a.Pointer == "/cabinet/uprights/frontSetbackMm" && a.Value.Number == 75);
        Assert.DoesNotContain(Report(Deep(setback: null).With(Unit("wave-pc", 4).At(1).Body(depth: 400))).Assumptions, a => a.Pointer == "/cabinet/uprights/frontSetbackMm");
        Assert.Equal(1000, Cured(rack, Only(rack)).Cabinet!.DepthMm);
    }

    [Fact]
    public void On_the_rear_uprights_the_room_is_towards_the_front_door()
    {
        // 100 + 600 - 596 - 25 = 79
        var rack = Bay(depthMm: 1000, widthMm: 800).Uprights(setback: 100, spacing: 600);
        Numbers(Only(rack.With(Drive(596).At(1, Face.Rear))), 79, 80, "mm");
        Passes(rack.With(Drive(595).At(1, Face.Rear)));
        Lacks(rack.Uprights(setback: 100).With(Drive(595).At(1, Face.Rear)), "/cabinet/uprights/spacingMm");
    }

    [Theory]
    [InlineData(3.95, 0)]
    [InlineData(4.1, 1)]
    public void A_policy_sets_the_factor(double factor, int count) => Assert.Equal(count, Findings(Deep().With(Drive(546)).Limit(Id, "bendFactor", factor)).Count);

    [Fact]
    public void What_is_not_known_is_asked_for()
    {
        Lacks(Deep().With(Drive(null)), "/items/0/body/depthMm");
        Lacks(Deep(setback: null, depth: 600).With(Drive(700)), "/cabinet/uprights/frontSetbackMm");
        Passes(Deep().With(Unit("wave-pc", 4).At(1)));
    }

    [Fact]
    public void A_cable_of_which_there_is_none_bends_nowhere() => Passes(Deep().With(Drive(560, count: 0)));
}
