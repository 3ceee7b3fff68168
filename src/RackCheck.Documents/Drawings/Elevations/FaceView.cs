using System.Numerics;
using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Documents.Drawings.Elevations;

/// <summary>Draws the front or the rear of a cabinet, without its door.</summary>
internal sealed class FaceView
{
    private const double LabelMargin = 10;

    // Of a body whose width is not given. Common practice, no source.
    private const double UsualBodyMm = 440;

    private readonly Scene scene;
    private readonly Face face;
    private readonly double centre;
    private readonly double floor;
    private readonly Canvas canvas;
    private readonly LabelSpace space = new();
    private readonly Dictionary<MountedItem, Area> boxes = [];

    /// <summary>Draws the view.</summary>
    /// <param name="scene">The rack.</param>
    /// <param name="face">Front or rear.</param>
    /// <param name="left">Left edge of the cabinet.</param>
    /// <param name="floor">Height of the floor on the sheet.</param>
    /// <param name="canvas">Takes the marks.</param>
    public FaceView(Scene scene, Face face, double left, double floor, Canvas canvas)
    {
        (this.scene, this.face, this.floor, this.canvas) = (scene, face, floor, canvas);
        Frame = CabinetFrame.Outline(scene, left, scene.Cabinet.WidthMm, floor);
        centre = Frame.MiddleX;
        Cords = face == Face.Rear ? new CordLines(scene, centre, Frame, floor) : null;
        Draw();
    }

    /// <summary>The cabinet in the view.</summary>
    public Area Frame { get; }

    /// <summary>PDUs and cords; null in the front view.</summary>
    public CordLines? Cords { get; }

    /// <summary>Right edge of what belongs to the cabinet.</summary>
    public double Right => OwnRight + (face == Face.Rear ? CoolerOutline.Beside(scene) : 0);

    private double OwnRight => Math.Max(Math.Max(Frame.Right, centre + CabinetFrame.UprightEdgeMm), Cords?.Right ?? 0);

    /// <summary>How far PDUs and uprights reach beyond the cabinet on either side.</summary>
    public static double Beyond(Scene scene, Face face)
    {
        var frame = CabinetFrame.Outline(scene, 0, scene.Cabinet.WidthMm, 0);
        var pdus = face == Face.Rear ? new CordLines(scene, frame.MiddleX, frame, 0) : null;
        var left = Math.Min(frame.MiddleX - CabinetFrame.UprightEdgeMm, pdus?.Left ?? 0);
        return Math.Max(0, -left) + (face == Face.Front ? CoolerOutline.Beside(scene) : 0);
    }

    /// <summary>Where a finding is marked; null for the cabinet as a whole.</summary>
    public Area? PlaceOf(PlacedFinding placed) =>
        placed.Item is { } item ? (boxes.TryGetValue(item, out var box) ? box : null)
        : placed.Pdu is { } pdu ? Cords?.PlaceOf(pdu)
        : null;

    private void Draw()
    {
        CabinetFrame.DrawOutline(canvas, scene, Frame, floor);
        CoolerOutline.Draw(canvas, scene, Frame, face, face == Face.Front ? Math.Min(Frame.X, centre - CabinetFrame.UprightEdgeMm) : OwnRight);
        CabinetFrame.DrawUprights(canvas, scene, centre, floor, space, Cords);
        var own = scene.Survey.Occupancy.ByPlace.Where(i => scene.IsInside(i) && i.Face == face).Concat(scene.Loads.Where(i => i.Face == face)).ToList();
        var other = scene.Survey.Occupancy.ByPlace.Where(i => scene.IsInside(i) && i.Face != face).Concat(scene.Loads.Where(i => i.Face != face)).ToList();
        foreach (var item in own.Concat(other))
        {
            boxes[item] = BoxOf(item);
        }

        if (face == Face.Front)
        {
            DrawFree();
        }

        // What is mounted on the far uprights is seen behind; names of it stand where nothing is in front of them.
        foreach (var item in other)
        {
            canvas.Group(scene.Tell(item), scene.DataWithPlace(item, View), g => g.Box(boxes[item], Stroke.Hidden));
        }

        Cords?.DrawPdus(canvas, space);
        var labels = new Labels(scene, space);
        foreach (var item in own)
        {
            canvas.Group(scene.Tell(item), scene.DataWithPlace(item, View), g => DrawItem(g, item));
        }

        // Names come after all faces, so that where items clash none is covered.
        foreach (var item in own)
        {
            WriteName(item, own.Exists(o => !ReferenceEquals(o, item) && boxes[o].Overlaps(boxes[item])), labels);
        }

        foreach (var item in own)
        {
            space.Block(boxes[item]);
        }

        foreach (var item in other)
        {
            var (left, right) = Cords?.DrawCords(canvas, item, boxes[item], space) ?? (0, 0);
            labels.Write(canvas, item, boxes[item].Inside(LabelMargin + left, LabelMargin + right), face, isBehind: true);
        }

        Cords?.NamePdus(canvas);
    }

