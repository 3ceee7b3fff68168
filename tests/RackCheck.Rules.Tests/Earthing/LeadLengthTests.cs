using RackCheck.Model;
using RackCheck.Rules.Earthing;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.EarthRacks;

namespace RackCheck.Rules.Tests.Earthing;

public sealed class LeadLengthTests : RuleTests<LeadLength>
{
    // Common practice, no source: 88.9 down + 225 aside + 250 back + 450 pulled out + 200 slack = 1213.9 mm.
    private static RackDescription Rack(Item item, double? spacing = 700) => Earthed().Uprights(100, spacing).With(item);

    private static Item Pc(double? lead, double? depth = 450, double? extension = 450) => Unit("wave-pc", 4).At(1).Body(depth: depth) with
    {
        Support = new Support { Style = SupportStyle.Slides, ExtensionMm = extension, MinSpacingMm = 500, MaxSpacingMm = 800 },
        EarthStud = true,
        EarthLead = new EarthLead { LengthM = lead, CrossSectionMm2 = 6 },
    };

    [Fact]
    public void A_lead_has_to_reach_the_bar_with_the_item_pulled_out()
    {
        var rack = Rack(Pc(1.2));
        var finding = Only(rack);
        Assert.Equal((Severity.Warning, false), (finding.Severity, finding.Safety));
        Numbers(finding, 1.2, 1.214, "m");
        Assert.Equal(["/items/0/earthLead/lengthM"], finding.Pointers);
        Assert.Equal("(88.9 + 225 + 250 + 450 + 200) / 1000 = 1.214 > 1.2", finding.Calculation);
        Assert.Equal(1.5, Remedied(rack, finding).Items[0].EarthLead!.LengthM);
        Passes(Rack(Pc(1.214)));
    }

    [Fact]
    public void Slides_of_unknown_extension_pull_out_by_the_body() => Numbers(Only(Rack(Pc(0.5, extension: null))), 0.5, 1.214, "m");

    [Theory]
    [InlineData(SupportStyle.Runners, 0.764)] // 1213.9 - 450
    [InlineData(SupportStyle.Panel, 0.764)]
    public void Without_slides_nothing_is_pulled_out(SupportStyle style, double needed) =>
        Numbers(Only(Rack(Pc(0.5) with { Support = new Support { Style = style } })), 0.5, needed, "m");

    [Theory]
    [InlineData(false, 21, 4, 1.889)] // 44.45 x 22 = 977.9 down, + 225 + 36 + 450 + 200
    [InlineData(true, 4, 4, 1.889)] // the same place counted from above
    public void Route_starts_at_item_centre(bool topDown, int unit, int heightU, double needed)
    {
        var rack = Rack(Pc(0.5, depth: 664) with { HeightU = heightU, Position = new Position { U = unit } });
        Numbers(Only(topDown ? rack.TopDown() : rack), 0.5, needed, "m");
    }

    [Fact]
    public void A_body_past_the_rear_uprights_comes_back_to_them() => Numbers(Only(Rack(Pc(0.5, depth: 736))), 0.5, 1, "m");

    [Fact]
    public void On_the_rear_uprights_the_back_of_a_body_is_its_depth_away()
    {
        // 88.9 + 225 + 450 + 200
        var item = Pc(0.5) with { Support = null, Position = new Position { U = 1, Face = Face.Rear } };
        Numbers(Only(Rack(item, null)), 0.5, 0.964, "m");
    }

    [Fact]
    public void Item_on_shelf_uses_shelf_position()
    {
        // 44.45 x 9.5 = 422.275 + 225 + 300 + 200
        var rack = Earthed().Uprights(100, 700).With(ShelfItem("desk-pc", "tray", 200, 400, 100)
            with { EarthStud = true, EarthLead = new EarthLead { LengthM = 1, CrossSectionMm2 = 4 } }, Shelf("tray", 10));
        Numbers(Only(rack), 1, 1.147, "m");
        Assert.Equal(["/items/1/position"], Assert.Single(Report(rack with { Items = [rack.Items[0], rack.Items[1] with { Position = null }] }).NotAssessed)
            .Missing);
    }

    [Fact]
    public void A_policy_sets_the_slack()
    {
        Passes(Rack(Pc(1.2)).Limit(Id, "slackMm", 186));
        Numbers(Only(Rack(Pc(1.5)).Limit(Id, "slackMm", 500)), 1.5, 1.514, "m");
    }

    [Fact]
    public void Missing_part_of_route_is_listed()
    {
        ReportsMissing(Rack(Pc(null)), "/items/0/earthLead/lengthM");
        ReportsMissing(Rack(Pc(2) with { Position = null }), "/items/0/position");
        ReportsMissing(Rack(Pc(2), null), "/cabinet/uprights/spacingMm");
        ReportsMissing(Rack(Pc(2, depth: null)), "/items/0/body/depthMm");
        ReportsMissing(Rack(Pc(2, depth: null, extension: null)), "/items/0/body/depthMm", "/items/0/support/extensionMm");

        // 88.9 + 225 + 450 + 200 is sure.
        Numbers(Only(Rack(Pc(0.9), null)), 0.9, 0.964, "m");
    }

    [Fact]
    public void Items_without_a_stud_have_no_lead_to_judge() => Passes(Rack(Pc(0.1) with { EarthStud = false }));
}
