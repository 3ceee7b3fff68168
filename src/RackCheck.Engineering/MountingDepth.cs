namespace RackCheck.Engineering;

/// <summary>A cabinet seen from the side: its overall depth and what the doors take of it, mm.</summary>
/// <param name="DepthMm">Overall depth D, mm.</param>
/// <param name="FrontDoorMm">Depth of the front door d_f, mm; 0 without one.</param>
/// <param name="RearDoorMm">Depth of the rear door d_r, mm; 0 without one.</param>
/// <param name="FrontOpen">Whether there is no front door, so that handles may stand out of the cabinet.</param>
/// <param name="RearOpen">Whether there is no rear door, so that handles of rear-mounted items may stand out of the cabinet.</param>
public readonly record struct CabinetDepth(double DepthMm, double FrontDoorMm, double RearDoorMm, bool FrontOpen, bool RearOpen)
{
    /// <summary>Depth between the doors: <c>D - d_f - d_r</c>, mm.</summary>
    public double UsableMm => DepthMm - FrontDoorMm - RearDoorMm;

    /// <summary>Inner face of the rear door: <c>D - d_r</c>, mm from the outer front face.</summary>
    public double RearLimitMm => DepthMm - RearDoorMm;
}

/// <summary>An item seen from the side, mm from its mounting plane.</summary>
/// <param name="ProjectionMm">What stands out before the plane p: handles, knobs, cables.</param>
/// <param name="BodyMm">Depth of the body behind the plane b.</param>
/// <param name="BehindMm">What connectors and cable bends take behind the body r.</param>
public readonly record struct ItemDepth(double ProjectionMm, double BodyMm, double BehindMm)
{
    /// <summary>All of it: <c>p + b + r</c>, mm.</summary>
    public double StackMm => ProjectionMm + BodyMm + BehindMm;

    /// <summary>All behind the plane: <c>b + r</c>, mm.</summary>
    public double ReachMm => BodyMm + BehindMm;
}

/// <summary>Setbacks of the front mounting plane behind the outer front face, mm, from least to greatest; empty where the first is the larger.</summary>
/// <param name="LeastMm">Least setback.</param>
/// <param name="GreatestMm">Greatest setback.</param>
public readonly record struct SetbackInterval(double LeastMm, double GreatestMm)
{
    /// <summary>
    /// Two lengths closer than this are equal, mm. It covers sums of decimals in binary; and since reports show thousandths, what is found
    /// to differ is shown to differ.
    /// </summary>
    public const double ToleranceMm = 1e-3;

    /// <summary>Whether no setback lies in it.</summary>
    public bool IsEmpty => LeastMm > GreatestMm + ToleranceMm;

    /// <summary>Whether a setback lies in it.</summary>
    /// <param name="setbackMm">The setback, mm.</param>
    /// <returns>Whether it does.</returns>
    public bool Holds(double setbackMm) => setbackMm >= LeastMm - ToleranceMm && setbackMm <= GreatestMm + ToleranceMm;

    /// <summary>What lies in both.</summary>
    /// <param name="other">The other interval.</param>
    /// <returns>The intersection, perhaps empty.</returns>
    public SetbackInterval Intersect(SetbackInterval other) =>
        new(Math.Max(LeastMm, other.LeastMm), Math.Min(GreatestMm, other.GreatestMm));

    /// <summary>The setback in it that is nearest to where the uprights are now, moved by whole steps of their holes.</summary>
    /// <param name="fromMm">Where they are now, mm; 0 where they are not set yet.</param>
    /// <param name="pitchMm">Pitch of the holes, mm, over 0.</param>
    /// <returns>The setback, mm, or null where no hole lies in the interval. Example: 65 to 250 from 50 by 25 gives 75.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Pitch not over 0.</exception>
    public double? OnPitch(double fromMm, double pitchMm)
    {
        if (!(pitchMm > 0))
        {
            throw new ArgumentOutOfRangeException(nameof(pitchMm), pitchMm, "A pitch is over 0.");
        }

        if (Holds(fromMm))
        {
            return fromMm;
        }

        var steps = fromMm < LeastMm
            ? Math.Ceiling((LeastMm - fromMm - ToleranceMm) / pitchMm)
            : -Math.Ceiling((fromMm - GreatestMm - ToleranceMm) / pitchMm);
        var setback = fromMm + (steps * pitchMm);
        return setback >= 0 && Holds(setback) ? setback : null;
    }
}

/// <summary>Which setbacks of the uprights serve an item, and the least depth of cabinet that serves them all.</summary>
/// <remarks>
/// x runs from the outer front face. A door is a plane that nothing passes; an open side lets handles stand out, but not bodies. Source:
/// geometry; the allowances that go in are common practice (see <see cref="Sources.ClearancePractice"/>).
/// </remarks>
public static class MountingDepth
{
    /// <summary>Setbacks that serve an item on the front uprights: <c>d_f + p &lt;= s &lt;= D - d_r - b - r</c>; without a front door the left bound is 0.</summary>
    /// <param name="cabinet">The cabinet.</param>
    /// <param name="item">The item.</param>
    /// <returns>The interval. Example: 800 deep, doors of 25, item 40 + 450 + 75 gives 65 to 250.</returns>
    public static SetbackInterval OfFrontItem(CabinetDepth cabinet, ItemDepth item) =>
        new(LeastForProjection(cabinet, item.ProjectionMm), cabinet.RearLimitMm - item.ReachMm);

    /// <summary>
    /// Setbacks that serve an item on the rear uprights, mirrored: <c>d_f + b + r - spacing &lt;= s &lt;= D - d_r - p - spacing</c>; without
    /// a rear door its handles may stand out, so the right bound is <c>D - spacing</c>.
    /// </summary>
    /// <param name="cabinet">The cabinet.</param>
    /// <param name="item">The item.</param>
    /// <param name="spacingMm">Front to rear mounting plane, mm.</param>
    /// <returns>The interval. Example: 1000 deep, doors of 25, spacing 700, item 40 + 300 + 75 gives 0 to 235.</returns>
    public static SetbackInterval OfRearItem(CabinetDepth cabinet, ItemDepth item, double spacingMm) =>
        new(
            Math.Max(0, cabinet.FrontDoorMm + item.ReachMm - spacingMm),
            (cabinet.RearOpen ? cabinet.DepthMm : cabinet.RearLimitMm - item.ProjectionMm) - spacingMm);

    /// <summary>Least setback that keeps what stands out before the plane clear of the front door: <c>d_f + p</c>, 0 without a door.</summary>
    /// <param name="cabinet">The cabinet.</param>
    /// <param name="projectionMm">What stands out p, mm.</param>
    /// <returns>Setback, mm.</returns>
    public static double LeastForProjection(CabinetDepth cabinet, double projectionMm) =>
        cabinet.FrontOpen ? 0 : cabinet.FrontDoorMm + projectionMm;

    /// <summary>
    /// Least depth of a cabinet with these doors that gives the interval a setback: <c>D - (greatest - least)</c>. For front-mounted
    /// items alone that is <c>max(d_f + p) + max(b + r) + d_r</c>.
    /// </summary>
    /// <param name="cabinet">The cabinet that the interval was worked out for.</param>
    /// <param name="all">Setbacks that serve every item in it.</param>
    /// <returns>Depth, mm. Example: 65 to 50 in a cabinet 600 deep gives 615.</returns>
    public static double LeastCabinetDepthMm(CabinetDepth cabinet, SetbackInterval all) =>
        cabinet.DepthMm + all.LeastMm - all.GreatestMm;
}
