namespace RackCheck.Documents.Drawings;

/// <summary>A drawing sheet: marks in millimetres of what is drawn, y downwards, ten of them to a millimetre of the sheet.</summary>
/// <param name="Width">Width of the sheet.</param>
/// <param name="Height">Height of the sheet.</param>
/// <param name="Title">Title, for who cannot see it.</param>
/// <param name="Description">What it shows, in a sentence or two.</param>
/// <param name="Marks">The marks, from back to front.</param>
public sealed record Drawing(double Width, double Height, string Title, string Description, IReadOnlyList<Mark> Marks)
{
    /// <summary>Denominator of the scale: a millimetre of the sheet is this many of what is drawn.</summary>
    public const double Scale = 10;

    /// <summary>All marks without their groups, from back to front.</summary>
    public IEnumerable<Mark> Flat => Flatten(Marks);

    private static IEnumerable<Mark> Flatten(IEnumerable<Mark> marks) => marks.SelectMany(m => m is Group group ? Flatten(group.Marks) : [m]);
}

/// <summary>A mark of a drawing.</summary>
public abstract record Mark;

/// <summary>A straight line.</summary>
/// <param name="X1">Start.</param>
/// <param name="Y1">Start.</param>
/// <param name="X2">End.</param>
/// <param name="Y2">End.</param>
/// <param name="Stroke">How it is drawn.</param>
public sealed record Line(double X1, double Y1, double X2, double Y2, Stroke Stroke) : Mark;

/// <summary>A rectangle.</summary>
/// <param name="Area">Where it is.</param>
/// <param name="Stroke">Its outline.</param>
/// <param name="Fill">Its face.</param>
public sealed record Box(Area Area, Stroke Stroke, Fill Fill = Fill.None) : Mark;

/// <summary>A circle.</summary>
/// <param name="X">Centre.</param>
/// <param name="Y">Centre.</param>
/// <param name="Radius">Radius.</param>
/// <param name="Stroke">Its outline.</param>
/// <param name="Fill">Its face.</param>
public sealed record Disc(double X, double Y, double Radius, Stroke Stroke, Fill Fill = Fill.None) : Mark;

/// <summary>A path in the notation of SVG.</summary>
/// <param name="Data">Commands M, L, h, v, H, V, A, Z.</param>
/// <param name="Stroke">Its outline.</param>
/// <param name="Fill">Its face.</param>
public sealed record Outline(string Data, Stroke Stroke, Fill Fill = Fill.None) : Mark;

/// <summary>A line of text.</summary>
/// <param name="X">Its anchor.</param>
/// <param name="Y">Its base line.</param>
/// <param name="Words">The text, as <see cref="TextFit.Clean"/> leaves it.</param>
/// <param name="Size">Height of the font.</param>
/// <param name="Width">Its width with the font that ships.</param>
/// <param name="Anchor">What the anchor is of the text.</param>
/// <param name="Tone">Its colour.</param>
/// <param name="IsBold">Whether it is bold.</param>
/// <param name="IsUpright">Whether it runs from the bottom upwards.</param>
/// <param name="IsTight">Whether another font must keep to the width.</param>
public sealed record Text(
    double X, double Y, string Words, double Size, double Width, Anchor Anchor, Tone Tone, bool IsBold, bool IsUpright, bool IsTight) : Mark
{
    private const double Ascent = 0.76;
    private const double Descent = 0.24;

    /// <summary>What the text takes up.</summary>
    public Area Area
    {
        get
        {
            var before = Anchor switch { Anchor.Start => 0, Anchor.Middle => Width / 2, _ => Width };
            return IsUpright
                ? new Area(X - (Ascent * Size), Y - (Width - before), (Ascent + Descent) * Size, Width)
                : new Area(X - before, Y - (Ascent * Size), Width, (Ascent + Descent) * Size);
        }
    }

    /// <summary>The base line of text whose middle is at a height.</summary>
    /// <param name="middle">The height.</param>
    /// <param name="size">Height of the font.</param>
    public static double Baseline(double middle, double size) => middle + ((Ascent - Descent) / 2 * size);
}

