namespace RackCheck.Engineering;

/// <summary>A mass and the place of its centre, seen from the front of the cabinet.</summary>
/// <param name="XMm">From the outer front face towards the rear, mm; negative before it.</param>
/// <param name="YMm">From the middle of the width, mm; positive to the right.</param>
/// <param name="ZMm">Above the floor, mm.</param>
/// <param name="Kg">Mass, kg.</param>
public readonly record struct PointMass(double XMm, double YMm, double ZMm, double Kg)
{
    /// <summary>The same mass elsewhere in depth.</summary>
    /// <param name="forwardMm">How far it is pulled out of the front, mm; negative pushes it back.</param>
    /// <returns>The mass there.</returns>
    public PointMass Forward(double forwardMm) => this with { XMm = XMm - forwardMm };
}

/// <summary>Masses added up: how much there is and where its centre of gravity lies, <c>sum(m r) / sum(m)</c>.</summary>
/// <remarks>
/// A value: each step gives a new sum, none allocates, and a mass can be taken out again, so that each item in turn is tried elsewhere at no
/// cost of adding up the rest. The default is the empty sum. Source: statics.
/// </remarks>
/// <example>50 kg at 200, 100 kg at 600 and 30 kg at 1800 mm have their centre at 688.9 mm.</example>
public readonly record struct MassSum
{
    /// <summary>Masses closer than this are equal, kg: it covers rounding where all that went in is taken out.</summary>
    public const double ToleranceKg = 1e-9;

    private readonly double _x;
    private readonly double _y;
    private readonly double _z;

    private MassSum(double kg, double x, double y, double z) => (Kg, _x, _y, _z) = (kg, x, y, z);

    /// <summary>All of it, kg.</summary>
    public double Kg { get; }

    /// <summary>All of it at its centre of gravity; null where there is none.</summary>
    public PointMass? Centre => Kg > 0 ? new PointMass(_x / Kg, _y / Kg, _z / Kg, Kg) : null;

    /// <summary>The sum with a mass more.</summary>
    /// <param name="mass">The mass, 0 kg or more.</param>
    /// <returns>The sum.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A negative mass, or a place that is none.</exception>
    public MassSum Add(PointMass mass)
    {
        Check(mass);
        return new(Kg + mass.Kg, _x + (mass.Kg * mass.XMm), _y + (mass.Kg * mass.YMm), _z + (mass.Kg * mass.ZMm));
    }

    /// <summary>The sum with a mass less that was added before.</summary>
    /// <param name="mass">The mass, at the place where it was added.</param>
    /// <returns>The sum; the empty one where all is taken out.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A negative mass, one that is more than there is, or a place that is none.</exception>
    public MassSum TakeOut(PointMass mass)
    {
        Check(mass);
        var left = Kg - mass.Kg;
        if (left < -ToleranceKg)
        {
            throw new ArgumentOutOfRangeException(nameof(mass), mass, "More than there is cannot be taken out.");
        }

        return left <= ToleranceKg ? default : new(left, _x - (mass.Kg * mass.XMm), _y - (mass.Kg * mass.YMm), _z - (mass.Kg * mass.ZMm));
    }

    private static void Check(PointMass mass)
    {
        Require.NotNegative(mass.Kg);
        Require.Finite(mass.XMm);
        Require.Finite(mass.YMm);
        Require.Finite(mass.ZMm);
    }
}
