using RackCheck.Model;
using static System.FormattableString;

namespace RackCheck.Documents.Drawings.Elevations;

/// <summary>Draws the title block along the lower edge of a sheet: a row for each rack, scale, ruleset, cautions.</summary>
internal static class TitleBlock
{
    /// <summary>Least width of a sheet between its margins.</summary>
    public const double LeastWidth = 2500;

    private const double Pad = 14;
    private const double RowHeight = 74;
    private const double TopHeight = 92;
    private const double NoteHeight = 44;

    private static readonly (string Head, double Share)[] Columns =
    [
        ("Reference", 0.22), ("Cabinet", 0.20), ("Product", 0.10), ("Site", 0.10), ("Digest of the description", 0.23), ("Date", 0.15),
    ];

    /// <summary>Height of the block.</summary>
    /// <param name="racks">Number of racks.</param>
    public static double HeightFor(int racks) => TopHeight + (racks * RowHeight) + NoteHeight;

    /// <summary>Draws the block.</summary>
    /// <param name="canvas">Takes the marks.</param>
    /// <param name="racks">The racks.</param>
    /// <param name="title">Title of the sheet.</param>
    /// <param name="area">Where it is.</param>
    public static void Draw(Canvas canvas, IReadOnlyList<DrawnRack> racks, string title, Area area)
    {
        canvas.Box(area, Stroke.Thick, Fill.Paper);
        var scale = DrawScale(canvas, area);
        var version = $"Ruleset {racks[0].Report.Ruleset.Version}";
        var ruleset = canvas.Text(scale - 40, area.Y + 58, version, TypeSize.Body, Anchor.End, within: 420);
        canvas.Text(area.X + Pad, area.Y + 62, title, TypeSize.Title, within: scale - 80 - ruleset - area.X);
        var y = area.Y + TopHeight;
        foreach (var rack in racks)
        {
            canvas.Line(area.X, y, area.Right, y, Stroke.Normal);
            DrawRow(canvas, rack, area, y);
            y += RowHeight;
        }

        canvas.Line(area.X, y, area.Right, y, Stroke.Normal);
        const string Note = "Drawn from the description and the report of its check. Dimensions in mm. Not a replacement for local codes, the makers' "
            + "instructions and the judgement of a qualified person.";
        canvas.Text(area.X + Pad, y + 30, Note, TypeSize.Small, within: area.Width - (2 * Pad));
    }

    private static void DrawRow(Canvas canvas, DrawnRack rack, Area area, double y)
    {
        var report = rack.Report;
        var cells = new[]
        {
            (rack.Caption is null ? "" : rack.Caption + ": ") + (rack.Posted.Reference is { } reference ? TextFit.Isolate(reference) : "no reference"),
            CabinetText(rack),
            Word(report.Verdicts.Product),
            Word(report.Verdicts.Site),
            Short(report.DescriptionDigest),
            rack.Posted.AsOf ?? "not given",
        };
        var x = area.X;
        for (var i = 0; i < cells.Length; i++)
        {
            var width = Columns[i].Share * area.Width;
            canvas.Text(x + Pad, y + 26, Columns[i].Head, TypeSize.Mark, tone: Tone.Light, within: width - (2 * Pad));
            canvas.Text(x + Pad, y + 58, cells[i], i is 2 or 3 or 0 ? TypeSize.Bold : TypeSize.Body, within: width - (2 * Pad));
            x += width;
            if (i + 1 < cells.Length)
            {
                canvas.Line(x, y, x, y + RowHeight, Stroke.Thin);
            }
        }
    }

    private static string CabinetText(DrawnRack rack)
    {
        var cabinet = rack.Survey?.Cabinet.Source ?? rack.Posted.Cabinet;
        var part = cabinet?.PartNumber is { } number ? $", {number}" : "";
        return cabinet?.HeightU is { } units ? Invariant($"{units}U, {cabinet.WidthMm:0.#} x {cabinet.DepthMm:0.#}{part}") : $"size not known{part}";
    }

    private static string Word(Verdict verdict) => verdict.ToString().ToUpperInvariant();

    // The first sixteen of its digits tell two descriptions apart; the report has all.
    private static string Short(string digest) => digest.Length > 24 ? digest[..24] + "\u2026" : digest;

    // A bar of 500 mm, in fields of 100.
    private static double DrawScale(Canvas canvas, Area area)
    {
        const double Length = 500;
        var x = area.Right - Length - 60;
        var y = area.Y + 34;
        for (var i = 0; i < 5; i++)
        {
            canvas.Box(new Area(x + (i * Length / 5), y, Length / 5, 14), Stroke.Thin, i % 2 == 0 ? Fill.Ink : Fill.Paper);
        }

        canvas.Text(x, y + 42, "0", TypeSize.Small, Anchor.Middle);
        canvas.Text(x + Length, y + 42, "500 mm", TypeSize.Small, Anchor.Middle);
        canvas.Text(x + (Length / 2), y + 42, "Scale 1:10", TypeSize.SmallBold, Anchor.Middle);
        return x;
    }
}
