using CsCheck;
using RackCheck.Model;
using RackCheck.Survey.Power;
using RackCheck.Testing;

namespace RackCheck.Survey.Tests.Power;

/// <summary>The assignment of cords against trying out all there are, on racks small enough for that.</summary>
public sealed class CordAssignmentTests
{
    [Fact]
    [Trait("Kind", "property")]
    public void An_assignment_is_found_where_there_is_one() =>
        CordRacks.Small.Sample(
            rack =>
            {
                var tree = CordRacks.Tree(rack);
                CordRacks.CheckSound(rack, tree);
                var all = new BruteForce(tree);
                if (all.Exists(ratings: false, breakers: false))
                {
                    Assert.All(tree.Cords, c => Assert.NotNull(c.Group));
                    Assert.True(KeepsSuppliesApart(tree));
                }

                if (all.Exists(ratings: false, breakers: true))
                {
                    Assert.All(tree.Groups, g => Assert.True(g.Load.NormalA <= (g.BreakerA ?? double.PositiveInfinity) + 1e-6));
                }

                if (all.Exists(ratings: true, breakers: true))
                {
                    Assert.All(tree.Units, u => Assert.All(u.Lines, l => Assert.True(l.NormalA <= u.RatedA + 1e-6)));
                    Assert.All(tree.Supplies, s => Assert.All(s.Lines, l => Assert.True(l.NormalA <= s.RatedA + 1e-6)));
                }
            },
            iter: Samples.Of(6_000),
            print: Wording.Of);

    [Fact]
    [Trait("Kind", "property")]
    public void Where_sockets_are_short_as_few_cords_as_can_be_go_without() =>
        CordRacks.Small.Sample(
            rack =>
            {
                var tree = CordRacks.Tree(rack);
                Assert.Equal(new BruteForce(tree).MostPlaced(), tree.Cords.Count(c => c.Group is not null));
            },
            iter: Samples.Of(3_000),
            print: Wording.Of);

    [Fact]
    [Trait("Kind", "property")]
    public void A_plug_that_fits_nowhere_leaves_the_other_cords_alone() =>
        CordRacks.Small.Sample(
            rack =>
            {
                var more = rack with { Items = [.. rack.Items, Load("odd", 3000, ConnectorCode.Cee77)] };
                Assert.Equal(CordRacks.Tree(rack).Figures!.Assignment, CordRacks.Tree(more).Figures!.Assignment);
            },
            iter: Samples.Of(2_000),
            print: Wording.Of);

    [Fact]
    public void A_plug_that_fits_nowhere_leaves_the_supplies_apart()
    {
        // Three items of 920 W: half each is 2 A, so 6 A a supply. All on one group would be 12 A on a breaker of 10 A.
        var rack = Rack(
            [.. Enumerable.Range(0, 3).Select(Pair), Load("odd", 3000, ConnectorCode.Cee77)],
            Unit("u", "A", Group("g1", null, 10, (ConnectorCode.C13, 8))), Unit("v", "B", Group("g1", null, 10, (ConnectorCode.C13, 8))));
        var tree = CordRacks.Tree(rack);
        Assert.Equal(["odd"], tree.Cords.Where(c => c.Group is null).Select(c => c.Item.Id));
        Assert.All(tree.Groups, g => Assert.Equal(6, g.Load.NormalA, 1e-9));
        Assert.All(tree.Groups, g => Assert.Equal(12, g.Load.WorstA, 1e-9));
    }

    [Fact]
    public void The_least_cord_goes_without_where_outlets_are_short()
    {
        // Seven cords, six outlets: the KVM switch has the lowest power. The others are kept apart.
        var rack = Rack(
            [.. Enumerable.Range(0, 3).Select(Pair), Load("kvm", 23, ConnectorCode.C14)],
            Unit("u", "A", Group("g1", null, 10, (ConnectorCode.C13, 3))), Unit("v", "B", Group("g1", null, 10, (ConnectorCode.C13, 3))));
        var tree = CordRacks.Tree(rack);
        Assert.Equal(["kvm"], tree.Cords.Where(c => c.Group is null).Select(c => c.Item.Id));
        Assert.All(tree.Groups, g => Assert.Equal(6, g.Load.NormalA, 1e-9));
    }

    [Fact]
    [Trait("Kind", "property")]
    public void The_order_of_items_changes_nothing() =>
        CordRacks.Small.Sample(
            rack =>
            {
                var turned = rack with { Items = [.. rack.Items.Reverse()] };
                Assert.Equal(CordRacks.Tree(rack).Figures!.Assignment, CordRacks.Tree(turned).Figures!.Assignment);
            },
            iter: Samples.Of(1_000),
            print: Wording.Of);

