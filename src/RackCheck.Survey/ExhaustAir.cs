using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Survey;

/// <summary>The mixed exhaust air behind the equipment: items with a known airflow that do not blow to the front.</summary>
/// <param name="HeatW">Their heat, W.</param>
/// <param name="FlowM3h">Their airflow, m3/h; 0 in a closed cabinet without fans, where this is the air inside.</param>
/// <param name="InletC">Temperature of the air that they take in, C.</param>
/// <param name="RiseK">Rise of the mixed air, K, rounded to 0.001.</param>
public sealed record ExhaustAir(double HeatW, double FlowM3h, double InletC, double RiseK)
{
    /// <summary>Default maximum ambient temperature of a PDU, C; common practice, no source.</summary>
    public const double UsualPduC = 60;

    /// <summary>Temperature of the mixed air, C.</summary>
    public double TemperatureC => Quantities.Round(InletC + RiseK);

    /// <summary>The exhaust air of a rack.</summary>
    /// <param name="heat">Its heat.</param>
    /// <param name="items">Its items.</param>
    /// <returns>The air; null without items of known airflow outside a closed cabinet, or if the temperature at their inlets is unknown.</returns>
    public static ExhaustAir? Of(HeatSurvey heat, IReadOnlyList<MountedItem> items)
    {
        var (watts, flow) = (0.0, 0.0);
        foreach (var item in items)
        {
            if (item.Item!.Airflow is { FlowM3h: { } own and > Comparison.Tolerance, Direction: not AirflowDirection.RearToFront }
                && HeatSurvey.HeatOf(item) is { } heatW)
            {
                (watts, flow) = (watts + heatW, flow + own);
            }
        }

        if (!heat.IsJudged)
        {
            return null;
        }

        // Without fans there is no exhaust; in a closed cabinet PDUs and cords are in its air, which is hottest at the top where nothing stirs it.
        if (watts <= 0)
        {
            var rise = heat.ClosedRiseK(heat.UsualTransferWM2K) * (heat.IsStirred ? 1 : Enclosures.StillTopFactor);
            return heat.AirPath.Mode == CoolingMode.Closed && heat.IsHeatKnown ? new(heat.KnownW, 0, Quantities.Round(heat.AmbientC + rise), 0) : null;
        }

        var inlet = heat.AirPath.Mode == CoolingMode.Closed ? heat.AmbientC + heat.ClosedRiseK(heat.UsualTransferWM2K) : heat.SupplyC;
        return inlet is not { } inletC ? null
            : new(Quantities.Round(watts), Quantities.Round(flow), Quantities.Round(inletC), Quantities.Round(Air.RiseK(watts, flow, heat.DensityKgM3)));
    }

    /// <summary>The temperature as arithmetic.</summary>
    /// <param name="densityKgM3">Density of the air, kg/m3.</param>
    public string Calculation(double densityKgM3) => FlowM3h == 0 ? Invariant($"{TemperatureC:0.###}")
        : Invariant($"3600 x {HeatW:0.###} / ({densityKgM3:0.####} x {Air.HeatCapacity:0} x {FlowM3h:0.###}) = {RiseK:0.###}; ")
            + Invariant($"{InletC:0.###} + {RiseK:0.###} = {TemperatureC:0.###}");

    /// <summary>Whether a PDU is in the exhaust air: every PDU but a horizontal one on the front uprights.</summary>
    /// <param name="pdu">The PDU.</param>
    public static bool Reaches(Pdu pdu) => pdu is not { Mounting: PduMounting.Horizontal, Position: { Face: null or Face.Front } };
}
