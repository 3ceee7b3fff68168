using RackCheck.Model;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.EarthRacks;

namespace RackCheck.Survey.Tests;

public sealed class EarthSurveyTests
{
    private static EarthingFigures? Figures(RackDescription rack) => Judge.Checker.Check(rack).Figures.Earthing;

    [Fact]
    public void Terminals_and_leakage_are_figures_of_the_report()
    {
        // Practice: bonding: two studs, four parts, the main conductor; 0.7 + 0.7 + 0.1 mA.
        var rack = Earthed(10).With(Studded("wave-pc", 1), Studded("gauge-pc", 3)).With(Leaking(0.7, 0.7, 0.1));
        Assert.Equal(new EarthingFigures { TerminalsNeeded = 7, TerminalsFitted = 10, LeakageMa = 1.5 }, Figures(rack));
    }

    [Fact]
    public void What_cannot_be_worked_out_is_absent()
    {
        var rack = Earthed(null).With(Leaking(0.7)).With(Leaking("wave-pc", 9, null));
        Assert.Equal(new EarthingFigures { TerminalsNeeded = 5 }, Figures(rack));
    }

    [Fact]
    public void Where_nothing_is_said_of_earth_and_nothing_leaks_there_are_none()
    {
        Assert.Null(Figures(EmptyRack().With(Unit("wave-pc", 2).At(1).Plugs(1))));
        Assert.Equal(0.7, Figures(EmptyRack().With(Leaking(0.7)))!.LeakageMa);
        Assert.NotNull(Figures(EmptyRack().Cabinet(c => c with { RearDoor = new Door { Style = DoorStyle.Solid, Bonded = true } })));
    }

    [Fact]
    public void What_is_taken_for_granted_is_listed()
    {
        var assumed = new RackSurvey(Earthed().With(Leaking(0.7))).Assumptions.ToDictionary(a => a.Pointer, a => a.Value.Truth);
        Assert.Equal((true, false), (assumed["/cabinet/sidePanels"], assumed["/items/0/earthStud"]));
        var bare = new RackSurvey(EmptyRack().With(Unit("drawer", 2).At(1))).Assumptions;
        Assert.DoesNotContain(bare, a => a.Pointer is "/cabinet/sidePanels" or "/items/0/earthStud");
    }

    [Theory]
    [InlineData(null, null, 1)]
    [InlineData(430.0, null, 1)]
    [InlineData(null, 450.0, 0)]
    public void The_opening_that_leads_pass_is_listed_once(double? width, double? opening, int count)
    {
        var rack = Earthed().Uprights(opening: opening).With(Studded("wave-pc", 1).Body(width: width));
        Assert.Equal(count, new RackSurvey(rack).Assumptions.Count(a => a.Pointer == "/cabinet/uprights/openingMm"));
    }

    [Fact]
    public void Of_supplies_that_leak_alike_the_first_in_the_list_is_named()
    {
        var rack = Earthed().Fed(Mains("B"), Mains("A")).Strips(Strip("one", "A"), Strip("two", "B")).With(Leaking("wave-pc", 1, 8, 2));
        Assert.Equal("B", new RackSurvey(rack).Earth.MostLeaking!.Id);
    }
}
