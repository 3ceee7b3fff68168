using RackCheck.Model;

namespace RackCheck.Survey.Power;

/// <summary>
/// Finds outlets for cords. Hard: the plug goes in, an outlet is used once, redundant cords hang on different supplies, the voltage is the
/// item's. Wished, and given up step by step where it cannot be had: every breaker and rating kept also with a supply lost and under the
/// design share; kept with a supply lost; kept in normal use; the breakers of groups at least. Even loads come of it by themselves, since each cord goes where the load is least.
/// </summary>
/// <remarks>
/// Largest first, each where least loaded; what finds no place pushes others aside; then a complete search with a bound. The answer hangs on
/// ids of items and places of units in their list, not on the order of items nor on the names of supplies.
/// </remarks>
internal sealed partial class CordAssignment
{
    // Steps of the complete search for one wish, and of pushing aside; past them the wish counts as not to be had.
    private const int MostNodes = 2_500;
    private const int MostPushes = 1_000;
    private const double Slack = 1 + 1e-9;

    private readonly PowerTree tree;
    private readonly int supplies;
    private readonly Cord[] cords;
    private readonly int free;
    private readonly Bin[] bins;
    private readonly bool[] takes;
    private readonly int[] row;
    private readonly double[] va;
    private readonly double[] worstVa;
    private readonly int[] lines;
    private readonly bool[] bound;
    private readonly int[] place;
    private readonly Node[] nodes;
    private readonly int[]? onSupply;
    private readonly bool anySwitched;
    private bool relaxed;
    private int steps;

    public CordAssignment(PowerTree tree, IReadOnlyList<Connection>? connections)
    {
        this.tree = tree;
        supplies = tree.Supplies.Length;
        bins = MakeBins(tree);
        anySwitched = Array.Exists(bins, b => b.Switched);
        nodes = MakeNodes(tree);
        PlaceGiven(connections);
        cords = FreeInOrder(out takes, out row);
        free = cords.Length;
        (va, worstVa, lines, bound) = (new double[free], new double[free], new int[free], new bool[free]);
        for (var i = 0; i < free; i++)
        {
            var cord = cords[i];
            (va[i], worstVa[i], lines[i]) = (cord.VoltAmperes, cord.WorstVoltAmperes, cord.IsThreePhase ? 3 : 1);
            bound[i] = supplies > 1 && cord.IsRedundant && cord.Siblings > 1;
        }

        place = new int[free];
        Array.Fill(place, -1);
        onSupply = Array.Exists(bound, b => b) ? CountGiven() : null;
    }

    private enum Wish
    {
        DesignShare,
        Failover,
        Ratings,
        Breakers,
        Sockets,
    }

    /// <summary>Finds outlets and writes them into the cords.</summary>
    public void Run()
    {
        if (free > 0 && bins.Length > 0)
        {
            Search();
            Level();
        }

        for (var i = 0; i < free; i++)
        {
            if (place[i] >= 0)
            {
                var bin = bins[place[i]];
                (cords[i].Group, cords[i].Socket, cords[i].Switched) = (bin.Group, bin.Socket, bin.Switched);
            }
        }
    }

    private void Search()
    {
        if (Greedy(Wish.DesignShare, push: false))
        {
            return;
        }

        // First whether the plugs find sockets at all: where they do not, no care for ratings helps.
        var complete = Greedy(Wish.Sockets, push: true) || Complete(Wish.Sockets);
        if (!complete)
        {
            relaxed = true;
            complete = Match();
        }

        if (!complete)
        {
            return;
        }

        var fallback = (int[])place.Clone();
        foreach (var wish in (ReadOnlySpan<Wish>)[Wish.DesignShare, Wish.Failover, Wish.Ratings, Wish.Breakers])
        {
            // Without redundant cords a lost supply leaves nothing more on the others.
            if ((wish != Wish.Ratings || onSupply is not null) && HasRoom(wish) && (Greedy(wish, push: true) || (wish != Wish.DesignShare && Complete(wish))))
            {
                return;
            }
        }

        Restore(fallback);
    }

    // Largest first, each where the load is least.
    private bool Greedy(Wish wish, bool push)
    {
        Clear();
        steps = MostPushes;
        var all = true;
        for (var i = 0; i < free; i++)
        {
            if (!Insert(i, wish, push ? 3 : 0))
            {
                all = false;
                if (wish != Wish.Sockets)
                {
                    return false;
                }
            }
        }

        return all;
    }

    private bool Insert(int cord, Wish wish, int depth)
    {
        if (Best(cord, wish) is >= 0 and var best)
        {
            Put(cord, best);
            return true;
        }

        return depth > 0 && PushAside(cord, wish, depth);
    }

    private bool PushAside(int cord, Wish wish, int depth)
    {
        for (var bin = 0; bin < bins.Length; bin++)
        {
            if (!takes[row[cord] + bin])
            {
                continue;
            }

            for (var other = 0; other < free; other++)
            {
                var from = place[other];
                if (other == cord || from < 0 || (from != bin && (bins[bin].Free == 0 || !SharesNode(from, bin))))
                {
                    continue;
                }

                if (--steps < 0)
                {
                    return false;
                }

                Take(other);
                if (Fits(cord, bin, wish))
                {
                    Put(cord, bin);
                    if (Insert(other, wish, depth - 1))
                    {
                        return true;
                    }

                    Take(cord);
                }

                Put(other, from);
            }
        }

        return false;
    }

