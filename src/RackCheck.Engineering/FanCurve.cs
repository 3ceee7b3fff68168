namespace RackCheck.Engineering;

/// <summary>A point of a fan's curve.</summary>
/// <param name="FlowM3h">Flow, m3/h, 0 or more.</param>
/// <param name="PressurePa">Static pressure that the fan builds up at it, Pa, 0 or more.</param>
public readonly record struct CurvePoint(double FlowM3h, double PressurePa);

/// <summary>What one fan moves against a pressure: a straight line, given points, or a flow that is taken as fixed.</summary>
/// <remarks>
/// Curves are kept as flow that never rises with pressure, so that flows add at equal pressure. A stretch where the pressure rises with the flow, as a stalled
/// fan has, is read as flat at the lowest pressure so far: the cautious end, told by <see cref="Stalls"/>.
/// </remarks>
public sealed class FanCurve
{
    /// <summary>Share of the free flow that a fan moves once it is built in, percent, where nothing else is known of it.</summary>
    public const double InstalledSharePercent = 60;

    // Flow rises and pressure falls from point to point, neither strictly. No points: a fixed flow.
    private readonly double[] flows;
    private readonly double[] pressures;

    private FanCurve(double[] flows, double[] pressures, double freeFlowM3h, bool stalls) =>
        (this.flows, this.pressures, FreeFlowM3h, Stalls) = (flows, pressures, freeFlowM3h, stalls);

    /// <summary>Flow with nothing in its way, m3/h; of a fixed flow that flow.</summary>
    public double FreeFlowM3h { get; }

    /// <summary>Greatest pressure that it builds up, Pa; null of a fixed flow, whose curve is not known.</summary>
    public double? GreatestPa => IsFixed ? null : pressures[0];

    /// <summary>Whether it moves the same at any pressure, which is practice and no curve.</summary>
    public bool IsFixed => flows.Length == 0;

    /// <summary>Whether the points given rise somewhere: there the curve is read as flat, which is cautious.</summary>
    public bool Stalls { get; }

    /// <summary>Pressures at which its line bends, falling; empty of a fixed flow.</summary>
    internal ReadOnlySpan<double> Bends => pressures;

    /// <summary>A straight line from the greatest pressure at no flow to the free flow at none.</summary>
    /// <param name="freeFlowM3h">Flow with nothing in its way, m3/h, 0 or more.</param>
    /// <param name="greatestPa">Pressure at no flow, Pa, 0 or more.</param>
    /// <returns>The curve. Example: 360 m3/h and 60 Pa move 180 m3/h against 30 Pa.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is negative or no number.</exception>
    /// <remarks>Real curves mostly sag under the line in the middle or bulge over it; a data sheet's points count for more.</remarks>
    public static FanCurve Straight(double freeFlowM3h, double greatestPa)
    {
        Check(freeFlowM3h, nameof(freeFlowM3h));
        Check(greatestPa, nameof(greatestPa));
        return new([0, freeFlowM3h], [greatestPa, 0], freeFlowM3h, false);
    }

    /// <summary>A flow that is taken as fixed: 60 % of the free flow.</summary>
    /// <param name="freeFlowM3h">Flow with nothing in its way, m3/h, 0 or more.</param>
    /// <returns>The curve. Example: 500 m3/h move 300 at any pressure.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The flow is negative or no number.</exception>
    public static FanCurve Installed(double freeFlowM3h)
    {
        Check(freeFlowM3h, nameof(freeFlowM3h));
        return new([], [], freeFlowM3h * InstalledSharePercent / 100, false);
    }

    /// <summary>Given points joined by straight lines.</summary>
    /// <param name="points">One or more points, in any order.</param>
    /// <returns>The curve: below the first flow its pressure, past the last flow none. Example: (0, 60) and (100, 45) move 50 m3/h against 52.5 Pa.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No point, or one that is negative or no number.</exception>
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
                    // The line comes down to where the flat stretch before it ends.
                    var share = (from.PressurePa - lowest) / (from.PressurePa - to.PressurePa);
                    kept.Add(new(from.FlowM3h + (share * (to.FlowM3h - from.FlowM3h)), lowest));
                }

                kept.Add(to);
            }
        }

        // Past the first flow without pressure nothing is moved that counts; a flat end above none goes on to the last point.
        var last = sorted[^1].FlowM3h;
        if (last > kept[^1].FlowM3h && (kept[^1].PressurePa > 0 || kept.Count == 1))
        {
            kept.Add(new(last, kept[^1].PressurePa));
        }

        return new([.. kept.Select(p => p.FlowM3h)], [.. kept.Select(p => p.PressurePa)], kept[^1].FlowM3h, stalls);
    }

    /// <summary>Flow against a pressure: the greatest that is moved at it.</summary>
    /// <param name="pressurePa">Pressure, Pa, 0 or more.</param>
    /// <returns>Flow, m3/h; 0 above the greatest pressure.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The pressure is negative or no number.</exception>
    /// <example>A line from 60 Pa to 360 m3/h: 360 at 0 Pa, 180 at 30 Pa, 0 at 60 Pa and above.</example>
    public double FlowM3h(double pressurePa)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(pressurePa, 0);
        return FlowAt(pressurePa);
    }

    /// <summary>Pressure that is built up at a flow.</summary>
    /// <param name="flowM3h">Flow, m3/h, 0 or more.</param>
    /// <returns>Pressure, Pa; past the last flow 0; null of a fixed flow, whose curve is not known.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The flow is negative or no number.</exception>
    /// <example>A line from 60 Pa to 360 m3/h: 60 Pa at 0 m3/h, 30 Pa at 180 m3/h, 0 Pa from 360 m3/h on.</example>
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

    /// <summary>As <see cref="FlowM3h"/>, for pressures that are known to be none but right ones.</summary>
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

    /// <summary>The straight piece just above a pressure: flow is <c>AtZero - Slope x pressure</c> up to the next bend.</summary>
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
