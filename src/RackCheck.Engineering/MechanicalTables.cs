namespace RackCheck.Engineering;

/// <summary>
/// Tables of stability, floor loads, delivery, handling and cable fill. Methods, so that each table is made once, by <see cref="DataTables"/>.
/// </summary>
internal static class MechanicalTables
{
    public static DataTable CableFill() => new(
        "cable-fill",
        "Cable space beside the equipment",
        [new("quantity"), new("value"), new("unit"), new("use")],
        [
            ["fill", Engineering.CableFill.MostPercent, "% of the channel's area", "maximum"],
            ["channel depth", Engineering.CableFill.ChannelDepthMm, "mm", "usable, beside the uprights"],
            .. CabinetSizes.WidthsMm.Select(w =>
                DataTables.Row($"channels, {w} wide", Math.Round(Engineering.CableFill.SideChannelsMm2(w), 3), "mm2", "both sides together")),
            ["bend radius", Engineering.CableFill.BendDiameters, "x diameter", "minimum, installed four-pair cable"],
        ],
        [Sources.En50174, Sources.CableBend, Sources.CableChannelPractice]);

    public static DataTable Delivery() => new(
        "delivery",
        "Delivery routes: pallet, clearance and tilt",
        [new("quantity"), new("value"), new("unit"), new("use")],
        [
            ["clearance", DeliveryRoute.ClearanceMm, "mm", "opening larger than the load, in width and height"],
            ["tilt", DeliveryRoute.GreatestTiltDeg, "deg", "maximum"],
            ["pallet height", DeliveryRoute.PalletHeightMm, "mm", "default"],
            ["EUR pallet, long side", DeliveryRoute.PalletLongMm, "mm", "default"],
            ["EUR pallet, short side", DeliveryRoute.PalletShortMm, "mm", "default"],
        ],
        [Sources.DeliveryPractice, Sources.En13698]);

    public static DataTable FloorClasses() => new(
        "floor-classes",
        "Raised floors: ultimate and permitted point load by class",
        [new("class"), new("ultimate", "kN"), new("workingLowFactor", "kN"), new("workingHighFactor", "kN")],
        [
            .. from f in FloorLoads.Classes
               let low = Math.Round(f.WorkingKn(FloorLoads.LowSafetyFactor), 3)
               let high = Math.Round(f.WorkingKn(FloorLoads.HighSafetyFactor), 3)
               select DataTables.Row(f.Number, f.UltimateKn, low, high),
        ],
        [Sources.En12825, Sources.FloorFactorPractice]);

    public static DataTable Handling() => new(
        "handling",
        "Guideline masses for manual lifting, one person; not a legal limit; no value above the last zone",
        [new("zone"), new("from", "mm"), new("to", "mm"), new("manClose", "kg"), new("manReach", "kg"), new("womanClose", "kg"), new("womanReach", "kg")],
        [.. Engineering.ManualHandling.Zones.Select(z => DataTables.Row(z.Name, z.FromMm, z.ToMm, z.ManCloseKg, z.ManReachKg, z.WomanCloseKg, z.WomanReachKg))],
        [Sources.HseL23, Sources.Iso7250]);

    public static DataTable Stability() => new(
        "stability",
        "Stability limits",
        [new("quantity"), new("value"), new("unit"), new("use")],
        [
            ["tip angle", Engineering.Stability.LeastTipDeg, "deg", "minimum, over every edge"],
            ["push, share", Engineering.Stability.PushPercent, "% of weight", "must not tip the cabinet"],
            ["push, cap", Engineering.Stability.PushN, "N", "maximum push"],
            ["push, height", Engineering.Stability.PushHeightMm, "mm", "or the top of the cabinet, if lower"],
            ["moment ratio", Engineering.Stability.LeastPulledOutFactor, "stabilising to overturning", "minimum, with one item extended"],
            ["foot inset", SupportArea.FootInsetMm, "mm", "from the frame to the line of feet or castors; 0 for a plinth"],
            ["castor inset", SupportArea.CastorInsetMm, "mm", "further support lost on a side when its castor is swivelled inwards"],
        ],
        [Sources.Iec62368Tilt, Sources.Iec62368Push, Sources.PulledOutPractice, Sources.CastorPractice]);
}
