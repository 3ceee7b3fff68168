namespace RackCheck.Documents.Drawings;

/// <summary>Collects the marks of a drawing.</summary>
public sealed class Canvas
{
    private readonly List<Mark> marks = [];

    /// <summary>The marks so far, from back to front.</summary>
    public IReadOnlyList<Mark> Marks => marks;

    /// <summary>Adds a line.</summary>
    /// <param name="x1">Start.</param>
    /// <param name="y1">Start.</param>
    /// <param name="x2">End.</param>
    /// <param name="y2">End.</param>
    /// <param name="stroke">How it is drawn.</param>
    public void Line(double x1, double y1, double x2, double y2, Stroke stroke = Stroke.Thin) => marks.Add(new Line(x1, y1, x2, y2, stroke));

    /// <summary>Adds a rectangle.</summary>
    /// <param name="area">Where it is.</param>
    /// <param name="stroke">Its outline.</param>
    /// <param name="fill">Its face.</param>
    public void Box(Area area, Stroke stroke, Fill fill = Fill.None) => marks.Add(new Box(area, stroke, fill));

    /// <summary>Adds a circle.</summary>
    /// <param name="x">Centre.</param>
    /// <param name="y">Centre.</param>
    /// <param name="radius">Radius.</param>
    /// <param name="stroke">Its outline.</param>
    /// <param name="fill">Its face.</param>
    public void Disc(double x, double y, double radius, Stroke stroke, Fill fill = Fill.None) => marks.Add(new Disc(x, y, radius, stroke, fill));

    /// <summary>Adds a path.</summary>
    /// <param name="data">The path in the notation of SVG.</param>
    /// <param name="stroke">Its outline.</param>
    /// <param name="fill">Its face.</param>
    public void Outline(string data, Stroke stroke, Fill fill = Fill.None) => marks.Add(new Outline(data, stroke, fill));

    /// <summary>Adds a line of text. Nothing is added for an empty text.</summary>
    /// <param name="x">Its anchor.</param>
    /// <param name="y">Its base line.</param>
    /// <param name="words">The text; it is cleaned.</param>
    /// <param name="type">Its height and weight.</param>
    /// <param name="anchor">What the anchor is of the text.</param>
    /// <param name="tone">Its colour.</param>
    /// <param name="isUpright">Whether it runs from the bottom upwards.</param>
    /// <param name="within">Width that it must keep to: it is cut with an ellipsis.</param>
    /// <returns>Its width.</returns>
    public double Text(
        double x, double y, string words, TypeSize type, Anchor anchor = Anchor.Start, Tone tone = Tone.Ink, bool isUpright = false, double? within = null)
    {
        // A font of the viewer may be wider by this much.
        const double Wider = 1.12;
        words = TextFit.Clean(words);
        var cut = within is { } most ? TextFit.Cut(words, most, type.Size, type.IsBold) : words;
        if (cut.Length == 0)
        {
            return 0;
        }

        var width = DrawingFont.Width(cut, type.Size, type.IsBold);
        marks.Add(new Text(x, y, cut, type.Size, width, anchor, tone, type.IsBold, isUpright, within is { } room && width * Wider > room));
        return width;
    }

    /// <summary>Adds a mark.</summary>
    /// <param name="mark">The mark.</param>
    public void Add(Mark mark) => marks.Add(mark);

    /// <summary>Adds a group.</summary>
    /// <param name="name">What it shows; null for nothing to say.</param>
    /// <param name="data">Data for programs, by name.</param>
    /// <param name="draw">Draws its marks.</param>
    public void Group(string? name, IReadOnlyList<(string Name, string Value)> data, Action<Canvas> draw)
    {
        var inner = new Canvas();
        draw(inner);
        marks.Add(new Group(name, data, inner.marks));
    }
}

/// <summary>Height and weight of text on a sheet.</summary>
/// <param name="Size">Height of the font.</param>
/// <param name="IsBold">Whether it is bold.</param>
public readonly record struct TypeSize(double Size, bool IsBold = false)
{
    /// <summary>U numbers and letters of feeds.</summary>
    public static readonly TypeSize Mark = new(19);

    /// <summary>Second lines, dimensions.</summary>
    public static readonly TypeSize Small = new(22);

    /// <summary>Second lines, emphasised.</summary>
    public static readonly TypeSize SmallBold = new(22, true);

    /// <summary>Text.</summary>
    public static readonly TypeSize Body = new(25);

    /// <summary>Names.</summary>
    public static readonly TypeSize Bold = new(25, true);

    /// <summary>Captions of views and lists.</summary>
    public static readonly TypeSize Head = new(32, true);

    /// <summary>Title of the sheet.</summary>
    public static readonly TypeSize Title = new(46, true);

    /// <summary>Distance from line to line.</summary>
    public double Leading => 1.28 * Size;

    /// <summary>Width of a text.</summary>
    /// <param name="words">The text.</param>
    public double Width(string words) => DrawingFont.Width(TextFit.Clean(words), Size, IsBold);
}
