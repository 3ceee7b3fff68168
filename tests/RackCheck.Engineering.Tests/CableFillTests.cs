using CsCheck;
using RackCheck.Testing;

namespace RackCheck.Engineering.Tests;

public sealed class CableFillTests
{
    [Theory]
    [InlineData(6.0, 24, 678.5840131753953)] // geometry
    [InlineData(6.5, 48, 1592.787475370025)] // geometry
    [InlineData(8.0, 100, 5026.548245743669)] // geometry
    [InlineData(7.5, 24, 1060.2875205865553)] // geometry
    [InlineData(7.5, 0, 0)]
    public void Area_of_cables_is_sum_of_circles(double diameter, int count, double area) =>
        Assert.Equal(area, CableFill.AreaMm2(diameter, count), 1e-9);

    [Theory]
    [InlineData(6.2, 24, 40, 1811.4423240598746)] // EN 50174
    [InlineData(7.5, 48, 40, 5301.437602932776)] // EN 50174
    [InlineData(7.5, 48, 25, 8482.300164692442)] // EN 50174
    [InlineData(8.0, 100, 25, 20106.192982974677)] // EN 50174
    public void Channel_of_required_area_is_filled_to_limit(double diameter, int count, double fill, double channel)
    {
        var area = CableFill.AreaMm2(diameter, count);
        Assert.Equal(channel, CableFill.NeededMm2(area, fill), 1e-8);
        Assert.Equal(fill, CableFill.Percent(area, channel), 1e-9);
    }

    [Theory]
    [InlineData(60 * 60, 6.2, 40, 47)] // EN 50174
    [InlineData(100 * 50, 7.5, 40, 45)] // EN 50174
    [InlineData(100 * 100, 7.5, 50, 113)] // EN 50174
    public void Maximum_number_of_cables_matches_limit(double channel, double diameter, double fill, int most)
    {
        Assert.True(CableFill.Percent(CableFill.AreaMm2(diameter, most), channel) <= fill);
        Assert.True(CableFill.Percent(CableFill.AreaMm2(diameter, most + 1), channel) > fill);
    }

    [Theory]
    [InlineData(600, 7740)] // common practice: ((600 - 482.6)/2 - 20) x 100 x 2
    [InlineData(800, 27740)] // common practice
    [InlineData(700, 17740)] // common practice
    [InlineData(522.6, 0)]
    [InlineData(500, 0)]
    public void SideChannel_area_matches_reference_values(double width, double area) =>
        Assert.Equal(area, CableFill.SideChannelsMm2(width), 1e-6);

    [Fact]
    [Trait("Kind", "property")]
    public void Fill_in_wider_cabinet_is_never_higher() =>
        Gen.Select(Gen.Double[530, 1200], Gen.Double[0, 300], Gen.Double[1, 30000]).Sample((width, more, area) =>
            Assert.True(CableFill.Percent(area, CableFill.SideChannelsMm2(width + more)) <= CableFill.Percent(area, CableFill.SideChannelsMm2(width))),
                iter: Samples.Of(1_000));

    [Theory]
    [InlineData(6.0, 24)] // ANSI/TIA-568.0
    [InlineData(6.5, 26)] // ANSI/TIA-568.0
    [InlineData(7.5, 30)] // ANSI/TIA-568.0
    [InlineData(8.0, 32)] // ANSI/TIA-568.0
    public void BendRadius_is_four_diameters(double diameter, double radius) => Assert.Equal(radius, CableFill.BendRadiusMm(diameter), 1e-12);

    [Fact]
    public void Limits_match_reference_values() =>
        Assert.Equal((40, 100, 4), (CableFill.MostPercent, CableFill.ChannelDepthMm, CableFill.BendDiameters)); // EN 50174, common practice, ANSI/TIA-568.0

    [Theory]
    [InlineData(0, 1)]
    [InlineData(6, -1)]
    [InlineData(double.NaN, 1)]
    [InlineData(double.PositiveInfinity, 1)]
    public void Cable_out_of_range_throws(double diameter, int count) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => CableFill.AreaMm2(diameter, count));

    [Theory]
    [InlineData(0)]
    [InlineData(double.NaN)]
    public void Width_or_diameter_out_of_range_throws(double size)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => CableFill.BendRadiusMm(size));
        Assert.Throws<ArgumentOutOfRangeException>(() => CableFill.SideChannelsMm2(size));
    }

    [Theory]
    [InlineData(-1, 7740)]
    [InlineData(100, 0)]
    [InlineData(double.NaN, 7740)]
    [InlineData(100, double.NaN)]
    public void Fill_out_of_range_throws(double area, double channel) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => CableFill.Percent(area, channel));

    [Theory]
    [InlineData(-1, 40)]
    [InlineData(100, 0)]
    [InlineData(100, 101)]
    [InlineData(100, double.NaN)]
    public void Limit_out_of_range_throws(double area, double fill) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => CableFill.NeededMm2(area, fill));
}
