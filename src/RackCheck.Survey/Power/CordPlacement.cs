namespace RackCheck.Survey.Power;

/// <summary>
/// The pool of outlets of each cord, with free outlets, currents and the cords of an item on each supply. Only adding and
/// removing a cord changes it.
/// </summary>
internal sealed class CordPlacement
{
    private readonly FreeCords cords;
    private readonly OutletPool[] pools;
    private readonly CordLoads loads;
    private readonly int supplies;
    private readonly int[] poolOf;
    private readonly int[]? cordsOnSupply;
    private bool mayShareSupply;
    private bool[]? setAside;

    public CordPlacement(PowerTree tree, FreeCords cords, OutletPool[] pools, CordLoads loads)
    {
        (this.cords, this.pools, this.loads, supplies) = (cords, pools, loads, tree.Supplies.Length);
        poolOf = new int[cords.Count];
        Array.Fill(poolOf, -1);
        cordsOnSupply = cords.AnySpread ? CountGiven(tree) : null;
    }

    /// <summary>Whether redundant items must be fed from different supplies, so that the loss of a supply matters.</summary>
    public bool HasSpread => cordsOnSupply is not null;

    /// <summary>The pool of a cord; -1 if it has none.</summary>
    public int PoolOf(int cord) => poolOf[cord];

    /// <summary>From now on the cords of a redundant item can go to one supply, and the cord of a UPS to another than its PDUs are described on.</summary>
    public void AllowSharedSupply() => mayShareSupply = true;

    /// <summary>Power of the cords that are set aside, VA.</summary>
    public double SetAsideVoltAmperes { get; private set; }

    /// <summary>Whether a cord is left without an outlet, so that the others are placed without it.</summary>
    public bool IsSetAside(int cord) => setAside is not null && setAside[cord];

    /// <summary>Sets the cords aside that have no outlet now. The cords of a redundant item are kept apart again.</summary>
    public void SetAsideUnplaced()
    {
        mayShareSupply = false;
        setAside = new bool[poolOf.Length];
        for (var cord = 0; cord < poolOf.Length; cord++)
        {
            setAside[cord] = poolOf[cord] < 0;
            SetAsideVoltAmperes += setAside[cord] ? cords[cord].Demand.VoltAmperes : 0;
        }
    }

    /// <summary>Whether a cord can go into a pool within all limits.</summary>
    public bool CanPut(int cord, int pool, CordLimits limits)
    {
        var to = pools[pool];
        ref readonly var what = ref cords[cord];
        return to.Free > 0 && cords.Fits(cord, pool)
            && (mayShareSupply || ((!what.IsSpread || KeepsApart(what.Source, to)) && what.Ups?.IsDescribedOn(to.Group.Unit.Supply) != false))
            && loads.Keeps(to.Path, what.Demand, limits);
    }

    public void Put(int cord, int pool)
    {
        var to = pools[pool];
        ref readonly var what = ref cords[cord];
        poolOf[cord] = pool;
        to.Use();
        loads.Add(to.Path, what.Demand);
        if (what.IsSpread)
        {
            CordsOnSupply(what.Source, to)++;
        }
    }

    public void TakeOut(int cord)
    {
        var from = pools[poolOf[cord]];
        ref readonly var what = ref cords[cord];
        poolOf[cord] = -1;
        from.Release();
        loads.Remove(from.Path, what.Demand);
        if (what.IsSpread)
        {
            CordsOnSupply(what.Source, from)--;
        }
    }

    public void Clear()
    {
        for (var cord = 0; cord < poolOf.Length; cord++)
        {
            if (poolOf[cord] >= 0)
            {
                TakeOut(cord);
            }
        }
    }

    /// <summary>The present state, to be restored later.</summary>
    public int[] Copy() => (int[])poolOf.Clone();

    public void Restore(int[] copy)
    {
        Clear();
        for (var cord = 0; cord < copy.Length; cord++)
        {
            if (copy[cord] >= 0)
            {
                Put(cord, copy[cord]);
            }
        }
    }

    /// <summary>Writes the outlets found to the cords.</summary>
    public void WriteToCords()
    {
        for (var cord = 0; cord < poolOf.Length; cord++)
        {
            if (poolOf[cord] >= 0)
            {
                var (source, pool) = (cords[cord].Source, pools[poolOf[cord]]);
                (source.Group, source.Socket, source.Switched) = (pool.Group, pool.Socket, pool.Switched);
            }
        }
    }

    // No supply can feed more than half of the cords of a redundant item: its loss would leave too few cords for the load.
    private bool KeepsApart(Cord cord, OutletPool to) => CordsOnSupply(cord, to) < (cord.Siblings + 1) / 2;

    private ref int CordsOnSupply(Cord cord, OutletPool pool) => ref cordsOnSupply![(cord.Item.Index * supplies) + FeederOf(pool.Group.Unit).Index];

    private int[] CountGiven(PowerTree tree)
    {
        var counts = new int[tree.ItemCount * supplies];
        foreach (var cord in tree.Cords)
        {
            if (cord is { Connection: not null, Group: { } group })
            {
                counts[(cord.Item.Index * supplies) + FeederOf(group.Unit).Index]++;
            }
        }

        return counts;
    }

    // A UPS whose only cord is connected feeds its PDUs from there, whatever supply they are described on.
    private static SupplyNode FeederOf(PduNode unit) =>
        unit.FedBy is { Cords: [{ Connection: not null, Group.Unit: var before }] } ? before.Supply : unit.Supply;
}
