using CsCheck;

namespace RackCheck.Engineering.Tests;

/// <summary>Random fans.</summary>
internal static class FanSamples
{
    /// <summary>Points whose pressure falls with the flow, to zero or above.</summary>
    public static readonly Gen<CurvePoint[]> Falling =
        Gen.Select(Gen.Double[1, 200].Array[2, 8], Gen.Double[1, 30].Array[8], Gen.Bool, Gen.Bool).Select((flows, drops, fromZero, toZero) =>
        {
            var points = new CurvePoint[flows.Length];
            var (flow, pressure) = (fromZero ? 0 : flows[0], toZero ? 0.0 : 5);
            for (var i = 0; i < flows.Length; i++, flow += flows[i % flows.Length])
            {
                points[i] = new(flow, 0);
            }

            for (var i = flows.Length - 1; i >= 0; pressure += drops[i], i--)
            {
                points[i] = points[i] with { PressurePa = pressure };
            }

            return points;
        });

    /// <summary>The same, starting at zero flow, so that the flow changes with pressure without a jump.</summary>
    public static readonly Gen<CurvePoint[]> FallingFromZero =
        Falling.Select(points => (CurvePoint[])[new(0, points[0].PressurePa + 10), .. points.Where(p => p.FlowM3h > 0)]);

    /// <summary>Arbitrary points, including equal flows and pressures.</summary>
    public static readonly Gen<CurvePoint[]> Any =
        Gen.Select(Gen.Int[0, 12], Gen.Int[0, 12], (q, p) => new CurvePoint(25 * q, 7.5 * p)).Array[1, 10];

    /// <summary>Groups of fans of all kinds.</summary>
    public static readonly Gen<FanGroup[]> Bank = Gen.Select(
        Gen.OneOf(
            Falling.Select(p => FanCurve.Of(p)),
            Any.Select(p => FanCurve.Of(p)),
            Gen.Select(Gen.Double[0, 1000], Gen.Double[0, 300]).Select(FanCurve.Straight),
            Gen.Double[0, 1000].Select(FanCurve.Installed)),
        Gen.Int[0, 6]).Select((curve, count) => new FanGroup(curve, count)).Array[0, 6];

    /// <summary>Losses from nearly zero to nearly closed.</summary>
    public static readonly Gen<double> K = Gen.Double[-9, 1].Select(e => Math.Pow(10, e));
}
