using CsCheck;
using MathNet.Numerics.Interpolation;
using RackCheck.Testing;

namespace RackCheck.Engineering.Tests;

public sealed class FanCurveTests
{
    // The curve whose working points FansTests has.
    private static readonly CurvePoint[] SampleCurve = [new(0, 60), new(100, 45), new(200, 38), new(300, 20), new(360, 0)];

    [Theory]
    [InlineData(0, 60)]
    [InlineData(50, 52.5)] // half way from 60 to 45
    [InlineData(100, 45)]
    [InlineData(250, 29)] // half way from 38 to 20
    [InlineData(360, 0)]
    public void Points_are_joined_by_straight_lines(double flow, double pressure)
    {
        var curve = FanCurve.Of(SampleCurve);
        Assert.Equal(pressure, curve.PressurePa(flow)!.Value, 1e-12);
        Assert.Equal(flow, curve.FlowM3h(pressure), 1e-12);
        Assert.Equal((360, 60, false, false), (curve.FreeFlowM3h, curve.GreatestPa!.Value, curve.IsFixed, curve.Stalls));
    }

    [Fact]
    public void Curve_outside_points_is_flat_below_and_zero_above()
    {
        var curve = FanCurve.Of([new(300, 20), new(100, 45)]);
        Assert.Equal([45, 45, 45, 20, 0, 0], new[] { 0, 50, 100, 300, 300.001, 900 }.Select(q => curve.PressurePa(q)!.Value));
        Assert.Equal([0, 100, 300, 300, 300], new[] { 45.001, 45, 20, 10, 0 }.Select(curve.FlowM3h));
        Assert.Equal(300, curve.FreeFlowM3h);
    }

    [Fact]
    public void Single_point_is_a_step()
    {
        var curve = FanCurve.Of([new(200, 30)]);
        Assert.Equal((30, 30, 0), (curve.PressurePa(0), curve.PressurePa(200), curve.PressurePa(201)));
        Assert.Equal((200, 200, 0), (curve.FlowM3h(0), curve.FlowM3h(30), curve.FlowM3h(31)));
    }

    [Fact]
    [Trait("Kind", "property")]
    public void Order_of_points_does_not_matter() =>
        Gen.Shuffle(SampleCurve).Select(Gen.Double[0, 70]).Sample((points, pressure) =>
            Assert.Equal(FanCurve.Of(SampleCurve).FlowM3h(pressure), FanCurve.Of(points).FlowM3h(pressure)), iter: Samples.Of(1_000));

    [Theory]
    [InlineData(0, 360)]
    [InlineData(15, 270)]
    [InlineData(30, 180)]
    [InlineData(60, 0)]
    public void Straight_line_runs_from_maximum_pressure_to_free_flow(double pressure, double flow)
    {
        var curve = FanCurve.Straight(360, 60);
        Assert.Equal(flow, curve.FlowM3h(pressure), 1e-12);
        Assert.Equal(pressure, curve.PressurePa(flow)!.Value, 1e-12);
        Assert.Equal(0, curve.FlowM3h(61));
    }

    [Theory]
    [InlineData(500, 300)] // common practice: 60 %
    [InlineData(180, 108)]
    [InlineData(0, 0)]
    public void Installed_flow_is_fixed_at_any_pressure(double free, double installed)
    {
        var curve = FanCurve.Installed(free);
        Assert.Equal((installed, installed, installed), (curve.FlowM3h(0), curve.FlowM3h(1e4), curve.FreeFlowM3h));
        Assert.True(curve.IsFixed);
        Assert.Null(curve.PressurePa(10));
        Assert.Null(curve.GreatestPa);
    }

    [Fact]
    [Trait("Kind", "property")]
    public void Falling_curve_matches_independent_library() =>
        FanSamples.Falling.Select(Gen.Double[0.001, 0.999]).Sample((points, share) =>
        {
            var curve = FanCurve.Of(points);
            var pressureOf = LinearSpline.Interpolate(points.Select(p => p.FlowM3h), points.Select(p => p.PressurePa));
            var flowOf = LinearSpline.Interpolate(points.Select(p => p.PressurePa), points.Select(p => p.FlowM3h));
            var flow = points[0].FlowM3h + (share * (points[^1].FlowM3h - points[0].FlowM3h));
            var pressure = points[^1].PressurePa + (share * (points[0].PressurePa - points[^1].PressurePa));
            Assert.Equal(pressureOf.Interpolate(flow), curve.PressurePa(flow)!.Value, 1e-6);
            Assert.Equal(flowOf.Interpolate(pressure), curve.FlowM3h(pressure), 1e-6);
        }, iter: Samples.Of(1_000));

