using CsCheck;
using MathNet.Numerics.Interpolation;
using MathNet.Numerics.RootFinding;
using RackCheck.Testing;

namespace RackCheck.Engineering.Tests;

public sealed class FansTests
{
    private static readonly FanCurve SampleCurve = FanCurve.Of([new(0, 60), new(100, 45), new(200, 38), new(300, 20), new(360, 0)]);

    [Theory]
    [InlineData(0.0002, 304.40321105840076, 18.532262980533055)] // fan laws
    [InlineData(0.0005, 244.73521163190603, 29.947661906256915)] // fan laws
    [InlineData(0.001, 195.70543990118654, 38.30061920691694)] // fan laws
    [InlineData(0.002, 144.69201583308595, 41.87155889168399)] // fan laws
    public void OperatingPoint_matches_reference_values(double k, double flow, double pressure)
    {
        var point = Fans.WorkingPointOf([new(SampleCurve, 1)], k);
        Assert.Equal(flow, point.FlowM3h, 1e-9);
        Assert.Equal(pressure, point.PressurePa, 1e-9);
    }

    [Theory]
    [InlineData(0, 0, 306.9)] // fan laws, sharp-edged orifice and mats as common practice: 2 x 160 m3/h and 45 Pa, intake 800 cm2, 1.17 kg/m3
    [InlineData(40, 0, 107.0)]
    [InlineData(80, 0, 64.5)]
    [InlineData(0, 400, 269.4)]
    [InlineData(40, 400, 105.0)]
    [InlineData(80, 400, 64.1)]
    public void Filter_mat_lowers_the_operating_point(double matPa, double roofCm2, double flow)
    {
        var k = Openings.OpeningK(0.08, 1.17) + (roofCm2 > 0 ? Openings.OpeningK(roofCm2 / 1e4, 1.17) : 0);
        var linear = FilterMats.Linear(matPa, FilterMats.RatedM3h(0.08));
        var point = Fans.WorkingPointOf([new(FanCurve.Straight(160, 45), 2)], k, linear: linear);
        Assert.Equal(flow, point.FlowM3h, 0.06);
        Assert.Equal(Openings.LossPa(k, point.FlowM3h) + (linear * point.FlowM3h), point.PressurePa, 1e-9);
    }

    [Fact]
    [Trait("Kind", "property")]
    public void OperatingPoint_with_a_mat_lies_on_path_and_fan_curves() =>
        Gen.Select(FanSamples.Bank, FanSamples.K, Gen.Double[0, 1]).Sample((bank, k, linear) =>
        {
            var point = Fans.WorkingPointOf(bank, k, linear: linear);
            Assert.Equal(point.PressurePa, Openings.LossPa(k, point.FlowM3h) + (linear * point.FlowM3h), 1e-9 * (1 + point.PressurePa));
            Assert.True(Fans.FlowM3h(bank, point.PressurePa * (1 - 1e-9)) >= point.FlowM3h * (1 - 1e-6));
            Assert.True(Fans.FlowM3h(bank, (point.PressurePa * (1 + 1e-9)) + 1e-12) <= point.FlowM3h * (1 + 1e-6));
            Assert.True(point.FlowM3h <= Fans.WorkingPointOf(bank, k).FlowM3h * (1 + 1e-9));
        }, iter: Samples.Of(1_000));

