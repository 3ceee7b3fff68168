namespace RackCheck.Engineering;

/// <summary>Tip angle of a cabinet, and the edge over which it tips.</summary>
/// <param name="Deg">Angle, degrees; negative where the cabinet tips over unaided.</param>
/// <param name="Side">Tipping edge.</param>
public readonly record struct TipAngle(double Deg, SupportSide Side)
{
    /// <summary>Whether the cabinet stands unaided: its centre of gravity lies within the support edges.</summary>
    public bool Stands => Deg > 0;
}

/// <summary>Result of a push test: a horizontal push at a height against the weight.</summary>
/// <param name="ForceN">Push force, N.</param>
/// <param name="HeightMm">Height of the push above the floor, mm.</param>
/// <param name="RestoringNm">Stabilising moment of the weight about the edge, N m; negative where the cabinet tips over unaided.</param>
/// <param name="OverturningNm">Overturning moment of the push about the edge, N m.</param>
public readonly record struct PushTest(double ForceN, double HeightMm, double RestoringNm, double OverturningNm)
{
    /// <summary>Ratio of stabilising to overturning moment; below 1 the push tips the cabinet.</summary>
    public double Factor => RestoringNm / OverturningNm;
}

/// <summary>Stability of a cabinet with one or more items extended at the front.</summary>
/// <param name="RestoringNm">Stabilising moment of the masses behind the front edge, N m.</param>
/// <param name="OverturningNm">Overturning moment of the masses in front of the front edge, N m.</param>
/// <param name="TipDeg">Forward tip angle with the items extended, degrees; negative where the cabinet tips over unaided.</param>
public readonly record struct PulledOut(double RestoringNm, double OverturningNm, double TipDeg)
{
    /// <summary>Ratio of stabilising to overturning moment; below 1 the cabinet tips over. Null where no mass lies in front of the edge.</summary>
    public double? Factor => OverturningNm > 0 ? RestoringNm / OverturningNm : null;
}

/// <summary>Stability of a cabinet: tilted, pushed, or with an item extended.</summary>
/// <remarks>
/// Rigid body on a rigid level floor, not bolted down and not connected to other cabinets. Limits: IEC 62368-1 clause 8.6 (tilt: value from memory; push:
/// secondary source). The moment ratio with an item extended is common practice. The rest is statics.
/// </remarks>
public static class Stability
{
    /// <summary>Minimum tip angle over any edge, degrees: IEC 62368-1 8.6.</summary>
    public const double LeastTipDeg = 10;

    /// <summary>Push force, percent of the weight: IEC 62368-1 8.6.</summary>
    public const double PushPercent = 13;

    /// <summary>Maximum push force, N: IEC 62368-1 8.6.</summary>
    public const double PushN = 250;

    /// <summary>Maximum height of the push above the floor, mm: IEC 62368-1 8.6.</summary>
    public const double PushHeightMm = 1500;

    /// <summary>Minimum ratio of stabilising to overturning moment with an item extended. Common practice, no source.</summary>
    public const double LeastPulledOutFactor = 1.25;

    /// <summary>Tip angle over an edge: <c>atan(b/h)</c>.</summary>
    /// <param name="distanceMm">Horizontal distance b from the centre of gravity to the edge, mm; negative beyond the edge.</param>
    /// <param name="heightMm">Height of the centre of gravity above the floor h, mm, 0 or more.</param>
    /// <returns>Angle, degrees, -90 to 90; 0 where both are 0.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A negative height, or not a finite number.</exception>
    /// <example>b = 300, h = 1000: 16.699.</example>
    public static double TipAngleDeg(double distanceMm, double heightMm)
    {
        Require.Finite(distanceMm);
        Require.NotNegative(heightMm);
        return double.RadiansToDegrees(Math.Atan2(distanceMm, heightMm));
    }

    /// <summary>Angle of a slope: <c>atan(s / 100)</c>.</summary>
    /// <param name="slopePercent">Slope s, rise over run, percent, 0 or more.</param>
    /// <returns>Angle, degrees. Example: 12.5 % gives 7.125; 100 % gives 45.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A negative slope, or not a finite number.</exception>
    /// <remarks>Source: trigonometry.</remarks>
    public static double SlopeDeg(double slopePercent)
    {
        Require.NotNegative(slopePercent);
        return double.RadiansToDegrees(Math.Atan(slopePercent / 100));
    }

