using RackCheck.Engineering;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Survey;

/// <summary>Why a protective conductor needs its section.</summary>
public enum ConductorReason
{
    /// <summary>Strength: it is no part of a cable.</summary>
    Strength,

    /// <summary>The line conductor of a supply.</summary>
    LineConductor,

    /// <summary>The heat of a fault on a supply.</summary>
    Fault,
}

/// <summary>The least section of a protective conductor, and what asks for it.</summary>
/// <param name="SectionMm2">Section, mm2.</param>
/// <param name="Reason">What asks for it.</param>
/// <param name="Supply">The supply that does; null for strength.</param>
public sealed record ConductorNeed(double SectionMm2, ConductorReason Reason, SupplyNode? Supply)
{
    /// <summary>The greatest of what strength, line conductors and faults ask for.</summary>
    /// <param name="supplies">Supplies whose fault the conductor may carry.</param>
    /// <param name="strengthMm2">Least section for strength, mm2.</param>
    /// <returns>The need, as far as sections and faults are given.</returns>
    public static ConductorNeed Of(IReadOnlyList<SupplyNode> supplies, double strengthMm2)
    {
        var need = new ConductorNeed(strengthMm2, ConductorReason.Strength, null);
        foreach (var supply in supplies)
        {
            if (supply.Source.Cable?.CrossSectionMm2 is { } line && EarthConductors.LeastByLineMm2(line) > need.SectionMm2)
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

    /// <summary>What a fault on a supply asks for, mm2; null where current or time is not given.</summary>
    /// <param name="supply">The supply.</param>
    /// <returns>The section.</returns>
    public static double? FaultMm2(SupplyNode supply) => supply.Source is { FaultCurrentA: { } current, DisconnectionTimeS: { } time }
        ? EarthConductors.AdiabaticMm2(current, time, EarthConductors.SeparateCopperK)
        : null;

    /// <summary>The arithmetic with its numbers put in.</summary>
    /// <param name="actualMm2">The section that there is, mm2.</param>
    /// <returns>The text.</returns>
    public string Calculation(double actualMm2) => Reason switch
    {
        ConductorReason.LineConductor => Invariant($"{ByLine(Supply!.Source.Cable!.CrossSectionMm2!.Value)} > {actualMm2:0.###}"),
        ConductorReason.Fault =>
            Invariant($"sqrt({Supply!.Source.FaultCurrentA:0.###}^2 x {Supply.Source.DisconnectionTimeS:0.###}) / {EarthConductors.SeparateCopperK:0} = ")
                + Invariant($"{SectionMm2:0.###} > {actualMm2:0.###}{Validity(Supply.Source.DisconnectionTimeS!.Value)}"),
        _ => Invariant($"{SectionMm2:0.###} > {actualMm2:0.###}"),
    };

    private string ByLine(double line) =>
        line <= EarthConductors.SameUpToMm2 ? Invariant($"{line:0.###} <= {EarthConductors.SameUpToMm2:0}, so as thick as the line: {SectionMm2:0.###}")
        : line <= EarthConductors.HalfPastMm2
            ? Invariant($"{EarthConductors.SameUpToMm2:0} < {line:0.###} <= {EarthConductors.HalfPastMm2:0}, so as thick as the lesser: {SectionMm2:0.###}")
        : Invariant($"{line:0.###} / 2 = {SectionMm2:0.###}");

    private static string Validity(double seconds) =>
        seconds < EarthConductors.AdiabaticFromS
            ? Invariant($"; {seconds:0.###} < {EarthConductors.AdiabaticFromS:0.###}, where the energy that the breaker lets through decides")
        : seconds > EarthConductors.AdiabaticToS
            ? Invariant($"; {seconds:0.###} > {EarthConductors.AdiabaticToS:0.###}, where heat is shed meanwhile and this is the cautious end")
        : "";
}
