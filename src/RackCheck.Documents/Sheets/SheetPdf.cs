using RackCheck.Documents.Drawings;
using SkiaSharp;

namespace RackCheck.Documents.Sheets;

/// <summary>Writes a document as PDF on A4: fonts embedded, the same bytes for the same document.</summary>
/// <remarks>
/// The library writes neither structure nor language into a PDF, so that it is not tagged: the HTML is the accessible form. Its PDF/A carries a random
/// identifier, which would make each file another one; it is not used.
/// </remarks>
public static class SheetPdf
{
    private const float PointsPerUnit = 72f / 254;

    /// <summary>Writes a document.</summary>
    /// <param name="sheet">The document.</param>
    /// <returns>The file.</returns>
    public static byte[] Document(Sheet sheet)
    {
        var pages = SheetPages.Of(sheet);
        var about = SKDocumentPdfMetadata.Default;
        about.Title = TextFit.Clean(sheet.Reference is { } reference ? $"{sheet.Title}: {reference}" : sheet.Title);
        about.Subject = sheet.Digest;
        about.Creator = about.Producer = "Rack check service";
        (about.Creation, about.Modified) = (sheet.Date, sheet.Date);
        using var file = new MemoryStream();
        using (var document = SKDocument.CreatePdf(file, about) ?? throw new InvalidOperationException("No document for the pages."))
        {
            foreach (var page in pages)
            {
                Draw(page, document.BeginPage((float)(SheetPages.Width * PointsPerUnit), (float)(SheetPages.Height * PointsPerUnit)), sheet.Title);
                document.EndPage();
            }

            document.Close();
        }

        return file.ToArray();
    }

    private static void Draw(SheetPage page, SKCanvas canvas, string title)
    {
        canvas.Scale(PointsPerUnit);
        SkiaPainter.Draw(new Drawing(SheetPages.Width, SheetPages.Height, title, "", page.Canvas.Marks), canvas);
        foreach (var (drawing, x, y, scale) in page.Figures)
        {
            canvas.Save();
            canvas.Translate((float)x, (float)y);
            canvas.Scale((float)scale);
            SkiaPainter.Draw(drawing, canvas);
            canvas.Restore();
        }
    }
}
