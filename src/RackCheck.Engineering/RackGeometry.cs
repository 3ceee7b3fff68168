namespace RackCheck.Engineering;

/// <summary>Geometry of the 482.6 mm (19 in) series: height units, panels, holes and openings.</summary>
/// <remarks>
/// Source: IEC 60297-3-100 and EIA-310 (values from memory; secondary sources agree). Valid for this series only, not for 21-inch or ETSI racks.
/// </remarks>
public static class RackGeometry
{
    /// <summary>Height of 1U, mm: 1.75 in exactly.</summary>
    public const double UnitMm = 44.45;

    /// <summary>Difference between n x 44.45 mm and the panel height, mm, so that adjacent panels do not touch.</summary>
    public const double PanelReliefMm = 0.8;

    /// <summary>Width of a front panel, mm: 19 in exactly.</summary>
    public const double PanelWidthMm = 482.6;

    /// <summary>Horizontal distance between hole centres, mm; tolerance +-1.6.</summary>
    public const double HoleSpacingMm = 465.1;

    /// <summary>Minimum clear opening between the uprights, mm.</summary>
    public const double OpeningMm = 450;

    /// <summary>Square hole for a cage nut, mm.</summary>
    public const double SquareHoleMm = 9.5;

    private static readonly double[] HoleOffsetsMm = [6.35, 22.225, 38.1];

    /// <summary>Height of a front panel of <paramref name="heightU"/> U: <c>n x 44.45 - 0.8</c>.</summary>
    /// <param name="heightU">Height, U, 1 or more.</param>
    /// <returns>Height, mm. Example: 4U gives 177.0.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Below 1U.</exception>
    public static double PanelHeightMm(int heightU)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(heightU, 1);
        return ApertureMm(heightU) - PanelReliefMm;
    }

    /// <summary>Height of the mounting aperture of <paramref name="heightU"/> U: <c>n x 44.45</c>.</summary>
    /// <param name="heightU">Height, U, 0 or more.</param>
    /// <returns>Height, mm. Example: 42U gives 1866.9.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Below 0U.</exception>
    public static double ApertureMm(int heightU)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(heightU);
        return heightU * UnitMm;
    }

    /// <summary>Minimum U height whose panel is as high as a body: the smallest n with <c>n x 44.45 - 0.8 >= h</c>.</summary>
    /// <param name="bodyHeightMm">Height of the body, mm, 0 or more.</param>
    /// <returns>Height, U, 1 or more. Example: 100 mm gives 3.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public static int UnitsForBody(double bodyHeightMm) => Math.Max(1, UnitsFor(bodyHeightMm, PanelReliefMm));

    /// <summary>Minimum U height whose aperture is as high as an item: the smallest n with <c>n x 44.45 >= h</c>.</summary>
    /// <param name="heightMm">Height of the item, mm, 0 or more.</param>
    /// <returns>Height, U, 0 or more. Example: 44.45 mm gives 1, 44.5 mm gives 2.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public static int UnitsForHeight(double heightMm) => UnitsFor(heightMm, 0);

    /// <summary>Centre of a mounting hole above the lower edge of U1: <c>(u - 1) x 44.45 + {6.35, 22.225, 38.1}</c>.</summary>
    /// <param name="unit">U position counted from the bottom, 1 or more.</param>
    /// <param name="hole">Hole in the U position counted from the bottom, 1 to 3.</param>
    /// <returns>Height, mm. Example: U42, hole 3 gives 1860.55.</returns>
    /// <exception cref="ArgumentOutOfRangeException">U position below 1, or hole outside 1 to 3.</exception>
    public static double HoleCentreMm(int unit, int hole)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(unit, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(hole, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(hole, HoleOffsetsMm.Length);
        return ApertureMm(unit - 1) + HoleOffsetsMm[hole - 1];
    }

    /// <summary>Lower edge of U1 above the floor: <c>z0 = base + (H - base - 44.45 U)/2</c>, with the mounting space centred between base and roof.</summary>
    /// <param name="cabinetHeightMm">Overall height H, mm.</param>
    /// <param name="baseHeightMm">Height of the base, included in H, mm, 0 or more.</param>
    /// <param name="heightU">Height of the mounting space U, 1 or more.</param>
    /// <returns>Height, mm. Example: 2000 mm high, no base, 42U gives 66.55.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The mounting space does not fit between base and roof, or an argument is outside its range.</exception>
    public static double LowerEdgeMm(double cabinetHeightMm, double baseHeightMm, int heightU)
    {
        Require.NotNegative(baseHeightMm);
        ArgumentOutOfRangeException.ThrowIfLessThan(heightU, 1);
        var slack = cabinetHeightMm - baseHeightMm - ApertureMm(heightU);
        if (!(slack >= 0))
        {
            throw new ArgumentOutOfRangeException(nameof(cabinetHeightMm), cabinetHeightMm, "The mounting space does not fit between base and roof.");
        }

        return baseHeightMm + (slack / 2);
    }

    /// <summary>Centre of an item above the floor: <c>z = z0 + 44.45 (u - 1 + n/2)</c>.</summary>
    /// <param name="lowerEdgeMm">Lower edge of U1 above the floor z0, mm.</param>
    /// <param name="unit">Lowest U position of the item counted from the bottom, 1 or more.</param>
    /// <param name="heightU">Height of the item, U, 0 or more.</param>
    /// <returns>Height, mm. Example: z0 100, U20, 1U gives 966.775.</returns>
    /// <exception cref="ArgumentOutOfRangeException">U position below 1 or height below 0.</exception>
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
            throw new ArgumentOutOfRangeException(nameof(heightMm), heightMm, "The height must be finite and not negative.");
        }

        // The tolerance keeps 3 x 44.45 at 3U despite binary rounding.
        return (int)Math.Ceiling((heightMm + reliefMm - Comparison.Tolerance) / UnitMm);
    }
}
