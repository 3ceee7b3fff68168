namespace RackCheck.Engineering.Tests;

public sealed class BatteryVentilationTests
{
    [Theory]
    [InlineData(48, 100, BatteryVentilation.RegulatedBoost, 1.92, 53.76)] // IEC 62485-2
    [InlineData(24, 200, BatteryVentilation.RegulatedFloat, 0.24, 6.72)]
    [InlineData(24, 200, BatteryVentilation.VentedFloat, 1.2, 33.6)]
    [InlineData(24, 200, BatteryVentilation.VentedBoost, 4.8, 134.4)]
    [InlineData(0, 200, BatteryVentilation.VentedBoost, 0, 0)]
    public void Air_and_opening_match_the_standard(int cells, double capacity, double gassing, double air, double area)
    {
        Assert.Equal(air, BatteryVentilation.NeededM3h(cells, capacity, gassing), 1e-9);
        Assert.Equal(area, BatteryVentilation.OpeningCm2(air), 1e-9);
    }

    [Fact]
    public void Out_of_range_throws()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => BatteryVentilation.NeededM3h(-1, 1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => BatteryVentilation.NeededM3h(1, -1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => BatteryVentilation.NeededM3h(1, 1, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => BatteryVentilation.OpeningCm2(-1));
    }
}
