using RackCheck.Documents.Drawings;
using static RackCheck.Documents.Pages.Sketch;

namespace RackCheck.Documents.Pages;

/// <summary>The drawings of the dimensions. They are not to scale.</summary>
internal static class GlossaryDrawings
{
    private const double FirstRow = 500;
    private const double SecondRow = 590;

    private const string Body = "Side section of a cabinet, front on the left: ";

    /// <summary>Front setback.</summary>
    public static Drawing Setback() => new Sketch().Cabinet().Uprights()
        .Level(Front, FrontPlane, FirstRow, "setback")
        .Note(FrontPlane + 60, (Top + Bottom) / 2, "front mounting plane", Anchor.Start)
        .Draw("Front setback", Body + "the setback runs from the outer face of the front door to the front mounting plane.", 560);

    /// <summary>Spacing of the uprights.</summary>
    public static Drawing Spacing() => new Sketch().Cabinet().Uprights()
        .Level(FrontPlane, RearPlane, FirstRow, "upright spacing")
        .Draw("Upright spacing", Body + "the spacing runs from the front mounting plane to the rear mounting plane.", 560);

    /// <summary>Projections.</summary>
    public static Drawing Projections() => new Sketch().Cabinet().Uprights().Item(480, 90, 130)
        .Level(FrontPlane - 90, FrontPlane, 28, "front projection", ItemTop)
        .Level(FrontPlane, FrontPlane + 480, FirstRow, "body depth", ItemBottom)
        .Level(FrontPlane + 480, FrontPlane + 610, SecondRow, "rear projection", ItemBottom - 50)
        .Draw(
            "Projections",
            Body + "the front projection lies in front of the mounting plane, the body behind it, and the rear projection behind the body.",
            650);

    /// <summary>Usable depth.</summary>
    public static Drawing UsableDepth() => new Sketch().Cabinet().Uprights()
        .Level(Front + FrontDoor, Rear - RearDoor, FirstRow, "usable depth")
        .Level(Front, Rear, SecondRow, "cabinet depth")
        .Draw("Usable depth", Body + "the usable depth runs from the inner face of the front door to the inner face of the rear door.", 650);

    /// <summary>Panel and body, seen from the front.</summary>
    public static Drawing PanelAndBody()
    {
        const double Left = 330, Right = 1010, Upper = 130, Lower = 330;
        var sketch = new Sketch();
        foreach (var x in (ReadOnlySpan<double>)[Left, Right - 60])
        {
            sketch.Canvas.Box(new Area(x, 60, 60, 350), Stroke.Thin, Fill.Soft);
        }

        sketch.Canvas.Box(new Area(Left + 5, Upper, Right - Left - 10, Lower - Upper), Stroke.Thick, Fill.Paper);
        sketch.Canvas.Box(new Area(Left + 95, Upper + 20, Right - Left - 190, Lower - Upper - 40), Stroke.Hidden);
        return sketch
            .Note((Left + Right) / 2, 243, "body behind the panel")
            .Level(Left + 95, Right - 95, 440, "body width", Lower - 20)
            .Level(Left + 60, Right - 60, 520, "opening", 410)
            .Level(Left + 5, Right - 5, 600, "panel 482.6 mm", 410)
            .Upright(Upper, Lower, 270, "n x 1U", Left)
            .Draw(
                "Panel and body",
                "Front view of an item on its uprights: the panel covers both uprights, the body is narrower than the opening between them.",
                660);
    }

    /// <summary>Extension of slides.</summary>
    public static Drawing Extension()
    {
        var sketch = new Sketch().Cabinet().Uprights().Item(480, 50, 60, 320);
        sketch.Canvas.Line(FrontPlane - 320, ItemBottom + 14, RearPlane, ItemBottom + 14, Stroke.Thick);
        return sketch
            .Level(FrontPlane - 320, FrontPlane, FirstRow, "extension", ItemBottom + 14)
            .Note(RearPlane - 20, ItemBottom + 58, "slide", Anchor.End)
            .Draw(
                "Extension of slides",
                Body + "an item drawn out on its slides stands in front of the cabinet; the extension is how far its panel travels.",
                560);
    }

    /// <summary>Inset of the base.</summary>
    public static Drawing Inset()
    {
        var sketch = new Sketch().Cabinet();
        foreach (var x in (ReadOnlySpan<double>)[Front + FrontDoor + 110, Rear - RearDoor - 110])
        {
            sketch.Canvas.Box(new Area(x - 14, Bottom, 28, 36), Stroke.Normal, Fill.Paper);
            sketch.Canvas.Outline(FormattableString.Invariant($"M{x - 40} {Bottom + 36}h80v18h-80Z"), Stroke.Normal, Fill.Shade);
        }

        sketch.Canvas.Line(100, Bottom + 54, 1240, Bottom + 54, Stroke.Thick);
        return sketch
            .Level(Front + FrontDoor, Front + FrontDoor + 110, SecondRow, "inset")
            .Note((Front + Rear) / 2, 290, "frame between the doors")
            .Draw("Inset of the base", Body + "the inset runs from the face of the frame, behind the door, to the line of feet.", 650);
    }

    /// <summary>Stabiliser.</summary>
    public static Drawing Stabiliser()
    {
        var sketch = new Sketch().Cabinet();
        sketch.Canvas.Box(new Area(60, Bottom, Rear - 60, 22), Stroke.Normal, Fill.Shade);
        sketch.Canvas.Line(20, Bottom + 22, 1240, Bottom + 22, Stroke.Thick);
        return sketch
            .Level(60, Front, FirstRow + 40, "stabiliser", Bottom)
            .Note((Front + Rear) / 2, 290, "cabinet")
            .Draw("Stabiliser", Body + "the stabiliser runs from the front of the cabinet to the edge on which it is supported in front of it.", 600);
    }

    /// <summary>Aisles, seen from above.</summary>
    public static Drawing Aisles()
    {
        const double Upper = 120, Lower = 400;
        var sketch = new Sketch();
        sketch.Canvas.Box(new Area(460, Upper, 420, Lower - Upper), Stroke.Thick, Fill.Soft);
        foreach (var x in (ReadOnlySpan<double>)[60, 1260])
        {
            sketch.Canvas.Line(x, 60, x, 460, Stroke.Thick);
        }

        sketch.Canvas.Outline("M460 400A280 280 0 0 1 180 120H460", Stroke.Hidden);
        return sketch
            .Note(670, 270, "cabinet")
            .Note(300, 330, "door")
            .Level(60, 460, FirstRow, "front aisle", Lower)
            .Level(880, 1260, FirstRow, "rear aisle", Lower)
            .Draw("Aisles", "Plan of a cabinet, front on the left: the aisles are the free distances in front of it and behind it.", 560);
    }
}
