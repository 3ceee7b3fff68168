using System.Collections.Immutable;
using RackCheck.Engineering;
using RackCheck.Model;
using static RackCheck.Survey.Bounds.FactTable;

namespace RackCheck.Survey.Bounds;

/// <summary>Facts of an item that have to do with its power, heat, air, cables and earth.</summary>
internal static class ItemPowerBounds
{
    private const double CableMm = 7;

    /// <summary>The facts.</summary>
    public static ImmutableArray<Fact> All { get; } =
    [
        OfItem(
            "power/ratedW", "What is the rated power of {each}?", i => i.Power?.RatedW, (i, v) => i with { Power = i.Power! with { RatedW = v } },
            (i, _) => i is { Power.Plugs: not { Count: 0 }, Power: not null, Ups: null } && !PassiveEquipment.IsPassive(i) ? Watts(i) : null,
            "5 W to 1000 W for each U; displays, keyboards and KVM switches to 100 W, others to 2200 W for each U", "W"),
        OfItem(
            "power/powerFactor", "What is the power factor of {each}?", i => i.Power?.PowerFactor,
            (i, v) => i with { Power = i.Power! with { PowerFactor = v } },
            (i, _) => i.Power is { Plugs: { Count: > 0 } } p ? (p.RatedW is <= 75 ? new(0.5, 1) : new(0.9, 1)) : null, "0.9 to 1; up to 75 W 0.5 to 1", null,
            lowIsAdverse: true, basis: "supplies over 75 W limit their harmonics, IEC 61000-3-2; value from memory"),
        OfItem(
            "power/inrushA", "What is the inrush current of {each}?", i => i.Power?.InrushA, (i, v) => i with { Power = i.Power! with { InrushA = v } },
            (i, _) => i.Power is { Plugs: { Count: > 0 } } p ? new(0, Math.Min(120, 20 + (0.1 * (p.RatedW ?? i.Ups?.RatedW ?? 350)))) : null,
            "0 to 20 A and 0.1 A for each rated watt, at most 120 A", "A"),
        OfItem(
            "power/inrushMs", "How long does the inrush pulse of {each} last?", i => i.Power?.InrushMs,
            (i, v) => i with { Power = i.Power! with { InrushMs = v } },
            (i, _) => i is { Power: { Plugs: { Count: > 0 }, InrushA: not null }, Ups: null } ? new(0.1, 4) : null, "0.1 to 4 ms", "ms"),
        OfItem(
            "power/leakageMa", "What is the protective conductor current of {each}?", i => i.Power?.LeakageMa,
            (i, v) => i with { Power = i.Power! with { LeakageMa = v } }, (i, _) => i.Power is { Plugs: { Count: > 0 } } p ? new(0, Leakage(p.RatedW)) : null,
            "0 to 0.75 mA and 2.5 mA for each rated kilowatt, at most 3.5 mA", "mA",
            basis: "upper end: the limit for equipment with an ordinary plug, IEC 62368-1, value from memory; below it common practice, no source"),
        OfItem(
            "heatW", "How much heat does {each} give off?", i => i.HeatW ?? (i.Ups is null ? i.Power?.TypicalW ?? i.Power?.RatedW : null),
            (i, v) => i with { HeatW = v }, (i, _) => Heat(i), "as the rated power; of a UPS 2 to 15 % of its rated power", "W", pull: Pull.Apart),
        OfItem(
            "airflow/flowM3h", "How much air do the fans of {each} move?", i => i.Airflow?.FlowM3h,
            (i, v) => i with { Airflow = i.Airflow! with { FlowM3h = v } }, (i, _) => Flow(i),
            "what lets the air warm up by 4 to 18 K, in drives and instruments to 27 K", "m3/h", lowIsAdverse: true, pull: Pull.Apart),
        OfItem(
            "maxInletC", "What is the maximum inlet air temperature of {each}?", i => i.MaxInletC, (i, v) => i with { MaxInletC = v },
            (i, _) => IsActive(i) ? new(35, 55) : null, "35 to 55 C", "C", lowIsAdverse: true, pull: Pull.Apart,
            basis: "class A2 and above of equipment for data processing; value from memory"),
        OfItem(
            "minInletC", "What is the minimum inlet air temperature of {each}?", i => i.MinInletC, (i, v) => i with { MinInletC = v },
            (i, _) => IsActive(i) ? new(-20, 5) : null, "-20 to 5 C", "C"),
        OfItem(
            "cables", "Which cables leave {each}, and how thick are they?", NumberOfCables,
            (i, v) => i with { Cables = [new CableBundle { DiameterMm = CableMm, Count = (int)Math.Round(v) }] }, (i, _) => Cables(i),
            "0 to 8 cables of 7 mm and 4 for each U; KVM switches to 24 and network equipment to 48 for each U", null, isNumber: false),
        OfItem(
            "ups/ratedW", "What is the rated power of {each} in W?", i => i.Ups?.RatedW, (i, v) => i with { Ups = i.Ups! with { RatedW = v } },
            (i, _) => i.Ups is { RatedVa: { } va } ? new(0.6 * va, va) : null, "0.6 to 1 times its rating in VA", "W", lowIsAdverse: true),
        OfItem(
            "ups/ratedVa", "What is the rated power of {each} in VA?", i => i.Ups?.RatedVa, (i, v) => i with { Ups = i.Ups! with { RatedVa = v } },
            (i, _) => i.Ups is { RatedW: { } watts } ? new(watts, 1.6 * watts) : null, "1 to 1.6 times its rating in W", "VA", lowIsAdverse: true),
        OfItem(
            "ups/chargeW", "How much power does {each} take while it recharges?", i => i.Ups?.ChargeW, (i, v) => i with { Ups = i.Ups! with { ChargeW = v } },
            (i, _) => i.Ups is { RatedW: { } watts } ? new(0.05 * watts, 0.2 * watts) : null, "5 to 20 % of its rated power", "W"),
        Asked("/items/*/ups/runMinutes", "How long does {each} run, and at which load?"),
        Asked("/items/*/ups/runLoadW", "At which load is the run time of {each} specified?"),
        Asked("/items/*/ups/outlets", "Which outlets does {each} have, and how many?"),
        Asked("/items/*/ups/feeds", "Which PDUs does {each} feed?"),
        Asked("/items/*/power", "How much power does {each} draw, and which mains plugs does it have?"),
        Asked("/items/*/power/plugs", "Which mains plugs does {each} have, and how many?"),
        Asked("/items/*/airflow/direction", "In which direction does the air flow through {each}?"),
        Asked("/items/*/earthLead/lengthM", "How long is the earth lead of {each}?"),
        Asked("/items/*/earthLead/crossSectionMm2", "What is the cross-sectional area of the earth lead of {each}?"),
        Asked("/items/*/battery/type", "What type of battery does {each} have?"),
        Asked("/items/*/battery/cells", "How many cells in series does the battery of {each} have?"),
        Asked("/items/*/battery/capacityAh", "What is the capacity of the battery of {each}?"),
    ];

