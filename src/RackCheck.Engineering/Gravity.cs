namespace RackCheck.Engineering;

/// <summary>Weight of a mass.</summary>
public static class Gravity
{
    /// <summary>Standard acceleration due to gravity g, m/s2.</summary>
    public const double MPerS2 = 9.80665;

    /// <summary>Weight: <c>m g</c>.</summary>
    /// <param name="massKg">Mass m, kg, 0 or more.</param>
    /// <returns>Weight, N.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The mass is negative or not a finite number.</exception>
    /// <remarks>Standard value. The local value differs by less than 0.3 % from the equator to the poles.</remarks>
    /// <example>100 kg gives 980.665 N.</example>
    public static double WeightN(double massKg)
    {
        Require.NotNegative(massKg);
        return massKg * MPerS2;
    }
}
