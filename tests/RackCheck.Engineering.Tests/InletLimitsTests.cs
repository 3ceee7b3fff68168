using CsCheck;
using RackCheck.Testing;

namespace RackCheck.Engineering.Tests;

public sealed class InletLimitsTests
{
    [Theory]
    [InlineData(18, "A1", 300)] // ASHRAE TC 9.9
    [InlineData(32, "A1", 300)]
    [InlineData(35, "A2", 300)]
    [InlineData(39.9, "A3", 300)]
    [InlineData(40, "A3", 175)]
    [InlineData(44.9, "A4", 175)]
    [InlineData(45, "A4", 125)]
    [InlineData(55, "A4", 125)]
    public void Class_and_slope_follow_the_limit(double limit, string name, double slope)
    {
        Assert.Equal(name, InletLimits.ClassOf(limit).Name);
        Assert.Equal(slope, InletLimits.MetresPerKOf(limit));
    }

    [Fact]
    public void Limit_of_45_C_at_2500_m_is_32_2() => // ASHRAE TC 9.9: 45 - 1600/125
        Assert.Equal(32.2, InletLimits.DeratedC(45, 2500, InletLimits.MetresPerKOf(45)), 1e-9);

    [Theory]
    [InlineData("A1", 1500, 30)] // ASHRAE TC 9.9
    [InlineData("A2", 1800, 32)] // ASHRAE TC 9.9
    [InlineData("A2", 3050, 27.833333333333332)] // ASHRAE TC 9.9
    [InlineData("A3", 1800, 34.857142857142854)] // ASHRAE TC 9.9
    [InlineData("A4", 1800, 37.8)] // ASHRAE TC 9.9
    [InlineData("A4", 3050, 27.8)] // ASHRAE TC 9.9
    public void Class_limit_is_derated_above_900_m(string name, double altitude, double greatest) =>
        Assert.Equal(greatest, Class(name).GreatestAtC(altitude), 1e-9);

    [Theory]
    [InlineData(32, 1500, 30)] // ASHRAE TC 9.9, by the service's slope
    [InlineData(35, 1800, 32)] // ASHRAE TC 9.9
    [InlineData(35, 3050, 27.833333333333332)] // ASHRAE TC 9.9
    [InlineData(35, 900, 35)]
    [InlineData(35, 0, 35)]
    [InlineData(35, -400, 35)]
    public void Limit_falls_one_kelvin_per_300_m(double limit, double altitude, double derated) =>
        Assert.Equal(derated, InletLimits.DeratedC(limit, altitude), 1e-9);

    [Theory]
    [InlineData(32, 1500, 30.166666666666668)] // ASHRAE TC 9.9
    [InlineData(35, 1800, 32.166666666666664)] // ASHRAE TC 9.9
    [InlineData(35, 3050, 28)] // ASHRAE TC 9.9
    public void Older_edition_is_higher_by_a_sixth_of_a_kelvin(double limit, double altitude, double older) =>
        Assert.Equal(50.0 / 300, older - InletLimits.DeratedC(limit, altitude), 1e-9);

    [Fact]
    public void Three_classes_have_equal_limit_at_maximum_altitude() // ASHRAE TC 9.9: 27.7 to 27.8 C
    {
        var tops = new[] { "A2", "A3", "A4" }.Select(n => Class(n).GreatestAtC(InletLimits.GreatestAltitudeM)).ToArray();
        Assert.All(tops, t => Assert.InRange(t, 27.7, 27.84));
    }

    [Theory]
    [InlineData("A1", 15, 32, 17, 80)] // ASHRAE TC 9.9, this row and the following
    [InlineData("A2", 10, 35, 21, 80)]
    [InlineData("A3", 5, 40, 24, 85)]
    [InlineData("A4", 5, 45, 24, 90)]
    public void Classes_match_reference_values(string name, double least, double greatest, double dewPoint, double humidity)
    {
        var found = Class(name);
        Assert.Equal((least, greatest, dewPoint, humidity), (found.LeastC, found.GreatestC, found.GreatestDewPointC, found.GreatestHumidityPercent));
        Assert.InRange(InletLimits.RecommendedLeastC, least, greatest);
        Assert.InRange(InletLimits.RecommendedGreatestC, least, greatest);
    }

    [Fact]
    [Trait("Kind", "property")]
    public void Limit_never_rises_with_altitude() =>
        Gen.Select(Gen.Double[0, 60], Gen.Double[-500, 6000], Gen.Double[0, 500]).Sample((limit, altitude, more) =>
            Assert.True(InletLimits.DeratedC(limit, altitude + more) <= InletLimits.DeratedC(limit, altitude)), iter: Samples.Of(1_000));

    [Theory]
    [InlineData(0, true)]
    [InlineData(3050, true)]
    [InlineData(3051, false)]
    [InlineData(double.NaN, false)]
    public void Altitude_range_of_classes_is_checked(double altitude, bool within) => Assert.Equal(within, InletLimits.IsWithinAltitude(altitude));

    [Theory]
    [InlineData(double.NaN, 0, 300)]
    [InlineData(-274, 0, 300)]
    [InlineData(35, double.NaN, 300)]
    [InlineData(35, double.NegativeInfinity, 300)]
    [InlineData(35, 0, 0)]
    [InlineData(35, 0, double.NaN)]
    public void Limit_out_of_range_throws(double limit, double altitude, double slope) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => InletLimits.DeratedC(limit, altitude, slope));

    private static InletClass Class(string name) => InletLimits.Classes.Single(c => c.Name == name);
}
