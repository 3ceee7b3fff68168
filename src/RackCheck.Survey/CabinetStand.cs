using RackCheck.Engineering;
using RackCheck.Model;
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
        var inset = Style == BaseStyle.Castors ? SupportArea.CastorInsetMm : 0;
        Feet = SupportArea.Under(cabinet.WidthMm, cabinet.Depth.DepthMm, inset);
        Area = SupportArea.Under(cabinet.WidthMm, cabinet.Depth.DepthMm, inset, cabinet.Source.Base?.StabiliserMm ?? 0);
    }

    /// <summary>What it stands on; feet where the description does not say.</summary>
    public BaseStyle Style { get; }

    /// <summary>Whether it can tip at all: not where it is bolted down.</summary>
    public bool CanTip => Style != BaseStyle.Bolted;

    /// <summary>Heights above the floor.</summary>
    public CabinetHeights Heights => cabinet.Heights;

    /// <summary>Rectangle of the feet, without a stabiliser.</summary>
    public SupportArea Feet { get; }

    /// <summary>The edges that it would tip over.</summary>
    public SupportArea Area { get; }

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

    /// <summary>Lists the base as an assumption where the description does not give it.</summary>
    /// <param name="assumptions">The list.</param>
    internal void Assume(List<Assumption> assumptions)
    {
        if (cabinet.Source.Base?.Style is null)
        {
            assumptions.Add(new Assumption
            {
                Pointer = Pointers.BaseStyle, Value = "feet",
                Basis = "default: feet at the corners; common practice, no source",
            });
        }
    }

    // What names a shelf that is none has its own position, if any.
    private int? UnitOf(MountedItem item) => item.Bottom ?? (item.Item!.Position is { } position ? cabinet.Renumber(position.U) : null);

    private int Inside(int bottom, int heightU) => Math.Clamp(bottom, 1, Math.Max(1, cabinet.HeightU - heightU + 1));
}
