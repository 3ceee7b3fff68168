using System.Numerics;

namespace RackCheck.Engineering.Tests;

public sealed class CurrentsTests
{
    private static readonly double[] PowerFactors = [1, 0.95, 0.9, 0.8, 0.6, 0.05];

    [Theory]
    [InlineData(3000, 230, 0.95, 13.729977116704806)] // circuit theory
    [InlineData(1800, 120, 1, 15)] // circuit theory
    [InlineData(500, 230, 0.6, 3.6231884057971016)] // circuit theory
    [InlineData(0, 230, 0.95, 0)]
    [InlineData(-0.0, 230, 0.95, 0)]
    public void Current_single_phase_is_apparent_power_over_voltage(double power, double voltage, double powerFactor, double current) =>
        Assert.Equal(current, Currents.SinglePhaseA(power, voltage, powerFactor), 1e-12);

    [Theory]
    [InlineData(11000, 400, 1, 15.87713240271471)] // circuit theory
    [InlineData(11000, 400, 0.9, 17.641258225238566)] // circuit theory
    [InlineData(17300, 415, 0.95, 25.33458378435137)] // circuit theory
    [InlineData(5000, 208, 1, 13.878612240135237)] // circuit theory
    public void Current_three_phase_is_apparent_power_over_root_three_voltage(double power, double voltage, double powerFactor, double current) =>
        Assert.Equal(current, Currents.ThreePhaseA(power, voltage, powerFactor), 1e-12);

    [Fact]
    public void Balanced_load_has_a_third_of_power_per_phase()
    {
        foreach (var powerFactor in PowerFactors)
        {
            for (var power = 0.0; power <= 30000; power += 1234.5)
            {
                var phase = Currents.SinglePhaseA(power / 3, 400 / Math.Sqrt(3), powerFactor);
                Assert.Equal(phase, Currents.ThreePhaseA(power, 400, powerFactor), 1e-9);
            }
        }
    }

    [Fact]
    public void Default_power_factor_is_0_95() => Assert.Equal(0.95, Currents.UsualPowerFactor); // common practice

    [Theory]
    [InlineData(16, 0, 0, 16)] // circuit theory
    [InlineData(16, 16, 0, 16)] // circuit theory
    [InlineData(10, 8, 6, 3.4641016151377575)] // circuit theory
    [InlineData(10, 15, 20, 8.66025403784438)] // circuit theory
    [InlineData(16, 12, 5, 9.643650760992958)] // circuit theory
    [InlineData(0.1, 0.1, 0.1, 0)] // balanced
    [InlineData(0, 0, 0, 0)]
    public void Neutral_with_equal_power_factors_matches_formula(double a, double b, double c, double neutral) =>
        Assert.Equal(neutral, Currents.NeutralA(a, b, c), 1e-9);

    [Fact]
    public void Neutral_of_equal_currents_with_different_factors_is_not_zero() =>
        Assert.Equal(6.045987955982393, Currents.NeutralA(Currents.Phasor(10, 1), Currents.Phasor(10, 0.8), Currents.Phasor(10, 0.9)), 1e-9); // circuit theory

    [Fact]
    public void Neutral_of_phasors_equals_formula_for_equal_power_factors()
    {
        foreach (var powerFactor in PowerFactors)
        {
            foreach (var (a, b, c) in Loads())
            {
                var sum = Currents.NeutralA(Currents.Phasor(a, powerFactor), Currents.Phasor(b, powerFactor), Currents.Phasor(c, powerFactor));
                Assert.Equal(Currents.NeutralA(a, b, c), sum, 1e-6);
            }
        }
    }

    [Fact]
    public void Neutral_equals_sum_of_active_and_reactive_parts()
    {
        foreach (var ((a, b, c), (f, g, h)) in Cases())
        {
            // Active and reactive parts as coordinates; 120 degrees has cosine -1/2 and sine sqrt(3)/2.
            var (x1, y1) = Parts(a, f);
            var (x2, y2) = Parts(b, g);
            var (x3, y3) = Parts(c, h);
            var half = Math.Sqrt(3) / 2;
            var x = x1 - (x2 / 2) + (half * y2) - (x3 / 2) - (half * y3);
            var y = y1 - (y2 / 2) - (half * x2) - (y3 / 2) + (half * x3);
            Assert.Equal(Math.Sqrt((x * x) + (y * y)), Neutral(a, b, c, f, g, h), 1e-9);
        }
    }