    // Between the uprights as they are drawn.
    private double Opening => Math.Min(scene.Cabinet.OpeningMm, RackGeometry.PanelWidthMm - 12);

    private string View => CabinetFacts.FaceText(face);

    private void DrawItem(Canvas group, MountedItem item)
    {
        ItemSigns.DrawFace(group, item, boxes[item]);
        if (scene.Rack.Changes.TryGetValue(item.Id, out var change))
        {
            ItemSigns.DrawChange(group, change.Kind, boxes[item]);
        }
    }

    private void WriteName(MountedItem item, bool clashes, Labels labels)
    {
        var box = boxes[item];
        if (clashes)
        {
            canvas.Box(box, Stroke.Hidden);
        }

        var left = LabelMargin + (scene.Rack.Changes.ContainsKey(item.Id) ? ItemSigns.ChangeWidth : 0);
        var (before, after) = Cords?.DrawCords(canvas, item, box, space) ?? (0, 0);
        labels.Write(
            canvas, item, box.Inside(left + before, LabelMargin + after), face, isBehind: false, ItemSigns.HasPattern(item) ? box : null);
    }

    private Area BoxOf(MountedItem item)
    {
        if (item.Shelf is { } shelf)
        {
            return BoxOnShelf(item, shelf);
        }

        var height = RackGeometry.PanelHeightMm(item.HeightU);
        var width = item.Face == face ? RackGeometry.PanelWidthMm : Math.Min(item.Item?.Body?.WidthMm is { } body and > 60 ? body : UsualBodyMm, Opening);
        var lower = scene.Heights.EdgeMm(item.Bottom!.Value) + (RackGeometry.PanelReliefMm / 2);
        return new Area(centre - (width / 2), floor - lower - height, width, height);
    }

    // Side by side in the order of the request, to scale where their widths are known and fit.
    private Area BoxOnShelf(MountedItem item, MountedItem shelf)
    {
        const double Gap = 4;
        var room = Opening;
        var widths = shelf.Load.Select(l => l.Item!.Body?.WidthMm is { } width and > 0 ? width : room / shelf.Load.Count - Gap).ToList();
        var whole = widths.Sum() + (Gap * (widths.Count - 1));
        var scale = whole > room ? room / whole : 1;
        var index = shelf.Load.ToList().IndexOf(item);
        var left = centre - (Math.Min(whole, room) / 2) + (scale * (widths.Take(index).Sum() + (Gap * index)));
        if (item.Face != face)
        {
            // What is on the left of its own side is on the right of the other.
            left = (2 * centre) - left - (scale * widths[index]);
        }

        var height = Math.Min(item.StandingHeightMm is { } high and > 0 ? high : RackGeometry.UnitMm, (floor - scene.Heights.EdgeMm(shelf.Top + 1)) - Frame.Y);
        var lower = scene.Heights.EdgeMm(shelf.Top + 1);
        return new Area(left, floor - lower - Math.Max(8, height), scale * widths[index], Math.Max(8, height));
    }

    // Runs of U positions that nothing closes at the front.
    private void DrawFree()
    {
        var bits = scene.Survey.Occupancy.OpenFront;
        for (var unit = 1; bits != 0 && unit <= scene.Cabinet.HeightU; unit++)
        {
            if ((bits >> (unit - 1) & 1) == 0)
            {
                continue;
            }

            var run = BitOperations.TrailingZeroCount(~(bits >> (unit - 1)));
            run = Math.Min(run, scene.Cabinet.HeightU - unit + 1);
            var (bottom, top) = (floor - scene.Heights.EdgeMm(unit), floor - scene.Heights.EdgeMm(unit + run));
            var area = new Area(centre - 215, top + 3, 430, bottom - top - 6);
            var name = $"Free: {scene.Cabinet.UnitsText(unit, unit + run - 1)}";
            canvas.Group(name, [("data-free-u", Invariant($"{run}"))], g => DrawRun(g, area, run));
            unit += run - 1;
        }
    }

    private void DrawRun(Canvas group, Area area, int run)
    {
        var upper = Invariant($"M{area.X:0.##} {area.Y + 12:0.##}v-12h12M{area.Right - 12:0.##} {area.Y:0.##}h12v12");
        var lower = Invariant($"M{area.Right:0.##} {area.Bottom - 12:0.##}v12h-12M{area.X + 12:0.##} {area.Bottom:0.##}h-12v-12");
        group.Outline(upper + lower, Stroke.Light);
        var text = Invariant($"{run}U free");
        var width = TypeSize.Small.Width(text);
        if (space.TakeFirst(LabelSpace.Rows(area, TypeSize.Small.Size).Select(a => new Area(a.MiddleX - (width / 2), a.Y, width, a.Height))) is { } row)
        {
            group.Text(row.MiddleX, Text.Baseline(row.MiddleY, TypeSize.Small.Size), text, TypeSize.Small, Anchor.Middle, Tone.Light);
        }
    }
}
