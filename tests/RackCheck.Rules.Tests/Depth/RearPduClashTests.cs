using RackCheck.Model;
using RackCheck.Rules.Depth;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.Bays;

namespace RackCheck.Rules.Tests.Depth;

public sealed class RearPduClashTests : RuleTests<RearPduClash>
{
    private static Item Pc(double? depth = 526) => Unit("wave-pc", 4).At(10).Body(depth: depth).Room(40, 75);

    private static RackDescription Stripped(double width = 600, PduMounting? mounting = PduMounting.Vertical) =>
        Bay(widthMm: width).Uprights(setback: 100, spacing: 600).With(Strip("across", PduMounting.Horizontal, 40), Strip("strip", mounting));

    [Fact]
    public void What_ends_at_the_rear_uprights_passes() => Passes(Stripped().With(Pc(525)));

    [Fact]
    public void What_reaches_past_them_is_a_warning()
    {
        var finding = Only(Stripped().With(Pc()));
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal(["/items/0", "/pdus/1", "/cabinet/uprights/spacingMm"], finding.Pointers);
        Numbers(finding, 601, 600, "mm");
        Assert.Equal("strip", finding.MessageData["pdu"].Text);
    }

    [Fact]
    public void Without_a_vertical_unit_there_is_nothing_in_the_way() => Passes(Stripped(mounting: PduMounting.Horizontal).With(Pc()));

    [Fact]
    public void A_unit_without_a_mounting_is_asked_for_it() => Lacks(Stripped(mounting: null).With(Pc()), "/pdus/1/mounting");

    [Theory]
    [InlineData(642.6, 0)] // (642.6 - 482.6) / 2 - 20 = 60
    [InlineData(642, 1)]
    [InlineData(800, 0)]
    public void Beside_the_opening_a_unit_is_in_nobodys_way(double width, int count) => Assert.Equal(count, Findings(Stripped(width).With(Pc())).Count);

    [Theory]
    [InlineData(38.7, 0)] // the channel of a cabinet 600 wide
    [InlineData(38.8, 1)]
    public void A_policy_sets_the_width_of_the_unit(double width, int count) =>
        Assert.Equal(count, Findings(Stripped().With(Pc()).Limit(Id, "pduWidthMm", width)).Count);

    [Fact]
    public void Items_on_the_rear_uprights_and_plates_are_not_meant() =>
        Passes(Stripped().With(Pc() with { Position = new Position { U = 10, Face = Face.Rear } }, Plate("plate", 1, 20)));

    [Fact]
    public void Depth_and_spacing_are_asked_for()
    {
        Lacks(Stripped().With(Pc(null)), "/items/0/body/depthMm");
        Lacks(Stripped().Uprights(setback: 100).With(Pc(null)), "/cabinet/uprights/spacingMm", "/items/0/body/depthMm");
        Passes(Stripped(800).Uprights(setback: 100).With(Pc(null)));
    }

    [Fact]
    public void The_rear_uprights_move_behind_the_deepest_of_all()
    {
        var rack = Stripped().With(Pc(), Unit("flume-daq", 4).At(20).Body(depth: 560).Room(40, 75));
        Assert.Equal(2, Findings(rack).Count);
        Assert.Equal(650, Cured(rack, Findings(rack)[0]).Cabinet!.Uprights!.SpacingMm);
    }

    [Fact]
    public void Where_they_cannot_a_wider_cabinet_is_taken()
    {
        var rack = Stripped().With(Pc(), Unit("gauge-amp", 1).At(30, Face.Rear).Body(depth: 50).Room(40, 25));
        Assert.Equal(800, Cured(rack, Only(rack)).Cabinet!.WidthMm);
    }

    [Fact]
    public void A_unit_wider_than_any_channel_asks_for_other_uprights_only() =>
        Assert.Single(Only(Stripped().With(Pc()).Limit(Id, "pduWidthMm", 200)).Remedies);
}
