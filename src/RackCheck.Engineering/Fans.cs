namespace RackCheck.Engineering;

/// <summary>Identical fans in parallel.</summary>
/// <param name="Curve">Curve of one fan.</param>
/// <param name="Count">Number of fans, 0 or more.</param>
public readonly record struct FanGroup(FanCurve Curve, int Count);

/// <summary>Operating point of fans on an airflow path.</summary>
/// <param name="FlowM3h">Airflow, m3/h.</param>
/// <param name="PressurePa">Pressure drop of the path, Pa.</param>
public readonly record struct WorkingPoint(double FlowM3h, double PressurePa);

/// <summary>Fans in parallel on one airflow path.</summary>
/// <remarks>
/// Fan laws (values from memory): the flows of parallel fans add at equal pressure; at constant speed the volume flow stays the same and the pressure is
/// proportional to the density. The installed airflow of a fan without a curve is common practice. Reverse flow through a weak fan is not included.
/// </remarks>
public static class Fans
{
    /// <summary>Air density of the fan curves in data sheets, kg/m3.</summary>
    public const double CurveDensityKgM3 = 1.2;

    /// <summary>Total airflow of parallel fans against a pressure.</summary>
    /// <param name="fans">The fans.</param>
    /// <param name="pressurePa">Pressure, Pa at <see cref="CurveDensityKgM3"/>, 0 or more.</param>
    /// <returns>Airflow, m3/h. Example: two lines from 60 Pa to 360 m3/h gives 360 m3/h against 30 Pa.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A negative count or pressure.</exception>
    public static double FlowM3h(ReadOnlySpan<FanGroup> fans, double pressurePa)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(pressurePa, 0);
        CheckCounts(fans);
        return Sum(fans, pressurePa);
    }

    /// <summary>Operating point: total fan airflow at pressure p equals the flow of the path, <c>p = K V^2 + L V</c>.</summary>
    /// <param name="fans">The fans; without fans the airflow is 0.</param>
    /// <param name="k">Total loss coefficient K of the path at the site's air density, Pa/(m3/h)^2, 0 or more.</param>
    /// <param name="densityKgM3">Air density at the site, kg/m3, above 0. Curves are scaled to it from 1.2.</param>
    /// <param name="linear">Total linear loss L of filter mats, Pa/(m3/h), 0 or more; see <see cref="FilterMats"/>.</param>
    /// <returns>Airflow and pressure; without losses the free-air flow at 0 Pa.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A negative count, a K or L that is negative or infinite, or a density of 0 or less.</exception>
    /// <remarks>
    /// The total is linear between the pressures of the curve points. A bisection over these pressures finds the segment that the path crosses. There
    /// <c>V = a - b p</c> and <c>p = K V^2 + L V</c> give <c>V = 2a/(1 + b L + sqrt((1 + b L)^2 + 4 a b K))</c>, exact to rounding. Where a curve is flat the
    /// total jumps, and the path meets it at that pressure.
    /// </remarks>
    /// <example>Points (0, 60) (100, 45) (200, 38) (300, 20) (360, 0) on K = 5e-4: one fan 244.7 m3/h at 29.95 Pa, two 289.4 m3/h.</example>
    public static WorkingPoint WorkingPointOf(ReadOnlySpan<FanGroup> fans, double k, double densityKgM3 = CurveDensityKgM3, double linear = 0)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(k, 0);
        ArgumentOutOfRangeException.ThrowIfEqual(k, double.PositiveInfinity);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(densityKgM3, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(linear, 0);
        ArgumentOutOfRangeException.ThrowIfEqual(linear, double.PositiveInfinity);
        CheckCounts(fans);
        if (k == 0 && linear == 0)
        {
            return new(Sum(fans, 0), 0);
        }

        var scale = densityKgM3 / CurveDensityKgM3;
        var low = LastBendReached(fans, k / scale, linear / scale);
        var (atZero, slope) = (0.0, 0.0);
        foreach (var group in fans)
        {
            var piece = group.Curve.PieceAbove(low);
            atZero += group.Count * piece.AtZero;
            slope += group.Count * piece.Slope;
        }

        var pathAtLow = 2 * low * scale / (linear + Math.Sqrt((linear * linear) + (4 * k * low * scale)));
        if (low > 0 && atZero - (slope * low) < pathAtLow)
        {
            return new(pathAtLow, low * scale);
        }

        var one = 1 + (slope * linear / scale);
        var flow = 2 * atZero / (one + Math.Sqrt((one * one) + (4 * atZero * slope * k / scale)));
        return new(flow, (k * flow * flow) + (linear * flow));
    }

    /// <summary>The highest pressure of a curve point at which the fans still deliver the flow of the path; 0 where there is none.</summary>
    private static double LastBendReached(ReadOnlySpan<FanGroup> fans, double k, double linear)
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
                    if ((k * flow * flow) + (linear * flow) >= pressure)
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
