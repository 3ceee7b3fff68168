using System.Text;
using SkiaSharp;

namespace RackCheck.Documents.Drawings;

/// <summary>The font that ships with the service, and how wide its text is.</summary>
/// <remarks>
/// DejaVu Sans Condensed: Latin, Greek, Cyrillic, Hebrew and Arabic, no Chinese, Japanese or Korean. What it lacks counts as wide as it is high.
/// </remarks>
public static class DrawingFont
{
    /// <summary>Families of the text in SVG: the same font, then fonts that are no wider, then whatever the viewer has.</summary>
    public const string Families = "'DejaVu Sans Condensed','Liberation Sans',Arial,Helvetica,sans-serif";

    private const int Known = 0x3000;
    private const double Missing = 1;
    private static readonly Lazy<Face> Plain = new(() => new Face("DejaVuSansCondensed.ttf"));
    private static readonly Lazy<Face> Strong = new(() => new Face("DejaVuSansCondensed-Bold.ttf"));

    /// <summary>Width of a text.</summary>
    /// <param name="words">The text.</param>
    /// <param name="size">Height of the font.</param>
    /// <param name="isBold">Whether it is bold.</param>
    /// <returns>The width, in the unit of the height. Letters that join count with their width by themselves.</returns>
    public static double Width(string words, double size, bool isBold = false)
    {
        var advances = Of(isBold).Advances;
        var sum = 0.0;
        for (var i = 0; i < words.Length; i++)
        {
            var letter = words[i];
            sum += letter < Known ? advances[letter] : char.IsLowSurrogate(letter) || IsMark(letter) ? 0 : Missing;
        }

        return sum * size;
    }

    /// <summary>The typeface.</summary>
    /// <param name="isBold">Whether it is bold.</param>
    public static SKTypeface Typeface(bool isBold) => Of(isBold).Typeface;

    /// <summary>The file of the font.</summary>
    /// <param name="isBold">Whether it is bold.</param>
    /// <returns>The bytes; not to be changed.</returns>
    public static byte[] File(bool isBold) => Of(isBold).Bytes;

    /// <summary>Whether the font has a character.</summary>
    /// <param name="rune">The character.</param>
    public static bool Has(Rune rune) => Plain.Value.Has(rune);

    // Marks without width of their own: isolates, joiners and variation selectors.
    internal static bool IsMark(char letter) => letter is (>= '\u200B' and <= '\u200F') or (>= '\u2060' and <= '\u206F') or (>= '\uFE00' and <= '\uFE0F');

    private static Face Of(bool isBold) => (isBold ? Strong : Plain).Value;

    private sealed class Face
    {
        public Face(string file)
        {
            using var stream = typeof(DrawingFont).Assembly.GetManifestResourceStream("Fonts/" + file)!;

            // Pinned, since a shaper keeps a pointer into it.
            Bytes = GC.AllocateUninitializedArray<byte>((int)stream.Length, pinned: true);
            stream.ReadExactly(Bytes);
            using var data = SKData.CreateCopy(Bytes);
            Typeface = SKTypeface.FromData(data);
            Advances = Measure(Typeface);
        }

        public byte[] Bytes { get; }

        public SKTypeface Typeface { get; }

        public double[] Advances { get; }

        public bool Has(Rune rune)
        {
            using var font = new SKFont(Typeface);
            return font.ContainsGlyph(rune.Value);
        }

        private static double[] Measure(SKTypeface typeface)
        {
            var unit = typeface.UnitsPerEm;
            using var font = new SKFont(typeface, unit) { Hinting = SKFontHinting.None, Subpixel = true };
            var glyphs = new ushort[Known];
            font.GetGlyphs([.. Enumerable.Range(0, Known)], glyphs);
            var widths = font.GetGlyphWidths(glyphs);
            var advances = new double[Known];
            for (var i = 0; i < Known; i++)
            {
                advances[i] = IsMark((char)i) ? 0 : glyphs[i] == 0 ? Missing : widths[i] / (double)unit;
            }

            return advances;
        }
    }
}