    /// <summary>Slope of a ramp with an angle: <c>100 tan a</c>.</summary>
    /// <param name="angleDeg">Angle a, degrees, below 90; an angle below 0 has no slope.</param>
    /// <returns>Slope, %; 0 where the angle is 0 or less. Example: 7.125 degrees give 12.5.</returns>
    /// <exception cref="ArgumentOutOfRangeException">90 degrees or more.</exception>
    /// <remarks>Source: trigonometry.</remarks>
    public static double SlopePercent(double angleDeg)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(angleDeg, 90);
        return 100 * Math.Tan(double.DegreesToRadians(Math.Max(0, angleDeg)));
    }

    /// <summary>Maximum height of the centre of gravity for a tip angle: <c>b / tan a</c>.</summary>
    /// <param name="distanceMm">Horizontal distance b from the centre of gravity to the edge, mm, 0 or more.</param>
    /// <param name="angleDeg">Angle a, degrees, above 0 and below 90.</param>
    /// <returns>Height, mm.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <example>b = 300, 10 degrees: 1701.4.</example>
    public static double GreatestHeightMm(double distanceMm, double angleDeg)
    {
        Require.NotNegative(distanceMm);
        Require.Positive(angleDeg);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(angleDeg, 90);
        return distanceMm / Math.Tan(double.DegreesToRadians(angleDeg));
    }

    /// <summary>Smallest tip angle of the four edges, which is the angle over the nearest edge.</summary>
    /// <param name="area">Support area.</param>
    /// <param name="centre">Centre of gravity, 0 or more above the floor.</param>
    /// <returns>The angle and the edge.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A centre of gravity below the floor, or not a finite number.</exception>
    /// <example>600 x 1000 on feet 50 from the frame, centre of gravity in the middle at 900 mm: atan(250/900) = 15.52 over the left edge.</example>
    public static TipAngle LeastTip(SupportArea area, PointMass centre)
    {
        var side = area.Nearest(centre);
        return new(TipAngleDeg(area.DistanceMm(side, centre), centre.ZMm), side);
    }

    /// <summary>Push test: <c>F = min(s m g, cap)</c> at <c>h = min(height, top)</c> against <c>m g b</c>.</summary>
    /// <param name="massKg">Mass m, kg, above 0.</param>
    /// <param name="distanceMm">Horizontal distance b from the centre of gravity to the edge, mm; negative beyond the edge.</param>
    /// <param name="topMm">Top of the cabinet above the floor, mm, above 0.</param>
    /// <param name="sharePercent">Share s of the weight, percent, above 0 to 100.</param>
    /// <param name="capN">Maximum push force, N, above 0.</param>
    /// <param name="heightMm">Maximum height of the push above the floor, mm, above 0.</param>
    /// <returns>The push and both moments.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <remarks>
    /// On a non-slip surface; a cabinet that slides does not tip. The older IEC 60950-1 4.1 requires 20 %, 250 N, 2000 mm (value from memory).
    /// </remarks>
    /// <example>300 kg, b = 300, 2000 high, 20 %, 250 N at 2000: 250 N, 882.6 N m against 500 N m, ratio 1.765.</example>
    public static PushTest Push(
        double massKg,
        double distanceMm,
        double topMm,
        double sharePercent = PushPercent,
        double capN = PushN,
        double heightMm = PushHeightMm)
    {
        Require.Positive(massKg);
        Require.Finite(distanceMm);
        Require.Positive(topMm);
        Require.Positive(sharePercent);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(sharePercent, 100);
        Require.Positive(capN);
        Require.Positive(heightMm);
        var weight = Gravity.WeightN(massKg);
        var force = Math.Min(weight * sharePercent / 100, capN);
        var at = Math.Min(heightMm, topMm);
        return new(force, at, weight * distanceMm / 1000, force * at / 1000);
    }

    /// <summary>
    /// Items extended at the front, past the open door: moments about the front edge, <c>m g (x - x_f)</c> each. A mass behind the edge stabilises, a mass
    /// in front of it overturns. An extended item whose centre of gravity stays behind the edge still stabilises.
    /// </summary>
    /// <param name="rest">All masses that stay in place.</param>
    /// <param name="frontEdgeMm">Front support edge x_f, mm behind the outer front face; negative in front of it.</param>
    /// <param name="moved">The extended items, and the open door, at their new positions; at least one, each above 0 kg.</param>
    /// <returns>Both moments and the forward tip angle.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range, or a centre of gravity is below the floor.</exception>
    /// <remarks>The masses in place count as one mass at their common centre of gravity.</remarks>
    /// <example>
    /// 150 kg at 300 behind the edge and 900 high, 40 kg extended to 350 in front of it at 1200: 441.3 N m against 137.3 N m, ratio 3.214; tip angle
    /// 9.615.
    /// </example>
    public static PulledOut PullOut(MassSum rest, double frontEdgeMm, params ReadOnlySpan<PointMass> moved)
    {
        Require.Finite(frontEdgeMm);
        ArgumentOutOfRangeException.ThrowIfZero(moved.Length);
        var restMoment = rest.Centre is { } centre ? MomentNm(centre, frontEdgeMm) : 0;
        var (restoring, overturning, together) = (Math.Max(restMoment, 0), Math.Max(-restMoment, 0), rest);
        foreach (var mass in moved)
        {
            Require.Positive(mass.Kg);
            together = together.Add(mass);
            var moment = MomentNm(mass, frontEdgeMm);
            restoring += Math.Max(moment, 0);
            overturning += Math.Max(-moment, 0);
        }

        var all = together.Centre!.Value;
        return new(restoring, overturning, TipAngleDeg(all.XMm - frontEdgeMm, all.ZMm));
    }

    private static double MomentNm(PointMass mass, double edgeMm) => Gravity.WeightN(mass.Kg) * (mass.XMm - edgeMm) / 1000;
}
