namespace RackCheck.Engineering;

/// <summary>A point of a fan curve.</summary>
/// <param name="FlowM3h">Airflow, m3/h, 0 or more.</param>
/// <param name="PressurePa">Static pressure at this airflow, Pa, 0 or more.</param>
public readonly record struct CurvePoint(double FlowM3h, double PressurePa);

/// <summary>Airflow of one fan against pressure: a straight line, a curve through points, or a fixed flow.</summary>
/// <remarks>
/// A curve is stored as a flow that never rises with pressure, so that flows add at equal pressure. A range where the pressure rises with the flow (fan
/// stall) is read as flat at the lowest pressure up to that flow. This is conservative and is reported by <see cref="Stalls"/>.
/// </remarks>
public sealed class FanCurve
{
    /// <summary>Installed airflow of a fan without a curve, percent of its free-air flow.</summary>
    public const double InstalledSharePercent = 60;

    // Flow rises and pressure falls from point to point, not strictly. No points: a fixed flow.
    private readonly double[] flows;
    private readonly double[] pressures;

    private FanCurve(double[] flows, double[] pressures, double freeFlowM3h, bool stalls) =>
        (this.flows, this.pressures, FreeFlowM3h, Stalls) = (flows, pressures, freeFlowM3h, stalls);

    /// <summary>Free-air flow, m3/h; for a fixed flow, that flow.</summary>
    public double FreeFlowM3h { get; }

    /// <summary>Maximum static pressure, Pa; null for a fixed flow, whose curve is unknown.</summary>
    public double? GreatestPa => IsFixed ? null : pressures[0];

    /// <summary>Whether the flow is fixed at any pressure (common practice, not a curve).</summary>
    public bool IsFixed => flows.Length == 0;

    /// <summary>Whether the pressure of the given points rises with the flow. There the curve is read as flat, which is conservative.</summary>
    public bool Stalls { get; }

    /// <summary>Pressures of the curve points, descending; empty for a fixed flow.</summary>
    internal ReadOnlySpan<double> Bends => pressures;

    /// <summary>A straight line from the maximum static pressure at zero flow to the free-air flow at zero pressure.</summary>
    /// <param name="freeFlowM3h">Free-air flow, m3/h, 0 or more.</param>
    /// <param name="greatestPa">Static pressure at zero flow, Pa, 0 or more.</param>
    /// <returns>The curve. Example: 360 m3/h and 60 Pa gives 180 m3/h against 30 Pa.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is negative or not a finite number.</exception>
    /// <remarks>Real curves lie below or above the line in the middle. Points from the data sheet take precedence.</remarks>
    public static FanCurve Straight(double freeFlowM3h, double greatestPa)
    {
        Check(freeFlowM3h, nameof(freeFlowM3h));
        Check(greatestPa, nameof(greatestPa));
        return new([0, freeFlowM3h], [greatestPa, 0], freeFlowM3h, false);
    }

    /// <summary>A fixed flow: 60 % of the free-air flow.</summary>
    /// <param name="freeFlowM3h">Free-air flow, m3/h, 0 or more.</param>
    /// <returns>The curve. Example: 500 m3/h gives 300 m3/h at any pressure.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The flow is negative or not a finite number.</exception>
    public static FanCurve Installed(double freeFlowM3h)
    {
        Check(freeFlowM3h, nameof(freeFlowM3h));
        return new([], [], freeFlowM3h * InstalledSharePercent / 100, false);
    }

