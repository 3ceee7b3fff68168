using System.Buffers;
using System.Text;
using System.Xml;

namespace RackCheck.Documents.Drawings;

/// <summary>Writes a drawing as SVG: no script, nothing from elsewhere, the same bytes for the same drawing.</summary>
public static class SvgWriter
{
    private static readonly (Stroke Stroke, string Class)[] Strokes = [.. Enum.GetValues<Stroke>().Select(s => (s, "rk" + s.ToString().ToLowerInvariant()))];

    /// <summary>The style sheet of every drawing. Colours turn with the viewer's preference, except in print.</summary>
    public static string Style { get; } = MakeStyle(isDark: true);

    /// <summary>The same without the colours for dark surroundings.</summary>
    public static string LightStyle { get; } = MakeStyle(isDark: false);

    // Drawings are longer than what the garbage collector takes for small, so each thread keeps the buffer of its last one.
    private const int FirstLetters = 128 * 1024;
    private const int MostLettersKept = 1024 * 1024;

    [ThreadStatic]
    private static StringBuilder? kept;

    /// <summary>Writes a drawing.</summary>
    /// <param name="drawing">The drawing.</param>
    /// <returns>A document, UTF-8, without a byte order mark.</returns>
    public static byte[] Document(Drawing drawing)
    {
        var bytes = new ArrayBufferWriter<byte>();
        Document(drawing, bytes);
        return bytes.WrittenSpan.ToArray();
    }

    /// <summary>Writes a drawing.</summary>
    /// <param name="drawing">The drawing.</param>
    /// <param name="bytes">Where to: a document, UTF-8, without a byte order mark.</param>
    /// <param name="isLight">Whether it stays light where the viewer prefers dark.</param>
    public static void Document(Drawing drawing, IBufferWriter<byte> bytes, bool isLight = false)
    {
        var text = (kept ??= new StringBuilder(FirstLetters)).Clear();
        text.Append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        Write(drawing, text, isLight ? LightStyle : Style);
        var encoder = Encoding.UTF8.GetEncoder();
        foreach (var letters in text.GetChunks())
        {
            encoder.Convert(letters.Span, bytes, flush: false, out _, out _);
        }

        encoder.Convert([], bytes, flush: true, out _, out _);
        kept = text.Capacity > MostLettersKept ? null : text;
    }

    /// <summary>Writes a drawing as an element, to stand in a page.</summary>
    /// <param name="drawing">The drawing.</param>
    /// <returns>The element <c>svg</c>.</returns>
    public static string Element(Drawing drawing)
    {
        var text = new StringBuilder(64 * 1024);
        Write(drawing, text, Style);
        return text.ToString();
    }

    private static void Write(Drawing drawing, StringBuilder text, string style)
    {
        text.Append("<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" class=\"rk\" width=\"").Number(drawing.Width / Drawing.Scale)
            .Append("mm\" height=\"").Number(drawing.Height / Drawing.Scale).Append("mm\" viewBox=\"0 0 ").Number(drawing.Width).Append(' ')
            .Number(drawing.Height).Append("\">\n<title>").Escaped(drawing.Title).Append("</title>\n<desc>").Escaped(drawing.Description)
            .Append("</desc>\n<style>").Append(style).Append("</style>\n<rect class=\"rkPaper\" width=\"").Number(drawing.Width).Append("\" height=\"")
            .Number(drawing.Height).Append("\"/>\n");
        foreach (var mark in drawing.Marks)
        {
            Write(mark, text);
        }

        text.Append("</svg>\n");
    }

    private static void Write(Mark mark, StringBuilder text)
    {
        switch (mark)
        {
            case Line line:
                text.Append("<line x1=\"").Number(line.X1).Append("\" y1=\"").Number(line.Y1).Append("\" x2=\"").Number(line.X2).Append("\" y2=\"")
                    .Number(line.Y2).Append('"').Look(line.Stroke, Fill.None).Append("/>\n");
                break;
            case Box { Area: var area } box:
                text.Append("<rect x=\"").Number(area.X).Append("\" y=\"").Number(area.Y).Append("\" width=\"").Number(area.Width).Append("\" height=\"")
                    .Number(area.Height).Append('"').Look(box.Stroke, box.Fill).Append("/>\n");
                break;
            case Disc disc:
                text.Append("<circle cx=\"").Number(disc.X).Append("\" cy=\"").Number(disc.Y).Append("\" r=\"").Number(disc.Radius).Append('"')
                    .Look(disc.Stroke, disc.Fill).Append("/>\n");
                break;
            case Outline outline:
                text.Append("<path d=\"").Append(outline.Data).Append('"').Look(outline.Stroke, outline.Fill).Append("/>\n");
                break;
            case Text words:
                Write(words, text);
                break;
            case Group group:
                Write(group, text);
                break;
        }
    }

