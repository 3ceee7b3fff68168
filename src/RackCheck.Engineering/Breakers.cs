using System.Collections.Immutable;

namespace RackCheck.Engineering;

/// <summary>Instantaneous trip range of a circuit breaker, in multiples of its rated current.</summary>
/// <param name="Curve">B, C or D.</param>
/// <param name="Least">Lower limit; below it the breaker does not trip instantaneously.</param>
/// <param name="Greatest">Upper limit; from it the breaker always trips instantaneously.</param>
public sealed record TripCurve(string Curve, double Least, double Greatest);

/// <summary>Circuit breakers: instantaneous trip and continuous load.</summary>
/// <remarks>Trip: IEC 60898-1 (secondary source). Continuous load: NEC 210.20(A) (secondary source), 1/1.25 of the breaker.</remarks>
public static class Breakers
{
    /// <summary>Maximum continuous load in North America, percent of the breaker rating: NEC 210.20(A).</summary>
    public const double ContinuousSharePercent = 80;

    /// <summary>
    /// Half-value width of an inrush pulse from which it is compared with the instantaneous trip, ms: a breaker responds to the r.m.s. current. Common
    /// practice, no source.
    /// </summary>
    public const double LongPulseMs = 5;

    /// <summary>The trip curves.</summary>
    public static ImmutableArray<TripCurve> Curves { get; } = [new("B", 3, 5), new("C", 5, 10), new("D", 10, 20)];

    /// <summary>Minimum current that can trip a breaker instantaneously: <c>lower multiple x In</c>.</summary>
    /// <param name="curve">B, C or D.</param>
    /// <param name="ratedA">Rated current In, A, above 0.</param>
    /// <returns>Current, A. Example: C 16 gives 80.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Unknown curve, or a rating of 0 or less.</exception>
    public static double LeastTripA(string curve, double ratedA)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(ratedA, 0);
        var found = Curves.FirstOrDefault(c => c.Curve == curve) ?? throw new ArgumentOutOfRangeException(nameof(curve), curve, "The curve must be B, C or D.");
        return found.Least * ratedA;
    }
}
