using CsCheck;
using RackCheck.Testing;

namespace RackCheck.Engineering.Tests;

public sealed class MassSumTests
{
    private static readonly Gen<PointMass> Mass =
        Gen.Select(Gen.Double[-500, 1500], Gen.Double[-500, 500], Gen.Double[0, 2500], Gen.Double[0.1, 200])
            .Select((x, y, z, kg) => new PointMass(x, y, z, kg));

    [Theory]
    [InlineData(100, 980.665)] // g = 9.80665
    [InlineData(0, 0)]
    [InlineData(40, 392.266)]
    public void Weight_matches_reference_values(double kg, double newton) => Assert.Equal(newton, Gravity.WeightN(kg), 1e-9);

    [Fact]
    public void Weight_matches_independent_library() =>
        Assert.Equal(UnitsNet.Force.FromKilogramsForce(77.7).Newtons, Gravity.WeightN(77.7), 1e-9);

    [Fact]
    public void Centre_of_gravity_is_mass_weighted_mean()
    {
        // Statics; along the other axes calculated by hand.
        var sum = default(MassSum).Add(new(100, -30, 200, 50)).Add(new(400, 0, 600, 100)).Add(new(0, 50, 1800, 30));
        var centre = sum.Centre!.Value;
        Assert.Equal(180, centre.Kg);
        Assert.Equal(688.8888888888889, centre.ZMm, 1e-9);
        Assert.Equal(250, centre.XMm, 1e-9); // (5000 + 40000)/180
        Assert.Equal(0, centre.YMm, 1e-9); // (-1500 + 1500)/180
    }

    [Fact]
    [Trait("Kind", "property")]
    public void Moments_about_centre_of_gravity_cancel() =>
        Gen.Select(Mass, Mass, Mass).Sample((a, b, c) =>
        {
            var centre = default(MassSum).Add(a).Add(b).Add(c).Centre!.Value;
            foreach (var axis in new Func<PointMass, double>[] { m => m.XMm, m => m.YMm, m => m.ZMm })
            {
                Assert.Equal(0, new[] { a, b, c }.Sum(m => m.Kg * (axis(m) - axis(centre))), 1e-6);
            }
        }, iter: Samples.Of(1_000));

    [Fact]
    [Trait("Kind", "property")]
    public void Removed_mass_leaves_sum_of_the_others() =>
        Gen.Select(Mass, Mass, Mass).Sample((a, b, c) =>
        {
            var left = default(MassSum).Add(a).Add(b).Add(c).TakeOut(b).Centre!.Value;
            var others = default(MassSum).Add(a).Add(c).Centre!.Value;
            Assert.Equal(others.Kg, left.Kg, 1e-9);
            Assert.Equal(others.XMm, left.XMm, 1e-5);
            Assert.Equal(others.YMm, left.YMm, 1e-5);
            Assert.Equal(others.ZMm, left.ZMm, 1e-5);
        }, iter: Samples.Of(1_000));

    [Fact]
    public void Removing_all_masses_gives_empty_sum()
    {
        var (tenth, fifth) = (new PointMass(1, 2, 3, 0.1), new PointMass(4, 5, 6, 0.2));
        var left = default(MassSum).Add(tenth).Add(fifth).TakeOut(tenth).TakeOut(fifth);
        Assert.Equal(default, left);
        Assert.Null(left.Centre);
        Assert.Null(default(MassSum).Centre);
    }

    [Theory]
    [InlineData(0, 100)]
    [InlineData(350, -250)]
    [InlineData(-50, 150)]
    public void Moved_forward_is_towards_the_front(double forward, double x) =>
        Assert.Equal(new PointMass(x, 20, 30, 4), new PointMass(100, 20, 30, 4).Forward(forward));

    [Fact]
    public void Removing_more_than_total_throws()
    {
        var sum = default(MassSum).Add(new(0, 0, 0, 10));
        Assert.Throws<ArgumentOutOfRangeException>(() => sum.TakeOut(new(0, 0, 0, 10.001)));
        Assert.Throws<ArgumentOutOfRangeException>(() => default(MassSum).TakeOut(new(0, 0, 0, 1)));
    }

    [Theory]
    [InlineData(0, 0, 0, -1)]
    [InlineData(0, 0, 0, double.NaN)]
    [InlineData(0, 0, 0, double.PositiveInfinity)]
    [InlineData(double.NaN, 0, 0, 1)]
    [InlineData(0, double.NegativeInfinity, 0, 1)]
    [InlineData(0, 0, double.NaN, 1)]
    public void Mass_out_of_range_throws(double x, double y, double z, double kg)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => default(MassSum).Add(new(x, y, z, kg)));
        Assert.Throws<ArgumentOutOfRangeException>(() => default(MassSum).TakeOut(new(x, y, z, kg)));
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Weight_out_of_range_throws(double kg) => Assert.Throws<ArgumentOutOfRangeException>(() => Gravity.WeightN(kg));
}
