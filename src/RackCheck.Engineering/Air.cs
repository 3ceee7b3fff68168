namespace RackCheck.Engineering;

/// <summary>Air of a site: pressure, density, dew point, and what of it a heat load needs.</summary>
/// <remarks>
/// Atmosphere: ISO 2533 (value from memory). Saturation: Magnus with the constants of WMO-No. 8 (secondary source), over water also below freezing,
/// where frost forms up to a few kelvin above the dew point that is given. Gas and heat constants: ASHRAE Fundamentals (value from memory).
/// </remarks>
public static class Air
{
    /// <summary>Pressure at the height of the sea, Pa.</summary>
    public const double SeaLevelPa = 101_325;

    /// <summary>Lowest height that the standard atmosphere is for, m.</summary>
    public const double LeastAltitudeM = -500;

    /// <summary>Greatest height that the formula is for, m: above it the temperature falls no more.</summary>
    public const double GreatestAltitudeM = 11_000;

    /// <summary>Lowest temperature that the Magnus formula is for, C.</summary>
    public const double LeastMagnusC = -45;

    /// <summary>Greatest temperature that the Magnus formula is for, C.</summary>
    public const double GreatestMagnusC = 60;

    /// <summary>Gas constant of dry air, J/(kg K).</summary>
    public const double GasConstant = 287.05;

    /// <summary>What a share of vapour is lighter than as much dry air: one less the ratio of their molar masses.</summary>
    public const double VapourRelief = 0.378;

    /// <summary>Heat capacity of air at constant pressure, J/(kg K); within 0.2 % from 0 to 60 C when dry.</summary>
    public const double HeatCapacity = 1006;

    /// <summary>0 C on the absolute scale, K.</summary>
    public const double ZeroC = 273.15;

    /// <summary>One cubic foot a minute, m3/h: exact, from the foot of 0.3048 m.</summary>
    public const double M3hPerCfm = 0.3048 * 0.3048 * 0.3048 * 60;

    /// <summary>One m3/h in cubic feet a minute: 0.588578.</summary>
    public const double CfmPerM3h = 1 / M3hPerCfm;

    /// <summary>One watt in Btu/h: 3.412142, from the international table Btu of 1055.05585262 J.</summary>
    public const double BtuHPerW = 3600 / 1055.05585262;

    private const double LapsePerM = 2.25577e-5;
    private const double PressureExponent = 5.25588;
    private const double MagnusPa = 611.2;
    private const double MagnusSlope = 17.62;
    private const double MagnusC = 243.12;

    /// <summary>Whether a height lies in the standard atmosphere that <see cref="PressurePa"/> is for.</summary>
    /// <param name="altitudeM">Height above the sea, m.</param>
    /// <returns>Whether it is within -500 to 11000.</returns>
    public static bool IsWithinAtmosphere(double altitudeM) => altitudeM is >= LeastAltitudeM and <= GreatestAltitudeM;

    /// <summary>Whether the Magnus formula is for a temperature; humid density and dew point hang on it.</summary>
    /// <param name="temperatureC">Temperature, C.</param>
    /// <returns>Whether it is within -45 to 60.</returns>
    public static bool IsWithinMagnus(double temperatureC) => temperatureC is >= LeastMagnusC and <= GreatestMagnusC;

    /// <summary>Pressure of the standard atmosphere: <c>p = 101325 (1 - 2.25577e-5 h)^5.25588</c>.</summary>
    /// <param name="altitudeM">Height above the sea h, m; valid -500 to 11000, see <see cref="IsWithinAtmosphere"/>.</param>
    /// <returns>Pressure, Pa.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No number, or so high (44331 m) that the formula has no air left.</exception>
    /// <remarks>ISO 2533. The weather moves the pressure by about 3 % either way.</remarks>
    /// <example>0 m: 101325; 1000 m: 89875; 2000 m: 79495.</example>
    public static double PressurePa(double altitudeM)
    {
        var left = 1 - (LapsePerM * altitudeM);
        return left > 0 && double.IsFinite(left)
            ? SeaLevelPa * Math.Pow(left, PressureExponent)
            : throw new ArgumentOutOfRangeException(nameof(altitudeM), altitudeM, "No air there.");
    }

    /// <summary>Pressure of saturated vapour over water: <c>611.2 exp(17.62 t/(243.12 + t))</c>.</summary>
    /// <param name="temperatureC">Temperature t, C; valid -45 to 60, see <see cref="IsWithinMagnus"/>.</param>
    /// <returns>Pressure, Pa.</returns>
    /// <exception cref="ArgumentOutOfRangeException">At or under -243.12, where the formula has its pole, or no number.</exception>
    /// <remarks>Magnus, WMO-No. 8. Up to 0.3 % under the formula of ASHRAE from 0 to 50 C.</remarks>
    /// <example>10 C: 1226; 25 C: 3160; 40 C: 7367.</example>
    public static double SaturationPa(double temperatureC) => MagnusPa * Math.Exp(MagnusTerm(temperatureC));

