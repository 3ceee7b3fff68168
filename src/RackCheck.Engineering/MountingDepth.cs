namespace RackCheck.Engineering;

/// <summary>A cabinet in side view: overall depth and depth of the doors, mm.</summary>
/// <param name="DepthMm">Overall depth D, mm.</param>
/// <param name="FrontDoorMm">Depth of the front door d_f, mm; 0 without one.</param>
/// <param name="RearDoorMm">Depth of the rear door d_r, mm; 0 without one.</param>
/// <param name="FrontOpen">Whether there is no front door, so that handles may project from the cabinet.</param>
/// <param name="RearOpen">Whether there is no rear door, so that handles of rear-mounted items may project from the cabinet.</param>
public readonly record struct CabinetDepth(double DepthMm, double FrontDoorMm, double RearDoorMm, bool FrontOpen, bool RearOpen)
{
    /// <summary>Usable depth between the doors: <c>D - d_f - d_r</c>, mm.</summary>
    public double UsableMm => DepthMm - FrontDoorMm - RearDoorMm;

    /// <summary>Inner face of the rear door: <c>D - d_r</c>, mm from the outer front face.</summary>
    public double RearLimitMm => DepthMm - RearDoorMm;
}

/// <summary>An item in side view, mm from its mounting plane.</summary>
/// <param name="ProjectionMm">Front projection p: handles, knobs and cables.</param>
/// <param name="BodyMm">Body depth b behind the mounting plane.</param>
/// <param name="BehindMm">Rear projection r: connectors and cable bends behind the body.</param>
public readonly record struct ItemDepth(double ProjectionMm, double BodyMm, double BehindMm)
{
    /// <summary>Total depth: <c>p + b + r</c>, mm.</summary>
    public double StackMm => ProjectionMm + BodyMm + BehindMm;

    /// <summary>Depth behind the mounting plane: <c>b + r</c>, mm.</summary>
    public double ReachMm => BodyMm + BehindMm;
}

/// <summary>Interval of setbacks of the front mounting plane behind the outer front face, mm; empty where the minimum is above the maximum.</summary>
/// <param name="LeastMm">Minimum setback.</param>
/// <param name="GreatestMm">Maximum setback.</param>
public readonly record struct SetbackInterval(double LeastMm, double GreatestMm)
{
    /// <summary>Whether the interval is empty.</summary>
    public bool IsEmpty => Comparison.IsOver(LeastMm, GreatestMm);

    /// <summary>Whether a setback lies in the interval.</summary>
    /// <param name="setbackMm">The setback, mm.</param>
    /// <returns>True inside the interval, with tolerance.</returns>
    public bool Holds(double setbackMm) => !Comparison.IsOver(LeastMm, setbackMm) && !Comparison.IsOver(setbackMm, GreatestMm);

    /// <summary>The intersection with another interval.</summary>
    /// <param name="other">The other interval.</param>
    /// <returns>The intersection; may be empty.</returns>
    public SetbackInterval Intersect(SetbackInterval other) =>
        new(Math.Max(LeastMm, other.LeastMm), Math.Min(GreatestMm, other.GreatestMm));

    /// <summary>The setback in the interval nearest to the present one, in whole steps of the adjustment pitch.</summary>
    /// <param name="fromMm">Present setback, mm; 0 where not yet set.</param>
    /// <param name="pitchMm">Adjustment pitch, mm, above 0.</param>
    /// <returns>The setback, mm; null where no step lies in the interval. Example: 65 to 250, from 50 in steps of 25, gives 75.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A pitch of 0 or less.</exception>
    public double? OnPitch(double fromMm, double pitchMm)
    {
        if (!(pitchMm > 0))
        {
            throw new ArgumentOutOfRangeException(nameof(pitchMm), pitchMm, "The pitch must be above 0.");
        }

        if (Holds(fromMm))
        {
            return fromMm;
        }

        var steps = fromMm < LeastMm
            ? Math.Ceiling((LeastMm - fromMm - Comparison.Tolerance) / pitchMm)
            : -Math.Ceiling((fromMm - GreatestMm - Comparison.Tolerance) / pitchMm);
        var setback = fromMm + (steps * pitchMm);
        return setback >= 0 && Holds(setback) ? setback : null;
    }
}

/// <summary>Setbacks of the uprights that suit an item, and the minimum cabinet depth for all items.</summary>
/// <remarks>
/// x is measured from the outer front face. Nothing passes the plane of a door. On an open face handles may project, but not bodies. Source: geometry; the
/// default clearances are common practice (see <see cref="Sources.ClearancePractice"/>).
/// </remarks>
public static class MountingDepth
{
    /// <summary>
    /// Setbacks that suit an item on the front uprights: <c>d_f + p &lt;= s &lt;= D - d_r - b - r</c>. Without a front door the lower bound is 0.
    /// </summary>
    /// <param name="cabinet">The cabinet.</param>
    /// <param name="item">The item.</param>
    /// <returns>The interval. Example: 800 deep, doors of 25, item 40 + 450 + 75 gives 65 to 250.</returns>
    public static SetbackInterval OfFrontItem(CabinetDepth cabinet, ItemDepth item) =>
        new(LeastForProjection(cabinet, item.ProjectionMm), cabinet.RearLimitMm - item.ReachMm);

    /// <summary>
    /// Setbacks that suit an item on the rear uprights, mirrored: <c>d_f + b + r - spacing &lt;= s &lt;= D - d_r - p - spacing</c>. Without
    /// a rear door its handles may project, so the upper bound is <c>D - spacing</c>.
    /// </summary>
    /// <param name="cabinet">The cabinet.</param>
    /// <param name="item">The item.</param>
    /// <param name="spacingMm">Distance from the front to the rear mounting plane, mm.</param>
    /// <returns>The interval. Example: 1000 deep, doors of 25, spacing 700, item 40 + 300 + 75 gives 0 to 235.</returns>
    public static SetbackInterval OfRearItem(CabinetDepth cabinet, ItemDepth item, double spacingMm) =>
        new(
            Math.Max(0, cabinet.FrontDoorMm + item.ReachMm - spacingMm),
            (cabinet.RearOpen ? cabinet.DepthMm : cabinet.RearLimitMm - item.ProjectionMm) - spacingMm);

    /// <summary>Minimum setback at which the front projection clears the front door: <c>d_f + p</c>, 0 without a door.</summary>
    /// <param name="cabinet">The cabinet.</param>
    /// <param name="projectionMm">Front projection p, mm.</param>
    /// <returns>Setback, mm.</returns>
    public static double LeastForProjection(CabinetDepth cabinet, double projectionMm) =>
        cabinet.FrontOpen ? 0 : cabinet.FrontDoorMm + projectionMm;

    /// <summary>
    /// Minimum depth of a cabinet with these doors at which the interval is not empty: <c>D - (maximum - minimum)</c>. For front-mounted items only this
    /// is <c>max(d_f + p) + max(b + r) + d_r</c>.
    /// </summary>
    /// <param name="cabinet">The cabinet for which the interval was calculated.</param>
    /// <param name="all">Setbacks that suit every item.</param>
    /// <returns>Depth, mm. Example: 65 to 50 in a cabinet 600 mm deep gives 615.</returns>
    public static double LeastCabinetDepthMm(CabinetDepth cabinet, SetbackInterval all) =>
        cabinet.DepthMm + all.LeastMm - all.GreatestMm;
}
