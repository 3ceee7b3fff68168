using RackCheck.Model;

namespace RackCheck.Documents.Drawings.Elevations;

/// <summary>Draws racks as a workshop drawing: elevations to scale, findings, figures and title block on one sheet.</summary>
public static class ElevationDrawing
{
    /// <summary>Maximum number of findings that a sheet marks and lists, the gravest first; several racks share it. Further findings are counted.</summary>
    public const int MostMarked = 300;

    private const double Margin = 60;
    private const double Padding = 50;
    private const double Gap = 110;
    private const double SideGap = 80;
    private const double CaptionHeight = 60;

    /// <summary>Draws racks side by side.</summary>
    /// <param name="racks">The racks, one to six.</param>
    /// <param name="view">The sides to draw.</param>
    /// <returns>The sheet: the same for the same racks.</returns>
    public static Drawing Of(IReadOnlyList<DrawnRack> racks, ElevationView view = ElevationView.All)
    {
        var views = ViewsOf(view);
        var most = MostMarked / racks.Count;
        var scenes = racks.Select(r => r.Survey is { } survey ? new Scene(r, survey, most) : null).ToList();
        var top = Margin + Padding + CaptionHeight;
        var floor = top + scenes.Max(s => s is null ? 0 : s.Heights.OverallMm + AboveOf(s, views) + 20);
        var canvas = new Canvas();
        var x = Margin + Padding;
        var lowest = floor;
        for (var i = 0; i < racks.Count; i++)
        {
            var width = racks.Count == 1 ? TitleBlock.LeastWidth - (2 * Padding) : 0;
            var (right, bottom) = scenes[i] is { } scene
                ? DrawRack(canvas, scene, views, x, floor, width, racks.Count > 1 ? racks[i].Caption ?? racks[i].Posted.Reference : null)
                : DrawMissing(canvas, racks[i], most, x, top, Math.Max(width, 1000));
            lowest = Math.Max(lowest, bottom);
            x = right + (2 * Gap);
        }

        var sheetRight = Math.Max(x - (2 * Gap) + Padding, Margin + TitleBlock.LeastWidth);
        var title = new Area(Margin, lowest + Padding, sheetRight - Margin, TitleBlock.HeightFor(racks.Count));
        TitleBlock.Draw(canvas, racks, TitleOf(racks), title);
        var frame = new Area(Margin, Margin, title.Width, title.Bottom - Margin);
        return new Drawing(
            frame.Right + Margin, frame.Bottom + Margin, TitleOf(racks), DescriptionOf(racks, views), [new Box(frame, Stroke.Thick), .. canvas.Marks]);
    }

    /// <summary>The sides of a view.</summary>
    /// <param name="view">The view.</param>
    public static IReadOnlyList<ElevationView> ViewsOf(ElevationView view) =>
        view == ElevationView.All ? [ElevationView.Front, ElevationView.Rear, ElevationView.Side] : [view];

    /// <summary>Draws racks side by side as an SVG document.</summary>
    /// <param name="racks">The racks, one to six.</param>
    /// <param name="view">The sides to draw.</param>
    /// <returns>The document, UTF-8: the same bytes for the same racks.</returns>
    public static byte[] Svg(IReadOnlyList<DrawnRack> racks, ElevationView view = ElevationView.All) => SvgWriter.Document(Of(racks, view));

