
namespace RackCheck.Planning.Layouts;

/// <summary>Places blocks one after the other, each as low as possible, and improves the order by exchanges. It gives the solver its first solution.</summary>
internal sealed class LayoutHeuristic
{
    // Blocks placed in all tries of one order.
    private const int MostPlaced = 60_000;

    private readonly LayoutProblem problem;
    private readonly int[][] asLower;
    private readonly int[][] asUpper;
    private readonly int[][] meets;
    private readonly int[] starts;
    private readonly ulong[] taken;
    private readonly ulong[] ends;
    private readonly ulong[] begins;
    private readonly ulong[] masks;
    private int placed;

    private LayoutHeuristic(LayoutProblem problem)
    {
        this.problem = problem;
        var count = problem.Blocks.Count;
        asLower = [.. Enumerable.Range(0, count).Select(i => GroupsWith(i, static g => g.Lower))];
        asUpper = [.. Enumerable.Range(0, count).Select(i => GroupsWith(i, static g => g.Upper))];
        meets = [.. Enumerable.Range(0, count).Select(MeetingWith)];
        (starts, taken, masks) = (new int[count], new ulong[2], new ulong[count]);
        (ends, begins) = (new ulong[problem.Apart.Count], new ulong[problem.Apart.Count]);
    }

    /// <summary>Finds positions.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="bound">No positions have a moment below this; the search ends with the first that reach it.</param>
    /// <returns>The lowest U position of each block, null if none were found; and the number of blocks placed in the search.</returns>
    public static (int[]? Starts, int Placed) Find(LayoutProblem problem, long bound)
    {
        var search = new LayoutHeuristic(problem);
        var blocks = problem.Blocks;

        // By mass per height, which is best where nothing keeps blocks apart; blocks with few positions first; the highest first.
        var all = Enumerable.Range(0, blocks.Count).ToArray();
        int[] dense = [.. all.OrderBy(i => blocks[i].Starts.Count).ThenByDescending(Density).ThenBy(i => i)];
        int[] loose = [.. all.OrderBy(i => blocks[i].Starts.Count > 1).ThenByDescending(Density).ThenBy(i => i)];
        int[] high = [.. all.OrderBy(i => blocks[i].Starts.Count).ThenByDescending(i => blocks[i].HeightU).ThenBy(i => i)];
        int[]? best = null;
        var least = long.MaxValue;
        foreach (var order in (ReadOnlySpan<int[]>)[loose, dense, high])
        {
            if (least > bound)
            {
                search.Improve(order, bound, ref best, ref least);
            }
        }

        return (best, search.placed);

        double Density(int i) => (double)blocks[i].MassG / blocks[i].HeightU;
    }

    private int[] GroupsWith(int block, Func<ApartGroup, IReadOnlyList<int>> side) =>
        [.. problem.Apart.Index().Where(g => side(g.Item).Contains(block)).Select(g => g.Index)];

    private int[] MeetingWith(int block) =>
        [.. problem.Meeting.Where(m => m.Front == block || m.Rear == block).Select(m => m.Front == block ? m.Rear : m.Front)];

    private void Improve(int[] order, long bound, ref int[]? best, ref long least)
    {
        var skip = new int[order.Length];
        var most = placed + MostPlaced;
        var now = Rank(order, skip, ref best, ref least);
        for (var improved = least > bound; improved && placed < most;)
        {
            improved = false;
            for (var i = 0; i < order.Length && placed < most && least > bound; i++)
            {
                for (var j = i + 1; j < order.Length && placed < most && least > bound; j++)
                {
                    if (problem.Blocks[order[i]].Kind != problem.Blocks[order[j]].Kind)
                    {
                        (order[i], order[j]) = (order[j], order[i]);
                        if (Rank(order, skip, ref best, ref least) is var swapped && swapped.CompareTo(now) < 0)
                        {
                            (now, improved) = (swapped, true);
                        }
                        else
                        {
                            (order[i], order[j]) = (order[j], order[i]);
                        }
                    }
                }

                // A block may also leave its lowest positions to others.
                skip[order[i]]++;
                if (Rank(order, skip, ref best, ref least) is var raised && raised.CompareTo(now) < 0)
                {
                    (now, improved) = (raised, true);
                }
                else
                {
                    skip[order[i]]--;
                }
            }
        }
    }

    // Blocks without a position first, then the moment.
    private (int Left, long Moment) Rank(int[] order, int[] skip, ref int[]? best, ref long least)
    {
        Array.Clear(taken);
        Array.Clear(ends);
        Array.Clear(begins);
        Array.Clear(masks);
        placed += order.Length;
        var left = order.Count(i => !Place(i, skip[i]));
        if (left > 0)
        {
            return (left, 0);
        }

        if (problem.Forbidden.Any(f => f.All(p => starts[p.Block] == p.Start)))
        {
            return (1, 0);
        }

        var moment = problem.MomentOf(starts);
        if (moment < least)
        {
            (best, least) = ([.. starts], moment);
        }

        return (0, moment);
    }

    private bool Place(int index, int skip)
    {
        var block = problem.Blocks[index];
        foreach (var start in block.Starts)
        {
            var mask = ((1UL << block.HeightU) - 1) << start;
            if (CanGo(index, block, start, mask) && skip-- == 0)
            {
                (starts[index], masks[index]) = (start, mask);
                taken[(int)block.Face] |= mask;
                Mark(asLower[index], ends, start + block.HeightU - 1);
                Mark(asUpper[index], begins, start);
                return true;
            }
        }

        return false;
    }

    private bool CanGo(int index, LayoutBlock block, int start, ulong mask)
    {
        if ((taken[(int)block.Face] & mask) != 0)
        {
            return false;
        }

        foreach (var group in asLower[index])
        {
            if ((begins[group] >> (start + block.HeightU) & 1) != 0)
            {
                return false;
            }
        }

        foreach (var group in asUpper[index])
        {
            if ((ends[group] >> (start - 1) & 1) != 0)
            {
                return false;
            }
        }

        foreach (var other in meets[index])
        {
            if ((masks[other] & mask) != 0)
            {
                return false;
            }
        }

        return true;
    }

    private static void Mark(int[] groups, ulong[] bits, int unit)
    {
        foreach (var group in groups)
        {
            bits[group] |= 1UL << unit;
        }
    }
}
