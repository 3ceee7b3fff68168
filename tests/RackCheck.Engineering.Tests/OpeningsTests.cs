using CsCheck;
using MathNet.Numerics.RootFinding;
using RackCheck.Testing;

namespace RackCheck.Engineering.Tests;

public sealed class OpeningsTests
{
    [Theory]
    [InlineData(0.3, 19.31566927086452)] // Idelchik
    [InlineData(0.4, 8.757885257447354)] // Idelchik
    [InlineData(0.5, 4.3695340815808175)] // Idelchik
    [InlineData(0.6, 2.257049274602168)] // Idelchik
    [InlineData(0.63, 1.850299436028663)] // Idelchik
    [InlineData(0.7, 1.1483632887240176)] // Idelchik
    [InlineData(0.8, 0.5377270621282495)] // Idelchik
    [InlineData(1, 0)]
    public void Plate_loss_matches_third_edition(double share, double zeta) => Assert.Equal(zeta, Openings.PlateZeta(share), 1e-12);

    [Theory]
    [InlineData(0.3, 18.53355993626031, 1.042)] // Idelchik, older edition; third column: difference between the editions
    [InlineData(0.5, 3.999395977195557, 1.093)] // Idelchik, older edition
    [InlineData(0.7, 0.9638747120279423, 1.19)] // Idelchik, older edition
    [InlineData(0.8, 0.4163153200115436, 1.29)] // Idelchik, older edition
    public void Older_edition_has_lower_loss(double share, double older, double ratio) => Assert.Equal(ratio, Openings.PlateZeta(share) / older, 0.005);

    [Theory]
    [InlineData(0.1)]
    [InlineData(0.45)]
    [InlineData(0.9)]
    public void Plate_loss_matches_sudden_expansion_of_jet(double share)
    {
        // Borda-Carnot: (1/(f eps) - 1)^2 with jet contraction eps = 1/(1 + 0.707 (1 - f)^0.375), found as a root, not by the formula.
        var narrowed = Bisection.FindRoot(e => (1 / e) - 1 - (Math.Sqrt(0.5) * Math.Pow(1 - share, 3 / 8.0)), 0.3, 1, 1e-14);
        Assert.Equal(1, Math.Pow((1 / (share * narrowed)) - 1, 2) / Openings.PlateZeta(share), 0.001);
    }

    [Theory]
    [InlineData(18.53355993626031, 1.2, 1, 11.120135961756185)] // Idelchik, older edition
    [InlineData(3.999395977195557, 1.2, 1, 2.399637586317334)] // Idelchik, older edition
    [InlineData(1.6127037038552332, 1.2, 1.5, 2.1771500002045645)] // Idelchik, older edition
    [InlineData(0.4163153200115436, 1.2, 2, 0.9991567680277046)] // Idelchik, older edition
    public void Loss_is_proportional_to_velocity_squared(double zeta, double density, double velocity, double loss) =>
        Assert.Equal(loss, Openings.VelocityLossPa(zeta, density, velocity), 1e-12);

    [Fact]
    public void Two_doors_in_series_have_double_loss()
    {
        // Idelchik, with the older edition's zeta.
        var each = Openings.VelocityLossPa(1.6127037038552332, 1.16, Openings.VelocityMS(1500, 1));
        Assert.Equal(0.32478060702640116, 2 * each, 1e-12);
    }

    [Theory]
    [InlineData(0.63, 1, 1.16, 1500)]
    [InlineData(0.4, 0.9, 1.2, 900)]
    [InlineData(0.8, 0.3, 1.0, 60)]
    public void K_of_plate_matches_loss_at_approach_velocity(double share, double area, double density, double flow) =>
        Assert.Equal(
            Openings.VelocityLossPa(Openings.PlateZeta(share), density, Openings.VelocityMS(flow, area)),
            Openings.LossPa(Openings.PlateK(share, area, density), flow),
            1e-12);

    [Theory]
    [InlineData(0.03, 1.2, 0.6, 500)]
    [InlineData(0.005, 1.0, 0.6, 60)]
    [InlineData(0.1, 1.1, 1, 2000)]
    public void K_of_opening_matches_orifice_flow(double area, double density, double discharge, double flow)
    {
        // Inverse: V = 3600 Cd A sqrt(2 dp/rho).
        var loss = Openings.LossPa(Openings.OpeningK(area, density, discharge), flow);
        Assert.Equal(flow, 3600 * discharge * area * Math.Sqrt(2 * loss / density), 1e-8);
    }

