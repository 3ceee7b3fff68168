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

    // Without doors: the slides alone decide.
    private static RackDescription Aisle(double? width) =>
        EmptyRack().Doors(DoorStyle.None, DoorStyle.None) with { Site = new Site { AisleFrontMm = width } };

    private static RackDescription Doors(double aisle, int? leaves, Face face = Face.Front, double width = 800)
    {
        var door = new Door { Style = DoorStyle.Perforated, Leaves = leaves };
        return EmptyRack(widthMm: width).Cabinet(c => face == Face.Front ? c with { FrontDoor = door } : c with { RearDoor = door }) with
        {
            Site = face == Face.Front ? new Site { AisleFrontMm = aisle } : new Site { AisleRearMm = aisle },
        };
    }

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
        var assumed = Assert.Single(Report(Aisle(500).With(Pc(null))).Assumed(), a => a.Pointer == "/items/0/support/extensionMm");
        Assert.Equal(500, assumed.Value.Number);
        Assert.DoesNotContain(Report(EmptyRack().With(Pc(null))).Assumed(), a => a.Pointer == "/items/0/support/extensionMm");
    }

    [Fact]
    public void Aisle_and_extension_missing_are_not_assessed()
    {
        ReportsMissing(Aisle(null).With(Pc(), Pc() with { Id = "gauge-pc" }), "/site/aisleFrontMm");
        ReportsMissing(Aisle(700).With(Pc(null, null)), "/items/0/support/extensionMm");
        ReportsMissing(EmptyRack().With(Pc()), "/site/aisleFrontMm");
    }

    [Fact]
    public void Runners_are_not_checked() => Passes(Aisle(100).With(Unit("gauge-amp", 2).At(10).On(SupportStyle.Runners)));

    [Fact]
    public void Rear_items_extend_into_the_rear_aisle()
    {
        ReportsMissing(Aisle(100).With(Pc().At(20, Face.Rear)), "/site/aisleRearMm");
        var rack = Aisle(100).With(Pc().At(20, Face.Rear)) with { Site = new Site { AisleFrontMm = 100, AisleRearMm = 700 } };
        Assert.Equal(["/items/0/support/extensionMm", "/site/aisleRearMm"], Only(rack).Pointers);
        Assert.Equal(701, Remedied(rack, Only(rack)).Site!.AisleRearMm);
        Passes(rack with { Site = new Site { AisleRearMm = 701 } });
    }

    [Theory]
    [InlineData(800, 1, null)] // geometry: a leaf is as wide as the cabinet, of two leaves half as wide
    [InlineData(799, 1, Severity.Warning)]
    [InlineData(400, 2, null)]
    [InlineData(399, 2, Severity.Warning)]
    [InlineData(800, null, null)]
    [InlineData(799, null, Severity.Advice)]
    [InlineData(400, null, Severity.Advice)]
    [InlineData(399, null, Severity.Warning)]
    public void Leaf_needs_the_aisle(double aisle, int? leaves, Severity? severity)
    {
        // A front door has one leaf unless specified (common practice, no source).
        var front = severity == Severity.Advice ? Severity.Warning : severity;
        Assert.Equal(front, Findings(Doors(aisle, leaves)).SingleOrDefault()?.Severity);
        Assert.Equal(severity, Findings(Doors(aisle, leaves, Face.Rear)).SingleOrDefault()?.Severity);
    }

    [Fact]
    public void Door_gets_two_leaves_or_a_wider_aisle()
    {
        var rack = Doors(750, 1, Face.Rear);
        var finding = Only(rack);
        Numbers(finding, 800, 750, "mm");
        Assert.Equal(["/cabinet/rearDoor", "/site/aisleRearMm"], finding.Pointers);
        Assert.Equal(2, Remedied(rack, finding).Cabinet!.RearDoor!.Leaves);
        Assert.Equal(800, Remedied(rack, finding, 1).Site!.AisleRearMm);
        Assert.Equal("800 / 2 = 400 > 300", Only(Doors(300, 2)).Calculation);
    }

    [Fact]
    public void Cabinet_has_doors_unless_their_style_is_none()
    {
        Assert.Equal(Severity.Warning, Only(EmptyRack() with { Site = new Site { AisleFrontMm = 500 } }).Severity);
        Passes(Aisle(100));
        Passes(EmptyRack());
    }

    [Fact]
    public void Console_drawer_keeps_its_slides()
    {
        var rack = Aisle(700).With(Pc() with { Category = ItemCategory.KeyboardDrawer });
        Assert.Single(Judge.Check(rack).Findings.Single(f => f.Rule == Id).Remedies);
    }

    [Fact]
    public void Aisle_of_zero_has_no_slide_remedy() => Assert.Equal(2, Only(Aisle(0).With(Pc())).Remedies.Count);
}
