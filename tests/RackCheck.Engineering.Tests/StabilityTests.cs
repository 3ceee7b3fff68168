using CsCheck;
using RackCheck.Testing;

namespace RackCheck.Engineering.Tests;

public sealed class StabilityTests
{
    [Theory]
    [InlineData(300, 1000, 16.69924423399362)] // statics
    [InlineData(400, 1000, 21.80140948635181)] // statics
    [InlineData(250, 1500, 9.462322208025617)] // statics
    [InlineData(300, 1701, 10.002215058577896)] // statics
    [InlineData(300, 0, 90)]
    [InlineData(0, 1000, 0)]
    [InlineData(-400, 1000, -21.80140948635181)] // 8-02 with the centre beyond the edge
    public void TipAngle_matches_reference_values(double distance, double height, double angle) =>
        Assert.Equal(angle, Stability.TipAngleDeg(distance, height), 1e-9);

    [Theory]
    [InlineData(300, 10, 1701.3845458853127)] // statics
    [InlineData(300, 15, 1119.6152422706631)] // statics
    [InlineData(100, 30, 173.20508075688772)] // b sqrt 3
    public void Maximum_height_gives_the_tip_angle(double distance, double angle, double height)
    {
        Assert.Equal(height, Stability.GreatestHeightMm(distance, angle), 1e-9);
        Assert.Equal(angle, Stability.TipAngleDeg(distance, height), 1e-9);
    }

    [Fact]
    public void Masses_balance_on_edge_at_tip_angle()
    {
        // Each mass is rotated about the edge. The sum of the moments changes sign at the tip angle.
        PointMass[] masses = [new(300, -40, 150, 80), new(420, 10, 900, 35), new(250, 100, 1700, 22)];
        var area = SupportArea.Under(1200, 800, 30, 30, 30);
        var tip = Stability.LeastTip(area, Sum(masses).Centre!.Value);
        Assert.Equal(SupportSide.Front, tip.Side);
        Assert.True(LeverAtTilt(masses, area.FrontMm, tip.Deg - 1e-6) > 0);
        Assert.True(LeverAtTilt(masses, area.FrontMm, tip.Deg + 1e-6) < 0);
    }

    [Fact]
    [Trait("Kind", "property")]
    public void Smallest_tip_angle_is_minimum_of_four() =>
        Gen.Select(Gen.Double[0, 1000], Gen.Double[-300, 300], Gen.Double[10, 2000]).Sample((x, y, z) =>
        {
            var area = SupportArea.Under(600, 1000, 30, 30, 30);
            var centre = new PointMass(x, y, z, 100);
            var tip = Stability.LeastTip(area, centre);
            Assert.Equal(Enum.GetValues<SupportSide>().Min(s => Stability.TipAngleDeg(area.DistanceMm(s, centre), z)), tip.Deg);
            Assert.Equal(x is > 30 and < 970 && y is > -270 and < 270, tip.Stands);
        }, iter: Samples.Of(1_000));

    [Fact]
    [Trait("Kind", "property")]
    public void Lowering_a_mass_never_reduces_tip_angle() =>
        Gen.Select(Gen.Double[31, 969], Gen.Double[-269, 269], Gen.Double[0, 2000], Gen.Double[0, 1], Gen.Double[1, 100]).Sample((x, y, z, share, kg) =>
        {
            // Both masses lie within the edges, so the cabinet stands.
            var area = SupportArea.Under(600, 1000, 30, 30, 30);
            var cabinet = default(MassSum).Add(new(500, 0, 1000, 100));
            var high = Stability.LeastTip(area, cabinet.Add(new(x, y, z, kg)).Centre!.Value);
            var low = Stability.LeastTip(area, cabinet.Add(new(x, y, z * share, kg)).Centre!.Value);
            Assert.True(low.Deg >= high.Deg - 1e-12, $"{low} under {high}");
        }, iter: Samples.Of(1_000));