    private static void Write(Group group, StringBuilder text)
    {
        text.Append("<g");
        foreach (var (name, value) in group.Data)
        {
            text.Append(' ').Append(name).Append("=\"").Data(value).Append('"');
        }

        text.Append(">\n");
        if (group.Name is { } title)
        {
            text.Append("<title>").Escaped(TextFit.Clean(title)).Append("</title>\n");
        }

        foreach (var mark in group.Marks)
        {
            Write(mark, text);
        }

        text.Append("</g>\n");
    }

    private static void Write(Text words, StringBuilder text)
    {
        text.Append("<text x=\"").Number(words.X).Append("\" y=\"").Number(words.Y).Append("\" font-size=\"").Number(words.Size).Append('"');
        text.Append(words.Anchor switch { Anchor.Start => "", Anchor.Middle => " text-anchor=\"middle\"", _ => " text-anchor=\"end\"" });
        text.Append(words.Tone switch { Tone.Ink => "", Tone.Light => " class=\"rkFaint\"", _ => " class=\"rkOnInk\"" });
        if (words.IsBold)
        {
            text.Append(" font-weight=\"700\"");
        }

        if (words.IsUpright)
        {
            text.Append(" transform=\"rotate(-90 ").Number(words.X).Append(' ').Number(words.Y).Append(")\"");
        }

        if (words.IsTight)
        {
            text.Append(" textLength=\"").Number(words.Width).Append("\" lengthAdjust=\"spacingAndGlyphs\"");
        }

        text.Append('>').Escaped(words.Words).Append("</text>\n");
    }

    private static StringBuilder Look(this StringBuilder text, Stroke stroke, Fill fill)
    {
        text.Append(" class=\"").Append(Strokes[(int)stroke].Class);
        return text.Append(fill switch
        {
            Fill.None => "\"",
            Fill.Paper => " rkPaper\"",
            Fill.Soft => " rkSoft\"",
            Fill.Shade => " rkShade\"",
            _ => " rkInk\"",
        });
    }

    private static StringBuilder Escaped(this StringBuilder text, string words)
    {
        foreach (var letter in words)
        {
            text.Escaped(letter);
        }

        return text;
    }

    private static StringBuilder Escaped(this StringBuilder text, char letter) => letter switch
    {
        '&' => text.Append("&amp;"),
        '<' => text.Append("&lt;"),
        '>' => text.Append("&gt;"),
        '"' => text.Append("&quot;"),
        _ => text.Append(letter),
    };

    // Programs find an item by its id as given, and nobody sees it: all letters that XML 1.0 has stay, white space too, which a reader would make blanks.
    private static StringBuilder Data(this StringBuilder text, string value)
    {
        for (var i = 0; i < value.Length; i++)
        {
            if (i + 1 < value.Length && char.IsSurrogatePair(value[i], value[i + 1]))
            {
                text.Append(value, i++, 2);
                continue;
            }

            _ = value[i] switch
            {
                '\t' => text.Append("&#9;"),
                '\n' => text.Append("&#10;"),
                '\r' => text.Append("&#13;"),
                var letter => text.Escaped(XmlConvert.IsXmlChar(letter) ? letter : '\uFFFD'),
            };
        }

        return text;
    }

    private static string MakeStyle(bool isDark)
    {
        var style = new StringBuilder("\n.rk{background:").Append(Ink.Light.Paper)
            .Append("}.rk text{font-family:").Append(DrawingFont.Families).Append(";unicode-bidi:isolate;white-space:pre}\n")
            .Append(".rk line,.rk rect,.rk circle,.rk path{fill:none;stroke:none}\n");
        foreach (var (stroke, name) in Strokes.Where(s => s.Stroke != Stroke.None))
        {
            style.Append(".rk .").Append(name).Append("{stroke-width:").Number(Ink.Weight(stroke));
            if (Ink.Dashes(stroke) is { Length: > 0 } dashes)
            {
                style.Append(";stroke-dasharray:").AppendJoin(' ', dashes);
            }

            style.Append("}\n");
        }

        AddColours(style, Ink.Light);
        if (!isDark)
        {
            return style.ToString();
        }

        style.Append("@media screen and (prefers-color-scheme:dark){\n.rk{background:").Append(Ink.Dark.Paper).Append("}\n");
        AddColours(style, Ink.Dark);
        return style.Append("}\n").ToString();
    }

    private static void AddColours(StringBuilder style, Palette palette)
    {
        style.Append(".rk text{fill:").Append(palette.Line).Append("}.rk .rkFaint{fill:").Append(palette.Faint).Append("}.rk .rkOnInk{fill:")
            .Append(palette.Paper).Append("}\n");
        foreach (var (stroke, name) in Strokes.Where(s => s.Stroke != Stroke.None))
        {
            style.Append(".rk .").Append(name).Append("{stroke:").Append(palette.Of(stroke)).Append('}');
        }

        style.Append('\n');
        foreach (var fill in (ReadOnlySpan<Fill>)[Fill.Paper, Fill.Soft, Fill.Shade, Fill.Ink])
        {
            style.Append(".rk .rk").Append(fill).Append("{fill:").Append(palette.Of(fill)).Append('}');
        }

        style.Append('\n');
    }
}
