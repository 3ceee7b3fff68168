namespace RackCheck.Engineering.Tests;

public sealed class BreakersTests
{
    [Theory]
    [InlineData("B", 16, 48)] // IEC 60898-1
    [InlineData("C", 16, 80)] // IEC 60898-1
    [InlineData("D", 16, 160)] // IEC 60898-1
    [InlineData("B", 0.5, 1.5)]
    [InlineData("C", 63, 315)]
    public void Breaker_may_trip_from_lower_multiple(string curve, double rated, double trip) =>
        Assert.Equal(trip, Breakers.LeastTripA(curve, rated), 1e-12);

    [Theory]
    [InlineData("B", 80)] // IEC 60898-1
    [InlineData("C", 160)] // IEC 60898-1
    [InlineData("D", 320)] // IEC 60898-1
    public void Breaker_16_A_always_trips_from_upper_multiple(string curve, double trip) =>
        Assert.Equal(trip, Breakers.Curves.Single(c => c.Curve == curve).Greatest * 16, 1e-12);

    [Fact]
    public void Each_curve_starts_at_end_of_previous_curve()
    {
        Assert.Equal("BCD", string.Concat(Breakers.Curves.Select(c => c.Curve)));
        Assert.All(Breakers.Curves, c => Assert.True(c.Least < c.Greatest));
        Assert.All(Breakers.Curves.Zip(Breakers.Curves.Skip(1)), p => Assert.Equal(p.First.Greatest, p.Second.Least));
    }

    [Theory]
    [InlineData(15, 12)] // NEC 210.20(A)
    [InlineData(20, 16)] // NEC 210.20(A)
    [InlineData(30, 24)] // NEC 210.20(A)
    public void ContinuousLoad_in_North_America_is_80_percent(double rated, double load) =>
        Assert.Equal(load, rated * Breakers.ContinuousSharePercent / 100, 1e-12);

    [Theory]
    [InlineData(12, 0, 15)] // NEC 210.20(A)
    [InlineData(16, 2, 22)] // NEC 210.20(A)
    [InlineData(24, 5, 35)] // NEC 210.20(A)
    public void ContinuousLoad_is_reciprocal_of_125_percent(double continuous, double other, double least) =>
        Assert.Equal(least, (continuous * 100 / Breakers.ContinuousSharePercent) + other, 1e-12);

    [Theory]
    [InlineData("A", 16)]
    [InlineData("b", 16)]
    [InlineData("", 16)]
    [InlineData("B", 0)]
    [InlineData("B", -16)]
    [InlineData("B", double.NaN)]
    public void Unknown_curve_or_rating_out_of_range_throws(string curve, double rated) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Breakers.LeastTripA(curve, rated));
}
