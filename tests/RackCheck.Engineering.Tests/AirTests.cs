using CsCheck;
using RackCheck.Testing;
using UnitsNet;

namespace RackCheck.Engineering.Tests;

public sealed class AirTests
{
    // The expected values have the gas constant 287.055, ASHRAE Fundamentals 287.05: a difference of 1.8e-5.
    private const double GasConstants = 2e-5;

    [Theory]
    [InlineData(0, 101325)] // ISO 2533
    [InlineData(500, 95460.83402866429)] // ISO 2533
    [InlineData(1000, 89874.56042735427)] // ISO 2533
    [InlineData(1500, 84555.99052357135)] // ISO 2533
    [InlineData(2000, 79495.19743529121)] // ISO 2533
    [InlineData(3000, 70108.52041191008)] // ISO 2533
    public void Pressure_falls_with_altitude(double altitude, double pressure) => Assert.Equal(pressure, Air.PressurePa(altitude), 1e-6);

    [Theory]
    [InlineData(-500)]
    [InlineData(2500)]
    [InlineData(5000)]
    [InlineData(11000)]
    public void Pressure_equals_integrated_air_column(double altitude)
    {
        // dp = -p g M/(R T) dh with T = 288.15 - 0.0065 h, integrated by the midpoint of thin layers.
        const int Layers = 20_000;
        var (logarithm, layer) = (Math.Log(101325), altitude / Layers);
        for (var i = 0; i < Layers; i++)
        {
            logarithm -= 9.80665 * 0.0289644 / (8.31432 * (288.15 - (0.0065 * (i + 0.5) * layer))) * layer;
        }

        Close(Math.Exp(logarithm), Air.PressurePa(altitude), 2e-5);
    }

    [Theory]
    [InlineData(10, 1226.0302055289424)] // WMO-No. 8
    [InlineData(20, 2332.5960220978072)] // WMO-No. 8
    [InlineData(25, 3160.0569164883336)] // WMO-No. 8
    [InlineData(35, 5612.841719421078)] // WMO-No. 8
    [InlineData(40, 7367.458076250485)] // WMO-No. 8
    public void SaturationPressure_matches_Magnus_formula(double temperature, double pressure) => Assert.Equal(pressure, Air.SaturationPa(temperature), 1e-8);

    [Theory]
    [InlineData(15, 0, 1.2249909284026714)] // ASHRAE Fundamentals
    [InlineData(20, 0, 1.2040973427229398)] // ASHRAE Fundamentals
    [InlineData(35, 0, 1.1454847834471193)] // ASHRAE Fundamentals
    [InlineData(35, 1000, 1.0160369246339298)] // ASHRAE Fundamentals
    [InlineData(40, 2000, 0.8843483306127407)] // ASHRAE Fundamentals
    public void Density_of_dry_air_is_that_of_ideal_gas(double temperature, double altitude, double density) =>
        Close(density, Air.DensityKgM3(temperature, altitude), GasConstants);

    [Theory]
    [InlineData(20, 50, 0, 1.198858521255658)] // ASHRAE Fundamentals, WMO-No. 8
    [InlineData(25, 50, 0, 1.1769263209762948)] // ASHRAE Fundamentals, WMO-No. 8
    [InlineData(35, 30, 1000, 1.0088415097523522)] // ASHRAE Fundamentals, WMO-No. 8
    [InlineData(25, 50, 2000, 0.9218619027711967)] // ASHRAE Fundamentals, WMO-No. 8
    [InlineData(40, 50, 1500, 0.9251574566613557)] // ASHRAE Fundamentals, WMO-No. 8
    [InlineData(30, 80, 0, 1.14966591467467)] // ASHRAE Fundamentals, WMO-No. 8
    public void Density_of_humid_air_is_that_of_gas_mixture(double temperature, double humidity, double altitude, double density) =>
        Close(density, Air.DensityKgM3(temperature, altitude, humidity), GasConstants);

    [Theory]
    [InlineData(25, 60, 16.693149006198954)] // WMO-No. 8
    [InlineData(35, 50, 23.023050430622312)] // WMO-No. 8
    [InlineData(22, 45, 9.515000629294176)] // WMO-No. 8
    [InlineData(40, 90, 38.04215319568853)] // WMO-No. 8
    [InlineData(10, 80, 6.706013093947368)] // WMO-No. 8
    [InlineData(27, 60, 18.57070748244661)] // WMO-No. 8
    [InlineData(24, 50, 12.932872135687942)] // WMO-No. 8
    public void DewPoint_matches_reference_values(double temperature, double humidity, double dewPoint) =>
        Assert.Equal(dewPoint, Air.DewPointC(temperature, humidity)!.Value, 1e-9);

