namespace RackCheck.Engineering;

/// <summary>An edge of the support area of a cabinet.</summary>
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

/// <summary>Support area of a cabinet: the rectangle on the floor whose edges are the tipping edges.</summary>
/// <param name="FrontMm">Front edge, mm behind the outer front face; negative where a stabiliser projects in front of it.</param>
/// <param name="RearMm">Rear edge, mm behind the outer front face.</param>
/// <param name="LeftMm">Left edge, mm from the centre of the width, negative.</param>
/// <param name="RightMm">Right edge, mm from the centre of the width.</param>
public readonly record struct SupportArea(double FrontMm, double RearMm, double LeftMm, double RightMm)
{
    /// <summary>Reduction of the support on a side when its castor is swivelled inwards, mm. Common practice, no source.</summary>
    public const double CastorInsetMm = 30;

    /// <summary>Width from the left to the right edge, mm.</summary>
    public double WidthMm => RightMm - LeftMm;

    /// <summary>Depth from the front to the rear edge, mm.</summary>
    public double DepthMm => RearMm - FrontMm;

    /// <summary>Support area of a cabinet: its footprint less an inset on every side, extended at the front by a stabiliser.</summary>
    /// <param name="widthMm">Overall width, mm, above 0.</param>
    /// <param name="depthMm">Overall depth, mm, above 0.</param>
    /// <param name="insetMm">Inset of feet or castors on each side, mm, 0 or more and below half of width and depth.</param>
    /// <param name="stabiliserMm">Reach of a stabiliser beyond the outer front face, mm; 0 without a stabiliser, where the feet are the front edge.</param>
    /// <returns>The area.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <remarks>A stabiliser is assumed to be as wide as the distance between the feet. A narrower one gives less support at the front corners.</remarks>
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

    /// <summary>Horizontal distance from a centre of gravity to an edge.</summary>
    /// <param name="side">The edge.</param>
    /// <param name="centre">The centre of gravity.</param>
    /// <returns>Distance, mm; negative where the centre of gravity lies beyond the edge.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Unknown edge.</exception>
    /// <example>600 x 1000 on castors, centre of gravity 400 behind the front face: front 370, rear 570.</example>
    public double DistanceMm(SupportSide side, PointMass centre) => side switch
    {
        SupportSide.Front => centre.XMm - FrontMm,
        SupportSide.Rear => RearMm - centre.XMm,
        SupportSide.Left => centre.YMm - LeftMm,
        SupportSide.Right => RightMm - centre.YMm,
        _ => throw new ArgumentOutOfRangeException(nameof(side), side, "Unknown edge."),
    };

    /// <summary>The edge nearest to a centre of gravity; for equal distances the first of front, rear, left and right.</summary>
    /// <param name="centre">The centre of gravity.</param>
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
