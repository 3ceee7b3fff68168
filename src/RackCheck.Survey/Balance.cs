using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Layout;

namespace RackCheck.Survey;

/// <summary>An item on slides, pulled out with what stands on it, the rest in its place.</summary>
/// <param name="Item">The item.</param>
/// <param name="Rest">All the rest at its centre; null where there is none.</param>
/// <param name="Pulled">The item where it is then.</param>
/// <param name="EdgeMm">The edge that the rack would tip over, mm behind the side that the item comes out of.</param>
/// <param name="Moments">Both moments.</param>
/// <remarks>Depths count from the side that the item comes out of.</remarks>
public readonly record struct PulledItem(MountedItem Item, PointMass? Rest, PointMass Pulled, double EdgeMm, PulledOut Moments)
{
    /// <summary>Restoring to overturning moment; infinite where nothing overturns.</summary>
    public double Factor => Moments.Factor ?? double.PositiveInfinity;
}

/// <summary>How the loaded rack stands: its centre of gravity, over which edge it tips, what pulled-out equipment does, what the feet bear.</summary>
public sealed class Balance
{
    private readonly CabinetFacts cabinet;
    private readonly CabinetStand stand;
    private readonly MountedItem[] items;
    private readonly PointMass[] places;
    private readonly MassSum all;

    internal Balance(CabinetFacts cabinet, CabinetStand stand, MountedItem[] items, PointMass[] places, MassSum all)
    {
        (this.cabinet, this.stand, this.items, this.places, this.all) = (cabinet, stand, items, places, all);
        Centre = all.Centre!.Value;
        Tip = Stability.LeastTip(stand.Area, Centre);
        Feet = FloorLoads.LoadsOnFeet(stand.Feet, Centre);
        foreach (var item in items)
        {
            if (PullOut(item) is { } pulled && (Worst is not { } worst || IsWorse(pulled, worst)))
            {
                Worst = pulled;
            }
        }
    }

    /// <summary>All masses at their centre of gravity.</summary>
    public PointMass Centre { get; }

    /// <summary>Least tip angle, and the edge.</summary>
    public TipAngle Tip { get; }

    /// <summary>What the feet bear.</summary>
    public FootLoads Feet { get; }

    /// <summary>The item whose pulling out leaves the least; null where nothing is pulled out.</summary>
    public PulledItem? Worst { get; }

    /// <summary>Where an item's mass is.</summary>
    /// <param name="item">The item.</param>
    /// <returns>The place; no mass for a blanking panel without one.</returns>
    public PointMass PlaceOf(MountedItem item) => places[item.Index];

    /// <summary>An item on slides pulled out fully, with what stands on it.</summary>
    /// <param name="item">The item.</param>
    /// <returns>The rack then; null where the item is not on slides, has no mass, or it is not known how far it comes out.</returns>
    public PulledItem? PullOut(MountedItem item)
    {
        if (!IsPulledOut(item) || ExtensionMm(item) is not { } extension)
        {
            return null;
        }

        var own = default(MassSum).Add(places[item.Index]);
        foreach (var thing in item.Load)
        {
            own = own.Add(places[thing.Index]);
        }

        if (own.Centre is not { } inside)
        {
            return null;
        }

        // What hangs on the rear uprights comes out of the rear: seen from there it is the same.
        var (whole, edge) = (all, stand.Area.FrontMm);
        if (item.Face == Face.Rear)
        {
            (whole, inside, edge) = (default(MassSum).Add(Mirrored(Centre)), Mirrored(inside), cabinet.Depth.DepthMm - stand.Area.RearMm);
        }

        return new PulledItem(item, whole.TakeOut(inside).Centre, inside.Forward(extension), edge, Stability.PullOut(whole, inside, extension, edge));
    }

    /// <summary>Whether an item is pulled out while the rack stands, with some mass in it or on it.</summary>
    /// <param name="item">The item.</param>
    /// <returns>Whether it is.</returns>
    public static bool IsPulledOut(MountedItem item) => item.SupportStyle == SupportStyle.Slides && item.Shelf is null && MassSurvey.LoadedKg(item) > 0;

    /// <summary>How far an item's slides pull out.</summary>
    /// <param name="item">The item.</param>
    /// <returns>Length, mm: what is given, else the depth of its body; null where neither is known.</returns>
    public static double? ExtensionMm(MountedItem item) => item.Item!.Support!.ExtensionMm ?? item.BodyDepthMm;

    /// <summary>Lists what of it the description does not give.</summary>
    /// <param name="assumptions">The list.</param>
    internal void Assume(List<Assumption> assumptions)
    {
        foreach (var item in items)
        {
            if (IsPulledOut(item) && item.Item!.Support!.ExtensionMm is null && item.BodyDepthMm is { } depth)
            {
                assumptions.Add(new Assumption
                {
                    Pointer = Pointers.ItemExtension[item.Index], Value = depth, Unit = "mm",
                    Basis = "slides pull a body out by its whole depth; common practice, no source",
                });
            }
        }
    }

    // Of two as bad the one with the lesser id is named, so that the order of items does not matter.
    private static bool IsWorse(PulledItem one, PulledItem other)
    {
        var order = Quantities.Round(one.Factor).CompareTo(Quantities.Round(other.Factor));
        return order < 0 || (order == 0 && string.CompareOrdinal(one.Item.Id, other.Item.Id) < 0);
    }

    private PointMass Mirrored(PointMass mass) => mass with { XMm = cabinet.Depth.DepthMm - mass.XMm };
}
