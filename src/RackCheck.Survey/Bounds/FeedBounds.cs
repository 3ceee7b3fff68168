using System.Collections.Immutable;
using RackCheck.Engineering;
using RackCheck.Model;
using static RackCheck.Survey.Bounds.FactTable;

namespace RackCheck.Survey.Bounds;

/// <summary>Facts of supplies, PDUs and protective earth.</summary>
internal static class FeedBounds
{
    /// <summary>The facts.</summary>
    public static ImmutableArray<Fact> All { get; } =
    [
        OfSupply(
            "breaker/breakingKa", "What is the breaking capacity of the breaker of {each}?", s => s.Breaker?.BreakingKa,
            (s, v) => s with { Breaker = s.Breaker! with { BreakingKa = v } }, s => s.Breaker is null ? null : new(6, 25), "6 to 25 kA", "kA",
            lowIsAdverse: true, basis: "6 kA is the usual class of IEC 60898-1; value from memory"),
        OfSupply(
            "breaker/ratedA", "What is the rated current of the breaker of {each}?", s => s.Breaker?.RatedA,
            (s, v) => s with { Breaker = (s.Breaker ?? new()) with { RatedA = v } }, s => new(s.RatedA, s.RatedA), "the rating of the supply", "A"),
        OfSupply(
            "cable/lengthM", "How long is the cable of {each}?", s => s.Cable?.LengthM, (s, v) => s with { Cable = s.Cable! with { LengthM = v } },
            s => s.Cable is null ? null : new(2, 80), "2 to 80 m", "m"),
        OfSupply(
            "cable/crossSectionMm2", "What is the cross-sectional area of the cable of {each}?", s => s.Cable?.CrossSectionMm2,
            (s, v) => s with { Cable = s.Cable! with { CrossSectionMm2 = v } },
            s => s.Cable is null ? null : new(Math.Max(0.1, 1.5 * s.RatedA / 16), Math.Max(1, 10 * s.RatedA / 16)),
            "1.5 to 10 mm2 for each 16 A of its rating", "mm2", lowIsAdverse: true, pull: Pull.Apart),
        OfSupply(
            "faultCurrentA", "What is the prospective fault current of {each}?", s => s.FaultCurrentA, (s, v) => s with { FaultCurrentA = v },
            s => s.VoltageV / FaultLoops.MostDeclaredOhm is var least ? new(least, Math.Max(least, ConductorNeed.MostFaultA)) : null,
            "from the lowest of a public TN-S supply, 0.8 ohm, to 6 kA", "A", lowIsAdverse: true, pull: Pull.Apart),
        OfSupply(
            "disconnectionTimeS", "How fast does the breaker of {each} disconnect an earth fault?", s => s.DisconnectionTimeS,
            (s, v) => s with { DisconnectionTimeS = v }, s => IsLimited(s) ? null : new(EarthConductors.AdiabaticFromS, ConductorNeed.LongestFaultS),
            "0.1 to 0.4 s; not needed where the breaker limits the energy of a fault", "s",
            basis: "the limit for final circuits in TN systems, IEC 60364-4-41; value from memory"),
        Asked("/supplies/*/breaker/curve", "What is the trip curve of the breaker of {each}?"),
        Asked("/supplies/*/socket", "Which socket does {each} have?"),
        Asked("/supplies", "Which supplies reach the rack?"),
        new Fact<Pdu>
        {
            Key = "/pdus/*/lengthMm", Ask = "How long is {each}?", Unit = "mm", Range = "300 mm to the height of the mounting space",
            Owners = static r => r.Pdus ?? [], Drafts = static d => d.Pdus, Get = static u => u.LengthMm, Set = static (u, v) => u with { LengthMm = v },
            Limits = static (u, r) => u.Mounting == PduMounting.Vertical && r.Cabinet?.HeightU is { } units
                ? new(Math.Min(300, RackGeometry.ApertureMm(units)), RackGeometry.ApertureMm(units))
                : null,
        },
        new Fact<Pdu>
        {
            Key = "/pdus/*/maxAmbientC", Ask = "What is the maximum air temperature for {each}?", Unit = "C", Range = "55 to 65 C", LowIsAdverse = true,
            Owners = static r => r.Pdus ?? [], Drafts = static d => d.Pdus, Get = static u => u.MaxAmbientC, Set = static (u, v) => u with { MaxAmbientC = v },
            Limits = static (u, _) => ExhaustAir.Reaches(u) ? new(55, 65) : null,
        },
        Asked("/pdus", "Which PDUs are in the rack?"),
        Asked("/pdus/*/plug", "Which plug does {each} have?"),
        Asked("/pdus/*/ratedA", "What is the rated current of {each}?"),
        Asked("/pdus/*/groups", "Which outlets does {each} have?"),
        Asked("/pdus/*/groups/*/phase", "Which line feeds each outlet group of {each}?"),
        Asked("/pdus/*/mounting", "Is {each} mounted vertically or horizontally?"),
        Asked("/pdus/*/position", "At which U position is {each} mounted?"),
        OfRack(
            "/earthing/mainConductorMm2", "What is the cross-sectional area of the main protective conductor?", r => r.Earthing?.MainConductorMm2,
            (r, v) => r with { Earthing = (r.Earthing ?? new()) with { MainConductorMm2 = v } },
            r => r.Earthing is not null || r.Cabinet?.EarthBar is not null ? new(6, 25) : null, "6 to 25 mm2", "mm2", lowIsAdverse: true,
            basis: "the least main bonding conductor of IEC 60364-5-54; value from memory"),
    ];

    private static bool IsLimited(Supply supply) => ConductorNeed.IsLimited(supply.Breaker?.Curve, supply.Breaker?.RatedA ?? supply.RatedA);

    private static Fact<Supply> OfSupply(
        string member, string ask, Func<Supply, double?> get, Func<Supply, double, Supply> set, Func<Supply, Bound?> limits, string range, string unit,
        bool lowIsAdverse = false, Pull pull = Pull.OneWay, string basis = Practice) => new()
        {
            Key = "/supplies/*/" + member, Ask = ask, Owners = static r => r.Supplies ?? [], Drafts = static d => d.Supplies, Get = get, Set = set,
            Limits = (s, _) => limits(s), Range = range, Unit = unit, LowIsAdverse = lowIsAdverse, Pull = pull, Basis = basis,
        };
}
