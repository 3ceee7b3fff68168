using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Survey;

/// <summary>The reason for the minimum cross-sectional area of a protective conductor.</summary>
public enum ConductorReason
{
    /// <summary>Mechanical strength: the conductor is not part of a cable.</summary>
    Strength,

    /// <summary>The line conductor of a supply.</summary>
    LineConductor,

    /// <summary>The thermal stress of a fault on a supply.</summary>
    Fault,

    /// <summary>The breaker of a supply in North America.</summary>
    Breaker,
}

/// <summary>The minimum cross-sectional area of a protective conductor and its reason.</summary>
/// <param name="SectionMm2">Cross-sectional area, mm2.</param>
/// <param name="Supply">The supply that sets it; null for strength.</param>
public sealed record ConductorNeed(double SectionMm2, ConductorReason Reason, SupplyNode? Supply)
{
    /// <summary>The largest of the areas for strength, line conductors and faults.</summary>
    /// <param name="supplies">Supplies whose fault current the conductor can carry.</param>
    /// <param name="strengthMm2">Minimum area for strength, mm2.</param>
    /// <param name="isMain">Whether it is the main conductor: a lead of an item follows the item's own cord, not the cable of the supply.</param>
    /// <returns>The minimum, as far as areas and fault data are given.</returns>
    public static ConductorNeed Of(IReadOnlyList<SupplyNode> supplies, double strengthMm2, bool isMain)
    {
        var need = new ConductorNeed(strengthMm2, ConductorReason.Strength, null);
        foreach (var supply in supplies)
        {
            if (supply.IsNorthAmerica)
            {
                var byBreaker = EarthConductors.LeastByBreakerMm2(supply.BreakerA);
                need = byBreaker > need.SectionMm2 ? new ConductorNeed(byBreaker, ConductorReason.Breaker, supply) : need;
                continue;
            }

            if (isMain && supply.Source.Cable?.CrossSectionMm2 is { } line && EarthConductors.LeastByLineMm2(line) > need.SectionMm2)
            {
                need = new ConductorNeed(EarthConductors.LeastByLineMm2(line), ConductorReason.LineConductor, supply);
            }

            if (FaultMm2(supply) is { } section && section > need.SectionMm2)
            {
                need = new ConductorNeed(section, ConductorReason.Fault, supply);
            }
        }

        return need;
    }

    /// <summary>The area for a fault in the rack, mm2; null if the current or the time is missing, or the time is too short for the formula.</summary>
    public static double? FaultMm2(SupplyNode supply) => IsAdiabatic(supply)
        ? EarthConductors.AdiabaticMm2(FaultA(supply), supply.Source.DisconnectionTimeS!.Value, EarthConductors.SeparateCopperK)
        : null;

    /// <summary>Whether the current and the time of a fault are given, and the time is long enough for the adiabatic formula.</summary>
    public static bool IsAdiabatic(SupplyNode supply) => supply.Source is { FaultCurrentA: not null, DisconnectionTimeS: not null } && !IsTooShort(supply);

    /// <summary>Whether the given disconnection time is so short that the energy let through by the breaker applies instead of the adiabatic formula.</summary>
    public static bool IsTooShort(SupplyNode supply) =>
        supply.Source.DisconnectionTimeS is { } time && Comparison.IsOver(EarthConductors.AdiabaticFromS, time);

    /// <summary>
    /// The current of a fault in the rack, A: at the end of the supply's cable. Without the length or the area of the cable it is that at its origin, which
    /// is higher.
    /// </summary>
    /// <param name="supply">A supply with a fault current.</param>
    public static double FaultA(SupplyNode supply) => supply.Source is { FaultCurrentA: { } origin, VoltageV: var voltage }
        && FaultCable(supply) is { CrossSectionMm2: { } section } && supply.LoopLengthM is { } length
        ? Quantities.Round(FaultLoops.EndA(voltage, origin, length, section))
        : supply.Source.FaultCurrentA ?? 0;

    private static SupplyCable? FaultCable(SupplyNode supply) => supply.Source is
        { FaultCurrentA: > 0, VoltageV: > 0, Cable: { LengthM: not null, CrossSectionMm2: > 0 } cable } ? cable : null;

