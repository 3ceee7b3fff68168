using RackCheck.Engineering;
using RackCheck.Model;
using static System.FormattableString;

namespace RackCheck.Documents.Drawings.Elevations;

/// <summary>Draws the cabinet from above, at a smaller scale, with the swing of its doors in dashes.</summary>
internal static class PlanView
{
    private const double Scale = 0.4;

    /// <summary>Draws the plan.</summary>
    /// <param name="canvas">Takes the marks.</param>
    /// <param name="scene">The rack.</param>
    /// <param name="left">Left edge of the space.</param>
    /// <param name="top">Upper edge of the space.</param>
    /// <param name="width">Width of the space.</param>
    /// <returns>Lower edge of the plan.</returns>
    public static double Draw(Canvas canvas, Scene scene, double left, double top, double width)
    {
        var cabinet = scene.Cabinet;
        var (front, rear) = (Leaves(cabinet.Source.FrontDoor), Leaves(cabinet.Source.RearDoor));
        var leaf = (Front: Swing(cabinet.WidthMm, front), Rear: Swing(cabinet.WidthMm, rear));
        var shown = Math.Min(Scale, width / cabinet.WidthMm);
        var x = left + ((width - (shown * cabinet.WidthMm)) / 2);
        var body = new Area(x, top + (shown * leaf.Rear) + 4, shown * cabinet.WidthMm, shown * cabinet.Depth.DepthMm);
        canvas.Box(body, Stroke.Normal, Fill.Soft);
        DrawDoor(canvas, body, front, shown * leaf.Front, body.Bottom, 1);
        DrawDoor(canvas, body, rear, shown * leaf.Rear, body.Y, -1);
        if (body.Height > 3 * TypeSize.Small.Leading)
        {
            canvas.Text(body.MiddleX, body.Bottom - 12, "front", TypeSize.Small, Anchor.Middle);
            canvas.Text(body.MiddleX, body.Y + TypeSize.Small.Size + 4, "rear", TypeSize.Small, Anchor.Middle);
        }

        var bottom = body.Bottom + (shown * leaf.Front) + TypeSize.Small.Leading + 6;
        var leaves = $"Front at the bottom. Leaves: front {Words(front, leaf.Front)}, rear {Words(rear, leaf.Rear)}.";
        canvas.Text(left, bottom, leaves, TypeSize.Small, within: width);
        bottom += TypeSize.Small.Leading;
        canvas.Text(left, bottom, "The side of the hinges is not given: drawn on the left, seen from outside.", TypeSize.Small, within: width);
        return bottom;
    }

    private static string Words(int leaves, double leafMm) => leaves == 0 ? "none" : Invariant($"{leaves} of {leafMm:0.#} mm");

    private static int Leaves(Door? door) => door?.Style == DoorStyle.None ? 0 : door?.Leaves ?? 1;

    private static double Swing(double widthMm, int leaves) => leaves == 0 ? 0 : DoorLeaves.WidthMm(widthMm, leaves);

    // Each leaf stands open at a right angle; the arc is the way of its edge.
    private static void DrawDoor(Canvas canvas, Area body, int leaves, double leaf, double y, int outwards)
    {
        for (var i = 0; i < leaves; i++)
        {
            // Seen from outside, left is left at the front and right on the plan at the rear.
            var isLeft = (i == 0) == (outwards > 0);
            var hinge = isLeft ? body.X : body.Right;
            var edge = hinge + (isLeft ? leaf : -leaf);
            var sweep = isLeft == outwards > 0 ? 0 : 1;
            canvas.Outline(
                Invariant($"M{hinge:0.##} {y:0.##}V{y + (outwards * leaf):0.##}A{leaf:0.##} {leaf:0.##} 0 0 {sweep} {edge:0.##} {y:0.##}"), Stroke.Hidden);
        }
    }
}
