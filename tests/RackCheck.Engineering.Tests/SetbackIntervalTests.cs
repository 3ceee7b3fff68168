namespace RackCheck.Engineering.Tests;

public sealed class SetbackIntervalTests
{
    [Theory]
    [InlineData(65, 250, false)]
    [InlineData(65, 65, false)]
    [InlineData(65, 64.9999999, false)] // within the tolerance
    [InlineData(65, 64.99, true)]
    public void Interval_with_crossed_bounds_is_empty(double least, double greatest, bool empty) =>
        Assert.Equal(empty, new SetbackInterval(least, greatest).IsEmpty);

    [Theory]
    [InlineData(64.99, false)]
    [InlineData(65, true)]
    [InlineData(120, true)]
    [InlineData(250, true)]
    [InlineData(250.01, false)]
    public void Interval_contains_values_between_bounds(double setback, bool holds) =>
        Assert.Equal(holds, new SetbackInterval(65, 250).Holds(setback));

    [Fact]
    public void Interval_contains_bounds_despite_binary_rounding()
    {
        var interval = new SetbackInterval(0.1 + 0.2, 0.3);
        Assert.False(interval.IsEmpty);
        Assert.True(interval.Holds(0.3));
    }

    [Theory]
    [InlineData(0, 100, 50, 200, 50, 100)]
    [InlineData(0, 100, 150, 200, 150, 100)]
    [InlineData(0, double.PositiveInfinity, 65, 250, 65, 250)]
    public void Intersection_has_the_tighter_bounds(double a, double b, double c, double d, double least, double greatest) =>
        Assert.Equal(new SetbackInterval(least, greatest), new SetbackInterval(a, b).Intersect(new SetbackInterval(c, d)));

    [Theory]
    [InlineData(65, 250, 50, 25, 75.0)] // the example of the documentation
    [InlineData(65, 250, 0, 25, 75.0)]
    [InlineData(65, 250, 100, 25, 100.0)] // already suitable
    [InlineData(65, 250, 300, 25, 250.0)]
    [InlineData(65, 250, 301, 25, 226.0)] // 276 and 251 are outside
    [InlineData(65, 70, 0, 25, null)] // no step in between
    [InlineData(65, 70, 90, 25, 65.0)]
    [InlineData(-40, -10, 20, 25, null)] // uprights cannot be in front of the front face
    [InlineData(100, 50, 0, 25, null)]
    public void Nearest_step_in_interval_is_returned(double least, double greatest, double from, double pitch, double? setback) =>
        Assert.Equal(setback, new SetbackInterval(least, greatest).OnPitch(from, pitch));

    [Fact]
    public void Nearest_step_matches_search_over_all_steps()
    {
        // Whole numbers throughout, so that the search has no rounding.
        foreach (var pitch in new[] { 1, 7, 25, 40 })
        {
            for (var from = 0; from <= 200; from += 11)
            {
                for (var least = 0; least <= 150; least += 13)
                {
                    for (var greatest = least - 20; greatest <= 160; greatest += 17)
                    {
                        int[] holes = [.. Enumerable.Range(-200, 400).Select(k => from + (k * pitch)).Where(s => s >= 0 && s >= least && s <= greatest)];
                        double? nearest = holes.Length == 0 ? null : holes.MinBy(s => Math.Abs(s - from));
                        Assert.Equal(nearest, new SetbackInterval(least, greatest).OnPitch(from, pitch));
                    }
                }
            }
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-25)]
    [InlineData(double.NaN)]
    public void Pitch_out_of_range_throws(double pitch) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new SetbackInterval(0, 10).OnPitch(0, pitch));
}
