using System.Numerics;
using RackCheck.Engineering;
using RackCheck.Model;

namespace RackCheck.Survey.Layout;

/// <summary>Occupied U positions on each face, and the items in them.</summary>
public sealed class Occupancy
{
    private readonly CabinetFacts cabinet;
    private readonly ulong frontClosed;
    private readonly ulong frontEquipment;
    private readonly ulong rearEquipment;

    /// <summary>Calculates the occupied U positions.</summary>
    /// <param name="items">The items, including those that are not placed.</param>
    /// <param name="units">Horizontal PDUs.</param>
    public Occupancy(CabinetFacts cabinet, MountedItem[] items, MountedItem[] units)
    {
        this.cabinet = cabinet;
        ByPlace = SortedByPlace(items, units);
        foreach (var mounted in ByPlace)
        {
            var own = Mask(mounted.Bottom!.Value, mounted.ClaimTop);
            if (mounted.Category == ItemCategory.BlankingPanel)
            {
                frontClosed |= mounted.Face == Face.Front ? own : 0;
            }
            else if (mounted.Face == Face.Front)
            {
                frontEquipment |= own;
            }
            else
            {
                rearEquipment |= own;

                // An item that reaches through the front plane leaves no opening that a blanking panel could close.
                frontClosed |= Meet(Plate, mounted) == Meeting.Yes ? own : 0;
            }
        }
    }

    /// <summary>A 1U blanking panel on the front uprights, with no depth in front of or behind its plane.</summary>
    public static MountedItem Plate { get; } = new() { Index = -1, Id = "", HeightU = 1, Category = ItemCategory.BlankingPanel, BodyDepthMm = 0 };

    /// <summary>All placed items from the bottom up, front before rear, then by id; the order does not depend on the request.</summary>
    public MountedItem[] ByPlace { get; }

    /// <summary>U positions: total, occupied, free.</summary>
    public SpaceFigures Figures => MakeFigures();

    /// <summary>Bits of the front U positions that no equipment, item on a shelf or blanking panel closes; bit 0 is U1 from below.</summary>
    public ulong OpenFront => Whole & ~(frontClosed | frontEquipment);

    private ulong Whole => Mask(1, cabinet.HeightU);

    /// <summary>Whether two items at one U position on opposite faces collide between the mounting planes.</summary>
    /// <param name="one">One item.</param>
    /// <param name="other">The other item, on the opposite face.</param>
    /// <returns>Yes, no, or unknown if a depth is missing.</returns>
    public Meeting Meet(MountedItem one, MountedItem other)
    {
        var known = ReachMm(one) + ReachMm(other);
        var room = RoomBetween(one, other);
        return Comparison.IsOver(known, room) ? Meeting.Yes
            : one.Depth is not null && other.Depth is not null && cabinet.SpacingMm is not null ? Meeting.No
            : Meeting.Unknown;
    }

    /// <summary>Known depth behind the plane of an item: connectors and cable bends count even if the depth of the body is unknown.</summary>
    public static double ReachMm(MountedItem what) => (what.BodyDepthMm ?? 0) + what.RearProjectionMm;

    /// <summary>
    /// Space between the mounting planes of two items on opposite faces: the given spacing, else the maximum possible spacing. For that the front plane
    /// is as far forward, and the rear plane as far back, as the front projections allow, wherever the uprights are now.
    /// </summary>
    /// <returns>Space, mm.</returns>
    public double RoomBetween(MountedItem one, MountedItem other)
    {
        if (cabinet.SpacingMm is { } spacing)
        {
            return spacing;
        }

        var (front, rear) = one.Face == Face.Front ? (one, other) : (other, one);
        var least = MountingDepth.LeastForProjection(cabinet.Depth, front.FrontProjectionMm);
        return cabinet.Depth.RearLimitMm - least - (cabinet.Depth.RearOpen ? 0 : rear.FrontProjectionMm);
    }

    /// <summary>The nearest U position at which an item can be mounted without a collision; the lower of two equally near positions.</summary>
    /// <param name="what">The item with its load; its present position counts as free.</param>
    /// <param name="heightU">Height that it needs, U.</param>
    /// <param name="wanted">Preferred lowest U position, counted from the bottom.</param>
    /// <param name="roofU">Height of the rack, U; a higher rack can be tested too.</param>
    /// <returns>Lowest U position, counted from the bottom, or null.</returns>
    public int? FindPlace(MountedItem what, int heightU, int wanted, int roofU)
    {
        var last = roofU - heightU - what.LoadHeightU + 1;
        if (last < 1)
        {
            return null;
        }

        var from = Math.Clamp(wanted, 1, last);
        for (var distance = 0; distance < roofU; distance++)
        {
            if (from - distance >= 1 && CanGo(what, heightU, from - distance))
            {
                return from - distance;
            }

            if (distance > 0 && from + distance <= last && CanGo(what, heightU, from + distance))
            {
                return from + distance;
            }
        }

        return null;
    }

