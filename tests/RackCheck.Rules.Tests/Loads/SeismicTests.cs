using RackCheck.Model;
using RackCheck.Rules.Loads;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;
using static RackCheck.Testing.LoadRacks;

namespace RackCheck.Rules.Tests.Loads;

public sealed class SeismicTests : RuleTests<Seismic>
{
    private static RackDescription At(bool? seismic, BaseStyle? style) => EmptyRack().Base(style) with { Site = new Site { Seismic = seismic } };

    // Common practice, no source.
    [Theory]
    [InlineData(BaseStyle.Castors)]
    [InlineData(BaseStyle.Feet)]
    [InlineData(BaseStyle.Plinth)]
    [InlineData(null)]
    public void Rack_that_is_not_bolted_is_warning(BaseStyle? style)
    {
        var rack = At(true, style);
        var finding = Only(rack);
        Assert.Equal((Severity.Warning, true), (finding.Severity, finding.Safety));
        Assert.Equal(["/cabinet/base/style", "/site/seismic"], finding.Pointers);
        Assert.Equal(BaseStyle.Bolted, Remedied(rack, finding).Cabinet!.Base!.Style);
    }

    [Theory]
    [InlineData(BaseStyle.Bolted)]
    [InlineData(BaseStyle.Wall)]
    public void Fixed_rack_passes(BaseStyle style) => Passes(At(true, style));

    [Theory]
    [InlineData(false)]
    [InlineData(null)]
    public void Other_sites_are_not_checked(bool? seismic) => Passes(At(seismic, BaseStyle.Feet));

    [Fact]
    public void Rack_without_site_passes() => Passes(EmptyRack());
}
