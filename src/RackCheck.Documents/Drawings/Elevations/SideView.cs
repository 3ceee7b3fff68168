using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Layout;

namespace RackCheck.Documents.Drawings.Elevations;

/// <summary>Draws the side of a cabinet without its panel, seen from the right: the front is on the left.</summary>
internal sealed class SideView
{
    private const double UprightMm = 22;
    private const double LeastForLabel = 230;

    private readonly Scene scene;
    private readonly double floor;
    private readonly Canvas canvas;
    private readonly LabelSpace space = new();
    private readonly Dictionary<MountedItem, Area> boxes = [];

    /// <summary>Draws the view.</summary>
    /// <param name="scene">The rack.</param>
    /// <param name="left">Left edge of the cabinet.</param>
    /// <param name="floor">Height of the floor on the sheet.</param>
    /// <param name="canvas">Takes the marks.</param>
    public SideView(Scene scene, double left, double floor, Canvas canvas)
    {
        (this.scene, this.floor, this.canvas) = (scene, floor, canvas);
        Stack = new DepthStack(scene);
        Frame = CabinetFrame.Outline(scene, left, scene.Cabinet.Depth.DepthMm, floor);
        Draw();
    }

    /// <summary>Room in front of and behind a cabinet for what projects from it.</summary>
    public static (double Front, double Rear) Beyond(Scene scene)
    {
        var stack = new DepthStack(scene);
        var (front, rear) = (0.0, 0.0);
        foreach (var item in scene.Survey.Items.Where(scene.IsInside).Concat(scene.Loads))
        {
            var (from, to) = stack.Reach(item);
            front = Math.Max(front, -from);
            rear = Math.Max(rear, to - scene.Cabinet.Depth.DepthMm);
        }

        rear = Math.Max(rear, stack.RearPlaneMm - scene.Cabinet.Depth.DepthMm);
        var stabiliser = scene.Cabinet.Source.Base?.StabiliserMm ?? 0;
        return (Math.Max(front, stabiliser), rear);
    }

    /// <summary>The cabinet in the view.</summary>
    public Area Frame { get; }

    /// <summary>The depths of the deepest item.</summary>
    public DepthStack Stack { get; }

    /// <summary>Where a finding is marked; null for the cabinet as a whole.</summary>
    public Area? PlaceOf(PlacedFinding placed) => placed.Item is { } item && boxes.TryGetValue(item, out var box) ? box : null;

    private double X(double depth) => Frame.X + depth;

    private void Draw()
    {
        CabinetFrame.DrawOutline(canvas, scene, Frame, floor);
        if (scene.Cabinet.Source.Base?.StabiliserMm is > 0 and var reach)
        {
            canvas.Box(new Area(Frame.X - reach, floor - 24, reach, 20), Stroke.Normal, Fill.Shade);
        }

        DrawDoor(scene.Cabinet.Depth.FrontDoorMm, 0, scene.Cabinet.Source.FrontDoor, "front door");
        DrawDoor(scene.Cabinet.Depth.RearDoorMm, scene.Cabinet.Depth.RearLimitMm, scene.Cabinet.Source.RearDoor, "rear door");
        CoolerOutline.Draw(canvas, scene, Frame, null, Frame.X);
        DrawUprights();
        var labels = new Labels(scene, space);
        var items = scene.Survey.Occupancy.ByPlace.Where(scene.IsInside).Concat(scene.Loads).ToList();
        foreach (var item in items)
        {
            canvas.Group(scene.Tell(item), scene.DataWithPlace(item, "side"), g => DrawItem(g, item));
        }

        foreach (var item in items.Where(IsNamedHere))
        {
            WriteName(item, labels);
        }

        foreach (var box in boxes.Values)
        {
            space.Block(box);
        }

        CoolerOutline.NameInSide(canvas, scene, Frame, space);
        DrawDimensions();
    }