    [Fact]
    public void Mat_alone_is_a_straight_line()
    {
        // 320 (1 - p/45) = V and p = 0.25 V: V = 320/(1 + 320 x 0.25/45) = 115.2.
        Assert.Equal(115.2, Fans.WorkingPointOf([new(FanCurve.Straight(160, 45), 2)], 0, linear: 0.25).FlowM3h, 1e-9);
        Assert.Throws<ArgumentOutOfRangeException>(() => Fans.WorkingPointOf([], 0, linear: -1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Fans.WorkingPointOf([], 0, linear: double.PositiveInfinity));
    }

    [Fact]
    public void Two_fans_deliver_less_than_double_flow() // fan laws
    {
        Assert.Equal(289.3840316661719, Fans.WorkingPointOf([new(SampleCurve, 2)], 5e-4).FlowM3h, 1e-9);
        Assert.Equal(289.3840316661719, Fans.WorkingPointOf([new(SampleCurve, 1), new(SampleCurve, 1)], 5e-4).FlowM3h, 1e-9);
    }

    [Theory]
    [InlineData(360, 60, 1, 5e-4)]
    [InlineData(500, 90, 3, 2e-5)]
    [InlineData(160, 40, 6, 1e-3)]
    public void OperatingPoint_of_straight_lines_matches_quadratic(double free, double greatest, int count, double k)
    {
        // P (1 - V/(n F)) = K V^2, by the usual formula.
        var (a, b) = (k, greatest / (count * free));
        var flow = (-b + Math.Sqrt((b * b) + (4 * a * greatest))) / (2 * a);
        Assert.Equal(flow, Fans.WorkingPointOf([new(FanCurve.Straight(free, greatest), count)], k).FlowM3h, 1e-8);
    }

    [Fact]
    [Trait("Kind", "property")]
    public void OperatingPoint_of_falling_curves_matches_root_finder() =>
        FanSamples.FallingFromZero.Select(Gen.Int[1, 4], Gen.Double[0, 300]).Array[1, 5].Select(FanSamples.K).Sample((bank, k) =>
        {
            // The same curves, inverted with the splines of an independent library, plus one fan of fixed flow each.
            var splines = bank.Select(b => (b, Spline: LinearSpline.Interpolate(b.Item1.Select(p => p.PressurePa), b.Item1.Select(p => p.FlowM3h)))).ToArray();
            double Moved(double pressure) => splines.Sum(s => (0.6 * s.b.Item3) + (s.b.Item2 * (
                pressure > s.b.Item1[0].PressurePa ? 0 : pressure < s.b.Item1[^1].PressurePa ? s.b.Item1[^1].FlowM3h : s.Spline.Interpolate(pressure))));
            var most = Math.Max(bank.Max(b => b.Item1[0].PressurePa), k * Math.Pow(Moved(0), 2)) + 1;

            // Over the square root of the pressure, which makes the path a straight line.
            var root = Brent.FindRoot(r => Moved(r * r) - (r / Math.Sqrt(k)), 0, Math.Sqrt(most), 1e-12, 1000);

            FanGroup[] groups = [.. bank.SelectMany(b => new FanGroup[] { new(FanCurve.Of(b.Item1), b.Item2), new(FanCurve.Installed(b.Item3), 1) })];
            var point = Fans.WorkingPointOf(groups, k);
            Assert.Equal(1, (point.FlowM3h + 1e-6) / ((root / Math.Sqrt(k)) + 1e-6), 1e-6);
            Assert.Equal(1, (point.PressurePa + 1e-6) / ((root * root) + 1e-6), 1e-6);
        }, iter: Samples.Of(1_000));

    [Fact]
    [Trait("Kind", "property")]
    public void OperatingPoint_lies_on_path_and_on_fan_curves() =>
        Gen.Select(FanSamples.Bank, FanSamples.K).Sample((bank, k) =>
        {
            var point = Fans.WorkingPointOf(bank, k);
            Assert.Equal(point.PressurePa, Openings.LossPa(k, point.FlowM3h), 1e-9 * (1 + point.PressurePa));

            // Slightly less pressure gives at least this flow, slightly more at most this flow. Where the total jumps, the point lies in the jump.
            Assert.True(Fans.FlowM3h(bank, point.PressurePa * (1 - 1e-9)) >= point.FlowM3h * (1 - 1e-6));
            Assert.True(Fans.FlowM3h(bank, (point.PressurePa * (1 + 1e-9)) + 1e-12) <= point.FlowM3h * (1 + 1e-6));
        }, iter: Samples.Of(1_000));

    [Fact]
    [Trait("Kind", "property")]
    public void Higher_loss_never_adds_flow_and_extra_fan_never_reduces_it() =>
        Gen.Select(FanSamples.Bank, FanSamples.Bank, FanSamples.K, Gen.Double[1, 2]).Sample((bank, others, k, thicker) =>
        {
            var flow = Fans.WorkingPointOf(bank, k).FlowM3h;
            var hair = 1e-9 * (1 + flow);
            Assert.True(Fans.WorkingPointOf(bank, k * thicker).FlowM3h <= flow + hair);
            Assert.True(Fans.WorkingPointOf(bank, 0).FlowM3h >= flow - hair);
            Assert.True(Fans.WorkingPointOf([.. bank, .. others.Take(1)], k).FlowM3h >= flow - hair);
            Assert.True(Fans.WorkingPointOf([.. bank.Select(g => g with { Count = g.Count + 1 })], k).FlowM3h >= flow - hair);
        }, iter: Samples.Of(1_000));

    [Fact]
    [Trait("Kind", "property")]
    public void Order_of_fan_groups_changes_only_rounding() =>
        Gen.Select(FanSamples.Bank, FanSamples.K).Sample((bank, k) =>
        {
            var (there, back) = (Fans.WorkingPointOf(bank, k), Fans.WorkingPointOf([.. bank.Reverse()], k));
            Assert.Equal(there.FlowM3h, back.FlowM3h, 1e-9 * (1 + there.FlowM3h));
        }, iter: Samples.Of(1_000));

    [Fact]
    public void Free_flow_without_losses_and_no_flow_without_fans()
    {
        Assert.Equal(
            new WorkingPoint(360 + (2 * 500) + 60, 0),
            Fans.WorkingPointOf([new(SampleCurve, 1), new(FanCurve.Straight(500, 90), 2), new(FanCurve.Installed(100), 1)], 0));
        Assert.Equal(new WorkingPoint(0, 0), Fans.WorkingPointOf([], 1e-4));
        Assert.Equal(new WorkingPoint(0, 0), Fans.WorkingPointOf([new(SampleCurve, 0)], 1e-4));
    }

    [Fact]
    public void Fixed_flow_adds_above_maximum_pressure_of_other_fans()
    {
        // 600 m3/h at K = 1e-3 gives 360 Pa. The other fan, with a maximum of 60 Pa, delivers nothing there.
        Assert.Equal(new WorkingPoint(600, 360), Fans.WorkingPointOf([new(SampleCurve, 1), new(FanCurve.Installed(1000), 1)], 1e-3));

        // Alone 60 m3/h; with a line of 100 Pa to 200 m3/h: 60 + 200 (1 - p/100) = V, p = 0.002 V^2, so 0.004 V^2 + V - 260 = 0.
        Assert.Equal(
            (-1 + Math.Sqrt(1 + (4 * 0.004 * 260))) / 0.008,
            Fans.WorkingPointOf([new(FanCurve.Installed(100), 1), new(FanCurve.Straight(200, 100), 1)], 0.002).FlowM3h,
            1e-9);
    }

    [Fact]
    public void OperatingPoint_on_flat_curve_has_its_pressure()
    {
        // 40 Pa from 0 to 200 m3/h, then zero: at K = 0.0025, 40 Pa gives 126.49 m3/h; at K = 0.0004 the flow is 200 m3/h at 16 Pa.
        var step = new FanGroup(FanCurve.Of([new(200, 40)]), 1);
        Assert.Equal(40, Fans.WorkingPointOf([step], 0.0025).PressurePa);
        Assert.Equal(126.49110640673518, Fans.WorkingPointOf([step], 0.0025).FlowM3h, 1e-9);
        Assert.Equal(new WorkingPoint(200, 16), Fans.WorkingPointOf([step], 0.0004));
    }

    [Fact]
    public void Other_density_changes_pressure_not_volume_flow() // fan curve and path both scale with density
    {
        var at = Fans.WorkingPointOf([new(SampleCurve, 1)], 5e-4);
        var thin = Fans.WorkingPointOf([new(SampleCurve, 1)], 5e-4 * 0.8, 1.2 * 0.8);
        Assert.Equal(at.FlowM3h, thin.FlowM3h, 1e-9);
        Assert.Equal(0.8 * at.PressurePa, thin.PressurePa, 1e-9);
    }

    [Fact]
    public void Flows_add_at_equal_pressure() =>
        Assert.Equal(
            (2 * 180) + 250 + 300,
            Fans.FlowM3h([new(FanCurve.Straight(360, 60), 2), new(FanCurve.Straight(500, 60), 1), new(FanCurve.Installed(500), 1)], 30),
            1e-9);

    [Fact]
    public void OperatingPoint_takes_no_memory()
    {
        FanGroup[] bank = [new(SampleCurve, 2), new(FanCurve.Straight(500, 90), 3), new(FanCurve.Installed(300), 1), new(FanCurve.Straight(160, 40), 6)];
        long allocated = 0;
        for (var round = 0; round < 200; round++)
        {
            var before = GC.GetAllocatedBytesForCurrentThread();
            for (var i = 0; i < 100; i++)
            {
                Fans.WorkingPointOf(bank, 1e-5 * (i + 1));
            }

            allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        }

        Assert.Equal(0, allocated);
    }

    [Theory]
    [InlineData(-1, 1e-4, 1.2)]
    [InlineData(1, -1e-4, 1.2)]
    [InlineData(1, double.NaN, 1.2)]
    [InlineData(1, double.PositiveInfinity, 1.2)]
    [InlineData(1, 1e-4, 0)]
    [InlineData(1, 1e-4, double.NaN)]
    public void OperatingPoint_out_of_range_throws(int count, double k, double density) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Fans.WorkingPointOf([new(SampleCurve, count)], k, density));

    [Theory]
    [InlineData(-1, 10)]
    [InlineData(1, -10)]
    [InlineData(1, double.NaN)]
    public void Flow_against_pressure_out_of_range_throws(int count, double pressure) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Fans.FlowM3h([new(SampleCurve, count)], pressure));
}
