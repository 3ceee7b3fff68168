using RackCheck.Survey.Power;

namespace RackCheck.Remedies;

/// <summary>A load that may be too high, and the cords that cause it.</summary>
/// <param name="Cords">The cords.</param>
/// <param name="Va">What a cord contributes to it, VA.</param>
/// <param name="ExcessVa">What has to go, VA; 0 or less where nothing has to.</param>
public sealed record LoadExcess(IReadOnlyList<Cord> Cords, Func<Cord, double> Va, double ExcessVa);
