namespace RackCheck.Engineering;

/// <summary>Run time of a battery at another load than the one that its data sheet names.</summary>
/// <remarks>
/// Peukert's law; the exponent is that of valve-regulated lead-acid batteries (value from memory). At run times of minutes it is about
/// 30 % out either way, so a discharge figure near the load counts for more than one far from it.
/// </remarks>
public static class Batteries
{
    /// <summary>Exponent of valve-regulated lead-acid batteries.</summary>
    public const double PeukertExponent = 1.15;

    /// <summary>Run time: <c>t = t1 (P1/P)^k</c>, which is <c>t = H (C/(I H))^k</c> with the discharge figure that C and H are.</summary>
    /// <param name="minutes">Run time t1 of the discharge figure, min, 0 or more.</param>
    /// <param name="atLoad">Load P1 of the discharge figure, W or A, 0 or more.</param>
    /// <param name="load">Load P, in the same unit, over 0.</param>
    /// <param name="exponent">Exponent k, 1 or more.</param>
    /// <returns>Run time, min. Example: 10 min at 1000 W are 10 x 2^1.15 = 22.19 min at 500 W.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double RunMinutes(double minutes, double atLoad, double load, double exponent = PeukertExponent)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(minutes, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(atLoad, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(load, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(exponent, 1);
        return minutes * Math.Pow(atLoad / load, exponent);
    }

    /// <summary>Load that leaves a run time: <c>P = P1 (t1/t)^(1/k)</c>.</summary>
    /// <param name="minutes">Run time t1 of the discharge figure, min, 0 or more.</param>
    /// <param name="atLoad">Load P1 of the discharge figure, W, 0 or more.</param>
    /// <param name="wantedMinutes">Run time t, min, over 0.</param>
    /// <returns>Load, W. Example: 10 min at 1000 W leave 22.19 min at 500 W.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double LoadFor(double minutes, double atLoad, double wantedMinutes)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(minutes, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(atLoad, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(wantedMinutes, 0);
        return atLoad * Math.Pow(minutes / wantedMinutes, 1 / PeukertExponent);
    }
}