    [Fact]
    [Trait("Kind", "property")]
    public void Names_of_supplies_exchanged_exchange_the_answer() =>
        CordRacks.Small.Sample(
            rack =>
            {
                var names = rack.Supplies!.Select(s => s.Id).Reverse().ToArray();
                string Other(string id) => names[rack.Supplies!.ToList().FindIndex(s => s.Id == id)];
                var renamed = rack with
                {
                    Supplies = [.. rack.Supplies!.Select(s => s with { Id = Other(s.Id) })],
                    Pdus = [.. rack.Pdus!.Select(u => u with { Supply = Other(u.Supply) })],
                };
                var (one, two) = (CordRacks.Tree(rack).Figures!, CordRacks.Tree(renamed).Figures!);
                Assert.Equal(one.Assignment, two.Assignment);
                Assert.Equal(one.Supplies!.Select(s => s with { Id = Other(s.Id) }), two.Supplies);
            },
            iter: Samples.Of(1_000),
            print: Wording.Of);

    [Fact]
    [Trait("Kind", "property")]
    public void The_lines_of_a_supply_cannot_be_brought_closer_by_moving_a_cord() =>
        CordRacks.Small.Where(r => r.Supplies!.Any(s => s.Phases == 3)).Sample(
            rack =>
            {
                var tree = CordRacks.Tree(rack);
                // Where a limit stops a move is for the assignment to say, and so is what a redundant cord may come to carry.
                if (tree.Cords.Any(c => c.IsRedundant) || tree.Groups.Any(g => g.Load.WorstA > 0.8 * (g.BreakerA ?? 1e9))
                    || tree.Units.Any(u => u.Lines.Any(l => l.WorstA > 0.8 * u.RatedA))
                    || tree.Supplies.Any(s => s.Lines.Any(l => l.WorstA > 0.8 * s.RatedA)))
                {
                    return;
                }

                foreach (var cord in tree.Cords.Where(c => c.Group?.Unit.Supply.Phases == 3))
                {
                    var lines = cord.Group!.Unit.Supply.Lines.Select(l => l.NormalA).ToArray();
                    foreach (var group in tree.Groups.Where(g => ReferenceEquals(g.Unit.Supply, cord.Group.Unit.Supply) && CouldTake(tree, g, cord)))
                    {
                        var moved = lines.ToArray();
                        moved[cord.Group.Line] -= cord.VoltAmperes / 230;
                        moved[group.Line] += cord.VoltAmperes / 230;
                        Assert.True(moved.Max() - moved.Min() >= lines.Max() - lines.Min() - 1e-4);
                    }
                }
            },
            iter: Samples.Of(2_000),
            print: Wording.Of);

    [Fact]
    public void Six_equal_cords_go_on_three_phases_two_and_two()
    {
        var tree = CordRacks.Tree(Rack(
            [.. Enumerable.Range(0, 6).Select(i => Load($"i{i}", 460, ConnectorCode.C14))],
            Unit(
                "u", "A", Group("g1", Phase.L1, 16, (ConnectorCode.C13, 6)), Group("g2", Phase.L2, 16, (ConnectorCode.C13, 6)),
                Group("g3", Phase.L3, 16, (ConnectorCode.C13, 6)))));
        Assert.All(tree.Groups, g => Assert.Equal(2, tree.Cords.Count(c => ReferenceEquals(c.Group, g))));
        Assert.Equal(0, tree.Supplies[0].Neutral.NormalA, 1e-9);
    }

    [Fact]
    public void A_socket_made_for_a_plug_is_left_to_it()
    {
        var tree = CordRacks.Tree(Rack(
            [Load("hot", 460, ConnectorCode.C16), Load("cold", 1150, ConnectorCode.C14)],
            Unit("u", "A", Group("g1", null, 10, (ConnectorCode.C15, 1)), Group("g2", null, 10, (ConnectorCode.C13, 1)))));
        Assert.Equal(["g2", "g1"], tree.Cords.Select(c => c.Group!.Id));
    }

    [Fact]
    public void The_callers_connections_stand_and_the_rest_goes_round_them()
    {
        var rack = Rack(
            [Load("a", 460, ConnectorCode.C14), Load("b", 460, ConnectorCode.C14), Load("c", 460, ConnectorCode.C14)],
            Unit("u", "A", Group("g1", null, 10, (ConnectorCode.C13, 1)), Group("g2", null, 10, (ConnectorCode.C13, 2))));
        rack = rack with { Connections = [new Connection { Item = "b", Pdu = "u", Group = "g1" }] };
        Assert.Equal(["g2", "g1", "g2"], CordRacks.Tree(rack).Cords.Select(c => c.Group!.Id));
    }

