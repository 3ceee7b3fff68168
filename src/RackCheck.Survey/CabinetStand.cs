using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Assumed;
using RackCheck.Survey.Layout;

namespace RackCheck.Survey;

/// <summary>How the cabinet stands on the floor: its heights above the floor, and the area of its support.</summary>
public sealed class CabinetStand
{
    private readonly CabinetFacts cabinet;

    internal CabinetStand(CabinetFacts cabinet)
    {
        this.cabinet = cabinet;
        Style = cabinet.Source.Base?.Style ?? BaseStyle.Feet;
        InsetMm = cabinet.Source.Base?.InsetMm ?? DefaultInsetMm(Style);
        Feet = Under(0);
        Area = Under(cabinet.Source.Base?.StabiliserMm ?? 0);
    }

    /// <summary>What it stands on; feet where the description does not say.</summary>
    public BaseStyle Style { get; }

    /// <summary>Whether it can tip at all: not where it is bolted down or hung on a wall.</summary>
    public bool CanTip => StandsOnFloor && Style != BaseStyle.Bolted;

    /// <summary>Whether a floor carries it: not where it is hung on a wall.</summary>
    public bool StandsOnFloor => Style != BaseStyle.Wall;

    /// <summary>Distance from the frame to the lines of feet, mm.</summary>
    public double InsetMm { get; }

    /// <summary>Heights above the floor.</summary>
    public CabinetHeights Heights => cabinet.Heights;

    /// <summary>Rectangle of the feet, without a stabiliser.</summary>
    public SupportArea Feet { get; }

    /// <summary>The edges that it would tip over.</summary>
    public SupportArea Area { get; }

    /// <summary>The edge that it tips over when an item is extended: a castor on that side may be swivelled inwards.</summary>
    /// <param name="face">The side from which the item extends.</param>
    /// <returns>The edge, mm behind that side; negative where a stabiliser projects in front of it.</returns>
    public double PulledEdgeMm(Face face)
    {
        var castor = Style == BaseStyle.Castors ? SupportArea.CastorInsetMm : 0;
        return face == Face.Rear ? cabinet.Depth.DepthMm - Feet.RearMm + castor
            : Area.FrontMm < 0 ? Area.FrontMm
            : Feet.FrontMm + castor;
    }

    /// <summary>Height of the lower edge of an item above the floor.</summary>
    /// <param name="item">The item; one outside the rack counts where it would be at the nearest unit inside.</param>
    /// <returns>Height, mm; null where the item, or its shelf, is not placed.</returns>
    public double? LowerEdgeMm(MountedItem item)
    {
        var carrier = item.Shelf ?? item;
        return (item.Shelf is null ? UnitOf(item) : carrier.Bottom) is { } bottom
            ? Heights.EdgeMm(Inside(bottom, carrier.HeightU) + (item.Shelf?.HeightU ?? 0))
            : null;
    }

    /// <summary>Height of an item's centre above the floor.</summary>
    /// <param name="item">The item; one outside the rack counts where it would be at the nearest unit inside.</param>
    /// <returns>Height, mm; null where it is not placed, or stands on a shelf and its height is not known.</returns>
    public double? CentreMm(MountedItem item)
    {
        var carrier = item.Shelf ?? item;
        return (item.Shelf is null ? UnitOf(item) : carrier.Bottom) is { } bottom ? Heights.CentreMm(item, Inside(bottom, carrier.HeightU)) : null;
    }

    /// <summary>What the description lacks for the height of an item's centre.</summary>
    /// <param name="item">The item.</param>
    /// <returns>Where it would stand; null where nothing lacks.</returns>
    public string? MissingForCentre(MountedItem item) =>
        item.Shelf is { IsPlaced: false } shelf ? Pointers.ItemPosition[shelf.Index]
        : item.Shelf is null && UnitOf(item) is null ? Pointers.ItemPosition[item.Index]
        : CabinetHeights.OwnHeightMm(item) is null ? Pointers.ItemBodyHeight[item.Index]
        : null;

    /// <summary>Lists base and line of feet as assumptions where the description does not give them.</summary>
    /// <param name="assumptions">The list.</param>
    internal void Assume(List<AssumedValue> assumptions)
    {
        if (cabinet.Source.Base?.Style is null)
        {
            assumptions.Add(new AssumedValue
            {
                Pointer = Pointers.BaseStyle, Value = "feet",
                Basis = Bases.Feet,
            });
        }

        if (CanTip && cabinet.Source.Base?.InsetMm is null)
        {
            assumptions.Add(new AssumedValue
            {
                Pointer = Pointers.BaseInset, Value = InsetMm, Unit = "mm",
                Basis = Bases.Inset,
            });
        }
    }

    private static double DefaultInsetMm(BaseStyle style) => style == BaseStyle.Plinth ? 0 : SupportArea.FootInsetMm;

    // Insets and doors that would leave no support count as far as a tenth of the footprint between the lines of feet.
    private SupportArea Under(double stabiliserMm)
    {
        const double Most = 0.45;
        var (width, depth) = (cabinet.WidthMm, cabinet.Depth);
        return SupportArea.Under(
            width, depth.DepthMm, Math.Min(depth.FrontDoorMm + InsetMm, Most * depth.DepthMm), Math.Min(depth.RearDoorMm + InsetMm, Most * depth.DepthMm),
            Math.Min(InsetMm, Most * width), stabiliserMm);
    }

    // What names a shelf that is none has its own position, if any.
    private int? UnitOf(MountedItem item) => item.Bottom ?? (item.Item!.Position is { } position ? cabinet.Renumber(position.U) : null);

    private int Inside(int bottom, int heightU) => Math.Clamp(bottom, 1, Math.Max(1, cabinet.HeightU - heightU + 1));
}
