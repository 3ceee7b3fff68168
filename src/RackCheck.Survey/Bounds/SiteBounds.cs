using System.Collections.Immutable;
using RackCheck.Model;
using static RackCheck.Survey.Bounds.FactTable;

namespace RackCheck.Survey.Bounds;

/// <summary>Facts of the site, the delivery route and the air that the site supplies.</summary>
internal static class SiteBounds
{
    private const double LowestNorthAmericanV = 100;
    private const double HighestNorthAmericanV = 215;
    private const double WidestOpeningMm = 1800;
    private const double WidestCorridorMm = 2400;

    /// <summary>The facts.</summary>
    public static ImmutableArray<Fact> All { get; } =
    [
        OfSite(
            "region", "In which region is the site: uk, eu or na?", s => s.Region is { } region ? (region == Region.Na ? 1 : 0) : null,
            (s, v) => s with { Region = v > 0.5 ? Region.Na : Region.Eu }, RegionOf, "any where a supply has 100 to 215 V, else uk or eu", null,
            isNumber: false),
        OfSite(
            "ambientMaxC", "How warm does the room get?", s => s.AmbientMaxC, (s, v) => s with { AmbientMaxC = v }, _ => new(15, HeatSurvey.UsualAmbientC),
            "15 to 35 C", "C"),
        OfSite(
            "ambientMinC", "How cold does the room get?", s => s.AmbientMinC, (s, v) => s with { AmbientMinC = v }, _ => new(5, 20), "5 to 20 C", "C",
            lowIsAdverse: true),
        OfSite(
            "humidityMaxPercent", "How humid does the room get?", s => s.HumidityMaxPercent, (s, v) => s with { HumidityMaxPercent = v }, _ => new(20, 80),
            "20 to 80 %", "%"),
        OfSite(
            "altitudeM", "How high above sea level is the site?", s => s.AltitudeM, (s, v) => s with { AltitudeM = v }, _ => new(0, 900), "0 to 900 m", "m",
            basis: "up to 900 m the inlet limits of equipment hold without derating; common practice, no source"),
        OfSite(
            "aisleFrontMm", "How wide is the aisle in front of the rack?", s => s.AisleFrontMm, (s, v) => s with { AisleFrontMm = v }, _ => new(600, 1800),
            "600 to 1800 mm", "mm", lowIsAdverse: true),
        OfSite(
            "aisleRearMm", "How wide is the aisle behind the rack?", s => s.AisleRearMm, (s, v) => s with { AisleRearMm = v },
            r => StandsAtWall(r) ? null : new(600, 1800), "600 to 1800 mm; no aisle where the rear stands against a wall", "mm", lowIsAdverse: true),
        OfSite(
            "floor/distributedKnM2", "For what distributed load is the floor rated?", s => s.Floor?.DistributedKnM2,
            (s, v) => s with { Floor = (s.Floor ?? new()) with { DistributedKnM2 = v } }, StandsOnFloor(2, 20), "2 to 20 kN/m2", "kN/m2", lowIsAdverse: true,
            basis: "from offices to storage, EN 1991-1-1; value from memory"),
        OfSite(
            "floor/pointKn", "For what point load is the floor rated?", s => s.Floor?.PointKn,
            (s, v) => s with { Floor = (s.Floor ?? new()) with { PointKn = v } }, StandsOnFloor(1.5, 10), "1.5 to 10 kN", "kN", lowIsAdverse: true,
            basis: "from offices to storage, EN 1991-1-1; value from memory"),
        OfDelivery(
            "openings", "How wide and how high are the doors on the delivery route?",
            d => d.Openings is { } o ? Narrowest(o.Select(x => x.WidthMm), WidestOpeningMm) : null,
            (d, v) => d with { Openings = [new Opening { WidthMm = v, HeightMm = 2000 + ((v - 800) / 2) }] }, _ => new(800, WidestOpeningMm),
            "800 by 2000 mm to 1800 by 2500 mm", "mm", lowIsAdverse: true, isNumber: false),
        OfDelivery(
            "corridors", "How wide are the corridors at the corners of the delivery route?",
            d => d.Corridors is { } c ? Narrowest(c.Select(x => Math.Min(x.WidthMm, x.TurnIntoMm)), WidestCorridorMm) : null,
            (d, v) => d with { Corridors = [new Corridor { WidthMm = v, TurnIntoMm = v }] }, _ => new(1000, WidestCorridorMm), "1000 to 2400 mm", "mm",
            lowIsAdverse: true, isNumber: false),
        OfDelivery(
            "ramps", "How steep are the ramps on the delivery route, if there are any?",
            d => d.Ramps is { } r ? (r.Count == 0 ? 0 : r.Max(x => x.SlopePercent)) : null,
            (d, v) => d with { Ramps = [new Ramp { SlopePercent = v }] }, _ => new(0, 8), "0 to 8 %", "%", isNumber: false),
        OfDelivery(
            "palletKg", "How much does the pallet weigh?", d => d.PalletKg, (d, v) => d with { PalletKg = v },
            d => d is { PalletHeightMm: 0, PalletWidthMm: not > 0, PalletDepthMm: not > 0 } ? null : new(10, 60), "10 to 60 kg", "kg"),
        OfDelivery(
            "mayTilt", "May the rack be tilted on the way?", d => d.MayTilt is { } may ? (may ? 1 : 0) : null, (d, v) => d with { MayTilt = v > 0.5 },
            _ => new(0, 1), "yes or no", null, lowIsAdverse: true, isNumber: false),
        OfDelivery(
            "receiverArranged", "Is somebody arranged to take receipt of the rack?", d => d.ReceiverArranged is { } arranged ? (arranged ? 1 : 0) : null,
            (d, v) => d with { ReceiverArranged = v > 0.5 }, d => ReferenceEquals(d, Unknown) ? new(0, 1) : null, "yes or no", null, lowIsAdverse: true,
            isNumber: false),
        OfDelivery(
            "liftingKg", "For what mass is the lifting equipment at the site rated?", d => d.LiftingKg,
            (d, v) => d with { LiftingKg = v }, d => ReferenceEquals(d, Unknown) ? new(50, 2000) : null,
            "50 to 2000 kg where nothing is known of the delivery", "kg", lowIsAdverse: true),
        OfDelivery(
            "lift", "If there is a lift on the delivery route, what are its clear width, depth and height and its rated load?",
            d => d.Lift is { } l ? l.WidthMm ?? 0 : null,
            (d, v) => d with { Lift = new Lift { WidthMm = v, DepthMm = 1.3 * v, HeightMm = 2000 + ((v - 1000) / 3), RatedKg = v - 370 } },
            d => ReferenceEquals(d, Unknown) ? new(1000, 2000) : null,
            "1000 mm wide for 630 kg to 2000 mm wide for 1630 kg where nothing is known of the delivery",
            "mm", lowIsAdverse: true, isNumber: false),
        OfLift("widthMm", "How wide is the lift car?", l => l.WidthMm, (l, v) => l with { WidthMm = v }, new(800, 2000), "800 to 2000 mm", "mm"),
        OfLift("depthMm", "How deep is the lift car?", l => l.DepthMm, (l, v) => l with { DepthMm = v }, new(800, 2400), "800 to 2400 mm", "mm"),
        OfLift("heightMm", "How high is the lift car?", l => l.HeightMm, (l, v) => l with { HeightMm = v }, new(2000, 2400), "2000 to 2400 mm", "mm"),
        OfLift("ratedKg", "For what load is the lift rated?", l => l.RatedKg, (l, v) => l with { RatedKg = v }, new(320, 2000), "320 to 2000 kg", "kg"),
        OfRack(
            Pointers.UnderfloorC, "How warm is the air from under the floor?", r => r.Cooling?.Underfloor?.SupplyC,
            (r, v) => r with { Cooling = r.Cooling! with { Underfloor = r.Cooling.Underfloor! with { SupplyC = v } } },
            r => r.Cooling?.Underfloor is null ? null : new(15, 27), "15 to 27 C", "C", pull: Pull.Apart),
        OfRack(
            "/cooling/airConditioner/inputW", "How much power does the air conditioner take?", r => r.Cooling?.AirConditioner?.InputW,
            (r, v) => r with { Cooling = r.Cooling! with { AirConditioner = r.Cooling.AirConditioner! with { InputW = v } } },
            r => r.Cooling?.AirConditioner is { Supply: not null, CapacityW: var capacity } ? new(0.25 * capacity, 0.7 * capacity) : null,
            "0.25 to 0.7 times its capacity", "W"),
        Asked(Pointers.UnderfloorFlow, "How much air comes from under the floor?"),
        Asked(Pointers.IntakeArea, "What is the free area of the air intake?"),
        Asked(Pointers.Filters, "Do the air intakes and fans have filters?"),
        Asked(Pointers.CoolerStyle, "Which style is the air conditioner: wall, roof or split?"),
        Asked(Pointers.OutsideWall, "Is there an outside wall for the pipes of a split air conditioner?"),
        Asked(SitePointers.Delivery + "/loaded", "Is the rack delivered with its equipment mounted?"),
    ];

