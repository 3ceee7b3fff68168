namespace RackCheck.Planning.Proposals;

/// <summary>The preferred racks and others that each gain something over every other.</summary>
/// <typeparam name="T">A rack, or the racks of a row.</typeparam>
/// <param name="most">Maximum number of alternatives.</param>
/// <param name="trialsOf">The racks of an alternative.</param>
internal sealed class Alternatives<T>(int most, Func<T, IReadOnlyList<Trial>> trialsOf)
{
    // Figures of the first are needed only if there is a second.
    private readonly List<(T Racks, Lazy<RackFigures> Figures)> all = [];

    /// <summary>The alternatives, the preferred one first.</summary>
    public IEnumerable<T> All => all.Select(a => a.Racks);

    /// <summary>Whether there are as many as wanted.</summary>
    public bool IsFull => all.Count >= most;

    /// <summary>Adds racks, the first in any case, others that gain something over all that there are. Those that gain nothing over them are dropped.</summary>
    /// <param name="racks">The racks.</param>
    public void Add(T racks)
    {
        var figures = new Lazy<RackFigures>(() => new RackFigures(trialsOf(racks)));
        if (all.Exists(a => !TradeOffs.Gains(figures.Value, a.Figures.Value)))
        {
            return;
        }

        for (var i = all.Count - 1; i > 0; i--)
        {
            if (!TradeOffs.Gains(all[i].Figures.Value, figures.Value))
            {
                all.RemoveAt(i);
            }
        }

        if (!IsFull)
        {
            all.Add((racks, figures));
        }
    }
}
