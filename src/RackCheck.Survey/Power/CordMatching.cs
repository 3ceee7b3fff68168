namespace RackCheck.Survey.Power;

/// <summary>
/// Gives the maximum number of cords a socket, regardless of load: augmenting paths from the present placement.
/// </summary>
internal sealed class CordMatching(CordPlacement placement, FreeCords cords, OutletPool[] pools)
{
    /// <summary>Finds sockets for cords without one.</summary>
    /// <returns>Whether all cords have a socket.</returns>
    public bool Run()
    {
        var all = true;
        Span<bool> seen = stackalloc bool[pools.Length];
        for (var cord = 0; cord < cords.Count; cord++)
        {
            if (placement.PoolOf(cord) < 0)
            {
                seen.Clear();
                all &= Augment(cord, seen);
            }
        }

        return all;
    }

    private bool Augment(int cord, Span<bool> seen)
    {
        for (var pool = 0; pool < pools.Length; pool++)
        {
            if (seen[pool] || !cords.Fits(cord, pool))
            {
                continue;
            }

            if (pools[pool].Free > 0)
            {
                placement.Put(cord, pool);
                return true;
            }

            seen[pool] = true;
            if (MoveOneOut(pool, seen))
            {
                placement.Put(cord, pool);
                return true;
            }
        }

        return false;
    }

    private bool MoveOneOut(int pool, Span<bool> seen)
    {
        for (var other = 0; other < cords.Count; other++)
        {
            if (placement.PoolOf(other) != pool)
            {
                continue;
            }

            placement.TakeOut(other);
            if (Augment(other, seen))
            {
                return true;
            }

            placement.Put(other, pool);
        }

        return false;
    }
}
