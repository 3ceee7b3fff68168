using CsCheck;

namespace RackCheck.Engineering.Tests;

public sealed class CableFillTests
{
    [Theory]
    [InlineData(6.0, 24, 678.5840131753953)] // checks.csv 12-01
    [InlineData(6.5, 48, 1592.787475370025)] // checks.csv 12-02
    [InlineData(8.0, 100, 5026.548245743669)] // checks.csv 12-03
    [InlineData(7.5, 24, 1060.2875205865553)] // checks.csv 12-04
    [InlineData(7.5, 0, 0)]
    public void Cables_take_the_area_of_their_circles(double diameter, int count, double area) =>
        Assert.Equal(area, CableFill.AreaMm2(diameter, count), 1e-9);

    [Theory]
    [InlineData(6.2, 24, 40, 1811.4423240598746)] // checks.csv 12-07
    [InlineData(7.5, 48, 40, 5301.437602932776)] // checks.csv 12-08
    [InlineData(7.5, 48, 25, 8482.300164692442)] // checks.csv 12-09
    [InlineData(8.0, 100, 25, 20106.192982974677)] // checks.csv 12-10
    public void A_channel_of_the_needed_section_is_filled_to_the_limit(double diameter, int count, double fill, double channel)
    {
        var area = CableFill.AreaMm2(diameter, count);
        Assert.Equal(channel, CableFill.NeededMm2(area, fill), 1e-8);
        Assert.Equal(fill, CableFill.Percent(area, channel), 1e-9);
    }

    [Theory]
    [InlineData(60 * 60, 6.2, 40, 47)] // checks.csv 12-11
    [InlineData(100 * 50, 7.5, 40, 45)] // checks.csv 12-12
    [InlineData(100 * 100, 7.5, 50, 113)] // checks.csv 12-13
    public void So_many_cables_and_no_more_stay_under_the_limit(double channel, double diameter, double fill, int most)
    {
        Assert.True(CableFill.Percent(CableFill.AreaMm2(diameter, most), channel) <= fill);
        Assert.True(CableFill.Percent(CableFill.AreaMm2(diameter, most + 1), channel) > fill);
    }

    [Theory]
    [InlineData(600, 7740)] // handbook H12: ((600 - 482.6)/2 - 20) x 100 x 2
    [InlineData(800, 27740)] // handbook H12
    [InlineData(700, 17740)] // handbook H12
    [InlineData(522.6, 0)]
    [InlineData(500, 0)]
    public void The_side_channels_are_what_is_left_beside_the_panel(double width, double area) =>
        Assert.Equal(area, CableFill.SideChannelsMm2(width), 1e-6);

    [Fact]
    public void A_wider_cabinet_is_never_fuller() =>
        Gen.Select(Gen.Double[530, 1200], Gen.Double[0, 300], Gen.Double[1, 30000]).Sample((width, more, area) =>
            Assert.True(CableFill.Percent(area, CableFill.SideChannelsMm2(width + more)) <= CableFill.Percent(area, CableFill.SideChannelsMm2(width))));

    [Theory]
    [InlineData(6.0, 24)] // checks.csv 12-14
    [InlineData(6.5, 26)] // checks.csv 12-15
    [InlineData(7.5, 30)] // checks.csv 12-16
    [InlineData(8.0, 32)] // checks.csv 12-17
    public void A_cable_bends_to_four_of_its_diameters(double diameter, double radius) => Assert.Equal(radius, CableFill.BendRadiusMm(diameter), 1e-12);

    [Fact]
    public void Limits_are_those_of_the_handbook() =>
        Assert.Equal((40, 100, 4), (CableFill.MostPercent, CableFill.ChannelDepthMm, CableFill.BendDiameters)); // handbook H12

    [Theory]
    [InlineData(0, 1)]
    [InlineData(6, -1)]
    [InlineData(double.NaN, 1)]
    [InlineData(double.PositiveInfinity, 1)]
    public void A_cable_that_is_none_throws(double diameter, int count) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => CableFill.AreaMm2(diameter, count));

    [Theory]
    [InlineData(0)]
    [InlineData(double.NaN)]
    public void A_size_that_is_none_throws(double size)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => CableFill.BendRadiusMm(size));
        Assert.Throws<ArgumentOutOfRangeException>(() => CableFill.SideChannelsMm2(size));
    }

    [Theory]
    [InlineData(-1, 7740)]
    [InlineData(100, 0)]
    [InlineData(double.NaN, 7740)]
    [InlineData(100, double.NaN)]
    public void A_fill_of_no_channel_throws(double area, double channel) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => CableFill.Percent(area, channel));

    [Theory]
    [InlineData(-1, 40)]
    [InlineData(100, 0)]
    [InlineData(100, 101)]
    [InlineData(100, double.NaN)]
    public void A_limit_that_is_none_throws(double area, double fill) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => CableFill.NeededMm2(area, fill));
}
