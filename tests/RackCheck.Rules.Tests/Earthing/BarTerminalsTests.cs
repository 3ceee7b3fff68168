using RackCheck.Model;
using RackCheck.Rules.Earthing;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.EarthRacks;

namespace RackCheck.Rules.Tests.Earthing;

public sealed class BarTerminalsTests : RuleTests<BarTerminals>
{
    private static RackDescription Eight(int? terminals) =>
        Earthed(terminals).With([.. Enumerable.Range(0, 8).Select(i => Studded($"gauge-amp-{i}", 1 + (2 * i)))]);

    [Fact]
    public void Thirteen_leads_on_ten_terminals_is_error()
    {
        // Practice: bonding of frame, doors and panels.
        var rack = Eight(10).Cabinet(c => c with { EarthBar = c.EarthBar! with { LengthMm = 400, CrossSectionMm2 = 75 } });
        var finding = Only(rack);
        Assert.Equal(Severity.Error, finding.Severity);
        Numbers(finding, 10, 13, "terminals");
        Assert.Equal(["/cabinet/earthBar/terminals"], finding.Pointers);
        Assert.Equal("8 + 4 + 1 = 13 > 10", finding.Calculation);
        Assert.Equal(new EarthBar { Terminals = 14, LengthMm = 560, CrossSectionMm2 = 75 }, Remedied(rack, finding).Cabinet!.EarthBar);
    }

    [Theory]
    [InlineData(12, Severity.Error)]
    [InlineData(13, Severity.Advice)]
    [InlineData(14, null)]
    public void One_terminal_is_to_be_left_free(int terminals, Severity? severity) =>
        Assert.Equal(severity, Findings(Eight(terminals)).SingleOrDefault()?.Severity);

    [Fact]
    public void Advice_and_error_are_the_same_finding()
    {
        var advice = Only(Eight(13));
        Numbers(advice, 0, 1, "terminals");
        Assert.Equal("8 + 4 + 1 = 13; 13 - 13 = 0 < 1", advice.Calculation);
        Assert.Equal(Only(Eight(0)).Fingerprint, advice.Fingerprint);
        Assert.Equal(14, Remedied(Eight(13), advice).Cabinet!.EarthBar!.Terminals);
        Assert.Equal(14, Remedied(Eight(0), Only(Eight(0))).Cabinet!.EarthBar!.Terminals);
    }

    [Fact]
    public void Parts_that_are_not_there_need_no_terminal()
    {
        Passes(Eight(13).Cabinet(c => c with { SidePanels = false }));
        Passes(Eight(12).Doors(DoorStyle.None, DoorStyle.None));
        Assert.Single(Findings(Eight(13).Doors(DoorStyle.Solid, DoorStyle.Perforated)));
    }

    [Theory]
    [InlineData(RoofStyle.Vented, 2, 1)]
    [InlineData(null, 2, 1)] // fans in a roof go through it
    [InlineData(RoofStyle.Vented, 0, 0)]
    [InlineData(RoofStyle.Solid, 2, 0)]
    public void A_vented_roof_with_fans_needs_one(RoofStyle? style, int fans, int count)
    {
        var rack = Eight(14).Cabinet(c => c with { Roof = new Roof { Style = style } }) with
        {
            Cooling = new Model.Cooling { RoofFans = [new FanSet { Count = fans, FreeFlowM3h = 160 }] },
        };
        Assert.Equal(count, Findings(rack).Count);
    }

    [Fact]
    public void Policy_sets_spare_terminals()
    {
        var rack = Eight(14).Limit(Id, "spareTerminals", 2);
        Numbers(Only(rack), 1, 2, "terminals");
        Assert.Equal(15, Remedied(rack, Only(rack)).Cabinet!.EarthBar!.Terminals);
    }

    [Fact]
    public void The_number_of_terminals_is_asked_for_where_there_is_a_bar()
    {
        ReportsMissing(Eight(null), "/cabinet/earthBar/terminals");
        Passes(Eight(null).WithoutBar());
    }
}
