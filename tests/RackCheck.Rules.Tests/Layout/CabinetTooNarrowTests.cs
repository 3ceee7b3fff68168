using RackCheck.Model;
using RackCheck.Rules.Layout;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Layout;

public sealed class CabinetTooNarrowTests : RuleTests<CabinetTooNarrow>
{
    private static RackDescription Rack(double width, double? opening = null) => EmptyRack(widthMm: width).Cabinet(c => c with
    {
        Uprights = (c.Uprights ?? new Uprights()) with { OpeningMm = opening },
    }).With(Unit("wave-pc", 4).At(10));

    [Fact]
    public void Cabinet_narrower_than_a_panel_is_error()
    {
        Passes(Rack(482.6)); // IEC 60297-3-100: 482.6 mm
        var rack = Rack(480);
        var finding = Only(rack);
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Equal(["/cabinet/widthMm"], finding.Pointers);
        Numbers(finding, 480, 482.6, "mm");
        Assert.Equal(600, Remedied(rack, finding).Cabinet!.WidthMm);
    }

    [Fact]
    public void Width_beyond_usual_ones_is_that_of_the_opening()
    {
        var rack = Rack(810, 900);
        Assert.Equal(900, Remedied(rack, Only(rack)).Cabinet!.WidthMm);
    }

    [Fact]
    public void Cabinet_narrower_than_its_opening_is_error()
    {
        Passes(Rack(600, 600));
        var rack = Rack(600, 610);
        var finding = Only(rack);
        Assert.Equal(["/cabinet/widthMm", "/cabinet/uprights/openingMm"], finding.Pointers);
        Numbers(finding, 600, 610, "mm");
        Assert.Equal(800, Remedied(rack, finding).Cabinet!.WidthMm);
    }
}
