using RackCheck.Engineering;
using RackCheck.Model;
using RackCheck.Survey.Layout;
using RackCheck.Survey.Power;
using static System.FormattableString;

namespace RackCheck.Documents.Drawings.Elevations;

/// <summary>Draws vertical PDUs beside the rear uprights, and the cords of the assignment, in the rear view.</summary>
internal sealed class CordLines
{
    private const double PduWidth = 40;
    private const double LeastPduWidth = 24;
    private const double NarrowPduWidth = 15;
    private const double ChannelWidth = 12;
    private const double NarrowChannelWidth = 8.5;
    private const double ShelfStep = 6;

    private const double BesideUpright = CabinetFrame.UprightEdgeMm + 3;

    // Panels on the rear uprights end here.
    private const double OverUpright = (RackGeometry.PanelWidthMm / 2) + 1;

    private readonly Scene scene;
    private readonly double centre;
    private readonly Area frame;
    private readonly double floor;
    private readonly Dictionary<PduNode, Area> places = [];
    private readonly Dictionary<PduNode, int> sides = [];
    private readonly double[] channels = [BesideUpright, BesideUpright];
    private readonly HashSet<int> covered = [];
    private readonly Dictionary<MountedItem, List<(PduNode Pdu, int Count)>> cords = [];

    public CordLines(Scene scene, double centre, Area frame, double floor)
    {
        (this.scene, this.centre, this.frame, this.floor) = (scene, centre, frame, floor);
        foreach (var group in scene.Survey.Power.Cords.Where(c => c.Group is not null).GroupBy(c => c.Item))
        {
            cords[group.Key] = [.. group.GroupBy(c => c.Group!.Unit).Select(g => (g.Key, g.Count())).OrderBy(g => g.Key.Index)];
        }

        PlacePdus();
    }

    /// <summary>Left edge of the PDUs.</summary>
    public double Left => places.Values.Select(p => p.X).DefaultIfEmpty(frame.X).Min();

    /// <summary>Right edge of the PDUs.</summary>
    public double Right => places.Values.Select(p => p.Right).DefaultIfEmpty(0).Max();

    /// <summary>Whether PDUs cover the U numbers of a side: -1 for the left, 1 for the right.</summary>
    public bool Covers(int side) => covered.Contains(side);

    /// <summary>Where a PDU is; null if it is not drawn.</summary>
    public Area? PlaceOf(PduNode pdu) => places.TryGetValue(pdu, out var place) ? place : null;

    /// <summary>Draws the vertical PDUs.</summary>
    public void DrawPdus(Canvas canvas, LabelSpace space)
    {
        foreach (var (pdu, place) in places.Where(p => p.Key.Source.Mounting == PduMounting.Vertical))
        {
            scene.DrawnPdus.Add(pdu);
            space.Block(place);
            var letter = scene.LetterOf(pdu);
            canvas.Group($"PDU {pdu.Id}, vertical, feed {letter}", [("data-pdu", pdu.Id), ("data-view", "rear")], g =>
            {
                g.Box(place, Stroke.Normal, Fill.Shade);
                if (scene.Rack.Changes.TryGetValue(pdu.Id, out var change))
                {
                    ItemSigns.DrawChange(g, change.Kind, place with { Height = Math.Min(60, place.Height) });
                }

            });
        }
    }

    /// <summary>Writes the names of the vertical PDUs over the cords that cross them on their way to others.</summary>
    public void NamePdus(Canvas canvas)
    {
        const double Around = 6;

        // Ids and part numbers are capitals and figures: these are in the middle, not the small letters.
        const double CapitalMiddle = 0.365;
        foreach (var (pdu, place) in places.Where(p => p.Key.Source.Mounting == PduMounting.Vertical))
        {
            var type = TypeSize.SmallBold with { Size = Math.Min(20, place.Width - 3) };
            var words = $"{scene.LetterOf(pdu)}: {pdu.Id}" + (scene.Rack.Changes.TryGetValue(pdu.Id, out var told) ? $", {told.Words}" : "");
            var within = place.Height / 2;
            var length = Math.Min(within, type.Width(words)) + (2 * Around);
            var patch = new Area(place.X + 2, place.MiddleY - (length / 2), place.Width - 4, length);
            canvas.Group($"PDU {pdu.Id}", [], g =>
            {
                g.Box(patch, Stroke.None, Fill.Shade);
                g.Text(place.MiddleX + (CapitalMiddle * type.Size), place.MiddleY, words, type, Anchor.Middle, isUpright: true, within: within);
            });
        }
    }

