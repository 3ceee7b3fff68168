namespace RackCheck.Survey.Power;

/// <summary>
/// Complete search for an assignment within limits, depth first, in the order of the cords. It stops after a number of steps. Of
/// assignments that differ only by an exchange of equal cords or of equal groups it tests one.
/// </summary>
internal sealed class CordSearch(CordPlacement placement, OutletChoice choice, FreeCords cords, OutletPool[] pools, CordLoads loads, SearchAllowance allowance)
{
    private const int MostSteps = 2_500;
    private const int BitsOfWord = 64;

    // A row of flags for each cord, one bit for each pool. It is not on the stack because the search is as deep as the number of cords.
    private readonly int rowLength = (pools.Length + BitsOfWord - 1) / BitsOfWord;
    private ulong[]? tried;
    private int[]? twins;
    private int stepsLeft;

    /// <summary>Whether a run stopped before it had tried everything.</summary>
    public bool IsCutShort { get; private set; }

    /// <summary>Places all cords again.</summary>
    /// <returns>Whether every cord that is not set aside has an outlet; otherwise none is placed.</returns>
    public bool Run(CordLimits limits)
    {
        placement.Clear();
        stepsLeft = MostSteps;
        twins ??= FindTwins();
        tried ??= new ulong[cords.Count * rowLength];
        var placed = PlaceFrom(0, limits);
        IsCutShort |= !placed && (stepsLeft < 0 || allowance.IsSpent);
        return placed;
    }

    // Twins go into pools in ascending order.
    private bool PlaceFrom(int cord, CordLimits limits)
    {
        if (cord == cords.Count)
        {
            return true;
        }

        if (placement.IsSetAside(cord))
        {
            return PlaceFrom(cord + 1, limits);
        }

        // A twin that is set aside has no pool, so any may be the first.
        var first = twins![cord] >= 0 ? Math.Max(0, placement.PoolOf(twins[cord])) : 0;
        var row = tried.AsSpan(cord * rowLength, rowLength);
        row.Clear();
        while (BestUntried(cord, first, row, limits) is >= 0 and var best && --stepsLeft >= 0 && !allowance.IsSpent)
        {
            for (var pool = first; pool < pools.Length; pool++)
            {
                if (pool == best || AreAlike(pools[pool], pools[best]))
                {
                    Mark(row, pool);
                }
            }

            placement.Put(cord, best);
            if (PlaceFrom(cord + 1, limits))
            {
                return true;
            }

            placement.TakeOut(cord);
        }

        return false;
    }

    private int BestUntried(int cord, int first, ReadOnlySpan<ulong> row, CordLimits limits)
    {
        var best = -1;
        var least = double.PositiveInfinity;
        allowance.Take(pools.Length);
        for (var pool = first; pool < pools.Length; pool++)
        {
            if (!IsMarked(row, pool) && placement.CanPut(cord, pool, limits) && choice.Score(cord, pool) is var score && score < least)
            {
                (best, least) = (pool, score);
            }
        }

        return best;
    }

    private static void Mark(Span<ulong> row, int pool) => row[pool / BitsOfWord] |= 1UL << (pool % BitsOfWord);

    private static bool IsMarked(ReadOnlySpan<ulong> row, int pool) => (row[pool / BitsOfWord] & (1UL << (pool % BitsOfWord))) != 0;

    private bool AreAlike(OutletPool a, OutletPool b) =>
        a.Socket == b.Socket && a.Switched == b.Switched && a.Free == b.Free && a.IsWholeGroup && b.IsWholeGroup && loads.AreAlike(a.Path, b.Path);

    // For each cord the cord just before it if the two are interchangeable; else -1.
    private int[] FindTwins()
    {
        var found = new int[cords.Count];
        for (var i = 0; i < found.Length; i++)
        {
            found[i] = i > 0 && AreTwins(cords[i - 1], cords[i]) ? i - 1 : -1;
        }

        return found;
    }

    private static bool AreTwins(in FreeCord a, in FreeCord b) =>
        a.Kind == b.Kind && a.Demand == b.Demand
        && a.Source.NeedsSwitchedOutlet == b.Source.NeedsSwitchedOutlet && (ReferenceEquals(a.Source.Item, b.Source.Item) || (!a.IsSpread && !b.IsSpread));
}
