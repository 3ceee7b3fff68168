namespace RackCheck.Survey.Power;

/// <summary>
/// Gives the maximum number of cords a socket, regardless of load: augmenting paths from the present placement.
/// </summary>
internal sealed class CordMatching(CordPlacement placement, FreeCords cords, OutletPool[] pools)
{
    private readonly List<int>[] inPool = new List<int>[pools.Length];
    private readonly bool[] seenPools = new bool[pools.Length];
    private readonly bool[] seenKinds = new bool[cords.Count];
    private readonly bool[] hopeless = new bool[cords.Count];

    /// <summary>Finds sockets for cords without one.</summary>
    /// <returns>
    /// Whether all cords that are not set aside have a socket. If they do not, the fewest are without one: of them the last in the order of placing, since a
    /// cord that has a socket keeps one.
    /// </returns>
    public bool Run()
    {
        ListCords();
        var all = true;
        for (var cord = 0; cord < cords.Count; cord++)
        {
            if (placement.PoolOf(cord) >= 0 || placement.IsSetAside(cord))
            {
                continue;
            }

            // Cords of one kind fit the same outlets: where one of them found none, no other will, whatever was placed since.
            var kind = cords[cord].Kind;
            if (!hopeless[kind])
            {
                Array.Clear(seenPools);
                Array.Clear(seenKinds);
                hopeless[kind] = !Augment(cord);
            }

            all &= !hopeless[kind];
        }

        return all;
    }

    private void ListCords()
    {
        for (var pool = 0; pool < inPool.Length; pool++)
        {
            inPool[pool] = [];
        }

        for (var cord = 0; cord < cords.Count; cord++)
        {
            if (placement.PoolOf(cord) is >= 0 and var pool)
            {
                inPool[pool].Add(cord);
            }
        }
    }

    private bool Augment(int cord)
    {
        var kind = cords[cord].Kind;
        if (seenKinds[kind])
        {
            return false;
        }

        seenKinds[kind] = true;
        for (var pool = 0; pool < pools.Length; pool++)
        {
            if (seenPools[pool] || !cords.Fits(cord, pool))
            {
                continue;
            }

            seenPools[pool] = true;
            if (pools[pool].Free > 0 || MoveOneOut(pool))
            {
                placement.Put(cord, pool);
                inPool[pool].Add(cord);
                return true;
            }
        }

        return false;
    }

    private bool MoveOneOut(int pool)
    {
        var list = inPool[pool];
        for (var i = 0; i < list.Count; i++)
        {
            var other = list[i];
            if (seenKinds[cords[other].Kind])
            {
                continue;
            }

            placement.TakeOut(other);
            if (Augment(other))
            {
                list.RemoveAt(i);
                return true;
            }

            placement.Put(other, pool);
        }

        return false;
    }
}
