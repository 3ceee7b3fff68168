using RackCheck.Survey.Assumed;
using System.Runtime.InteropServices;
using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Layout;

namespace RackCheck.Survey;

/// <summary>Items on slides, extended with their load past the open door; all other items are in place.</summary>
/// <param name="Items">The extended items, the one with the greatest moment first; at least one.</param>
/// <param name="Rest">All other masses at their centre of gravity; null if there are none.</param>
/// <param name="Moved">The extended items at their new positions, in the same order, then the open door if its mass is known.</param>
/// <param name="EdgeMm">Tipping edge, mm behind the side from which the items extend.</param>
/// <param name="Moments">Stabilising and overturning moment.</param>
/// <remarks>Depths are measured from the side from which the items extend.</remarks>
public sealed record PulledItems(
    IReadOnlyList<MountedItem> Items, PointMass? Rest, IReadOnlyList<PointMass> Moved, double EdgeMm, PulledOut Moments)
{
    /// <summary>The item with the greatest moment.</summary>
    public MountedItem Item => Items[0];

    /// <summary>Whether an open door stands in front of the edge.</summary>
    public bool HasDoor => Moved.Count > Items.Count;

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

        WorstPair = cabinet.Source.Interlock == true ? null : Pair();
    }

    /// <summary>Total mass at its centre of gravity.</summary>
    public PointMass Centre { get; }

    /// <summary>Smallest tip angle and its edge.</summary>
    public TipAngle Tip { get; }

    /// <summary>Foot loads.</summary>
    public FootLoads Feet { get; }

    /// <summary>The extended item with the lowest stability; null if no item extends.</summary>
    public PulledItems? Worst { get; }

    /// <summary>
    /// The two items with the greatest moments, extended together at one side: of front and rear the less stable. Null with an interlock, or without two
    /// such items.
    /// </summary>
    public PulledItems? WorstPair { get; }

    /// <summary>Whether more than two items can be out together at one side: stability is checked with two.</summary>
    public bool CanPullOutMore => cabinet.Source.Interlock != true && items.Where(i => MomentOf(i) is not null).GroupBy(i => i.Face).Any(g => g.Count() > 2);

    /// <summary>Position of the mass of an item.</summary>
    /// <returns>The position; zero mass for a blanking panel without a mass.</returns>
    public PointMass PlaceOf(MountedItem item) => places[item.Index];

    /// <summary>A fully extended item on slides, with its load.</summary>
    /// <returns>The rack with the item extended; null if the item is not on slides, has no mass, or its extension is unknown.</returns>
    public PulledItems? PullOut(MountedItem item) => MomentOf(item) is null ? null : PullOut([item]);

    /// <summary>Whether an item with a mass on or in it extends from the standing rack.</summary>
    public static bool IsPulledOut(MountedItem item) => item.SupportStyle == SupportStyle.Slides && item.Shelf is null && MassSurvey.LoadedKg(item) > 0;

    /// <summary>Extension of the slides of an item.</summary>
    /// <returns>Length, mm: as given, else the depth of the body; null if both are missing.</returns>
    public static double? ExtensionMm(MountedItem item) => item.Item!.Support!.ExtensionMm ?? item.BodyDepthMm;

    /// <summary>Records the assumed values.</summary>
    internal void Assume(List<AssumedValue> assumptions)
    {
        foreach (var item in items)
        {
            if (IsPulledOut(item) && item.Item!.Support!.ExtensionMm is null && item.BodyDepthMm is { } depth)
            {
                assumptions.Add(new AssumedValue
                {
                    Pointer = Pointers.ItemExtension[item.Index], Value = depth, Unit = "mm",
                    Basis = Bases.SlideLength,
                });
            }
        }
    }

    // Mass times extension: by how much the item changes the moment about the edge. Null where it does not extend.
    private double? MomentOf(MountedItem item) =>
        IsPulledOut(item) && ExtensionMm(item) is { } extension && Loaded(item) is { Kg: var kilograms } ? kilograms * extension : null;

    private PointMass? Loaded(MountedItem item)
    {
        var own = default(MassSum).Add(places[item.Index]);
        foreach (var thing in item.Load)
        {
            own = own.Add(places[thing.Index]);
        }

        return own.Centre;
    }

    // The rack tips where the masses times their extensions pass the moment at rest: the two greatest are the worst pair.
    private PulledItems? Pair()
    {
        PulledItems? worst = null;
        foreach (var face in (ReadOnlySpan<Face>)[Face.Front, Face.Rear])
        {
            MountedItem[] two =
            [
                .. items.Where(i => i.Face == face && MomentOf(i) is not null)
                    .OrderByDescending(i => Quantities.Round(MomentOf(i)!.Value)).ThenBy(i => i.Id, StringComparer.Ordinal).Take(2),
            ];
            if (two.Length == 2 && PullOut(two) is var pair && (worst is null || Comparison.IsOver(worst.Factor, pair.Factor)))
            {
                worst = pair;
            }
        }

        return worst;
    }

    // Items on the rear uprights extend to the rear: the view is mirrored.
    private PulledItems PullOut(MountedItem[] pulled)
    {
        var face = pulled[0].Face;
        var rest = face == Face.Rear ? default(MassSum).Add(Mirrored(Centre)) : all;
        var moved = new List<PointMass>(pulled.Length + 1);
        foreach (var item in pulled)
        {
            var inside = face == Face.Rear ? Mirrored(Loaded(item)!.Value) : Loaded(item)!.Value;
            rest = rest.TakeOut(inside);
            moved.Add(inside.Forward(ExtensionMm(item)!.Value));
        }

        if (OpenDoor(face) is { } door)
        {
            rest = rest.TakeOut(door with { XMm = cabinet.Depth.DepthMm / 2 });
            moved.Add(door);
        }

        var edge = stand.PulledEdgeMm(face);
        return new PulledItems(pulled, rest.Centre, moved, edge, Stability.PullOut(rest, edge, CollectionsMarshal.AsSpan(moved)));
    }

    // The door is part of the cabinet's mass, which acts at the centre of its box.
    private PointMass? OpenDoor(Face face)
    {
        var door = face == Face.Front ? cabinet.Source.FrontDoor : cabinet.Source.RearDoor;
        var kilograms = Math.Min(door?.MassKg ?? 0, cabinet.Source.MassKg ?? 0);
        return kilograms > 0 && door!.Style != DoorStyle.None
            ? DoorLeaves.Open(kilograms, cabinet.WidthMm, door.Leaves ?? 1, stand.Heights.OverallMm / 2)
            : null;
    }

    // Of two equally bad items the one with the lower id is named, so that the order of items does not matter.
    private static bool IsWorse(PulledItems one, PulledItems other)
    {
        var order = Quantities.Round(one.Factor).CompareTo(Quantities.Round(other.Factor));
        return order < 0 || (order == 0 && string.CompareOrdinal(one.Item.Id, other.Item.Id) < 0);
    }

    private PointMass Mirrored(PointMass mass) => mass with { XMm = cabinet.Depth.DepthMm - mass.XMm };
}
