using RackCheck.Model;
using RackCheck.Rules.Service;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Service;

public sealed class AisleTests : RuleTests<Aisle>
{
    private static Item Pc(double? extension = 701, double? depth = 500) => Unit("wave-pc", 4).At(1).Body(depth: depth) with
    {
        Support = new Support { Style = SupportStyle.Slides, ExtensionMm = extension },
    };

    private static RackDescription Aisle(double? width) => EmptyRack() with { Site = new Site { AisleFrontMm = width } };

    // Common practice, no source.
    [Fact]
    public void Extension_equal_to_aisle_passes() => Passes(Aisle(700).With(Pc(700)));

    [Fact]
    public void Extension_longer_than_aisle_is_warning()
    {
        var rack = Aisle(700).With(Pc());
        var finding = Only(rack);
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal(["/items/0/support/extensionMm", "/site/aisleFrontMm"], finding.Pointers);
        Numbers(finding, 701, 700, "mm");
        Assert.Equal(701, Remedied(rack, finding).Site!.AisleFrontMm);
        Assert.Equal(700, Remedied(rack, finding, 1).Items[0].Support!.ExtensionMm);
        Assert.Equal(SupportStyle.Runners, Remedied(rack, finding, 2).Items[0].Support!.Style);
    }

    [Fact]
    public void Default_extension_is_body_depth_and_reported()
    {
        Numbers(Only(Aisle(499).With(Pc(null))), 500, 499, "mm");
        var assumed = Assert.Single(Report(Aisle(500).With(Pc(null))).Assumptions, a => a.Pointer == "/items/0/support/extensionMm");
        Assert.Equal(500, assumed.Value.Number);
        Assert.DoesNotContain(Report(EmptyRack().With(Pc(null))).Assumptions, a => a.Pointer == "/items/0/support/extensionMm");
    }

    [Fact]
    public void Aisle_and_extension_missing_are_not_assessed()
    {
        ReportsMissing(Aisle(null).With(Pc(), Pc() with { Id = "gauge-pc" }), "/site/aisleFrontMm");
        ReportsMissing(Aisle(700).With(Pc(null, null)), "/items/0/support/extensionMm");
        ReportsMissing(EmptyRack().With(Pc()), "/site/aisleFrontMm");
    }

    [Fact]
    public void Runners_and_rear_items_are_not_checked() =>
        Passes(Aisle(100).With(Unit("gauge-amp", 2).At(10).On(SupportStyle.Runners), Pc().At(20, Face.Rear)));

    [Fact]
    public void Aisle_of_zero_has_no_slide_remedy() => Assert.Equal(2, Only(Aisle(0).With(Pc())).Remedies.Count);
}
