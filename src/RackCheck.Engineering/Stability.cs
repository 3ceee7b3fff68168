namespace RackCheck.Engineering;

/// <summary>How far a cabinet may be tilted before it falls, and over which edge.</summary>
/// <param name="Deg">Angle, degrees; negative where it falls by itself.</param>
/// <param name="Side">The edge.</param>
public readonly record struct TipAngle(double Deg, SupportSide Side)
{
    /// <summary>Whether it stands by itself: its centre of gravity lies within the edges.</summary>
    public bool Stands => Deg > 0;
}

/// <summary>A push at a height against the weight.</summary>
/// <param name="ForceN">The push, N.</param>
/// <param name="HeightMm">Where it acts above the floor, mm.</param>
/// <param name="RestoringNm">Moment of the weight about the edge, N m; negative where the cabinet falls by itself.</param>
/// <param name="OverturningNm">Moment of the push about the edge, N m.</param>
public readonly record struct PushTest(double ForceN, double HeightMm, double RestoringNm, double OverturningNm)
{
    /// <summary>Restoring to overturning moment; the push tips it under 1.</summary>
    public double Factor => RestoringNm / OverturningNm;
}

/// <summary>A cabinet with one mass pulled out of the front.</summary>
/// <param name="RestoringNm">Moment about the front edge of what lies behind it, N m.</param>
/// <param name="OverturningNm">Moment about the front edge of what lies before it, N m.</param>
/// <param name="TipDeg">Angle that it may be tilted forward then, degrees; negative where it falls by itself.</param>
public readonly record struct PulledOut(double RestoringNm, double OverturningNm, double TipDeg)
{
    /// <summary>Restoring to overturning moment; it falls under 1. Null where nothing lies before the edge.</summary>
    public double? Factor => OverturningNm > 0 ? RestoringNm / OverturningNm : null;
}

/// <summary>Whether a cabinet tips: tilted, pushed, or with a mass pulled out.</summary>
/// <remarks>
/// Rigid body on a rigid level floor, neither bolted down nor joined to others. Limits: IEC 62368-1 clause 8.6 (tilt: value from memory;
/// push: secondary source); the moment ratio of a pulled-out mass is common practice. The rest is statics.
/// </remarks>
public static class Stability
{
    /// <summary>Least tip angle to any side, degrees: IEC 62368-1 8.6.</summary>
    public const double LeastTipDeg = 10;

    /// <summary>Push as a share of the weight, percent: IEC 62368-1 8.6.</summary>
    public const double PushPercent = 13;

    /// <summary>Greatest push, N: IEC 62368-1 8.6.</summary>
    public const double PushN = 250;

    /// <summary>Greatest height of the push above the floor, mm: IEC 62368-1 8.6.</summary>
    public const double PushHeightMm = 1500;

    /// <summary>Least restoring to overturning moment with a mass pulled out. Common practice, no source.</summary>
    public const double LeastPulledOutFactor = 1.25;

    /// <summary>Tip angle over an edge: <c>atan(b/h)</c>.</summary>
    /// <param name="distanceMm">From the centre of gravity to the edge b, on the floor, mm; negative beyond it.</param>
    /// <param name="heightMm">Height of the centre of gravity above the floor h, mm, 0 or more.</param>
    /// <returns>Angle, degrees, -90 to 90; 0 where both are 0.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A negative height, or no number.</exception>
    /// <example>b = 300, h = 1000: 16.699.</example>
    public static double TipAngleDeg(double distanceMm, double heightMm)
    {
        Require.Finite(distanceMm);
        Require.NotNegative(heightMm);
        return double.RadiansToDegrees(Math.Atan2(distanceMm, heightMm));
    }

    /// <summary>Greatest height of the centre of gravity that keeps a tip angle: <c>b / tan a</c>.</summary>
    /// <param name="distanceMm">From the centre of gravity to the edge b, on the floor, mm, 0 or more.</param>
    /// <param name="angleDeg">Angle a, degrees, over 0 and under 90.</param>
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

