using static System.FormattableString;

namespace RackCheck.Documents.Drawings.Elevations;

/// <summary>Draws dimension lines.</summary>
internal static class Dimensions
{
    private const double Tick = 9;

    /// <summary>A chain of dimensions along a level line. Text that is wider than its part stands above, in a free place.</summary>
    /// <param name="canvas">Takes the marks.</param>
    /// <param name="marks">Places of the ends, ascending.</param>
    /// <param name="y">Height of the line.</param>
    /// <param name="from">Height at which the extension lines start.</param>
    /// <param name="space">Space that is not taken yet.</param>
    /// <param name="words">Adds words to the value of a part; null for the value alone.</param>
    public static void Chain(Canvas canvas, IReadOnlyList<double> marks, double y, double from, LabelSpace space, Func<int, string?>? words = null)
    {
        canvas.Line(marks[0], y, marks[^1], y, Stroke.Thin);
        foreach (var x in marks)
        {
            canvas.Line(x, from, x, y + Tick, Stroke.Light);
            canvas.Line(x - Tick, y + Tick, x + Tick, y - Tick, Stroke.Normal);
        }

        // Wide parts first: their text stands in its own place.
        foreach (var i in Enumerable.Range(0, marks.Count - 1).OrderByDescending(i => marks[i + 1] - marks[i]))
        {
            var length = marks[i + 1] - marks[i];
            if (length >= 0.05)
            {
                Value(canvas, marks[i], length, y, space, words?.Invoke(i));
            }
        }
    }

    /// <summary>A dimension along an upright line.</summary>
    /// <param name="canvas">Takes the marks.</param>
    /// <param name="x">Place of the line.</param>
    /// <param name="top">Upper end.</param>
    /// <param name="bottom">Lower end.</param>
    /// <param name="to">Where the extension lines end.</param>
    public static void Upright(Canvas canvas, double x, double top, double bottom, double to)
    {
        canvas.Line(x, top, x, bottom, Stroke.Thin);
        foreach (var y in (ReadOnlySpan<double>)[top, bottom])
        {
            canvas.Line(x - Tick, y, to, y, Stroke.Light);
            canvas.Line(x - Tick, y + Tick, x + Tick, y - Tick, Stroke.Normal);
        }

        canvas.Text(x - 8, (top + bottom) / 2, Invariant($"{bottom - top:0.#}"), TypeSize.Small, Anchor.Middle, isUpright: true);
    }

    private static void Value(Canvas canvas, double start, double length, double y, LabelSpace space, string? words)
    {
        var type = TypeSize.Small;
        var value = Invariant($"{length:0.#}");
        var whole = words is null ? value : $"{words} {value}";
        var text = type.Width(whole) <= length - 4 ? whole : value;
        var width = type.Width(text);
        var middle = start + (length / 2);
        var row = new Area(middle - (width / 2), y - type.Size - 3, width, type.Size);
        var place = space.TakeFirst(Choices(row, y));
        if (place is not { } free)
        {
            return;
        }

        if (free != row)
        {
            canvas.Line(middle, y, free.MiddleX, free.Y > y ? free.Y + 2 : free.Bottom, Stroke.Light);
        }

        canvas.Text(free.X, Text.Baseline(free.MiddleY, type.Size), text, type);
    }

    private static IEnumerable<Area> Choices(Area row, double y)
    {
        yield return row;
        for (var level = 0; level < 3; level++)
        {
            for (var shift = 0; shift < 4; shift++)
            {
                foreach (var side in new[] { -1, 1 })
                {
                    yield return row with { X = row.X + (side * shift * 14), Y = y + 5 + (level * row.Height) };
                }
            }
        }
    }
}