    [Theory]
    [InlineData(25, 60, 16.697663521212892)] // Magnus with 17.625 and 243.04
    [InlineData(35, 50, 23.029271546350973)] // Magnus with 17.625 and 243.04
    [InlineData(40, 90, 38.04316746835206)] // Magnus with 17.625 and 243.04
    public void DewPoint_with_other_constants_agrees_within_0_02_K(double temperature, double humidity, double dewPoint) =>
        Assert.Equal(dewPoint, Air.DewPointC(temperature, humidity)!.Value, 0.02);

    [Fact]
    [Trait("Kind", "property")]
    public void Air_at_dew_point_is_saturated() =>
        Gen.Select(Gen.Double[-20, 60], Gen.Double[1, 100]).Sample((t, rh) =>
            Close(rh / 100 * Air.SaturationPa(t), Air.SaturationPa(Air.DewPointC(t, rh)!.Value), 1e-9), iter: Samples.Of(1_000));

    [Fact]
    public void DewPoint_of_saturated_air_is_its_temperature_of_dry_air_null()
    {
        Assert.Equal(21.5, Air.DewPointC(21.5, 100)!.Value, 1e-9);
        Assert.Null(Air.DewPointC(21.5, 0));
    }

    [Theory]
    [InlineData(1000, 10, 20, 0, 297.1959741182807)] // ASHRAE Fundamentals
    [InlineData(5000, 12, 35, 0, 1301.6791663049091)] // ASHRAE Fundamentals
    [InlineData(5000, 12, 35, 1500, 1559.8261070465219)] // ASHRAE Fundamentals
    [InlineData(350, 5, 40, 0, 222.2304059580342)] // ASHRAE Fundamentals
    [InlineData(1, 1, 20, 0, 2.9719597411828067)] // ASHRAE Fundamentals
    [InlineData(1, 1, 25, 0, 3.0226498271657984)] // ASHRAE Fundamentals
    [InlineData(1, 1, 30, 0, 3.07333991314879)] // ASHRAE Fundamentals
    [InlineData(1, 1, 40, 0, 3.174720085114774)] // ASHRAE Fundamentals
    [InlineData(1, 1, 30, 500, 3.26213540734721)] // ASHRAE Fundamentals
    [InlineData(1, 1, 30, 1000, 3.464897799989923)] // ASHRAE Fundamentals
    [InlineData(1, 1, 35, 2000, 3.981905195212479)] // ASHRAE Fundamentals
    public void Airflow_for_heat_load_matches_reference_values(double heat, double rise, double temperature, double altitude, double flow)
    {
        var density = Air.DensityKgM3(temperature, altitude);
        Close(flow, Air.FlowM3h(heat, rise, density), GasConstants);
        Close(rise, Air.RiseK(heat, flow, density), GasConstants);
    }

    [Theory]
    [InlineData(3.1, 1.1543641377541205)] // ASHRAE Fundamentals
    [InlineData(3.2, 1.1182902584493042)] // ASHRAE Fundamentals
    [InlineData(3.3, 1.0844026748599314)] // ASHRAE Fundamentals
    public void Rule_of_thumb_airflow_corresponds_to_a_density(double factor, double density) => Assert.Equal(factor, Air.FlowM3h(1, 1, density), 1e-9);

    [Fact]
    public void Airflow_in_other_units_carries_the_same_heat()
    {
        // 2400 W at 12 K: mass flow by the heat capacity, the volume through UnitsNet.
        var mass = 2400.0 / (1006 * 12);
        var volume = MassFlow.FromKilogramsPerSecond(mass) / Density.FromKilogramsPerCubicMeter(1.1839);
        Close(volume.CubicMetersPerHour, Air.FlowM3h(2400, 12, 1.1839), 1e-12);
        Close(volume.CubicFeetPerMinute, Air.FlowM3h(2400, 12, 1.1839) * Air.CfmPerM3h, 1e-9);
        Close((double)Power.FromWatts(2400).BritishThermalUnitsPerHour, 2400 * Air.BtuHPerW, 1e-7);
    }

    [Fact]
    public void Conversions_match_reference_values()
    {
        Assert.Equal(1.6990107955200002, Air.M3hPerCfm, 1e-12); // units converted
        Assert.Equal(0.588578, Air.CfmPerM3h, 1e-6); // exact unit definitions
        Assert.Equal(3.412142, Air.BtuHPerW, 1e-6); // exact unit definitions
        Assert.Equal(3.159390740740741, Air.BtuHPerW / (0.075 * 0.24 * 60), 1e-5); // units converted
        Assert.Equal(3.14483133640553, Air.BtuHPerW / 1.085, 1e-5); // units converted
        Assert.Equal(1.7552170781893002, Air.BtuHPerW / 1.08 / 1.8, 1e-5); // units converted
        Assert.Equal(2.982707841866667, 3.16 * Air.M3hPerCfm / 1.8, 1e-6); // units converted
    }