    /// <summary>Draws the cords of an item, with the letters of their feeds at its edges.</summary>
    /// <returns>Width of the letters at its left and right edge.</returns>
    public (double Left, double Right) DrawCords(Canvas canvas, MountedItem item, Area box, LabelSpace space)
    {
        if (!cords.TryGetValue(item, out var all))
        {
            return (0, 0);
        }

        var widths = (Left: 0.0, Right: 0.0);
        foreach (var side in (ReadOnlySpan<int>)[-1, 1])
        {
            var own = all.Where(c => sides.GetValueOrDefault(c.Pdu) == side).ToList();
            if (own.Count == 0)
            {
                continue;
            }

            var edge = side < 0 ? box.X : box.Right;
            for (var i = 0; i < own.Count; i++)
            {
                DrawCord(canvas, own[i].Pdu, edge, Height(box, i) - Step(item, box), side, i);
                scene.DrawnCords += places.ContainsKey(own[i].Pdu) ? own[i].Count : 0;
            }

            var letters = string.Join(" ", own.GroupBy(c => scene.LetterOf(c.Pdu)).Select(g => Letter(g.Key, g.Sum(c => c.Count))));
            var type = TypeSize.SmallBold with { Size = Math.Min(TypeSize.Mark.Size, box.Height * 0.9) };
            var width = type.Width(letters);
            if (type.Size < 8 || width > box.Width / 3)
            {
                continue;
            }

            var area = new Area(side < 0 ? box.X + 6 : box.Right - 6 - width, box.MiddleY - (type.Size / 2), width, type.Size);
            if (space.TakeFirst([area, area with { Y = box.Y + 2 }, area with { Y = box.Bottom - type.Size - 2 }]) is { } free)
            {
                canvas.Text(free.X, Text.Baseline(free.MiddleY, type.Size), letters, type);
                widths = side < 0 ? widths with { Left = width + 8 } : widths with { Right = width + 8 };
            }
        }

        return widths;
    }

    private static string Letter(string feed, int count) => count > 1 ? Invariant($"{count}\u00d7{feed}") : feed;

    // Between the U numbers of the uprights, not across them.
    private static double Height(Area box, int index)
    {
        var off = Math.Min(5 + (5 * (index / 2 % 2)), box.Height / 3);
        return index % 2 == 0 ? box.Bottom - off : box.Y + off;
    }

    // Cords of items side by side on a shelf run at heights of their own: they cross the neighbours.
    private static double Step(MountedItem item, Area box)
    {
        var before = item.Shelf?.Load.TakeWhile(l => !ReferenceEquals(l, item)).Count() ?? 0;
        return Math.Min(before * ShelfStep, box.Height / 3);
    }

    private void DrawCord(Canvas canvas, PduNode pdu, double edge, double y, int side, int index)
    {
        if (!places.TryGetValue(pdu, out var place))
        {
            return;
        }

        var stroke = Scene.CordOf(pdu);
        canvas.Disc(edge, y, 3.5, Stroke.None, Fill.Ink);
        if (pdu.Source.Mounting == PduMounting.Vertical)
        {
            var end = side < 0 ? place.Right : place.X;
            var bend = Math.Clamp(y, place.Y + 6, Math.Max(place.Y + 6, place.Bottom - 6));
            canvas.Outline(bend == y ? Invariant($"M{edge:0.##} {y:0.##}H{end:0.##}") : Channel(edge, y, side, index, bend, end), stroke);
            return;
        }

        var to = side < 0 ? place.X : place.Right;
        canvas.Outline(Channel(edge, y, side, index, place.MiddleY + 14, to), stroke);
    }

