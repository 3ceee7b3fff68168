using System.Globalization;
using RackCheck.Model;
using static System.FormattableString;

namespace RackCheck.Documents.Drawings.Elevations;

/// <summary>Numbered marks of findings. Shape and face say the severity: full octagon, triangle, circle.</summary>
internal static class Balloons
{
    /// <summary>Distance from mark to mark.</summary>
    public const double Pitch = 46;

    private const double Radius = 18;
    private static readonly int[] Here = [0];
    private static readonly int[] Beside = [1, -1];

    /// <summary>The word for a severity.</summary>
    public static string Word(Severity severity) => severity switch
    {
        Severity.Error => "ERROR",
        Severity.Warning => "WARNING",
        _ => "ADVICE",
    };

    /// <summary>Draws a mark.</summary>
    /// <param name="canvas">Takes the marks.</param>
    /// <param name="x">Centre.</param>
    /// <param name="y">Centre.</param>
    /// <param name="severity">Severity of the finding.</param>
    /// <param name="number">Its number.</param>
    public static void Draw(Canvas canvas, double x, double y, Severity severity, int number)
    {
        var digits = number.ToString(CultureInfo.InvariantCulture);
        var isTriangle = severity == Severity.Warning;
        var size = new TypeSize(isTriangle ? (digits.Length > 2 ? 13 : 18) : digits.Length > 2 ? 15 : 20, true);
        switch (severity)
        {
            case Severity.Error:
                canvas.Outline(Octagon(x, y), Stroke.Normal, Fill.Ink);
                break;
            case Severity.Warning:
                canvas.Outline(Invariant($"M{x:0.##} {y - 22:0.##}L{x + 22:0.##} {y + 17:0.##}H{x - 22:0.##}Z"), Stroke.Normal, Fill.Paper);
                break;
            default:
                canvas.Disc(x, y, Radius, Stroke.Normal, Fill.Paper);
                break;
        }

        canvas.Text(
            x, Text.Baseline(y + (isTriangle ? 6 : 0), size.Size), digits, size, Anchor.Middle, severity == Severity.Error ? Tone.Paper : Tone.Ink);
    }

    /// <summary>Draws the marks of a view beside the places that the findings are about.</summary>
    /// <param name="canvas">Takes the marks.</param>
    /// <param name="findings">The findings of the view.</param>
    /// <param name="anchorOf">The place of a finding in the view; null for the cabinet as a whole.</param>
    /// <param name="view">The cabinet in the view.</param>
    /// <param name="from">Left edge of the space for marks, beside the cabinet.</param>
    /// <returns>Right edge of the marks.</returns>
    public static double DrawAll(Canvas canvas, IEnumerable<PlacedFinding> findings, Func<PlacedFinding, Area?> anchorOf, Area view, double from)
    {
        var space = new LabelSpace();
        var spots = new Dictionary<Area, IEnumerator<Area>>();
        var right = from;
        var above = 0;
        var perRow = PerRow(view.Width);
        var marks = new List<(PlacedFinding Placed, double X, double Y)>();
        var onPdus = new Dictionary<Area, int>();
        foreach (var placed in findings)
        {
            if (anchorOf(placed) is not { } anchor)
            {
                var (row, column) = (above / perRow, above % perRow);
                above++;
                marks.Add((placed, view.X + ((column + 0.5) * Pitch), view.Y - 30 - (row * Pitch)));
                continue;
            }

            if (placed is { Item: null } && OnPdu(anchor, onPdus, space) is { } own)
            {
                marks.Add((placed, own.MiddleX, own.MiddleY));
                continue;
            }

            // The spots of one place are tried once: those before were taken.
            if (!spots.TryGetValue(anchor, out var next))
            {
                next = spots[anchor] = Spots(anchor, view, from).GetEnumerator();
            }

            while (next.MoveNext() && !space.IsFree(next.Current))
            {
            }

            var spot = next.Current;
            space.Block(spot);
            right = Math.Max(right, spot.Right);
            marks.Add((placed, spot.MiddleX, spot.MiddleY));
            var start = Math.Min(anchor.Right, view.Right + 4);
            canvas.Line(start, anchor.MiddleY, spot.MiddleX, spot.MiddleY, Stroke.Thin);
            canvas.Disc(start, anchor.MiddleY, 4, Stroke.None, Fill.Ink);
        }

        // After all leaders, so that none crosses a number.
        foreach (var (placed, x, y) in marks)
        {
            Mark(canvas, placed, x, y);
        }

        return right;
    }

    // The upper quarter of a vertical PDU is free for marks, but PDUs can stand closer to each other than marks.
    private static Area? OnPdu(Area pdu, Dictionary<Area, int> used, LabelSpace space)
    {
        for (var row = used.GetValueOrDefault(pdu); (row + 1) * Pitch < pdu.Height / 4; row++)
        {
            var spot = new Area(pdu.MiddleX - (Pitch / 2), pdu.Y + (row * Pitch) + 6, Pitch, Pitch);
            used[pdu] = row + 1;
            if (space.IsFree(spot))
            {
                space.Block(spot);
                return spot;
            }
        }

        return null;
    }

    /// <summary>Height that the marks above a cabinet need.</summary>
    /// <param name="count">Number of marks.</param>
    /// <param name="width">Width of the cabinet.</param>
    public static double HeightAbove(int count, double width)
    {
        var perRow = PerRow(width);
        return (count + perRow - 1) / perRow * Pitch;
    }

    private static int PerRow(double width) => Math.Max(1, (int)(width / Pitch));

    private static void Mark(Canvas canvas, PlacedFinding placed, double x, double y)
    {
        var finding = placed.Finding;
        canvas.Group(
            $"{placed.Number}: {Word(finding.Severity).ToLowerInvariant()}, {finding.Rule}", [("data-fingerprint", finding.Fingerprint)],
            inner => Draw(inner, x, y, finding.Severity, placed.Number));
    }

    // Beside the place first, then further out; after a few, in the rows above and below.
    private static IEnumerable<Area> Spots(Area anchor, Area view, double from)
    {
        const int Columns = 6;
        var rows = (int)Math.Ceiling(view.Height / Pitch) + 1;
        for (var first = 0; ; first += Columns)
        {
            for (var row = 0; row <= rows; row++)
            {
                foreach (var side in row == 0 ? Here : Beside)
                {
                    var y = anchor.MiddleY + (side * row * Pitch);
                    if (row > 0 && (y < view.Y || y > view.Bottom))
                    {
                        continue;
                    }

                    for (var column = first; column < first + Columns; column++)
                    {
                        yield return new Area(from + (column * Pitch), y - (Pitch / 2), Pitch, Pitch);
                    }
                }
            }
        }
    }

    private static string Octagon(double x, double y)
    {
        const double Side = 15;
        const double Cut = Radius - (Side / 2);
        return Invariant($"M{x - (Side / 2):0.##} {y - Radius:0.##}h{Side}l{Cut} {Cut}v{Side}l{-Cut} {Cut}h{-Side}l{-Cut} {-Cut}v{-Side}Z");
    }
}
