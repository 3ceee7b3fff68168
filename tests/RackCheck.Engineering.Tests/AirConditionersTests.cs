using CsCheck;
using RackCheck.Testing;

namespace RackCheck.Engineering.Tests;

public sealed class AirConditionersTests
{
    [Theory]
    [InlineData(1500, 5.712, 35, 25, 1185.8400000000001)] // sheet steel
    [InlineData(800, 3.384, 35, 40, 893.06)] // sheet steel
    [InlineData(500, 6.656, 40, 20, -232.16000000000008)] // sheet steel
    public void CapacityNeeded_is_heat_load_less_surface_dissipation(double heat, double surface, double inside, double ambient, double needed) =>
        Assert.Equal(needed, AirConditioners.NeededW(heat, surface, inside, ambient), 1e-9);

    [Fact]
    [Trait("Kind", "property")]
    public void CapacityNeeded_at_natural_temperature_is_zero() =>
        Gen.Select(Gen.Double[1, 5000], Gen.Double[0.5, 12], Gen.Double[-20, 50], Gen.Double[0.1, 10]).Sample((heat, surface, ambient, warmer) =>
        {
            var by = ambient + Enclosures.RiseK(heat, surface);
            Assert.Equal(0, AirConditioners.NeededW(heat, surface, by, ambient), 1e-8 * heat);
            Assert.True(AirConditioners.NeededW(heat, surface, by, ambient + warmer) > 0);
            Assert.True(AirConditioners.NeededW(heat, surface, by + warmer, ambient) < 0);
            Assert.True(AirConditioners.NeededW(heat, surface, ambient - warmer, ambient) > heat);
        }, iter: Samples.Of(1_000));

    [Theory]
    [InlineData(1000, 35, 25, 1000)] // a colder room adds no capacity
    [InlineData(1000, 35, 35, 1000)]
    [InlineData(1000, 35, 40, 925)] // 5 K at 1.5 %; all rows calculated by hand, common practice has no table
    [InlineData(1500, 35, 50, 1162.5)]
    [InlineData(1000, 15, 80, 25)]
    [InlineData(1000, 10, 80, 0)]
    public void Capacity_in_hotter_room_falls_1_5_percent_per_kelvin(double capacity, double rated, double ambient, double left) =>
        Assert.Equal(left, AirConditioners.LeftW(capacity, rated, ambient), 1e-9);

    [Fact]
    [Trait("Kind", "property")]
    public void Capacity_in_hotter_room_never_rises() =>
        Gen.Select(Gen.Double[0, 5000], Gen.Double[-20, 60], Gen.Double[-20, 80], Gen.Double[0, 20]).Sample((capacity, rated, ambient, more) =>
        {
            Assert.True(AirConditioners.LeftW(capacity, rated, ambient + more) <= AirConditioners.LeftW(capacity, rated, ambient));
            Assert.InRange(AirConditioners.LeftW(capacity, rated, ambient), 0, capacity);
        }, iter: Samples.Of(1_000));

    [Theory]
    [InlineData(35, 20, true)]
    [InlineData(35, 55, true)]
    [InlineData(35, 55.1, false)]
    public void Derating_is_valid_up_to_twenty_kelvin(double rated, double ambient, bool within) =>
        Assert.Equal(within, AirConditioners.IsWithinDerating(rated, ambient));

    [Theory]
    [InlineData(-1, 4, 35, 25, 5.5)]
    [InlineData(double.NaN, 4, 35, 25, 5.5)]
    [InlineData(1000, 0, 35, 25, 5.5)]
    [InlineData(1000, 4, double.NaN, 25, 5.5)]
    [InlineData(1000, 4, 35, double.NaN, 5.5)]
    [InlineData(1000, 4, 35, 25, 0)]
    public void CapacityNeeded_out_of_range_throws(double heat, double surface, double inside, double ambient, double transfer) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => AirConditioners.NeededW(heat, surface, inside, ambient, transfer));

    [Theory]
    [InlineData(-1, 35, 40)]
    [InlineData(double.NaN, 35, 40)]
    [InlineData(1000, double.NaN, 40)]
    [InlineData(1000, -274, 40)]
    [InlineData(1000, 35, double.NaN)]
    [InlineData(1000, 35, -274)]
    public void Capacity_out_of_range_throws(double capacity, double rated, double ambient) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => AirConditioners.LeftW(capacity, rated, ambient));
}
