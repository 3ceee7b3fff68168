using CsCheck;
using RackCheck.Testing;

namespace RackCheck.Engineering.Tests;

public sealed class EnclosuresTests
{
    [Theory]
    [InlineData(CabinetStanding.Free, 4.38, 5.712, 8.136)] // IEC TR 60890
    [InlineData(CabinetStanding.Wall, 3.9, 5.072, 7.608)] // IEC TR 60890
    [InlineData(CabinetStanding.RowEnd, 3.98, 5.232, 7.08)] // IEC TR 60890
    [InlineData(CabinetStanding.RowEndWall, 3.5, 4.592, 6.552)] // IEC TR 60890
    [InlineData(CabinetStanding.RowMiddle, 3.58, 4.752, 6.024)] // IEC TR 60890
    [InlineData(CabinetStanding.RowMiddleWall, 3.1, 4.112, 5.496)] // IEC TR 60890
    [InlineData(CabinetStanding.RowMiddleWallCovered, 2.89, 3.776, 4.992)] // IEC TR 60890
    public void Surface_matches_reference_values(CabinetStanding standing, double narrow, double wide, double deep)
    {
        Assert.Equal(narrow, Enclosures.SurfaceM2(standing, 2000, 600, 500), 1e-12);
        Assert.Equal(wide, Enclosures.SurfaceM2(standing, 2000, 800, 600), 1e-12);
        Assert.Equal(deep, Enclosures.SurfaceM2(standing, 2200, 600, 1200), 1e-12);
    }

    [Fact]
    [Trait("Kind", "property")]
    public void Surface_matches_the_seven_formulae() =>
        Gen.Select(Gen.Double[0.1, 3], Gen.Double[0.1, 3], Gen.Double[0.1, 3]).Sample((h, w, d) =>
        {
            // IEC TR 60890, in metres.
            double[] formulae =
            [
                (1.8 * h * (w + d)) + (1.4 * w * d),
                (1.4 * w * (h + d)) + (1.8 * d * h),
                (1.4 * d * (h + w)) + (1.8 * w * h),
                (1.4 * h * (w + d)) + (1.4 * w * d),
                (1.8 * w * h) + (1.4 * w * d) + (d * h),
                (1.4 * w * (h + d)) + (d * h),
                (1.4 * w * h) + (0.7 * w * d) + (d * h),
            ];
            Assert.Equal(formulae.Length, Enclosures.Standings.Length);
            Assert.All(Enclosures.Standings, s => Assert.Equal(formulae[(int)s], Enclosures.SurfaceM2(s, 1000 * h, 1000 * w, 1000 * d), 1e-9));
        }, iter: Samples.Of(1_000));

    [Fact]
    [Trait("Kind", "property")]
    public void Covered_placement_has_smaller_surface() =>
        Gen.Select(Gen.Double[100, 3000], Gen.Double[100, 3000], Gen.Double[100, 3000], Gen.Double[1, 100]).Sample((h, w, d, more) =>
        {
            double Of(CabinetStanding s) => Enclosures.SurfaceM2(s, h, w, d);
            Assert.True(Of(CabinetStanding.Free) > Of(CabinetStanding.Wall) && Of(CabinetStanding.Free) > Of(CabinetStanding.RowEnd));
            Assert.True(Of(CabinetStanding.RowEnd) > Of(CabinetStanding.RowEndWall) && Of(CabinetStanding.RowEnd) > Of(CabinetStanding.RowMiddle));
            Assert.True(Of(CabinetStanding.RowMiddle) > Of(CabinetStanding.RowMiddleWall));
            Assert.True(Of(CabinetStanding.RowMiddleWall) > Of(CabinetStanding.RowMiddleWallCovered));
            Assert.All(
                Enclosures.Standings,
                s => Assert.True(Enclosures.SurfaceM2(s, h + more, w, d) > Of(s) && Enclosures.SurfaceM2(s, h, w + more, d) > Of(s)));
        }, iter: Samples.Of(1_000));

    [Theory]
    [InlineData(350, 3.96, 16.069788797061523)] // sheet steel
    [InlineData(300, 4.38, 12.453300124533)] // sheet steel
    [InlineData(900, 5.072, 32.26268999139661)] // sheet steel
    [InlineData(0, 5, 0)]
    public void Rise_matches_reference_values(double heat, double surface, double rise)
    {
        Assert.Equal(rise, Enclosures.RiseK(heat, surface), 1e-9);
        Assert.Equal(heat, Enclosures.ShedW(surface, 25 + rise, 25), 1e-9);
    }

