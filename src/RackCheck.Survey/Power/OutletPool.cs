using RackCheck.Model;

namespace RackCheck.Survey.Power;

/// <summary>Identical outlets of one group, and how many of them are free.</summary>
internal sealed class OutletPool
{
    private OutletPool(GroupNode group, ConnectorCode socket, bool switched, LoadPath path)
    {
        (Group, Socket, Switched, Path) = (group, socket, switched, path);
        OtherPlugs = PlugFit.Of(socket).Takes.Length - 1;
    }

    public GroupNode Group { get; }

    public ConnectorCode Socket { get; }

    public bool Switched { get; }

    /// <summary>What a cord in one of these outlets loads.</summary>
    public LoadPath Path { get; }

    /// <summary>How many other plugs fit the socket. It is kept free for them if possible.</summary>
    public int OtherPlugs { get; }

    public int Free { get; private set; }

    /// <summary>Whether the group has no other kind of outlet.</summary>
    public bool IsWholeGroup { get; private set; }

    /// <summary>The outlets of all groups, in the order of the request.</summary>
    public static OutletPool[] Of(PowerTree tree, CordLoads loads)
    {
        var pools = new List<OutletPool>(2 * tree.Groups.Length);
        foreach (var group in tree.Groups)
        {
            var first = pools.Count;
            var path = loads.PathOf(group);
            foreach (var outlets in group.Source.Outlets)
            {
                var switched = outlets.Switched ?? group.Unit.Source.RemoteSwitched ?? false;
                var same = pools.FindIndex(first, p => p.Socket == outlets.Socket && p.Switched == switched);
                if (same < 0)
                {
                    same = pools.Count;
                    pools.Add(new OutletPool(group, outlets.Socket, switched, path));
                }

                pools[same].Free += outlets.Count;
            }

            if (pools.Count == first + 1)
            {
                pools[first].IsWholeGroup = true;
            }
        }

        return [.. pools];
    }

    /// <summary>Whether a cord fits: plug, voltage and phases. A UPS never feeds a UPS, so no loop can arise.</summary>
    public bool Takes(Cord cord) =>
        PlugFit.Fits(cord.Code, Socket) && cord.Suits(Group.Unit.Supply) && (cord.Item.Item!.Ups is null || Group.Unit.FedBy is null);

    /// <summary>Occupies one outlet.</summary>
    public void Use() => Free--;

    /// <summary>Frees one outlet.</summary>
    public void Release() => Free++;

    /// <summary>Whether removing a cord from one pool can make capacity in the other: both load a line of the same PDU or supply, or one UPS.</summary>
    public bool SharesLine(OutletPool other) =>
        (ReferenceEquals(Group.Unit.Supply, other.Group.Unit.Supply) && (Path.PduLine == other.Path.PduLine || Path.SupplyLine == other.Path.SupplyLine))
            || (Path.Ups >= 0 && Path.Ups == other.Path.Ups);
}
