using System.Numerics;
using RackCheck.Engineering;
using RackCheck.Model;

namespace RackCheck.Survey.Layout;

/// <summary>Which units are taken, by what, on which face.</summary>
public sealed class Occupancy
{
    private readonly CabinetFacts cabinet;
    private readonly ulong frontClosed;
    private readonly ulong frontEquipment;
    private readonly ulong rearEquipment;

    /// <summary>Works out what is taken.</summary>
    /// <param name="cabinet">The cabinet.</param>
    /// <param name="items">The items, those that are not placed included.</param>
    /// <param name="units">Horizontal distribution units.</param>
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

                // What reaches forward through the front plane leaves no opening there that a plate could close.
                frontClosed |= Meet(Plate, mounted) == Meeting.Yes ? own : 0;
            }
        }

        Figures = MakeFigures();
    }

    /// <summary>A blanking panel of one unit on the front uprights: it has nothing before or behind its plane.</summary>
    public static MountedItem Plate { get; } = new() { Index = -1, Id = "", HeightU = 1, Category = ItemCategory.BlankingPanel, BodyDepthMm = 0 };

    /// <summary>Everything that is placed, from below, then front before rear, then by id: an order that does not hang on the request's.</summary>
    public MountedItem[] ByPlace { get; }

    /// <summary>Units in all, taken, free.</summary>
    public SpaceFigures Figures { get; }

    /// <summary>Bits of the front units that neither equipment, things on shelves nor blanking panels close; bit 0 is U1 from below.</summary>
    public ulong OpenFront => Whole & ~(frontClosed | frontEquipment);

    private ulong Whole => Mask(1, cabinet.HeightU);

    /// <summary>Whether two things that share a unit from opposite faces meet in the middle.</summary>
    /// <param name="one">One.</param>
    /// <param name="other">The other, on the opposite face.</param>
    /// <returns>Yes, no, or not to be said for want of a depth.</returns>
    public Meeting Meet(MountedItem one, MountedItem other)
    {
        var known = ReachMm(one) + ReachMm(other);
        var room = RoomBetween(one, other);
        return Comparison.IsOver(known, room) ? Meeting.Yes
            : one.Depth is not null && other.Depth is not null && cabinet.SpacingMm is not null ? Meeting.No
            : Meeting.Unknown;
    }

    /// <summary>What is known to lie behind the plane of something: connectors and cable bends even where the body's depth is not known.</summary>
    /// <param name="what">The thing.</param>
    /// <returns>Depth, mm.</returns>
    public static double ReachMm(MountedItem what) => (what.BodyDepthMm ?? 0) + what.RearProjectionMm;

    /// <summary>
    /// Room between the mounting planes of two things on opposite faces: the spacing, or, where it is not given, the most that it can be:
    /// the front plane as far forward and the rear plane as far back as what stands out before each allows, wherever the uprights stand now.
    /// </summary>
    /// <param name="one">One.</param>
    /// <param name="other">The other.</param>
    /// <returns>Room, mm.</returns>
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

    /// <summary>The unit nearest to a wanted one where something could go without touching anything else; the lower of two as near.</summary>
    /// <param name="what">What is to go there, with what stands on it; where it is now does not count as taken.</param>
    /// <param name="heightU">Units that it needs.</param>
    /// <param name="wanted">Lowest unit wanted, counted from below.</param>
    /// <param name="roofU">Units that the rack has, for asking what a higher one would hold.</param>
    /// <returns>Lowest unit, counted from below, or null.</returns>
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

    /// <summary>Whether something could go to a unit without touching anything else, on its own face.</summary>
    /// <param name="what">What is to go there.</param>
    /// <param name="heightU">Units that it needs.</param>
    /// <param name="bottom">Lowest unit, counted from below.</param>
    /// <returns>Whether it could.</returns>
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

            // Two sets on runners keep a free unit between, so that a cure never lengthens a stack of them.
            var bothOnRunners = what.SupportStyle == SupportStyle.Runners && other.SupportStyle == SupportStyle.Runners;
            if (bothOnRunners && other.Face == what.Face && (other.Top == bottom - 1 || other.Bottom == top + 1))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Free units between the top of a shelf and what hangs next above it, or the roof.</summary>
    /// <param name="shelf">The shelf.</param>
    /// <returns>Units.</returns>
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

    /// <summary>Units that equipment takes on either face, in this rack or in a higher one.</summary>
    /// <param name="roofU">Units that the rack has.</param>
    /// <returns>Units.</returns>
    public int UnitsUsedUpTo(int roofU) => BitOperations.PopCount((frontEquipment | rearEquipment) & Mask(1, roofU));

    /// <summary>Bits of a run of units, clipped to what a rack can have; bit 0 is U1 from below.</summary>
    /// <param name="bottom">Lowest unit.</param>
    /// <param name="top">Highest unit.</param>
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

            // An item and a PDU may bear the same id.
            return order != 0 ? order : (x.Item is null).CompareTo(y.Item is null);
        }
    }
}

/// <summary>Whether two things meet between the mounting planes.</summary>
public enum Meeting
{
    /// <summary>There is room between them.</summary>
    No,

    /// <summary>They meet.</summary>
    Yes,

    /// <summary>A depth that decides it is not known.</summary>
    Unknown,
}
