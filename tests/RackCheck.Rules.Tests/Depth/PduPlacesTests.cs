using RackCheck.Model;
using RackCheck.Rules.Depth;
using RackCheck.Rules.Tests.Harness;
using RackCheck.Testing;
using static RackCheck.Testing.TestRacks;

namespace RackCheck.Rules.Tests.Depth;

public sealed class PduPlacesTests : RuleTests<PduPlaces>
{
    private static RackDescription Strips(int count, double? lengthMm = null, int heightU = 42) => EmptyRack(heightU, widthMm: 800)
        .With([.. Enumerable.Range(0, count).Select(i => Strip($"strip-{i}", PduMounting.Vertical) with { LengthMm = lengthMm })]);

    [Theory]
    [InlineData(4, null, 0)] // common practice: two on each side
    [InlineData(5, null, 1)]
    [InlineData(8, 933.4, 0)] // two in a place: 2 x 933.4 = 1866.8 of 42 x 44.45 = 1866.9, IEC 60297-3-100
    [InlineData(8, 934.0, 1)]
    [InlineData(9, 933.4, 1)]
    public void Two_places_on_each_side(int count, double? length, int findings) => Assert.Equal(findings, Findings(Strips(count, length)).Count);

    [Fact]
    public void Fifth_pdu_is_error_and_is_mounted_horizontally_or_removed()
    {
        var rack = Strips(5);
        var finding = Only(rack);
        Assert.Equal(Severity.Error, finding.Severity);
        Numbers(finding, 5, 4, "places");
        Assert.Equal(["/pdus/0", "/pdus/1", "/pdus/2", "/pdus/3", "/pdus/4"], finding.Pointers);
        Assert.Equal(PduMounting.Horizontal, Remedied(rack, finding).Pdus![0].Mounting);
        Assert.Equal(4, Remedied(rack, finding, 1).Pdus!.Count);
    }

    [Fact]
    public void Horizontal_pdus_take_no_place() => Passes(Strips(4).With(Strip("across", PduMounting.Horizontal, 40)));

    [Theory]
    [InlineData(24, 1066.8, 0)] // 24 x 44.45
    [InlineData(24, 1066.9, 1)]
    [InlineData(42, 1800, 0)]
    public void Pdu_is_no_longer_than_the_uprights(int heightU, double length, int count) =>
        Assert.Equal(count, Findings(Strips(1, length, heightU)).Count);

    [Fact]
    public void Too_long_pdu_needs_a_shorter_one_or_a_taller_cabinet()
    {
        var rack = Strips(1, 1800, 24);
        var finding = Only(rack);
        Assert.Equal(["/pdus/0/lengthMm", "/cabinet/heightU"], finding.Pointers);
        Assert.Equal("1800 > 24 x 44.45 = 1066.8", finding.Calculation);
        Assert.Equal(1066, Remedied(rack, finding).Pdus![0].LengthMm);
        Assert.Equal(42, Remedied(rack, finding, 1).Cabinet!.HeightU);
    }

    [Fact]
    public void Policy_lowers_the_number_of_places() => Numbers(Only(Strips(3).Limit(Id, "places", 2)), 3, 2, "places");
}
