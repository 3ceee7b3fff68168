namespace RackCheck.Survey.Power;

/// <summary>Places the cords one after another, each in the best outlet; a cord without an outlet can displace others.</summary>
internal sealed class CordInsertion(CordPlacement placement, OutletChoice choice, FreeCords cords, OutletPool[] pools, SearchAllowance allowance)
{
    private const int MostPushes = 1_000;
    private const int MostPushedInARow = 3;

    private int pushesLeft;

    /// <summary>Places all cords again.</summary>
    /// <returns>Whether every cord that is not set aside has an outlet. Within current limits it stops at the first cord without one.</returns>
    public bool Run(CordLimits limits, bool push)
    {
        placement.Clear();
        pushesLeft = MostPushes;
        var all = true;
        for (var cord = 0; cord < cords.Count && (all || limits == CordLimits.Sockets); cord++)
        {
            all &= placement.IsSetAside(cord) || Insert(cord, limits, push ? MostPushedInARow : 0);
        }

        return all;
    }

    private bool Insert(int cord, CordLimits limits, int depth)
    {
        if (choice.Best(cord, limits) is >= 0 and var best)
        {
            placement.Put(cord, best);
            return true;
        }

        return depth > 0 && !allowance.IsSpent && PushAside(cord, limits, depth);
    }

    private bool PushAside(int cord, CordLimits limits, int depth)
    {
        for (var pool = 0; pool < pools.Length && !allowance.IsSpent; pool++)
        {
            if (cords.Fits(cord, pool) && PushOutOf(pool, cord, limits, depth))
            {
                return true;
            }
        }

        return false;
    }

    private bool PushOutOf(int pool, int cord, CordLimits limits, int depth)
    {
        allowance.Take(cords.Count);
        for (var other = 0; other < cords.Count && pushesLeft >= 0; other++)
        {
            if (other != cord && MakesRoom(other, pool) && --pushesLeft >= 0 && Exchange(cord, pool, other, limits, depth))
            {
                return true;
            }
        }

        return false;
    }

    private bool MakesRoom(int other, int pool) =>
        placement.PoolOf(other) is >= 0 and var from && (from == pool || (pools[pool].Free > 0 && pools[from].SharesLine(pools[pool])));

    private bool Exchange(int cord, int pool, int other, CordLimits limits, int depth)
    {
        var from = placement.PoolOf(other);
        placement.TakeOut(other);
        if (placement.CanPut(cord, pool, limits))
        {
            placement.Put(cord, pool);
            if (Insert(other, limits, depth - 1))
            {
                return true;
            }

            placement.TakeOut(cord);
        }

        placement.Put(other, from);
        return false;
    }
}
