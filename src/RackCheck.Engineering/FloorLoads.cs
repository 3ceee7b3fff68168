using System.Collections.Immutable;

namespace RackCheck.Engineering;

/// <summary>Loads on four feet at the corners of a rectangle.</summary>
/// <param name="FrontKn">Load on both front feet together, kN.</param>
/// <param name="RearKn">Load on both rear feet together, kN.</param>
/// <param name="GreatestKn">Maximum foot load, kN.</param>
/// <param name="AllStand">Whether the centre of gravity lies within the feet. Otherwise a foot lifts and the formula is not valid.</param>
public readonly record struct FootLoads(double FrontKn, double RearKn, double GreatestKn, bool AllStand);

/// <summary>A class of raised floors.</summary>
/// <param name="Number">Class number, 1 to 6.</param>
/// <param name="UltimateKn">Ultimate point load of a panel, kN.</param>
public readonly record struct FloorClass(int Number, double UltimateKn)
{
    /// <summary>Permitted point load: ultimate load divided by the safety factor.</summary>
    /// <param name="safetyFactor">Safety factor, 1 or more; 2 or 3 in practice.</param>
    /// <returns>Load, kN.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A factor below 1, or not a finite number.</exception>
    /// <example>Class 2: 3 kN at a factor of 2, 2 kN at a factor of 3.</example>
    public double WorkingKn(double safetyFactor)
    {
        Require.Finite(safetyFactor);
        ArgumentOutOfRangeException.ThrowIfLessThan(safetyFactor, 1);
        return UltimateKn / safetyFactor;
    }
}

/// <summary>Floor loads of a cabinet: distributed load, foot load and classes of raised floors.</summary>
/// <remarks>
/// Static loads. Rolling castors, people and existing equipment are not included. Classes: EN 12825 (secondary source); the safety factors are common
/// practice.
/// </remarks>
public static class FloorLoads
{
    /// <summary>Lower safety factor in use on the ultimate load.</summary>
    public const double LowSafetyFactor = 2;

    /// <summary>Higher safety factor in use on the ultimate load, the conservative one.</summary>
    public const double HighSafetyFactor = 3;

    /// <summary>Classes of raised floors, EN 12825.</summary>
    public static ImmutableArray<FloorClass> Classes { get; } = [new(1, 4), new(2, 6), new(3, 8), new(4, 9), new(5, 10), new(6, 12)];

    /// <summary>Distributed load: <c>m g / (w d)</c>.</summary>
    /// <param name="massKg">Mass m, kg, 0 or more.</param>
    /// <param name="widthMm">Width w of the loaded area, mm, above 0.</param>
    /// <param name="depthMm">
    /// Depth d of the loaded area, mm, above 0; including half of the front and rear aisle where the floor distributes the load over them.
    /// </param>
    /// <returns>Load, kN/m2.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <example>800 kg on 600 x 1000: 13.076; including half of a 600 mm aisle at front and rear: 8.172.</example>
    public static double DistributedKnM2(double massKg, double widthMm, double depthMm)
    {
        Require.Positive(widthMm);
        Require.Positive(depthMm);
        return Gravity.WeightN(massKg) / 1000 / (widthMm * depthMm / 1e6);
    }

    /// <summary>Loads on four feet: each pair by moments about the centre of gravity, maximum foot load <c>F = (W/4)(1 + 2 ex/a)(1 + 2 ey/b)</c>.</summary>
    /// <param name="feet">Rectangle of the feet, a wide and b deep, both above 0; without a stabiliser.</param>
    /// <param name="centre">Total mass at its centre of gravity, 0 kg or more; ex and ey are its distances from the centre of the feet.</param>
    /// <returns>The loads.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Feet that span no area, a negative mass, or not a finite number.</exception>
    /// <remarks>
    /// Four feet are statically indeterminate. The formula assumes a torsionally soft frame and exceeds the value for a rigid frame on equal springs by
    /// <c>W ex ey / (a b)</c>. It is valid while the centre of gravity lies within the feet and the floor is even. On an uneven floor two diagonal feet
    /// can carry the whole load, up to twice the value.
    /// </remarks>
    /// <example>800 kg, feet 550 x 900, centre of gravity 100 in front of the middle: front 4.794 kN, rear 3.051 kN, maximum foot load 2.397 kN.</example>
    public static FootLoads LoadsOnFeet(SupportArea feet, PointMass centre)
    {
        Require.Positive(feet.WidthMm);
        Require.Positive(feet.DepthMm);
        Require.Finite(centre.XMm);
        Require.Finite(centre.YMm);
        var weightKn = Gravity.WeightN(centre.Kg) / 1000;
        var front = feet.DistanceMm(SupportSide.Rear, centre) / feet.DepthMm;
        var left = feet.DistanceMm(SupportSide.Right, centre) / feet.WidthMm;
        return new(
            weightKn * front,
            weightKn * (1 - front),
            weightKn * Math.Max(front, 1 - front) * Math.Max(left, 1 - left),
            front is >= 0 and <= 1 && left is >= 0 and <= 1);
    }

    /// <summary>The lowest class that carries a point load.</summary>
    /// <param name="pointKn">Point load, kN, 0 or more.</param>
    /// <param name="safetyFactor">Safety factor, 1 or more.</param>
    /// <returns>The class; null where no class is sufficient.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <example>2.4 kN at a factor of 3: class 3, which carries 2.667 kN.</example>
    public static FloorClass? LowestClass(double pointKn, double safetyFactor = HighSafetyFactor)
    {
        Require.NotNegative(pointKn);
        foreach (var floor in Classes)
        {
            if (floor.WorkingKn(safetyFactor) >= pointKn)
            {
                return floor;
            }
        }

        return null;
    }
}
