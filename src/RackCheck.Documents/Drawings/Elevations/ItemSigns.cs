using System.Text;
using RackCheck.Model;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Documents.Drawings.Elevations;

/// <summary>The faces of equipment: what kind it is, which way its air flows, and what changed.</summary>
internal static class ItemSigns
{
    /// <summary>Room for the sign of the airflow in a label.</summary>
    public const double AirWidth = 40;

    /// <summary>Width of the strip that marks a change.</summary>
    public const double ChangeWidth = 26;

    private const double RingHalf = 8;

    /// <summary>Draws the face of an item.</summary>
    public static void DrawFace(Canvas canvas, MountedItem item, Area box)
    {
        switch (item.Category)
        {
            case ItemCategory.BlankingPanel:
                canvas.Box(box, Stroke.Normal, Fill.Paper);
                canvas.Outline(Hatch(box, 14, rising: true), Stroke.Thin);
                break;
            case ItemCategory.CableManager:
                canvas.Box(box, Stroke.Normal, Fill.Paper);
                canvas.Outline(Rings(box), Stroke.Thin);
                break;
            case ItemCategory.Shelf:
                canvas.Box(box, Stroke.Normal, Fill.Paper);
                canvas.Line(box.X, box.Bottom - 3, box.Right, box.Bottom - 3, Stroke.Thick);
                break;
            case ItemCategory.FanTray:
                canvas.Box(box, Stroke.Normal, Fill.Soft);
                canvas.Outline(FanRotors(box), Stroke.Thin);
                break;
            default:
                canvas.Box(box, Stroke.Normal, Fill.Soft);
                break;
        }
    }

    /// <summary>Whether the face has a pattern that text needs a clear patch on.</summary>
    public static bool HasPattern(MountedItem item) =>
        item.Category is ItemCategory.BlankingPanel or ItemCategory.CableManager or ItemCategory.FanTray;

    /// <summary>Draws which way the air flows as seen from the front or rear: into the sheet, out of it, along it. None for no sign.</summary>
    public static void DrawAir(Canvas canvas, AirflowDirection direction, Face seenFrom, double x, double y)
    {
        const double Radius = 9;
        if (direction is AirflowDirection.FrontToRear or AirflowDirection.RearToFront)
        {
            canvas.Disc(x, y, Radius, Stroke.Thin, Fill.Paper);
            if ((direction == AirflowDirection.FrontToRear) == (seenFrom == Face.Front))
            {
                const double Arm = 6.4;
                canvas.Outline(
                    Invariant($"M{x - Arm:0.##} {y - Arm:0.##}l{2 * Arm:0.##} {2 * Arm:0.##}M{x - Arm:0.##} {y + Arm:0.##}l{2 * Arm:0.##} {-2 * Arm:0.##}"),
                    Stroke.Thin);
            }
            else
            {
                canvas.Disc(x, y, 3, Stroke.None, Fill.Ink);
            }
        }
        else if (direction is AirflowDirection.Side or AirflowDirection.Upward)
        {
            canvas.Outline(direction == AirflowDirection.Side ? Arrow(x - 12, y, 24, 0) : Arrow(x, y + 11, 0, -22), Stroke.Normal);
        }
    }

    /// <summary>Draws which way the air flows as seen from the side, with the front on the left.</summary>
    public static void DrawAirFromSide(Canvas canvas, AirflowDirection direction, double x, double y)
    {
        switch (direction)
        {
            case AirflowDirection.FrontToRear:
                canvas.Outline(Arrow(x - 16, y, 32, 0), Stroke.Normal);
                break;
            case AirflowDirection.RearToFront:
                canvas.Outline(Arrow(x + 16, y, -32, 0), Stroke.Normal);
                break;
            case AirflowDirection.Upward:
                canvas.Outline(Arrow(x, y + 11, 0, -22), Stroke.Normal);
                break;
            case AirflowDirection.Side:
                canvas.Disc(x, y, 9, Stroke.Thin, Fill.Paper);
                canvas.Disc(x, y, 3, Stroke.None, Fill.Ink);
                break;
        }
    }

