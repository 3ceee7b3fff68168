using RackCheck.Model;
using RackCheck.Rules.Depth;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Depth;

public sealed class SupportSpanTests : RuleTests<SupportSpan>
{
    private static Item Railed(string id, double? min, double? max, SupportStyle style = SupportStyle.Slides, int unit = 10) =>
        Unit(id, 4).At(unit).Body(depth: 450).Room(40, 75).On(style, min: min, max: max);

    [Theory]
    [InlineData(500)]
    [InlineData(600)]
    [InlineData(700)]
    public void Rails_in_range_pass(double spacing) => Passes(EmptyRack().Uprights(spacing: spacing).With(Railed("wave-pc", 500, 700)));

    [Theory]
    [InlineData(499.5, 500, "/items/0/support/minSpacingMm")]
    [InlineData(700.5, 700, "/items/0/support/maxSpacingMm")]
    public void Rails_out_of_range_are_error(double spacing, double limit, string culprit)
    {
        var finding = Only(EmptyRack().Uprights(spacing: spacing).With(Railed("wave-pc", 500, 700)));
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Equal([culprit, "/cabinet/uprights/spacingMm"], finding.Pointers);
        Numbers(finding, spacing, limit, "mm");
    }

    [Fact]
    public void Runners_are_checked() => Only(EmptyRack().Uprights(spacing: 800).With(Railed("wave-pc", 500, 700, SupportStyle.Runners)));

    [Theory]
    [InlineData(SupportStyle.Panel)]
    [InlineData(SupportStyle.Shelf)]
    public void Panels_and_shelves_are_not_checked(SupportStyle style) => Passes(EmptyRack().Uprights(spacing: 800).With(Railed("wave-pc", 500, 700, style)));

    [Fact]
    public void Range_limit_missing_is_not_assessed()
    {
        ReportsMissing(EmptyRack().Uprights(spacing: 600).With(Railed("wave-pc", null, null)), "/items/0/support/maxSpacingMm",
            "/items/0/support/minSpacingMm");
        var report = Report(EmptyRack().Uprights(spacing: 800).With(Railed("wave-pc", null, 700)));
        Numbers(Assert.Single(report.Findings), 800, 700, "mm");
        Assert.Equal(["/items/0/support/minSpacingMm"], Assert.Single(report.NotAssessed).Missing);
    }

    [Fact]
    public void Spacing_missing_passes_where_all_rails_fit() =>
        Passes(EmptyRack().With(Railed("wave-pc", 500, 700), Railed("gauge-pc", 650, 900, unit: 20)));

    [Fact]
    public void Rails_without_common_spacing_are_errors()
    {
        var rack = EmptyRack().With(Railed("wave-pc", 500, 640), Railed("gauge-pc", 650, 900, unit: 20), Railed("flume-daq", 700, 900, unit: 30));
        var findings = Findings(rack);
        Assert.Equal(
            [["/items/1/support/minSpacingMm", "/items/0/support/maxSpacingMm"], ["/items/2/support/minSpacingMm", "/items/0/support/maxSpacingMm"]],
            findings.Select(f => f.Pointers));
        Numbers(findings[0], 650, 640, "mm");
        Numbers(findings[1], 700, 640, "mm");
    }

    [Theory]
    [InlineData(910, false)] // 1000 - 25 up to the rear door, less 25 + 40 up to the front uprights
    [InlineData(911, true)]
    public void Spacing_is_limited_by_rear_door(double min, bool found)
    {
        var rack = EmptyRack().With(Railed("wave-pc", min, 1200));
        if (!found)
        {
            Passes(rack);
            return;
        }

        var finding = Only(rack);
        Assert.Equal(["/items/0/support/minSpacingMm", "/cabinet/depthMm"], finding.Pointers);
        Numbers(finding, 911, 910, "mm");
    }

    [Fact]
    public void Fingerprint_does_not_depend_on_cabinet_depth()
    {
        Item[] items = [Railed("wave-pc", 400, 560), Railed("gauge-pc", 600, 900, unit: 20)];
        Assert.Equal(Only(EmptyRack(depthMm: 600).With(items)).Fingerprint, Only(EmptyRack(depthMm: 1000).With(items)).Fingerprint);
    }

