using CsCheck;

namespace RackCheck.Engineering.Tests;

public sealed class FloorLoadsTests
{
    private static readonly SupportArea Feet = new(50, 950, -275, 275); // 550 x 900

    [Theory]
    [InlineData(400, 600, 800, 8.172208333333334)] // checks.csv 9-01
    [InlineData(800, 600, 1000, 13.075533333333333)] // checks.csv 9-02
    [InlineData(1200, 800, 1200, 12.2583125)] // checks.csv 9-03
    [InlineData(800, 600, 1000 + 600, 8.172208333333334)] // checks.csv 9-04: half an aisle of 600 before and behind
    [InlineData(1200, 800, 1200 + 600, 8.172208333333334)] // checks.csv 9-05
    [InlineData(0, 800, 1200, 0)]
    public void A_load_is_spread_over_the_area(double kg, double width, double depth, double load) =>
        Assert.Equal(load, FloorLoads.DistributedKnM2(kg, width, depth), 1e-9);

    [Fact]
    public void Spread_loads_are_those_of_an_independent_library() =>
        Assert.Equal(
            (UnitsNet.Force.FromKilogramsForce(735) / UnitsNet.Area.FromSquareMillimeters(700 * 900)).KilonewtonsPerSquareMeter,
            FloorLoads.DistributedKnM2(735, 700, 900),
            1e-9);

    [Theory]
    [InlineData(800, 0, 0, 1.96133)] // checks.csv 9-06
    [InlineData(800, 0, 100, 2.397181111111111)] // checks.csv 9-07
    [InlineData(1000, 50, 150, 3.8632257575757576)] // checks.csv 9-08
    public void The_most_loaded_foot_is_that_of_the_formula_on_whichever_side_the_centre_lies(double kg, double sideways, double along, double load)
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
    [InlineData(400, 0.6111111111)] // handbook H9: (D - x)/D between the feet, 550/900
    [InlineData(50, 1)] // over the front feet
    [InlineData(950, 0)]
    public void The_front_pair_bears_its_lever(double x, double share)
    {
        var loads = FloorLoads.LoadsOnFeet(Feet, new(x, 0, 900, 800));
        Assert.Equal(share * 7.84532, loads.FrontKn, 1e-8);
        Assert.Equal((1 - share) * 7.84532, loads.RearKn, 1e-8);
    }

    [Fact]
    public void Feet_are_in_balance_and_none_bears_more_than_the_greatest() =>
        Gen.Select(Gen.Double[50, 950], Gen.Double[-275, 275], Gen.Double[10, 1500]).Sample((x, y, kg) =>
        {
            var loads = FloorLoads.LoadsOnFeet(Feet, new(x, y, 900, kg));
            var weight = kg * 9.80665 / 1000;
            var (ex, ey) = (y / 550, (500 - x) / 900);

            // Moments about the rear feet, and all of the weight.
            Assert.Equal(weight * (950 - x), loads.FrontKn * 900, 1e-6);
            Assert.Equal(weight, loads.FrontKn + loads.RearKn, 1e-9);

            // A frame soft in torsion: each corner takes the product of its shares. A rigid one on equal springs differs by the twist alone.
            double[] soft = [.. from sx in Signs from sy in Signs select weight / 4 * (1 + (2 * sx * ex)) * (1 + (2 * sy * ey))];
            double[] rigid = [.. from sx in Signs from sy in Signs select weight / 4 * (1 + (2 * sx * ex) + (2 * sy * ey))];
            Assert.Equal(soft.Max(), loads.GreatestKn, 1e-9);
            Assert.Equal(rigid.Max() + Math.Abs(weight * ex * ey), loads.GreatestKn, 1e-9);
            Assert.True(loads.GreatestKn >= weight / 4 - 1e-12 && loads.GreatestKn <= weight + 1e-12);
        });

    [Theory]
    [InlineData(49, 0, false)]
    [InlineData(951, 0, false)]
    [InlineData(500, 276, false)]
    [InlineData(500, -276, false)]
    [InlineData(50, -275, true)]
    public void A_centre_beyond_the_feet_is_told(double x, double y, bool stand) =>
        Assert.Equal(stand, FloorLoads.LoadsOnFeet(Feet, new(x, y, 900, 800)).AllStand);

    [Theory]
    [InlineData(1, 2.0, 1.3333333333333333)] // checks.csv 9-09, 9-10
    [InlineData(2, 3.0, 2.0)] // checks.csv 9-11, 9-12
    [InlineData(3, 4.0, 2.6666666666666665)] // checks.csv 9-13, 9-14
    [InlineData(4, 4.5, 3.0)] // checks.csv 9-15, 9-16
    [InlineData(5, 5.0, 3.3333333333333335)] // checks.csv 9-17, 9-18
    [InlineData(6, 6.0, 4.0)] // checks.csv 9-19, 9-20
    public void A_class_works_at_a_half_to_a_third_of_its_ultimate_load(int number, double half, double third)
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
    public void The_lowest_class_that_bears_a_load_is_found(double load, double factor, int? number) =>
        Assert.Equal(number, FloorLoads.LowestClass(load, factor)?.Number);

    [Theory]
    [InlineData(-1, 600, 800)]
    [InlineData(400, 0, 800)]
    [InlineData(400, 600, 0)]
    [InlineData(double.NaN, 600, 800)]
    [InlineData(400, double.PositiveInfinity, 800)]
    [InlineData(400, 600, double.NaN)]
    public void An_area_that_is_none_throws(double kg, double width, double depth) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => FloorLoads.DistributedKnM2(kg, width, depth));

    [Theory]
    [InlineData(900, 275, 500, 0, -1)]
    [InlineData(0, 275, 500, 0, 800)]
    [InlineData(900, 0, 500, 0, 800)]
    [InlineData(900, 275, double.NaN, 0, 800)]
    [InlineData(900, 275, 500, double.NaN, 800)]
    public void Feet_that_are_none_throw(double depth, double half, double x, double y, double kg) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => FloorLoads.LoadsOnFeet(new(0, depth, -half, half), new(x, y, 900, kg)));

    [Theory]
    [InlineData(2, 0.9)]
    [InlineData(2, double.NaN)]
    [InlineData(-1, 3)]
    public void A_class_for_no_load_throws(double load, double factor) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => FloorLoads.LowestClass(load, factor));

    private static readonly int[] Signs = [-1, 1];
}
