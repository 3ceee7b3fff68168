using RackCheck.Documents.Parts;
using RackCheck.Model;
using RackCheck.Survey.Layout;

namespace RackCheck.Documents.Drawings.Elevations;

/// <summary>The air conditioner on the outline of a cabinet: in dashes, since its size and place are not described.</summary>
internal static class CoolerOutline
{
    /// <summary>What is said of it beside the views.</summary>
    public const string PlaceWords = "Size and place are not described: drawn in dashes, not to scale.";

    private const double RoofMm = 110;
    private const double WallMm = 100;
    private const double MostMm = 900;

    /// <summary>Height above the cabinet.</summary>
    public static double Above(Scene scene) => Cooler(scene)?.Style == AirConditionerStyle.Roof ? RoofMm : 0;

    /// <summary>Width beside the cabinet, seen from the front or rear; none where it stands on the roof.</summary>
    public static double Beside(Scene scene) => Cooler(scene) is { Style: not AirConditionerStyle.Roof } ? WallMm : 0;

    /// <summary>Draws it: on the roof, or on the side panel that is at the left of the front, which is at the right of the rear.</summary>
    /// <param name="canvas">Takes the marks.</param>
    /// <param name="scene">The rack.</param>
    /// <param name="frame">The cabinet in the view.</param>
    /// <param name="face">The side that it is seen from; null for the side of the cabinet, where it is behind the equipment or on the roof.</param>
    /// <param name="edge">Edge of what is drawn beside the cabinet already.</param>
    public static void Draw(Canvas canvas, Scene scene, Area frame, Face? face, double edge)
    {
        if (Cooler(scene) is not { } cooler)
        {
            return;
        }

        var words = Words(cooler);
        var view = face is { } seen ? CabinetFacts.FaceText(seen) : "side";
        canvas.Group(words, [("data-part", "air-conditioner"), ("data-view", view)], g =>
        {
            if (cooler.Style == AirConditionerStyle.Roof)
            {
                var roof = new Area(frame.X + (frame.Width / 6), frame.Y - RoofMm, frame.Width * 2 / 3, RoofMm - 3);
                g.Box(roof, Stroke.Hidden);
                g.Text(roof.MiddleX, Text.Baseline(roof.MiddleY, TypeSize.Small.Size), words, TypeSize.Small, Anchor.Middle, within: roof.Width - 12);
                return;
            }

            if (face is null)
            {
                g.Box(FarPanel(frame), Stroke.Hidden);
                return;
            }

            var wall = FarPanel(frame) with { X = face == Face.Front ? edge - WallMm : edge, Width = WallMm };
            g.Box(wall, Stroke.Hidden);
            var x = Text.Baseline(wall.MiddleX, TypeSize.Small.Size);
            g.Text(x, wall.MiddleY, words, TypeSize.Small, Anchor.Middle, isUpright: true, within: wall.Height - 12);
        });
    }

    /// <summary>Names it in the side view, where no equipment is in front of it.</summary>
    /// <param name="canvas">Takes the marks.</param>
    /// <param name="scene">The rack.</param>
    /// <param name="frame">The cabinet in the view.</param>
    /// <param name="space">Space that equipment and names leave.</param>
    public static void NameInSide(Canvas canvas, Scene scene, Area frame, LabelSpace space)
    {
        if (Cooler(scene) is { Style: not AirConditionerStyle.Roof } cooler
            && space.TakeFirst(LabelSpace.Rows(FarPanel(frame).Inside(12, 12), TypeSize.Small.Size)) is { } row)
        {
            canvas.Text(row.X, Text.Baseline(row.MiddleY, TypeSize.Small.Size), Words(cooler), TypeSize.Small, tone: Tone.Light, within: row.Width);
        }
    }

    // On the far side panel, as seen from the side: behind the equipment.
    private static Area FarPanel(Area frame)
    {
        var height = Math.Min(MostMm, frame.Height * 0.7);
        return new Area(frame.X + (frame.Width / 4), frame.Y + ((frame.Height - height) / 3), frame.Width / 2, height);
    }

    /// <summary>Name and data of an air conditioner.</summary>
    public static string Words(AirConditioner cooler) => $"air conditioner, {CoolerParts.TextOf(cooler)}";

    private static AirConditioner? Cooler(Scene scene) => scene.Survey.Description.Cooling?.AirConditioner;
}
