namespace RackCheck.Documents.Drawings.Elevations;

/// <summary>Space on a sheet that text has not taken yet, so that no two texts overlap.</summary>
internal sealed class LabelSpace
{
    private readonly List<Area> taken = [];

    /// <summary>Takes an area, free or not.</summary>
    public void Block(Area area) => taken.Add(area);

    /// <summary>Whether an area is free.</summary>
    public bool IsFree(Area area)
    {
        foreach (var other in taken)
        {
            if (other.Overlaps(area))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Takes the first free area.</summary>
    /// <param name="choices">Areas, the preferred first.</param>
    /// <returns>The area; null if none is free.</returns>
    public Area? TakeFirst(IEnumerable<Area> choices)
    {
        foreach (var choice in choices)
        {
            if (IsFree(choice))
            {
                taken.Add(choice);
                return choice;
            }
        }

        return null;
    }

    /// <summary>Rows in a box for a label: the middle first, then outwards; the whole width, then halves, then thirds.</summary>
    /// <param name="box">The box.</param>
    /// <param name="height">Height of the label.</param>
    /// <returns>The areas.</returns>
    public static IEnumerable<Area> Rows(Area box, double height)
    {
        const double Step = 8;
        var slack = Math.Max(0, (box.Height - height) / 2);
        for (var parts = 1; parts <= 4; parts++)
        {
            for (var part = 0; part < parts; part++)
            {
                var column = box with { X = box.X + (part * box.Width / parts), Width = (box.Width / parts) - (part < parts - 1 ? 6 : 0) };
                for (var off = 0.0; off <= slack; off += Step)
                {
                    yield return column with { Y = box.MiddleY - off - (height / 2), Height = height };
                    if (off > 0)
                    {
                        yield return column with { Y = box.MiddleY + off - (height / 2), Height = height };
                    }
                }
            }
        }
    }
}
