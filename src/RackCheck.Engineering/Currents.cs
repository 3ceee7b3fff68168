using System.Numerics;

namespace RackCheck.Engineering;

/// <summary>Currents of single-phase and three-phase loads.</summary>
/// <remarks>Circuit theory; the default power factor is common practice without a source. Sinusoidal currents only; harmonics are not included.</remarks>
public static class Currents
{
    /// <summary>Default power factor where the data sheet gives none.</summary>
    public const double UsualPowerFactor = 0.95;

    /// <summary>
    /// Highest voltage of an outlet from line to neutral in North America, V: 120/208 V and 120/240 V systems have 120 V. Common practice, no source.
    /// </summary>
    public const double MostLineToNeutralV = 150;

    /// <summary>
    /// Lowest voltage between two lines of a three-phase system with 220 to 254 V to neutral, V: sqrt(3) x 220 V. IEC 60038 has 230/400 V (value from memory).
    /// </summary>
    public const double LeastLineToLineV = 380;

    /// <summary>Highest voltage between two lines of such a system, V: sqrt(3) x 254 V.</summary>
    public const double MostLineToLineV = 440;

    /// <summary>Current of a single-phase load: <c>I = P/(V pf)</c>.</summary>
    /// <param name="powerW">Active power P, W, 0 or more.</param>
    /// <param name="voltageV">Voltage at the load V, V, above 0; line to neutral for star connection.</param>
    /// <param name="powerFactor">Power factor pf, above 0 to 1.</param>
    /// <returns>Current, A. Example: 3000 W at 230 V and 0.95 gives 13.73 A.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double SinglePhaseA(double powerW, double voltageV, double powerFactor)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(powerW, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(voltageV, 0);
        CheckPowerFactor(powerFactor);
        return powerW / (voltageV * powerFactor);
    }

    /// <summary>Current of a balanced three-phase load: <c>I = P/(sqrt(3) V pf)</c>.</summary>
    /// <param name="powerW">Total active power P of all phases, W, 0 or more.</param>
    /// <param name="lineVoltageV">Voltage line to line V, V, above 0.</param>
    /// <param name="powerFactor">Power factor pf, above 0 to 1.</param>
    /// <returns>Line current, A. Example: 11000 W at 400 V and 0.9 gives 17.64 A.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double ThreePhaseA(double powerW, double lineVoltageV, double powerFactor)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(powerW, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(lineVoltageV, 0);
        CheckPowerFactor(powerFactor);
        return powerW / (Math.Sqrt(3) * lineVoltageV * powerFactor);
    }

    /// <summary>Neutral current of a star connection with equal power factors: <c>sqrt(a2 + b2 + c2 - ab - bc - ca)</c>.</summary>
    /// <param name="a">Current of L1, A, 0 or more.</param>
    /// <param name="b">Current of L2, A, 0 or more.</param>
    /// <param name="c">Current of L3, A, 0 or more.</param>
    /// <returns>Current, A. Example: 10, 8 and 6 A gives 3.464 A. Triplen harmonics add in the neutral and are not included.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A current is negative.</exception>
    public static double NeutralA(double a, double b, double c)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(a, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(b, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(c, 0);

        // Rounding can make the sum of equal currents slightly negative.
        return Math.Sqrt(Math.Max(0, (a * a) + (b * b) + (c * c) - (a * b) - (b * c) - (c * a)));
    }

    /// <summary>Load current as a phasor relative to its own phase, lagging by its power factor.</summary>
    /// <param name="currentA">Current, A, 0 or more.</param>
    /// <param name="powerFactor">Power factor, above 0 to 1, taken as lagging.</param>
    /// <returns>Active current as the real part and reactive current as the negative imaginary part, A.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static Complex Phasor(double currentA, double powerFactor)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(currentA, 0);
        CheckPowerFactor(powerFactor);
        return new Complex(currentA * powerFactor, -currentA * Math.Sqrt(1 - (powerFactor * powerFactor)));
    }

    /// <summary>Neutral current of a star connection: the phasor sum of the lines, each shifted by 120 degrees.</summary>
    /// <param name="l1">Phasor sum of the loads on L1, A.</param>
    /// <param name="l2">Phasor sum of the loads on L2, A.</param>
    /// <param name="l3">Phasor sum of the loads on L3, A.</param>
    /// <returns>
    /// Current, A. Example: 10 A each at power factors 1, 0.8 and 0.9 gives 6.046 A. Triplen harmonics add in the neutral and are not included.
    /// </returns>
    public static double NeutralA(Complex l1, Complex l2, Complex l3) =>
        (l1 + (l2 * Turn) + (l3 * Turn * Turn)).Magnitude;

    /// <summary>Line currents of loads between the lines of a three-phase system: each line carries the phasor difference of its two pairs.</summary>
    /// <param name="pair12">Phasor sum of the loads from L1 to L2, A, relative to the voltage of this pair.</param>
    /// <param name="pair23">Phasor sum of the loads from L2 to L3, A.</param>
    /// <param name="pair31">Phasor sum of the loads from L3 to L1, A.</param>
    /// <returns>Phasors of L1, L2 and L3, A. Example: 10 A on each pair gives sqrt(3) x 10 = 17.32 A on each line; 10 A on one
    /// pair gives 10, 10 and 0 A.</returns>
    public static (Complex L1, Complex L2, Complex L3) LinesOfPairs(Complex pair12, Complex pair23, Complex pair31)
    {
        // The voltages of the pairs are 120 degrees apart.
        var (one, two, three) = (pair12, pair23 * Turn, pair31 * Turn * Turn);
        return (one - three, two - one, three - two);
    }

    /// <summary>Line current of two pairs with equal power factors: <c>sqrt(a2 + b2 + ab)</c>.</summary>
    /// <param name="a">Current of one pair, A, 0 or more.</param>
    /// <param name="b">Current of the other pair, A, 0 or more.</param>
    /// <returns>Current, A. Example: 15.72 A on each pair gives 27.23 A.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A current is negative.</exception>
    public static double LineOfPairsA(double a, double b)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(a, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(b, 0);
        return Math.Sqrt((a * a) + (b * b) + (a * b));
    }

    private static readonly Complex Turn = Complex.FromPolarCoordinates(1, -2 * Math.PI / 3);

    private static void CheckPowerFactor(double powerFactor)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(powerFactor, 0);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(powerFactor, 1);
    }
}
