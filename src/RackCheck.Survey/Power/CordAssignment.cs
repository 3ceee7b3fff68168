using RackCheck.Model;

namespace RackCheck.Survey.Power;

/// <summary>
/// Assigns cords to outlets. Always kept: the plug fits, an outlet takes one cord, the voltage suits the item, and, as far as the sockets allow, a
/// redundant item is fed from different supplies and a UPS from the supply that its PDUs are described on. Kept as far as possible: the limits of
/// <see cref="CordLimits"/>.
/// </summary>
/// <remarks>
/// The loads are balanced because each cord goes to the least loaded outlet. The result depends on the ids of items and on the order of
/// PDUs, but not on the order of items or on the names of supplies.
/// </remarks>
internal sealed class CordAssignment
{
    private readonly PowerTree tree;
    private readonly OutletPool[] pools;
    private readonly CordLoads loads;
    private readonly FreeCords cords;
    private readonly CordPlacement placement;
    private readonly SearchAllowance allowance = new();

    public CordAssignment(PowerTree tree, IReadOnlyList<Connection>? connections)
    {
        this.tree = tree;
        loads = new CordLoads(tree);
        pools = OutletPool.Of(tree, loads);
        new GivenConnections(tree, pools, loads).PlugIn(connections);
        cords = new FreeCords(tree, pools);
        placement = new CordPlacement(tree, cords, pools, loads);
    }

    /// <summary>Steps that the search took.</summary>
    public long Steps => allowance.Taken;

    /// <summary>Whether the search stopped at its limit without an assignment that keeps to every limit, so that a better one may exist.</summary>
    public bool IsCutShort { get; private set; }

    /// <summary>Finds outlets and writes them to the cords.</summary>
    public void Run()
    {
        if (cords.Count > 0 && pools.Length > 0)
        {
            Search();
            new LineBalancing(placement, cords, pools, loads, allowance).Run(tree.Supplies);
            placement.WriteToCords();
        }
    }

    private void Search()
    {
        var choice = new OutletChoice(placement, cords, pools, loads, allowance);
        var insertion = new CordInsertion(placement, choice, cords, pools, allowance);
        if (insertion.Run(CordLimits.DesignShare, push: false))
        {
            return;
        }

        // The first test is whether the plugs find sockets at all. If they do not, a search within limits cannot help.
        var search = new CordSearch(placement, choice, cords, pools, loads, allowance);
        if (!FindSockets(insertion, search))
        {
            // Cords that cannot have a socket must not decide where the others go: their load and the limits are searched without them.
            placement.SetAsideUnplaced();
            FindSockets(insertion, search);
        }

        var fallback = placement.Copy();
        foreach (var limits in (ReadOnlySpan<CordLimits>)[CordLimits.DesignShare, CordLimits.Failover, CordLimits.Ratings, CordLimits.Breakers])
        {
            // Without redundant items the loss of a supply adds no load to the others.
            var isNew = limits != CordLimits.Ratings || placement.HasSpread;
            if (isNew && !allowance.IsSpent && loads.HasRoom(limits, placement.SetAsideVoltAmperes)
                && (insertion.Run(limits, push: true) || (limits != CordLimits.DesignShare && search.Run(limits))))
            {
                // A stricter limit that was not searched to the end may have an assignment too.
                IsCutShort = limits != CordLimits.DesignShare && (allowance.IsSpent || search.IsCutShort);
                return;
            }
        }

        IsCutShort = allowance.IsSpent || search.IsCutShort;
        placement.Restore(fallback);
    }

    // Redundant items are kept apart if any assignment does; the sockets come first.
    private bool FindSockets(CordInsertion insertion, CordSearch search)
    {
        if (insertion.Run(CordLimits.Sockets, push: true) || search.Run(CordLimits.Sockets))
        {
            return true;
        }

        placement.AllowSharedSupply();
        return new CordMatching(placement, cords, pools).Run();
    }
}