    // Stands for the delivery where the description has none.
    private static Model.Delivery Unknown { get; } = new();

    // None stands in the way of nothing, as the widest.
    private static double Narrowest(IEnumerable<double> widths, double widest) => widths.DefaultIfEmpty(widest).Min();

    private static bool StandsAtWall(RackDescription rack) =>
        rack.Cabinet?.Placement is Placement.Wall or Placement.RowEndWall or Placement.RowMiddleWall or Placement.RowMiddleWallCovered;

    private static Func<RackDescription, Bound?> StandsOnFloor(double low, double high) =>
        r => r.Cabinet?.Base?.Style == Model.BaseStyle.Wall ? null : new Bound(low, high);

    private static Bound? RegionOf(RackDescription rack) =>
        rack.Supplies is { Count: > 0 } supplies && supplies.Any(s => s.VoltageV is >= LowestNorthAmericanV and <= HighestNorthAmericanV) ? new(0, 1) : null;

    private static Fact<RackDescription> OfSite(
        string member, string ask, Func<Site, double?> get, Func<Site, double, Site> set, Func<RackDescription, Bound?> limits, string range, string? unit,
        bool lowIsAdverse = false, Pull pull = Pull.OneWay, string basis = Practice, bool isNumber = true) =>
        OfRack(
            "/site/" + member, ask, r => r.Site is { } s ? get(s) : null, (r, v) => r with { Site = set(r.Site ?? new(), v) }, limits, range, unit,
            lowIsAdverse, pull, basis, isNumber);

    private static Fact<RackDescription> OfDelivery(
        string member, string ask, Func<Model.Delivery, double?> get, Func<Model.Delivery, double, Model.Delivery> set,
        Func<Model.Delivery, Bound?> limits, string range, string? unit, bool lowIsAdverse = false, bool isNumber = true) =>
        OfSite(
            "delivery/" + member, ask, s => s.Delivery is { } d ? get(d) : null, (s, v) => s with { Delivery = set(s.Delivery ?? new(), v) },
            r => limits(r.Site?.Delivery ?? Unknown), range, unit, lowIsAdverse, isNumber: isNumber);

    private static Fact<RackDescription> OfLift(
        string member, string ask, Func<Lift, double?> get, Func<Lift, double, Lift> set, Bound bound, string range, string unit) =>
        OfDelivery(
            "lift/" + member, ask, d => d.Lift is { } l ? get(l) : null, (d, v) => d with { Lift = set(d.Lift!, v) }, d => d.Lift is null ? null : bound, range,
            unit, lowIsAdverse: true);
}
