namespace RackCheck.Engineering;

/// <summary>Pressure drop of perforated doors and plain openings.</summary>
/// <remarks>
/// Plate: Idelchik, third edition, exponent 0.375 (value from memory; the 0.5 of the older edition gives up to 29 % less). Opening: discharge coefficient of
/// a sharp edge (value from memory). A loss is stored as its coefficient K, <c>dp = K V^2</c> with V in m3/h. Coefficients K in series add.
/// </remarks>
public static class Openings
{
    /// <summary>Discharge coefficient of a sharp-edged opening.</summary>
    public const double DischargeCoefficient = 0.6;

    /// <summary>Minimum Reynolds number in the holes for the plate formula.</summary>
    public const double PlateFromReynolds = 1e5;

    /// <summary>Ratio of plate thickness to hole diameter below which the plate formula is valid.</summary>
    public const double PlateToThickness = 0.015;

    /// <summary>Uncertainty (+-) of the plate formula for cabinet doors, percent. Their holes are outside its valid range.</summary>
    public const double DoorUncertaintyPercent = 30;

    /// <summary>Kinematic viscosity of air at about 30 C, m2/s.</summary>
    public const double ViscosityM2S = 1.6e-5;

    /// <summary>Loss coefficient of a thin perforated plate for the approach velocity: <c>zeta = (0.707 (1-f)^0.375 + 1 - f)^2/f^2</c>.</summary>
    /// <param name="openShare">Open area ratio f of the perforated field, above 0 to 1.</param>
    /// <returns>Coefficient zeta; 0 at a ratio of 1 (no plate).</returns>
    /// <exception cref="ArgumentOutOfRangeException">The ratio is outside its range.</exception>
    /// <remarks>
    /// Valid for sharp edges and high velocity (<see cref="IsPlateWithinValidity"/>). Doors are outside this range: state
    /// <see cref="DoorUncertaintyPercent"/>.
    /// </remarks>
    /// <example>0.3: 19.32; 0.5: 4.370; 0.63: 1.850; 0.8: 0.5377.</example>
    public static double PlateZeta(double openShare)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(openShare, 0);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(openShare, 1);
        var closed = 1 - openShare;
        var root = ((0.707 * Math.Pow(closed, 0.375)) + closed) / openShare;
        return root * root;
    }

    /// <summary>Reynolds number in the holes of a plate: <c>Re = w d/(f nu)</c>.</summary>
    /// <param name="approachMS">Approach velocity w, m/s, 0 or more.</param>
    /// <param name="openShare">Open area ratio f, above 0 to 1.</param>
    /// <param name="holeMm">Hydraulic diameter of a hole d, mm, above 0.</param>
    /// <returns>Reynolds number. Example: 1 m/s, holes of 6 mm, open area ratio 0.6: 625.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double HoleReynolds(double approachMS, double openShare, double holeMm)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(approachMS, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(openShare, 0);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(openShare, 1);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(holeMm, 0);
        return approachMS * (holeMm / 1000) / (openShare * ViscosityM2S);
    }

    /// <summary>Whether the plate formula is valid: Re above 1e5 and plate thickness below 0.015 of the hole diameter.</summary>
    /// <param name="holeReynolds">Reynolds number in the holes.</param>
    /// <param name="thicknessToHole">Ratio of plate thickness to hole diameter.</param>
    /// <returns>True in the valid range. Example: a 1.2 mm door with holes of 6 mm at Re 625 is outside it.</returns>
    public static bool IsPlateWithinValidity(double holeReynolds, double thicknessToHole) =>
        holeReynolds > PlateFromReynolds && thicknessToHole < PlateToThickness;

    /// <summary>Velocity through an area: <c>w = V/(3600 A)</c>.</summary>
    /// <param name="flowM3h">Airflow V, m3/h, 0 or more.</param>
    /// <param name="areaM2">Area A, m2, above 0; for a perforated field the gross area.</param>
    /// <returns>Velocity, m/s. Example: 1500 m3/h through 1 m2: 0.4167.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double VelocityMS(double flowM3h, double areaM2)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(flowM3h, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(areaM2, 0);
        return flowM3h / (3600 * areaM2);
    }

    /// <summary>Pressure drop at a velocity: <c>dp = zeta rho w^2/2</c>.</summary>
    /// <param name="zeta">Loss coefficient for this velocity, 0 or more.</param>
    /// <param name="densityKgM3">Air density rho, kg/m3, above 0.</param>
    /// <param name="velocityMS">Velocity w, m/s, 0 or more.</param>
    /// <returns>Pressure, Pa. Example: 4.370 at 1 m/s and 1.2 kg/m3: 2.622.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double VelocityLossPa(double zeta, double densityKgM3, double velocityMS)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(zeta, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(densityKgM3, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(velocityMS, 0);
        return zeta * densityKgM3 * velocityMS * velocityMS / 2;
    }

    /// <summary>K of a perforated plate: <c>K = zeta rho/2/(3600 A)^2</c>.</summary>
    /// <param name="openShare">Open area ratio of the perforated field, above 0 to 1.</param>
    /// <param name="areaM2">Gross area A of the field, m2, above 0.</param>
    /// <param name="densityKgM3">Air density rho, kg/m3, above 0.</param>
    /// <returns>K, Pa/(m3/h)^2. Example: ratio 0.63, 1 m2, 1.16 kg/m3: 8.281e-8, 0.186 Pa at 1500 m3/h.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double PlateK(double openShare, double areaM2, double densityKgM3) =>
        VelocityLossPa(PlateZeta(openShare), densityKgM3, VelocityMS(1, areaM2));

    /// <summary>K of a plain opening: <c>K = rho/2/(3600 Cd A)^2</c>.</summary>
    /// <param name="areaM2">Free area A, m2, above 0.</param>
    /// <param name="densityKgM3">Air density rho, kg/m3, above 0.</param>
    /// <param name="dischargeCoefficient">Discharge coefficient Cd, above 0 to 1.</param>
    /// <returns>K, Pa/(m3/h)^2. Example: 0.03 m2 at 1.2 kg/m3: 1.429e-4, 35.7 Pa at 500 m3/h.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double OpeningK(double areaM2, double densityKgM3, double dischargeCoefficient = DischargeCoefficient)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(dischargeCoefficient, 0);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(dischargeCoefficient, 1);
        return VelocityLossPa(1, densityKgM3, VelocityMS(1, areaM2) / dischargeCoefficient);
    }

    /// <summary>Natural draught between a lower and an upper opening: <c>V = 3600 Cd A sqrt(2 g H dT/T)</c>, an estimate.</summary>
    /// <param name="areaM2">Free area A of the smaller opening, m2, 0 or more.</param>
    /// <param name="heightM">Height H from the middle of the heat to the upper opening, m, 0 or more.</param>
    /// <param name="riseK">Temperature rise dT of the air inside, K, 0 or more.</param>
    /// <param name="insideC">Temperature of the air inside, T in kelvin, C, above -273.15.</param>
    /// <returns>Airflow, m3/h. Example: 0.04 m2, 1 m, 15 K, 40 C: 83.7; twice the area twice as much, four times the height twice as much.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <remarks>Stack effect (value from memory). Doors, cables and the fans of the equipment are not included.</remarks>
    public static double DraughtM3h(double areaM2, double heightM, double riseK, double insideC)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(areaM2, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(heightM, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(riseK, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(insideC, -Air.ZeroC);
        return 3600 * DischargeCoefficient * areaM2 * Math.Sqrt(2 * Gravity.MPerS2 * heightM * riseK / (insideC + Air.ZeroC));
    }

    /// <summary>Pressure drop at an airflow: <c>dp = K V^2</c>.</summary>
    /// <param name="k">Sum of the K along the airflow path, Pa/(m3/h)^2, 0 or more.</param>
    /// <param name="flowM3h">Airflow V, m3/h, 0 or more.</param>
    /// <returns>Pressure, Pa. Example: 5e-4 at 200 m3/h: 20.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double LossPa(double k, double flowM3h)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(k, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(flowM3h, 0);
        return k * flowM3h * flowM3h;
    }
}
