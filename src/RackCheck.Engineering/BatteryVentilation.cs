namespace RackCheck.Engineering;

/// <summary>Ventilation of lead-acid batteries, which give off hydrogen while they are charged.</summary>
/// <remarks>IEC 62485-2 (value from memory). Lithium batteries are outside these formulae.</remarks>
public static class BatteryVentilation
{
    /// <summary>Gassing current of valve-regulated cells on float charge, mA/Ah.</summary>
    public const double RegulatedFloat = 1;

    /// <summary>Gassing current of valve-regulated cells on boost charge, mA/Ah.</summary>
    public const double RegulatedBoost = 8;

    /// <summary>Gassing current of vented cells on float charge, mA/Ah.</summary>
    public const double VentedFloat = 5;

    /// <summary>Gassing current of vented cells on boost charge, mA/Ah.</summary>
    public const double VentedBoost = 20;

    /// <summary>Air needed per cell and ampere of gassing current, m3/h.</summary>
    public const double M3hPerAmpere = 0.05;

    /// <summary>Free area of each opening per m3/h of air, cm2.</summary>
    public const double Cm2PerM3h = 28;

    /// <summary>Air needed: <c>Q = 0.05 n I C/1000</c>.</summary>
    /// <param name="cells">Number of cells n, 0 or more.</param>
    /// <param name="capacityAh">Capacity of a cell C, Ah, 0 or more.</param>
    /// <param name="gassingMaPerAh">Gassing current I, mA/Ah, 0 or more.</param>
    /// <returns>Airflow, m3/h. Examples: 48 cells of 100 Ah at 8 mA/Ah: 1.92; 24 of 200 at 1: 0.24; 24 of 200 at 20: 4.8.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is negative or not a number.</exception>
    public static double NeededM3h(int cells, double capacityAh, double gassingMaPerAh)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(cells);
        ArgumentOutOfRangeException.ThrowIfLessThan(capacityAh, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(gassingMaPerAh, 0);
        return M3hPerAmpere * cells * gassingMaPerAh * capacityAh / 1000;
    }

    /// <summary>Free area of the inlet, and of the outlet, for natural ventilation: <c>A = 28 Q</c>.</summary>
    /// <param name="neededM3h">Air needed Q, m3/h, 0 or more.</param>
    /// <returns>Area, cm2. Examples: 1.92: 53.76; 0.24: 6.72; 4.8: 134.4.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A negative airflow.</exception>
    public static double OpeningCm2(double neededM3h)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(neededM3h, 0);
        return Cm2PerM3h * neededM3h;
    }
}
