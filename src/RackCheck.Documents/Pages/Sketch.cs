using RackCheck.Documents.Drawings;

namespace RackCheck.Documents.Pages;

/// <summary>Draws sections through a cabinet, front on the left, to explain dimensions.</summary>
internal sealed class Sketch
{
    /// <summary>Outer front face of the cabinet.</summary>
    public const double Front = 200;

    /// <summary>Depth of the front door: wider than in life, so that it is seen.</summary>
    public const double FrontDoor = 50;

    /// <summary>Depth of the rear door.</summary>
    public const double RearDoor = 40;

    /// <summary>Outer rear face of the cabinet.</summary>
    public const double Rear = 1140;

    /// <summary>Front mounting plane.</summary>
    public const double FrontPlane = 390;

    /// <summary>Rear mounting plane.</summary>
    public const double RearPlane = 960;

    /// <summary>Upper edge of the section.</summary>
    public const double Top = 110;

    /// <summary>Lower edge of the section.</summary>
    public const double Bottom = 430;

    /// <summary>Upper edge of the item.</summary>
    public const double ItemTop = 190;

    /// <summary>Lower edge of the item.</summary>
    public const double ItemBottom = 340;

    private const double Width = 1340;
    private const double Tick = 11;
    private const double UprightWidth = 34;
    private static readonly TypeSize Label = new(36);
    private static readonly TypeSize Name = new(38, true);

    /// <summary>Takes the marks.</summary>
    public Canvas Canvas { get; } = new();

    /// <summary>Draws the cabinet with its doors.</summary>
    /// <returns>This sketch.</returns>
    public Sketch Cabinet()
    {
        Canvas.Box(new Area(Front, Top, FrontDoor, Bottom - Top), Stroke.Normal, Fill.Shade);
        Canvas.Box(new Area(Rear - RearDoor, Top, RearDoor, Bottom - Top), Stroke.Normal, Fill.Shade);
        Canvas.Box(new Area(Front, Top, Rear - Front, Bottom - Top), Stroke.Thick);
        Canvas.Text(Front, Top - 24, "front door", Label);
        Canvas.Text(Rear, Top - 24, "rear door", Label, Anchor.End);
        return this;
    }

    /// <summary>Draws the uprights; the mounting planes are their outer faces.</summary>
    /// <returns>This sketch.</returns>
    public Sketch Uprights()
    {
        Canvas.Box(new Area(FrontPlane, Top, UprightWidth, Bottom - Top), Stroke.Thin, Fill.Soft);
        Canvas.Box(new Area(RearPlane - UprightWidth, Top, UprightWidth, Bottom - Top), Stroke.Thin, Fill.Soft);
        Canvas.Line(FrontPlane, Top, FrontPlane, Bottom, Stroke.Normal);
        Canvas.Line(RearPlane, Top, RearPlane, Bottom, Stroke.Normal);
        return this;
    }

    /// <summary>Draws an item on the front uprights: panel, handle, body and what plugs in behind it.</summary>
    /// <param name="body">Depth of the body.</param>
    /// <param name="front">Front projection.</param>
    /// <param name="rear">Rear projection.</param>
    /// <param name="drawnOut">How far it is drawn out.</param>
    /// <returns>This sketch.</returns>
    public Sketch Item(double body, double front, double rear, double drawnOut = 0)
    {
        var plane = FrontPlane - drawnOut;
        Canvas.Box(new Area(plane - front, ItemTop + 45, front, 60), Stroke.Normal, Fill.Paper);
        Canvas.Box(new Area(plane, ItemTop, body, ItemBottom - ItemTop), Stroke.Normal, Fill.Paper);
        Canvas.Box(new Area(plane - 12, ItemTop - 14, 12, ItemBottom - ItemTop + 28), Stroke.Normal, Fill.Ink);
        Canvas.Outline(
            FormattableString.Invariant($"M{plane + body} {ItemTop + 55}h{rear - 15}v60h{15 - rear}"), Stroke.Hidden);
        Canvas.Text(plane + (body / 2), Text.Baseline((ItemTop + ItemBottom) / 2, Name.Size), "item", Name, Anchor.Middle);
        return this;
    }

    /// <summary>Draws a dimension along a level line, its name above it.</summary>
    /// <param name="from">Left end.</param>
    /// <param name="to">Right end.</param>
    /// <param name="y">Height of the line.</param>
    /// <param name="name">Name of the dimension.</param>
    /// <param name="start">Where the extension lines start.</param>
    /// <returns>This sketch.</returns>
    public Sketch Level(double from, double to, double y, string name, double start = Bottom)
    {
        foreach (var x in (ReadOnlySpan<double>)[from, to])
        {
            Canvas.Line(x, start, x, y + Tick, Stroke.Light);
            Canvas.Line(x - Tick, y + Tick, x + Tick, y - Tick, Stroke.Normal);
        }

        Canvas.Line(from, y, to, y, Stroke.Normal);
        var isNarrow = Name.Width(name) > to - from;
        Canvas.Text(isNarrow ? to + 16 : (from + to) / 2, isNarrow ? y + 12 : y - 12, name, Name, isNarrow ? Anchor.Start : Anchor.Middle);
        return this;
    }

    /// <summary>Draws a dimension along an upright line, its name on its left.</summary>
    /// <param name="top">Upper end.</param>
    /// <param name="bottom">Lower end.</param>
    /// <param name="x">Place of the line.</param>
    /// <param name="name">Name of the dimension.</param>
    /// <param name="start">Where the extension lines start.</param>
    /// <returns>This sketch.</returns>
    public Sketch Upright(double top, double bottom, double x, string name, double start)
    {
        foreach (var y in (ReadOnlySpan<double>)[top, bottom])
        {
            Canvas.Line(x - Tick, y, start, y, Stroke.Light);
            Canvas.Line(x - Tick, y + Tick, x + Tick, y - Tick, Stroke.Normal);
        }

        Canvas.Line(x, top, x, bottom, Stroke.Normal);
        Canvas.Text(x - 18, Text.Baseline((top + bottom) / 2, Name.Size), name, Name, Anchor.End);
        return this;
    }

    /// <summary>Writes a note.</summary>
    /// <param name="x">Its anchor.</param>
    /// <param name="y">Its base line.</param>
    /// <param name="words">The note.</param>
    /// <param name="anchor">What the anchor is of the note.</param>
    /// <returns>This sketch.</returns>
    public Sketch Note(double x, double y, string words, Anchor anchor = Anchor.Middle)
    {
        Canvas.Text(x, y, words, Label, anchor);
        return this;
    }

    /// <summary>The drawing.</summary>
    /// <param name="title">Its title.</param>
    /// <param name="description">What it shows.</param>
    /// <param name="height">Its height.</param>
    public Drawing Draw(string title, string description, double height) => new(Width, height, title, description, Canvas.Marks);
}
