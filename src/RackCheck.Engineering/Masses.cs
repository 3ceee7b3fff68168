namespace RackCheck.Engineering;

/// <summary>A mass and the position of its centre of gravity, seen from the front of the cabinet.</summary>
/// <param name="XMm">Distance from the outer front face towards the rear, mm; negative in front of it.</param>
/// <param name="YMm">Distance from the centre of the width, mm; positive to the right.</param>
/// <param name="ZMm">Height above the floor, mm.</param>
/// <param name="Kg">Mass, kg.</param>
public readonly record struct PointMass(double XMm, double YMm, double ZMm, double Kg)
{
    /// <summary>The same mass moved forward.</summary>
    /// <param name="forwardMm">Distance moved forward, mm; negative moves it back.</param>
    /// <returns>The moved mass.</returns>
    public PointMass Forward(double forwardMm) => this with { XMm = XMm - forwardMm };
}

/// <summary>Sum of masses and its centre of gravity, <c>sum(m r) / sum(m)</c>.</summary>
/// <remarks>
/// A value type: each step returns a new sum without allocation. A mass can be removed again, so that an item can be tried in another position without
/// adding up the others anew. The default is the empty sum. Source: statics.
/// </remarks>
/// <example>50 kg at 200 mm, 100 kg at 600 mm and 30 kg at 1800 mm: centre of gravity at 688.9 mm.</example>
public readonly record struct MassSum
{
    /// <summary>Tolerance for equal masses, kg. Covers rounding when all added masses are removed.</summary>
    public const double ToleranceKg = 1e-9;

    private readonly double _x;
    private readonly double _y;
    private readonly double _z;

    private MassSum(double kg, double x, double y, double z) => (Kg, _x, _y, _z) = (kg, x, y, z);

    /// <summary>Total mass, kg.</summary>
    public double Kg { get; }

    /// <summary>Total mass at its centre of gravity; null for the empty sum.</summary>
    public PointMass? Centre => Kg > 0 ? new PointMass(_x / Kg, _y / Kg, _z / Kg, Kg) : null;

    /// <summary>The sum with a mass added.</summary>
    /// <param name="mass">The mass, 0 kg or more.</param>
    /// <returns>The sum.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A negative mass, or a position that is not finite.</exception>
    public MassSum Add(PointMass mass)
    {
        Check(mass);
        return new(Kg + mass.Kg, _x + (mass.Kg * mass.XMm), _y + (mass.Kg * mass.YMm), _z + (mass.Kg * mass.ZMm));
    }

    /// <summary>The sum with a previously added mass removed.</summary>
    /// <param name="mass">The mass, at the position where it was added.</param>
    /// <returns>The sum; the empty sum where all masses are removed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A negative mass, a mass above the total, or a position that is not finite.</exception>
    public MassSum TakeOut(PointMass mass)
    {
        Check(mass);
        var left = Kg - mass.Kg;
        if (left < -ToleranceKg)
        {
            throw new ArgumentOutOfRangeException(nameof(mass), mass, "The mass removed exceeds the total.");
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
