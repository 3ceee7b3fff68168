using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Layout;

namespace RackCheck.Survey;

/// <summary>An item on slides, extended with its load; all other items are in place.</summary>
/// <param name="Rest">All other masses at their centre of gravity; null if there are none.</param>
/// <param name="Pulled">The extended item at its new position.</param>
/// <param name="EdgeMm">Tipping edge, mm behind the side from which the item extends.</param>
/// <param name="Moments">Stabilising and overturning moment.</param>
/// <remarks>Depths are measured from the side from which the item extends.</remarks>
public readonly record struct PulledItem(MountedItem Item, PointMass? Rest, PointMass Pulled, double EdgeMm, PulledOut Moments)
{
    /// <summary>Ratio of stabilising to overturning moment; infinite without an overturning moment.</summary>
    public double Factor => Moments.Factor ?? double.PositiveInfinity;
}

/// <summary>Stability of the loaded rack: centre of gravity, tipping edge, extended equipment and foot loads.</summary>
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

    /// <summary>Total mass at its centre of gravity.</summary>
    public PointMass Centre { get; }

    /// <summary>Smallest tip angle and its edge.</summary>
    public TipAngle Tip { get; }

    /// <summary>Foot loads.</summary>
    public FootLoads Feet { get; }

    /// <summary>The extended item with the lowest stability; null if no item extends.</summary>
    public PulledItem? Worst { get; }

    /// <summary>Position of the mass of an item.</summary>
    /// <returns>The position; zero mass for a blanking panel without a mass.</returns>
    public PointMass PlaceOf(MountedItem item) => places[item.Index];

    /// <summary>A fully extended item on slides, with its load.</summary>
    /// <returns>The rack with the item extended; null if the item is not on slides, has no mass, or its extension is unknown.</returns>
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

        // Items on the rear uprights extend to the rear: the view is mirrored.
        var (whole, edge) = (all, stand.Area.FrontMm);
        if (item.Face == Face.Rear)
        {
            (whole, inside, edge) = (default(MassSum).Add(Mirrored(Centre)), Mirrored(inside), cabinet.Depth.DepthMm - stand.Area.RearMm);
        }

        return new PulledItem(item, whole.TakeOut(inside).Centre, inside.Forward(extension), edge, Stability.PullOut(whole, inside, extension, edge));
    }

    /// <summary>Whether an item with a mass on or in it extends from the standing rack.</summary>
    public static bool IsPulledOut(MountedItem item) => item.SupportStyle == SupportStyle.Slides && item.Shelf is null && MassSurvey.LoadedKg(item) > 0;

    /// <summary>Extension of the slides of an item.</summary>
    /// <returns>Length, mm: as given, else the depth of the body; null if both are missing.</returns>
    public static double? ExtensionMm(MountedItem item) => item.Item!.Support!.ExtensionMm ?? item.BodyDepthMm;

    /// <summary>Records the assumed values.</summary>
    internal void Assume(List<Assumption> assumptions)
    {
        foreach (var item in items)
        {
            if (IsPulledOut(item) && item.Item!.Support!.ExtensionMm is null && item.BodyDepthMm is { } depth)
            {
                assumptions.Add(new Assumption
                {
                    Pointer = Pointers.ItemExtension[item.Index], Value = depth, Unit = "mm",
                    Basis = "slides extend the body by its full depth; common practice, no source",
                });
            }
        }
    }

    // Of two equally bad items the one with the lower id is named, so that the order of items does not matter.
    private static bool IsWorse(PulledItem one, PulledItem other)
    {
        var order = Quantities.Round(one.Factor).CompareTo(Quantities.Round(other.Factor));
        return order < 0 || (order == 0 && string.CompareOrdinal(one.Item.Id, other.Item.Id) < 0);
    }

    private PointMass Mirrored(PointMass mass) => mass with { XMm = cabinet.Depth.DepthMm - mass.XMm };
}
