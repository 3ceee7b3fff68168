namespace RackCheck.Engineering.Tests;

public sealed class DoorLeavesTests
{
    [Theory]
    [InlineData(600, 1, 600)] // geometry: the leaves together close the front
    [InlineData(800, 1, 800)]
    [InlineData(800, 2, 400)]
    [InlineData(600, 2, 300)]
    public void Leaf_is_share_of_the_width(double width, int leaves, double leaf) => Assert.Equal(leaf, DoorLeaves.WidthMm(width, leaves));

    [Theory]
    [InlineData(600, 1, -300)] // statics: the centre of a leaf is at its middle
    [InlineData(600, 2, -150)]
    [InlineData(800, 1, -400)]
    public void Open_door_acts_half_a_leaf_in_front(double width, int leaves, double x) =>
        Assert.Equal(new PointMass(x, 0, 900, 20), DoorLeaves.Open(20, width, leaves, 900));

    [Theory]
    [InlineData(0, 1, 1)]
    [InlineData(600, 0, 1)]
    [InlineData(600, 3, 1)]
    [InlineData(600, 1, -1)]
    [InlineData(double.NaN, 1, 1)]
    public void Out_of_range_throws(double width, int leaves, double kilograms) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => DoorLeaves.Open(kilograms, width, leaves, 900));
}