    private void DrawDoor(double depth, double from, Door? door, string name)
    {
        if (depth <= 0)
        {
            return;
        }

        var area = new Area(X(from), Frame.Y, depth, Frame.Height);
        canvas.Box(area, Stroke.Normal, Fill.Shade);
        var style = door?.Style?.ToString().ToLowerInvariant();
        var type = TypeSize.Small with { Size = Math.Min(TypeSize.Small.Size, depth - 4) };
        if (type.Size >= 12)
        {
            var words = style is null ? name : $"{name}, {style}";
            canvas.Text(Text.Baseline(area.MiddleX, type.Size), area.MiddleY, words, type, Anchor.Middle, isUpright: true, within: area.Height - 20);
        }

        space.Block(area);
    }

    private void DrawUprights()
    {
        var (top, bottom) = (floor - scene.Heights.EdgeMm(scene.Cabinet.HeightU + 1), floor - scene.Heights.EdgeMm(1));
        var (front, isFrontSet, rear, isRearSet) = (Stack.FrontPlaneMm, Stack.IsFrontSet, Stack.RearPlaneMm, Stack.IsRearSet);
        canvas.Box(new Area(X(front), top, UprightMm, bottom - top), isFrontSet ? Stroke.Thin : Stroke.Hidden, Fill.Shade);
        canvas.Box(new Area(X(rear) - UprightMm, top, UprightMm, bottom - top), isRearSet ? Stroke.Thin : Stroke.Hidden, isRearSet ? Fill.Shade : Fill.None);
    }

    // Of the items that stand side by side on a shelf the deepest is named here, the others where they are seen.
    private bool IsNamedHere(MountedItem item) => item.Category != ItemCategory.BlankingPanel
        && (item.Shelf is not { } shelf || !scene.Named.Contains(item) || ReferenceEquals(item, shelf.Load.MaxBy(l => l.BodyDepthMm ?? 0)));

    private void WriteName(MountedItem item, Labels labels)
    {
        var body = Within(boxes[item]);
        if (body.Width >= LeastForLabel)
        {
            labels.Write(canvas, item, body.Inside(8, 8), null, isBehind: item.BodyDepthMm is null);
            return;
        }

        // The name of a shallow item stands behind its body, or on the other side if there is more room.
        // It does not reach over other bodies.
        var (from, to) = Stack.Reach(item);
        var (start, end) = (Math.Min(X(from), body.X), Math.Max(X(to), body.Right));
        Area[] others = [.. boxes.Where(b => b.Key != item && b.Value.Y < body.Bottom && body.Y < b.Value.Bottom).Select(b => Within(b.Value))];
        var foremost = others.Where(o => o.Right <= body.X).Select(o => o.Right).Append(Frame.X).Max();
        var rearmost = others.Where(o => o.X >= body.Right).Select(o => o.X).Append(Frame.Right).Min();
        var before = (body with { X = foremost, Width = Math.Max(0, start - foremost) }).Inside(8, 10);
        var behind = (body with { X = end, Width = Math.Max(0, rearmost - end) }).Inside(10, 8);
        var wanted = TypeSize.Bold.Width(item.Id) + 20;
        var isBehind = item.Face == Face.Front ? behind.Width >= Math.Min(wanted, before.Width) : behind.Width > before.Width && before.Width < wanted;
        var width = Math.Min(wanted, isBehind ? behind.Width : before.Width);
        labels.Write(canvas, item, body with { X = isBehind ? behind.X : before.Right - width, Width = width }, null, isBehind: true);
    }

    private Area Within(Area area)
    {
        var (left, right) = (Math.Max(area.X, Frame.X), Math.Min(area.Right, Frame.Right));
        return area with { X = left, Width = Math.Max(0, right - left) };
    }

