using System.Collections.Immutable;

namespace RackCheck.Engineering;

/// <summary>Loads that four feet at the corners of a rectangle bear.</summary>
/// <param name="FrontKn">The front pair together, kN.</param>
/// <param name="RearKn">The rear pair together, kN.</param>
/// <param name="GreatestKn">The most loaded foot, kN.</param>
/// <param name="AllStand">Whether the centre of gravity lies within the feet. Else a foot lifts, and the loads are outside what the formula is valid for.</param>
public readonly record struct FootLoads(double FrontKn, double RearKn, double GreatestKn, bool AllStand);

/// <summary>A class of raised floors.</summary>
/// <param name="Number">1 to 6.</param>
/// <param name="UltimateKn">Least point load that breaks a panel, kN.</param>
public readonly record struct FloorClass(int Number, double UltimateKn)
{
    /// <summary>Point load that may stand on it: ultimate load over the safety factor.</summary>
    /// <param name="safetyFactor">Safety factor, 1 or more; 2 or 3 in practice.</param>
    /// <returns>Load, kN.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A factor under 1, or no number.</exception>
    /// <example>Class 2: 3 at a factor of 2, 2 at 3.</example>
    public double WorkingKn(double safetyFactor)
    {
        Require.Finite(safetyFactor);
        ArgumentOutOfRangeException.ThrowIfLessThan(safetyFactor, 1);
        return UltimateKn / safetyFactor;
    }
}

/// <summary>What a cabinet asks of the floor: load on the area, load on a foot, and classes of raised floors.</summary>
/// <remarks>
/// Loads at rest: castors that roll, people and what stands there already come on top. Classes: EN 12825 (secondary source); the factors on
/// them are common practice.
/// </remarks>
public static class FloorLoads
{
    /// <summary>Safety factor on the ultimate load, the lower of the two in use.</summary>
    public const double LowSafetyFactor = 2;

    /// <summary>Safety factor on the ultimate load, the higher of the two in use and the cautious one.</summary>
    public const double HighSafetyFactor = 3;

    /// <summary>Classes of raised floors, EN 12825.</summary>
    public static ImmutableArray<FloorClass> Classes { get; } = [new(1, 4), new(2, 6), new(3, 8), new(4, 9), new(5, 10), new(6, 12)];

    /// <summary>Load spread over an area: <c>m g / (w d)</c>.</summary>
    /// <param name="massKg">Mass m, kg, 0 or more.</param>
    /// <param name="widthMm">Width w of the area that it is spread over, mm, over 0.</param>
    /// <param name="depthMm">Depth d of it, mm, over 0; with half an aisle before and behind where the floor spreads the load so far.</param>
    /// <returns>Load, kN/m2.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <example>800 kg on 600 x 1000: 13.076; with half an aisle of 600 on both sides 8.172.</example>
    public static double DistributedKnM2(double massKg, double widthMm, double depthMm)
    {
        Require.Positive(widthMm);
        Require.Positive(depthMm);
        return Gravity.WeightN(massKg) / 1000 / (widthMm * depthMm / 1e6);
    }

    /// <summary>Loads on four feet: each pair by the lever from the centre of gravity, the most loaded foot <c>F = (W/4)(1 + 2 ex/a)(1 + 2 ey/b)</c>.</summary>
    /// <param name="feet">Rectangle of the feet, a wide and b deep, both over 0; without a stabiliser.</param>
    /// <param name="centre">All masses at their centre, 0 kg or more; ex and ey are its distances from the middle of the feet.</param>
    /// <returns>The loads.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Feet that span no area, a negative mass, or no number.</exception>
    /// <remarks>
    /// Four feet are one more than statics can tell apart. The formula is that of a frame soft in torsion, and lies <c>W ex ey / (a b)</c> over that of a
    /// rigid one on equal springs. It holds while the centre lies within the feet and the floor is even: on an uneven one two feet of a
    /// diagonal can bear all, up to twice as much.
    /// </remarks>
    /// <example>800 kg, feet 550 x 900, centre 100 before the middle: front 4.794, rear 3.051, foot 2.397 kN.</example>
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

    /// <summary>The lowest class that bears a point load.</summary>
    /// <param name="pointKn">Point load, kN, 0 or more.</param>
    /// <param name="safetyFactor">Safety factor, 1 or more.</param>
    /// <returns>The class; null where none does.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <example>2.4 kN at a factor of 3: class 3, which bears 2.667.</example>
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
