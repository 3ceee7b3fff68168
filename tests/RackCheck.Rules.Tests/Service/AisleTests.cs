using RackCheck.Model;
using RackCheck.Rules.Service;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.Bays;

namespace RackCheck.Rules.Tests.Service;

public sealed class AisleTests : RuleTests<Aisle>
{
    private static Item Pc(double? extension = 701, double? depth = 500) => Unit("wave-pc", 4).At(1).Body(depth: depth) with
    {
        Support = new Support { Style = SupportStyle.Slides, ExtensionMm = extension },
    };

    private static RackDescription Aisle(double? width) => Bay() with { Site = new Site { AisleFrontMm = width } };

    // Common practice, no source.
    [Fact]
    public void A_full_pull_as_long_as_the_aisle_passes() => Passes(Aisle(700).With(Pc(700)));

    [Fact]
    public void A_longer_one_is_a_warning()
    {
        var rack = Aisle(700).With(Pc());
        var finding = Only(rack);
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal(["/items/0/support/extensionMm", "/site/aisleFrontMm"], finding.Pointers);
        Numbers(finding, 701, 700, "mm");
        Assert.Equal(701, Cured(rack, finding).Site!.AisleFrontMm);
        Assert.Equal(700, Cured(rack, finding, 1).Items[0].Support!.ExtensionMm);
        Assert.Equal(SupportStyle.Runners, Cured(rack, finding, 2).Items[0].Support!.Style);
    }

    [Fact]
    public void Slides_pull_out_as_far_as_the_body_is_deep_unless_told_and_that_is_said()
    {
        Numbers(Only(Aisle(499).With(Pc(null))), 500, 499, "mm");
        var assumed = Assert.Single(Report(Aisle(500).With(Pc(null))).Assumptions, a => a.Pointer == "/items/0/support/extensionMm");
        Assert.Equal(500, assumed.Value.Number);
        Assert.DoesNotContain(Report(Bay().With(Pc(null))).Assumptions, a => a.Pointer == "/items/0/support/extensionMm");
    }

    [Fact]
    public void What_is_not_known_is_asked_for()
    {
        Lacks(Aisle(null).With(Pc(), Pc() with { Id = "gauge-pc" }), "/site/aisleFrontMm");
        Lacks(Aisle(700).With(Pc(null, null)), "/items/0/support/extensionMm");
        Lacks(Bay().With(Pc()), "/site/aisleFrontMm");
    }

    [Fact]
    public void Runners_and_what_pulls_out_behind_are_not_meant() =>
        Passes(Aisle(100).With(Unit("gauge-amp", 2).At(10).On(SupportStyle.Runners), Pc().At(20, Face.Rear)));

    [Fact]
    public void Without_any_aisle_no_slides_help() => Assert.Equal(2, Only(Aisle(0).With(Pc())).Remedies.Count);
}
