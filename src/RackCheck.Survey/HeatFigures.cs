using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Layout;

namespace RackCheck.Survey;

/// <summary>Makes the cooling figures of the report.</summary>
internal sealed class HeatFigures(HeatSurvey heat, MountedItem[] items)
{
    private double? DoorLossPa()
    {
        double? loss = null;
        foreach (var door in new[] { heat.AirPath.Front, heat.AirPath.Rear })
        {
            if (door is not null)
            {
                if (door.LossK(heat.DensityKgM3) is not { } k)
                {
                    return null;
                }

                loss = (loss ?? 0) + Openings.LossPa(k, heat.DoorFlowM3h);
            }
        }

        return loss;
    }

    /// <summary>The cooling figures; those that depend on unknown data are absent.</summary>
    /// <returns>The figures.</returns>
    public CoolingFigures Make()
    {
        var isWhole = heat.IsHeatKnown && heat.IsJudged;
        var isClosed = heat.IsJudged && heat.AirPath.Mode is CoolingMode.Closed or CoolingMode.AirConditioner;
        double? rise = !isWhole ? null
            : heat.AirPath.Mode == CoolingMode.Closed ? heat.ClosedRiseK(heat.UsualTransferWM2K)
            : heat.AvailableM3h is not ({ } flow and > 0) ? null
            : heat.AirPath is { Mode: CoolingMode.Forced, HasRoofFans: true }
                ? Air.RiseAtOutletK(heat.KnownW, flow, heat.DensityKgM3, heat.AmbientC) is { } hot ? Quantities.Round(hot) : null
                : Quantities.Round(Air.RiseK(heat.KnownW, flow, heat.DensityKgM3));
        return new CoolingFigures
        {
            HeatW = heat.IsHeatKnown ? heat.KnownW : null,
            HeatBtuH = heat.IsHeatKnown ? Quantities.Round(heat.KnownW * Air.BtuHPerW) : null,
            AirDensityKgM3 = heat.IsJudged ? heat.DensityKgM3 : null,
            AirflowNeededM3h = isWhole ? heat.NeededM3h : null,
            AirflowAvailableM3h = heat.IsJudged ? heat.AvailableM3h : null,
            DoorPressureLossPa = isWhole && DoorLossPa() is { } loss ? Quantities.Round(loss) : null,
            SurfaceM2 = isClosed ? heat.SurfaceM2 : null,
            RiseK = rise,
            HottestInletC = !isWhole ? null : heat.AirPath.Mode == CoolingMode.Closed ? HottestInletC(rise!.Value) : heat.SupplyC,
            CoolerNeededW = isWhole && heat.AirPath.Mode == CoolingMode.AirConditioner ? heat.CoolerNeededW(heat.SurfaceM2, heat.SetpointC) : null,
            DewPointC = heat.DewPointC is { } dew ? Quantities.Round(dew) : null,
        };
    }

    // The rise at the hottest item that gives off heat or has an inlet limit.
    private double HottestInletC(double riseK)
    {
        var factor = 1.0;
        foreach (var item in items)
        {
            factor = item.Item!.MaxInletC is not null || HeatSurvey.HeatOf(item) is not 0 ? Math.Max(factor, heat.RiseFactor(item)) : factor;
        }

        return Quantities.Round(heat.AmbientC + (factor * riseK));
    }
}
