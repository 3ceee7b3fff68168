using RackCheck.Model;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Rules.Tests.Delivery.Routes;
using static RackCheck.Testing.LoadRacks;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Delivery;

public sealed class RampTests : RuleTests<Rules.Delivery.Ramp>
{
    // An empty cabinet 600 wide, 2000 high on feet 50 inside: atan(250 / 1000) = 14.036 deg. IEC 62368-1 8.6: 10 deg.
    private static RackDescription On(params double[] slopes) =>
        Weighed().Route(d => d with { Ramps = [.. slopes.Select(s => new Ramp { SlopePercent = s })] });

    [Theory]
    [InlineData(0, 0)]
    [InlineData(7.05, 0)] // atan 0.0705 = 4.033; 14.036 - 4.033 = 10.003
    [InlineData(7.06, 1)] // 4.038: 9.998
    [InlineData(12.5, 1)]
    public void Slope_reduces_the_tip_angle(double slope, int count) => Assert.Equal(count, Findings(On(slope)).Count);

    [Fact]
    public void Steepest_ramp_is_named()
    {
        var rack = On(3, 10, 8);
        var finding = Only(rack);
        Assert.Equal((Severity.Warning, true), (finding.Severity, finding.Safety));
        Assert.Equal(["/site/delivery/ramps/1"], finding.Pointers);
        Numbers(finding, 8.326, 10, "deg"); // 14.0362 - 5.7106
        Assert.Equal([3.0], Remedied(rack, finding).Site!.Delivery!.Ramps!.Select(r => r.SlopePercent).Where(p => p < 7.06));
    }

    // 100 x tan(14.0362 - 10) = 7.056: a ramp of 7 % stays.
    [Fact]
    public void Other_route_names_the_slope_that_passes()
    {
        var rack = On(3, 7, 10, 8);
        var finding = Only(rack);
        var other = finding.Remedies.Select((_, i) => i).Single(i => Remedied(rack, finding, i).Site!.Delivery!.Loaded is null);
        Assert.Equal([3.0, 7.0], Remedied(rack, finding, other).Site!.Delivery!.Ramps!.Select(r => r.SlopePercent));
        Assert.EndsWith("ramps steeper than 7 %", finding.Remedies[other].Title, StringComparison.Ordinal);
    }

    [Fact]
    public void Loaded_rack_uses_its_own_centre()
    {
        // 100 kg at 1000 and 100 kg at 66.55 + 33 x 44.45 + 88.9 = 1622.3: 1311.15; atan(250 / 1311.15) = 10.795, ramp 2 %: 1.146.
        var rack = On(2).With(Heavy("wave-pc", 34, 100).Carried(SupportStyle.Shelf, 200));
        Numbers(Only(rack), 9.649, 10, "deg");
        Assert.Equal(1, Remedied(rack, Only(rack)).Items[0].Position!.U);
        Passes(rack.Route(d => d with { Loaded = false }));
    }

    [Fact]
    public void Without_ramps_the_inset_of_the_feet_is_no_question_of_this_rule()
    {
        // Two questions wait for one rule: an answer that settles it alone makes the verdict possible that posting it gives.
        var rack = Weighed().Route(d => d with { Ramps = null }).Cabinet(c => c with { Base = c.Base! with { InsetMm = null } })
            .With(Heavy("wave-pc", 20, 100).Carried(SupportStyle.Shelf, 200));
        var alone = new RackChecker(RuleSet.Of(new Rules.Delivery.Ramp()), (_, fault) => throw new InvalidOperationException("The rule threw.", fault));
        var before = alone.Check(rack);
        Assert.Contains(before.Questions, q => q.Id == "cabinet.base.insetMm" && q.Rules.Contains(Id));
        var answered = alone.Check(rack.Route(d => d with { Ramps = [] }));
        Assert.Equal((Verdict.Review, Verdict.Release), (before.Verdicts.Site, answered.Verdicts.Site));
        Assert.Equal(answered.Verdicts.Site, Assert.Single(before.Questions, q => q.Id == "site.delivery.ramps").IfAnsweredWell.Site);
    }

    [Fact]
    public void Stabiliser_and_bolts_do_not_count_and_walls_have_no_ramp()
    {
        Only(On(12).Base(BaseStyle.Bolted));
        Only(On(12).Base(BaseStyle.Feet, 0, 300));
        Passes(On(12).Base(BaseStyle.Wall));
    }

    [Fact]
    public void Masses_missing_are_not_assessed()
    {
        ReportsMissing(On(5).With(Heavy("wave-pc", 1, null)), "/items/0/massKg");
        Passes(On(5).With(Heavy("wave-pc", 1, null)).Route(d => d with { Loaded = false }));
        Passes(Weighed().With(Heavy("wave-pc", 1, null)).Route(d => d));
    }
}
