namespace RackCheck.Engineering;

/// <summary>Air at the site: pressure, density, dew point and the airflow required for a heat load.</summary>
/// <remarks>
/// Atmosphere: ISO 2533 (value from memory). Saturation: Magnus formula with the constants of WMO-No. 8 (secondary source), over water even below 0 C,
/// where frost forms up to a few kelvin above the stated dew point. Gas and heat constants: ASHRAE Fundamentals (value from memory).
/// </remarks>
public static class Air
{
    /// <summary>Pressure at sea level, Pa.</summary>
    public const double SeaLevelPa = 101_325;

    /// <summary>Minimum altitude of the standard atmosphere, m.</summary>
    public const double LeastAltitudeM = -500;

    /// <summary>Maximum altitude for the formula, m; above it the temperature no longer falls.</summary>
    public const double GreatestAltitudeM = 11_000;

    /// <summary>Minimum temperature for the Magnus formula, C.</summary>
    public const double LeastMagnusC = -45;

    /// <summary>Maximum temperature for the Magnus formula, C.</summary>
    public const double GreatestMagnusC = 60;

    /// <summary>Gas constant of dry air, J/(kg K).</summary>
    public const double GasConstant = 287.05;

    /// <summary>Density reduction by water vapour: 1 minus the ratio of the molar masses of water vapour and dry air.</summary>
    public const double VapourRelief = 0.378;

    /// <summary>Specific heat capacity of dry air at constant pressure, J/(kg K); accurate to 0.2 % from 0 to 60 C.</summary>
    public const double HeatCapacity = 1006;

    /// <summary>0 C in kelvin, K.</summary>
    public const double ZeroC = 273.15;

    /// <summary>One cubic foot per minute in m3/h, exact, from the foot of 0.3048 m.</summary>
    public const double M3hPerCfm = 0.3048 * 0.3048 * 0.3048 * 60;

    /// <summary>One m3/h in cubic feet per minute: 0.588578.</summary>
    public const double CfmPerM3h = 1 / M3hPerCfm;

    /// <summary>One watt in Btu/h: 3.412142, from the international table Btu of 1055.05585262 J.</summary>
    public const double BtuHPerW = 3600 / 1055.05585262;

    private const double LapsePerM = 2.25577e-5;
    private const double PressureExponent = 5.25588;
    private const double MagnusPa = 611.2;
    private const double MagnusSlope = 17.62;
    private const double MagnusC = 243.12;

    /// <summary>Whether an altitude is within the valid range of <see cref="PressurePa"/>.</summary>
    /// <param name="altitudeM">Altitude above sea level, m.</param>
    /// <returns>True from -500 to 11000.</returns>
    public static bool IsWithinAtmosphere(double altitudeM) => altitudeM is >= LeastAltitudeM and <= GreatestAltitudeM;

    /// <summary>Whether a temperature is within the valid range of the Magnus formula, on which humid density and dew point depend.</summary>
    /// <param name="temperatureC">Temperature, C.</param>
    /// <returns>True from -45 to 60.</returns>
    public static bool IsWithinMagnus(double temperatureC) => temperatureC is >= LeastMagnusC and <= GreatestMagnusC;

    /// <summary>Pressure of the standard atmosphere: <c>p = 101325 (1 - 2.25577e-5 h)^5.25588</c>.</summary>
    /// <param name="altitudeM">Altitude above sea level h, m; valid -500 to 11000, see <see cref="IsWithinAtmosphere"/>.</param>
    /// <returns>Pressure, Pa.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number, or 44331 m and above, where the formula gives no pressure.</exception>
    /// <remarks>ISO 2533. Weather changes the pressure by about +-3 %.</remarks>
    /// <example>0 m: 101325; 1000 m: 89875; 2000 m: 79495.</example>
    public static double PressurePa(double altitudeM)
    {
        var left = 1 - (LapsePerM * altitudeM);
        return left > 0 && double.IsFinite(left)
            ? SeaLevelPa * Math.Pow(left, PressureExponent)
            : throw new ArgumentOutOfRangeException(nameof(altitudeM), altitudeM, "The formula gives no pressure at this altitude.");
    }

    /// <summary>Saturation vapour pressure over water: <c>611.2 exp(17.62 t/(243.12 + t))</c>.</summary>
    /// <param name="temperatureC">Temperature t, C; valid -45 to 60, see <see cref="IsWithinMagnus"/>.</param>
    /// <returns>Pressure, Pa.</returns>
    /// <exception cref="ArgumentOutOfRangeException">-243.12 or below, where the formula is undefined, or not a finite number.</exception>
    /// <remarks>Magnus formula, WMO-No. 8. Up to 0.3 % below the ASHRAE formula from 0 to 50 C.</remarks>
    /// <example>10 C: 1226; 25 C: 3160; 40 C: 7367.</example>
    public static double SaturationPa(double temperatureC) => MagnusPa * Math.Exp(MagnusTerm(temperatureC));