    [Theory]
    [InlineData(100, 300, 2000, 196.133, 0.75)] // IEC 60950-1 4.1
    [InlineData(300, 300, 2000, 250, 1.765197)] // IEC 60950-1 4.1
    [InlineData(60, 250, 1500, 117.6798, 0.8333333333333334)] // IEC 60950-1 4.1
    [InlineData(169.953, 300, 2000, 250, 1)] // passes from 169.953 kg
    public void Push_of_older_standard_is_20_percent_up_to_2_m(double kg, double distance, double top, double force, double factor)
    {
        var push = Stability.Push(kg, distance, top, sharePercent: 20, capN: 250, heightMm: 2000);
        Assert.Equal(force, push.ForceN, 1e-9);
        Assert.Equal(factor, push.Factor, 1e-5);
    }

    [Theory]
    [InlineData(100, 300, 2000, 127.48645, 1500, 1.5384615)] // IEC 62368-1 8.6: 13 % at 1.5 m: b/(0.13 h) = 0.3/0.195
    [InlineData(300, 300, 2000, 250, 1500, 2.353596)] // the cap: 882.5985 / 375
    [InlineData(100, 300, 1000, 127.48645, 1000, 2.3076923)] // a low cabinet, at its top: 0.3/0.13
    public void Push_is_13_percent_up_to_1500_mm(double kg, double distance, double top, double force, double at, double factor)
    {
        var push = Stability.Push(kg, distance, top);
        Assert.Equal((force, at), (Math.Round(push.ForceN, 9), push.HeightMm));
        Assert.Equal(factor, push.Factor, 1e-6);
    }

    [Fact]
    [Trait("Kind", "property")]
    public void Push_tips_where_resultant_passes_the_edge() =>
        Gen.Select(Gen.Double[20, 1500], Gen.Double[-100, 600], Gen.Double[300, 2500]).Sample((kg, distance, top) =>
        {
            var push = Stability.Push(kg, distance, top);
            var within = distance - (push.ForceN * push.HeightMm / (kg * 9.80665));
            Assert.True(Math.Abs(within) < 1e-6 || within > 0 == push.Factor > 1);
        }, iter: Samples.Of(1_000));

    [Theory]
    [InlineData(150, 300, 900, 40, 350, 1200, 3.2142857142857144, 9.614569270900953)] // statics
    [InlineData(80, 250, 900, 60, 400, 1000, 0.8333333333333334, null)] // statics
    [InlineData(300, 350, 800, 75, 450, 1000, 3.111111111111111, 12.745289473132855)] // statics
    public void Extended_item_overturns_and_the_rest_stabilises(
        double restKg, double restBehind, double restHeight, double kg, double before, double height, double factor, double? angle)
    {
        // The item was 100 behind an edge that is 30 behind the front face.
        var item = new PointMass(130, 0, height, kg);
        var all = default(MassSum).Add(new(30 + restBehind, 0, restHeight, restKg)).Add(item);
        var pulled = PullOut(all, item, 100 + before, 30);
        Assert.Equal(factor, pulled.Factor!.Value, 1e-9);
        Assert.Equal(restKg * 9.80665 * restBehind / 1000, pulled.RestoringNm, 1e-9);
        Assert.Equal(kg * 9.80665 * before / 1000, pulled.OverturningNm, 1e-9);
        Assert.Equal(factor < 1, pulled.TipDeg < 0);
        if (angle is { } deg)
        {
            Assert.Equal(deg, pulled.TipDeg, 1e-9);
        }
    }

    [Fact]
    public void Extended_item_behind_edge_stabilises()
    {
        var item = new PointMass(500, 0, 1000, 40);
        var pulled = PullOut(default(MassSum).Add(new(400, 0, 900, 100)).Add(item), item, 300, 30);
        Assert.Null(pulled.Factor);
        Assert.Equal(9.80665 * ((100 * 0.37) + (40 * 0.17)), pulled.RestoringNm, 1e-9);
        Assert.Equal(0, pulled.OverturningNm);
    }

    [Fact]
    public void Other_masses_in_front_of_edge_overturn()
    {
        var item = new PointMass(500, 0, 1000, 40);
        var pulled = PullOut(default(MassSum).Add(new(0, 0, 900, 10)).Add(item), item, 600, 30);
        Assert.Equal(0, pulled.Factor);
        Assert.Equal(9.80665 * ((10 * 0.03) + (40 * 0.13)), pulled.OverturningNm, 1e-9);
    }

