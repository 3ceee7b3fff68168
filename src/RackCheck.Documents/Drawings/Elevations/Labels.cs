using RackCheck.Model;
using RackCheck.Survey.Layout;
using static System.FormattableString;

namespace RackCheck.Documents.Drawings.Elevations;

/// <summary>Writes the names of equipment into its faces.</summary>
/// <param name="scene">The rack.</param>
/// <param name="space">Space that is not taken yet.</param>
internal sealed class Labels(Scene scene, LabelSpace space)
{
    private const double Gap = 12;
    private const double LeastForMeta = 190;
    private const double LeastForTwoLines = 80;

    // A name that is written whole may be this small; in print at 1:10 it is 1.5 mm high.
    private const double LeastName = 15;

    /// <summary>Writes the name, and what else there is room for, into a box.</summary>
    /// <param name="canvas">Takes the marks.</param>
    /// <param name="item">The item.</param>
    /// <param name="box">Where its name can stand.</param>
    /// <param name="seenFrom">The side that it is seen from; null for the side of the cabinet.</param>
    /// <param name="isBehind">Whether it is seen behind its own face: the name alone, lighter.</param>
    /// <param name="pattern">The face whose pattern is under the text; null without one.</param>
    /// <returns>Whether there was room.</returns>
    public bool Write(Canvas canvas, MountedItem item, Area box, Face? seenFrom, bool isBehind, Area? pattern = null)
    {
        var name = Math.Min(TypeSize.Bold.Size, box.Height * 0.92) is var size && size >= 9 ? new TypeSize(size, !isBehind) : default;
        if (name.Size == 0 || box.Width < 20)
        {
            return false;
        }

        var change = scene.Rack.Changes.TryGetValue(item.Id, out var found) && !isBehind ? found.Words : null;
        var words = isBehind || box.Height < LeastForTwoLines ? null : Second(change, item.Item?.Description);
        var second = words is null ? 0 : TypeSize.Small.Leading;

        // Seen from behind it has its name in another view too: here the whole name or none.
        var least = isBehind && scene.Named.Contains(item) ? (name with { Size = Math.Min(name.Size, LeastName) }).Width(item.Id) : 0;
        var area = space.TakeFirst(LabelSpace.Rows(box, name.Size + second).Where(r => r.Width >= least));
        if (area is null && words is not null)
        {
            (words, second) = (null, 0);
            area = space.TakeFirst(LabelSpace.Rows(box, name.Size).Where(r => r.Width >= least));
        }

        if (area is not { } row)
        {
            return false;
        }

        if (isBehind && name.Width(item.Id) is var whole && whole > row.Width)
        {
            name = name with { Size = Math.Min(name.Size, Math.Max(LeastName, name.Size * row.Width / whole)) };
        }

        var texts = new Canvas();
        var first = Text.Baseline(row.Y + (name.Size / 2), name.Size);
        var left = isBehind ? row : Meta(texts, item, row, first, name.Size, seenFrom, words is null ? change : null);
        var used = texts.Text(left.X, first, item.Id, name, tone: isBehind ? Tone.Light : Tone.Ink, within: left.Width);
        scene.Named.Add(item);
        if (words is not null)
        {
            texts.Text(row.X, first + second, words, TypeSize.Small, tone: change is null ? Tone.Light : Tone.Ink, within: row.Width);
        }
        else if (!isBehind && item.Item?.Description is { } description && left.Width - used > 90)
        {
            texts.Text(left.X + used + Gap, first, description, TypeSize.Small, tone: Tone.Light, within: left.Width - used - Gap);
        }

        if (pattern is { } face)
        {
            ClearUnder(canvas, item, face, texts.Marks.OfType<Text>().Select(t => t.Area));
        }

        foreach (var mark in texts.Marks)
        {
            canvas.Add(mark);
        }

        return true;
    }

    // Text on a pattern has a clear patch behind it, as high as the face where that leaves no room for a line above and below.
    private static void ClearUnder(Canvas canvas, MountedItem item, Area face, IEnumerable<Area> texts)
    {
        const double Around = 5;
        const double Edge = 3;
        foreach (var text in texts)
        {
            var patch = text with { X = text.X - Around, Width = text.Width + (2 * Around) };
            patch = face.Height < 2 * text.Height ? patch with { Y = face.Y + Edge, Height = face.Height - (2 * Edge) } : patch;
            canvas.Box(item.Category == ItemCategory.CableManager ? ItemSigns.AroundRings(patch, face) : patch, Stroke.None, Fill.Paper);
        }
    }

    private static string? Second(string? change, string? description) =>
        change is null || description is null ? change ?? description : $"{change} \u00b7 {TextFit.Isolate(description)}";

    // Airflow, mass and height at the right end. What is left is for the name.
    private static Area Meta(Canvas canvas, MountedItem item, Area row, double baseline, double size, Face? seenFrom, string? change)
    {
        if (row.Width < LeastForMeta)
        {
            return row;
        }

        var type = TypeSize.Small with { Size = Math.Min(TypeSize.Small.Size, size) };
        var mass = item.Item?.MassKg is { } kilograms && change is null ? Invariant($"{kilograms:0.##} kg") : null;
        var meta = string.Join(" \u00b7 ", new[] { change, mass, item.HeightU > 0 ? Invariant($"{item.HeightU}U") : null }.Where(p => p is not null));
        var used = canvas.Text(row.Right, baseline, meta, type, Anchor.End, within: row.Width / 2);
        if (item.Item?.Airflow?.Direction is { } air and not AirflowDirection.None)
        {
            var x = row.Right - used - (ItemSigns.AirWidth / 2);
            var y = row.Y + (size / 2);
            if (seenFrom is { } face)
            {
                ItemSigns.DrawAir(canvas, air, face, x, y);
            }
            else
            {
                x -= 14;
                used += 20;
                ItemSigns.DrawAirFromSide(canvas, air, x, y);
            }

            used += ItemSigns.AirWidth;
        }

        return row.Inside(0, used > 0 ? used + Gap : 0);
    }
}
