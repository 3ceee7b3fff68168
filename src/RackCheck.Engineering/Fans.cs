namespace RackCheck.Engineering;

/// <summary>Equal fans side by side.</summary>
/// <param name="Curve">What one of them moves.</param>
/// <param name="Count">How many, 0 or more.</param>
public readonly record struct FanGroup(FanCurve Curve, int Count);

/// <summary>Where fans and the losses of their path meet.</summary>
/// <param name="FlowM3h">Flow, m3/h.</param>
/// <param name="PressurePa">Pressure lost on the path, Pa.</param>
public readonly record struct WorkingPoint(double FlowM3h, double PressurePa);

/// <summary>Fans in parallel on one path of air.</summary>
/// <remarks>
/// Laws of fans (value from memory): flows of fans in parallel add at equal pressure; at the same speed the volume stays and the pressure goes with the density.
/// The installed share of a fan without a curve is common practice. Air that a strong fan drives back through a weak one is not in it.
/// </remarks>
public static class Fans
{
    /// <summary>Density that data sheets give curves for, kg/m3.</summary>
    public const double CurveDensityKgM3 = 1.2;

    /// <summary>Flow of fans in parallel against a pressure: the sum of theirs.</summary>
    /// <param name="fans">The fans.</param>
    /// <param name="pressurePa">Pressure, Pa at <see cref="CurveDensityKgM3"/>, 0 or more.</param>
    /// <returns>Flow, m3/h. Example: two lines from 60 Pa to 360 m3/h move 360 against 30 Pa.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A negative count or pressure.</exception>
    public static double FlowM3h(ReadOnlySpan<FanGroup> fans, double pressurePa)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(pressurePa, 0);
        CheckCounts(fans);
        return Sum(fans, pressurePa);
    }

    /// <summary>Working point: where the sum of the fans' flows at a pressure p meets the path, <c>p = K V^2</c>.</summary>
    /// <param name="fans">The fans; without any nothing moves.</param>
    /// <param name="k">Sum of the losses of the path K at the site's density, Pa/(m3/h)^2, 0 or more.</param>
    /// <param name="densityKgM3">Density of the site's air, kg/m3, over 0: curves are scaled to it from 1.2.</param>
    /// <returns>Flow and pressure; without losses the free flow at 0 Pa.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A negative count, a K that is negative or infinite, or a density not over 0.</exception>
    /// <remarks>
    /// The sum is straight between the pressures where one of the curves bends. Halving over the bends finds the piece that the path crosses; on it V = a - b p and
    /// p = K V^2 give <c>V = 2a/(1 + sqrt(1 + 4 a b K))</c>, exact to rounding. Where a curve is flat the sum jumps, and the path meets it at that pressure.
    /// </remarks>
    /// <example>Points (0, 60) (100, 45) (200, 38) (300, 20) (360, 0) on K = 5e-4: one fan 244.7 m3/h at 29.95 Pa, two 289.4 m3/h.</example>
    public static WorkingPoint WorkingPointOf(ReadOnlySpan<FanGroup> fans, double k, double densityKgM3 = CurveDensityKgM3)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(k, 0);
        ArgumentOutOfRangeException.ThrowIfEqual(k, double.PositiveInfinity);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(densityKgM3, 0);
        CheckCounts(fans);
        if (k == 0)
        {
            return new(Sum(fans, 0), 0);
        }

        var scale = densityKgM3 / CurveDensityKgM3;
        var low = LastBendReached(fans, k / scale);
        var (atZero, slope) = (0.0, 0.0);
        foreach (var group in fans)
        {
            var piece = group.Curve.PieceAbove(low);
            atZero += group.Count * piece.AtZero;
            slope += group.Count * piece.Slope;
        }

        var pathAtLow = Math.Sqrt(low * scale / k);
        if (atZero - (slope * low) < pathAtLow)
        {
            return new(pathAtLow, low * scale);
        }

        var flow = 2 * atZero / (1 + Math.Sqrt(1 + (4 * atZero * slope * k / scale)));
        return new(flow, k * flow * flow);
    }

    /// <summary>The greatest pressure at which a curve bends and the fans still move what the path lets through; 0 where there is none.</summary>
    private static double LastBendReached(ReadOnlySpan<FanGroup> fans, double k)
    {
        var (reached, missed) = (0.0, double.PositiveInfinity);
        foreach (var group in fans)
        {
            var bends = group.Curve.Bends;
            var (first, last) = (0, group.Count == 0 ? 0 : bends.Length);
            while (first < last)
            {
                var middle = (first + last) / 2;
                var pressure = bends[middle];
                if (pressure <= reached)
                {
                    last = middle;
                    continue;
                }

                if (pressure < missed)
                {
                    var flow = Sum(fans, pressure);
                    if (k * flow * flow >= pressure)
                    {
                        (reached, last) = (pressure, middle);
                        continue;
                    }

                    missed = pressure;
                }

                first = middle + 1;
            }
        }

        return reached;
    }

    private static double Sum(ReadOnlySpan<FanGroup> fans, double pressurePa)
    {
        var flow = 0.0;
        foreach (var group in fans)
        {
            flow += group.Count * group.Curve.FlowAt(pressurePa);
        }

        return flow;
    }

    private static void CheckCounts(ReadOnlySpan<FanGroup> fans)
    {
        foreach (var group in fans)
        {
            ArgumentOutOfRangeException.ThrowIfNegative(group.Count, nameof(fans));
        }
    }
}