    /// <summary>Draws a rack as a figure of a document: findings numbered, without legend, notes and title block.</summary>
    /// <param name="rack">The rack.</param>
    /// <param name="views">The sides to draw; front and rear if there are none.</param>
    /// <returns>The figure; null if essential data is missing.</returns>
    public static Drawing? Figure(DrawnRack rack, params IReadOnlyList<ElevationView> views)
    {
        if (rack.Survey is not { } survey)
        {
            return null;
        }

        const double Edge = 20;
        views = views.Count == 0 ? [ElevationView.Front, ElevationView.Rear] : views;
        var scene = new Scene(rack, survey, MostMarked);
        var floor = Edge + scene.Heights.OverallMm + AboveOf(scene, views);
        var canvas = new Canvas();
        var (right, bottom) = DrawViews(canvas, scene, views, Edge, floor);
        var sides = SidesOf(views);
        var start = $"{char.ToUpperInvariant(sides[0])}{sides[1..]}";
        var words = FormattableString.Invariant(
            $"{start} of a 19-inch rack with its equipment: {rack.Posted.Items.Count} items, {rack.Report.Findings.Count} findings.");
        return new Drawing(right + Edge, bottom, TitleOf([rack]), words, canvas.Marks);
    }

    private static (double Right, double Bottom) DrawRack(
        Canvas canvas, Scene scene, IReadOnlyList<ElevationView> views, double left, double floor, double leastWidth, string? heading)
    {
        var (x, bottom) = DrawViews(canvas, scene, views, left, floor);
        x += Gap;
        var notes = Math.Max(x, left + leastWidth - Notes.Width);
        if (heading is not null)
        {
            canvas.Text(left, Margin + Padding + 20, heading, TypeSize.Title, within: notes - left - 40);
        }

        bottom = Math.Max(bottom, new Notes(scene, views, canvas, notes, Margin + Padding - 20).Draw());
        var rightEdge = notes + Notes.Width;
        var findings = scene.Findings.Select(f => (f.Number, f.Finding)).ToList();
        return (rightEdge, Legend.Draw(canvas, findings, scene.Rack.Report, left, bottom + 40, rightEdge - left));
    }

    // The views side by side, to the right of the overall height.
    private static (double Right, double Bottom) DrawViews(Canvas canvas, Scene scene, IReadOnlyList<ElevationView> views, double left, double floor)
    {
        var (x, end, bottom) = (left + 70, left, floor);
        for (var i = 0; i < views.Count; i++)
        {
            if (i == 0)
            {
                Dimensions.Upright(canvas, left + 34, floor - scene.Heights.OverallMm, floor, x - 8);
            }

            var (right, lower) = views[i] == ElevationView.Side
                ? DrawSide(canvas, scene, views, x, floor)
                : DrawFace(canvas, scene, views, views[i], x, floor);
            (end, bottom) = (right, Math.Max(bottom, lower));
            x = right + (i + 1 < views.Count && views[i + 1] == ElevationView.Side ? SideGap : Gap);
        }

        return (end, bottom);
    }

    private static (double Right, double Bottom) DrawFace(
        Canvas canvas, Scene scene, IReadOnlyList<ElevationView> views, ElevationView view, double left, double floor)
    {
        var face = view == ElevationView.Front ? Face.Front : Face.Rear;

        // PDUs and uprights can be wider than the cabinet.
        var over = FaceView.Beyond(scene, face);
        var drawn = new FaceView(scene, face, left + over, floor, canvas);
        var right = Balloons.DrawAll(canvas, In(scene, view, views), drawn.PlaceOf, UnderMarks(scene, drawn.Frame), drawn.Right + 16);
        var space = new LabelSpace();
        Dimensions.Chain(canvas, [drawn.Frame.X, drawn.Frame.Right], floor + 58, floor + 4, space, _ => "width");
        var bottom = Caption(canvas, face == Face.Front ? "Front" : "Rear", "without door", drawn.Frame, floor + 120);
        return (Math.Max(right, drawn.Right), bottom);
    }

    private static (double Right, double Bottom) DrawSide(Canvas canvas, Scene scene, IReadOnlyList<ElevationView> views, double left, double floor)
    {
        var (front, rear) = SideView.Beyond(scene);
        var drawn = new SideView(scene, left + front, floor, canvas);
        var right = Balloons.DrawAll(
            canvas, In(scene, ElevationView.Side, views), drawn.PlaceOf, UnderMarks(scene, drawn.Frame), drawn.Frame.Right + rear + 16);
        var bottom = Caption(canvas, "Side", "from the right, without panel; front on the left", drawn.Frame, floor + 330);
        return (Math.Max(right, drawn.Frame.Right + rear), bottom);
    }