    [Fact]
    public void Forty_cords_that_only_just_fit_find_their_groups()
    {
        // Six groups of two units, filled by hand to 97 to 100 % of breakers of 10 A; then the cords are handed over in no order.
        double[][] amperes =
        [
            [3.1, 2.4, 1.9, 1.3, 0.9, 0.3], [2.9, 2.2, 1.7, 1.4, 1.1, 0.5, 0.1], [3.7, 2.6, 1.6, 1.2, 0.7, 0.1], [2.7, 2.5, 1.5, 1.3, 0.8, 0.7, 0.4],
            [4.1, 1.8, 1.7, 1.1, 0.6, 0.5, 0.2], [2.3, 2.1, 1.9, 1.6, 0.9, 0.6, 0.5],
        ];
        ConnectorCode[] plugs =
        [
            ConnectorCode.C14, ConnectorCode.C14, ConnectorCode.C16, ConnectorCode.C14, ConnectorCode.C20, ConnectorCode.C14, ConnectorCode.C16,
        ];
        var items = amperes.SelectMany((group, g) => group.Select((a, i) => Load($"i{(7 * ((11 * ((7 * g) + i)) % 43)) + g}-{i}", 230 * a, plugs[i])))
            .ToArray();
        OutletGroup[] groups =
        [
            .. Enumerable.Range(0, 6).Select(g => Group($"g{g}", null, 10, (ConnectorCode.C13, 5), (ConnectorCode.C15, 3), (ConnectorCode.C19, 2))),
        ];
        var tree = CordRacks.Tree(Rack(items, Unit("u", "A", groups[..3]), Unit("v", "B", groups[3..])));
        Assert.Equal(40, tree.Cords.Length);
        Assert.All(tree.Cords, c => Assert.NotNull(c.Group));
        Assert.All(tree.Groups, g => Assert.True(g.Load.NormalA <= 10 + 1e-9, $"{g.Id}: {g.Load.NormalA}"));
    }

    [Fact]
    public void Search_over_many_cords_and_outlets_needs_little_stack()
    {
        // The last cords of a redundant item find no second supply, and the search goes as deep as there are cords.
        Item[] items =
        [
            .. Enumerable.Range(0, 199).Select(i => Load($"i{i:000}", 1 + (i * 0.01), ConnectorCode.C14)),
            new Item { Id = "pair", HeightU = 1, Power = new ItemPower { RatedW = 0.001, Redundant = true, Plugs = [ConnectorCode.C14, ConnectorCode.C14] } },
        ];
        (ConnectorCode, int)[] outlets = [.. Enum.GetValues<ConnectorCode>().Take(24).Select(c => (c, 3))];
        var rack = Rack(items, [.. Enumerable.Range(0, 32).Select(u => Unit($"u{u}", "A", Group("g1", null, 16, outlets), Group("g2", null, 16, outlets)))]);
        rack = rack with { Supplies = [.. rack.Supplies!, new Supply { Id = "B", VoltageV = 230, RatedA = 16 }] };
        PowerTree? tree = null;
        var thread = new Thread(() => tree = CordRacks.Tree(rack), 256 * 1024);
        thread.Start();
        thread.Join();
        Assert.All(tree!.Cords, c => Assert.NotNull(c.Group));
    }

    internal static RackDescription Rack(Item[] items, params Pdu[] units) => new()
    {
        Cabinet = new Cabinet { HeightU = 42, WidthMm = 800, DepthMm = 1000 },
        Items = items,
        Supplies = [.. units.Select(u => u.Supply).Distinct().Select(s => new Supply { Id = s, VoltageV = 230, RatedA = 32 })],
        Pdus = units,
    };

    internal static Item Load(string id, double watts, ConnectorCode plug) =>
        new() { Id = id, HeightU = 1, Power = new ItemPower { RatedW = watts, PowerFactor = 1, Plugs = [plug] } };

    internal static Item Pair(int i) => new()
    {
        Id = $"i{i}", HeightU = 1, Power = new ItemPower { RatedW = 920, PowerFactor = 1, Redundant = true, Plugs = [ConnectorCode.C14, ConnectorCode.C14] },
    };

    internal static Pdu Unit(string id, string supply, params OutletGroup[] groups) => new() { Id = id, Supply = supply, RatedA = 32, Groups = groups };