    [Fact]
    public void Single_item_stabilises_until_its_centre_passes_the_edge()
    {
        var item = new PointMass(500, 0, 1000, 40);
        var all = default(MassSum).Add(item);
        Assert.Null(PullOut(all, item, 400, 30).Factor);
        Assert.Equal(0, PullOut(all, item, 600, 30).Factor);
    }

    [Fact]
    public void Cabinet_with_extended_item_balances_at_tip_angle()
    {
        PointMass[] rest = [new(300, 0, 150, 80), new(420, 0, 900, 35)];
        var item = new PointMass(250, 0, 1700, 22);
        var pulled = PullOut(Sum([.. rest, item]), item, 450, 30);
        PointMass[] masses = [.. rest, item with { XMm = -200 }];
        Assert.True(LeverAtTilt(masses, 30, pulled.TipDeg - 1e-6) > 0);
        Assert.True(LeverAtTilt(masses, 30, pulled.TipDeg + 1e-6) < 0);
    }

    [Fact]
    [Trait("Kind", "property")]
    public void Heavier_base_never_reduces_moment_ratio() =>
        Gen.Select(Gen.Double[1, 100], Gen.Double[0, 1200], Gen.Double[0, 200], Gen.Double[31, 900], Gen.Double[0, 2000])
            .Sample((kg, forward, more, behind, height) =>
        {
            // The base lies on the floor with its centre of gravity behind the edge, so alone it tips at 90 degrees.
            var item = new PointMass(400, 0, height, kg);
            var light = default(MassSum).Add(new(behind, 0, 900, 80)).Add(item);
            var before = PullOut(light, item, forward, 30);
            var after = PullOut(light.Add(new(behind, 0, 0, more)), item, forward, 30);
            Assert.True(before.Factor is null ? after.Factor is null : after.Factor >= before.Factor - 1e-9);
            Assert.True(after.TipDeg >= before.TipDeg - 1e-9);
        }, iter: Samples.Of(1_000));

    [Fact]
    [Trait("Kind", "property")]
    public void Further_extension_never_raises_moment_ratio() =>
        Gen.Select(Gen.Double[1, 100], Gen.Double[0, 1200], Gen.Double[0, 300]).Sample((kg, forward, further) =>
        {
            var item = new PointMass(400, 0, 1200, kg);
            var all = default(MassSum).Add(new(450, 0, 900, 120)).Add(item);
            var (near, far) = (PullOut(all, item, forward, 30), PullOut(all, item, forward + further, 30));
            Assert.True((far.Factor ?? double.PositiveInfinity) <= (near.Factor ?? double.PositiveInfinity) + 1e-9);
            Assert.True(far.TipDeg <= near.TipDeg + 1e-9);
        }, iter: Samples.Of(1_000));

    [Fact]
    public void Limits_match_reference_values()
    {
        // IEC 62368-1 8.6.
        Assert.Equal((10, 13, 250, 1500), (Stability.LeastTipDeg, Stability.PushPercent, Stability.PushN, Stability.PushHeightMm));
        Assert.Equal((1.25, 30), (Stability.LeastPulledOutFactor, SupportArea.CastorInsetMm));
    }

