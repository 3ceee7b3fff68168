using RackCheck.Model;
using RackCheck.Rules.Loads;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.LoadRacks;

namespace RackCheck.Rules.Tests.Loads;

public sealed class TipStaticTests : RuleTests<TipStatic>
{
    [Fact]
    public void Check_value_8_03_is_an_error()
    {
        // b = 0.25, h = 1.5 m: 9.462 deg. An empty cabinet 500 wide and 3000 high has these values.
        var rack = Weighed(widthMm: 500, heightMm: 3000).OnFaces();
        var finding = Only(rack);
        Assert.Equal(Severity.Error, finding.Severity);
        Numbers(finding, 9.462, 10, "deg");
        Assert.Equal("atan(250 / 1500) = 9.462 < 10", finding.Calculation);
        Assert.Equal(["/cabinet/base"], finding.Pointers);
        Assert.Equal(600, Remedied(rack, finding).Cabinet!.WidthMm);
        Assert.Equal(BaseStyle.Bolted, Remedied(rack, finding, 1).Cabinet!.Base!.Style);
    }

    [Theory]
    [InlineData(3402, 0)] // h = 1.701 m, b = 0.3: 10.002, check value 8-04
    [InlineData(3402.77, 0)] // 1.70138 m, check value 8-05
    [InlineData(3403.4, 1)]
    public void Tip_angle_of_10_degrees_passes(double height, int count) => Assert.Equal(count, Findings(Weighed(heightMm: height).OnFaces()).Count);

    [Fact]
    public void Line_of_castors_is_the_edge()
    {
        // Castors 50 inside the frame: 250 / tan 10 = 1417.82. That one may be swivelled inwards counts for items pulled out only.
        Passes(Weighed(heightMm: 2835.6).Base(BaseStyle.Castors, 80));
        var rack = Weighed(heightMm: 2836).Base(BaseStyle.Castors, 80);
        Assert.Equal("atan(250 / 1418) = 9.999 < 10", Only(rack).Calculation);
        Passes(rack.Base(BaseStyle.Plinth, 80)); // 300 / 1418: 11.946
    }

    [Fact]
    public void Bolted_rack_is_not_checked()
    {
        var rack = Weighed(widthMm: 500, heightMm: 3000).OnFaces().Base(BaseStyle.Bolted);
        Passes(rack);
        Passes(rack.Cabinet(c => c with { MassKg = null }).With(Heavy("wave-pc", 1, 30)));
        Assert.Null(Report(rack).Figures.Mass!.TipAngleDeg);
        Passes(Weighed(widthMm: 500, heightMm: 3000).Base(BaseStyle.Wall));
    }

    [Fact]
    public void Front_heavy_rack_gets_stabiliser()
    {
        // 20 kg at 300 and 200 kg at 75 + 15 = 90: 24000 / 220 = 109.091 behind the front; height (20 x 1000 + 200 x 555.5) / 220 = 595.909.
        var rack = Weighed(20, depthMm: 600).OnFaces().With(Heavy("wave-pc", 11, 200, depth: 30, heightU: 2));
        Numbers(Only(rack.Limit(Id, "tipAngleDeg", 15)), 10.374, 15, "deg");
        Assert.Equal("front", Only(rack.Limit(Id, "tipAngleDeg", 15)).MessageData["side"].Text);
        Assert.Equal(200, Remedied(rack.Limit(Id, "tipAngleDeg", 15), Only(rack.Limit(Id, "tipAngleDeg", 15))).Cabinet!.Base!.StabiliserMm);
        Passes(rack);
    }

    [Fact]
    public void Rear_item_reaches_forward()
    {
        // 100 kg at 500 and 100 kg at 75 + 700 - 225 = 550: 525.
        Assert.Equal(525, Report(Weighed().With(Heavy("wave-pc", 1, 100, face: Face.Rear))).Figures.Mass!.CentreOfGravityMm!.X);
    }

    [Fact]
    public void Heavy_item_moves_down_first()
    {
        var rack = Weighed(50, heightMm: 3200).With(Heavy("wave-pc", 38, 200).Carried(SupportStyle.Shelf, 250));
        Assert.Equal(1, Remedied(rack, Only(rack)).Items[0].Position!.U);
    }

    [Fact]
    public void Masses_and_positions_missing_are_not_assessed()
    {
        ReportsMissing(Weighed(null).With(Heavy("wave-pc", 1, 30)), "/cabinet/massKg");
        ReportsMissing(Weighed().With(Heavy("wave-pc", 1, null)), "/items/0/massKg");
        ReportsMissing(Weighed().With(Unit("wave-pc", 4).Body(depth: 450) with { MassKg = 30 }), "/items/0/position");
        ReportsMissing(EmptyRack().With(Unit("wave-pc", 4).At(1)), "/cabinet/massKg", "/items/0/massKg");
        Passes(EmptyRack());
    }

    [Fact]
    public void Default_setback_is_reported()
    {
        var rack = Weighed().With(Heavy("wave-pc", 1, 30).Room(40, 75)).Uprights(spacing: 700);
        Assert.Equal(75, Report(rack).Assumed().Single(a => a.Pointer == "/cabinet/uprights/frontSetbackMm").Value.Number);
    }
}
