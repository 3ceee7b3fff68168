using RackCheck.Model;

namespace RackCheck.Survey.Power;

/// <summary>
/// Connects the cords whose connections the request gives. They are kept even if the plug does not fit: a rule reports that.
/// </summary>
internal sealed class GivenConnections(PowerTree tree, OutletPool[] pools, CordLoads loads)
{
    public void PlugIn(IReadOnlyList<Connection>? connections)
    {
        for (var i = 0; i < connections?.Count; i++)
        {
            var given = connections[i];
            var cord = Array.Find(tree.Cords, c => c.Item.Id == given.Item && c.Plug == (given.Plug ?? 0));
            var pdu = Array.Find(tree.Units, u => u.Id == given.Pdu);
            if (cord is { Connection: null } && pdu?.GroupList.Find(g => g.Id == given.Group) is { } group)
            {
                cord.Connection = i;
                PlugIn(cord, group);
            }
        }
    }

    private void PlugIn(Cord cord, GroupNode group)
    {
        cord.Group = group;
        if (PoolFor(cord, group) is { } pool)
        {
            pool.Use();
            (cord.Socket, cord.Switched) = (pool.Socket, pool.Switched);
        }

        // A group without outlets carries nothing.
        if (Array.Find(pools, p => ReferenceEquals(p.Group, group)) is { Path: var path })
        {
            loads.Add(path, CordDemand.Of(cord));
        }
    }

    // The free outlet that fits the fewest other plugs is taken; among equals a switched one if the item needs it.
    private OutletPool? PoolFor(Cord cord, GroupNode group)
    {
        OutletPool? best = null;
        foreach (var pool in pools)
        {
            if (ReferenceEquals(pool.Group, group) && pool.Free > 0 && PlugFit.Fits(cord.Code, pool.Socket)
                && (best is null || pool.OtherPlugs < best.OtherPlugs || (pool.OtherPlugs == best.OtherPlugs && pool.Switched && cord.NeedsSwitchedOutlet)))
            {
                best = pool;
            }
        }

        return best;
    }
}
