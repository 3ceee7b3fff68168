namespace RackCheck.Engineering.Tests;

public sealed class ManualHandlingTests
{
    [Theory]
    [InlineData(800, 25.0)] // HSE L23: at knuckle height
    [InlineData(1000, 20.0)] // HSE L23: at elbow
    [InlineData(1500, 10.0)] // HSE L23: shoulder to head, the conservative end
    [InlineData(500, 20.0)] // HSE L23, this and the next
    [InlineData(100, 10.0)]
    [InlineData(122.225, 10.0)] // IEC 60297-3-100: middle of U1
    [InlineData(522.275, 20.0)] // IEC 60297-3-100: U10
    [InlineData(966.775, 20.0)] // IEC 60297-3-100: U20
    [InlineData(1944.675, null)] // IEC 60297-3-100: U42, above the reach
    public void Guideline_matches_reference_values(double height, double? limit) => Assert.Equal(limit, ManualHandling.LimitKg(height));

    [Theory]
    [InlineData(0, "floor to lower leg")]
    [InlineData(250, "floor to lower leg")]
    [InlineData(750, "lower leg to knuckle")]
    [InlineData(950, "elbow to shoulder")]
    [InlineData(1300, "shoulder to head")]
    [InlineData(1850, "shoulder to head")]
    public void Zone_limit_has_the_lower_value(double height, string zone) => Assert.Equal(zone, ManualHandling.ZoneAt(height)!.Value.Name);

    [Fact]
    public void No_value_above_overhead_reach() => Assert.Null(ManualHandling.ZoneAt(1850.1));

    [Fact]
    public void Zones_match_reference_values()
    {
        // HSE L23, from the head down.
        Assert.Equal([10, 20, 25, 20, 10], ManualHandling.Zones.Reverse().Select(z => z.ManCloseKg));
        Assert.Equal([5, 10, 15, 10, 5], ManualHandling.Zones.Reverse().Select(z => z.ManReachKg));
        Assert.Equal([7, 13, 16, 13, 7], ManualHandling.Zones.Reverse().Select(z => z.WomanCloseKg));
        Assert.Equal([3, 7, 10, 7, 3], ManualHandling.Zones.Reverse().Select(z => z.WomanReachKg));
        Assert.Equal((950, 1300, 1850), (ManualHandling.ElbowMm, ManualHandling.ShoulderMm, ManualHandling.ReachMm));
    }

    [Fact]
    public void Zones_are_contiguous_and_woman_value_is_about_two_thirds()
    {
        Assert.Equal(0, ManualHandling.Zones[0].FromMm);
        Assert.All(ManualHandling.Zones.Zip(ManualHandling.Zones.Skip(1)), pair => Assert.Equal(pair.First.ToMm, pair.Second.FromMm));
        Assert.All(ManualHandling.Zones, z =>
        {
            Assert.InRange(z.WomanCloseKg / z.ManCloseKg, 0.62, 0.71); // HSE L23
            Assert.True(z.ManReachKg < z.ManCloseKg && z.WomanReachKg < z.WomanCloseKg);
        });
    }

    [Fact]
    public void Limit_rises_to_waist_height_and_then_falls()
    {
        for (var height = 0.0; height < 1840; height += 5)
        {
            var (low, high) = (ManualHandling.LimitKg(height)!.Value, ManualHandling.LimitKg(height + 5)!.Value);
            Assert.True(height + 5 <= ManualHandling.KnuckleMm + 5 ? high >= low : high <= low, $"{height}");
        }
    }

    [Theory]
    [InlineData(25, 1, 25)]
    [InlineData(25 + 25, 2, 33.333333333333336)] // HSE L23
    [InlineData(25 + 16, 2, 27.333333333333332)] // HSE L23: a man and a woman
    [InlineData(25 + 25 + 25, 3, 37.5)] // HSE L23
    public void Team_value_is_share_of_sum(double sum, int people, double limit) => Assert.Equal(limit, ManualHandling.TeamLimitKg(sum, people), 1e-12);

    [Theory]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Height_out_of_range_throws(double height)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => ManualHandling.ZoneAt(height));
        Assert.Throws<ArgumentOutOfRangeException>(() => ManualHandling.LimitKg(height));
    }

    [Theory]
    [InlineData(-1, 2)]
    [InlineData(double.NaN, 2)]
    [InlineData(50, 0)]
    [InlineData(50, 4)]
    public void Team_out_of_range_throws(double sum, int people) => Assert.Throws<ArgumentOutOfRangeException>(() => ManualHandling.TeamLimitKg(sum, people));

    [Theory]
    [InlineData(0, 25)] // HSE L23, one man held close: 25, 20 and 10 kg
    [InlineData(1050, 25)]
    [InlineData(1050.1, 20)]
    [InlineData(1400, 20)]
    [InlineData(1400.1, 10)]
    [InlineData(2500, 10)]
    public void Mounting_limit_depends_on_lower_edge(double edge, double kilograms) =>
        Assert.Equal(kilograms, ManualHandling.MountingZones[ManualHandling.MountingZoneAt(edge)].Kg);

    [Theory]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void Lower_edge_out_of_range_throws(double edge) => Assert.Throws<ArgumentOutOfRangeException>(() => ManualHandling.MountingZoneAt(edge));
}