    [Theory]
    [InlineData(300, -1)]
    [InlineData(double.NaN, 1000)]
    [InlineData(double.PositiveInfinity, 1000)]
    [InlineData(300, double.NaN)]
    public void Centre_out_of_range_throws(double distance, double height)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Stability.TipAngleDeg(distance, height));
        Assert.Throws<ArgumentOutOfRangeException>(() => Stability.LeastTip(new(0, 600, -300, 300), new(distance, 0, height, 1)));
    }

    [Theory]
    [InlineData(-1, 10)]
    [InlineData(300, 0)]
    [InlineData(300, 90)]
    [InlineData(double.NaN, 10)]
    [InlineData(300, double.NaN)]
    public void Angle_out_of_range_throws(double distance, double angle) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Stability.GreatestHeightMm(distance, angle));

    [Theory]
    [InlineData(0, 300, 2000, 13, 250, 1500)]
    [InlineData(100, double.NaN, 2000, 13, 250, 1500)]
    [InlineData(100, 300, 0, 13, 250, 1500)]
    [InlineData(100, 300, 2000, 0, 250, 1500)]
    [InlineData(100, 300, 2000, 100.1, 250, 1500)]
    [InlineData(100, 300, 2000, 13, 0, 1500)]
    [InlineData(100, 300, 2000, 13, 250, 0)]
    [InlineData(100, 300, 2000, double.NaN, 250, 1500)]
    public void Push_out_of_range_throws(double kg, double distance, double top, double share, double cap, double height) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Stability.Push(kg, distance, top, share, cap, height));

    [Theory]
    [InlineData(0, 475, 1.4814814814814814)] // statics: 60 x 500 / (90 x 225), 60 kg at 500, 90 kg pulled out to 225 in front
    [InlineData(25, 475, 1.2666666666666666)] // 60 x 475 / (90 x 250)
    [InlineData(75, 475, 0.9444444444444444)] // 60 x 425 / (90 x 300)
    public void Line_of_feet_decides(double edge, double inside, double factor)
    {
        var item = new PointMass(inside, 0, 1000, 90);
        Assert.Equal(factor, PullOut(default(MassSum).Add(new(500, 0, 900, 60)).Add(item), item, 700, edge).Factor!.Value, 1e-9);
    }

    [Theory]
    [InlineData(0, 1.1111111111111112)] // statics: 60 x 500 / (2 x 60 x 225)
    [InlineData(75, 0.7083333333333334)] // 60 x 425 / (2 x 60 x 300)
    [InlineData(25, 0.95)] // 60 x 475 / (2 x 60 x 250)
    public void Two_items_out_add_their_moments(double edge, double factor) => Assert.Equal(
        factor,
        Stability.PullOut(default(MassSum).Add(new(500, 0, 900, 60)), edge, new(-225, 0, 400, 60), new(-225, 0, 700, 60)).Factor!.Value,
        1e-9);

    [Fact]
    public void Open_door_overturns_with_the_item()
    {
        // Statics: (60 - 15) x 425 / (40 x 300 + 15 x (75 + 300)).
        var pulled = Stability.PullOut(
            default(MassSum).Add(new(500, 0, 900, 45)), 75, new(-225, 0, 400, 40), DoorLeaves.Open(15, 600, 1, 900));
        Assert.Equal(19125.0 / 17625, pulled.Factor!.Value, 1e-9);
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(100, 45)]
    [InlineData(12.5, 7.125016348901798)] // atan 0.125, trigonometry
    [InlineData(10, 5.710593137499643)]
    public void Slope_is_its_angle(double percent, double deg)
    {
        Assert.Equal(deg, Stability.SlopeDeg(percent), 1e-9);
        Assert.Equal(percent, Stability.SlopePercent(deg), 1e-9);
    }

    [Fact]
    public void Angle_that_no_ramp_leaves_has_no_slope()
    {
        Assert.Equal(0, Stability.SlopePercent(-5));
        Assert.Throws<ArgumentOutOfRangeException>(() => Stability.SlopePercent(90));
    }

    [Theory]
    [InlineData(0, 1000, 30)]
    [InlineData(40, double.NaN, 30)]
    [InlineData(40, 1000, double.NaN)]
    public void Extension_out_of_range_throws(double kg, double height, double edge) =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            Stability.PullOut(default(MassSum).Add(new(400, 0, 900, 140)), edge, new PointMass(400, 0, height, kg)));

    [Fact]
    public void Nothing_pulled_out_and_negative_slope_throw()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Stability.PullOut(default, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Stability.SlopeDeg(-1));
    }

    [Fact]
    public void Centre_below_floor_throws()
    {
        var item = new PointMass(400, 0, -100, 40);
        Assert.Throws<ArgumentOutOfRangeException>(() => PullOut(default(MassSum).Add(item), item, 0, 30));
    }

    private static PulledOut PullOut(MassSum all, PointMass item, double forwardMm, double edgeMm) =>
        Stability.PullOut(all.TakeOut(item), edgeMm, item.Forward(forwardMm));

    private static MassSum Sum(PointMass[] masses) => masses.Aggregate(default(MassSum), (sum, m) => sum.Add(m));

    // Sum of mass times lever arm behind the front edge, after tilting forward about it.
    private static double LeverAtTilt(PointMass[] masses, double edge, double deg)
    {
        var (sin, cos) = Math.SinCos(deg * Math.PI / 180);
        return masses.Sum(m => m.Kg * (((m.XMm - edge) * cos) - (m.ZMm * sin)));
    }
}
