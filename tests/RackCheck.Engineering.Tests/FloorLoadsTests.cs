using CsCheck;
using RackCheck.Testing;

namespace RackCheck.Engineering.Tests;

public sealed class FloorLoadsTests
{
    private static readonly SupportArea Feet = new(50, 950, -275, 275); // 550 x 900

    [Theory]
    [InlineData(400, 600, 800, 8.172208333333334)] // statics
    [InlineData(800, 600, 1000, 13.075533333333333)] // statics
    [InlineData(1200, 800, 1200, 12.2583125)] // statics
    [InlineData(800, 600, 1000 + 600, 8.172208333333334)] // statics: half of a 600 mm aisle at front and rear
    [InlineData(1200, 800, 1200 + 600, 8.172208333333334)] // statics
    [InlineData(0, 800, 1200, 0)]
    public void Distributed_load_matches_reference_values(double kg, double width, double depth, double load) =>
        Assert.Equal(load, FloorLoads.DistributedKnM2(kg, width, depth), 1e-9);

    [Fact]
    public void Distributed_load_matches_independent_library() =>
        Assert.Equal(
            (UnitsNet.Force.FromKilogramsForce(735) / UnitsNet.Area.FromSquareMillimeters(700 * 900)).KilonewtonsPerSquareMeter,
            FloorLoads.DistributedKnM2(735, 700, 900),
            1e-9);

    [Theory]
    [InlineData(800, 0, 0, 1.96133)] // statics
    [InlineData(800, 0, 100, 2.397181111111111)] // statics
    [InlineData(1000, 50, 150, 3.8632257575757576)] // statics
    public void Maximum_foot_load_matches_formula_on_every_side(double kg, double sideways, double along, double load)
    {
        foreach (var (x, y) in new[] { (1, 1), (-1, 1), (1, -1), (-1, -1) })
        {
            var loads = FloorLoads.LoadsOnFeet(Feet, new(500 + (x * along), y * sideways, 900, kg));
            Assert.Equal(load, loads.GreatestKn, 1e-9);
            Assert.True(loads.AllStand);
        }
    }

    [Theory]
    [InlineData(500, 0.5)]
    [InlineData(400, 0.6111111111)] // statics: (D - x)/D between the feet, 550/900
    [InlineData(50, 1)] // over the front feet
    [InlineData(950, 0)]
    public void Front_pair_load_follows_from_moments(double x, double share)
    {
        var loads = FloorLoads.LoadsOnFeet(Feet, new(x, 0, 900, 800));
        Assert.Equal(share * 7.84532, loads.FrontKn, 1e-8);
        Assert.Equal((1 - share) * 7.84532, loads.RearKn, 1e-8);
    }

    [Fact]
    [Trait("Kind", "property")]
    public void Foot_loads_balance_and_none_exceeds_maximum() =>
        Gen.Select(Gen.Double[50, 950], Gen.Double[-275, 275], Gen.Double[10, 1500]).Sample((x, y, kg) =>
        {
            var loads = FloorLoads.LoadsOnFeet(Feet, new(x, y, 900, kg));
            var weight = kg * 9.80665 / 1000;
            var (ex, ey) = (y / 550, (500 - x) / 900);

            // Moments about the rear feet, and the total weight.
            Assert.Equal(weight * (950 - x), loads.FrontKn * 900, 1e-6);
            Assert.Equal(weight, loads.FrontKn + loads.RearKn, 1e-9);

            // Torsionally soft frame: each corner carries the product of its shares. A rigid frame on equal springs differs only by the twist.
            double[] soft = [.. from sx in Signs from sy in Signs select weight / 4 * (1 + (2 * sx * ex)) * (1 + (2 * sy * ey))];
            double[] rigid = [.. from sx in Signs from sy in Signs select weight / 4 * (1 + (2 * sx * ex) + (2 * sy * ey))];
            Assert.Equal(soft.Max(), loads.GreatestKn, 1e-9);
            Assert.Equal(rigid.Max() + Math.Abs(weight * ex * ey), loads.GreatestKn, 1e-9);
            Assert.True(loads.GreatestKn >= weight / 4 - 1e-12 && loads.GreatestKn <= weight + 1e-12);
        }, iter: Samples.Of(1_000));

    [Theory]
    [InlineData(49, 0, false)]
    [InlineData(951, 0, false)]
    [InlineData(500, 276, false)]
    [InlineData(500, -276, false)]
    [InlineData(50, -275, true)]
    public void Centre_outside_feet_is_reported(double x, double y, bool stand) =>
        Assert.Equal(stand, FloorLoads.LoadsOnFeet(Feet, new(x, y, 900, 800)).AllStand);

    [Theory]
    [InlineData(1, 2.0, 1.3333333333333333)] // EN 12825
    [InlineData(2, 3.0, 2.0)] // EN 12825
    [InlineData(3, 4.0, 2.6666666666666665)] // EN 12825
    [InlineData(4, 4.5, 3.0)] // EN 12825
    [InlineData(5, 5.0, 3.3333333333333335)] // EN 12825
    [InlineData(6, 6.0, 4.0)] // EN 12825
    public void Permitted_load_of_class_is_half_to_third_of_ultimate(int number, double half, double third)
    {
        var floor = FloorLoads.Classes.Single(c => c.Number == number);
        Assert.Equal(half, floor.WorkingKn(FloorLoads.LowSafetyFactor), 1e-12);
        Assert.Equal(third, floor.WorkingKn(FloorLoads.HighSafetyFactor), 1e-12);
    }

    [Theory]
    [InlineData(0, 3, 1)]
    [InlineData(1.3333, 3, 1)]
    [InlineData(1.3334, 3, 2)]
    [InlineData(2.4, 3, 3)]
    [InlineData(2.4, 2, 2)]
    [InlineData(4, 3, 6)]
    [InlineData(4.1, 3, null)]
    public void Lowest_sufficient_class_is_returned(double load, double factor, int? number) =>
        Assert.Equal(number, FloorLoads.LowestClass(load, factor)?.Number);

    [Theory]
    [InlineData(-1, 600, 800)]
    [InlineData(400, 0, 800)]
    [InlineData(400, 600, 0)]
    [InlineData(double.NaN, 600, 800)]
    [InlineData(400, double.PositiveInfinity, 800)]
    [InlineData(400, 600, double.NaN)]
    public void Area_out_of_range_throws(double kg, double width, double depth) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => FloorLoads.DistributedKnM2(kg, width, depth));

    [Theory]
    [InlineData(900, 275, 500, 0, -1)]
    [InlineData(0, 275, 500, 0, 800)]
    [InlineData(900, 0, 500, 0, 800)]
    [InlineData(900, 275, double.NaN, 0, 800)]
    [InlineData(900, 275, 500, double.NaN, 800)]
    public void Feet_out_of_range_throw(double depth, double half, double x, double y, double kg) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => FloorLoads.LoadsOnFeet(new(0, depth, -half, half), new(x, y, 900, kg)));

    [Theory]
    [InlineData(2, 0.9)]
    [InlineData(2, double.NaN)]
    [InlineData(-1, 3)]
    public void Class_for_load_out_of_range_throws(double load, double factor) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => FloorLoads.LowestClass(load, factor));

    private static readonly int[] Signs = [-1, 1];
}
