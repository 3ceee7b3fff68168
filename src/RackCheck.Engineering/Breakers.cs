using System.Collections.Immutable;

namespace RackCheck.Engineering;

/// <summary>Instantaneous trip of a circuit breaker as multiples of its rated current.</summary>
/// <param name="Curve">B, C or D.</param>
/// <param name="Least">Below it the breaker never trips at once.</param>
/// <param name="Greatest">From it on the breaker always trips at once.</param>
public sealed record TripCurve(string Curve, double Least, double Greatest);

/// <summary>Circuit breakers and how far they may be loaded.</summary>
/// <remarks>Trip: IEC 60898-1 (secondary source). Continuous load: NEC 210.20(A) (secondary source), 1/1.25 of the breaker.</remarks>
public static class Breakers
{
    /// <summary>Share of a breaker that a continuous load may take in North America, percent: NEC 210.20(A).</summary>
    public const double ContinuousSharePercent = 80;

    /// <summary>The curves.</summary>
    public static ImmutableArray<TripCurve> Curves { get; } = [new("B", 3, 5), new("C", 5, 10), new("D", 10, 20)];

    /// <summary>Least current that can trip a breaker at once: <c>least multiple x In</c>.</summary>
    /// <param name="curve">B, C or D.</param>
    /// <param name="ratedA">Rated current In, A, over 0.</param>
    /// <returns>Current, A. Example: C 16 gives 80.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Another curve, or a rating not over 0.</exception>
    public static double LeastTripA(string curve, double ratedA)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(ratedA, 0);
        var found = Curves.FirstOrDefault(c => c.Curve == curve) ?? throw new ArgumentOutOfRangeException(nameof(curve), curve, "B, C or D.");
        return found.Least * ratedA;
    }
}