    [Fact]
    public void Rear_uprights_move_to_next_suitable_hole()
    {
        var rack = EmptyRack().Uprights(setback: 75, spacing: 720, pitch: 25).With(Railed("wave-pc", 500, 700), Railed("gauge-pc", 650, 800, unit: 20));
        Assert.Equal(695, Remedied(rack, Only(rack)).Cabinet!.Uprights!.SpacingMm);
    }

    [Theory]
    [InlineData(650, 800)] // other rails that do not reach there
    [InlineData(705, 800)]
    public void Rear_uprights_stay_where_other_rails_need_them(double min, double max)
    {
        var rack = EmptyRack().Uprights(setback: 75, spacing: 720, pitch: 100).With(Railed("wave-pc", 500, 700), Railed("gauge-pc", min, max, unit: 20));
        var remedied = Remedied(rack, Only(rack));
        Assert.Equal(720, remedied.Cabinet!.Uprights!.SpacingMm);
        Assert.Equal(720, remedied.Items[0].Support!.MaxSpacingMm);
    }

    [Fact]
    public void Rear_uprights_with_equipment_stay()
    {
        var rack = EmptyRack().Uprights(setback: 75, spacing: 720).With(
            Railed("wave-pc", 500, 700), Unit("gauge-amp", 1).At(30, Face.Rear).Body(depth: 50).Room(40, 25));
        Assert.Equal(720, Remedied(rack, Only(rack)).Items[0].Support!.MaxSpacingMm);
        var strip = EmptyRack().Uprights(setback: 75, spacing: 720).With(Railed("wave-pc", 500, 700)).With(
            Strip("strip", PduMounting.Horizontal, 30, Face.Rear));
        Assert.Equal(720, Remedied(strip, Only(strip)).Items[0].Support!.MaxSpacingMm);
    }

    [Fact]
    public void Rear_uprights_stay_inside_cabinet()
    {
        var rack = EmptyRack(depthMm: 800).Uprights(setback: 75, spacing: 690).With(Railed("wave-pc", 710, 900));
        Assert.Equal(690, Remedied(rack, Only(rack)).Items[0].Support!.MinSpacingMm);
    }

    [Fact]
    public void Rear_uprights_stay_inside_cabinet_without_setback()
    {
        // Handles of 75 need a setback of at least 100; 100 + 450 is past the rear door at 490.
        var rack = EmptyRack(depthMm: 600).Uprights(spacing: 300).Cabinet(c => c with { RearDoor = new Door { Style = DoorStyle.Solid, DepthMm = 110 } })
            .With(Unit("flume-daq", 4).At(20).Body(depth: 450).Room(40, 75), Unit("wave-pc", 4).At(10).Room(75).On(SupportStyle.Runners, min: 450, max: 700));
        Assert.Equal(300, Remedied(rack, Only(rack)).Items[1].Support!.MinSpacingMm);
    }

    [Fact]
    public void Reversed_range_is_corrected_at_both_ends()
    {
        var rack = EmptyRack().Uprights(setback: 75, spacing: 600).With(Railed("wave-pc", 700, 500));
        var support = Remedied(rack, Only(rack)).Items[0].Support!;
        Assert.Equal((600, 600), (support.MinSpacingMm, support.MaxSpacingMm));
        var movable = EmptyRack().With(Railed("wave-pc", 700, 500));
        Remedied(movable, Only(movable));
    }

    [Fact]
    public void Doors_deeper_than_cabinet_have_valid_remedy()
    {
        var door = new Door { Style = DoorStyle.Solid, DepthMm = 500 };
        var rack = EmptyRack(depthMm: 600).Cabinet(c => c with { FrontDoor = door, RearDoor = door }).With(Railed("wave-pc", 450, 700));
        Numbers(Only(rack), 450, 0, "mm");
        Remedied(rack, Only(rack));
    }
}
