using RackCheck.Model;
using RackCheck.Rules.Earthing;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.EarthRacks;

namespace RackCheck.Rules.Tests.Earthing;

public sealed class ResistanceTests : RuleTests<Resistance>
{
    private static RackDescription Rack(double? section, double? length) => Earthed().With(Studded("gauge-amp", 1, section, length));

    [Theory]
    [InlineData(14.5, 0)] // IEC 60028: 14.5003 m
    [InlineData(14.51, 1)]
    [InlineData(15, 1)]
    public void Lead_of_2_5_mm2_at_limit_passes(double length, int count) => Assert.Equal(count, Findings(Rack(2.5, length)).Count);

    [Fact]
    public void Resistance_above_limit_is_error()
    {
        var rack = Rack(2.5, 15);
        var finding = Only(rack);
        Numbers(finding, 0.10345, 0.1, "ohm"); // 0.017241 x 15 / 2.5 = 0.103446
        Assert.Equal("0.017241 x 15 / 2.5 = 0.10345 > 0.1", finding.Calculation);
        Assert.Equal(["/items/0/earthLead", "/items/0/earthLead/crossSectionMm2", "/items/0/earthLead/lengthM"], finding.Pointers);
        Assert.Equal(4, Remedied(rack, finding).Items[0].EarthLead!.CrossSectionMm2);
        Assert.Empty(Remedied(rack, finding, 1).Items);
    }

    [Fact]
    public void Known_route_offers_shorter_lead()
    {
        // 44.45 down + 225 aside + 300 back + 200 slack = 769.45 mm, so 1 m.
        var rack = Rack(2.5, 15).Uprights(100, 700) is var r ? r with { Items = [r.Items[0].Body(depth: 400)] } : null!;
        Assert.Equal(1, Remedied(rack, Only(rack), 1).Items[0].EarthLead!.LengthM);
    }

    [Fact]
    public void A_policy_may_be_stricter()
    {
        // 0.017241 x 2 / 6 = 0.00575; 0.01 ohm asks for 4 mm2 at 2 m
        Passes(Rack(6, 2).Limit(Id, "pathOhm", 0.01));
        var rack = Rack(2.5, 2).Limit(Id, "pathOhm", 0.01);
        Assert.Equal(4, Remedied(rack, Only(rack)).Items[0].EarthLead!.CrossSectionMm2);
    }

    [Fact]
    public void Length_and_section_are_asked_for_where_there_is_a_stud()
    {
        ReportsMissing(Rack(null, 2), "/items/0/earthLead/crossSectionMm2");
        ReportsMissing(Rack(6, null), "/items/0/earthLead/lengthM");
        ReportsMissing(Earthed().With(Studded("gauge-amp", 1) with { EarthLead = null }), "/items/0/earthLead/crossSectionMm2", "/items/0/earthLead/lengthM");
        Passes(Earthed().With(Studded("gauge-amp", 1, 0.1, 90) with { EarthStud = null }));
    }
}
