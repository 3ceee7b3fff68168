using System.Text;
using System.Xml;
using System.Xml.Linq;
using RackCheck.Documents.Sheets;
using RackCheck.Model;
using RackCheck.Testing;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace RackCheck.Documents.Tests.Sheets;

/// <summary>Documents of test racks as their readers find them: the text of HTML and PDF.</summary>
internal static class ReadSheet
{
    public static readonly SheetKind[] Kinds = Enum.GetValues<SheetKind>();

    public static (Sheet Sheet, CheckReport Report) Of(RackDescription rack, SheetKind kind) =>
        OrderSheets.Of(Judge.Resolve(rack), Judge.Checker, kind, DemoProducts.All);

    /// <summary>The page as XML, which refuses what is not well-formed.</summary>
    public static XElement Html(Sheet sheet)
    {
        var settings = new XmlReaderSettings { DtdProcessing = DtdProcessing.Ignore, XmlResolver = null };
        using var reader = XmlReader.Create(new MemoryStream(SheetHtml.Document(sheet)), settings);
        return XDocument.Load(reader, LoadOptions.PreserveWhitespace).Root!;
    }

    public static IEnumerable<XElement> Named(this XElement page, string name) => page.Descendants().Where(e => e.Name.LocalName == name);

    /// <summary>Visible texts of the page outside the drawing, one for each cell, paragraph and entry.</summary>
    public static IReadOnlyList<string> Texts(this XElement page) =>
        [.. page.Descendants().Where(e => e.Name.LocalName is "td" or "dd" or "p" or "li" or "h1" or "h2" or "caption").Select(e => Bare(e.Value))];

    /// <summary>The rows of the table with a caption; none where there is no such table.</summary>
    public static IReadOnlyList<IReadOnlyList<string>> Table(this XElement page, string caption) =>
    [
        .. page.Named("table").Where(t => t.Named("caption").Single().Value == caption).SelectMany(t => t.Named("tr").Skip(1))
            .Select(r => (IReadOnlyList<string>)[.. r.Elements().Select(c => Bare(c.Value))]),
    ];

    /// <summary>A text without the marks that isolate names.</summary>
    public static string Bare(string words) => words.Replace("\u2068", "", StringComparison.Ordinal).Replace("\u2069", "", StringComparison.Ordinal);

    public static PdfDocument Pdf(Sheet sheet) => PdfDocument.Open(SheetPdf.Document(sheet));

    /// <summary>All letters of a PDF in the order in which they are drawn, without spaces: lines are broken anywhere.</summary>
    public static string Letters(PdfDocument pdf)
    {
        var text = new StringBuilder();
        foreach (var page in pdf.GetPages())
        {
            text.AppendJoin("", page.Letters.Select(l => l.Value));
        }

        return Tight(text.ToString());
    }

    public static string Tight(string words) => string.Concat(words.Where(c => !char.IsWhiteSpace(c)));
}
