using RackCheck.Model;

namespace RackCheck.Survey.Power;

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
                    PerVolt = 1 / group.Unit.Supply.Source.VoltageV,
                    GroupNode = group.FlatIndex,
                    LineNode = PduNodeOf(tree, group.Unit.Index, group.Line),
                    SupplyNode = group.Unit.FedBy is { Item.Item.Power.Plugs.Count: > 0 } ? -1 : SupplyNodeOf(tree, group.Unit.Supply.Index, group.Line),
                });
            }

            group.GroupTypes = made.Count - first;
        }

        return [.. made];
    }

    // Nodes: the groups, filled up to a multiple of four, then four for each unit and each supply, three of them its lines.
    private static int Base(PowerTree tree) => (tree.Groups.Length + 3) / 4 * 4;

    private static int PduNodeOf(PowerTree tree, int unit, int line) => Base(tree) + (4 * unit) + line;

    private static int SupplyNodeOf(PowerTree tree, int supply, int line) => Base(tree) + (4 * (tree.Units.Length + supply)) + line;

    private int SupplyNodeOf(int supply, int line) => SupplyNodeOf(tree, supply, line);

    private static Node[] MakeNodes(PowerTree tree)
    {
        var made = new Node[Base(tree) + (4 * (tree.Units.Length + tree.Supplies.Length))];
        foreach (var group in tree.Groups)
        {
            made[group.FlatIndex].Limit(group.ContinuousA ?? double.PositiveInfinity, group.DesignA ?? double.PositiveInfinity);
        }

        foreach (var unit in tree.Units)
        {
            for (var line = 0; line < 3; line++)
            {
                made[PduNodeOf(tree, unit.Index, line)].Limit(unit.ContinuousA, unit.DesignA);
            }
        }

        foreach (var supply in tree.Supplies)
        {
            for (var line = 0; line < 3; line++)
            {
                made[SupplyNodeOf(tree, supply.Index, line)].Limit(supply.ContinuousA, supply.DesignA);
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
            var unit = Array.Find(tree.Units, u => u.Id == given.Pdu);
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
                var onLines = cord.IsThreePhase ? 3 : 1;
                Load(any, cord.VoltAmperes * any.PerVolt / onLines, cord.WorstVoltAmperes * any.PerVolt / onLines, onLines);
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

    // The cords to be placed: those with few choices first, then the largest; ids decide where that does not. Cords of one plug and voltage
    // share a row of the table of bins that take them.
    private Cord[] FreeInOrder(out bool[] table, out int[] rows)
    {
        var kinds = new List<(ConnectorCode Code, double? VoltageV, bool IsUps, int Choices)>(4);
        var made = new List<bool>(4 * bins.Length);
        var keys = new List<Key>(tree.Cords.Length);
        for (var i = 0; i < tree.Cords.Length; i++)
        {
            var cord = tree.Cords[i];
            if (cord.Connection is not null)
            {
                continue;
            }

            var item = cord.Item.Item!;
            var kind = kinds.FindIndex(k => k.Code == cord.Code && k.VoltageV == item.Power!.VoltageV && k.IsUps == item.Ups is not null);
            if (kind < 0)
            {
                kind = kinds.Count;
                var choices = 0;
                foreach (var bin in bins)
                {
                    var takesIt = bin.Takes(cord);
                    made.Add(takesIt);
                    choices += takesIt ? 1 : 0;
                }

                kinds.Add((cord.Code, item.Power!.VoltageV, item.Ups is not null, choices));
            }

            keys.Add(new Key(kinds[kind].Choices, cord.WorstVoltAmperes, i, kind));
        }

        keys.Sort();
        var sorted = new Cord[keys.Count];
        rows = new int[keys.Count];
        for (var i = 0; i < sorted.Length; i++)
        {
            sorted[i] = tree.Cords[keys[i].Index];
            rows[i] = keys[i].Kind * bins.Length;
        }

        table = [.. made];
        return sorted;
    }

    // The cord just before, where the two can be exchanged without anybody seeing it: same plug, same load, and free of any other bond.
    private int[] FindTwins()
    {
        var twins = new int[free];
        for (var i = 0; i < free; i++)
        {
            twins[i] = i > 0 && row[i - 1] == row[i] && va[i - 1] == va[i] && worstVa[i - 1] == worstVa[i]
                && WantsSwitch(cords[i - 1]) == WantsSwitch(cords[i])
                && (ReferenceEquals(cords[i - 1].Item, cords[i].Item) || (!bound[i - 1] && !bound[i])) ? i - 1 : -1;
        }

        return twins;
    }

    // Whether the sum of all loads is within the sum of what the units can carry: where it is not, no search need be made.
    private bool HasRoom(Wish wish)
    {
        double load = 0, room = 0;
        foreach (var cord in tree.Cords)
        {
            load += cord.VoltAmperes;
        }

        foreach (var supply in tree.Supplies)
        {
            var units = 0.0;
            foreach (var unit in supply.UnitList)
            {
                units += RoomOf(unit, wish);
            }

            var own = nodes[SupplyNodeOf(supply.Index, 0)].For(wish) * supply.LineList.Length;
            room += Slack * supply.Source.VoltageV * (wish == Wish.Breakers || supply.UnitList.Exists(u => u.FedBy is not null) ? units : Math.Min(own, units));
        }

        return load <= room;
    }

    private double RoomOf(PduNode unit, Wish wish)
    {
        var amperes = 0.0;
        for (var line = 0; line < unit.LineList.Length; line++)
        {
            var groups = 0.0;
            foreach (var group in unit.GroupList)
            {
                groups += group.Line == line ? nodes[group.FlatIndex].For(wish) : 0;
            }

            amperes += wish == Wish.Breakers ? groups : Math.Min(nodes[PduNodeOf(tree, unit.Index, line)].For(wish), groups);
        }

        return amperes;
    }

    /// <summary>Outlets of one group that are alike.</summary>
    private sealed class Bin
    {
        public required GroupNode Group { get; init; }

        public required ConnectorCode Socket { get; init; }

        public required bool Switched { get; init; }

        /// <summary>How many other plugs go into the socket: those shall find it free.</summary>
        public required int Others { get; init; }

        public required int GroupNode { get; init; }

        public required int LineNode { get; init; }

        /// <summary>Line of the supply; -1 behind a UPS, whose own cord loads it.</summary>
        public required int SupplyNode { get; init; }

        public int Free { get; set; }

        public required double PerVolt { get; init; }

        // An item for another mains voltage is not served, however well its plug goes in; 208, 230 and 240 V are served alike. Behind a UPS no
        // other is put by the service, so that no ring comes about.
        public bool Takes(Cord cord)
        {
            return PlugFit.Fits(cord.Code, Socket)
                && cord.SuitsVoltage(Group.Unit.Supply.Source.VoltageV)
                && (!cord.IsThreePhase || Group.Unit.Supply.Phases == 3)
                && (cord.Item.Item!.Ups is null || Group.Unit.FedBy is null);
        }
    }

    /// <summary>Where a cord comes in the order of placing.</summary>
    private readonly record struct Key(int Choices, double Va, int Index, int Kind) : IComparable<Key>
    {
        public int CompareTo(Key other)
        {
            var by = Choices.CompareTo(other.Choices);
            by = by != 0 ? by : other.Va.CompareTo(Va);
            return by != 0 ? by : Index.CompareTo(other.Index);
        }
    }

    /// <summary>What carries current and has a limit: a group's breaker, a line of a unit, a line of a supply.</summary>
    private struct Node
    {
        public double LimitA;
        public double WishA;
        public double PerLimit;
        public double NormalA;
        public double WorstA;

        /// <summary>Load with so much more, as a share of what it may carry.</summary>
        public readonly double Ratio(double moreA) => (NormalA + moreA) * PerLimit;

        public readonly double For(Wish wish) => wish == Wish.DesignShare ? WishA : LimitA;

        public void Limit(double continuous, double design) =>
            (LimitA, WishA, PerLimit) = (continuous, Math.Min(continuous, design), double.IsInfinity(continuous) ? 0 : 1 / continuous);
    }
}
