using RackCheck.Model;
using RackCheck.Rules.Depth;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Depth;

public sealed class RearPduClashTests : RuleTests<RearPduClash>
{
    private static Item Pc(double? depth = 526) => Unit("wave-pc", 4).At(10).Body(depth: depth).Room(40, 75);

    private static RackDescription Stripped(double width = 600, PduMounting? mounting = PduMounting.Vertical) =>
        EmptyRack(widthMm: width).Uprights(setback: 100, spacing: 600).With(Strip("across", PduMounting.Horizontal, 40), Strip("strip", mounting));

    [Fact]
    public void Item_ending_at_rear_uprights_passes() => Passes(Stripped().With(Pc(525)));

    [Fact]
    public void Item_past_rear_uprights_is_warning()
    {
        var finding = Only(Stripped().With(Pc()));
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal(["/items/0", "/pdus/1", "/cabinet/uprights/spacingMm"], finding.Pointers);
        Numbers(finding, 601, 600, "mm");
        Assert.Equal("strip", finding.MessageData["pdu"].Text);
    }

    [Fact]
    public void Rack_without_vertical_pdu_passes() => Passes(Stripped(mounting: PduMounting.Horizontal).With(Pc()));

    [Fact]
    public void Pdu_mounting_missing_is_not_assessed() => ReportsMissing(Stripped(mounting: null).With(Pc()), "/pdus/1/mounting");

    [Theory]
    [InlineData(642.6, 0)] // (642.6 - 482.6) / 2 - 20 = 60
    [InlineData(642, 1)]
    [InlineData(800, 0)]
    public void Side_channel_wide_enough_passes(double width, int count) => Assert.Equal(count, Findings(Stripped(width).With(Pc())).Count);

    [Theory]
    [InlineData(38.7, 0)] // the channel of a cabinet 600 wide
    [InlineData(38.8, 1)]
    public void Policy_sets_pdu_width(double width, int count) =>
        Assert.Equal(count, Findings(Stripped().With(Pc()).Limit(Id, "pduWidthMm", width)).Count);

    [Fact]
    public void Rear_items_and_panels_are_not_checked() =>
        Passes(Stripped().With(Pc() with { Position = new Position { U = 10, Face = Face.Rear } }, Plate("plate", 1, 20)));

    [Fact]
    public void Depth_and_spacing_missing_are_not_assessed()
    {
        ReportsMissing(Stripped().With(Pc(null)), "/items/0/body/depthMm");
        ReportsMissing(Stripped().Uprights(setback: 100).With(Pc(null)), "/cabinet/uprights/spacingMm", "/items/0/body/depthMm");
        Passes(Stripped(800).Uprights(setback: 100).With(Pc(null)));
    }

    [Fact]
    public void Rear_uprights_move_behind_deepest_item()
    {
        var rack = Stripped().With(Pc(), Unit("flume-daq", 4).At(20).Body(depth: 560).Room(40, 75));
        Assert.Equal(2, Findings(rack).Count);
        Assert.Equal(650, Remedied(rack, Findings(rack)[0]).Cabinet!.Uprights!.SpacingMm);
    }

    [Fact]
    public void Fixed_rear_uprights_need_wider_cabinet()
    {
        var rack = Stripped().With(Pc(), Unit("gauge-amp", 1).At(30, Face.Rear).Body(depth: 50).Room(40, 25));
        Assert.Equal(800, Remedied(rack, Only(rack)).Cabinet!.WidthMm);
    }

    [Fact]
    public void Pdu_wider_than_any_channel_moves_uprights_only() =>
        Assert.Single(Only(Stripped().With(Pc()).Limit(Id, "pduWidthMm", 200)).Remedies);
}
