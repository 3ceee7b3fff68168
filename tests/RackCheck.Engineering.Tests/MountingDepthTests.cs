namespace RackCheck.Engineering.Tests;

public sealed class MountingDepthTests
{
    private static readonly CabinetDepth Cabinet800 = new(800, 25, 25, FrontOpen: false, RearOpen: false);

    [Theory]
    [InlineData(800, 25, 25, 750, 775)]
    [InlineData(600, 25, 25, 550, 575)]
    [InlineData(1000, 0, 40, 960, 960)]
    public void Usable_depth_is_depth_less_doors(double depth, double front, double rear, double usable, double rearLimit)
    {
        // Geometry: usable = D - d_f - d_r.
        var cabinet = new CabinetDepth(depth, front, rear, FrontOpen: front == 0, RearOpen: false);
        Assert.Equal((usable, rearLimit), (cabinet.UsableMm, cabinet.RearLimitMm));
    }

    [Theory]
    [InlineData(40, 450, 75, 565, 525)]
    [InlineData(0, 0, 0, 0, 0)]
    [InlineData(76, 300, 25, 401, 325)]
    public void Total_depth_includes_front_projection_and_rear_depth_does_not(double projection, double body, double behind, double stack, double reach)
    {
        var item = new ItemDepth(projection, body, behind);
        Assert.Equal((stack, reach), (item.StackMm, item.ReachMm));
    }

    [Theory]
    [InlineData(800, 40, 450, 75, 65, 250)] // a 450 mm deep body in an 800 mm cabinet
    [InlineData(600, 40, 450, 75, 65, 50)] // a 450 mm deep body does not fit a 600 mm cabinet with doors
    [InlineData(1000, 76, 300, 75, 101, 600)] // geometry
    public void Setbacks_of_front_item_lie_between_doors(double depth, double projection, double body, double behind, double least, double greatest) =>
        Assert.Equal(
            new SetbackInterval(least, greatest),
            MountingDepth.OfFrontItem(Cabinet800 with { DepthMm = depth }, new ItemDepth(projection, body, behind)));

    [Fact]
    public void Handles_may_project_without_front_door() =>
        Assert.Equal(
            new SetbackInterval(0, 250),
            MountingDepth.OfFrontItem(new CabinetDepth(800, 0, 25, FrontOpen: true, RearOpen: false), new ItemDepth(120, 450, 75)));

    [Theory]
    [InlineData(1000, 700, 40, 300, 75, 0, 235)] // mirrored
    [InlineData(1000, 300, 40, 300, 75, 100, 635)]
    [InlineData(800, 600, 40, 300, 25, 0, 135)]
    public void Setbacks_of_rear_item_are_mirrored(
        double depth,
        double spacing,
        double projection,
        double body,
        double behind,
        double least,
        double greatest) =>
        Assert.Equal(
            new SetbackInterval(least, greatest),
            MountingDepth.OfRearItem(Cabinet800 with { DepthMm = depth }, new ItemDepth(projection, body, behind), spacing));

    [Fact]
    public void Handles_of_rear_item_may_project_without_rear_door() =>
        Assert.Equal(
            new SetbackInterval(0, 300),
            MountingDepth.OfRearItem(new CabinetDepth(1000, 25, 0, FrontOpen: false, RearOpen: true), new ItemDepth(120, 300, 75), 700));

    [Fact]
    public void Interval_is_exactly_the_setbacks_that_clear_the_doors()
    {
        foreach (var (cabinet, item, spacing) in Cases())
        {
            var front = MountingDepth.OfFrontItem(cabinet, item);
            var rear = MountingDepth.OfRearItem(cabinet, item, spacing);
            for (var setback = 0; setback <= 1300; setback++)
            {
                Assert.Equal(FrontItemFits(cabinet, item, setback), front.Holds(setback));
                Assert.Equal(RearItemFits(cabinet, item, setback + spacing), rear.Holds(setback));
            }
        }
    }