    [Fact]
    [Trait("Kind", "property")]
    public void Thinner_air_has_lower_density_and_needs_more_airflow() =>
        Gen.Select(Gen.Double[-20, 60], Gen.Double[-500, 11000], Gen.Double[0, 99], Gen.Double[0.01, 1]).Sample((t, h, rh, more) =>
        {
            var density = Air.DensityKgM3(t, h, rh);
            Assert.True(Air.DensityKgM3(t + more, h, rh) < density);
            Assert.True(Air.DensityKgM3(t, h + more, rh) < density);
            Assert.True(Air.DensityKgM3(t, h, rh + more) < density);
            Assert.True(Air.DensityKgM3(t, h) >= density);
            Assert.True(Air.FlowM3h(1000, 10, Air.DensityKgM3(t + more, h, rh)) > Air.FlowM3h(1000, 10, density));
        }, iter: Samples.Of(1_000));

    [Theory]
    [InlineData(-501, false)]
    [InlineData(-500, true)]
    [InlineData(11000, true)]
    [InlineData(11001, false)]
    [InlineData(double.NaN, false)]
    public void Altitude_range_of_atmosphere_is_checked(double altitude, bool within) => Assert.Equal(within, Air.IsWithinAtmosphere(altitude));

    [Theory]
    [InlineData(-46, false)]
    [InlineData(-45, true)]
    [InlineData(60, true)]
    [InlineData(61, false)]
    [InlineData(double.NaN, false)]
    public void Temperature_range_of_Magnus_formula_is_checked(double temperature, bool within) => Assert.Equal(within, Air.IsWithinMagnus(temperature));

    [Theory]
    [InlineData(44331.0)]
    [InlineData(double.NaN)]
    [InlineData(double.NegativeInfinity)]
    [InlineData(double.PositiveInfinity)]
    public void Pressure_at_impossible_altitude_throws(double altitude)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Air.PressurePa(altitude));
        Assert.Throws<ArgumentOutOfRangeException>(() => Air.DensityKgM3(20, altitude));
    }

    [Theory]
    [InlineData(-273.15, null)]
    [InlineData(double.NaN, null)]
    [InlineData(double.PositiveInfinity, null)]
    [InlineData(-250.0, 50.0)]
    [InlineData(20.0, -1.0)]
    [InlineData(20.0, 101.0)]
    [InlineData(20.0, double.NaN)]
    [InlineData(200.0, 100.0)] // 16 bar vapour pressure
    public void Density_out_of_range_throws(double temperature, double? humidity) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Air.DensityKgM3(temperature, 0, humidity));

    [Theory]
    [InlineData(-243.12, 50)]
    [InlineData(double.NaN, 50)]
    [InlineData(double.NaN, 0)]
    [InlineData(20, -1)]
    [InlineData(20, 100.1)]
    [InlineData(20, double.NaN)]
    public void DewPoint_out_of_range_throws(double temperature, double humidity) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Air.DewPointC(temperature, humidity));

    [Theory]
    [InlineData(-243.12)]
    [InlineData(-300)]
    [InlineData(double.NaN)]
    public void SaturationPressure_out_of_range_throws(double temperature) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Air.SaturationPa(temperature));

    [Theory]
    [InlineData(-1, 10, 1.2)]
    [InlineData(1000, 0, 1.2)]
    [InlineData(1000, -10, 1.2)]
    [InlineData(1000, 10, 0)]
    [InlineData(double.NaN, 10, 1.2)]
    [InlineData(1000, double.NaN, 1.2)]
    [InlineData(1000, 10, double.NaN)]
    public void Airflow_and_rise_out_of_range_throw(double heat, double riseOrFlow, double density)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Air.FlowM3h(heat, riseOrFlow, density));
        Assert.Throws<ArgumentOutOfRangeException>(() => Air.RiseK(heat, riseOrFlow, density));
    }

    private static void Close(double expected, double actual, double share) => Assert.InRange(actual / expected, 1 - share, 1 + share);

    [Theory]
    [InlineData(1000, 300, 20)]
    [InlineData(400, 50, 25)]
    [InlineData(5000, 900, 40)]
    public void Rise_at_the_outlet_carries_the_heat_at_its_own_density(double heat, double flow, double inlet)
    {
        // ASHRAE Fundamentals: the mass flow at the outlet's density, times cp and the rise, is the heat.
        var rise = Air.RiseAtOutletK(heat, flow, Air.DensityKgM3(inlet, 0), inlet)!.Value;
        Assert.Equal(heat, Air.DensityKgM3(inlet + rise, 0) * flow / 3600 * Air.HeatCapacity * rise, 1e-6 * heat);
        Assert.True(rise > Air.RiseK(heat, flow, Air.DensityKgM3(inlet, 0)));
    }

    [Fact]
    public void Flow_too_small_for_the_heat_has_no_rise_at_the_outlet() => Assert.Null(Air.RiseAtOutletK(10_000, 10, 1.2, 20));
}
