using System.Globalization;
using System.Text;
using System.Xml;
using System.Xml.Linq;
using RackCheck.Documents.Drawings;
using RackCheck.Documents.Drawings.Elevations;
using RackCheck.Model;
using RackCheck.Testing;

namespace RackCheck.Documents.Tests;

/// <summary>A drawing as a program finds it: read back from its SVG.</summary>
internal sealed class DrawnSvg
{
    public DrawnSvg(byte[] document)
    {
        var settings = new XmlReaderSettings { DtdProcessing = DtdProcessing.Prohibit, XmlResolver = null };
        using var reader = XmlReader.Create(new MemoryStream(document), settings);
        Root = XDocument.Load(reader, LoadOptions.PreserveWhitespace).Root!;
    }

    public XElement Root { get; }

    public IEnumerable<XElement> Groups => Named("g");

    public IEnumerable<string> Texts => Named("text").Select(t => t.Value);

    public static DrawnRack Check(RackDescription rack) => DrawnRack.Of(Judge.Resolve(rack), Judge.Checker);

    public static Drawing Draw(params IEnumerable<RackDescription> racks) => ElevationDrawing.Of([.. racks.Select(Check)]);

    public static DrawnSvg Of(Drawing drawing) => new(SvgWriter.Document(drawing));

    public IEnumerable<XElement> Named(string name) => Root.Descendants().Where(e => e.Name.LocalName == name);

    /// <summary>The groups of an item in a view.</summary>
    public IEnumerable<XElement> ItemIn(string id, string view) =>
        Groups.Where(g => g.Attribute("data-item")?.Value == id && g.Attribute("data-view")?.Value == view);

    /// <summary>The first rectangle of a group.</summary>
    public static (double X, double Y, double Width, double Height) Face(XElement group)
    {
        var rect = group.Elements().First(e => e.Name.LocalName == "rect");
        return (Number(rect, "x"), Number(rect, "y"), Number(rect, "width"), Number(rect, "height"));
    }

    public static double Number(XElement element, string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);

    /// <summary>Pairs of texts that overlap, and texts that leave the sheet.</summary>
    public static IReadOnlyList<string> Overlaps(Drawing drawing)
    {
        var texts = drawing.Flat.OfType<Text>().OrderBy(t => t.Area.X).ToList();
        var sheet = new Area(0, 0, drawing.Width, drawing.Height);
        var found = texts.Where(t => t.Area.X < 0 || t.Area.Y < 0 || t.Area.Right > sheet.Right || t.Area.Bottom > sheet.Bottom)
            .Select(t => $"outside: {t.Words} {t.Area}").ToList();
        for (var i = 0; i < texts.Count; i++)
        {
            for (var j = i + 1; j < texts.Count && texts[j].Area.X < texts[i].Area.Right; j++)
            {
                if (Letters(texts[i]).Overlaps(Letters(texts[j])))
                {
                    found.Add($"{texts[i].Words} {texts[i].Area} / {texts[j].Words} {texts[j].Area}");
                }
            }
        }

        return found;
    }

    // From the height of capitals to the base line: accents and descenders may reach into the space between lines.
    private static Area Letters(Text text)
    {
        var area = text.Area;
        var (cap, foot) = (0.1 * text.Size, 0.2 * text.Size);
        return text.IsUpright
            ? area with { X = area.X + cap, Width = area.Width - cap - foot }
            : area with { Y = area.Y + cap, Height = area.Height - cap - foot };
    }
}
