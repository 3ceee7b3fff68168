using System.Runtime.InteropServices;
using System.Text;
using HarfBuzzSharp;
using SkiaSharp;

namespace RackCheck.Documents.Drawings;

/// <summary>
/// Draws a line of text on a canvas of Skia. Letters that join or run from right to left are shaped by HarfBuzz. A character that the font lacks is drawn
/// as an empty box, as wide as the text was measured.
/// </summary>
internal static class TextPainter
{
    private static readonly Lazy<Font> Plain = new(() => Shaper(false));
    private static readonly Lazy<Font> Strong = new(() => Shaper(true));

    // The library keeps pointers to these as long as the process runs.
    private static readonly List<IDisposable> Kept = [];

    /// <summary>Draws a text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="x">Its left end.</param>
    /// <param name="y">Its base line.</param>
    /// <param name="canvas">The canvas.</param>
    /// <param name="paint">Its colour.</param>
    public static void Draw(Text text, float x, float y, SKCanvas canvas, SKPaint paint)
    {
        using var font = new SKFont(DrawingFont.Typeface(text.IsBold), (float)text.Size)
        {
            Hinting = SKFontHinting.None, Subpixel = true, Edging = SKFontEdging.Antialias,
        };
        if (IsPlain(text.Words))
        {
            canvas.DrawText(text.Words, x, y, SKTextAlign.Left, font, paint);
            return;
        }

        foreach (var (words, isRightToLeft) in Bidi.Runs(Visible(text.Words)))
        {
            x += DrawRun(words, isRightToLeft, text, x, y, canvas, font, paint);
        }
    }

    private static bool IsPlain(string words)
    {
        foreach (var letter in words)
        {
            if (letter is >= '\u0300' and not ('\u2026' or '\u00B7'))
            {
                return false;
            }
        }

        return true;
    }

    private static string Visible(string words) => string.Concat(words.Where(letter => !DrawingFont.IsMark(letter)));

    // The parts of a run that the font has, and those that it lacks.
    private static float DrawRun(string words, bool isRightToLeft, Text text, float x, float y, SKCanvas canvas, SKFont font, SKPaint paint)
    {
        var parts = new List<(string Words, bool IsKnown)>();
        var part = new StringBuilder();
        var isKnown = true;
        foreach (var rune in words.EnumerateRunes())
        {
            var has = DrawingFont.Has(rune);
            if (has != isKnown && part.Length > 0)
            {
                parts.Add((part.ToString(), isKnown));
                part.Clear();
            }

            isKnown = has;
            part.Append(rune);
        }

        parts.Add((part.ToString(), isKnown));
        if (isRightToLeft)
        {
            parts.Reverse();
        }

        var start = x;
        foreach (var (letters, known) in parts.Where(p => p.Words.Length > 0))
        {
            x += known
                ? DrawShaped(letters, isRightToLeft, text, x, y, canvas, font, paint)
                : DrawMissing(letters, text.Size, x, y, canvas, font, paint);
        }

        return x - start;
    }

    private static float DrawShaped(string words, bool isRightToLeft, Text text, float x, float y, SKCanvas canvas, SKFont font, SKPaint paint)
    {
        using var buffer = new HarfBuzzSharp.Buffer();
        buffer.AddUtf16(words);
        buffer.GuessSegmentProperties();
        buffer.Direction = isRightToLeft ? Direction.RightToLeft : Direction.LeftToRight;
        var shaper = (text.IsBold ? Strong : Plain).Value;
        lock (shaper)
        {
            shaper.Shape(buffer);
        }

        var (infos, positions) = (buffer.GlyphInfos, buffer.GlyphPositions);
        if (infos.Length == 0)
        {
            return 0;
        }

        var scale = (float)(text.Size / font.Typeface.UnitsPerEm);
        var glyphs = new ushort[infos.Length];
        var places = new SKPoint[infos.Length];
        var clusters = new uint[infos.Length];
        var pen = 0f;
        for (var i = 0; i < infos.Length; i++)
        {
            glyphs[i] = (ushort)infos[i].Codepoint;
            places[i] = new SKPoint(x + pen + (scale * positions[i].XOffset), y - (scale * positions[i].YOffset));
            pen += scale * positions[i].XAdvance;
            clusters[i] = (uint)Encoding.UTF8.GetByteCount(words.AsSpan(0, (int)infos[i].Cluster));
        }

        DrawGlyphs(words, glyphs, places, clusters, canvas, font, paint);
        return pen;
    }

    // With the text that the glyphs stand for, so that a PDF can be searched.
    private static void DrawGlyphs(string words, ushort[] glyphs, SKPoint[] places, uint[] clusters, SKCanvas canvas, SKFont font, SKPaint paint)
    {
        var text = Encoding.UTF8.GetBytes(words);
        using var builder = new SKTextBlobBuilder();
        var run = builder.AllocatePositionedTextRun(font, glyphs.Length, text.Length);
        run.SetGlyphs(glyphs);
        run.SetPositions(places);
        run.SetText(text);
        run.SetClusters(clusters);
        using var blob = builder.Build();
        canvas.DrawText(blob, 0, 0, paint);
    }

    // An empty box for each character, as wide as the text was measured.
    private static float DrawMissing(string words, double size, float x, float y, SKCanvas canvas, SKFont font, SKPaint paint)
    {
        const int EmptyBox = 0x25A1;
        var start = x;
        var shown = words.EnumerateRunes().Where(r => DrawingFont.Width(r.ToString(), size) > 0).ToArray();
        var (places, clusters) = (new SKPoint[shown.Length], new uint[shown.Length]);
        uint at = 0;
        for (var i = 0; i < shown.Length; i++)
        {
            (places[i], clusters[i]) = (new SKPoint(x, y), at);
            x += (float)DrawingFont.Width(shown[i].ToString(), size);
            at += (uint)shown[i].Utf8SequenceLength;
        }

        if (shown.Length > 0)
        {
            var glyphs = new ushort[shown.Length];
            Array.Fill(glyphs, font.GetGlyph(EmptyBox));
            DrawGlyphs(string.Concat(shown), glyphs, places, clusters, canvas, font, paint);
        }

        return x - start;
    }

    private static Font Shaper(bool isBold)
    {
        var file = DrawingFont.File(isBold);
        var blob = new Blob(Marshal.UnsafeAddrOfPinnedArrayElement(file, 0), file.Length, MemoryMode.ReadOnly);
        var face = new Face(blob, 0);
        lock (Kept)
        {
            Kept.Add(blob);
            Kept.Add(face);
        }

        var font = new Font(face);
        font.SetFunctionsOpenType();
        font.SetScale(face.UnitsPerEm, face.UnitsPerEm);
        return font;
    }
}
