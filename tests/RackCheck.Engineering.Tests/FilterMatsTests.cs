namespace RackCheck.Engineering.Tests;

public sealed class FilterMatsTests
{
    [Theory]
    [InlineData(0.08, 144)] // common practice: 0.5 m/s
    [InlineData(0.01, 18)]
    [InlineData(1, 1800)]
    public void Rated_flow_is_half_a_metre_per_second(double area, double flow) => Assert.Equal(flow, FilterMats.RatedM3h(area), 1e-9);

    [Theory]
    [InlineData(40, 144, 0.277778)]
    [InlineData(80, 144, 0.555556)]
    [InlineData(30, 300, 0.1)]
    [InlineData(0, 300, 0)]
    public void Loss_is_proportional_to_the_flow(double loss, double flow, double linear) => Assert.Equal(linear, FilterMats.Linear(loss, flow), 1e-6);

    [Fact]
    public void Out_of_range_throws()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => FilterMats.RatedM3h(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => FilterMats.Linear(-1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => FilterMats.Linear(1, 0));
    }
}
