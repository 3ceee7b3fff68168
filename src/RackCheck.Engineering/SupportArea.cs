namespace RackCheck.Engineering;

/// <summary>A side of the area that a cabinet stands on.</summary>
public enum SupportSide
{
    /// <summary>The front.</summary>
    Front,

    /// <summary>The rear.</summary>
    Rear,

    /// <summary>The left, seen from the front.</summary>
    Left,

    /// <summary>The right, seen from the front.</summary>
    Right,
}

/// <summary>The rectangle on the floor that a cabinet stands on: the edges that it would tip over.</summary>
/// <param name="FrontMm">Front edge, mm behind the outer front face; negative where a stabiliser reaches before it.</param>
/// <param name="RearMm">Rear edge, mm behind the outer front face.</param>
/// <param name="LeftMm">Left edge, mm from the middle of the width, negative.</param>
/// <param name="RightMm">Right edge, mm from the middle of the width.</param>
public readonly record struct SupportArea(double FrontMm, double RearMm, double LeftMm, double RightMm)
{
    /// <summary>What a castor swivelled inward takes of the support on its side, mm. Common practice, no source.</summary>
    public const double CastorInsetMm = 30;

    /// <summary>From the left edge to the right, mm.</summary>
    public double WidthMm => RightMm - LeftMm;

    /// <summary>From the front edge to the rear, mm.</summary>
    public double DepthMm => RearMm - FrontMm;

    /// <summary>The area under a cabinet: its footprint less an inset on every side, and at the front as far as a stabiliser reaches.</summary>
    /// <param name="widthMm">Overall width, mm, over 0.</param>
    /// <param name="depthMm">Overall depth, mm, over 0.</param>
    /// <param name="insetMm">Inset of feet or castors on each side, mm, 0 or more and under half of width and depth.</param>
    /// <param name="stabiliserMm">How far a stabiliser reaches before the outer front face, mm; 0 without one, then the feet are the front edge.</param>
    /// <returns>The area.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <remarks>A stabiliser is taken to be as wide as the feet are apart. One that is narrower leaves less at the front corners.</remarks>
    /// <example>600 x 1000 on castors: front 30, rear 970, left -270, right 270.</example>
    public static SupportArea Under(double widthMm, double depthMm, double insetMm = 0, double stabiliserMm = 0)
    {
        Require.Positive(widthMm);
        Require.Positive(depthMm);
        Require.NotNegative(insetMm);
        Require.NotNegative(stabiliserMm);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(insetMm, Math.Min(widthMm, depthMm) / 2);
        var side = (widthMm / 2) - insetMm;
        return new(stabiliserMm > 0 ? -stabiliserMm : insetMm, depthMm - insetMm, -side, side);
    }

    /// <summary>From a centre of gravity to an edge, on the floor.</summary>
    /// <param name="side">The edge.</param>
    /// <param name="centre">The centre.</param>
    /// <returns>Distance, mm; negative where the centre lies beyond the edge.</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such side.</exception>
    /// <example>600 x 1000 on castors, centre 400 behind the front face: front 370, rear 570.</example>
    public double DistanceMm(SupportSide side, PointMass centre) => side switch
    {
        SupportSide.Front => centre.XMm - FrontMm,
        SupportSide.Rear => RearMm - centre.XMm,
        SupportSide.Left => centre.YMm - LeftMm,
        SupportSide.Right => RightMm - centre.YMm,
        _ => throw new ArgumentOutOfRangeException(nameof(side), side, "No such side."),
    };

    /// <summary>The edge that a centre of gravity is nearest to; of several the first of front, rear, left, right.</summary>
    /// <param name="centre">The centre.</param>
    /// <returns>The edge.</returns>
    public SupportSide Nearest(PointMass centre)
    {
        var nearest = SupportSide.Front;
        for (var side = SupportSide.Rear; side <= SupportSide.Right; side++)
        {
            if (DistanceMm(side, centre) < DistanceMm(nearest, centre))
            {
                nearest = side;
            }
        }

        return nearest;
    }
}
