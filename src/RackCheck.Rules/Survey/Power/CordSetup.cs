using RackCheck.Model;

namespace RackCheck.Rules.Survey.Power;

/// <content>What the search works on: bins of equal outlets, nodes that carry, cords in order.</content>
internal sealed partial class CordAssignment
{
    private static Bin[] MakeBins(PowerTree tree)
    {
        var made = new List<Bin>(2 * tree.Groups.Length);
        foreach (var group in tree.Groups)
        {
            var first = made.Count;
            foreach (var outlets in group.Source.Outlets)
            {
                var switched = outlets.Switched ?? group.Unit.Source.RemoteSwitched ?? false;
                var same = made.FindIndex(first, b => b.Socket == outlets.Socket && b.Switched == switched);
                if (same >= 0)
                {
                    made[same].Free += outlets.Count;
                    continue;
                }

                made.Add(new Bin
                {
                    Group = group,
                    Socket = outlets.Socket,
                    Switched = switched,
                    Free = outlets.Count,
                    Others = PlugFit.Of(outlets.Socket).Takes.Length - 1,
                    VoltageV = group.Unit.Supply.Source.VoltageV,
                    GroupNode = group.FlatIndex,
                    LineNode = UnitNodeOf(tree, group.Unit.Index, group.Line),
                    SupplyNode = group.Unit.FedBy is { Item.Item.Power.Plugs.Count: > 0 } ? -1 : SupplyNodeOf(tree, group.Unit.Supply.Index, group.Line),
                });
            }

            group.GroupTypes = made.Count - first;
        }

        return [.. made];
    }

    // Nodes: the groups, filled up to a multiple of four, then four for each unit and each supply, three of them its lines.
    private static int Base(PowerTree tree) => (tree.Groups.Length + 3) / 4 * 4;

    private static int UnitNodeOf(PowerTree tree, int unit, int line) => Base(tree) + (4 * unit) + line;

    private static int SupplyNodeOf(PowerTree tree, int supply, int line) => Base(tree) + (4 * (tree.Units.Length + supply)) + line;

    private int SupplyNodeOf(int supply, int line) => SupplyNodeOf(tree, supply, line);

    private static Node[] MakeNodes(PowerTree tree)
    {
        var made = new Node[Base(tree) + (4 * (tree.Units.Length + tree.Supplies.Length))];
        foreach (var group in tree.Groups)
        {
            made[group.FlatIndex].Limit(group.ContinuousA ?? double.PositiveInfinity, group.BreakerA ?? double.PositiveInfinity);
        }

        foreach (var unit in tree.Units)
        {
            for (var line = 0; line < 3; line++)
            {
                made[UnitNodeOf(tree, unit.Index, line)].Limit(unit.ContinuousA, unit.RatedA);
            }
        }

        foreach (var supply in tree.Supplies)
        {
            for (var line = 0; line < 3; line++)
            {
                made[SupplyNodeOf(tree, supply.Index, line)].Limit(supply.ContinuousA, supply.RatedA);
            }
        }

        return made;
    }

    // The caller's own connections stand as they are, even where the plug does not go in: a rule says so.
    private void PlaceGiven(IReadOnlyList<Connection>? connections)
    {
        for (var i = 0; i < connections?.Count; i++)
        {
            var given = connections[i];
            var cord = Array.Find(tree.Cords, c => c.Item.Id == given.Item && c.Plug == (given.Plug ?? 0));
            var unit = Array.Find(tree.Units, u => u.Id == given.Unit);
            if (cord is null || cord.Connection is not null || unit?.GroupList.Find(g => g.Id == given.Group) is not { } group)
            {
                continue;
            }

            (cord.Connection, cord.Group) = (i, group);
            var bin = -1;
            for (var b = 0; b < bins.Length; b++)
            {
                if (ReferenceEquals(bins[b].Group, group) && bins[b].Free > 0 && PlugFit.Fits(cord.Code, bins[b].Socket)
                    && (bin < 0 || bins[b].Others < bins[bin].Others || (bins[b].Others == bins[bin].Others && bins[b].Switched && WantsSwitch(cord))))
                {
                    bin = b;
                }
            }

            if (bin >= 0)
            {
                bins[bin].Free--;
                (cord.Socket, cord.Switched) = (bins[bin].Socket, bins[bin].Switched);
            }

            if (Array.Find(bins, b => ReferenceEquals(b.Group, group)) is { } any)
            {
                Load(cord, any, 1);
            }
        }
    }

    private static bool WantsSwitch(Cord cord) => cord.Item.Item is { RemotePowerCycle: true } or { Spare: true };

    private int[] CountGiven()
    {
        var counts = new int[tree.ItemCount * supplies];
        foreach (var cord in tree.Cords)
        {
            if (cord is { Connection: not null, Group: { } group })
            {
                counts[(cord.Item.Index * supplies) + group.Unit.Supply.Index]++;
            }
        }

        return counts;
    }