    private static double Leakage(double? ratedW) => ratedW is { } watts ? Math.Min(3.5, 0.75 + (0.0025 * watts)) : 3.5;

    private static bool IsActive(Item item) => !PassiveEquipment.IsPassive(item) && item.Power?.Plugs is not { Count: 0 }
        && (item.Power is not null || item.HeatW > 0 || IsOfActiveKind(item));

    private static bool IsOfActiveKind(Item item) => item.Category is ItemCategory.Computer or ItemCategory.Server or ItemCategory.Instrument
        or ItemCategory.Display or ItemCategory.KvmSwitch or ItemCategory.Ups;

    private static Bound Watts(Item item)
    {
        var units = Math.Max(1, item.HeightU ?? 1);
        return item.Category switch
        {
            ItemCategory.Display or ItemCategory.KeyboardDrawer or ItemCategory.KvmSwitch => new(5, 100),
            ItemCategory.Computer or ItemCategory.Server or ItemCategory.Network or ItemCategory.Instrument => new(5, 1000 * units),
            _ => new(5, 2200 * units),
        };
    }

    private static Bound? Heat(Item item) =>
        item.Ups is { RatedW: { } watts } ? new(0.02 * watts, 0.15 * watts)
        : item.Ups is not null || item.Power?.Plugs is { Count: 0 } || PassiveEquipment.IsPassive(item) ? null
        : IsOfActiveKind(item) || item.Airflow is { FlowM3h: > 0 } or { Direction: not (null or AirflowDirection.None) } ? Watts(item)
        : null;

    private static Bound? Flow(Item item)
    {
        var heat = item.HeatW ?? item.Power?.TypicalW ?? item.Power?.RatedW;
        return item is { Airflow.Direction: not (null or AirflowDirection.None), Category: not ItemCategory.FanTray } && heat > 0
            ? new(Air.FlowM3h(heat.Value, WarmestK(item), Fans.CurveDensityKgM3), Air.FlowM3h(heat.Value, 4, Fans.CurveDensityKgM3))
            : null;
    }

    private static double WarmestK(Item item) =>
        item.Category is ItemCategory.Computer or ItemCategory.Server or ItemCategory.Network or ItemCategory.Ups ? 18 : 27;

    private static double? NumberOfCables(Item item) => item.Cables is not { } bundles ? null
        : bundles.Sum(b => b.Count * b.DiameterMm * b.DiameterMm) / (CableMm * CableMm);

    private static Bound? Cables(Item item)
    {
        var units = Math.Max(1, item.HeightU ?? 1);
        return item.Power?.Plugs is not { Count: > 0 } ? null
            : item.Category == ItemCategory.Network ? new(0, 48 * units)
            : item.Category == ItemCategory.KvmSwitch ? new(0, 24 * units)
            : new(0, 8 + (4 * units));
    }
}
