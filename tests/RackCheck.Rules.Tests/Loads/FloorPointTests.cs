using RackCheck.Model;
using RackCheck.Rules.Loads;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.LoadRacks;

namespace RackCheck.Rules.Tests.Loads;

public sealed class FloorPointTests : RuleTests<FloorPoint>
{
    // 700 kg centred at 500 like the cabinet: 800 kg evenly on four feet.
    private static RackDescription Even(double? limit) =>
        Weighed().OnFaces().Uprights(setback: 275, spacing: 600).Floor(20, limit).With(Heavy("wave-pc", 1, 700).Carried(SupportStyle.Shelf, 1000));

    [Fact]
    public void Check_value_9_06_is_an_error_on_1_9()
    {
        // 800 kg without eccentricity: 1.96133 kN per foot.
        var rack = Even(1.9);
        var finding = Only(rack);
        Assert.Equal(Severity.Error, finding.Severity);
        Numbers(finding, 1.961, 1.9, "kN");
        Assert.Equal(["/site/floor/pointKn"], finding.Pointers);
        Assert.Equal("800 x 9.80665 / 4000 x (1 + 2 x 0 / 1000) = 1.961 > 1.9", finding.Calculation);
        Assert.Equal(1.961, Report(rack).Figures.Mass!.PointKn);
        Assert.Empty(Remedied(rack, finding).Items);
        Passes(Even(1.962));
    }

    [Fact]
    public void Front_heavy_rack_loads_front_feet()
    {
        // Centred at 75 + 225 = 300: (100 x 500 + 700 x 300) / 800 = 325; 1.96133 x (1 + 2 x 175 / 1000) = 2.648.
        var rack = Even(2).Uprights(setback: 75, spacing: 700);
        Numbers(Only(rack), 2.648, 2, "kN");

        // Behind a door 25 deep, 50 inside the frame, feet from 75 to 950: 1.96133 x (1 + 2 x 187.5 / 875) = 2.802.
        Numbers(Only(rack.Doors(DoorStyle.Solid, DoorStyle.None).Inset(50)), 2.802, 2, "kN");
    }

    [Fact]
    public void Wall_hung_rack_needs_no_floor() => Passes(Even(null).Base(BaseStyle.Wall));

    [Fact]
    public void Positions_missing_check_quarter_of_mass()
    {
        var rack = Even(1.9).With(Heavy("gauge-amp", 9, 2) with { Position = null });
        var report = Report(rack);
        Numbers(Assert.Single(report.Findings), 1.966, 1.9, "kN");
        Assert.Equal(["/items/1/position"], Assert.Single(report.NotAssessed).Missing);
    }

    [Fact]
    public void Floor_too_weak_for_empty_cabinet_needs_higher_rating()
    {
        var rack = Even(0.1);
        Assert.Equal(2, Remedied(rack, Only(rack)).Site!.Floor!.PointKn);
    }

    [Fact]
    public void Floor_rating_and_masses_missing_are_not_assessed()
    {
        ReportsMissing(Even(null), "/site/floor/pointKn");
        ReportsMissing(Even(null) with { Site = null }, "/site/floor/pointKn");
        ReportsMissing(EmptyRack().Floor(5, 5).With(Unit("wave-pc", 4).At(1)), "/cabinet/massKg", "/items/0/massKg");
        ReportsMissing(EmptyRack().Floor(5, 5), "/cabinet/massKg");
    }
}
