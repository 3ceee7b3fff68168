namespace RackCheck.Engineering;

/// <summary>Geometry of the 482.6 mm (19 in) series: units, panels, holes, openings.</summary>
/// <remarks>Source: IEC 60297-3-100 and EIA-310 (values from memory; secondary sources agree). Holds for this series alone, not for 21-inch or ETSI racks.</remarks>
public static class RackGeometry
{
    /// <summary>Height of one rack unit, mm: 1.75 in exactly.</summary>
    public const double UnitMm = 44.45;

    /// <summary>What a panel is lower than its units, mm, so that neighbours do not touch.</summary>
    public const double PanelReliefMm = 0.8;

    /// <summary>Width of a front panel, mm: 19 in exactly.</summary>
    public const double PanelWidthMm = 482.6;

    /// <summary>Horizontal distance of the hole centres, mm; tolerance 1.6 either way.</summary>
    public const double HoleSpacingMm = 465.1;

    /// <summary>Least clear opening between the uprights, mm.</summary>
    public const double OpeningMm = 450;

    /// <summary>Square hole for a cage nut, mm.</summary>
    public const double SquareHoleMm = 9.5;

    private static readonly double[] HoleOffsetsMm = [6.35, 22.225, 38.1];

    /// <summary>Height of a front panel of <paramref name="heightU"/> units: <c>n x 44.45 - 0.8</c>.</summary>
    /// <param name="heightU">Units, 1 or more.</param>
    /// <returns>Height, mm. Example: 4 units give 177.0.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 1 unit.</exception>
    public static double PanelHeightMm(int heightU)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(heightU, 1);
        return ApertureMm(heightU) - PanelReliefMm;
    }

    /// <summary>Height of the mounting aperture of <paramref name="heightU"/> units: <c>n x 44.45</c>.</summary>
    /// <param name="heightU">Units, 0 or more.</param>
    /// <returns>Height, mm. Example: 42 units give 1866.9.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 0 units.</exception>
    public static double ApertureMm(int heightU)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(heightU);
        return heightU * UnitMm;
    }

    /// <summary>Least number of units whose panel is as high as a body: the least n with <c>n x 44.45 - 0.8 >= h</c>.</summary>
    /// <param name="bodyHeightMm">Height of the body, mm, 0 or more.</param>
    /// <returns>Units, 1 or more. Example: 100 mm need 3.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public static int UnitsForBody(double bodyHeightMm) => Math.Max(1, UnitsFor(bodyHeightMm, PanelReliefMm));

    /// <summary>Least number of units whose aperture is as high as a thing: the least n with <c>n x 44.45 >= h</c>.</summary>
    /// <param name="heightMm">Height of the thing, mm, 0 or more.</param>
    /// <returns>Units, 0 or more. Example: 44.45 mm need 1, 44.5 mm need 2.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public static int UnitsForHeight(double heightMm) => UnitsFor(heightMm, 0);

    /// <summary>Centre of a mounting hole above the lower edge of unit 1: <c>(u - 1) x 44.45 + {6.35, 22.225, 38.1}</c>.</summary>
    /// <param name="unit">Unit counted from below, 1 or more.</param>
    /// <param name="hole">Hole in the unit counted from below, 1 to 3.</param>
    /// <returns>Height, mm. Example: unit 42, hole 3 gives 1860.55.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Unit under 1, or hole outside 1 to 3.</exception>
    public static double HoleCentreMm(int unit, int hole)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(unit, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(hole, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(hole, HoleOffsetsMm.Length);
        return ApertureMm(unit - 1) + HoleOffsetsMm[hole - 1];
    }

    /// <summary>Lower edge of unit 1 above the floor: <c>z0 = base + (H - base - 44.45 U)/2</c>, the mounting space centred between base and roof.</summary>
    /// <param name="cabinetHeightMm">Overall height H, mm.</param>
    /// <param name="baseHeightMm">Height of the base inside it, mm, 0 or more.</param>
    /// <param name="heightU">Units of the mounting space U, 1 or more.</param>
    /// <returns>Height, mm. Example: 2000 high, no base, 42 units give 66.55.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The units do not go between base and roof, or an argument is out of range.</exception>
    public static double LowerEdgeMm(double cabinetHeightMm, double baseHeightMm, int heightU)
    {
        Require.NotNegative(baseHeightMm);
        ArgumentOutOfRangeException.ThrowIfLessThan(heightU, 1);
        var slack = cabinetHeightMm - baseHeightMm - ApertureMm(heightU);
        if (!(slack >= 0))
        {
            throw new ArgumentOutOfRangeException(nameof(cabinetHeightMm), cabinetHeightMm, "The units do not go between base and roof.");
        }

        return baseHeightMm + (slack / 2);
    }

    /// <summary>Centre of an item above the floor: <c>z = z0 + 44.45 (u - 1 + n/2)</c>.</summary>
    /// <param name="lowerEdgeMm">Lower edge of unit 1 above the floor z0, mm.</param>
    /// <param name="unit">Lowest unit of the item counted from below, 1 or more.</param>
    /// <param name="heightU">Units of the item, 0 or more.</param>
    /// <returns>Height, mm. Example: z0 100, unit 20, 1 unit gives 966.775.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Unit under 1 or height under 0.</exception>
    public static double CentreMm(double lowerEdgeMm, int unit, int heightU)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(unit, 1);
        ArgumentOutOfRangeException.ThrowIfNegative(heightU);
        return lowerEdgeMm + (UnitMm * (unit - 1 + (heightU / 2.0)));
    }

    private static int UnitsFor(double heightMm, double reliefMm)
    {
        if (!(heightMm >= 0) || !double.IsFinite(heightMm))
        {
            throw new ArgumentOutOfRangeException(nameof(heightMm), heightMm, "A height is finite and not negative.");
        }

        // The tolerance keeps 3 x 44.45 at three units whatever its last binary digit.
        return (int)Math.Ceiling((heightMm + reliefMm - SetbackInterval.ToleranceMm) / UnitMm);
    }
}