    [Fact]
    public void Neutral_matches_cosine_rule()
    {
        foreach (var ((a, b, c), (f, g, h)) in Cases())
        {
            // |i1 + i2 + i3|2 = sum of the squares plus twice each product of two currents times the cosine of the angle between them.
            var third = 2 * Math.PI / 3;
            var (p, q, r) = (-Math.Acos(f), -Math.Acos(g) - third, -Math.Acos(h) + third);
            var square = (a * a) + (b * b) + (c * c) + (2 * a * b * Math.Cos(p - q)) + (2 * b * c * Math.Cos(q - r)) + (2 * c * a * Math.Cos(r - p));
            Assert.Equal(Math.Sqrt(Math.Max(0, square)), Neutral(a, b, c, f, g, h), 1e-6);
        }
    }

    [Fact]
    public void Neutral_matches_rms_of_summed_waves()
    {
        foreach (var ((a, b, c), (f, g, h)) in Cases())
        {
            var squares = 0.0;
            const int Steps = 36;
            for (var step = 0; step < Steps; step++)
            {
                var t = 2 * Math.PI * step / Steps;
                var wave = (a * Math.Sin(t - Math.Acos(f)))
                    + (b * Math.Sin(t - (2 * Math.PI / 3) - Math.Acos(g)))
                    + (c * Math.Sin(t - (4 * Math.PI / 3) - Math.Acos(h)));
                squares += 2 * wave * wave;
            }

            Assert.Equal(Math.Sqrt(squares / Steps), Neutral(a, b, c, f, g, h), 1e-6);
        }
    }

    [Fact]
    public void Loads_on_one_line_add_as_phasors()
    {
        // 10 A at 0.6 and 10 A at 0.8: active 6 + 8, reactive 8 + 6.
        var line = Currents.Phasor(10, 0.6) + Currents.Phasor(10, 0.8);
        Assert.Equal(14 * Math.Sqrt(2), Currents.NeutralA(line, Complex.Zero, Complex.Zero), 1e-9);
    }

    [Theory]
    [InlineData(10, 1, 10, 0)]
    [InlineData(10, 0.6, 6, -8)]
    [InlineData(5, 0.8, 4, -3)]
    [InlineData(0, 0.8, 0, 0)]
    public void Phasor_lags(double current, double powerFactor, double active, double reactive)
    {
        var phasor = Currents.Phasor(current, powerFactor);
        Assert.Equal(active, phasor.Real, 1e-12);
        Assert.Equal(reactive, phasor.Imaginary, 1e-12);
    }

    [Theory]
    [InlineData(-1, 230, 0.95)]
    [InlineData(double.NaN, 230, 0.95)]
    [InlineData(100, 0, 0.95)]
    [InlineData(100, -230, 0.95)]
    [InlineData(100, double.NaN, 0.95)]
    [InlineData(100, 230, 0)]
    [InlineData(100, 230, -0.5)]
    [InlineData(100, 230, 1.01)]
    [InlineData(100, 230, double.NaN)]
    public void Current_out_of_range_throws(double power, double voltage, double powerFactor)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Currents.SinglePhaseA(power, voltage, powerFactor));
        Assert.Throws<ArgumentOutOfRangeException>(() => Currents.ThreePhaseA(power, voltage, powerFactor));
    }

    [Theory]
    [InlineData(-1, 0.95)]
    [InlineData(double.NaN, 0.95)]
    [InlineData(10, 0)]
    [InlineData(10, 1.01)]
    [InlineData(10, double.NaN)]
    public void Phasor_out_of_range_throws(double current, double powerFactor) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Currents.Phasor(current, powerFactor));

    [Theory]
    [InlineData(-1, 0, 0)]
    [InlineData(0, -1, 0)]
    [InlineData(0, 0, -1)]
    [InlineData(double.NaN, 0, 0)]
    [InlineData(0, double.NaN, 0)]
    [InlineData(0, 0, double.NaN)]
    public void Negative_line_current_throws(double a, double b, double c) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Currents.NeutralA(a, b, c));

    private static double Neutral(double a, double b, double c, double f, double g, double h) =>
        Currents.NeutralA(Currents.Phasor(a, f), Currents.Phasor(b, g), Currents.Phasor(c, h));

    private static (double Active, double Reactive) Parts(double current, double powerFactor)
    {
        var lag = Math.Acos(powerFactor);
        return (current * Math.Cos(lag), -current * Math.Sin(lag));
    }

    private static IEnumerable<((double, double, double) Loads, (double, double, double) PowerFactors)> Cases() =>
        from loads in Loads()
        from f in PowerFactors
        from g in PowerFactors
        from h in PowerFactors
        select (loads, (f, g, h));

    private static IEnumerable<(double, double, double)> Loads() => [(16, 0, 0), (10, 10, 10), (10, 8, 6), (6, 8, 10), (3.7, 15.2, 31.9), (0, 0, 0)];
}
