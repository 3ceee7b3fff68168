using RackCheck.Model;
using RackCheck.Rules.Layout;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Layout;

public sealed class BodyTooWideTests : RuleTests<BodyTooWide>
{
    private static Item Body(double? width) => Unit("wave-pc", 4).At(10).Body(width: width);

    [Theory]
    [InlineData(431, null)]
    [InlineData(431, SupportStyle.Slides)] // 450 - 2 x 9.5
    [InlineData(450, SupportStyle.Runners)]
    [InlineData(450, SupportStyle.Panel)]
    public void A_body_at_the_limit_passes(double width, SupportStyle? style) => Passes(EmptyRack().With(Body(width).On(style)));

    [Theory]
    [InlineData(450.01, null, 450)]
    [InlineData(450, SupportStyle.Slides, 431)] // no slide is 0 thick
    [InlineData(450.01, SupportStyle.Slides, 431)]
    [InlineData(451, SupportStyle.Shelf, 450)]
    public void A_body_over_the_limit_is_an_error(double width, SupportStyle? style, double limit)
    {
        var finding = Only(EmptyRack().With(Body(width).On(style)));
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Equal(["/items/0/body/widthMm"], finding.Pointers);
        Numbers(finding, width, limit, "mm");
        Assert.Equal(100 * width / limit, finding.UtilisationPercent!.Value, 1e-3);
    }

    [Theory]
    [InlineData(431.01, 9.495)]
    [InlineData(440, 5)] // (450 - 440) / 2
    [InlineData(449, 0.5)]
    public void Slides_of_unknown_thickness_are_a_warning(double width, double thickness)
    {
        var finding = Only(EmptyRack().With(Body(width).On(SupportStyle.Slides)));
        Assert.Equal((Severity.Warning, thickness), (finding.Severity, finding.MessageData["thicknessMm"].Number));
        Numbers(finding, width, 431, "mm");
        Assert.Equal(Severity.Error, Only(EmptyRack().With(Body(width).On(SupportStyle.Slides, thickness: 9.5))).Severity);
    }

    [Fact]
    public void Console_drawer_has_its_slides_inside_its_width()
    {
        RackDescription Drawer(double width, SupportStyle? style, double? thickness = null) =>
            EmptyRack().With(Body(width).On(style, thickness: thickness) with { Category = ItemCategory.KeyboardDrawer });
        Passes(Drawer(450, SupportStyle.Slides));
        Passes(Drawer(450, null));
        Numbers(Only(Drawer(450.1, SupportStyle.Slides)), 450.1, 450, "mm");
        Numbers(Only(Drawer(440, SupportStyle.Slides, 6)), 440, 438, "mm");
    }

    [Fact]
    public void Thin_slides_are_offered_first()
    {
        var rack = EmptyRack().With(Body(440).On(SupportStyle.Slides) with { MassKg = 20 });
        Assert.Equal(5, Remedied(rack, Only(rack)).Items[0].Support!.ThicknessMm);
        var none = EmptyRack().With(Body(446).On(SupportStyle.Slides) with { MassKg = 20 });
        Assert.Equal(SupportStyle.Runners, Remedied(none, Only(none)).Items[0].Support!.Style); // 2 mm: no slide is as thin
    }

    [Fact]
    public void Limit_uses_specified_slide_thickness_and_opening()
    {
        var rack = EmptyRack().Uprights(opening: 465).With(Body(441).On(SupportStyle.Slides, thickness: 12));
        Passes(rack);
        Numbers(Only(rack with { Items = [Body(441.5).On(SupportStyle.Slides, thickness: 12)] }), 441.5, 441, "mm");
    }

    [Fact]
    public void Body_width_missing_is_not_assessed()
    {
        ReportsMissing(EmptyRack().With(Body(null)), "/items/0/body/widthMm");
        ReportsMissing(EmptyRack().With(Unit("wave-pc", 4)), "/items/0/body/widthMm");
    }

    [Fact]
    public void Blanking_panels_shelves_and_shelf_loads_are_not_checked() =>
        Passes(
            EmptyRack().With(
                Plate("plate", 1, 1) with { Body = new Body { WidthMm = 482.6 } }, Shelf("tray", 4).Body(width: 430, depth: 450),
                ShelfItem("desk-pc", "tray", width: 600)));

    [Fact]
    public void Support_style_missing_is_not_assessed_where_it_decides()
    {
        ReportsMissing(EmptyRack().With(Body(431.01).On(null)), "/items/0/support/style");
        Passes(EmptyRack().With(Body(431).On(null)));
    }

    [Fact]
    public void Item_on_slides_gets_runners()
    {
        var rack = EmptyRack().With(Body(440).On(SupportStyle.Slides) with { MassKg = 20 });
        var remedied = Remedied(rack, Only(rack), 1);
        Assert.Equal(SupportStyle.Runners, remedied.Items[0].Support!.Style);
    }

    [Fact]
    public void Item_on_slides_next_to_runners_gets_no_shelf()
    {
        // On a shelf it would lose the service from the front that its slides give.
        var rack = EmptyRack().With(Unit("gauge-pc", 4).At(6).Body(width: 440).On(SupportStyle.Runners), Body(446).On(SupportStyle.Slides));
        Assert.Equal(["gauge-pc"], Remedied(rack, Only(rack)).Items.Select(i => i.Id));
    }

    [Fact]
    public void Item_used_extended_and_console_drawer_stay_on_slides()
    {
        var used = Body(446) with { Support = new Support { Style = SupportStyle.Slides, UsedExtended = true } };
        var drawer = Body(446).On(SupportStyle.Slides, thickness: 9.5) with { Category = ItemCategory.KeyboardDrawer };
        Assert.All([used, drawer], item => Assert.Empty(Remedied(EmptyRack().With(item), Only(EmptyRack().With(item))).Items));
    }

    [Fact]
    public void New_support_keeps_rating_only()
    {
        var rack = EmptyRack().With(
            Body(440) with 
            {
                Support = new Support
                {
                    Style = SupportStyle.Slides, RatedKg = 40, MinSpacingMm = 500, ExtensionMm = 600, CableArm = true,
                },
            });
        Assert.Equal(new Support { Style = SupportStyle.Runners, RatedKg = 40 }, Remedied(rack, Only(rack), 1).Items[0].Support);
    }

    [Fact]
    public void Body_wider_than_opening_is_moved_to_another_rack()
    {
        var rack = EmptyRack().With(Body(451).On(SupportStyle.Slides));
        Assert.Empty(Remedied(rack, Only(rack)).Items);
    }

    [Fact]
    public void Default_opening_is_reported_where_used()
    {
        var assumption = Assert.Single(Report(EmptyRack().With(Body(440).Room(0, 0))).Assumed(), a => a.Pointer == "/cabinet/uprights/openingMm");
        Assert.Equal(450, assumption.Value.Number);
        Assert.DoesNotContain(Report(EmptyRack().With(Unit("wave-pc", 4))).Assumed(), a => a.Pointer == "/cabinet/uprights/openingMm");
    }

    // A cable manager is screwed to the uprights by its panel; a server of that width may be on slides.
    [Fact]
    public void Support_of_a_cable_manager_is_not_asked_for()
    {
        RackDescription Of(ItemCategory category) => EmptyRack().With(Body(440) with { Category = category });
        Passes(Of(ItemCategory.CableManager));
        ReportsMissing(Of(ItemCategory.Server), "/items/0/support/style");
    }
}