    /// <summary>Air density: <c>rho = (p - 0.378 e)/(287.05 T)</c> with <c>e = RH/100 x saturation pressure</c>; dry air where no humidity is given.</summary>
    /// <param name="temperatureC">Temperature, C, above -273.15.</param>
    /// <param name="altitudeM">Altitude above sea level, m; valid -500 to 11000.</param>
    /// <param name="humidityPercent">Relative humidity, 0 to 100 percent; null for dry air.</param>
    /// <returns>Density, kg/m3.</returns>
    /// <exception cref="ArgumentOutOfRangeException">
    /// Temperature, altitude or humidity out of range, or a vapour content for which the formula gives no density.
    /// </exception>
    /// <remarks>
    /// Ideal gases. Above the boiling point of water at the site, high relative humidities are physically impossible; the formula still gives a density,
    /// as long as it is above 0. Below 6000 m this occurs only above 60 C, outside the valid range of the saturation pressure.
    /// </remarks>
    /// <example>20 C dry at 0 m: 1.204; 25 C, 50 %, 0 m: 1.177; 35 C dry at 1000 m: 1.016.</example>
    public static double DensityKgM3(double temperatureC, double altitudeM, double? humidityPercent = null)
    {
        if (!(temperatureC > -ZeroC) || !double.IsFinite(temperatureC))
        {
            throw new ArgumentOutOfRangeException(nameof(temperatureC), temperatureC, "The temperature must be above -273.15 C.");
        }

        var pressure = PressurePa(altitudeM);
        if (humidityPercent is { } humidity)
        {
            CheckHumidity(humidity);
            pressure -= humidity == 0 ? 0 : VapourRelief * (humidity / 100) * SaturationPa(temperatureC);
        }

        return pressure > 0
            ? pressure / (GasConstant * (temperatureC + ZeroC))
            : throw new ArgumentOutOfRangeException(nameof(humidityPercent), humidityPercent, "The formula gives no density at this temperature and humidity.");
    }

    /// <summary>Dew point, Magnus formula: <c>t_d = 243.12 g/(17.62 - g)</c> with <c>g = ln(RH/100) + 17.62 t/(243.12 + t)</c>.</summary>
    /// <param name="temperatureC">Temperature t, C, above -243.12; valid -45 to 60.</param>
    /// <param name="humidityPercent">Relative humidity RH, 0 to 100 percent.</param>
    /// <returns>Dew point, C; null at 0 percent, because dry air has none.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Temperature or humidity out of range.</exception>
    /// <remarks>Magnus formula, WMO-No. 8; within 0.02 K of the ASHRAE formula in the range of room conditions. It does not depend on the altitude.</remarks>
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

    /// <summary>Airflow required for a heat load at a given temperature rise: <c>V = 3600 Q/(rho cp dT)</c>.</summary>
    /// <param name="heatW">Heat load Q, W, 0 or more.</param>
    /// <param name="riseK">Air temperature rise dT, K, above 0.</param>
    /// <param name="densityKgM3">Air density rho at the point of measurement, kg/m3, above 0.</param>
    /// <returns>Airflow, m3/h.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <remarks>Extract fans move about 3 % more volume for each 10 K that the air is hotter: use the density at the fans.</remarks>
    /// <example>1000 W at 10 K and 1.2041 kg/m3: 297.2; 2400 W at 12 K and 1.1839: 604.5.</example>
    public static double FlowM3h(double heatW, double riseK, double densityKgM3)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(heatW, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(riseK, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(densityKgM3, 0);
        return 3600 * heatW / (densityKgM3 * HeatCapacity * riseK);
    }

    /// <summary>Air temperature rise for a heat load at a given airflow: <c>dT = 3600 Q/(rho cp V)</c>.</summary>
    /// <param name="heatW">Heat load Q, W, 0 or more.</param>
    /// <param name="flowM3h">Airflow V, m3/h, above 0.</param>
    /// <param name="densityKgM3">Air density rho, kg/m3, above 0.</param>
    /// <returns>Temperature rise, K.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range. Without airflow there is no steady temperature rise.</exception>
    /// <example>1000 W, 297.2 m3/h, 1.2041 kg/m3: 10 K; at twice the airflow: 5 K.</example>
    public static double RiseK(double heatW, double flowM3h, double densityKgM3)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(heatW, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(flowM3h, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(densityKgM3, 0);
        return 3600 * heatW / (densityKgM3 * HeatCapacity * flowM3h);
    }

    /// <summary>
    /// Air temperature rise where the flow is measured at the outlet, as of roof fans: <c>dT = x/(1 - x/T)</c> with <c>x = 3600 Q/(rho cp V)</c>.
    /// </summary>
    /// <param name="heatW">Heat load Q, W, 0 or more.</param>
    /// <param name="flowM3h">Airflow V of hot air at the outlet, m3/h, above 0.</param>
    /// <param name="densityKgM3">Air density rho at the inlet, kg/m3, above 0.</param>
    /// <param name="inletC">Temperature at the inlet, T in kelvin, C, above -273.15.</param>
    /// <returns>Temperature rise, K; null where the flow carries the heat at no temperature.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <remarks>Ideal gas at constant pressure: the density falls as the absolute temperature rises.</remarks>
    /// <example>1000 W, 300 m3/h, 1.2041 kg/m3, 20 C: 9.9065/(1 - 9.9065/293.15) = 10.253.</example>
    public static double? RiseAtOutletK(double heatW, double flowM3h, double densityKgM3, double inletC)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(inletC, -ZeroC);
        var share = RiseK(heatW, flowM3h, densityKgM3) / (inletC + ZeroC);
        return share < 1 ? share * (inletC + ZeroC) / (1 - share) : null;
    }

    private static double MagnusTerm(double temperatureC) => temperatureC > -MagnusC && double.IsFinite(temperatureC)
        ? MagnusSlope * temperatureC / (MagnusC + temperatureC)
        : throw new ArgumentOutOfRangeException(nameof(temperatureC), temperatureC, "The formula is defined above -243.12 C.");

    private static void CheckHumidity(double humidityPercent)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(humidityPercent, 0);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(humidityPercent, 100);
    }
}