    private bool SharesNode(int bin, int other)
    {
        var (a, b) = (bins[bin], bins[other]);
        return ReferenceEquals(a.Group.Unit.Supply, b.Group.Unit.Supply) && (a.LineNode == b.LineNode || a.SupplyNode == b.SupplyNode);
    }

    // The bin that leaves the load most even; sockets made for other plugs, and outlets that others need switched, are left for those.
    private int Best(int cord, Wish wish)
    {
        var best = -1;
        var least = double.PositiveInfinity;
        for (var bin = 0; bin < bins.Length; bin++)
        {
            if (!Fits(cord, bin, wish))
            {
                continue;
            }

            var score = Score(cord, bins[bin]);
            if (score < least * (1 - 1e-12))
            {
                (best, least) = (bin, score);
            }
        }

        return best;
    }

    private double Score(int cord, Bin to)
    {
        var normal = va[cord] * to.PerVolt;
        return nodes[to.GroupNode].Ratio(normal) + nodes[to.LineNode].Ratio(normal) + (to.SupplyNode < 0 ? 0 : nodes[to.SupplyNode].Ratio(normal))
            + (10 * to.Others) + (!to.Switched && !anySwitched ? 0 : SwitchScore(cord, to)) + 1;
    }

    private double SwitchScore(int cord, Bin to) => (WantsSwitch(cords[cord]), to.Switched) switch
    {
        (true, false) => 5,
        (false, true) => 0.001,
        _ => 0,
    };

    private bool Fits(int cord, int bin, Wish wish)
    {
        var to = bins[bin];
        if (to.Free == 0 || !takes[row[cord] + bin] || (bound[cord] && !relaxed && !KeepsApart(cord, to)))
        {
            return false;
        }

        if (wish == Wish.Sockets)
        {
            return true;
        }

        var normal = va[cord] * to.PerVolt / lines[cord];
        var worst = worstVa[cord] * to.PerVolt / lines[cord];
        if (!Holds(to.GroupNode, normal, worst, wish))
        {
            return false;
        }

        if (lines[cord] == 1)
        {
            return wish == Wish.Breakers || (Holds(to.LineNode, normal, worst, wish) && Holds(to.SupplyNode, normal, worst, wish));
        }

        for (var i = 0; i < 3 && wish != Wish.Breakers; i++)
        {
            if (!Holds(LineOf(to.LineNode, i, 3), normal, worst, wish) || !Holds(LineOf(to.SupplyNode, i, 3), normal, worst, wish))
            {
                return false;
            }
        }

        return true;
    }

    private bool Holds(int node, double normal, double worst, Wish wish)
    {
        if (node < 0)
        {
            return true;
        }

        ref var at = ref nodes[node];
        return at.NormalA + normal <= at.For(wish) * Slack && (wish is Wish.Ratings or Wish.Breakers || at.WorstA + worst <= at.LimitA * Slack);
    }

    // A three-phase cord loads all lines of a unit or supply: the node of a line, whichever its group is on.
    private static int LineOf(int node, int line, int onLines) => node < 0 || onLines == 1 ? node : node - (node % 4) + line;

    // No supply may hold more than half of the cords of a redundant item, or its loss would take more than the rest can carry.
    private bool KeepsApart(int cord, Bin to) =>
        onSupply![(cords[cord].Item.Index * supplies) + to.Group.Unit.Supply.Index] < (cords[cord].Siblings + 1) / 2;

    private void Put(int cord, int bin)
    {
        place[cord] = bin;
        bins[bin].Free--;
        Load(cord, bins[bin], 1);
    }

    private void Take(int cord)
    {
        var bin = bins[place[cord]];
        place[cord] = -1;
        bin.Free++;
        Load(cord, bin, -1);
    }

    private void Load(int cord, Bin bin, int sign)
    {
        Load(bin, sign * va[cord] * bin.PerVolt / lines[cord], sign * worstVa[cord] * bin.PerVolt / lines[cord], lines[cord]);
        if (bound[cord])
        {
            onSupply![(cords[cord].Item.Index * supplies) + bin.Group.Unit.Supply.Index] += sign;
        }
    }

    private void Load(Bin bin, double normal, double worst, int onLines)
    {
        Add(bin.GroupNode, normal, worst);
        for (var i = 0; i < onLines; i++)
        {
            Add(LineOf(bin.LineNode, i, onLines), normal, worst);
            Add(LineOf(bin.SupplyNode, i, onLines), normal, worst);
        }
    }

    private void Add(int node, double normal, double worst)
    {
        if (node >= 0)
        {
            nodes[node].NormalA += normal;
            nodes[node].WorstA += worst;
        }
    }

    private void Clear()
    {
        for (var i = 0; i < free; i++)
        {
            if (place[i] >= 0)
            {
                Take(i);
            }
        }
    }

    private void Restore(int[] saved)
    {
        Clear();
        for (var i = 0; i < free; i++)
        {
            if (saved[i] >= 0)
            {
                Put(i, saved[i]);
            }
        }
    }
}