    private string Channel(double edge, double y, int side, int index, double toY, double toX)
    {
        var x = centre + (side * (channels[side < 0 ? 0 : 1] + (3 * (index % 3))));
        return Invariant($"M{edge:0.##} {y:0.##}H{x:0.##}V{toY:0.##}H{toX:0.##}");
    }

    // Feeds take turns: the first on the left, the second on the right. PDUs of one side stand above each other as far as the uprights are long enough.
    private void PlacePdus()
    {
        var units = scene.Survey.Power.Units;
        var feeds = units.Select(u => u.Supply.Index).Distinct().Count();
        foreach (var unit in units)
        {
            sides[unit] = (feeds > 1 ? unit.Supply.Index : unit.Index) % 2 == 0 ? -1 : 1;
        }

        foreach (var mounted in scene.Survey.Units.Where(scene.IsInside))
        {
            var unit = Array.Find(units, u => u.Index == mounted.Index)!;
            var top = floor - scene.Heights.EdgeMm(mounted.Top + 1);
            var width = mounted.Face == Face.Rear ? RackGeometry.PanelWidthMm : 440;
            places[unit] = new Area(centre - (width / 2), top, width, RackGeometry.UnitMm);
        }

        var hasChannel = places.Count > 0;
        foreach (var side in (ReadOnlySpan<int>)[-1, 1])
        {
            PlaceSide([.. units.Where(u => u.Source.Mounting == PduMounting.Vertical && sides[u] == side)], side, hasChannel);
        }
    }

    private void PlaceSide(PduNode[] units, int side, bool hasChannel)
    {
        if (units.Length == 0)
        {
            return;
        }

        var upright = RackGeometry.ApertureMm(scene.Cabinet.HeightU);
        var lanes = new List<double>();
        var chosen = new List<(PduNode Unit, int Lane, double From, double Length)>();
        foreach (var unit in units)
        {
            var length = Math.Min(unit.Source.LengthMm ?? upright, upright);
            var lane = lanes.FindIndex(used => !Comparison.IsOver(used + length, upright));
            if (lane < 0)
            {
                lane = lanes.Count;
                lanes.Add(0);
            }

            chosen.Add((unit, lane, lanes[lane], length));
            lanes[lane] += length;
        }

        var (start, width) = Lane(side, lanes.Count, hasChannel);
        var bottom = floor - scene.Heights.EdgeMm(1);
        foreach (var (unit, lane, from, length) in chosen)
        {
            var near = start + (lane * width);
            var x = side < 0 ? centre - near - width : centre + near;
            places[unit] = new Area(x, bottom - from - length, width, length);
        }
    }

    // Between upright and side panel if there is room. In a narrow cabinet PDUs are behind the rear uprights and cover them, U numbers first; only where
    // even that is too narrow they are drawn outside the outline.
    private (double Start, double Width) Lane(int side, int count, bool hasChannel)
    {
        var inside = frame.Width / 2;
        foreach (var (start, margin, least, channel) in (ReadOnlySpan<(double, double, double, double)>)
        [
            (BesideUpright, 5, LeastPduWidth, ChannelWidth), (CabinetFrame.UprightEdgeMm + 1, 3.5, NarrowPduWidth, NarrowChannelWidth),
            (OverUpright, 3.5, NarrowPduWidth, NarrowChannelWidth),
        ])
        {
            var from = start + (hasChannel ? channel : 0);
            var width = (inside - margin - from) / count;
            if (width >= least)
            {
                channels[side < 0 ? 0 : 1] = start;
                if (start <= OverUpright)
                {
                    covered.Add(side);
                }

                return (from, Math.Min(PduWidth, width));
            }
        }

        var outside = BesideUpright + (hasChannel ? ChannelWidth : 0);
        return (inside > outside ? inside + 8 : outside, PduWidth);
    }
}
