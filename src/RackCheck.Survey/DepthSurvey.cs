using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Layout;

namespace RackCheck.Survey;

/// <summary>Setbacks of the uprights: which setbacks suit each item, which suit all items, and which one applies.</summary>
public sealed class DepthSurvey
{
    private readonly CabinetFacts cabinet;
    private readonly MountedItem[] items;

    internal DepthSurvey(CabinetFacts cabinet, MountedItem[] items)
    {
        (this.cabinet, this.items) = (cabinet, items);
        var all = new SetbackInterval(0, double.PositiveInfinity);
        foreach (var item in items)
        {
            var own = Interval(item, cabinet.Depth, cabinet.SpacingMm);
            LeastBy = Tighter(item, own.LeastMm, LeastBy, all.LeastMm, lower: true);
            GreatestBy = Tighter(item, own.GreatestMm, GreatestBy, all.GreatestMm, lower: false);
            all = all.Intersect(own);
            Deepest = item.Depth is { StackMm: > 0 and var stack } ? Tighter(item, stack, Deepest, Deepest?.Depth?.StackMm ?? 0, lower: true) : Deepest;
        }

        All = all;
        SetbackMm = cabinet.SetbackMm ?? Assumed(all);
    }

    /// <summary>Setbacks that suit every item, as far as depths are known; no upper bound if no item sets one.</summary>
    public SetbackInterval All { get; }

    /// <summary>The item that sets the minimum setback; null if none does.</summary>
    public MountedItem? LeastBy { get; }

    /// <summary>The item that sets the maximum setback; null if none does.</summary>
    public MountedItem? GreatestBy { get; }

    /// <summary>The item with the deepest stack of projection, body and cables, on a shelf or not; null if none is known.</summary>
    public MountedItem? Deepest { get; }

    /// <summary>Setback of the front plane, mm: as given, else the smallest on the hole pitch that suits every item, else null.</summary>
    public double? SetbackMm { get; }

    /// <summary>The depth figures of the report.</summary>
    public DepthFigures Figures => MakeFigures();

    /// <summary>Whether some setback suits every item, as far as depths are known.</summary>
    public bool SomeSetbackServes => !All.IsEmpty;

    /// <summary>Whether the cabinet is too shallow for this item alone.</summary>
    /// <returns>Whether no setback suits it.</returns>
    public bool FitsNowhere(MountedItem item) => Interval(item, cabinet.Depth, cabinet.SpacingMm).IsEmpty;

    /// <summary>Setbacks that suit an item in this cabinet; unbounded on a side without data.</summary>
    public SetbackInterval Interval(MountedItem item) => Interval(item, cabinet.Depth, cabinet.SpacingMm);

    /// <summary>Setbacks that suit all items in another cabinet.</summary>
    /// <param name="other">Depth and doors of the other cabinet.</param>
    /// <param name="without">Items that are removed.</param>
    /// <returns>The interval, which can be empty.</returns>
    public SetbackInterval AllIn(CabinetDepth other, IReadOnlyCollection<MountedItem>? without = null)
    {
        var all = new SetbackInterval(0, double.PositiveInfinity);
        foreach (var item in items)
        {
            if (without?.Contains(item) != true)
            {
                all = all.Intersect(Interval(item, other, cabinet.SpacingMm));
            }
        }

        return all;
    }

    /// <summary>Whether one more item can be mounted without a new depth conflict.</summary>
    /// <param name="more">The item to add.</param>
    public bool CanTake(MountedItem more)
    {
        var own = Interval(more);
        if (cabinet.SetbackMm is { } setback && !own.Holds(setback))
        {
            return false;
        }

        // If no setback suits the present items, the new item must not set a bound itself.
        return All.IsEmpty ? own.LeastMm < All.LeastMm && own.GreatestMm > All.GreatestMm : !All.Intersect(own).IsEmpty;
    }

    /// <summary>Position of the front plane in another cabinet: the given setback, else the smallest on the hole pitch that suits every item.</summary>
    /// <param name="other">Depth and doors of the other cabinet.</param>
    /// <returns>Setback, mm; null if an item no longer fits that fits here.</returns>
    public double? SetbackIn(CabinetDepth other)
    {
        var all = AllIn(other);
        return cabinet.SetbackMm is { } given
            ? all.Holds(given) || !All.IsEmpty ? given : null
            : Assumed(all);
    }

    // An unknown body depth counts as 0: certain door conflicts are found, the rest is listed as not assessed.
    private static SetbackInterval Interval(MountedItem item, CabinetDepth cabinet, double? spacingMm)
    {
        var depth = item.Depth ?? new ItemDepth(item.FrontProjectionMm, 0, item.RearProjectionMm);
        return item.Face == Face.Front ? MountingDepth.OfFrontItem(cabinet, depth)
            : spacingMm is { } spacing ? MountingDepth.OfRearItem(cabinet, depth, spacing)
            : new SetbackInterval(0, double.PositiveInfinity);
    }

    private bool IsKnown(MountedItem item) => item.Depth is not null && (item.Face == Face.Front || cabinet.SpacingMm is not null);

    // Of two items with the same bound the one with the lower id is named, so that the order of items does not matter.
    private static MountedItem? Tighter(MountedItem item, double bound, MountedItem? holder, double current, bool lower)
    {
        var order = lower ? bound.CompareTo(current) : current.CompareTo(bound);
        return order > 0 || (order == 0 && holder is not null && string.CompareOrdinal(item.Id, holder.Id) < 0) ? item : holder;
    }

    private double? Assumed(SetbackInterval all) =>
        all.IsEmpty ? null : all.OnPitch(0, cabinet.PitchMm) ?? all.LeastMm;

    private DepthFigures MakeFigures()
    {
        var known = items.Length > 0 && Array.TrueForAll(items, IsKnown);
        return new DepthFigures
        {
            UsableMm = Quantities.Round(cabinet.Depth.UsableMm),
            DeepestStackMm = known && Deepest?.Depth?.StackMm is { } deepest ? Quantities.Round(deepest) : null,
            FrontSetbackMinMm = items.Length > 0 && Array.TrueForAll(items, i => i.Face == Face.Front || IsKnown(i)) ? Quantities.Round(All.LeastMm) : null,
            FrontSetbackMaxMm = known ? Quantities.Round(All.GreatestMm) : null,
            MinimumCabinetDepthMm = known ? Quantities.Round(MountingDepth.LeastCabinetDepthMm(cabinet.Depth, All)) : null,
        };
    }
}
