namespace RackCheck.Engineering;

/// <summary>Tables on stability, floor, delivery, handling and cable fill. Methods, so that each is made once, when <see cref="DataTables"/> asks.</summary>
internal static class MechanicalTables
{
    public static DataTable CableFill() => new(
        "cable-fill",
        "Room for cables beside the equipment",
        [new("quantity"), new("value"), new("unit"), new("use")],
        [
            ["fill", Engineering.CableFill.MostPercent, "% of the channel's section", "at most"],
            ["channel depth", Engineering.CableFill.ChannelDepthMm, "mm", "usable, beside the uprights"],
            .. CabinetSizes.WidthsMm.Select(w => DataTables.Row($"channels, {w} wide", Math.Round(Engineering.CableFill.SideChannelsMm2(w), 3), "mm2", "both sides together")),
            ["bend radius", Engineering.CableFill.BendDiameters, "x diameter", "at least, four-pair cable at rest"],
        ],
        [Sources.En50174, Sources.CableBend, Sources.CableChannelPractice]);

    public static DataTable Delivery() => new(
        "delivery",
        "Ways in: pallet, clearance, tilt",
        [new("quantity"), new("value"), new("unit"), new("use")],
        [
            ["clearance", WaysIn.ClearanceMm, "mm", "opening over what passes, in width and in height"],
            ["tilt", WaysIn.GreatestTiltDeg, "deg", "at most"],
            ["pallet height", WaysIn.PalletHeightMm, "mm", "where not given"],
            ["EUR pallet, long side", WaysIn.PalletLongMm, "mm", "where not given"],
            ["EUR pallet, short side", WaysIn.PalletShortMm, "mm", "where not given"],
        ],
        [Sources.DeliveryPractice, Sources.En13698]);

    public static DataTable FloorClasses() => new(
        "floor-classes",
        "Raised floors: point load that a class breaks at, and what may stand on it",
        [new("class"), new("ultimate", "kN"), new("workingLowFactor", "kN"), new("workingHighFactor", "kN")],
        [
            .. from f in FloorLoads.Classes
               select DataTables.Row(f.Number, f.UltimateKn, Math.Round(f.WorkingKn(FloorLoads.LowSafetyFactor), 3), Math.Round(f.WorkingKn(FloorLoads.HighSafetyFactor), 3)),
        ],
        [Sources.En12825, Sources.FloorFactorPractice]);

    public static DataTable Handling() => new(
        "handling",
        "Guideline masses for lifting by hand, one person; no legal limit, none above the last zone",
        [new("zone"), new("from", "mm"), new("to", "mm"), new("manClose", "kg"), new("manReach", "kg"), new("womanClose", "kg"), new("womanReach", "kg")],
        [.. Engineering.Handling.Zones.Select(z => DataTables.Row(z.Name, z.FromMm, z.ToMm, z.ManCloseKg, z.ManReachKg, z.WomanCloseKg, z.WomanReachKg))],
        [Sources.HseL23, Sources.Iso7250]);

    public static DataTable Stability() => new(
        "stability",
        "Limits against tipping",
        [new("quantity"), new("value"), new("unit"), new("use")],
        [
            ["tip angle", Engineering.Stability.LeastTipDeg, "deg", "at least, to every side"],
            ["push, share", Engineering.Stability.PushPercent, "% of weight", "must not tip it"],
            ["push, cap", Engineering.Stability.PushN, "N", "greatest push"],
            ["push, height", Engineering.Stability.PushHeightMm, "mm", "or the top where that is lower"],
            ["moment ratio", Engineering.Stability.LeastPulledOutFactor, "restoring to overturning", "at least, with one item pulled out"],
            ["castor inset", SupportArea.CastorInsetMm, "mm", "what a castor swivelled inward takes of the support on its side"],
        ],
        [Sources.Iec62368Tilt, Sources.Iec62368Push, Sources.PulledOutPractice, Sources.CastorPractice]);
}