    /// <summary>Least tip angle over the four edges, which is that over the nearest.</summary>
    /// <param name="area">What it stands on.</param>
    /// <param name="centre">Its centre of gravity, 0 or more above the floor.</param>
    /// <returns>The angle and the edge.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A centre below the floor, or no number.</exception>
    /// <example>600 x 1000 on castors, centre in the middle and 900 high: atan(270/900) = 16.70 over the left.</example>
    public static TipAngle LeastTip(SupportArea area, PointMass centre)
    {
        var side = area.Nearest(centre);
        return new(TipAngleDeg(area.DistanceMm(side, centre), centre.ZMm), side);
    }

    /// <summary>A push: <c>F = min(s m g, cap)</c> at <c>h = min(height, top)</c> against <c>m g b</c>.</summary>
    /// <param name="massKg">Mass m, kg, over 0.</param>
    /// <param name="distanceMm">From the centre of gravity to the edge b, on the floor, mm; negative beyond it.</param>
    /// <param name="topMm">Top of the cabinet above the floor, mm, over 0.</param>
    /// <param name="sharePercent">Share of the weight s, percent, over 0 to 100.</param>
    /// <param name="capN">Greatest push, N, over 0.</param>
    /// <param name="heightMm">Greatest height of the push above the floor, mm, over 0.</param>
    /// <returns>The push and both moments.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <remarks>On a surface that does not slip; a cabinet that slides first does not tip. IEC 60950-1 4.1, the older, asks 20 %, 250 N, 2000 mm (value from memory).</remarks>
    /// <example>300 kg, b = 300, 2000 high, 20 %, 250 N at 2000: 250 N, 882.6 against 500 N m, 1.765.</example>
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
    /// One mass pulled out of the front: moments about the front edge, <c>m g (x - x_f)</c> each. What lies behind the edge restores, what lies
    /// before it overturns, so a mass whose centre stays behind the edge still helps to hold.
    /// </summary>
    /// <param name="all">All masses with the item in its place.</param>
    /// <param name="item">The item in its place, over 0 kg; one of those that were added up.</param>
    /// <param name="forwardMm">How far its centre moves forward, mm, 0 or more.</param>
    /// <param name="frontEdgeMm">Front support edge x_f, mm behind the outer front face.</param>
    /// <returns>Both moments, and the tip angle over the front edge then.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range, an item heavier than all, or a centre below the floor.</exception>
    /// <remarks>All but the item count as one mass at their common centre. Two items pulled out at once are worse than either; take them out of the sum and add them where they are first.</remarks>
    /// <example>150 kg at 300 behind the edge and 900 high, 40 kg pulled to 350 before it at 1200: 441.3 against 137.3 N m, 3.214; tip angle 9.615.</example>
    public static PulledOut PullOut(MassSum all, PointMass item, double forwardMm, double frontEdgeMm)
    {
        Require.Positive(item.Kg);
        Require.NotNegative(forwardMm);
        Require.Finite(frontEdgeMm);
        var rest = all.TakeOut(item);
        var moved = item.Forward(forwardMm);
        var restMoment = rest.Centre is { } centre ? MomentNm(centre, frontEdgeMm) : 0;
        var itemMoment = MomentNm(moved, frontEdgeMm);
        var restoring = Math.Max(restMoment, 0) + Math.Max(itemMoment, 0);
        var overturning = Math.Max(-restMoment, 0) + Math.Max(-itemMoment, 0);
        var together = rest.Add(moved).Centre!.Value;
        return new(restoring, overturning, TipAngleDeg(together.XMm - frontEdgeMm, together.ZMm));
    }

    private static double MomentNm(PointMass mass, double edgeMm) => Gravity.WeightN(mass.Kg) * (mass.XMm - edgeMm) / 1000;
}
