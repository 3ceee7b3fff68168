namespace RackCheck.Engineering.Tests;

public sealed class CabinetSizesTests
{
    [Fact]
    public void Sizes_match_reference_values_in_ascending_order()
    {
        // Common practice, no source.
        Assert.Equal([600.0, 800, 1000, 1200], CabinetSizes.DepthsMm.ToArray());
        Assert.Equal([600.0, 800], CabinetSizes.WidthsMm.ToArray());
        Assert.Equal(CabinetSizes.HeightsU.Order(), CabinetSizes.HeightsU);
        Assert.Equal(CabinetSizes.HeightsU.Distinct(), CabinetSizes.HeightsU);
        Assert.Equal(50, 2 * CabinetSizes.DoorDepthMm);
    }

    [Theory]
    [InlineData(0, 600.0)]
    [InlineData(600, 600.0)]
    [InlineData(600.0000001, 600.0)] // within the tolerance
    [InlineData(600.01, 800.0)]
    [InlineData(615, 800.0)] // common practice: a 450 mm deep body with doors
    [InlineData(1200, 1200.0)]
    [InlineData(1200.01, null)]
    public void Smallest_sufficient_depth_is_returned(double needed, double? depth) =>
        Assert.Equal(depth, CabinetSizes.DepthAtLeast(needed));

    [Theory]
    [InlineData(1, 6)]
    [InlineData(42, 42)]
    [InlineData(43, 47)]
    [InlineData(47, 47)]
    [InlineData(48, null)] // taller ones are not usual
    public void Smallest_sufficient_height_is_returned(int needed, int? units) =>
        Assert.Equal(units, CabinetSizes.HeightAtLeast(needed));
}
