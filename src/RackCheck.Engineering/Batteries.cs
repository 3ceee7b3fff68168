namespace RackCheck.Engineering;

/// <summary>Run time of a battery at a load other than the one in its data sheet.</summary>
/// <remarks>
/// Peukert's law; the exponent is that of valve-regulated lead-acid batteries (value from memory). Accuracy is about +-30 % for run times of minutes.
/// Use a discharge figure as close to the load as possible.
/// </remarks>
public static class Batteries
{
    /// <summary>Input of a charger as a share of the rated power of its UPS, where it is not given. Common practice, no source.</summary>
    public const double ChargeShare = 0.1;

    /// <summary>Exponent of valve-regulated lead-acid batteries.</summary>
    public const double PeukertExponent = 1.15;

    /// <summary>Run time: <c>t = t1 (P1/P)^k</c>, equivalent to <c>t = H (C/(I H))^k</c> for a capacity C at a discharge time H.</summary>
    /// <param name="minutes">Run time t1 of the discharge figure, min, 0 or more.</param>
    /// <param name="atLoad">Load P1 of the discharge figure, W or A, 0 or more.</param>
    /// <param name="load">Load P, in the same unit, above 0.</param>
    /// <param name="exponent">Exponent k, 1 or more.</param>
    /// <returns>Run time, min. Example: 10 min at 1000 W gives 10 x 2^1.15 = 22.19 min at 500 W.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double RunMinutes(double minutes, double atLoad, double load, double exponent = PeukertExponent)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(minutes, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(atLoad, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(load, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(exponent, 1);
        return minutes * Math.Pow(atLoad / load, exponent);
    }

    /// <summary>Load for a required run time: <c>P = P1 (t1/t)^(1/k)</c>.</summary>
    /// <param name="minutes">Run time t1 of the discharge figure, min, 0 or more.</param>
    /// <param name="atLoad">Load P1 of the discharge figure, W, 0 or more.</param>
    /// <param name="wantedMinutes">Run time t, min, above 0.</param>
    /// <returns>Load, W. Example: 10 min at 1000 W and 22.19 min required gives 500 W.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double LoadFor(double minutes, double atLoad, double wantedMinutes)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(minutes, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(atLoad, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(wantedMinutes, 0);
        return atLoad * Math.Pow(minutes / wantedMinutes, 1 / PeukertExponent);
    }
}
