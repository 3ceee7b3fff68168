using RackCheck.Engineering;
using RackCheck.Model;
using static System.FormattableString;

namespace RackCheck.Documents.Drawings.Elevations;

/// <summary>Draws cabinet, base, floor and uprights.</summary>
internal static class CabinetFrame
{
    /// <summary>Half the width of the uprights with their U numbers.</summary>
    public const double UprightEdgeMm = (RackGeometry.PanelWidthMm / 2) + UprightMm;

    private const double UprightMm = 28;

    /// <summary>The cabinet above its base, as seen from one side.</summary>
    public static Area Outline(Scene scene, double left, double width, double floor)
    {
        var heights = scene.Heights;
        return new Area(left, floor - heights.OverallMm, width, heights.OverallMm - heights.BaseMm);
    }

    /// <summary>Draws the cabinet's outline with its base and the floor.</summary>
    public static void DrawOutline(Canvas canvas, Scene scene, Area outline, double floor)
    {
        canvas.Box(outline, Stroke.Thick, Fill.Paper);
        var height = floor - outline.Bottom;
        var style = scene.Survey.Mass.Stand.Style;
        if (style == BaseStyle.Wall)
        {
            return;
        }

        canvas.Line(outline.X - 30, floor, outline.Right + 30, floor, Stroke.Normal);
        if (height < 1)
        {
            return;
        }

        var inset = Math.Min(scene.Survey.Mass.Stand.InsetMm, outline.Width / 4);
        foreach (var x in (ReadOnlySpan<double>)[outline.X + inset, outline.Right - inset])
        {
            var inner = x < outline.MiddleX ? 1 : -1;
            switch (style)
            {
                case BaseStyle.Castors:
                    canvas.Disc(x + (inner * height / 2), floor - (height / 2), height / 2, Stroke.Normal, Fill.Paper);
                    break;
                case BaseStyle.Feet:
                    canvas.Box(new Area(x + (inner > 0 ? 0 : -40), outline.Bottom, 40, height), Stroke.Normal, Fill.Paper);
                    break;
            }
        }

        if (style is BaseStyle.Plinth or BaseStyle.Bolted)
        {
            canvas.Box(new Area(outline.X + inset, outline.Bottom, outline.Width - (2 * inset), height), Stroke.Normal, Fill.Shade);
        }
    }

    /// <summary>Draws both uprights with holes and U numbers, as seen from the front or rear.</summary>
    public static void DrawUprights(Canvas canvas, Scene scene, double centre, double floor, LabelSpace space, CordLines? cords)
    {
        var (cabinet, heights) = (scene.Cabinet, scene.Heights);
        var (top, bottom) = (floor - heights.EdgeMm(cabinet.HeightU + 1), floor - heights.EdgeMm(1));
        var inner = Math.Min(cabinet.OpeningMm / 2, (RackGeometry.PanelWidthMm / 2) - 6);
        foreach (var side in (ReadOnlySpan<int>)[-1, 1])
        {
            var left = side < 0 ? centre - UprightEdgeMm : centre + inner;
            canvas.Box(new Area(left, top, UprightEdgeMm - inner, bottom - top), Stroke.Thin, Fill.Paper);
        }

        var (first, last) = (bottom - RackGeometry.HoleCentreMm(1, 1) + (Ink.HoleMm / 2), top + 1);
        canvas.Line(centre - (RackGeometry.HoleSpacingMm / 2), first, centre - (RackGeometry.HoleSpacingMm / 2), last, Stroke.Holes);
        canvas.Line(centre + (RackGeometry.HoleSpacingMm / 2), first, centre + (RackGeometry.HoleSpacingMm / 2), last, Stroke.Holes);
        for (var unit = 1; unit <= cabinet.HeightU; unit++)
        {
            var baseline = Text.Baseline(floor - heights.EdgeMm(unit) - (RackGeometry.UnitMm / 2), TypeSize.Mark.Size);
            var number = Invariant($"{cabinet.Renumber(unit)}");
            foreach (var side in (ReadOnlySpan<int>)[-1, 1])
            {
                if (cords?.Covers(side) == true)
                {
                    continue;
                }

                var x = centre + (side * ((RackGeometry.PanelWidthMm / 2) + (UprightMm / 2)));
                canvas.Text(x, baseline, number, TypeSize.Mark, Anchor.Middle);
            }
        }

        space.Block(new Area(centre - UprightEdgeMm, top, UprightMm, bottom - top));
        space.Block(new Area(centre + UprightEdgeMm - UprightMm, top, UprightMm, bottom - top));
    }
}