    private void FindWhatTakes(int[] choices)
    {
        for (var i = 0; i < free; i++)
        {
            var cord = cords[i];
            for (var b = 0; b < bins.Length; b++)
            {
                var bin = bins[b];
                if (PlugFit.Fits(cord.Code, bin.Socket) && bin.SuitsVoltage(cord) && bin.SuitsPhases(cord)
                    && (cord.Item.Item!.Ups is null || bin.Group.Unit.FedBy is null))
                {
                    takes[(i * bins.Length) + b] = true;
                    choices[i]++;
                }
            }
        }
    }

    // Cords with few choices first, then the largest; ids decide where that does not.
    private void Order(int[] choices)
    {
        var order = new int[free];
        for (var i = 0; i < free; i++)
        {
            order[i] = i;
        }

        Array.Sort(order, (x, y) =>
        {
            var by = choices[x].CompareTo(choices[y]);
            by = by != 0 ? by : cords[y].WorstVoltAmperes.CompareTo(cords[x].WorstVoltAmperes);
            return by != 0 ? by : x.CompareTo(y);
        });
        var sorted = Array.ConvertAll(order, i => cords[i]);
        var rows = new bool[takes.Length];
        for (var i = 0; i < free; i++)
        {
            Array.Copy(takes, order[i] * bins.Length, rows, i * bins.Length, bins.Length);
        }

        sorted.CopyTo(cords, 0);
        rows.CopyTo(takes, 0);
    }

    // The cord just before, where the two can be exchanged without anybody seeing it: same plug, same load, and free of any other bond.
    private int[] FindTwins()
    {
        var twins = new int[free];
        for (var i = 0; i < free; i++)
        {
            twins[i] = i > 0 && AreTwins(cords[i - 1], cords[i]) ? i - 1 : -1;
        }

        return twins;
    }

    private static bool AreTwins(Cord one, Cord other) =>
        one.Code == other.Code && one.Watts == other.Watts && one.WorstWatts == other.WorstWatts && one.PowerFactor == other.PowerFactor
        && one.Item.Item!.Power!.VoltageV == other.Item.Item!.Power!.VoltageV && one.Item.Item.Ups is null && other.Item.Item.Ups is null
        && WantsSwitch(one) == WantsSwitch(other)
        && (ReferenceEquals(one.Item, other.Item) || (!one.IsRedundant && !other.IsRedundant));

    // Whether the sum of all loads is within the sum of what the units can carry: where it is not, no search need be made.
    private bool HasRoom(Wish wish)
    {
        double load = 0, room = 0;
        foreach (var cord in tree.Cords)
        {
            load += cord.VoltAmperes;
        }

        foreach (var unit in tree.Units)
        {
            room += Slack * RoomOf(unit, wish);
        }

        return load <= room;
    }

    private double RoomOf(UnitNode unit, Wish wish)
    {
        var amperes = 0.0;
        for (var line = 0; line < unit.LineList.Length; line++)
        {
            var groups = 0.0;
            foreach (var group in unit.GroupList)
            {
                groups += group.Line == line ? nodes[group.FlatIndex].For(wish) : 0;
            }

            amperes += Math.Min(nodes[UnitNodeOf(tree, unit.Index, line)].For(wish), groups);
        }

        return amperes * unit.Supply.Source.VoltageV;
    }

    /// <summary>Outlets of one group that are alike.</summary>
    private sealed class Bin
    {
        public required GroupNode Group { get; init; }

        public required ConnectorCode Socket { get; init; }

        public required bool Switched { get; init; }

        /// <summary>How many other plugs go into the socket: those shall find it free.</summary>
        public required int Others { get; init; }

        public required double VoltageV { get; init; }

        public required int GroupNode { get; init; }

        public required int LineNode { get; init; }

        /// <summary>Line of the supply; -1 behind a UPS, whose own cord loads it.</summary>
        public required int SupplyNode { get; init; }

        public int Free { get; set; }

        // An item for another mains voltage is not served, however well its plug goes in; 208, 230 and 240 V are served alike.
        public bool SuitsVoltage(Cord cord) => cord.SuitsVoltage(VoltageV);

        public bool SuitsPhases(Cord cord) => !cord.IsThreePhase || Group.Unit.Supply.Phases == 3;
    }

    /// <summary>What carries current and has a limit: a group's breaker, a line of a unit, a line of a supply.</summary>
    private struct Node
    {
        public double LimitA;
        public double WishA;
        public double NormalA;
        public double WorstA;

        public readonly double For(Wish wish) => wish == Wish.DesignShare ? WishA : LimitA;

        public void Limit(double continuous, double rated) => (LimitA, WishA) = (continuous, Math.Min(continuous, DesignShare * rated));
    }
}
