using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Layout;

namespace RackCheck.Survey;

/// <summary>How the cabinet stands on the floor: its heights above it, and the area under it.</summary>
/// <remarks>Bases, and heights that are not given, are common practice, no source.</remarks>
public sealed class CabinetStand
{
    /// <summary>What a cabinet is higher than its units and its base, mm.</summary>
    public const double RoofAndFloorMm = 100;

    /// <summary>Height of castors, mm.</summary>
    public const double CastorHeightMm = 80;

    /// <summary>Height of a plinth, mm.</summary>
    public const double PlinthHeightMm = 100;

    private readonly CabinetFacts cabinet;

    internal CabinetStand(CabinetFacts cabinet)
    {
        this.cabinet = cabinet;
        var (source, units) = (cabinet.Source, RackGeometry.ApertureMm(cabinet.HeightU));
        Style = source.Base?.Style ?? BaseStyle.Feet;
        BaseHeightMm = source.Base?.HeightMm
            ?? Math.Min(UsualHeightMm(Style), source.HeightMm is { } high ? Math.Max(0, high - units) : double.PositiveInfinity);
        var least = BaseHeightMm + units;
        HeightMm = Math.Max(least, source.HeightMm ?? least + RoofAndFloorMm);

        // Where the units go between base and roof to a hair, the difference of decimals may come out below 0.
        LowerEdgeMm = HeightMm - least > SetbackInterval.ToleranceMm ? RackGeometry.LowerEdgeMm(HeightMm, BaseHeightMm, cabinet.HeightU) : BaseHeightMm;
        var inset = Style == BaseStyle.Castors ? SupportArea.CastorInsetMm : 0;
        Feet = SupportArea.Under(cabinet.WidthMm, cabinet.Depth.DepthMm, inset);
        Area = SupportArea.Under(cabinet.WidthMm, cabinet.Depth.DepthMm, inset, source.Base?.StabiliserMm ?? 0);
    }

    /// <summary>What it stands on; feet where the description does not say.</summary>
    public BaseStyle Style { get; }

    /// <summary>Whether it can tip at all: not where it is bolted down.</summary>
    public bool CanTip => Style != BaseStyle.Bolted;

    /// <summary>Height of the base, mm.</summary>
    public double BaseHeightMm { get; }

    /// <summary>Overall height, mm: at least that of base and units.</summary>
    public double HeightMm { get; }

    /// <summary>Lower edge of unit 1 above the floor, mm.</summary>
    public double LowerEdgeMm { get; }

    /// <summary>Rectangle of the feet, without a stabiliser.</summary>
    public SupportArea Feet { get; }

    /// <summary>The edges that it would tip over.</summary>
    public SupportArea Area { get; }

    /// <summary>Height of an item's centre above the floor.</summary>
    /// <param name="item">The item; one outside the rack counts where it would be at the nearest unit inside.</param>
    /// <returns>Height, mm; null where it is not placed, or stands on a shelf and its height is not known.</returns>
    public double? CentreMm(MountedItem item)
    {
        if (OwnHeightMm(item) is not { } height)
        {
            return null;
        }

        return item.Shelf is { } shelf
            ? shelf.Bottom is { } under ? EdgeMm(Inside(under, shelf.HeightU) + shelf.HeightU) + (height / 2) : null
            : UnitOf(item) is { } bottom ? EdgeMm(Inside(bottom, item.HeightU)) + (height / 2) : null;
    }

    /// <summary>What the description lacks for the height of an item's centre.</summary>
    /// <param name="item">The item.</param>
    /// <returns>Where it would stand; null where nothing lacks.</returns>
    public string? MissingForCentre(MountedItem item) =>
        item.Shelf is { IsPlaced: false } shelf ? Pointers.ItemPosition[shelf.Index]
        : item.Shelf is null && UnitOf(item) is null ? Pointers.ItemPosition[item.Index]
        : OwnHeightMm(item) is null ? Pointers.ItemBodyHeight[item.Index]
        : null;

    /// <summary>Lists what of it the description does not give.</summary>
    /// <param name="assumptions">The list.</param>
    /// <param name="withStyle">Whether it matters what it stands on.</param>
    internal void Assume(List<Assumption> assumptions, bool withStyle)
    {
        var source = cabinet.Source;
        if (source.HeightMm is not { } given)
        {
            assumptions.Add(new Assumption
            {
                Pointer = Pointers.CabinetHeight, Value = Quantities.Round(HeightMm), Unit = "mm",
                Basis = "base, units and 100 mm for roof and floor; common practice, no source",
            });
        }
        else if (HeightMm - given > SetbackInterval.ToleranceMm)
        {
            assumptions.Add(new Assumption
            {
                Pointer = Pointers.CabinetHeight, Value = Quantities.Round(HeightMm), Unit = "mm",
                Basis = "base and units are higher together than the height given",
            });
        }

        if (source.Base?.HeightMm is null)
        {
            assumptions.Add(new Assumption
            {
                Pointer = Pointers.BaseHeight, Value = Quantities.Round(BaseHeightMm), Unit = "mm",
                Basis = "usual for what it stands on, as far as the overall height leaves room; common practice, no source",
            });
        }

        if (withStyle && source.Base?.Style is null)
        {
            assumptions.Add(new Assumption
            {
                Pointer = Pointers.BaseStyle, Value = "feet",
                Basis = "it stands on its corners unless the description says otherwise; common practice, no source",
            });
        }
    }

    private static double UsualHeightMm(BaseStyle style) => style switch
    {
        BaseStyle.Castors => CastorHeightMm,
        BaseStyle.Plinth => PlinthHeightMm,
        _ => 0,
    };

    private static double? OwnHeightMm(MountedItem item) =>
        item.Shelf is not null ? item.StandingHeightMm
        : item.HeightU > 0 ? RackGeometry.ApertureMm(item.HeightU)
        : item.Item!.Body?.HeightMm;

    // What names a shelf that is none has its own position, if any.
    private int? UnitOf(MountedItem item) => item.Bottom ?? (item.Item!.Position is { } position ? cabinet.Renumber(position.U) : null);

    private int Inside(int bottom, int heightU) => Math.Clamp(bottom, 1, Math.Max(1, cabinet.HeightU - heightU + 1));

    private double EdgeMm(int unit) => LowerEdgeMm + RackGeometry.ApertureMm(unit - 1);
}
