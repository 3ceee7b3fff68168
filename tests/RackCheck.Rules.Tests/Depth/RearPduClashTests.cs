using RackCheck.Model;
using RackCheck.Rules.Depth;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Depth;

public sealed class RearPduClashTests : RuleTests<RearPduClash>
{
    private static Item Pc(double? depth = 601, double? width = 450, string id = "wave-pc", int unit = 10) =>
        Unit(id, 4).At(unit).Body(width: width, depth: depth).Room(40, 75);

    private static RackDescription Stripped(double width = 600, PduMounting? mounting = PduMounting.Vertical) =>
        EmptyRack(widthMm: width).Uprights(setback: 100, spacing: 600).With(Strip("across", PduMounting.Horizontal, 40), Strip("strip", mounting));

    [Fact]
    public void Body_ending_at_rear_uprights_passes() => Passes(Stripped().With(Pc(600)));

    [Theory]
    [InlineData(600, 448, 0)] // common practice: (600 - 448)/2 - 20 = 56
    [InlineData(600, 449, 1)]
    [InlineData(600, 440, 0)]
    [InlineData(602, 450, 0)]
    [InlineData(800, 450, 0)]
    public void Width_beside_the_body_decides(double cabinet, double body, int count) =>
        Assert.Equal(count, Findings(Stripped(cabinet).With(Pc(width: body))).Count);

    [Fact]
    public void Body_past_rear_uprights_is_warning()
    {
        var finding = Only(Stripped().With(Pc()));
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Equal(["/pdus/1", "/items/0", "/cabinet/uprights/spacingMm"], finding.Pointers);
        Numbers(finding, 55, 56, "mm");
        Assert.Equal("(600 - 450) / 2 - 20 = 55 < 56; 601 > 600", finding.Calculation);
        Assert.Equal("strip", finding.MessageData["pdu"].Text);
    }

    [Fact]
    public void Cables_are_soft() => Passes(Stripped().With(Pc(590)));

    [Fact]
    public void Each_pdu_is_one_finding()
    {
        var rack = Stripped().With(Strip("strip-2", PduMounting.Vertical)).With(
            Pc(), Pc(id: "flume-daq", unit: 20, width: 449), Pc(300, id: "gauge-amp", unit: 30));
        var findings = Findings(rack);
        Assert.Equal(["strip", "strip-2"], findings.Select(f => f.MessageData["pdu"].Text).Order());
        Assert.All(findings, f => Assert.Equal("flume-daq, wave-pc", f.MessageData["items"].ToString()));
    }

    [Fact]
    public void Rack_without_vertical_pdu_passes() => Passes(Stripped(mounting: PduMounting.Horizontal).With(Pc()));

    [Fact]
    public void Pdu_mounting_missing_is_not_assessed() => ReportsMissing(Stripped(mounting: null).With(Pc()), "/pdus/1/mounting");

    [Theory]
    [InlineData(55, 0)]
    [InlineData(55.1, 1)]
    public void Policy_sets_pdu_width(double width, int count) =>
        Assert.Equal(count, Findings(Stripped().With(Pc()).Limit(Id, "pduWidthMm", width)).Count);

    [Fact]
    public void Rear_items_panels_and_shelves_of_usual_width_pass() =>
        Passes(Stripped().With(Pc() with { Position = new Position { U = 10, Face = Face.Rear } }, Plate("plate", 1, 20), Shelf("tray", 30, depth: 700)));

    [Fact]
    public void Width_depth_and_spacing_missing_are_not_assessed_where_they_decide()
    {
        ReportsMissing(Stripped().With(Pc(null)), "/items/0/body/depthMm");
        ReportsMissing(Stripped().With(Pc(width: null)), "/items/0/body/widthMm");
        ReportsMissing(Stripped().Uprights(setback: 100).With(Pc(null)), "/cabinet/uprights/spacingMm", "/items/0/body/depthMm");
        Passes(Stripped().With(Pc(500, null)));
        Passes(Stripped().With(Pc(null, 440)));
        Passes(Stripped(800).Uprights(setback: 100).With(Pc(null, null)));
    }

    [Fact]
    public void Rear_uprights_move_behind_deepest_body()
    {
        var rack = Stripped().With(Pc(), Pc(640, id: "flume-daq", unit: 20));
        Assert.Equal(650, Remedied(rack, Only(rack)).Cabinet!.Uprights!.SpacingMm);
    }

    [Fact]
    public void Fixed_rear_uprights_need_wider_cabinet()
    {
        var rack = Stripped().With(Pc(), Unit("gauge-amp", 1).At(30, Face.Rear).Body(depth: 50).Room(40, 25));
        Assert.Equal(800, Remedied(rack, Only(rack)).Cabinet!.WidthMm);
    }
}
