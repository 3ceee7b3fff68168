namespace RackCheck.Engineering;

/// <summary>Pressure that air loses in perforated doors and plain openings.</summary>
/// <remarks>
/// Plate: Idelchik, third edition, exponent 0.375 (value from memory; the older edition's 0.5 gives up to 29 % less). Opening: discharge coefficient of a
/// sharp edge (value from memory). A loss is kept as its coefficient K, <c>dp = K V^2</c> with V in m3/h: losses in series add as K.
/// </remarks>
public static class Openings
{
    /// <summary>Discharge coefficient of a sharp-edged opening.</summary>
    public const double DischargeCoefficient = 0.6;

    /// <summary>Reynolds number in the holes from which the plate formula is valid.</summary>
    public const double PlateFromReynolds = 1e5;

    /// <summary>Share of the hole that a plate may be thick for the formula to be valid, less than it.</summary>
    public const double PlateToThickness = 0.015;

    /// <summary>How far a cabinet door may be off the formula either way, percent: its holes are outside the validity.</summary>
    public const double DoorUncertaintyPercent = 30;

    /// <summary>Kinematic viscosity of air at about 30 C, m2/s.</summary>
    public const double ViscosityM2S = 1.6e-5;

    /// <summary>Loss coefficient of a thin perforated plate on the approach velocity: <c>zeta = (0.707 (1-f)^0.375 + 1 - f)^2/f^2</c>.</summary>
    /// <param name="openShare">Open share f of the perforated field, over 0 up to 1.</param>
    /// <returns>Coefficient zeta; 0 for no plate at all.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The share is outside its range.</exception>
    /// <remarks>Valid for sharp edges and fast flow (<see cref="IsPlateWithinValidity"/>). Doors are not: state <see cref="DoorUncertaintyPercent"/>.</remarks>
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
    /// <param name="openShare">Open share f, over 0 up to 1.</param>
    /// <param name="holeMm">Hydraulic diameter of a hole d, mm, over 0.</param>
    /// <returns>Reynolds number. Example: 1 m/s on holes of 6 mm, 0.6 open: 625.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double HoleReynolds(double approachMS, double openShare, double holeMm)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(approachMS, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(openShare, 0);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(openShare, 1);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(holeMm, 0);
        return approachMS * (holeMm / 1000) / (openShare * ViscosityM2S);
    }

    /// <summary>Whether the plate formula is valid: Re over 1e5 and the plate thinner than 0.015 of its holes.</summary>
    /// <param name="holeReynolds">Reynolds number in the holes.</param>
    /// <param name="thicknessToHole">Thickness of the plate to the diameter of its holes.</param>
    /// <returns>Whether it is. Example: a door of 1.2 mm with holes of 6 mm at Re 625 is not.</returns>
    public static bool IsPlateWithinValidity(double holeReynolds, double thicknessToHole) =>
        holeReynolds > PlateFromReynolds && thicknessToHole < PlateToThickness;

    /// <summary>Velocity through an area: <c>w = V/(3600 A)</c>.</summary>
    /// <param name="flowM3h">Flow V, m3/h, 0 or more.</param>
    /// <param name="areaM2">Area A, m2, over 0; of a perforated field all of it, holes and bars.</param>
    /// <returns>Velocity, m/s. Example: 1500 m3/h through 1 m2: 0.4167.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double VelocityMS(double flowM3h, double areaM2)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(flowM3h, 0);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(areaM2, 0);
        return flowM3h / (3600 * areaM2);
    }

    /// <summary>Pressure lost at a velocity: <c>dp = zeta rho w^2/2</c>.</summary>
    /// <param name="zeta">Coefficient on that velocity, 0 or more.</param>
    /// <param name="densityKgM3">Density rho, kg/m3, over 0.</param>
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
    /// <param name="openShare">Open share of the perforated field, over 0 up to 1.</param>
    /// <param name="areaM2">Area A of the field, m2, over 0.</param>
    /// <param name="densityKgM3">Density rho, kg/m3, over 0.</param>
    /// <returns>K, Pa/(m3/h)^2. Example: 0.63 of 1 m2 at 1.16 kg/m3: 8.281e-8, 0.186 Pa at 1500 m3/h.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double PlateK(double openShare, double areaM2, double densityKgM3) =>
        VelocityLossPa(PlateZeta(openShare), densityKgM3, VelocityMS(1, areaM2));

    /// <summary>K of a plain opening: <c>K = rho/2/(3600 Cd A)^2</c>.</summary>
    /// <param name="areaM2">Free area A, m2, over 0.</param>
    /// <param name="densityKgM3">Density rho, kg/m3, over 0.</param>
    /// <param name="dischargeCoefficient">Discharge coefficient Cd, over 0 up to 1.</param>
    /// <returns>K, Pa/(m3/h)^2. Example: 0.03 m2 at 1.2 kg/m3: 1.429e-4, 35.7 Pa at 500 m3/h.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double OpeningK(double areaM2, double densityKgM3, double dischargeCoefficient = DischargeCoefficient)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(dischargeCoefficient, 0);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(dischargeCoefficient, 1);
        return VelocityLossPa(1, densityKgM3, VelocityMS(1, areaM2) / dischargeCoefficient);
    }

    /// <summary>Pressure lost at a flow: <c>dp = K V^2</c>.</summary>
    /// <param name="k">Sum of the K on the way, Pa/(m3/h)^2, 0 or more.</param>
    /// <param name="flowM3h">Flow V, m3/h, 0 or more.</param>
    /// <returns>Pressure, Pa. Example: 5e-4 at 200 m3/h: 20.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double LossPa(double k, double flowM3h)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(k, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(flowM3h, 0);
        return k * flowM3h * flowM3h;
    }
}