    // The cabinet with what stands on its roof: marks go above it.
    private static Area UnderMarks(Scene scene, Area frame) =>
        frame with { Y = frame.Y - CoolerOutline.Above(scene), Height = frame.Height + CoolerOutline.Above(scene) };

    // On as many lines as a narrow view needs. The result is the lower edge.
    private static double Caption(Canvas canvas, string name, string rest, Area frame, double y)
    {
        var left = frame.X + canvas.Text(frame.X, y, name, TypeSize.Head, within: frame.Width) + 16;
        var lines = TextFit.Wrap(rest, Math.Max(0, frame.Right - left), TypeSize.Small.Size);
        for (var i = 0; i < lines.Count; i++)
        {
            canvas.Text(left, y + (i * TypeSize.Small.Leading), lines[i], TypeSize.Small, within: Math.Max(0, frame.Right - left));
        }

        return y + 50 + ((lines.Count - 1) * TypeSize.Small.Leading);
    }

    private static IEnumerable<PlacedFinding> In(Scene scene, ElevationView view, IReadOnlyList<ElevationView> views) =>
        scene.Findings.Where(f => f.ViewOf(views) == view);

    private static double AboveOf(Scene scene, IReadOnlyList<ElevationView> views)
    {
        // As many as there can be: those whose place the views do not show are marked above the cabinet too.
        return CoolerOutline.Above(scene) + views.Max(v => Balloons.HeightAbove(
            In(scene, v, views).Count(f => f.Item is null || !scene.IsInside(f.Item)),
            v == ElevationView.Side ? scene.Cabinet.Depth.DepthMm : scene.Cabinet.WidthMm));
    }

    // Without the size of the cabinet or a height there is nothing to draw to scale.
    private static (double Right, double Bottom) DrawMissing(Canvas canvas, DrawnRack rack, int most, double left, double top, double width)
    {
        var y = top + TypeSize.Head.Leading;
        canvas.Text(left, y, "Not drawn: essential data is missing", TypeSize.Head, within: width);
        foreach (var pointer in rack.Missing)
        {
            y += TypeSize.Body.Leading;
            canvas.Text(left, y, pointer, TypeSize.Body, within: width);
        }

        var findings = rack.Report.Findings.Take(most).Select((f, i) => (i + 1, f)).ToList();
        return (left + width, Legend.Draw(canvas, findings, rack.Report, left, y + 40, width));
    }

    private static string TitleOf(IReadOnlyList<DrawnRack> racks)
    {
        var names = racks.Select(r => r.Posted.Reference).Where(r => r is not null).Distinct().ToList();
        var what = racks.Count == 1 ? "Rack elevation" : racks[0].Caption is null ? "Rack elevations" : "Rack elevations, before and after";
        return names.Count == 0 ? what : $"{what}: {Lists.Short([.. names.Select(n => TextFit.Isolate(n!))])}";
    }

    private static string Words(Verdicts verdicts) => $"product {verdicts.Product}, site {verdicts.Site}".ToLowerInvariant();

    private static string DescriptionOf(IReadOnlyList<DrawnRack> racks, IReadOnlyList<ElevationView> views)
    {
        var parts = racks.Select(r => FormattableString.Invariant(
            $"{r.Posted.Items.Count} items, {r.Report.Findings.Count} findings, {Words(r.Report.Verdicts)}"));
        return $"Drawing to scale 1:10 of the {SidesOf(views)} of a 19-inch rack with its equipment. {string.Join("; ", parts)}.";
    }

    private static string SidesOf(IReadOnlyList<ElevationView> views) => Lists.All([.. views.Select(v => v.ToString().ToLowerInvariant())]);
}
