using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Assumed;

namespace RackCheck.Survey.Layout;

/// <summary>Heights of a cabinet above the floor. Every room asks these; defaults are common practice, no source.</summary>
/// <param name="BaseMm">Height of the base, mm.</param>
/// <param name="OverallMm">Overall height, mm: at least base and mounting space.</param>
/// <param name="LowerEdgeMm">Lower edge of U1 above the floor, mm.</param>
public readonly record struct CabinetHeights(double BaseMm, double OverallMm, double LowerEdgeMm)
{
    /// <summary>Height of roof and floor together, mm, where the overall height is not given.</summary>
    public const double RoofAndFloorMm = 100;

    /// <summary>Height of castors, mm.</summary>
    public const double CastorHeightMm = 80;

    /// <summary>Height of a plinth, mm.</summary>
    public const double PlinthHeightMm = 100;

    /// <summary>The heights of a cabinet, with defaults for what is not given.</summary>
    /// <param name="cabinet">The cabinet; its height in U is given.</param>
    /// <returns>The heights.</returns>
    public static CabinetHeights Of(Cabinet cabinet)
    {
        var heightU = cabinet.HeightU!.Value;
        var mountingMm = RackGeometry.ApertureMm(heightU);
        var baseMm = cabinet.Base?.HeightMm
            ?? Math.Min(UsualBaseMm(cabinet.Base?.Style), cabinet.HeightMm is { } high ? Math.Max(0, high - mountingMm) : double.PositiveInfinity);
        var least = baseMm + mountingMm;
        var overallMm = Math.Max(least, cabinet.HeightMm ?? least + RoofAndFloorMm);

        // Where the mounting space just fits between base and roof, the difference of decimals can come out below 0.
        return new(baseMm, overallMm, Comparison.IsOver(overallMm, least) ? RackGeometry.LowerEdgeMm(overallMm, baseMm, heightU) : baseMm);
    }

    /// <summary>Lower edge of a U position above the floor.</summary>
    /// <param name="unit">U position counted from the bottom; below U1 where an item is outside the rack.</param>
    /// <returns>Height, mm.</returns>
    public double EdgeMm(int unit) => LowerEdgeMm + (RackGeometry.UnitMm * (unit - 1));

    /// <summary>Height of an item's centre above the floor. An item on a shelf stands on the upper edge of the shelf's U positions.</summary>
    /// <param name="item">The item.</param>
    /// <param name="bottom">Lowest U position of the item, or of its shelf, counted from the bottom.</param>
    /// <returns>Height, mm; null where the item has no U height and the height of its body is not known.</returns>
    public double? CentreMm(MountedItem item, int bottom) =>
        OwnHeightMm(item) is { } height ? EdgeMm(bottom + (item.Shelf?.HeightU ?? 0)) + (height / 2) : null;

    /// <summary>Height of an item itself.</summary>
    /// <param name="item">The item.</param>
    /// <returns>Height, mm; null where it is not known.</returns>
    public static double? OwnHeightMm(MountedItem item) =>
        item.Shelf is not null ? item.StandingHeightMm
        : item.HeightU > 0 ? RackGeometry.ApertureMm(item.HeightU)
        : item.Item!.Body?.HeightMm;

    /// <summary>Lists the heights that the description does not give.</summary>
    /// <param name="cabinet">The cabinet.</param>
    /// <param name="assumptions">The list.</param>
    internal void Assume(Cabinet cabinet, List<AssumedValue> assumptions)
    {
        if (cabinet.HeightMm is not { } given)
        {
            Add(Pointers.CabinetHeight, OverallMm, Bases.CabinetHeight);
        }
        else if (Comparison.IsOver(OverallMm, given))
        {
            Add(Pointers.CabinetHeight, OverallMm, Bases.HeightOverGiven);
        }

        if (cabinet.Base?.HeightMm is null)
        {
            Add(Pointers.BaseHeight, BaseMm, Bases.BaseHeight);
        }

        void Add(string pointer, double heightMm, WordedText basis) =>
            assumptions.Add(new AssumedValue { Pointer = pointer, Value = Quantities.Round(heightMm), Unit = "mm", Basis = basis });
    }

    private static double UsualBaseMm(BaseStyle? style) => style switch
    {
        BaseStyle.Castors => CastorHeightMm,
        BaseStyle.Plinth => PlinthHeightMm,
        _ => 0,
    };
}