    /// <summary>
    /// The highest fault current that a supply is taken to have where none is given, A: 6 kA, the usual breaking capacity of its breaker. Common practice, no
    /// source.
    /// </summary>
    public const double MostFaultA = 6000;

    /// <summary>
    /// The longest time that a breaker is taken to let an earth fault last where none is given, s: the limit for final circuits in TN systems, IEC 60364-4-41;
    /// value from memory.
    /// </summary>
    public const double LongestFaultS = 0.4;

    /// <summary>Whether the trip curve of the breaker of a supply, which is not given, decides: with curve D a fault may need more than this area.</summary>
    /// <param name="supply">The supply.</param>
    /// <param name="sectionMm2">The area of the conductor, mm2; 0 if unknown.</param>
    public static bool TurnsOnCurve(SupplyNode supply, double sectionMm2) =>
        supply.Source is { Breaker: null or { Curve: null } } && !IsAdiabatic(supply) && IsLimited(supply)
        && EarthConductors.AdiabaticMm2(
            supply.Source.FaultCurrentA is null ? MostFaultA : FaultA(supply),
            supply.Source.DisconnectionTimeS is { } time && !IsTooShort(supply) ? time : LongestFaultS, EarthConductors.SeparateCopperK) > sectionMm2;

    /// <summary>Whether the let-through energy of the breaker of a supply is known, so that a fault needs no more than the minimum for strength.</summary>
    public static bool IsLimited(SupplyNode supply) => IsLimited(supply.Source.Breaker?.Curve, supply.BreakerA);

    /// <summary>Whether the let-through energy of a breaker is known.</summary>
    /// <param name="curve">Its trip curve; null if unknown.</param>
    /// <param name="ratedA">Its rated current, A.</param>
    public static bool IsLimited(BreakerCurve? curve, double ratedA) =>
        curve is not BreakerCurve.D && !Comparison.IsOver(ratedA, EarthConductors.MostLimitedA);

    /// <summary>The calculation with its numbers.</summary>
    /// <param name="actualMm2">The actual area, mm2.</param>
    public string Calculation(double actualMm2) => Reason switch
    {
        ConductorReason.LineConductor => Invariant($"{ByLine(Supply!.Source.Cable!.CrossSectionMm2!.Value)} > {actualMm2:0.###}"),
        ConductorReason.Fault =>
            AtTheRack() + Invariant($"sqrt({FaultA(Supply!):0.###}^2 x {Supply!.Source.DisconnectionTimeS:0.###}) / {EarthConductors.SeparateCopperK:0} = ")
                + Invariant($"{SectionMm2:0.###} > {actualMm2:0.###}{Validity(Supply.Source.DisconnectionTimeS!.Value)}"),
        _ => Invariant($"{SectionMm2:0.###} > {actualMm2:0.###}"),
    };

    private string ByLine(double line) =>
        line <= EarthConductors.SameUpToMm2 ? Invariant($"{line:0.###} <= {EarthConductors.SameUpToMm2:0}, so equal to the line conductor: {SectionMm2:0.###}")
        : line <= EarthConductors.HalfPastMm2
            ? Invariant($"{EarthConductors.SameUpToMm2:0} < {line:0.###} <= {EarthConductors.HalfPastMm2:0}, so equal to the lower bound: {SectionMm2:0.###}")
        : Invariant($"{line:0.###} / 2 = {SectionMm2:0.###}");

    private string AtTheRack() => FaultCable(Supply!) is not { } cable ? ""
        : Invariant($"{Supply!.Source.VoltageV:0.###} / ({Supply.Source.VoltageV:0.###} / {Supply.Source.FaultCurrentA:0.###} + ")
            + Invariant($"{FaultLoops.HotFactor:0.#} x 2 x {EarthConductors.CopperOhmMm2PerM} x {Supply.LoopLength} / {cable.CrossSectionMm2:0.###}) = ")
            + Invariant($"{FaultA(Supply):0.###}; ");

    private static string Validity(double seconds) =>
        seconds > EarthConductors.AdiabaticToS
            ? Invariant($"; {seconds:0.###} > {EarthConductors.AdiabaticToS:0.###}, where the conductor also dissipates heat, so this is conservative")
            : "";
}