    /// <summary>A curve through given points, joined by straight lines.</summary>
    /// <param name="points">One or more points, in any order.</param>
    /// <returns>
    /// The curve: constant pressure below the first flow, zero pressure above the last flow. Example: (0, 60) and (100, 45) gives 50 m3/h against 52.5 Pa.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">No points, or a point that is negative or not a finite number.</exception>
    public static FanCurve Of(ReadOnlySpan<CurvePoint> points)
    {
        ArgumentOutOfRangeException.ThrowIfZero(points.Length, nameof(points));
        var sorted = points.ToArray();
        foreach (var point in sorted)
        {
            Check(point.FlowM3h, nameof(points));
            Check(point.PressurePa, nameof(points));
        }

        Array.Sort(sorted, static (a, b) => a.FlowM3h == b.FlowM3h ? b.PressurePa.CompareTo(a.PressurePa) : a.FlowM3h.CompareTo(b.FlowM3h));
        var kept = new List<CurvePoint>(2 * sorted.Length) { sorted[0] };
        var stalls = false;
        for (var i = 1; i < sorted.Length; i++)
        {
            var (from, to) = (sorted[i - 1], sorted[i]);
            stalls |= to.PressurePa > from.PressurePa;
            var lowest = kept[^1].PressurePa;
            if (to.PressurePa < lowest)
            {
                if (from.FlowM3h > kept[^1].FlowM3h || from.PressurePa > lowest)
                {
                    // The line falls to the end of the preceding flat range.
                    var share = (from.PressurePa - lowest) / (from.PressurePa - to.PressurePa);
                    kept.Add(new(from.FlowM3h + (share * (to.FlowM3h - from.FlowM3h)), lowest));
                }

                kept.Add(to);
            }
        }

        // The curve ends at the first flow with zero pressure. A flat end above zero pressure continues to the last point.
        var last = sorted[^1].FlowM3h;
        if (last > kept[^1].FlowM3h && (kept[^1].PressurePa > 0 || kept.Count == 1))
        {
            kept.Add(new(last, kept[^1].PressurePa));
        }

        return new([.. kept.Select(p => p.FlowM3h)], [.. kept.Select(p => p.PressurePa)], kept[^1].FlowM3h, stalls);
    }

    /// <summary>Maximum airflow against a pressure.</summary>
    /// <param name="pressurePa">Pressure, Pa, 0 or more.</param>
    /// <returns>Airflow, m3/h; 0 above the maximum static pressure.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The pressure is negative or not a finite number.</exception>
    /// <example>A line from 60 Pa to 360 m3/h: 360 at 0 Pa, 180 at 30 Pa, 0 at 60 Pa and above.</example>
    public double FlowM3h(double pressurePa)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(pressurePa, 0);
        return FlowAt(pressurePa);
    }

    /// <summary>Static pressure at an airflow.</summary>
    /// <param name="flowM3h">Flow, m3/h, 0 or more.</param>
    /// <returns>Pressure, Pa; 0 above the last flow; null for a fixed flow, whose curve is unknown.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The flow is negative or not a finite number.</exception>
    /// <example>A line from 60 Pa to 360 m3/h: 60 Pa at 0 m3/h, 30 Pa at 180 m3/h, 0 Pa from 360 m3/h.</example>
    public double? PressurePa(double flowM3h)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(flowM3h, 0);
        if (IsFixed)
        {
            return null;
        }

        if (flowM3h > flows[^1])
        {
            return 0;
        }

        var next = 0;
        while (flows[next] < flowM3h)
        {
            next++;
        }

        if (next == 0)
        {
            return pressures[0];
        }

        var share = (flowM3h - flows[next - 1]) / (flows[next] - flows[next - 1]);
        return pressures[next - 1] + (share * (pressures[next] - pressures[next - 1]));
    }

    /// <summary>As <see cref="FlowM3h"/>, for pressures that are already validated.</summary>
    internal double FlowAt(double pressurePa)
    {
        if (IsFixed)
        {
            return FreeFlowM3h;
        }

        var last = LastAtLeast(pressurePa);
        if (last < 0 || last == flows.Length - 1)
        {
            return last < 0 ? 0 : flows[^1];
        }

        var share = (pressures[last] - pressurePa) / (pressures[last] - pressures[last + 1]);
        return flows[last] + (share * (flows[last + 1] - flows[last]));
    }

    /// <summary>The straight segment just above a pressure: the flow is <c>AtZero - Slope x pressure</c> up to the next point.</summary>
    internal (double AtZero, double Slope) PieceAbove(double pressurePa)
    {
        if (IsFixed)
        {
            return (FreeFlowM3h, 0);
        }

        var last = LastAbove(pressurePa);
        if (last < 0 || last == flows.Length - 1)
        {
            return (last < 0 ? 0 : flows[^1], 0);
        }

        var slope = (flows[last + 1] - flows[last]) / (pressures[last] - pressures[last + 1]);
        return (flows[last] + (slope * pressures[last]), slope);
    }

    private static void Check(double value, string name)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(value, 0, name);
        ArgumentOutOfRangeException.ThrowIfEqual(value, double.PositiveInfinity, name);
    }

    private int LastAtLeast(double pressurePa)
    {
        var (low, high) = (-1, pressures.Length);
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            (low, high) = pressures[middle] >= pressurePa ? (middle, high) : (low, middle);
        }

        return low;
    }

    private int LastAbove(double pressurePa)
    {
        var (low, high) = (-1, pressures.Length);
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            (low, high) = pressures[middle] > pressurePa ? (middle, high) : (low, middle);
        }

        return low;
    }
}
