namespace RackCheck.Engineering.Tests;

public sealed class BatteriesTests
{
    [Theory]
    [InlineData(9, 20, 9, 1.15, 38.28218794077549)] // Peukert
    [InlineData(9, 20, 27, 1.15, 10.821994480782845)] // Peukert
    [InlineData(100, 20, 50, 1.2, 75.71488133762318)] // Peukert
    [InlineData(7, 20, 0.35, 1.15, 1200)] // Peukert
    [InlineData(9, 20, 800 / (36 * 0.9), 1.15, 11.993582133671605)] // Peukert
    [InlineData(9, 20, 1500 / (48 * 0.9), 1.15, 8.10358137894309)] // Peukert
    [InlineData(9, 20, 2400 / (72 * 0.92), 1.15, 7.716512806074955)] // Peukert
    public void RunTime_from_capacity_in_ampere_hours_matches_formula(double ampereHours, double hours, double current, double exponent, double minutes)
    {
        // t = H (C/(I H))^k: the battery runs H hours at C/H amperes.
        Assert.Equal(minutes, Batteries.RunMinutes(60 * hours, ampereHours / hours, current, exponent), 1e-9);
    }

    [Theory]
    [InlineData(500, 22.191389)] // 10 x 2^1.15, calculated by hand
    [InlineData(1000, 10)]
    [InlineData(2000, 4.506252)] // 10 / 2^1.15
    public void RunTime_at_half_load_is_more_than_double(double load, double minutes) => Assert.Equal(minutes, Batteries.RunMinutes(10, 1000, load), 1e-5);

    [Theory]
    [InlineData(3)]
    [InlineData(10)]
    [InlineData(47)]
    public void Load_for_run_time_gives_that_run_time(double minutes) =>
        Assert.Equal(minutes, Batteries.RunMinutes(10, 1000, Batteries.LoadFor(10, 1000, minutes)), 1e-9);

    [Theory]
    [InlineData(-1, 1000, 500, 1.15)]
    [InlineData(10, -1, 500, 1.15)]
    [InlineData(10, 1000, 0, 1.15)]
    [InlineData(10, 1000, 500, 0.9)]
    [InlineData(10, 1000, double.NaN, 1.15)]
    public void RunTime_out_of_range_throws(double minutes, double at, double load, double exponent) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Batteries.RunMinutes(minutes, at, load, exponent));

    [Theory]
    [InlineData(-1, 1000, 5)]
    [InlineData(10, -1, 5)]
    [InlineData(10, 1000, 0)]
    public void Load_out_of_range_throws(double minutes, double at, double wanted) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Batteries.LoadFor(minutes, at, wanted));
}
