using RackCheck.Model;
using RackCheck.Rules.Loads;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.LoadRacks;

namespace RackCheck.Rules.Tests.Loads;

public sealed class HeavyHighTests : RuleTests<HeavyHigh>
{
    // The lower edge at unit u is 66.55 + 44.45 (u - 1).
    private static RackDescription Lifted(int unit, double? kilograms, int? persons = null, bool? aid = null) =>
        Weighed().With(Heavy("wave-pc", unit, kilograms, heightU: 2)) with
        {
            Site = persons is null && aid is null ? null : new Site { Handling = new Handling { Persons = persons, LiftAid = aid } },
        };

    [Fact]
    public void Item_over_the_limit_of_two_people_is_warning()
    {
        var rack = Lifted(34, 30); // 66.55 + 1466.85 = 1533.4
        var finding = Only(rack);
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.True(finding.Safety);
        Numbers(finding, 30, 13.333, "kg");
        Assert.Equal("66.55 + 1466.85 = 1533.4; 2 x 10 x 2 / 3 = 13.333; 30 > 13.333", finding.Calculation);
        Assert.Equal(["/items/0"], finding.Pointers);
        Assert.True(Remedied(rack, finding).Site!.Handling!.LiftAid);
        Assert.Equal(1, Remedied(rack, finding, 1).Items[0].Position!.U);
    }

    [Theory]
    [InlineData(23, 33.3, 2, false)] // 1044.45: HSE L23, 25 kg a man; two people two thirds of the sum: 33.333
    [InlineData(23, 33.4, 2, true)]
    [InlineData(1, 33.4, 2, true)]
    [InlineData(24, 26.6, 2, false)] // 1088.9: 20 kg a man
    [InlineData(24, 26.7, 2, true)]
    [InlineData(30, 26.6, 2, false)] // 1355.6
    [InlineData(31, 13.3, 2, false)] // 1400.05: 10 kg a man
    [InlineData(31, 13.4, 2, true)]
    [InlineData(23, 25, 1, false)]
    [InlineData(23, 25.1, 1, true)]
    [InlineData(23, 37.5, 3, false)] // half of the sum of three
    [InlineData(23, 37.6, 3, true)]
    [InlineData(23, 37.6, 6, true)] // the guideline has no value for more than three
    public void Limit_depends_on_height_and_people(int unit, double kilograms, int persons, bool isFound) =>
        Assert.Equal(isFound, Findings(Lifted(unit, kilograms, persons)).Count > 0);

    [Fact]
    public void Two_people_lift_by_default() => Passes(Lifted(23, 33.3));

    [Fact]
    public void Lifting_aid_finds_nothing()
    {
        Passes(Lifted(34, 300, aid: true));
        Passes(Lifted(34, null, aid: true));
        Only(Lifted(34, 300, aid: false));
    }

    [Fact]
    public void One_person_gets_a_second()
    {
        var rack = Lifted(23, 30, persons: 1);
        Assert.Equal(2, Remedied(rack, Only(rack), 1).Site!.Handling!.Persons);
    }

    [Fact]
    public void Policies_may_be_stricter()
    {
        Passes(Lifted(19, 16));
        Numbers(Only(Lifted(19, 17).Limit(Id, "lowKg", 12)), 17, 16, "kg");
        Numbers(Only(Lifted(25, 17).Limit(Id, "middleKg", 12)), 17, 16, "kg");
        Numbers(Only(Lifted(35, 9).Limit(Id, "highKg", 6)), 9, 8, "kg");
    }

    [Fact]
    public void Item_is_swapped_with_lighter_item()
    {
        var rack = Weighed(heightU: 24, heightMm: 2800).With(
            Heavy("gauge-amp", 1, 5, heightU: 12).Carried(SupportStyle.Shelf, 100), Heavy("wave-pc", 13, 30, heightU: 12).Carried(SupportStyle.Shelf, 100));
        var finding = Findings(rack).Single(f => f.Pointers[0] == "/items/1");
        Assert.Equal([13, 1], Remedied(rack, finding, 1).Items.Select(i => i.Position!.U));
    }

    [Fact]
    public void Shelf_load_is_checked_at_its_height()
    {
        // On top of U31: 66.55 + 44.45 x 31 = 1444.5. Its own height is not needed.
        var rack = Weighed().With(Shelf("tray", 31) with { MassKg = 2 }, ShelfItem("probe", "tray", depth: 200) with { MassKg = 14 });
        Assert.Equal(1444.5, Only(rack).MessageData["heightMm"].Number);
    }

    [Fact]
    public void Position_and_mass_missing_are_not_assessed()
    {
        ReportsMissing(Weighed().With(Heavy("wave-pc", 1, 30) with { Position = null }), "/items/0/position");
        Passes(Weighed().With(Heavy("wave-pc", 1, 5) with { Position = null }));
        ReportsMissing(Weighed().With(Heavy("gauge-amp", 30, null)), "/items/0/massKg");
        ReportsMissing(Weighed().With(Heavy("gauge-amp", 1, null)), "/items/0/massKg");
    }

    [Fact]
    public void Default_cabinet_height_is_reported()
    {
        var rack = Lifted(34, 30).Cabinet(c => c with { HeightMm = null, Base = null });
        var report = Report(rack);
        Assert.Equal(1516.85, Assert.Single(report.Findings).MessageData["heightMm"].Number); // 50 + 44.45 x 33
        Assert.Equal(1966.9, report.Assumed().Single(a => a.Pointer == "/cabinet/heightMm").Value.Number);
    }
}