    [Theory]
    [InlineData(4.4, 242.00000000000003)] // sheet steel
    [InlineData(4.38, 240.90000000000003)] // sheet steel
    public void Heat_at_10_K_matches_published_example(double surface, double heat) => Assert.Equal(heat, Enclosures.ShedW(surface, 35, 25), 1e-9);

    [Fact]
    public void Simulated_cabinet_reaches_the_rise()
    {
        // 50 kJ/K heated with 300 W in steps of 1 s until the temperature is steady.
        var inside = 25.0;
        for (var second = 0; second < 100_000; second++)
        {
            inside += (300 - (5.5 * 4.38 * (inside - 25))) / 50_000;
        }

        Assert.Equal(25 + Enclosures.RiseK(300, 4.38), inside, 1e-6);
    }

    [Fact]
    public void Still_air_cabinet_matches_worked_example()
    {
        var surface = Enclosures.SurfaceM2(CabinetStanding.Free, 2200, 1000, 500);
        Assert.Equal(6.64, surface, 1e-9); // IEC TR 60890 example
        var middle = 0.135 * Math.Pow(300, 0.804);
        Assert.Equal(13.241563187752297, middle, 1e-9); // IEC TR 60890 example
        Assert.Equal(19.067850990363308, Enclosures.StillTopFactor * middle, 1e-9); // IEC TR 60890 example
        Assert.Equal(3.412038461845343, 300 / (surface * middle), 1e-9); // IEC TR 60890 example
        Assert.Equal(Enclosures.StillWM2K, 300 / (surface * middle), 0.05);
        Assert.Equal(middle, Enclosures.RiseK(300, surface, Enclosures.StillWM2K), 0.06);
    }

    [Fact]
    public void Wall_temperature_is_between_inside_and_room()
    {
        var face = Enclosures.InnerFaceC(35, 5);
        Assert.Equal(14.375, face, 1e-9); // practice: inner film
        Assert.Equal(-5.008828661035135, face - Air.DewPointC(35, 40)!.Value, 1e-9); // practice: inner film
        Assert.Equal(2.3399378883847533, face - Air.DewPointC(35, 25)!.Value, 1e-9); // practice: inner film

        // The heat flow through the inner film equals the heat flow through the wall.
        Assert.Equal(5.5 * (35 - 5), 8 * (35 - face), 1e-9);
        Assert.Equal(35, Enclosures.InnerFaceC(35, 35), 1e-9);
    }

    [Theory]
    [InlineData(0, 600, 500)]
    [InlineData(2000, -600, 500)]
    [InlineData(2000, 600, 0)]
    [InlineData(double.NaN, 600, 500)]
    [InlineData(2000, double.NaN, 500)]
    [InlineData(2000, 600, double.NaN)]
    public void Dimension_out_of_range_throws(double height, double width, double depth) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Enclosures.SurfaceM2(CabinetStanding.Free, height, width, depth));

    [Theory]
    [InlineData(-1)]
    [InlineData(7)]
    public void Unknown_placement_throws(int standing) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Enclosures.SurfaceM2((CabinetStanding)standing, 2000, 600, 500));

    [Theory]
    [InlineData(-1, 4, 5.5)]
    [InlineData(300, 0, 5.5)]
    [InlineData(300, 4, 0)]
    [InlineData(double.NaN, 4, 5.5)]
    [InlineData(300, double.NaN, 5.5)]
    [InlineData(300, 4, double.NaN)]
    public void Rise_out_of_range_throws(double heat, double surface, double transfer) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Enclosures.RiseK(heat, surface, transfer));

    [Theory]
    [InlineData(0, 35, 25, 5.5)]
    [InlineData(4, double.NaN, 25, 5.5)]
    [InlineData(4, 35, double.NaN, 5.5)]
    [InlineData(4, -274, 25, 5.5)]
    [InlineData(4, 35, -274, 5.5)]
    [InlineData(4, 35, 25, -1)]
    public void Heat_out_of_range_throws(double surface, double inside, double ambient, double transfer) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Enclosures.ShedW(surface, inside, ambient, transfer));

    [Theory]
    [InlineData(35, 5, 0, 8)]
    [InlineData(35, 5, 8.1, 8)]
    [InlineData(35, 5, 5.5, 0)]
    [InlineData(double.NaN, 5, 5.5, 8)]
    [InlineData(35, double.NaN, 5.5, 8)]
    [InlineData(35, 5, double.NaN, 8)]
    [InlineData(35, 5, 5.5, double.NaN)]
    public void Wall_out_of_range_throws(double inside, double ambient, double transfer, double film) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Enclosures.InnerFaceC(inside, ambient, transfer, film));
}