    /// <summary>Whether an item can be mounted at a U position on its own face without a collision.</summary>
    /// <param name="heightU">Height that it needs, U.</param>
    /// <param name="bottom">Lowest U position, counted from the bottom.</param>
    public bool CanGo(MountedItem what, int heightU, int bottom)
    {
        var top = bottom + heightU - 1;
        var claimTop = top + what.LoadHeightU;
        foreach (var other in ByPlace)
        {
            if (ReferenceEquals(other, what))
            {
                continue;
            }

            var touches = other.Bottom <= claimTop && other.ClaimTop >= bottom;
            if (touches && (other.Face == what.Face || Meet(what, other) == Meeting.Yes))
            {
                return false;
            }

            // Two sets on runners keep 1 U free between them, so that a remedy never lengthens a stack.
            var bothOnRunners = what.SupportStyle == SupportStyle.Runners && other.SupportStyle == SupportStyle.Runners;
            if (bothOnRunners && other.Face == what.Face && (other.Top == bottom - 1 || other.Bottom == top + 1))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Free space between the top of a shelf and the next item above it, or the roof.</summary>
    /// <returns>Free height, U.</returns>
    public int FreeAbove(MountedItem shelf)
    {
        var next = cabinet.HeightU + 1;
        foreach (var other in ByPlace)
        {
            if (other.Bottom > shelf.Top && other.Bottom < next && !ReferenceEquals(other, shelf)
                && (other.Face == shelf.Face || Meet(shelf, other) == Meeting.Yes))
            {
                next = other.Bottom.Value;
            }
        }

        return Math.Max(0, next - shelf.Top - 1);
    }

    /// <summary>U positions that equipment occupies on either face, in this rack or in a higher one.</summary>
    /// <param name="roofU">Height of the rack, U.</param>
    /// <returns>Occupied height, U.</returns>
    public int UnitsUsedUpTo(int roofU) => BitOperations.PopCount((frontEquipment | rearEquipment) & Mask(1, roofU));

    /// <summary>Bits of a range of U positions, limited to the maximum height of a rack; bit 0 is U1 from below.</summary>
    /// <param name="bottom">Lowest U position.</param>
    /// <param name="top">Highest U position.</param>
    /// <returns>The bits.</returns>
    public static ulong Mask(int bottom, int top)
    {
        var from = Math.Max(bottom, 1);
        var to = Math.Min(top, 60);
        return to < from ? 0 : (ulong.MaxValue >> (64 - (to - from + 1))) << (from - 1);
    }

    private static MountedItem[] SortedByPlace(MountedItem[] items, MountedItem[] units)
    {
        var count = 0;
        var placed = new MountedItem[items.Length + units.Length];
        foreach (var item in items)
        {
            if (item.IsPlaced)
            {
                placed[count++] = item;
            }
        }

        foreach (var unit in units)
        {
            placed[count++] = unit;
        }

        Array.Resize(ref placed, count);
        placed.AsSpan().Sort(default(PlaceComparer));
        return placed;
    }

    private SpaceFigures MakeFigures()
    {
        var free = Whole & ~(frontEquipment | rearEquipment);
        var count = UnitsUsedUpTo(cabinet.HeightU);
        return new SpaceFigures
        {
            UnitsTotal = cabinet.HeightU,
            UnitsUsed = count,
            UnitsFree = cabinet.HeightU - count,
            LargestGapU = LongestRun(free),
        };
    }

    private static int LongestRun(ulong bits)
    {
        // Each step shortens every run of ones by one.
        var length = 0;
        while (bits != 0)
        {
            bits &= bits << 1;
            length++;
        }

        return length;
    }

    private readonly struct PlaceComparer : IComparer<MountedItem>
    {
        public int Compare(MountedItem? x, MountedItem? y)
        {
            var order = x!.Bottom!.Value.CompareTo(y!.Bottom!.Value);
            order = order != 0 ? order : x.Face.CompareTo(y.Face);
            order = order != 0 ? order : string.CompareOrdinal(x.Id, y.Id);

            // An item and a PDU can have the same id.
            return order != 0 ? order : (x.Item is null).CompareTo(y.Item is null);
        }
    }
}

/// <summary>Whether two items collide between the mounting planes.</summary>
public enum Meeting
{
    /// <summary>There is clearance between them.</summary>
    No,

    /// <summary>They collide.</summary>
    Yes,

    /// <summary>A required depth is unknown.</summary>
    Unknown,
}