    /// <summary>Density: <c>rho = (p - 0.378 e)/(287.05 T)</c> with <c>e = RH/100 x saturation</c>; dry without humidity.</summary>
    /// <param name="temperatureC">Temperature, C, over -273.15.</param>
    /// <param name="altitudeM">Height above the sea, m; valid -500 to 11000.</param>
    /// <param name="humidityPercent">Relative humidity, 0 to 100 percent; null for dry air.</param>
    /// <returns>Density, kg/m3.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such temperature, height or humidity; or so much vapour that the air would weigh nothing.</exception>
    /// <remarks>
    /// Ideal gases. Air hotter than water boils at there cannot be as humid as a high percentage says; the formula still gives a density, as long as
    /// it is over 0. Only past 60 C, outside the validity of the saturation pressure, can that be below 6000 m.
    /// </remarks>
    /// <example>20 C dry at 0 m: 1.204; 25 C, 50 %, 0 m: 1.177; 35 C dry at 1000 m: 1.016.</example>
    public static double DensityKgM3(double temperatureC, double altitudeM, double? humidityPercent = null)
    {
        if (!(temperatureC > -ZeroC) || !double.IsFinite(temperatureC))
        {
            throw new ArgumentOutOfRangeException(nameof(temperatureC), temperatureC, "A temperature is over -273.15 C.");
        }

        var pressure = PressurePa(altitudeM);
        if (humidityPercent is { } humidity)
        {
            CheckHumidity(humidity);
            pressure -= humidity == 0 ? 0 : VapourRelief * (humidity / 100) * SaturationPa(temperatureC);
        }

        return pressure > 0
            ? pressure / (GasConstant * (temperatureC + ZeroC))
            : throw new ArgumentOutOfRangeException(nameof(humidityPercent), humidityPercent, "Air cannot be so hot and so humid.");
    }

    /// <summary>Dew point: <c>t_d = 243.12 g/(17.62 - g)</c> with <c>g = ln(RH/100) + 17.62 t/(243.12 + t)</c>.</summary>
    /// <param name="temperatureC">Temperature t, C, over -243.12; valid -45 to 60.</param>
    /// <param name="humidityPercent">Relative humidity RH, 0 to 100 percent.</param>
    /// <returns>Dew point, C; null at 0 percent, for dry air has none.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such temperature or humidity.</exception>
    /// <remarks>Magnus, WMO-No. 8; within 0.02 K of the formula of ASHRAE where rooms are. It does not hang on the altitude.</remarks>
    /// <example>25 C and 60 %: 16.69; 35 C and 50 %: 23.02; 24 C and 50 %: 12.93.</example>
    public static double? DewPointC(double temperatureC, double humidityPercent)
    {
        CheckHumidity(humidityPercent);
        var term = MagnusTerm(temperatureC);
        if (humidityPercent == 0)
        {
            return null;
        }

        var g = Math.Log(humidityPercent / 100) + term;
        return MagnusC * g / (MagnusSlope - g);
    }

    /// <summary>Air that carries heat off at a rise: <c>V = 3600 Q/(rho cp dT)</c>.</summary>
    /// <param name="heatW">Heat Q, W, 0 or more.</param>
    /// <param name="riseK">Rise of the air dT, K, over 0.</param>
    /// <param name="densityKgM3">Density rho where the volume is measured, kg/m3, over 0.</param>
    /// <returns>Flow, m3/h.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <remarks>Fans that blow hot air out move about 3 % more volume for each 10 K that it is hotter.</remarks>
    /// <example>1000 W at 10 K and 1.2041 kg/m3: 297.2; 2400 W at 12 K and 1.1839: 604.5.</example>
    public static double FlowM3h(double heatW, double riseK, double densityKgM3)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(heatW, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(riseK, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(densityKgM3, 0);
        return 3600 * heatW / (densityKgM3 * HeatCapacity * riseK);
    }

    /// <summary>Rise of the air that carries heat off: <c>dT = 3600 Q/(rho cp V)</c>.</summary>
    /// <param name="heatW">Heat Q, W, 0 or more.</param>
    /// <param name="flowM3h">Flow V, m3/h, over 0.</param>
    /// <param name="densityKgM3">Density rho, kg/m3, over 0.</param>
    /// <returns>Rise, K.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range; without flow there is no steady rise.</exception>
    /// <example>1000 W in 297.2 m3/h of 1.2041 kg/m3: 10 K; in twice as much: 5 K.</example>
    public static double RiseK(double heatW, double flowM3h, double densityKgM3)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(heatW, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(flowM3h, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(densityKgM3, 0);
        return 3600 * heatW / (densityKgM3 * HeatCapacity * flowM3h);
    }

    private static double MagnusTerm(double temperatureC) => temperatureC > -MagnusC && double.IsFinite(temperatureC)
        ? MagnusSlope * temperatureC / (MagnusC + temperatureC)
        : throw new ArgumentOutOfRangeException(nameof(temperatureC), temperatureC, "The formula is for temperatures over -243.12 C.");

    private static void CheckHumidity(double humidityPercent)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(humidityPercent, 0);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(humidityPercent, 100);
    }
}
