using System.Numerics;

namespace RackCheck.Engineering;

/// <summary>Currents of single-phase and three-phase loads.</summary>
/// <remarks>Circuit theory; the usual power factor is common practice without a source. Sinusoidal currents alone: harmonics are not in it.</remarks>
public static class Currents
{
    /// <summary>Power factor taken where a data sheet gives none.</summary>
    public const double UsualPowerFactor = 0.95;

    /// <summary>Current of a single-phase load: <c>I = P/(V pf)</c>.</summary>
    /// <param name="powerW">Active power P, W, 0 or more.</param>
    /// <param name="voltageV">Voltage at the load V, V, over 0; line to neutral on a star.</param>
    /// <param name="powerFactor">Power factor pf, over 0 up to 1.</param>
    /// <returns>Current, A. Example: 3000 W at 230 V and 0.95 give 13.73 A.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double SinglePhaseA(double powerW, double voltageV, double powerFactor)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(powerW, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(voltageV, 0);
        CheckPowerFactor(powerFactor);
        return powerW / (voltageV * powerFactor);
    }

    /// <summary>Current of a balanced three-phase load: <c>I = P/(sqrt(3) V pf)</c>.</summary>
    /// <param name="powerW">Active power P of all phases, W, 0 or more.</param>
    /// <param name="lineVoltageV">Voltage line to line V, V, over 0.</param>
    /// <param name="powerFactor">Power factor pf, over 0 up to 1.</param>
    /// <returns>Current of a line, A. Example: 11000 W at 400 V and 0.9 give 17.64 A.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double ThreePhaseA(double powerW, double lineVoltageV, double powerFactor)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(powerW, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(lineVoltageV, 0);
        CheckPowerFactor(powerFactor);
        return powerW / (Math.Sqrt(3) * lineVoltageV * powerFactor);
    }

    /// <summary>Neutral current of a star whose loads have one power factor: <c>sqrt(a2 + b2 + c2 - ab - bc - ca)</c>.</summary>
    /// <param name="a">Current of L1, A, 0 or more.</param>
    /// <param name="b">Current of L2, A, 0 or more.</param>
    /// <param name="c">Current of L3, A, 0 or more.</param>
    /// <returns>Current, A. Example: 10, 8 and 6 give 3.464. Harmonics of order 3 add in the neutral and are not in it.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A current is negative.</exception>
    public static double NeutralA(double a, double b, double c)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(a, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(b, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(c, 0);

        // Rounding can take the sum of equal currents a hair under zero.
        return Math.Sqrt(Math.Max(0, (a * a) + (b * b) + (c * c) - (a * b) - (b * c) - (c * a)));
    }

    /// <summary>The current of a load as a phasor on its own phase: it lags by its power factor.</summary>
    /// <param name="currentA">Current, A, 0 or more.</param>
    /// <param name="powerFactor">Power factor, over 0 up to 1; taken as lagging.</param>
    /// <returns>Active part, and reactive part as a negative imaginary one, A.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static Complex Phasor(double currentA, double powerFactor)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(currentA, 0);
        CheckPowerFactor(powerFactor);
        return new Complex(currentA * powerFactor, -currentA * Math.Sqrt(1 - (powerFactor * powerFactor)));
    }

    /// <summary>Neutral current of a star as the sum of phasors, each line turned by a third of a circle.</summary>
    /// <param name="l1">Sum of the phasors on L1, A.</param>
    /// <param name="l2">Sum of the phasors on L2, A.</param>
    /// <param name="l3">Sum of the phasors on L3, A.</param>
    /// <returns>Current, A. Example: 10 A each at power factors 1, 0.8 and 0.9 give 6.046. Harmonics of order 3 add in the neutral and are not in it.</returns>
    public static double NeutralA(Complex l1, Complex l2, Complex l3) =>
        (l1 + (l2 * Turn) + (l3 * Turn * Turn)).Magnitude;

    private static readonly Complex Turn = Complex.FromPolarCoordinates(1, -2 * Math.PI / 3);

    private static void CheckPowerFactor(double powerFactor)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(powerFactor, 0);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(powerFactor, 1);
    }
}
