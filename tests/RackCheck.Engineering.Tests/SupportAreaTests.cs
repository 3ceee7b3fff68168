namespace RackCheck.Engineering.Tests;

public sealed class SupportAreaTests
{
    [Theory]
    [InlineData(600, 1000, 0, 0, 0, 1000, -300, 300)]
    [InlineData(600, 1000, 30, 0, 30, 970, -270, 270)] // common practice: castors reduce each side by 30
    [InlineData(800, 1200, 30, 250, -250, 1170, -370, 370)] // the stabiliser is the front edge, whatever the castor inset
    [InlineData(800, 1200, 0, 250, -250, 1200, -400, 400)]
    public void Support_area_is_footprint_less_inset(
        double width, double depth, double inset, double stabiliser, double front, double rear, double left, double right)
    {
        var area = SupportArea.Under(width, depth, inset, stabiliser);
        Assert.Equal(new SupportArea(front, rear, left, right), area);
        Assert.Equal((right - left, rear - front), (area.WidthMm, area.DepthMm));
    }

    [Theory]
    [InlineData(400, 0, SupportSide.Left)] // 270 to each side: the first of the two
    [InlineData(400, 10, SupportSide.Right)] // 260
    [InlineData(400, -10, SupportSide.Left)]
    [InlineData(200, 0, SupportSide.Front)] // 170
    [InlineData(800, 0, SupportSide.Rear)] // 170
    [InlineData(-20, 0, SupportSide.Front)] // beyond the front edge
    public void Nearest_edge_has_smallest_distance(double x, double y, SupportSide nearest)
    {
        var area = SupportArea.Under(600, 1000, SupportArea.CastorInsetMm);
        var centre = new PointMass(x, y, 900, 100);
        Assert.Equal(nearest, area.Nearest(centre));
        Assert.All(Enum.GetValues<SupportSide>(), s => Assert.True(area.DistanceMm(nearest, centre) <= area.DistanceMm(s, centre)));
    }

    [Fact]
    public void Opposite_distances_add_up_to_area()
    {
        var area = SupportArea.Under(800, 1200, 30, 250);
        var centre = new PointMass(432.1, -65.4, 900, 100);
        Assert.Equal(area.DepthMm, area.DistanceMm(SupportSide.Front, centre) + area.DistanceMm(SupportSide.Rear, centre), 1e-9);
        Assert.Equal(area.WidthMm, area.DistanceMm(SupportSide.Left, centre) + area.DistanceMm(SupportSide.Right, centre), 1e-9);
    }

    [Fact]
    public void Unknown_edge_throws() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => SupportArea.Under(600, 1000).DistanceMm((SupportSide)7, default));

    [Theory]
    [InlineData(0, 1000, 0, 0)]
    [InlineData(600, -1, 0, 0)]
    [InlineData(600, 1000, -1, 0)]
    [InlineData(600, 1000, 300, 0)]
    [InlineData(600, 1000, 30, -1)]
    [InlineData(double.NaN, 1000, 0, 0)]
    [InlineData(600, double.PositiveInfinity, 0, 0)]
    [InlineData(600, 1000, double.NaN, 0)]
    [InlineData(600, 1000, 0, double.NaN)]
    public void Dimension_out_of_range_throws(double width, double depth, double inset, double stabiliser) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => SupportArea.Under(width, depth, inset, stabiliser));
}
