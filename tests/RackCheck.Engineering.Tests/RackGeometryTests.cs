using UnitsNet;

namespace RackCheck.Engineering.Tests;

public sealed class RackGeometryTests
{
    [Theory]
    [InlineData(1, 43.65)] // IEC 60297-3-100
    [InlineData(2, 88.1)] // IEC 60297-3-100
    [InlineData(3, 132.55)] // IEC 60297-3-100
    [InlineData(4, 177.0)] // IEC 60297-3-100
    [InlineData(42, 1866.1)] // IEC 60297-3-100
    public void Panel_height_is_aperture_less_relief(int units, double millimetres) =>
        Assert.Equal(millimetres, RackGeometry.PanelHeightMm(units), 1e-9);

    [Theory]
    [InlineData(1)] // EIA-310: 43.65625
    [InlineData(4)] // EIA-310: 177.00625
    [InlineData(42)]
    public void Metric_panel_height_is_within_0_01_mm_of_inch_standard(int units)
    {
        // EIA-310: 1.75 n - 1/32 in.
        var inches = Length.FromInches((1.75 * units) - (1 / 32.0));
        Assert.InRange(inches.Millimeters - RackGeometry.PanelHeightMm(units), 0, 0.007);
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(24, 1066.8)] // EIA-310
    [InlineData(42, 1866.9)] // EIA-310
    [InlineData(47, 2089.15)] // EIA-310
    public void Aperture_height_is_multiple_of_U(int units, double millimetres) =>
        Assert.Equal(millimetres, RackGeometry.ApertureMm(units), 1e-9);

    [Theory]
    [InlineData(1, 1, 6.35)] // EIA-310
    [InlineData(1, 2, 22.225)] // EIA-310
    [InlineData(1, 3, 38.1)] // EIA-310
    [InlineData(2, 1, 50.8)] // EIA-310
    [InlineData(42, 3, 1860.55)] // EIA-310
    public void Hole_lies_in_its_U_position(int unit, int hole, double millimetres) =>
        Assert.Equal(millimetres, RackGeometry.HoleCentreMm(unit, hole), 1e-9);

    [Fact]
    public void Hole_spacing_is_625_625_and_500_thousandths_of_an_inch()
    {
        // EIA-310: 15.875, 15.875, 12.7, also across the edge of a U position.
        double[] holes = [.. from unit in Enumerable.Range(1, 42) from hole in Enumerable.Range(1, 3) select RackGeometry.HoleCentreMm(unit, hole)];
        double[] pattern = [Length.FromInches(0.625).Millimeters, Length.FromInches(0.625).Millimeters, Length.FromInches(0.5).Millimeters];
        for (var i = 1; i < holes.Length; i++)
        {
            Assert.Equal(pattern[(i - 1) % 3], holes[i] - holes[i - 1], 1e-9);
        }
    }

    [Fact]
    public void Constants_agree_with_inch_values()
    {
        // EIA-310: 1.75 in a unit, 19 in a panel.
        Assert.Equal(RackGeometry.UnitMm, Length.FromInches(1.75).Millimeters, 1e-9);
        Assert.Equal(RackGeometry.PanelWidthMm, Length.FromInches(19).Millimeters, 1e-9);
        Assert.InRange(Length.FromInches(18.3125).Millimeters, RackGeometry.HoleSpacingMm - 1.6, RackGeometry.HoleSpacingMm + 1.6);
        Assert.True(RackGeometry.OpeningMm <= Length.FromInches(17.75).Millimeters);

        // IEC 60297-3-100, value from memory: the panel is wider than the opening, and its holes lie in between.
        Assert.InRange(RackGeometry.HoleSpacingMm, RackGeometry.OpeningMm, RackGeometry.PanelWidthMm);
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(43.65, 1)] // IEC 60297-3-100
    [InlineData(43.66, 2)]
    [InlineData(100, 3)]
    [InlineData(177, 4)] // IEC 60297-3-100
    [InlineData(177.0009, 4)] // reports round to 0.001 mm
    [InlineData(177.002, 5)]
    [InlineData(1866.1, 42)] // IEC 60297-3-100
    public void Body_needs_smallest_U_height_with_sufficient_panel(double millimetres, int units) =>
        Assert.Equal(units, RackGeometry.UnitsForBody(millimetres));

    [Theory]
    [InlineData(0, 0)]
    [InlineData(44.45, 1)]
    [InlineData(44.5, 2)]
    [InlineData(133.35, 3)]
    [InlineData(1066.8, 24)] // EIA-310
    [InlineData(2089.15, 47)] // EIA-310
    public void Item_needs_smallest_U_height_with_sufficient_aperture(double millimetres, int units) =>
        Assert.Equal(units, RackGeometry.UnitsForHeight(millimetres));