    [Fact]
    public void Minimum_depth_matches_search_over_depths_and_setbacks()
    {
        var all = Cases().ToArray();
        for (var first = 0; first + 2 < all.Length; first += 3)
        {
            var cabinet = all[first].Cabinet;
            var spacing = all[first].Spacing;
            var front = new[] { all[first].Item, all[first + 1].Item };
            var rear = all[first + 2].Item;
            var interval = IntervalOf(cabinet, front, rear, spacing);
            var least = MountingDepth.LeastCabinetDepthMm(cabinet, interval);
            var found = Enumerable.Range(0, 4000).First(d => SomeSetbackServes(cabinet with { DepthMm = d }, front, rear, spacing));
            Assert.Equal(found, least, 1e-6);
        }
    }

    [Theory]
    [InlineData(40, 450, 75, 615)] // 25 + 40 + 450 + 75 + 25
    [InlineData(40, 600, 75, 765)] // geometry
    [InlineData(0, 0, 0, 50)]
    public void Minimum_depth_for_one_front_item_is_sum_of_its_depths(double projection, double body, double behind, double depth)
    {
        var cabinet = Cabinet800 with { DepthMm = 600 };
        Assert.Equal(depth, MountingDepth.LeastCabinetDepthMm(cabinet, MountingDepth.OfFrontItem(cabinet, new ItemDepth(projection, body, behind))), 1e-9);
    }

    [Fact]
    public void Minimum_depth_for_front_items_adds_largest_projections()
    {
        // Geometry: max(d_f + p) + max(b + r) + d_r = (25 + 76) + (600 + 75) + 25.
        var all = MountingDepth.OfFrontItem(Cabinet800, new ItemDepth(40, 600, 75))
            .Intersect(MountingDepth.OfFrontItem(Cabinet800, new ItemDepth(76, 300, 75)));
        Assert.Equal(801, MountingDepth.LeastCabinetDepthMm(Cabinet800, all), 1e-9);
    }

    [Theory]
    [InlineData(false, 25, 40, 65)]
    [InlineData(false, 0, 40, 40)]
    [InlineData(true, 0, 40, 0)]
    public void Minimum_setback_clears_front_door(bool open, double door, double projection, double least) =>
        Assert.Equal(least, MountingDepth.LeastForProjection(new CabinetDepth(800, door, 25, open, RearOpen: false), projection));

    // Unrelated whole numbers, each set a cabinet, an item and a spacing.
    private static IEnumerable<(CabinetDepth Cabinet, ItemDepth Item, int Spacing)> Cases()
    {
        for (var i = 0; i < 30; i++)
        {
            var (frontOpen, rearOpen) = (i % 5 == 0, i % 7 == 0);
            yield return (
                new CabinetDepth(500 + (37 * i % 701), frontOpen ? 0 : 13 * i % 41, rearOpen ? 0 : 17 * i % 43, frontOpen, rearOpen),
                new ItemDepth(11 * i % 81, 53 * i % 601, 29 * i % 101),
                200 + (71 * i % 601));
        }
    }

    // Nothing passes the plane of a door. Without a door handles may project, bodies may not.
    private static bool FrontItemFits(CabinetDepth cabinet, ItemDepth item, int plane) =>
        (cabinet.FrontOpen || plane - item.ProjectionMm >= cabinet.FrontDoorMm) && plane + item.BodyMm + item.BehindMm <= cabinet.DepthMm - cabinet.RearDoorMm;

    private static bool RearItemFits(CabinetDepth cabinet, ItemDepth item, int plane) =>
        plane - item.BodyMm - item.BehindMm >= cabinet.FrontDoorMm
        && (cabinet.RearOpen ? plane <= cabinet.DepthMm : plane + item.ProjectionMm <= cabinet.DepthMm - cabinet.RearDoorMm);

    private static bool SomeSetbackServes(CabinetDepth cabinet, ItemDepth[] front, ItemDepth rear, int spacing) =>
        Enumerable.Range(0, 1500).Any(s => front.All(i => FrontItemFits(cabinet, i, s)) && RearItemFits(cabinet, rear, s + spacing));

    private static SetbackInterval IntervalOf(CabinetDepth cabinet, ItemDepth[] front, ItemDepth rear, int spacing) =>
        front.Aggregate(new SetbackInterval(0, double.PositiveInfinity), (all, i) => all.Intersect(MountingDepth.OfFrontItem(cabinet, i)))
            .Intersect(MountingDepth.OfRearItem(cabinet, rear, spacing));
}