    /// <summary>Draws the strip that marks a change: lines across for what is new, crossed for what goes, slanting for what moves, dots for the rest.</summary>
    public static void DrawChange(Canvas canvas, ChangeKind kind, Area box)
    {
        var strip = box with { Width = Math.Min(ChangeWidth, box.Width) };
        canvas.Box(strip, Stroke.Normal, Fill.Paper);
        var pattern = kind switch
        {
            ChangeKind.Came => Levels(strip, 6),
            ChangeKind.Went => Hatch(strip, 10, rising: true) + Hatch(strip, 10, rising: false),
            ChangeKind.Moved => Hatch(strip, 8, rising: true),
            _ => Levels(strip, 14),
        };
        canvas.Outline(pattern, Stroke.Thin);
    }

    /// <summary>Slanting lines over a rectangle.</summary>
    public static string Hatch(Area box, double pitch, bool rising)
    {
        var path = new StringBuilder();
        for (var off = pitch / 2; off < box.Width + box.Height; off += pitch)
        {
            // From a point on the left or lower edge to one on the upper or right edge, at 45 degrees.
            var (x1, y1) = off <= box.Height ? (0.0, off) : (off - box.Height, box.Height);
            var (x2, y2) = off <= box.Width ? (off, 0.0) : (box.Width, off - box.Width);
            var (top, bottom) = rising ? (y2, y1) : (box.Height - y2, box.Height - y1);
            path.Append('M').Number(box.X + x1).Append(' ').Number(box.Y + bottom).Append('L').Number(box.X + x2).Append(' ').Number(box.Y + top);
        }

        return path.ToString();
    }

    private static string Levels(Area box, double pitch)
    {
        var path = new StringBuilder();
        for (var y = box.Y + (pitch / 2); y < box.Bottom; y += pitch)
        {
            path.Append('M').Number(box.X).Append(' ').Number(y).Append('h').Number(box.Width);
        }

        return path.ToString();
    }

    /// <summary>A patch on the face of a cable manager, wide enough to cut no ring.</summary>
    /// <param name="patch">The patch.</param>
    /// <param name="face">The face.</param>
    public static Area AroundRings(Area patch, Area face)
    {
        const double Clear = RingHalf + 2;
        var (left, right) = (patch.X, patch.Right);
        foreach (var x in RingsOf(face))
        {
            left = left > x - Clear && left < x + Clear ? x - Clear : left;
            right = right > x - Clear && right < x + Clear ? x + Clear : right;
        }

        return patch with { X = left, Width = right - left };
    }

    private static string Rings(Area box)
    {
        var path = new StringBuilder();
        foreach (var x in RingsOf(box))
        {
            path.Append('M').Number(x - RingHalf).Append(' ').Number(box.Y + 5).Append('h').Number(2 * RingHalf).Append('v').Number(box.Height - 10)
                .Append('h').Number(-2 * RingHalf).Append('Z');
        }

        return path.ToString();
    }

    // Middles of the rings.
    private static IEnumerable<double> RingsOf(Area box)
    {
        const double Pitch = 60;
        for (var x = box.X + (Pitch / 2); x + RingHalf < box.Right; x += Pitch)
        {
            yield return x;
        }
    }

    private static string FanRotors(Area box)
    {
        var path = new StringBuilder();
        var radius = Math.Min(16, (box.Height / 2) - 4);
        for (var x = box.X + 50; radius > 2 && x + radius < box.Right; x += 95)
        {
            var half = Invariant($"a{radius:0.##} {radius:0.##} 0 1 0");
            path.Append(Invariant($"M{x - radius:0.##} {box.MiddleY:0.##}{half} {2 * radius:0.##} 0{half} {-2 * radius:0.##} 0h{2 * radius:0.##}"));
            path.Append(Invariant($"M{x:0.##} {box.MiddleY - radius:0.##}v{2 * radius:0.##}"));
        }

        return path.ToString();
    }

    private static string Arrow(double x, double y, double dx, double dy)
    {
        const double Head = 7;
        var length = Math.Abs(dx + dy);
        var (ux, uy) = (dx / length, dy / length);
        var (endX, endY) = (x + dx, y + dy);
        return Invariant($"M{x:0.##} {y:0.##}L{endX:0.##} {endY:0.##}M{endX - (Head * (ux + uy)):0.##} {endY - (Head * (uy + ux)):0.##}")
            + Invariant($"L{endX:0.##} {endY:0.##}L{endX - (Head * (ux - uy)):0.##} {endY - (Head * (uy - ux)):0.##}");
    }
}