    internal static OutletGroup Group(string id, Phase? phase, double breaker, params (ConnectorCode Socket, int Count)[] outlets) =>
        new() { Id = id, Phase = phase, BreakerA = breaker, Outlets = [.. outlets.Select(o => new OutletSet { Socket = o.Socket, Count = o.Count })] };

    private static bool KeepsSuppliesApart(PowerTree tree) =>
        tree.Supplies.Length < 2
            || tree.Cords.Where(c => c.IsRedundant).GroupBy(c => c.Item.Id).All(g => g.Select(c => c.Group!.Unit.Supply.Id).Distinct().Count() == g.Count());

    private static bool CouldTake(PowerTree tree, GroupNode group, Cord cord)
    {
        var free = group.Source.Outlets.Where(o => o.Socket == cord.Socket).Sum(o => o.Count)
            - tree.Cords.Count(c => ReferenceEquals(c.Group, group) && c.Socket == cord.Socket);
        var more = cord.WorstVoltAmperes / 230;
        return free > 0 && group.Load.WorstA + more <= 0.8 * (group.BreakerA ?? 1e9) && group.Unit.Lines[group.Line].WorstA + more <= 0.8 * group.Unit.RatedA
            && group.Unit.Supply.Lines[group.Line].WorstA + more <= 0.8 * group.Unit.Supply.RatedA;
    }

    /// <summary>Tries every assignment there is.</summary>
    private sealed class BruteForce(PowerTree tree)
    {
        private readonly GroupNode?[] at = new GroupNode?[tree.Cords.Length];

        public bool Exists(bool ratings, bool breakers) => Try(0, ratings, breakers);

        // Sockets and plugs alone: supplies kept apart is given up before an outlet is left empty.
        public int MostPlaced() => Most(0);

        private bool Try(int cord, bool ratings, bool breakers)
        {
            if (cord == at.Length)
            {
                return true;
            }

            foreach (var group in tree.Groups)
            {
                at[cord] = group;
                if (Sockets(cord, group) && Apart(cord) && (!breakers || Breakers(cord, group)) && (!ratings || Ratings(cord, group))
                    && Try(cord + 1, ratings, breakers))
                {
                    return true;
                }

                at[cord] = null;
            }

            return false;
        }

        private int Most(int cord)
        {
            if (cord == at.Length)
            {
                return at.Count(g => g is not null);
            }

            var most = Most(cord + 1);
            foreach (var group in tree.Groups)
            {
                at[cord] = group;
                most = most == tree.Cords.Length || !Sockets(cord, group) ? most : Math.Max(most, Most(cord + 1));
                at[cord] = null;
            }

            return most;
        }

        // Hall: each set of plug types in a group may not need more than the sockets that take any of them.
        private bool Sockets(int last, GroupNode group)
        {
            var here = Enumerable.Range(0, last + 1).Where(c => ReferenceEquals(at[c], group)).Select(c => tree.Cords[c].Code).ToArray();
            var types = here.Distinct().ToArray();
            for (var set = 1; set < 1 << types.Length; set++)
            {
                var some = types.Where((_, i) => (set & (1 << i)) != 0).ToArray();
                if (here.Count(some.Contains) > group.Source.Outlets.Where(o => some.Any(p => PlugFit.Fits(p, o.Socket))).Sum(o => o.Count))
                {
                    return false;
                }
            }

            return true;
        }

        private bool Apart(int last) =>
            !tree.Cords[last].IsRedundant || tree.Supplies.Length < 2
            || Enumerable.Range(0, last).All(c =>
                tree.Cords[c].Item.Id != tree.Cords[last].Item.Id || !ReferenceEquals(at[c]!.Unit.Supply, at[last]!.Unit.Supply));

        private bool Breakers(int last, GroupNode group) => Sum(last, g => ReferenceEquals(g, group)) <= (group.BreakerA ?? double.PositiveInfinity) + 1e-7;

        private bool Ratings(int last, GroupNode group) =>
            Sum(last, g => ReferenceEquals(g.Unit, group.Unit) && g.Line == group.Line) <= group.Unit.RatedA + 1e-7
            && Sum(last, g => ReferenceEquals(g.Unit.Supply, group.Unit.Supply) && g.Line == group.Line) <= group.Unit.Supply.RatedA + 1e-7;

        private double Sum(int last, Func<GroupNode, bool> isMeant)
        {
            var sum = 0.0;
            for (var c = 0; c <= last; c++)
            {
                var item = tree.Cords[c].Item.Item!;
                sum += at[c] is { } g && isMeant(g) ? item.Power!.RatedW!.Value / item.Power.Plugs!.Count / 230 : 0;
            }

            return sum;
        }
    }
}