    [Fact]
    public void Stall_range_is_flat_at_its_lowest_pressure()
    {
        // Falls to 30, rises to 40, falls through 30 again at 225.
        var curve = FanCurve.Of([new(0, 60), new(100, 30), new(200, 40), new(300, 0)]);
        Assert.True(curve.Stalls);
        Assert.Equal([60, 45, 30, 30, 30, 20, 0], new[] { 0.0, 50, 100, 150, 225, 250, 300 }.Select(q => curve.PressurePa(q)!.Value));
        Assert.Equal([50, 225, 250, 300], new[] { 45.0, 30, 20, 0 }.Select(curve.FlowM3h));

        // Rises from the start: flat at the first pressure until the curve stays below it.
        var rising = FanCurve.Of([new(0, 30), new(100, 45), new(200, 0)]);
        Assert.True(rising.Stalls);
        Assert.Equal((30, 30, 15, 0), (rising.PressurePa(0), rising.PressurePa(100), rising.PressurePa(200 - (100 / 3.0)) ?? -1, rising.PressurePa(200)));
    }

    [Fact]
    [Trait("Kind", "property")]
    public void Flow_never_rises_with_pressure_or_exceeds_a_point() =>
        FanSamples.Any.Select(Gen.Double[0, 100], Gen.Double[0, 20]).Sample((points, pressure, more) =>
        {
            var curve = FanCurve.Of(points);
            Assert.True(curve.FlowM3h(pressure + more) <= curve.FlowM3h(pressure));
            Assert.Equal(curve.FreeFlowM3h, curve.FlowM3h(0));
            Assert.InRange(curve.FreeFlowM3h, 0, points.Max(p => p.FlowM3h));
            Assert.All(points, p => Assert.True(curve.PressurePa(p.FlowM3h) <= points.Where(o => o.FlowM3h == p.FlowM3h).Max(o => o.PressurePa) + 1e-9));
        }, iter: Samples.Of(1_000));

    [Fact]
    public void Points_above_first_zero_pressure_are_ignored()
    {
        Assert.Equal(300, FanCurve.Of([new(0, 60), new(300, 0), new(360, 0)]).FreeFlowM3h);
        Assert.Equal(360, FanCurve.Of([new(0, 0), new(360, 0)]).FreeFlowM3h);
        Assert.Equal(0, FanCurve.Of([new(0, 0), new(360, 0)]).FlowM3h(1));
        Assert.Equal((360, 0), (FanCurve.Straight(360, 0).FlowM3h(0), FanCurve.Straight(360, 0).FlowM3h(1)));
    }

    [Fact]
    public void Two_points_at_one_flow_are_a_step()
    {
        var curve = FanCurve.Of([new(200, 10), new(100, 20), new(100, 40), new(0, 50)]);
        Assert.Equal((40, 15), (curve.PressurePa(100), curve.PressurePa(150)));
        Assert.Equal((100, 100, 100), (curve.FlowM3h(40), curve.FlowM3h(30), curve.FlowM3h(20)));
    }

    [Theory]
    [InlineData(-1, 10)]
    [InlineData(10, -1)]
    [InlineData(double.NaN, 10)]
    [InlineData(10, double.NaN)]
    [InlineData(double.PositiveInfinity, 10)]
    [InlineData(10, double.PositiveInfinity)]
    public void Curve_out_of_range_throws(double flow, double pressure)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => FanCurve.Straight(flow, pressure));
        Assert.Throws<ArgumentOutOfRangeException>(() => FanCurve.Of([new(0, 60), new(flow, pressure)]));
    }

    [Fact]
    public void No_points_or_flow_out_of_range_throws()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => FanCurve.Of([]));
        Assert.Throws<ArgumentOutOfRangeException>(() => FanCurve.Installed(-1));
        Assert.Throws<ArgumentOutOfRangeException>(() => FanCurve.Installed(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => FanCurve.Straight(360, 60).FlowM3h(-1));
        Assert.Throws<ArgumentOutOfRangeException>(() => FanCurve.Straight(360, 60).FlowM3h(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => FanCurve.Straight(360, 60).PressurePa(-1));
        Assert.Throws<ArgumentOutOfRangeException>(() => FanCurve.Straight(360, 60).PressurePa(double.NaN));
    }
}
