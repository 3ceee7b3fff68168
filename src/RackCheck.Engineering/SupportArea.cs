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
    /// <summary>Further reduction of the support on a side when its castor is swivelled inwards, mm. Common practice, no source.</summary>
    public const double CastorInsetMm = 30;

    /// <summary>Distance from the face of the frame to the line of feet or castors, mm; 0 for a plinth. Common practice, no source.</summary>
    public const double FootInsetMm = 50;

    /// <summary>Width from the left to the right edge, mm.</summary>
    public double WidthMm => RightMm - LeftMm;

    /// <summary>Depth from the front to the rear edge, mm.</summary>
    public double DepthMm => RearMm - FrontMm;

    /// <summary>Support area of a cabinet: the rectangle between its lines of feet, extended at the front by a stabiliser.</summary>
    /// <param name="widthMm">Overall width, mm, above 0.</param>
    /// <param name="depthMm">Overall depth with doors, mm, above 0.</param>
    /// <param name="frontMm">Front line of feet behind the outer front face, mm, 0 or more: depth of the front door and inset from the frame.</param>
    /// <param name="rearMm">Rear line of feet in front of the outer rear face, mm, 0 or more: depth of the rear door and inset from the frame.</param>
    /// <param name="sideMm">Inset of the feet on each side, mm, 0 or more and below half of the width.</param>
    /// <param name="stabiliserMm">Reach of a stabiliser beyond the outer front face, mm; 0 without a stabiliser, where the feet are the front edge.</param>
    /// <returns>The area.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range, or no depth remains between the lines of feet.</exception>
    /// <remarks>A stabiliser is assumed to be as wide as the distance between the feet. A narrower one gives less support at the front corners.</remarks>
    /// <example>600 x 1000 on feet 50 from the frame, doors 25 deep: front 75, rear 925, left -250, right 250.</example>
    public static SupportArea Under(double widthMm, double depthMm, double frontMm, double rearMm, double sideMm, double stabiliserMm = 0)
    {
        Require.Positive(widthMm);
        Require.Positive(depthMm);
        Require.NotNegative(frontMm);
        Require.NotNegative(rearMm);
        Require.NotNegative(sideMm);
        Require.NotNegative(stabiliserMm);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(sideMm, widthMm / 2);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(frontMm + rearMm, depthMm);
        var side = (widthMm / 2) - sideMm;
        return new(stabiliserMm > 0 ? -stabiliserMm : frontMm, depthMm - rearMm, -side, side);
    }

    /// <summary>Horizontal distance from a centre of gravity to an edge.</summary>
    /// <param name="side">The edge.</param>
    /// <param name="centre">The centre of gravity.</param>
    /// <returns>Distance, mm; negative where the centre of gravity lies beyond the edge.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Unknown edge.</exception>
    /// <example>600 x 1000 with lines of feet 30 inside, centre of gravity 400 behind the front face: front 370, rear 570.</example>
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
