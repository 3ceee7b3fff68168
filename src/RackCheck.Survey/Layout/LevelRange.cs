using RackCheck.Engineering;

namespace RackCheck.Survey.Layout;

/// <summary>
/// Height of an item's centre above the floor, as far as it is known: handbook H1, <c>z = base + (H - base - 44.45 U)/2 + 44.45 (u - 1 + n/2)</c>.
/// </summary>
/// <param name="LeastMm">Least that it can be, mm.</param>
/// <param name="GreatestMm">Greatest that it can be, mm; infinite where the cabinet's height is not known.</param>
public readonly record struct LevelRange(double LeastMm, double GreatestMm)
{
    /// <summary>Whether it is known.</summary>
    public bool IsKnown => LeastMm == GreatestMm;

    /// <summary>The centre of an item; a thing on a shelf stands on the upper edge of its units.</summary>
    /// <param name="cabinet">The cabinet.</param>
    /// <param name="item">The item.</param>
    /// <param name="bottom">Lowest unit of it, or of its shelf, counted from below.</param>
    /// <returns>The height; null where that of a thing on a shelf is not known.</returns>
    public static LevelRange? Of(CabinetFacts cabinet, MountedItem item, int bottom)
    {
        var (least, greatest) = LowerEdge(cabinet);
        if (item.Shelf is not { } shelf)
        {
            var own = RackGeometry.UnitMm * (bottom - 1 + (item.HeightU / 2.0));
            return new(least + own, greatest + own);
        }

        if (item.StandingHeightMm is not { } height)
        {
            return null;
        }

        var above = (RackGeometry.UnitMm * (bottom - 1 + shelf.HeightU)) + (height / 2);
        return new(least + above, greatest + above);
    }

    // With nothing said of the base it is anything from none to all that the units leave of the height.
    private static (double Least, double Greatest) LowerEdge(CabinetFacts cabinet)
    {
        if (cabinet.Source.HeightMm is not { } height)
        {
            return (cabinet.Source.Base?.HeightMm ?? 0, double.PositiveInfinity);
        }

        var slack = Math.Max(0, height - RackGeometry.ApertureMm(cabinet.HeightU));
        return cabinet.Source.Base?.HeightMm is { } foot
            ? (foot + (Math.Max(0, slack - foot) / 2), foot + (Math.Max(0, slack - foot) / 2))
            : (slack / 2, slack);
    }
}