    private void DrawItem(Canvas group, MountedItem item)
    {
        var carrier = item.Shelf ?? item;
        var height = item.Shelf is null ? RackGeometry.PanelHeightMm(item.HeightU)
            : Math.Max(8, item.StandingHeightMm is { } high and > 0 ? high : RackGeometry.UnitMm);
        var lower = scene.Heights.EdgeMm(item.Shelf is null ? item.Bottom!.Value : carrier.Top + 1);
        height = Math.Min(height, floor - lower - Frame.Y);
        var y = floor - lower - height;
        var (plane, way) = (Stack.PlaneOf(item), item.Face == Face.Front ? 1 : -1);
        var depth = item.BodyDepthMm ?? Math.Min(200, scene.Cabinet.Depth.UsableMm / 4);
        var body = Along(plane, way * Math.Max(depth, 3), y, height);
        boxes[item] = body;
        if (item.FrontProjectionMm > 0)
        {
            group.Box(Along(plane, -way * item.FrontProjectionMm, y + (height * 0.15), height * 0.7), Stroke.Hidden);
        }

        if (item.RearProjectionMm > 0 && item.BodyDepthMm is not null)
        {
            group.Box(Along(plane + (way * depth), way * item.RearProjectionMm, y + (height * 0.15), height * 0.7), Stroke.Hidden);
        }

        group.Box(body, item.BodyDepthMm is null ? Stroke.Hidden : Stroke.Normal, item.BodyDepthMm is null ? Fill.Paper : Fill.Soft);
        if (item.Category == ItemCategory.BlankingPanel)
        {
            scene.Named.Add(item);
            return;
        }

        DrawRails(group, item, body);
    }

    // Runners: one strong line under the body from upright to upright. Slides: two.
    private void DrawRails(Canvas group, MountedItem item, Area body)
    {
        if (!item.HasRails)
        {
            return;
        }

        var (from, to) = scene.Cabinet.SpacingMm is null ? (body.X, body.Right) : (X(Stack.FrontPlaneMm), X(Stack.RearPlaneMm));
        group.Line(from, body.Bottom - 2, to, body.Bottom - 2, item.SupportStyle == SupportStyle.Runners ? Stroke.Thick : Stroke.Normal);
        if (item.SupportStyle == SupportStyle.Slides)
        {
            group.Line(from, body.Bottom - 7, to, body.Bottom - 7, Stroke.Normal);
        }
    }

    private Area Along(double from, double length, double y, double height) =>
        new(X(length < 0 ? from + length : from), y, Math.Abs(length), height);

    private void DrawDimensions()
    {
        const double Row = 64;
        var (cabinet, depth) = (scene.Cabinet, scene.Cabinet.Depth);
        var y = floor + 58;
        if (Stack.Deepest is { } deepest && boxes.ContainsKey(deepest))
        {
            var marks = Stack.Marks(deepest).Select(X).ToList();
            string[] words = [DepthStack.FirstWord(deepest), "body", DepthStack.LastWord(deepest)];
            Dimensions.Chain(canvas, marks, y, floor + 4, space, i => words[i]);
            y += Row;
        }

        var doors = new[] { 0, depth.FrontDoorMm, depth.RearLimitMm, depth.DepthMm }.Distinct().Select(X).ToList();
        Dimensions.Chain(canvas, doors, y, floor + 4, space, i => i == (depth.FrontDoorMm > 0 ? 1 : 0) ? "between doors" : null);
        y += Row;
        var planes = new List<double> { 0, Stack.FrontPlaneMm };
        if (Stack.IsRearSet)
        {
            planes.Add(Stack.RearPlaneMm);
        }

        if (planes[1] > 0 || planes.Count > 2)
        {
            var setback = cabinet.SetbackMm is null ? "setback (assumed)" : "setback";
            Dimensions.Chain(canvas, [.. planes.Distinct().Select(X)], y, floor + 4, space, i => i == 0 && planes[1] > 0 ? setback : "spacing of uprights");
            y += Row;
        }

        Dimensions.Chain(canvas, [X(0), X(depth.DepthMm)], y, floor + 4, space, _ => "overall depth");
    }
}