    [Fact]
    [Trait("Kind", "property")]
    public void More_open_area_has_lower_loss() =>
        Gen.Select(Gen.Double[0.02, 0.98], Gen.Double[0.001, 0.02]).Sample((share, more) =>
        {
            Assert.True(Openings.PlateZeta(share + more) < Openings.PlateZeta(share));
            Assert.True(Openings.PlateK(share, 1 + more, 1.2) < Openings.PlateK(share, 1, 1.2));
            Assert.True(Openings.OpeningK(share + more, 1.2) < Openings.OpeningK(share, 1.2));
            Assert.True(Openings.LossPa(1e-4, 100 + more) > Openings.LossPa(1e-4, 100));
        }, iter: Samples.Of(1_000));

    [Fact]
    public void Cabinet_door_is_outside_valid_range_of_plate_formula()
    {
        // Common practice: holes of 6 mm, 1 m/s, 0.6 open: about 625; sheet a fifth of the hole.
        var reynolds = Openings.HoleReynolds(1, 0.6, 6);
        Assert.Equal(625, reynolds, 1e-9);
        Assert.False(Openings.IsPlateWithinValidity(reynolds, 0.2));
        Assert.False(Openings.IsPlateWithinValidity(1.1e5, 0.015));
        Assert.False(Openings.IsPlateWithinValidity(1e5, 0.014));
        Assert.True(Openings.IsPlateWithinValidity(1.1e5, 0.014));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-0.1)]
    [InlineData(1.01)]
    [InlineData(double.NaN)]
    public void Ratio_out_of_range_throws(double share)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Openings.PlateZeta(share));
        Assert.Throws<ArgumentOutOfRangeException>(() => Openings.PlateK(share, 1, 1.2));
        Assert.Throws<ArgumentOutOfRangeException>(() => Openings.HoleReynolds(1, share, 6));
        Assert.Throws<ArgumentOutOfRangeException>(() => Openings.OpeningK(1, 1.2, share));
    }

    [Theory]
    [InlineData(0, 1.2)]
    [InlineData(-1, 1.2)]
    [InlineData(double.NaN, 1.2)]
    [InlineData(1, 0)]
    [InlineData(1, double.NaN)]
    public void Area_or_density_out_of_range_throws(double area, double density)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Openings.PlateK(0.6, area, density));
        Assert.Throws<ArgumentOutOfRangeException>(() => Openings.OpeningK(area, density));
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void Flow_velocity_or_loss_out_of_range_throws(double value)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Openings.VelocityMS(value, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Openings.VelocityLossPa(1, 1.2, value));
        Assert.Throws<ArgumentOutOfRangeException>(() => Openings.VelocityLossPa(value, 1.2, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Openings.LossPa(value, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Openings.LossPa(1, value));
        Assert.Throws<ArgumentOutOfRangeException>(() => Openings.HoleReynolds(value, 0.6, 6));
        Assert.Throws<ArgumentOutOfRangeException>(() => Openings.HoleReynolds(1, 0.6, value));
    }

    [Theory]
    [InlineData(0.04, 1, 15, 40, 83.747)] // stack effect: 3600 x 0.6 x 0.04 x sqrt(2 x 9.80665 x 1 x 15/313.15), worked by hand
    [InlineData(0.08, 1, 15, 40, 167.494)]
    [InlineData(0.04, 4, 15, 40, 167.494)]
    [InlineData(0.04, 1, 0, 40, 0)]
    public void Draught_follows_area_height_and_rise(double area, double height, double rise, double inside, double flow) =>
        Assert.Equal(flow, Openings.DraughtM3h(area, height, rise, inside), 0.01);

    [Theory]
    [InlineData(-1, 1, 1, 20)]
    [InlineData(1, -1, 1, 20)]
    [InlineData(1, 1, -1, 20)]
    [InlineData(1, 1, 1, -274)]
    public void Draught_out_of_range_throws(double area, double height, double rise, double inside) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Openings.DraughtM3h(area, height, rise, inside));
}
