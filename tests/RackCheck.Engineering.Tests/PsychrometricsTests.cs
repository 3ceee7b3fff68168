using System.Globalization;

namespace RackCheck.Engineering.Tests;

/// <summary>
/// Air held to an independent library: psychrolib 1.1.1 (npm, MIT), which has the formulae of ASHRAE Fundamentals. Data/psychrometrics.mjs made the values
/// (npm i psychrolib@1.1.1, then node psychrometrics.mjs > psychrometrics.csv).
/// </summary>
public sealed class PsychrometricsTests
{
    private static readonly double[][] Rows =
    [
        .. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Data", "psychrometrics.csv")).Skip(1)
            .Select(l => l.Split(',').Select(c => c.Length == 0 ? double.NaN : double.Parse(c, CultureInfo.InvariantCulture)).ToArray()),
    ];

    [Fact]
    public void There_are_all_rows_of_six_heights_eight_temperatures_and_five_humidities() => Assert.Equal(6 * 8 * 5, Rows.Length);

    [Fact]
    public void Pressure_is_theirs_to_a_hundred_thousandth() => Assert.All(Rows, r => Close(r[3], Air.PressurePa(r[2]), 1e-5));

    [Fact]
    public void Saturation_pressure_is_theirs_to_three_thousandths() => Assert.All(Rows, r => Close(r[4], Air.SaturationPa(r[0]), 3e-3));

    [Fact]
    public void Density_is_theirs_to_a_ten_thousandth_where_racks_are_and_to_three_elsewhere() =>
        Assert.All(Rows, r => Close(r[5], Air.DensityKgM3(r[0], r[2], r[1]), r[0] <= 40 && r[2] <= 3000 ? 1e-4 : 3e-4));

    [Fact]
    public void The_dew_point_is_theirs_to_a_twentieth_of_a_kelvin_above_freezing_and_absent_in_dry_air()
    {
        // Under 0 C theirs is the frost point, over ice; Magnus is over water.
        Assert.All(Rows.Where(r => r[6] > 0.01), r => Assert.Equal(r[6], Air.DewPointC(r[0], r[1])!.Value, 0.05));
        Assert.All(Rows.Where(r => r[6] < 0), r => Assert.InRange(Air.DewPointC(r[0], r[1])!.Value, r[6] - 4, r[6]));
        Assert.All(Rows.Where(r => double.IsNaN(r[6])), r => Assert.Null(Air.DewPointC(r[0], r[1])));
    }

    private static void Close(double expected, double actual, double share) => Assert.InRange(actual / expected, 1 - share, 1 + share);
}
