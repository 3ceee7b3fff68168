using System.Globalization;

namespace RackCheck.Engineering.Tests;

/// <summary>
/// Comparison with an independent library: psychrolib 1.1.1 (npm, MIT), which has the formulae of ASHRAE Fundamentals. The values were made with
/// Data/psychrometrics.mjs (npm i psychrolib@1.1.1, then node psychrometrics.mjs > psychrometrics.csv).
/// </summary>
public sealed class PsychrometricsTests
{
    private static readonly double[][] Rows =
    [
        .. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Data", "psychrometrics.csv")).Skip(1)
            .Select(l => l.Split(',').Select(c => c.Length == 0 ? double.NaN : double.Parse(c, CultureInfo.InvariantCulture)).ToArray()),
    ];

    [Fact]
    public void Reference_file_has_all_240_rows() => Assert.Equal(6 * 8 * 5, Rows.Length);

    [Fact]
    public void Pressure_agrees_within_1e_5() => Assert.All(Rows, r => Close(r[3], Air.PressurePa(r[2]), 1e-5));

    [Fact]
    public void SaturationPressure_agrees_within_0_3_percent() => Assert.All(Rows, r => Close(r[4], Air.SaturationPa(r[0]), 3e-3));

    [Fact]
    public void Density_agrees_within_1e_4_in_rack_conditions_and_3e_4_elsewhere() =>
        Assert.All(Rows, r => Close(r[5], Air.DensityKgM3(r[0], r[2], r[1]), r[0] <= 40 && r[2] <= 3000 ? 1e-4 : 3e-4));

    [Fact]
    public void DewPoint_agrees_within_0_05_K_above_freezing()
    {
        // Below 0 C the library gives the frost point over ice; the Magnus formula is over water.
        Assert.All(Rows.Where(r => r[6] > 0.01), r => Assert.Equal(r[6], Air.DewPointC(r[0], r[1])!.Value, 0.05));
        Assert.All(Rows.Where(r => r[6] < 0), r => Assert.InRange(Air.DewPointC(r[0], r[1])!.Value, r[6] - 4, r[6]));
        Assert.All(Rows.Where(r => double.IsNaN(r[6])), r => Assert.Null(Air.DewPointC(r[0], r[1])));
    }

    private static void Close(double expected, double actual, double share) => Assert.InRange(actual / expected, 1 - share, 1 + share);
}
