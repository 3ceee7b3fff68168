using CsCheck;

namespace RackCheck.Engineering.Tests;

public sealed class AirConditionersTests
{
    [Theory]
    [InlineData(1500, 5.712, 35, 25, 1185.8400000000001)] // checks.csv 5-01
    [InlineData(800, 3.384, 35, 40, 893.06)] // checks.csv 5-02
    [InlineData(500, 6.656, 40, 20, -232.16000000000008)] // checks.csv 5-03
    public void What_the_surface_does_not_shed_is_needed(double heat, double surface, double inside, double ambient, double needed) =>
        Assert.Equal(needed, AirConditioners.NeededW(heat, surface, inside, ambient), 1e-9);

    [Fact]
    public void None_is_needed_at_the_temperature_that_the_cabinet_takes_by_itself() =>
        Gen.Select(Gen.Double[1, 5000], Gen.Double[0.5, 12], Gen.Double[-20, 50], Gen.Double[0.1, 10]).Sample((heat, surface, ambient, warmer) =>
        {
            var by = ambient + Enclosures.RiseK(heat, surface);
            Assert.Equal(0, AirConditioners.NeededW(heat, surface, by, ambient), 1e-8 * heat);
            Assert.True(AirConditioners.NeededW(heat, surface, by, ambient + warmer) > 0);
            Assert.True(AirConditioners.NeededW(heat, surface, by + warmer, ambient) < 0);
            Assert.True(AirConditioners.NeededW(heat, surface, ambient - warmer, ambient) > heat);
        });

    [Theory]
    [InlineData(1000, 35, 25, 1000)] // nothing is added for a colder room
    [InlineData(1000, 35, 35, 1000)]
    [InlineData(1000, 35, 40, 900)] // 5 K at 2 %, by hand, as all here: practice has no table
    [InlineData(1500, 35, 50, 1050)]
    [InlineData(1000, 25, 74, 20)]
    [InlineData(1000, 25, 75, 0)]
    [InlineData(1000, 25, 80, 0)]
    public void A_hotter_room_takes_two_hundredths_a_kelvin(double capacity, double rated, double ambient, double left) =>
        Assert.Equal(left, AirConditioners.LeftW(capacity, rated, ambient), 1e-9);

    [Fact]
    public void A_hotter_room_never_leaves_more() =>
        Gen.Select(Gen.Double[0, 5000], Gen.Double[-20, 60], Gen.Double[-20, 80], Gen.Double[0, 20]).Sample((capacity, rated, ambient, more) =>
        {
            Assert.True(AirConditioners.LeftW(capacity, rated, ambient + more) <= AirConditioners.LeftW(capacity, rated, ambient));
            Assert.InRange(AirConditioners.LeftW(capacity, rated, ambient), 0, capacity);
        });

    [Theory]
    [InlineData(35, 20, true)]
    [InlineData(35, 55, true)]
    [InlineData(35, 55.1, false)]
    public void The_line_is_taken_as_good_for_twenty_kelvin(double rated, double ambient, bool within) =>
        Assert.Equal(within, AirConditioners.IsWithinDerating(rated, ambient));

    [Theory]
    [InlineData(-1, 4, 35, 25, 5.5)]
    [InlineData(double.NaN, 4, 35, 25, 5.5)]
    [InlineData(1000, 0, 35, 25, 5.5)]
    [InlineData(1000, 4, double.NaN, 25, 5.5)]
    [InlineData(1000, 4, 35, double.NaN, 5.5)]
    [InlineData(1000, 4, 35, 25, 0)]
    public void A_need_of_no_cabinet_throws(double heat, double surface, double inside, double ambient, double transfer) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => AirConditioners.NeededW(heat, surface, inside, ambient, transfer));

    [Theory]
    [InlineData(-1, 35, 40)]
    [InlineData(double.NaN, 35, 40)]
    [InlineData(1000, double.NaN, 40)]
    [InlineData(1000, -274, 40)]
    [InlineData(1000, 35, double.NaN)]
    [InlineData(1000, 35, -274)]
    public void A_capacity_of_nothing_throws(double capacity, double rated, double ambient) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => AirConditioners.LeftW(capacity, rated, ambient));
}
