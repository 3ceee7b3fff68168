namespace RackCheck.Engineering.Tests;

public sealed class SupportAreaTests
{
    [Theory]
    [InlineData(600, 1000, 0, 0, 0, 0, 0, 1000, -300, 300)]
    [InlineData(600, 1000, 75, 75, 50, 0, 75, 925, -250, 250)] // common practice: doors 25, feet 50 inside the frame
    [InlineData(600, 1000, 25, 0, 0, 0, 25, 1000, -300, 300)] // a plinth behind a front door alone
    [InlineData(800, 1200, 75, 75, 50, 250, -250, 1125, -350, 350)] // the stabiliser is the front edge, wherever the feet are
    public void Support_area_lies_between_lines_of_feet(
        double width, double depth, double frontLine, double rearLine, double sideLine, double stabiliser, double front, double rear, double left, double right)
    {
        var area = SupportArea.Under(width, depth, frontLine, rearLine, sideLine, stabiliser);
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
        var area = SupportArea.Under(600, 1000, 30, 30, 30);
        var centre = new PointMass(x, y, 900, 100);
        Assert.Equal(nearest, area.Nearest(centre));
        Assert.All(Enum.GetValues<SupportSide>(), s => Assert.True(area.DistanceMm(nearest, centre) <= area.DistanceMm(s, centre)));
    }

    [Fact]
    public void Opposite_distances_add_up_to_area()
    {
        var area = SupportArea.Under(800, 1200, 30, 30, 30, 250);
        var centre = new PointMass(432.1, -65.4, 900, 100);
        Assert.Equal(area.DepthMm, area.DistanceMm(SupportSide.Front, centre) + area.DistanceMm(SupportSide.Rear, centre), 1e-9);
        Assert.Equal(area.WidthMm, area.DistanceMm(SupportSide.Left, centre) + area.DistanceMm(SupportSide.Right, centre), 1e-9);
    }

    [Fact]
    public void Unknown_edge_throws() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => SupportArea.Under(600, 1000, 0, 0, 0).DistanceMm((SupportSide)7, default));

    [Theory]
    [InlineData(0, 1000, 0, 0, 0, 0)]
    [InlineData(600, -1, 0, 0, 0, 0)]
    [InlineData(600, 1000, -1, 0, 0, 0)]
    [InlineData(600, 1000, 0, -1, 0, 0)]
    [InlineData(600, 1000, 0, 0, -1, 0)]
    [InlineData(600, 1000, 500, 500, 0, 0)] // no depth between the lines
    [InlineData(600, 1000, 0, 0, 300, 0)] // no width
    [InlineData(600, 1000, 30, 30, 30, -1)]
    [InlineData(double.NaN, 1000, 0, 0, 0, 0)]
    [InlineData(600, double.PositiveInfinity, 0, 0, 0, 0)]
    [InlineData(600, 1000, double.NaN, 0, 0, 0)]
    [InlineData(600, 1000, 0, 0, 0, double.NaN)]
    public void Dimension_out_of_range_throws(double width, double depth, double front, double rear, double side, double stabiliser) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => SupportArea.Under(width, depth, front, rear, side, stabiliser));
}