    [Fact]
    public void Required_U_height_matches_search()
    {
        // In whole hundredths of a millimetre, so that the search has no rounding: 1U is 4445, the relief 80.
        for (var hundredths = 0; hundredths <= 60 * 4445; hundredths += 7)
        {
            var forHeight = Enumerable.Range(0, 70).First(n => n * 4445 >= hundredths);
            var forBody = Enumerable.Range(1, 70).First(n => (n * 4445) - 80 >= hundredths);
            Assert.Equal((forHeight, forBody), (RackGeometry.UnitsForHeight(hundredths / 100.0), RackGeometry.UnitsForBody(hundredths / 100.0)));
        }
    }

    [Fact]
    public void Slightly_higher_than_panel_or_aperture_needs_one_more_U()
    {
        for (var n = 1; n <= 60; n++)
        {
            var panel = RackGeometry.PanelHeightMm(n);
            Assert.Equal((n, n + 1), (RackGeometry.UnitsForBody(panel), RackGeometry.UnitsForBody(panel + 2e-3)));
            Assert.Equal((n, n + 1), (RackGeometry.UnitsForHeight(RackGeometry.ApertureMm(n)), RackGeometry.UnitsForHeight(RackGeometry.ApertureMm(n) + 2e-3)));
        }
    }

    [Theory]
    [InlineData(2000, 0, 42, 66.55)] // geometry: (2000 - 1866.9) / 2
    [InlineData(2000, 100, 42, 116.55)] // geometry: 100 + (2000 - 100 - 1866.9) / 2
    [InlineData(1200, 80, 24, 106.6)] // geometry: 80 + (1200 - 80 - 1066.8) / 2
    [InlineData(1866.9, 0, 42, 0)]
    public void Mounting_space_is_centred_between_base_and_roof(double height, double baseHeight, int units, double edge) =>
        Assert.Equal(edge, RackGeometry.LowerEdgeMm(height, baseHeight, units), 1e-9);

    [Theory]
    [InlineData(100, 20, 1, 966.775)] // geometry: 100 + 44.45 x 19.5
    [InlineData(66.55, 1, 4, 155.45)] // geometry: 66.55 + 44.45 x 2
    [InlineData(66.55, 42, 1, 1911.225)] // geometry: 66.55 + 44.45 x 41.5
    [InlineData(0, 1, 0, 0)]
    public void Centre_is_half_item_height_above_lowest_U(double edge, int unit, int height, double centre) =>
        Assert.Equal(centre, RackGeometry.CentreMm(edge, unit, height), 1e-9);

    [Fact]
    public void Centre_is_midway_between_outer_holes()
    {
        for (var (unit, height) = (1, 1); unit <= 30; (unit, height) = (unit + 3, height + 1))
        {
            var lowest = RackGeometry.HoleCentreMm(unit, 1);
            var highest = RackGeometry.HoleCentreMm(unit + height - 1, 3);
            Assert.Equal((lowest + highest) / 2, RackGeometry.CentreMm(0, unit, height), 1e-9);
        }
    }

    [Fact]
    public void Argument_out_of_range_throws()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => RackGeometry.PanelHeightMm(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => RackGeometry.ApertureMm(-1));
        Assert.Throws<ArgumentOutOfRangeException>(() => RackGeometry.HoleCentreMm(0, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => RackGeometry.HoleCentreMm(1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => RackGeometry.HoleCentreMm(1, 4));
        Assert.Throws<ArgumentOutOfRangeException>(() => RackGeometry.LowerEdgeMm(1800, 0, 42));
        Assert.Throws<ArgumentOutOfRangeException>(() => RackGeometry.LowerEdgeMm(double.NaN, 0, 42));
        Assert.Throws<ArgumentOutOfRangeException>(() => RackGeometry.LowerEdgeMm(2000, -1, 42));
        Assert.Throws<ArgumentOutOfRangeException>(() => RackGeometry.LowerEdgeMm(2000, 0, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => RackGeometry.CentreMm(0, 0, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => RackGeometry.CentreMm(0, 1, -1));
    }

    [Theory]
    [InlineData(-0.01)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Height_out_of_range_throws(double millimetres)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => RackGeometry.UnitsForBody(millimetres));
        Assert.Throws<ArgumentOutOfRangeException>(() => RackGeometry.UnitsForHeight(millimetres));
    }
}
