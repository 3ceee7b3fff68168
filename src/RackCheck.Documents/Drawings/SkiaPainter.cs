using System.Runtime.InteropServices;
using SkiaSharp;

namespace RackCheck.Documents.Drawings;

/// <summary>Draws a drawing on a canvas of Skia: a picture or the page of a PDF.</summary>
public static class SkiaPainter
{
    /// <summary>Draws a drawing with its upper left corner at the origin, a unit of the canvas for a millimetre of what is drawn.</summary>
    /// <param name="drawing">The drawing.</param>
    /// <param name="canvas">The canvas, with its scale set.</param>
    public static void Draw(Drawing drawing, SKCanvas canvas)
    {
        using var tools = new Tools();
        Draw(drawing, canvas, tools);
    }

    private static void Draw(Drawing drawing, SKCanvas canvas, Tools tools)
    {
        canvas.DrawRect(0, 0, (float)drawing.Width, (float)drawing.Height, tools.Face(Fill.Paper));
        foreach (var mark in drawing.Flat)
        {
            Draw(mark, canvas, tools);
        }
    }

    /// <summary>Draws a drawing as a PNG.</summary>
    /// <param name="drawing">The drawing.</param>
    /// <param name="width">Width of the picture, pixels.</param>
    /// <param name="mostPixels">Most pixels of the picture: a wider one is made smaller.</param>
    /// <returns>The file.</returns>
    public static byte[] Png(Drawing drawing, int width, long mostPixels)
    {
        var scale = Math.Min(width / drawing.Width, Math.Sqrt(mostPixels / (drawing.Width * drawing.Height)));
        var (columns, rows) = (Math.Max(1, (int)(drawing.Width * scale)), Math.Max(1, (int)(drawing.Height * scale)));
        using var picture = new SKBitmap(new SKImageInfo(columns, rows, SKColorType.Gray8, SKAlphaType.Opaque));
        using var tools = new Tools();
        var bandRows = Math.Clamp(BandPixels / columns, 1, rows);
        using var band = SKSurface.Create(new SKImageInfo(columns, bandRows, SKImageInfo.PlatformColorType, SKAlphaType.Opaque))
            ?? throw new InvalidOperationException("No surface for the picture.");
        for (var top = 0; top < rows; top += bandRows)
        {
            band.Canvas.ResetMatrix();
            band.Canvas.Translate(0, -top);
            band.Canvas.Scale((float)scale);
            Draw(drawing, band.Canvas, tools);
            CopyGray(band, picture, top);
        }

        using var pixels = picture.PeekPixels();
        var compression = (long)columns * rows > LargePixels ? LargeCompression : Compression;
        using var file = pixels.Encode(new SKPngEncoderOptions(SKPngEncoderFilterFlags.Sub, compression))
            ?? throw new InvalidOperationException("No file of the picture.");
        return file.ToArray();
    }

    // Skia fills colours three times as fast as greys, but they take four times the memory: a picture is drawn in colours band by band and kept in greys.
    private const int BandPixels = 8_000_000;

    // Pictures for a plotter: packed less, they take a third of the time.
    private const long LargePixels = 8_000_000;
    private const int LargeCompression = 1;
    private const int Compression = 4;

    // All colours of a light sheet are greys, so that any part of a colour is its grey.
    private static void CopyGray(SKSurface band, SKBitmap picture, int top)
    {
        using var drawn = band.PeekPixels() ?? throw new InvalidOperationException("No pixels of the picture.");
        var rows = Math.Min(drawn.Height, picture.Height - top);
        var gray = picture.GetPixelSpan();
        for (var row = 0; row < rows; row++)
        {
            var from = MemoryMarshal.Cast<byte, uint>(drawn.GetPixelSpan().Slice(row * drawn.RowBytes, 4 * drawn.Width));
            var to = gray.Slice((top + row) * picture.RowBytes, picture.Width);
            for (var column = 0; column < to.Length; column++)
            {
                to[column] = (byte)from[column];
            }
        }
    }

    private static void Draw(Mark mark, SKCanvas canvas, Tools tools)
    {
        switch (mark)
        {
            case Line line:
                canvas.DrawLine((float)line.X1, (float)line.Y1, (float)line.X2, (float)line.Y2, tools.Pen(line.Stroke));
                break;
            case Box { Area: var area } box:
                var rect = SKRect.Create((float)area.X, (float)area.Y, (float)area.Width, (float)area.Height);
                Both(box.Stroke, box.Fill, tools, paint => canvas.DrawRect(rect, paint));
                break;
            case Disc disc:
                Both(disc.Stroke, disc.Fill, tools, paint => canvas.DrawCircle((float)disc.X, (float)disc.Y, (float)disc.Radius, paint));
                break;
            case Outline outline:
                using (var path = SKPath.ParseSvgPathData(outline.Data))
                {
                    Both(outline.Stroke, outline.Fill, tools, paint => canvas.DrawPath(path, paint));
                }

                break;
            case Text text:
                Draw(text, canvas, tools);
                break;
        }
    }

    private static void Draw(Text text, SKCanvas canvas, Tools tools)
    {
        var before = text.Anchor switch { Anchor.Start => 0, Anchor.Middle => text.Width / 2, _ => text.Width };
        if (!text.IsUpright)
        {
            TextPainter.Draw(text, (float)(text.X - before), (float)text.Y, canvas, tools.Ink(text.Tone));
            return;
        }

        canvas.Save();
        canvas.Translate((float)text.X, (float)text.Y);
        canvas.RotateDegrees(-90);
        TextPainter.Draw(text, (float)-before, 0, canvas, tools.Ink(text.Tone));
        canvas.Restore();
    }

    private static void Both(Stroke stroke, Fill fill, Tools tools, Action<SKPaint> draw)
    {
        if (fill != Fill.None)
        {
            draw(tools.Face(fill));
        }

        if (stroke != Stroke.None)
        {
            draw(tools.Pen(stroke));
        }
    }

    // One paint for each look, for one drawing.
    private sealed class Tools : IDisposable
    {
        private readonly SKPaint?[] pens = new SKPaint?[Enum.GetValues<Stroke>().Length];
        private readonly SKPaint?[] faces = new SKPaint?[Enum.GetValues<Fill>().Length];
        private readonly SKPaint?[] inks = new SKPaint?[Enum.GetValues<Tone>().Length];

        public SKPaint Pen(Stroke stroke) => pens[(int)stroke] ??= MakePen(stroke);

        public SKPaint Face(Fill fill) => faces[(int)fill] ??= new SKPaint { Color = SKColor.Parse(Drawings.Ink.Light.Of(fill)), IsAntialias = true };

        public SKPaint Ink(Tone tone) => inks[(int)tone] ??= new SKPaint { Color = SKColor.Parse(Drawings.Ink.Light.Of(tone)), IsAntialias = true };

        public void Dispose()
        {
            foreach (var paint in pens.Concat(faces).Concat(inks))
            {
                paint?.PathEffect?.Dispose();
                paint?.Dispose();
            }
        }

        private static SKPaint MakePen(Stroke stroke) => new()
        {
            Color = SKColor.Parse(Drawings.Ink.Light.Of(stroke)),
            IsAntialias = true,
            IsStroke = true,
            StrokeWidth = (float)Drawings.Ink.Weight(stroke),
            PathEffect = Drawings.Ink.Dashes(stroke) is { Length: > 0 } dashes ? SKPathEffect.CreateDash(dashes, 0) : null,
        };
    }
}
