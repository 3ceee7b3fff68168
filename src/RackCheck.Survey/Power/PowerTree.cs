using RackCheck.Model;
using RackCheck.Survey.Assumed;
using RackCheck.Survey.Layout;
using RackCheck.Survey.Limits;

namespace RackCheck.Survey.Power;

/// <summary>
/// The power tree: the outlet group, PDU and supply of each cord, and the current of each, in normal use and with each supply
/// lost. It is calculated once. Currents are arithmetic sums: power factors differ little, and the sum is conservative.
/// </summary>
public sealed class PowerTree
{
    private readonly MountedItem[] items;
    private PowerFigures? figures;

    internal PowerTree(RackDescription description, MountedItem[] items, LimitsInForce limits, List<AssumedValue>? assumptions, PowerTree? wiredAlike = null)
    {
        this.items = items;
        IsDescribed = description.Pdus is not null;
        IsNorthAmerica = description.Site?.Region == Region.Na;
        (Supplies, Units, Groups) = PowerTreeBuilder.Nodes(description, limits, assumptions);
        Ups = PowerTreeBuilder.UpsNodes(items, Units);
        Cords = PowerTreeBuilder.Cords(items, Supplies.Length, Ups, IsDescribed ? assumptions : null);
        if (IsDescribed)
        {
            if (wiredAlike is null)
            {
                var assignment = new CordAssignment(this, description.Connections);
                assignment.Run();
                (SearchSteps, IsSearchCutShort) = (assignment.Steps, assignment.IsCutShort);
            }
            else
            {
                WireLike(wiredAlike);
                IsSearchCutShort = wiredAlike.IsSearchCutShort;
            }

            foreach (var unit in Units)
            {
                unit.IsBehindUps = unit.FedBy is { } ups && Array.Exists(ups.Cords, c => c.Group is not null);
            }

            Solve();
        }
    }

    /// <summary>Whether PDUs are described; an empty list counts.</summary>
    public bool IsDescribed { get; }

    internal int ItemCount => items.Length;

    /// <summary>Whether North American ratings apply.</summary>
    public bool IsNorthAmerica { get; }

    /// <summary>Supplies, in the order of the request.</summary>
    public SupplyNode[] Supplies { get; }

    /// <summary>PDUs, in the order of the request.</summary>
    public PduNode[] Units { get; }

    /// <summary>Outlet groups of all PDUs, in the order of the request.</summary>
    public GroupNode[] Groups { get; }

    /// <summary>All cords, by item id and plug.</summary>
    public Cord[] Cords { get; }

    /// <summary>Uninterruptible power supplies.</summary>
    public UpsNode[] Ups { get; }

    /// <summary>The power figures of the report; null without power data.</summary>
    public PowerFigures? Figures => figures ??= PowerFiguresMaker.Make(this, items);

    /// <summary>Steps that the search for outlets took, as a measure of its cost.</summary>
    public long SearchSteps { get; }

    /// <summary>Whether the search for outlets stopped at its limit, so that a better assignment may exist.</summary>
    public bool IsSearchCutShort { get; }

    /// <summary>Power that an item draws from the mains or a UPS, W: rated, else typical as a minimum, else 0.</summary>
    /// <param name="item">The item, not a UPS.</param>
    public static double WattsOf(Item item) => item.Power?.RatedW ?? item.Power?.TypicalW ?? 0;

    /// <summary>The cords of an item, in the order of its plugs.</summary>
    public IEnumerable<Cord> CordsOf(MountedItem item) => Cords.Where(c => ReferenceEquals(c.Item, item));

    // The same cords in the same outlets: only loads, ratings or the room differ.
    private void WireLike(PowerTree other)
    {
        for (var i = 0; i < Cords.Length; i++)
        {
            var (cord, from) = (Cords[i], other.Cords[i]);
            cord.Group = from.Group is { FlatIndex: var group } ? Groups[group] : null;
            (cord.Connection, cord.Socket, cord.Switched) = (from.Connection, from.Socket, from.Switched);
        }
    }

    private void Solve()
    {
        new PowerSolver(this).Run(null);
        var failover = Array.Exists(Cords, c => c.IsRedundant && c.Siblings > 1);
        if (failover && Supplies.Length > 1)
        {
            foreach (var supply in Supplies)
            {
                new PowerSolver(this).Run(supply);
            }
        }

        foreach (var cord in Cords)
        {
            if (cord.Group is { Unit: var unit })
            {
                unit.LeakageMa += cord.LeakageMa ?? 0;
                unit.LeakageIsKnown &= cord.LeakageMa is not null;
                unit.Supply.LeakageMa += cord.LeakageMa ?? 0;
                unit.Supply.LeakageIsKnown &= cord.LeakageMa is not null;
            }
        }

        foreach (var supply in Supplies)
        {
            FindInrush(supply);
        }
    }

    // Remotely switched outlets start in sequence; all others start together.
    private void FindInrush(SupplyNode supply)
    {
        for (var line = 0; line < supply.LineList.Length; line++)
        {
            double together = 0, alone = 0;
            foreach (var cord in Cords)
            {
                if (cord.Group is { } group && !group.Unit.IsBehindUps && ReferenceEquals(group.Unit.Supply, supply)
                    && (group.Loads(line) || cord.IsThreePhase))
                {
                    supply.InrushIsKnown &= cord.InrushA is not null;
                    (together, alone) = cord.Switched ? (together, Math.Max(alone, cord.InrushA ?? 0)) : (together + (cord.InrushA ?? 0), alone);
                }
            }

            if (Math.Max(together, alone) is var most && most > supply.InrushA)
            {
                (supply.InrushA, supply.InrushLine) = (most, line);
            }
        }
    }
}