/// <summary>Marks that belong together.</summary>
/// <param name="Name">What they show, for who points at them; null for nothing to say.</param>
/// <param name="Data">Data for programs, by name.</param>
/// <param name="Marks">The marks, from back to front.</param>
public sealed record Group(string? Name, IReadOnlyList<(string Name, string Value)> Data, IReadOnlyList<Mark> Marks) : Mark;

/// <summary>A rectangle, by its upper left corner.</summary>
/// <param name="X">Left edge.</param>
/// <param name="Y">Upper edge.</param>
/// <param name="Width">Width.</param>
/// <param name="Height">Height.</param>
public readonly record struct Area(double X, double Y, double Width, double Height)
{
    /// <summary>Right edge.</summary>
    public double Right => X + Width;

    /// <summary>Lower edge.</summary>
    public double Bottom => Y + Height;

    /// <summary>Middle from left to right.</summary>
    public double MiddleX => X + (Width / 2);

    /// <summary>Middle from top to bottom.</summary>
    public double MiddleY => Y + (Height / 2);

    /// <summary>Whether two rectangles share more than an edge.</summary>
    /// <param name="other">The other rectangle.</param>
    public bool Overlaps(in Area other)
    {
        const double Touch = 0.01;
        return X < other.Right - Touch && other.X < Right - Touch && Y < other.Bottom - Touch && other.Y < Bottom - Touch;
    }

    /// <summary>The rectangle without a margin.</summary>
    /// <param name="left">Margin on the left.</param>
    /// <param name="right">Margin on the right.</param>
    public Area Inside(double left, double right) => this with { X = X + left, Width = Math.Max(0, Width - left - right) };
}

/// <summary>How a line is drawn: weight and dashes, constant on the sheet.</summary>
public enum Stroke
{
    /// <summary>Not at all.</summary>
    None,

    /// <summary>Outline of a cabinet.</summary>
    Thick,

    /// <summary>Outline of equipment.</summary>
    Normal,

    /// <summary>Dimensions, leaders, hatching.</summary>
    Thin,

    /// <summary>Hidden edges: thin dashes.</summary>
    Hidden,

    /// <summary>Background: a light line.</summary>
    Light,

    /// <summary>The holes of an upright: squares at their distances, from the lower edge of U1 upwards.</summary>
    Holes,

    /// <summary>Cords of the first feed: a full line.</summary>
    CordA,

    /// <summary>Cords of the second feed: dashes.</summary>
    CordB,

    /// <summary>Cords of the third feed: dots.</summary>
    CordC,

    /// <summary>Cords of the fourth feed: dashes and dots.</summary>
    CordD,

    /// <summary>Cords of the fifth feed: a heavy line.</summary>
    CordE,

    /// <summary>Cords of the sixth feed: heavy dashes.</summary>
    CordF,

    /// <summary>Cords of the seventh feed: heavy dots.</summary>
    CordG,

    /// <summary>Cords of the eighth feed: heavy dashes and dots.</summary>
    CordH,

    /// <summary>Cords that a UPS feeds: long dashes and two dots.</summary>
    CordUps,
}

/// <summary>The face of a shape.</summary>
public enum Fill
{
    /// <summary>See-through.</summary>
    None,

    /// <summary>The colour of the sheet.</summary>
    Paper,

    /// <summary>A light tint.</summary>
    Soft,

    /// <summary>A tint.</summary>
    Shade,

    /// <summary>The colour of the lines.</summary>
    Ink,
}

/// <summary>The colour of text.</summary>
public enum Tone
{
    /// <summary>That of the lines.</summary>
    Ink,

    /// <summary>A lighter one.</summary>
    Light,

    /// <summary>That of the sheet, on a dark face.</summary>
    Paper,
}

/// <summary>Which part of a text its anchor is.</summary>
public enum Anchor
{
    /// <summary>Its left end.</summary>
    Start,

    /// <summary>Its middle.</summary>
    Middle,

    /// <summary>Its right end.</summary>
    End,
}
